//! The board: the big figures of the current set, or of the rest and what comes after it.

use super::plates::Plates;
use super::screen::Open;
use super::tempo::TempoStrip;
use crate::cues::{Phase as CuePhase, Position, position, set_timeline};
use crate::session::{Amount, Board, Done, Phase};
use crate::sheet::{LoadBasis, SideMode, Target};
use crate::ui::cueing::COUNT_IN_SECONDS;
use crate::ui::model::{Keeping, Model};
use crate::ui::stanchion::stanchion;
use crate::units::{Unit, clock};
use leptos::prelude::*;

/// A figure for the board with the word behind it.
#[derive(Clone, PartialEq)]
struct Figure {
    text: String,
    word: String,
}

impl Figure {
    /// Class that makes the figure as large as its digits allow.
    fn size(&self) -> &'static str {
        match self.text.chars().count() {
            0..=2 => "figure chars-2",
            3 => "figure chars-3",
            4 => "figure chars-4",
            5 => "figure chars-5",
            _ => "figure chars-6",
        }
    }
}

/// What the load figure says, on the block's basis.
pub fn load_word(basis: &LoadBasis, unit: Unit) -> String {
    match basis {
        LoadBasis::External => unit.to_string(),
        LoadBasis::BodyMassPlus | LoadBasis::BodyMassShare(_) => format!("{unit} added"),
        LoadBasis::BodyMassMinus => format!("{unit} assistance"),
        LoadBasis::Band(label) => format!("{label} band"),
        LoadBasis::Unloaded => String::new(),
    }
}

fn load_figure(board: &Board, unit: Unit) -> Option<Figure> {
    match &board.basis {
        LoadBasis::Unloaded => None,
        LoadBasis::Band(_) => None,
        basis => Some(match board.load {
            Some(load) => Figure {
                text: load.figure(unit),
                word: load_word(basis, unit),
            },
            None => Figure {
                text: "?".to_owned(),
                word: format!("{}: choose a load", load_word(basis, unit)),
            },
        }),
    }
}

fn target_figure(board: &Board) -> Figure {
    let each = match board.sides {
        SideMode::Both => "",
        SideMode::EachInTurn => " a side",
        SideMode::OneHolds => " a side, the other holds",
    };
    let reserve = match board.aim.map(crate::units::Rir::get) {
        Some(0) => ", none in reserve".to_owned(),
        Some(n) => format!(", {n} in reserve"),
        None => String::new(),
    };
    match &board.target {
        Target::Reps(reps) => Figure {
            text: reps.to_string(),
            word: format!("reps{each}{reserve}"),
        },
        Target::Timed(seconds) => Figure {
            text: clock(i64::from(seconds.get())),
            word: format!("hold{each}"),
        },
        Target::Distance(metres) => Figure {
            text: metres.to_string(),
            word: format!("metres{each}"),
        },
        Target::Stages(_) => Figure {
            text: String::new(),
            word: board.target.to_string() + each,
        },
    }
}

/// The line under the name: which set, what follows.
fn kind_line(board: &Board) -> String {
    let mut line = format!("{} {} of {}", board.kind, board.number, board.of);
    if let LoadBasis::Band(label) = &board.basis {
        line.push_str(&format!(" · {label} band"));
    }
    match board.then_rest {
        Some(rest) => line + " · then rest " + &rest.clock(),
        None => line,
    }
}

/// What is under way in the set, by the clock.
pub fn under_way(model: &Model, now: &crate::session::Moment) -> Option<Position> {
    let state = model.session.as_ref()?.state();
    let Phase::Working { set, since } = &state.phase else {
        return None;
    };
    let slot = state.slot(*set)?;
    let at_ms = u32::try_from(now.since(since)).ok()?;
    Some(position(
        &set_timeline(&slot.planned, COUNT_IN_SECONDS),
        at_ms,
    ))
}

/// What a cue position says on the board, large.
fn counting(position: Position) -> Option<Figure> {
    let figure = |text: String, word: &str| {
        Some(Figure {
            text,
            word: word.to_owned(),
        })
    };
    match position {
        Position::Running { span, seconds_left } => {
            let seconds = seconds_left.to_string();
            match span.what {
                CuePhase::CountIn => figure(seconds, "get set"),
                CuePhase::Hold => figure(seconds, "s hold"),
                CuePhase::Pause => figure(seconds, "s, breathe"),
                CuePhase::ChangeOver => figure(seconds, "s, change sides"),
                CuePhase::Rest => None,
                CuePhase::Partial => figure(
                    span.rep.to_string(),
                    &format!("of {} partials", span.rep_total),
                ),
                CuePhase::Eccentric
                | CuePhase::Stretch
                | CuePhase::Concentric
                | CuePhase::Squeeze => {
                    figure(span.rep.to_string(), &format!("of {}", span.rep_total))
                }
            }
        }
        Position::Open { seconds } => figure(clock(i64::from(seconds)), "under way"),
        Position::Over => None,
    }
}

