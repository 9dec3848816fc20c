//! The pad of a set and of a rest: the area that logs the set, or begins the next one.

use super::figures::{amount_line, pad_figure, stage_word};
use super::hands::{Hands, Sure, can_step, held, needs_load, works};
use super::rest::rest_step;
use super::screen::Open;
use super::short::minutes_over;
use crate::say;
use crate::session::{Amount, Board, Ends, Phase};
use crate::sheet::Target;
use crate::ui::cueing::COUNT_IN_SECONDS;
use crate::ui::parts::{Text, button, dynamic, el, tap, text, when};
use crate::ui::seen::Seen;
use crate::ui::stanchion::Stanchion;
use crate::units::{Reps, clock};
use crate::words::{t, t_in};
use leptos::prelude::*;

/// The pad: the large button between two others, and a [`row`] of small ones.
pub fn frame(name: &'static str, large: Vec<AnyView>, row: AnyView) -> AnyView {
    el("section")
        .class("pad")
        .part("pad")
        .set("aria-label", name)
        .child(el("div").class("pad-log").child(large))
        .child(row)
        .view()
}

/// The row of small buttons.
pub fn row(inside: Vec<AnyView>) -> AnyView {
    el("div").class("pad-row").child(inside).view()
}

/// What stands on the large button.
pub fn face(figure: String, is_word: bool, word: String) -> AnyView {
    let class = if is_word {
        "pad-figure word"
    } else {
        "pad-figure"
    };
    vec![
        el("span").class(class).child(figure).view(),
        " ".into_any(),
        el("span").class("pad-word").child(word).view(),
    ]
    .into_any()
}

/// The large button.
pub fn main_button(
    hands: Hands,
    part: &'static str,
    name: Option<Text>,
    inside: AnyView,
) -> AnyView {
    tap(
        "pad-main",
        part,
        name,
        inside,
        Callback::new(move |()| hands.main()),
    )
}

/// A button beside the large one.
fn step(
    class: &'static str,
    part: &'static str,
    name: Text,
    sign: &'static str,
    on_tap: Callback<()>,
) -> AnyView {
    tap(class, part, Some(name), sign.into_any(), on_tap)
}

/// By what the buttons beside the large one step an amount.
fn step_word(offer: Option<&Amount>, more: bool) -> &'static str {
    t(match (offer, more) {
        (Some(Amount::Timed(_)), false) => "5 seconds less",
        (Some(Amount::Timed(_)), true) => "5 seconds more",
        (Some(Amount::Distance(_)), false) => "5 metres less",
        (Some(Amount::Distance(_)), true) => "5 metres more",
        (_, false) => "one rep less",
        (_, true) => "one rep more",
    })
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

/// What stands on the large button: a figure, whether it is set as a word, and what a tap does.
type Said = (String, bool, String);

/// What the large button says when it has asked about a jump of load.
fn sure_said() -> Said {
    let word = t("more than 10\u{a0}% up: tap again for yes, this load");
    (t("Sure?").to_owned(), true, word.to_owned())
}

fn large(hands: Hands, board: &Board, offer: &Amount, over: Option<i64>, heard: bool) -> Said {
    let (figure, is_word) = pad_figure(&board.target, offer);
    if hands.counting.get() == Some(board.key) {
        return (figure, is_word, t("tap once a rep").to_owned());
    }
    if needs_load(board) {
        let word = t("tap to choose the load");
        return (t("Load?").to_owned(), true, word.to_owned());
    }
    if hands.asked(board) == Some(Sure::Log) {
        return sure_said();
    }
    let tap = t(match board.ends {
        Ends::Racked => "tap when racked",
        Ends::PutDown => "tap when put down",
        Ends::Done => "tap when done",
    });
    let word = match over {
        Some(seconds) => say!("rest over by {time}", time = clock(seconds)),
        None if heard => t("as far as heard").to_owned(),
        None if matches!(offer, Amount::Sides { .. }) => t("first · second side").to_owned(),
        None => tap.to_owned(),
    };
    // A dot parts two things and stays with the first: it begins no line.
    let word = match stage_word(&board.target, offer) {
        Some(stage) => format!("{stage}\u{a0}· {word}"),
        None => word,
    };
    (figure, is_word, word)
}

