//! The pad: the area that logs the set, begins the next one, or ends the session.

use super::screen::Open;
use crate::device::sound::Sound;
use crate::session::{Board, Phase, What};
use crate::ui::stanchion::{Stanchion, moment, stanchion};
use crate::units::{Reps, clock};
use leptos::prelude::*;

/// A second tap on the large button within this time is taken for an accident: a wet finger, a bounce.
const SLIP_MS: u64 = 600;

/// Seconds by which the rest is stretched or cut.
const REST_STEP_SECONDS: i32 = 15;

/// Whether a tap on the large button counts: not when it came right after another.
fn counts(last: StoredValue<Option<u64>>) -> bool {
    let now = moment().tick.ms;
    let slip = last
        .get_value()
        .is_some_and(|last| now.saturating_sub(last) < SLIP_MS);
    if !slip {
        last.set_value(Some(now));
    }
    !slip
}

/// When the pad was last tapped; shared by all pads, since a tap swaps one for another.
#[derive(Clone, Copy)]
pub struct LastTap(StoredValue<Option<u64>>);

impl LastTap {
    /// Nothing was tapped yet.
    pub fn none() -> LastTap {
        LastTap(StoredValue::new(None))
    }
}

fn begin_set(app: Stanchion, board: Memo<Option<Board>>) {
    app.sound.with_value(Sound::unlock);
    if let Some(board) = board.get_untracked() {
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
        app.act(what);
    }
}

fn step_reps(app: Stanchion, board: &Board, by: i64) {
    if let Some(reps) = board.reps {
        let reps = Reps::saturating(i64::from(reps) + by);
        app.act(What::RepsChosen {
            set: board.key,
            reps,
        });
    }
}

/// The pad of a set: one tap logs it as it stands on the board.
#[component]
pub fn SetPad(board: Memo<Option<Board>>, open: RwSignal<Open>) -> impl IntoView {
    let app = stanchion();
    let tap = expect_context::<LastTap>().0;
    let working = app.of(|model| {
        model
            .session
            .as_ref()
            .is_some_and(|session| matches!(session.state().phase, Phase::Working { .. }))
    });
    let over = Memo::new(move |_| {
        let now = app.now.get();
        app.model.with(
            |model| match model.session.as_ref().map(|session| session.state().phase) {
                Some(Phase::Resting(rest)) => rest
                    .left_ms(&now)
                    .filter(|left| *left <= 0)
                    .map(|left| -left / 1000),
                _ => None,
            },
        )
    });
    let counted = Memo::new(move |_| {
        board.with(|board| board.as_ref().is_some_and(|board| board.reps.is_some()))
    });
    let needs_load = Memo::new(move |_| {
        board.with(|board| {
            board
                .as_ref()
                .is_some_and(|board| board.basis.has_load() && board.load.is_none())
        })
    });
    let step = move |by| {
        if let Some(board) = board.get_untracked() {
            step_reps(app, &board, by);
        }
    };
    view! {
        <section class="pad" data-part="pad" aria-label="Log">
            <div class="pad-log">
                <Show when=move || counted.get()>
                    <button class="step" aria-label="one rep less" data-part="reps-less" on:click=move |_| step(-1)>
                        "−"
                    </button>
                </Show>
                <button
                    class="pad-main"
                    data-part="log"
                    on:click=move |_| {
                        if needs_load.get_untracked() {
                            open.set(Open::Load);
                        } else if counts(tap) && let Some(board) = board.get_untracked() {
                            log(app, &board);
                        }
                    }
                >
                    {move || match board.get().and_then(|board| board.reps) {
                        _ if needs_load.get() => view! { <span class="pad-figure word">"Load?"</span> }.into_any(),
                        Some(reps) => view! { <span class="pad-figure">{reps.to_string()}</span> }.into_any(),
                        None => view! { <span class="pad-figure word">"Done"</span> }.into_any(),
                    }}
                    <span class="pad-word">
                        {move || match over.get() {
                            _ if needs_load.get() => "tap to choose the load".to_owned(),
                            Some(seconds) => format!("rest over by {} · tap when racked", clock(seconds)),
                            None => "tap when racked".to_owned(),
                        }}
                    </span>
                </button>
                <Show when=move || counted.get()>
                    <button class="step" aria-label="one rep more" data-part="reps-more" on:click=move |_| step(1)>
                        "+"
                    </button>
                </Show>
            </div>
            <div class="pad-row">
                {move || {
                    let board = board.get();
                    board.as_ref().is_some_and(|board| board.basis.has_load()).then(|| view! {
                        <button data-part="load" on:click=move |_| open.set(Open::Load)>"load"</button>
                    })
                }}
                <button data-part="reserve" on:click=move |_| open.set(Open::Reserve)>
                    {move || board.get().and_then(|board| board.reserve).map_or_else(
                        || "reserve".to_owned(),
                        |reserve| format!("{reserve} in reserve"),
                    )}
                </button>
                {move || if working.get() {
                    view! {
                        <button data-part="cues-stop" on:click=move |_| {
                            if let Some(board) = board.get_untracked() {
                                app.act(What::SetStopped { set: board.key });
                            }
                        }>"stop cues"</button>
                    }
                    .into_any()
                } else {
                    view! { <button data-part="cues-begin" on:click=move |_| begin_set(app, board)>"by ear"</button> }
                        .into_any()
                }}
                <button data-part="more" on:click=move |_| open.set(Open::More)>"more"</button>
            </div>
        </section>
    }
}

