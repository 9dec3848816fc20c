//! The pad of a set and of a rest: the area that logs the set, or begins the next one.

use super::screen::Open;
use crate::device::haptic::buzz;
use crate::device::sound::Sound;
use crate::session::{Board, Phase, What};
use crate::sheet::SetKey;
use crate::ui::model::Model;
use crate::ui::parts::{button, dynamic, tap, text, when};
use crate::ui::stanchion::{Stanchion, moment};
use crate::units::{Load, Reps, clock};
use leptos::prelude::*;

/// A second tap on the large button within this time is taken for an accident: a wet finger, a bounce.
const SLIP_MS: u64 = 600;

/// How long the phone shakes when a set is logged.
const LOGGED_BUZZ_MS: u32 = 40;

/// Seconds by which the rest is stretched or cut.
const REST_STEP_SECONDS: i32 = 15;

/// What the second tap for a jump of load would do.
#[derive(Clone, Copy, PartialEq)]
enum Sure {
    /// Log the set.
    Log,
    /// Begin it by ear.
    Begin,
    /// It was given when the set was begun: logging asks no more.
    Given,
}

/// When the pad was last tapped, and which jump of load was asked about; shared by all pads, since a tap swaps one for
/// another.
#[derive(Clone, Copy)]
pub struct LastTap(StoredValue<Option<u64>>, RwSignal<Option<Asked>>);

/// The set and the load that were asked about: another load is asked about anew.
type Asked = (SetKey, Option<Load>, Sure);

impl LastTap {
    /// Nothing was tapped yet.
    pub fn none() -> LastTap {
        LastTap(StoredValue::new(None), RwSignal::new(None))
    }

    /// What was asked about the load on the board; none where nothing was, or it is no jump.
    fn asked(self, board: &Board) -> Option<Sure> {
        let (key, load, sure) = self.1.get()?;
        let same = board.jump && key == board.key && load == board.load;
        same.then_some(sure)
    }

    /// Whether a tap may do its work now; else it has asked, and the next tap may.
    fn sure(self, board: &Board, to: Sure) -> bool {
        let asked = untrack(|| self.asked(board));
        let sure = !board.jump || asked == Some(to) || asked == Some(Sure::Given);
        if board.jump {
            let next = if sure { Sure::Given } else { to };
            self.1.set(Some((board.key, board.load, next)));
        }
        sure
    }

    /// Whether a tap on the large button counts: not when it came right after another.
    pub fn counts(self) -> bool {
        let now = moment().tick.ms;
        let slip = self
            .0
            .get_value()
            .is_some_and(|last| now.saturating_sub(last) < SLIP_MS);
        if !slip {
            self.0.set_value(Some(now));
        }
        !slip
    }
}

/// The pad: the large button between two others, and a row of small ones.
pub fn frame(name: &'static str, large: Vec<AnyView>, row: Vec<AnyView>) -> AnyView {
    view! {
        <section class="pad" data-part="pad" aria-label=name>
            <div class="pad-log">{large}</div>
            <div class="pad-row">{row}</div>
        </section>
    }
    .into_any()
}

/// What stands on the large button.
pub fn face(figure: String, is_word: bool, word: String) -> AnyView {
    let class = if is_word {
        "pad-figure word"
    } else {
        "pad-figure"
    };
    view! {
        <span class=class>{figure}</span>
        <span class="pad-word">{word}</span>
    }
    .into_any()
}

/// Begins the set by ear; a jump of load wants a second tap.
fn begin_set(app: Stanchion, board: Memo<Option<Board>>, tapped: LastTap) {
    app.sound.with_value(Sound::unlock);
    if let Some(board) = board.get_untracked()
        && tapped.sure(&board, Sure::Begin)
    {
        app.act(What::SetStarted { set: board.key });
    }
}

fn log(app: Stanchion, board: &Board) {
    let what = app.model.with_untracked(|model| {
        let slot = model.session.as_ref()?.state().slot(board.key)?;
        Some(What::SetDone {
            set: board.key,
            done: slot.as_prescribed(board.load),
            proposed: board.prescribed,
        })
    });
    if let Some(what) = what {
        app.sound.with_value(Sound::unlock);
        if app.act(what) {
            // Felt where the screen is wet and nobody looks.
            buzz(&[LOGGED_BUZZ_MS]);
        }
    }
}

fn step_reps(app: Stanchion, board: Memo<Option<Board>>, by: i64) {
    let Some(board) = board.get_untracked() else {
        return;
    };
    if let Some(reps) = board.reps {
        let reps = Reps::saturating(i64::from(reps) + by);
        app.act(What::RepsChosen {
            set: board.key,
            reps,
        });
    }
}

/// A button beside the large one.
fn step(
    class: &'static str,
    part: &'static str,
    name: &'static str,
    sign: &'static str,
    on_tap: Callback<()>,
) -> AnyView {
    tap(
        class,
        part,
        Some(text(move || name.to_owned())),
        sign.into_any(),
        on_tap,
    )
}

/// True when the set cannot be logged before a load is chosen.
fn needs_load(board: &Board) -> bool {
    board.basis.has_load() && board.load.is_none()
}

/// Seconds since the rest ended, when the set waits for being begun since.
fn over(app: Stanchion) -> Option<i64> {
    let now = app.now.get();
    app.model
        .with(|model| match model.session.as_ref()?.state().phase {
            Phase::Resting(rest) => rest
                .left_ms(&now)
                .filter(|left| *left <= 0)
                .map(|left| -left / 1000),
            _ => None,
        })
}