/// The pad of a set: one tap logs it as it stands on the pad; a jump of load wants a second one, once, whether it is
/// logged or begun by ear.
pub fn set_pad(hands: Hands) -> AnyView {
    let Hands {
        app, board, offer, ..
    } = hands;
    let over = Seen::new(move || over(app));
    let heard = heard(hands);
    let counts = Seen::new(move || {
        hands.counting.get().is_some() && hands.counting.get() == board.get().map(|board| board.key)
    });
    // Beside a load that is asked for they would be read as steps of the load.
    let asks = Seen::new(move || board.with(|board| board.as_ref().is_some_and(needs_load)));
    let can = Seen::new(move || offer.with(|offer| offer.as_ref().is_some_and(can_step)));
    let steps = Seen::new(move || can.get() && (counts.get() || !asks.get()));
    let one = move |more: bool| Callback::new(move |()| hands.step(more));
    let by = move |more: bool| {
        text(move || {
            offer
                .with(|offer| step_word(offer.as_ref(), more))
                .to_owned()
        })
    };
    let said = Seen::new(move || {
        let (board, offer) = board.get().zip(offer.get())?;
        Some(large(hands, &board, &offer, over.get(), heard.get()))
    });
    let inside = dynamic(move || match said.get() {
        Some((figure, is_word, word)) => face(figure, is_word, word),
        None => ().into_any(),
    });
    // What is read on it stands in its name, for those who speak to their phone (WCAG 2.5.3).
    let name = text(move || {
        let Some(((board, offer), (figure, _, word))) =
            board.get().zip(offer.get()).zip(said.get())
        else {
            return String::new();
        };
        match () {
            () if counts.get() => {
                let done = amount_line(&offer);
                say!(
                    "One rep more than {done}, {figure} {word}",
                    done,
                    figure,
                    word
                )
            }
            () if needs_load(&board) || hands.asked(&board) == Some(Sure::Log) => {
                format!("{figure} {word}")
            }
            () => say!(
                "Log {amount}, {figure} {word}",
                amount = amount_line(&offer),
                figure,
                word,
            ),
        }
    });
    let row = dynamic(move || {
        row(if counts.get() {
            counting_row(hands)
        } else {
            set_row(hands)
        })
    });
    frame(
        t("Log"),
        vec![
            when(steps, move || {
                step("step", "reps-less", by(false), "−", one(false))
            }),
            main_button(hands, "log", Some(name), inside),
            when(steps, move || {
                step("step", "reps-more", by(true), "+", one(true))
            }),
        ],
        row,
    )
}

/// True while what was heard of the set is offered in place of what is prescribed.
fn heard(hands: Hands) -> Seen<bool> {
    let app = hands.app;
    Seen::new(move || {
        let now = app.now.get();
        app.model.with(|model| {
            let state = model.session.as_ref().map(|session| session.state());
            state.is_some_and(|state| {
                let stopped = state.current().is_some_and(|slot| slot.heard.is_some());
                stopped || state.heard(&now, COUNT_IN_SECONDS).is_some()
            })
        })
    })
}

/// True where seconds or metres are counted in place of reps.
fn measured(target: &Target) -> bool {
    matches!(target, Target::Timed(_) | Target::Distance(_))
}

/// True where there is a load to choose.
pub fn has_load(board: &Board) -> bool {
    board.basis.is_loaded()
}

/// True where a reserve can be told: a hold or a way has none, but where the next load goes by it.
pub fn has_reserve(board: &Board) -> bool {
    board.asks_reserve || !measured(&board.target)
}