/// The board of a set.
#[component]
pub fn SetBoard(board: Memo<Option<Board>>) -> impl IntoView {
    let app = stanchion();
    let unit = app.of(Model::unit);
    let position = Memo::new(move |_| {
        let now = app.now.get();
        app.model.with(|model| under_way(model, &now))
    });
    let counted = Memo::new(move |_| position.get().and_then(counting));
    move || {
        board.get().map(|board| {
            let load = load_figure(&board, unit.get());
            let target = target_figure(&board);
            let main = load.clone().unwrap_or_else(|| target.clone());
            let staged = matches!(board.target, Target::Stages(_));
            let second = (load.is_some() || staged).then(|| target.clone());
            let tempo = board.tempo;
            view! {
                <section class="board" data-part="board">
                    <h1 class="board-exercise" data-part="exercise">{board.exercise.to_string()}</h1>
                    <p class="board-kind" data-part="kind">{kind_line(&board)}</p>
                    {(!main.text.is_empty()).then(|| view! {
                        <p class="board-main" data-part="main">
                            <span class=main.size()>{main.text.clone()}</span>
                            <span class="board-word">{main.word.clone()}</span>
                        </p>
                    })}
                    {move || match (counted.get(), second.clone()) {
                        (Some(count), _) => Some(view! {
                            <p class="board-second" data-part="count">
                                <span class="second">{count.text}</span>
                                <span class="board-word">{count.word}</span>
                            </p>
                        }
                        .into_any()),
                        (None, Some(second)) => Some(view! {
                            <p class="board-second" data-part="target">
                                <span class="second">{second.text}</span>
                                <span class="board-word">{second.word}</span>
                            </p>
                        }
                        .into_any()),
                        (None, None) => None,
                    }}
                    <Loaded board=board.clone() unit=unit.get()/>
                    {tempo.map(|tempo| view! { <TempoStrip tempo position/> })}
                    <p class="board-because" data-part="because">{board.because(unit.get())}</p>
                    {board.cue.map(|cue| view! { <p class="board-cue" data-part="cue">{cue.to_string()}</p> })}
                    {(!board.cautions.is_empty()).then(|| view! {
                        <ul class="board-cautions" data-part="cautions">
                            {board.cautions.iter().map(|line| view! { <li>{line.to_string()}</li> }).collect_view()}
                        </ul>
                    })}
                </section>
            }
        })
    }
}

/// The bar as it shall be loaded, and what changes on it.
#[component]
fn Loaded(board: Board, unit: Unit) -> impl IntoView {
    board.loading.map(|loading| {
        let change = board.change.map(|change| change.to_string());
        view! {
            <div class="loaded">
                <Plates loading unit/>
                <p class="quiet" data-part="change">{change}</p>
            </div>
        }
    })
}

/// What was logged last, in words.
pub fn logged_line(done: &Done, basis: &LoadBasis, unit: Unit) -> String {
    let amount = match &done.amount {
        Amount::Reps(reps) => format!("{reps} reps"),
        Amount::Timed(seconds) => format!("{} held", seconds.clock()),
        Amount::Distance(metres) => format!("{metres} m"),
        Amount::Stages(stages) => format!("{} stages", stages.len()),
    };
    match (done.load, basis) {
        (Some(load), LoadBasis::External) => format!("{amount} at {}", load.shown(unit)),
        (Some(load), basis) => {
            format!("{amount}, {} {}", load.figure(unit), load_word(basis, unit))
        }
        (None, _) => amount,
    }
}

/// The rest, and what comes after it.
#[component]
pub fn NextUp(board: Memo<Option<Board>>, open: RwSignal<Open>) -> impl IntoView {
    let app = stanchion();
    let unit = app.of(Model::unit);
    let left = Memo::new(move |_| {
        let now = app.now.get();
        app.model.with(
            |model| match model.session.as_ref().map(|session| session.state().phase) {
                // Rounded up: 0:00 is over.
                Some(Phase::Resting(rest)) => rest
                    .left_ms(&now)
                    .map(|ms| (ms + 999).div_euclid(1000).max(0)),
                _ => None,
            },
        )
    });
    let logged = app.of(|model| {
        let state = model.session.as_ref()?.state();
        let slot = state.last_logged()?;
        Some(logged_line(
            &slot.logged()?.done,
            &state.block_of(slot).basis,
            model.unit(),
        ))
    });
    let saved = app.of(|model| match (&model.keeping, model.unsaved) {
        (Keeping::Nothing(_), _) => "in memory only",
        (_, 0) => "saved",
        _ => "saving",
    });
    view! {
        <section class="board" data-part="board">
            <h1 class="board-exercise">"Rest"</h1>
            <p class="board-main" data-part="rest" role="timer" aria-label="rest left">
                {move || match left.get() {
                    Some(seconds) => view! { <span class="figure chars-4">{clock(seconds)}</span> }.into_any(),
                    None => view! { <span class="figure chars-6">"held"</span> }.into_any(),
                }}
            </p>
            <button class="plain logged" data-part="amend" on:click=move |_| open.set(Open::Amend)>
                <span data-part="logged">{move || logged.get().map(|line| format!("logged {line}"))}</span>
                " · "
                <span data-part="saved" role="status">{move || saved.get()}</span>
                <span class="logged-change">"change"</span>
            </button>
            {move || board.get().map(|board| {
                let load = load_figure(&board, unit.get()).map(|figure| format!("{} {}, ", figure.text, figure.word));
                let target = target_figure(&board);
                let target = if target.text.is_empty() { target.word } else { format!("{} {}", target.text, target.word) };
                view! {
                    <p class="next" data-part="next">
                        <strong>{format!("Next: {}{target}", load.unwrap_or_default())}</strong>
                    </p>
                    <p class="board-kind" data-part="next-exercise">
                        {format!("{} · {} {} of {}", board.exercise, board.kind, board.number, board.of)}
                    </p>
                    <Loaded board=board.clone() unit=unit.get()/>
                    <p class="board-because" data-part="because">{board.because(unit.get())}</p>
                }
            })}
        </section>
    }
}