/// What the large button says when it has asked about a jump of load.
fn sure_face() -> AnyView {
    let word = "more than 10\u{a0}% up: tap again for yes, this load";
    face("Sure?".to_owned(), true, word.to_owned())
}

fn large(board: &Board, over: Option<i64>, asked: Option<Sure>) -> AnyView {
    if asked == Some(Sure::Log) {
        return sure_face();
    }
    let word = match over {
        Some(seconds) => format!("rest over by {} · tap when racked", clock(seconds)),
        None => "tap when racked".to_owned(),
    };
    match board.reps {
        _ if needs_load(board) => face(
            "Load?".to_owned(),
            true,
            "tap to choose the load".to_owned(),
        ),
        Some(reps) => face(reps.to_string(), false, word),
        None => face("Done".to_owned(), true, word),
    }
}

/// The pad of a set: one tap logs it as it stands on the board; a jump of load wants a second one, once, whether it is
/// logged or begun by ear.
pub fn set_pad(
    app: Stanchion,
    board: Memo<Option<Board>>,
    open: RwSignal<Open>,
    tapped: LastTap,
) -> AnyView {
    let working = app.of(|model| {
        model
            .session
            .as_ref()
            .is_some_and(|session| matches!(session.state().phase, Phase::Working { .. }))
    });
    let over = Memo::new(move |_| over(app));
    let counted = Signal::derive(move || {
        board.with(|board| board.as_ref().is_some_and(|board| board.reps.is_some()))
    });
    let loaded = Signal::derive(move || {
        board.with(|board| board.as_ref().is_some_and(|board| board.basis.has_load()))
    });
    let rep = move |by: i64| Callback::new(move |()| step_reps(app, board, by));
    let on_log = Callback::new(move |()| {
        let Some(board) = board.get_untracked() else {
            return;
        };
        if needs_load(&board) {
            open.set(Open::Load);
        } else if tapped.counts() && tapped.sure(&board, Sure::Log) {
            log(app, &board);
        }
    });
    let inside = dynamic(move || {
        board.get().map_or_else(
            || ().into_any(),
            |board| large(&board, over.get(), tapped.asked(&board)),
        )
    });
    let reserve = text(move || match board.get() {
        Some(Board {
            reserve: Some(reserve),
            ..
        }) => format!("{reserve} in reserve"),
        Some(board) if board.asks_reserve => "reps left?".to_owned(),
        _ => "reserve".to_owned(),
    });
    let by_ear = dynamic(move || {
        if working.get() {
            button("", "cues-stop", "stop cues", move || {
                if let Some(board) = board.get_untracked() {
                    app.act(What::SetStopped { set: board.key });
                }
            })
        } else {
            let face = text(move || {
                let asked = board.with(|board| tapped.asked(board.as_ref()?));
                match asked {
                    Some(Sure::Begin) => "sure? by ear".to_owned(),
                    _ => "by ear".to_owned(),
                }
            });
            button("", "cues-begin", face, move || {
                // The tap that asks and the one that answers are two.
                let jump = board.with_untracked(|board| board.as_ref().is_some_and(|it| it.jump));
                if !jump || tapped.counts() {
                    begin_set(app, board, tapped);
                }
            })
        }
    });
    frame(
        "Log",
        vec![
            when(counted, move || {
                step("step", "reps-less", "one rep less", "−", rep(-1))
            }),
            tap("pad-main", "log", None, inside, on_log),
            when(counted, move || {
                step("step", "reps-more", "one rep more", "+", rep(1))
            }),
        ],
        vec![
            when(loaded, move || {
                button("", "load", "load", move || open.set(Open::Load))
            }),
            button("", "reserve", reserve, move || open.set(Open::Reserve)),
            by_ear,
            button("", "more", "more", move || open.set(Open::More)),
        ],
    )
}

/// True while the rest under way is held open.
fn held(model: &Model) -> bool {
    match model.session.as_ref().map(|session| session.state().phase) {
        Some(Phase::Resting(rest)) => rest.held,
        _ => false,
    }
}

/// The pad of a rest: begin the next set by ear, or stretch, cut or hold the rest.
pub fn rest_pad(
    app: Stanchion,
    board: Memo<Option<Board>>,
    open: RwSignal<Open>,
    tapped: LastTap,
) -> AnyView {
    let held = app.of(held);
    let rest = move |by_seconds: i32| {
        Callback::new(move |()| {
            app.act(What::RestChanged { by_seconds });
        })
    };
    let begin = Callback::new(move |()| {
        if tapped.counts() {
            begin_set(app, board, tapped);
        }
    });
    let inside = dynamic(move || {
        let asked = board.with(|board| tapped.asked(board.as_ref()?));
        match asked {
            Some(Sure::Begin) => sure_face(),
            _ => face(
                "Begin".to_owned(),
                true,
                "count-in 3 s, then by ear".to_owned(),
            ),
        }
    });
    let hold = dynamic(move || {
        if held.get() {
            button("", "rest-end", "end rest", move || {
                app.act(What::RestEnded);
            })
        } else {
            button("", "rest-hold", "hold here", move || {
                app.act(What::RestHeld);
            })
        }
    });
    frame(
        "Rest",
        vec![
            step(
                "step words",
                "rest-less",
                "−15 s of rest",
                "−15 s",
                rest(-REST_STEP_SECONDS),
            ),
            tap("pad-main", "begin-set", None, inside, begin),
            step(
                "step words",
                "rest-more",
                "+15 s of rest",
                "+15 s",
                rest(REST_STEP_SECONDS),
            ),
        ],
        vec![
            button("", "undo-set", "undo set", move || app.undo_set()),
            hold,
            button("", "more", "more", move || open.set(Open::More)),
        ],
    )
}