/// The small buttons under a set.
fn set_row(hands: Hands) -> Vec<AnyView> {
    let Hands { app, board, .. } = hands;
    let loaded = Seen::new(move || hands.board_is(has_load));
    let working = app.of(works);
    let from = Seen::new(move || {
        let now = app.now.get();
        app.model.with(|model| {
            let state = model.session.as_ref()?.state();
            state.counts_from(state.current()?, &now, COUNT_IN_SECONDS)
        })
    });
    let reserve = text(move || match board.get() {
        Some(Board {
            reserve: Some(reserve),
            ..
        }) => say!("{reserve} in reserve", reserve),
        Some(board) if board.asks_reserve && !measured(&board.target) => t("reps left?").to_owned(),
        _ => t("reserve").to_owned(),
    });
    let reserves = Seen::new(move || hands.board_is(has_reserve));
    let by_ear = dynamic(move || {
        if working.get() {
            button("", "cues-stop", t("stop cues"), move || hands.cues())
        } else {
            let face = text(move || {
                let asked = board.with(|board| hands.asked(board.as_ref()?));
                match asked {
                    Some(Sure::Begin) => t("sure? by ear").to_owned(),
                    _ => t("by ear").to_owned(),
                }
            });
            button("", "cues-begin", face, move || hands.cues())
        }
    });
    let count = dynamic(move || match from.get() {
        None => ().into_any(),
        Some(from) => button("", "count-taps", count_word(from), move || {
            hands.count_from(from);
        }),
    });
    vec![
        when(loaded, move || {
            button("", "load", t("load"), move || hands.open.set(Open::Load))
        }),
        when(reserves, move || {
            button("", "reserve", reserve, move || {
                hands.open.set(Open::Reserve)
            })
        }),
        by_ear,
        count,
        button("", "more", t("more"), move || hands.open.set(Open::More)),
    ]
}

fn count_word(from: Reps) -> &'static str {
    if from == Reps::MIN {
        t("tap reps")
    } else {
        t("tap on")
    }
}

/// The small buttons while taps count reps: the one that logs, and the way back.
fn counting_row(hands: Hands) -> Vec<AnyView> {
    let offer = hands.offer;
    let log = text(move || {
        let said = offer.get().map(|offer| amount_line(&offer));
        say!("log {amount}", amount = said.unwrap_or_default())
    });
    vec![
        button("", "count-stop", t("as planned"), move || {
            hands.stop_counting();
        }),
        button("strong", "count-log", log, move || hands.log()),
        button("", "more", t("more"), move || hands.open.set(Open::More)),
    ]
}

/// The pad of a rest: begin the next set by ear, or stretch, cut or hold the rest.
pub fn rest_pad(hands: Hands) -> AnyView {
    let app = hands.app;
    let held = app.of(held);
    let hold = dynamic(move || {
        if held.get() {
            button("", "rest-end", t("end rest"), move || hands.hold())
        } else {
            button("", "rest-hold", t("hold here"), move || hands.hold())
        }
    });
    let over = Seen::new(move || {
        let now = app.now.get();
        app.model.with(|model| minutes_over(model, &now))
    });
    let short = dynamic(move || match over.get() {
        Some(over) => button("", "short", say!("{over} min over", over), move || {
            hands.open.set(Open::Short);
        }),
        None => ().into_any(),
    });
    let begin = dynamic(move || {
        let asked = hands.board.with(|board| hands.asked(board.as_ref()?));
        match asked {
            Some(Sure::Begin) => {
                let (figure, is_word, word) = sure_said();
                face(figure, is_word, word)
            }
            _ => face(
                t_in("pad", "Begin").to_owned(),
                true,
                say!(
                    "count-in {seconds} s, then by ear",
                    seconds = COUNT_IN_SECONDS
                ),
            ),
        }
    });
    frame(
        t("Rest"),
        vec![
            rest_step(hands, "rest-less", false),
            main_button(hands, "begin-set", None, begin),
            rest_step(hands, "rest-more", true),
        ],
        row(vec![
            button("", "undo-set", t("undo set"), move || hands.undo_set()),
            hold,
            short,
            button("", "more", t("more"), move || hands.open.set(Open::More)),
        ]),
    )
}
