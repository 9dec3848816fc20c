//! The words and figures of the board: what is written how, and how large.

use crate::cues::{Phase as CuePhase, Position, position, set_timeline};
use crate::session::{Amount, Board, Done, Moment, Phase, StageAmount};
use crate::sheet::{LoadBasis, SideMode, Target};
use crate::ui::cueing::COUNT_IN_SECONDS;
use crate::ui::model::Model;
use crate::units::{Unit, clock};

/// A figure for the board with the word behind it.
#[derive(Clone, PartialEq)]
pub struct Figure {
    /// The figure.
    pub text: String,
    /// The word.
    pub word: String,
}

impl Figure {
    /// Class that makes the figure as large as its digits allow.
    pub fn size(&self) -> &'static str {
        match self.text.chars().count() {
            0..=4 => "figure chars-4",
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

/// The load of a set, where it has one.
pub fn load_figure(board: &Board, unit: Unit) -> Option<Figure> {
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

/// What a set asks for.
pub fn target_figure(board: &Board) -> Figure {
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
pub fn kind_line(board: &Board) -> String {
    let mut line = format!("{} {} of {}", board.kind, board.number, board.of);
    if let LoadBasis::Band(label) = &board.basis {
        line.push_str(&format!(" · {label} band"));
    }
    match board.then_rest {
        Some(rest) => line + " · then rest " + &rest.clock(),
        None => line,
    }
}

/// The bands next to the one of the set; none where the kit has no others.
pub fn bands_line(board: &Board) -> Option<String> {
    let words = ["lighter", "heavier"].into_iter().zip(&board.bands);
    let said: Vec<String> = words
        .filter_map(|(word, band)| Some(format!("{word}: {}", band.as_ref()?)))
        .collect();
    (!said.is_empty()).then(|| said.join(" · "))
}

/// What is under way in the set as it is heard: so many milliseconds behind the clock.
pub fn under_way(model: &Model, now: &Moment, behind_ms: u32) -> Option<Position> {
    let state = model.session.as_ref()?.state();
    let Phase::Working { set, since } = &state.phase else {
        return None;
    };
    let slot = state.slot(*set)?;
    let at_ms = u32::try_from(now.since(since)).ok()?;
    let at_ms = at_ms.saturating_sub(behind_ms);
    Some(position(
        &set_timeline(&slot.planned, COUNT_IN_SECONDS),
        at_ms,
    ))
}

/// What a cue position says on the board, large.
pub fn counting(position: Position) -> Option<Figure> {
    let counted = |text: String, word: &str| {
        Some(Figure {
            text,
            word: word.to_owned(),
        })
    };
    match position {
        Position::Running { span, seconds_left } => {
            let seconds = seconds_left.to_string();
            match span.what {
                CuePhase::CountIn => counted(seconds, "get set"),
                CuePhase::Hold => counted(seconds, "s hold"),
                CuePhase::Pause => counted(seconds, "s, breathe"),
                CuePhase::ChangeOver => counted(seconds, "s, change sides"),
                CuePhase::Rest => None,
                CuePhase::Partial => counted(
                    span.rep.to_string(),
                    &format!("of {} partials", span.rep_total),
                ),
                CuePhase::Eccentric
                | CuePhase::Stretch
                | CuePhase::Concentric
                | CuePhase::Squeeze => {
                    let side = if span.side > 0 { ", other side" } else { "" };
                    counted(
                        span.rep.to_string(),
                        &format!("of {}{side}", span.rep_total),
                    )
                }
            }
        }
        Position::Open { seconds } => counted(clock(i64::from(seconds)), "under way"),
        Position::Over => None,
    }
}

/// How much was done, in words.
pub fn amount_line(amount: &Amount) -> String {
    match amount {
        Amount::Reps(reps) if reps.get() == 1 => "1 rep".to_owned(),
        Amount::Reps(reps) => format!("{reps} reps"),
        Amount::Sides { first, second } => format!("{first} and {second} reps"),
        Amount::Timed(seconds) => format!("{} held", seconds.clock()),
        Amount::Distance(metres) => format!("{metres} m"),
        Amount::Stages(stages) => {
            let said: Vec<String> = stages
                .iter()
                .map(|stage| match stage {
                    StageAmount::Hold(seconds) => format!("{seconds} s"),
                    StageAmount::Reps(reps) => format!("{reps} reps"),
                    StageAmount::Partials(reps) => format!("{reps} partials"),
                })
                .collect();
            said.join(" → ")
        }
    }
}

/// What was logged of a set, in words.
pub fn logged_line(done: &Done, basis: &LoadBasis, unit: Unit) -> String {
    let amount = amount_line(&done.amount);
    match (done.load, basis) {
        (Some(load), LoadBasis::External) => format!("{amount} at {}", load.shown(unit)),
        (Some(load), basis) => {
            format!("{amount}, {} {}", load.figure(unit), load_word(basis, unit))
        }
        (None, _) => amount,
    }
}