/// The pad of a rest: begin the next set by ear, or stretch, cut or hold the rest.
#[component]
pub fn RestPad(open: RwSignal<Open>) -> impl IntoView {
    let app = stanchion();
    let tap = expect_context::<LastTap>().0;
    let held = app.of(
        |model| match model.session.as_ref().map(|session| session.state().phase) {
            Some(Phase::Resting(rest)) => rest.held,
            _ => false,
        },
    );
    let board = app.of(super::screen::current_board);
    let change = move |by_seconds| {
        app.act(What::RestChanged { by_seconds });
    };
    view! {
        <section class="pad" data-part="pad" aria-label="Rest">
            <div class="pad-log">
                <button
                    class="step words"
                    aria-label="15 seconds less rest"
                    data-part="rest-less"
                    on:click=move |_| change(-REST_STEP_SECONDS)
                >
                    "−15 s"
                </button>
                <button
                    class="pad-main"
                    data-part="begin-set"
                    on:click=move |_| {
                        if counts(tap) {
                            begin_set(app, board);
                        }
                    }
                >
                    <span class="pad-figure word">"Begin"</span>
                    <span class="pad-word">"count-in 3 s, then by ear"</span>
                </button>
                <button
                    class="step words"
                    aria-label="15 seconds more rest"
                    data-part="rest-more"
                    on:click=move |_| change(REST_STEP_SECONDS)
                >
                    "+15 s"
                </button>
            </div>
            <div class="pad-row">
                <button data-part="undo-set" on:click=move |_| app.undo_set()>"undo set"</button>
                <Show
                    when=move || !held.get()
                    fallback=move || view! {
                        <button data-part="rest-end" on:click=move |_| { app.act(What::RestEnded); }>"end rest"</button>
                    }
                >
                    <button data-part="rest-hold" on:click=move |_| { app.act(What::RestHeld); }>"hold here"</button>
                </Show>
                <button data-part="more" on:click=move |_| open.set(Open::More)>"more"</button>
            </div>
        </section>
    }
}

/// The pad when nothing is left to do.
#[component]
pub fn DonePad(open: RwSignal<Open>) -> impl IntoView {
    let app = stanchion();
    let tap = expect_context::<LastTap>().0;
    view! {
        <section class="pad" data-part="pad" aria-label="End">
            <div class="pad-log">
                <button
                    class="pad-main"
                    data-part="end"
                    on:click=move |_| {
                        if counts(tap) {
                            app.act(What::Ended);
                        }
                    }
                >
                    <span class="pad-figure word">"End"</span>
                    <span class="pad-word">"tap to close the session"</span>
                </button>
            </div>
            <div class="pad-row">
                <button data-part="undo-set" on:click=move |_| app.undo_set()>"undo set"</button>
                <button data-part="amend" on:click=move |_| open.set(Open::Amend)>"change set"</button>
                <button data-part="more" on:click=move |_| open.set(Open::More)>"more"</button>
            </div>
        </section>
    }
}
