//! The words and figures of the board: what is written how, and how large.

use crate::cues::{Phase as CuePhase, Position, position, set_timeline};
use crate::say;
use crate::session::{Amount, Board, Done, Moment, Phase, StageAmount, stage_offered, stages_said};
use crate::sheet::{LoadBasis, SideMode, Target};
use crate::ui::cueing::COUNT_IN_SECONDS;
use crate::ui::model::Model;
use crate::units::{Load, Reps, Unit, clock};
use crate::words::{many, many_of, t};
use std::fmt;

/// A figure for the board with the word behind it.
#[derive(Clone, PartialEq)]
pub struct Figure {
    /// The figure.
    pub text: String,
    /// The word.
    pub word: String,
}

impl fmt::Display for Figure {
    /// As a part of a sentence; of either there may be none.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match (self.text.as_str(), self.word.as_str()) {
            ("", said) | (said, "") => f.write_str(said),
            (text, word) => write!(f, "{text} {word}"),
        }
    }
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
        LoadBasis::Band(_) => basis.band().unwrap_or_default(),
        LoadBasis::Unloaded => String::new(),
        basis => basis.does(unit.to_string()),
    }
}

/// A load on the block's basis. Where nothing hangs on the body, or takes off it, there is no figure: words say so.
fn load_said(load: Load, basis: &LoadBasis, unit: Unit) -> Figure {
    match basis.nothing().filter(|_| load.is_zero()) {
        Some(said) => Figure {
            text: String::new(),
            word: said.to_owned(),
        },
        None => Figure {
            text: load.figure(unit),
            word: load_word(basis, unit),
        },
    }
}

/// The load of a set, where it has one; of a band there is no figure, and words say which.
pub fn load_figure(board: &Board, unit: Unit) -> Option<Figure> {
    match &board.basis {
        LoadBasis::Unloaded => None,
        LoadBasis::Band(_) => Some(Figure {
            text: String::new(),
            word: load_word(&board.basis, unit),
        }),
        basis => Some(match board.load {
            Some(load) => load_said(load, basis, unit),
            None => Figure {
                text: "?".to_owned(),
                word: say!("{word}: choose a load", word = load_word(basis, unit)),
            },
        }),
    }
}

/// What a set asks for.
pub fn target_figure(board: &Board) -> Figure {
    let each = match board.sides {
        SideMode::Both => "",
        SideMode::EachInTurn => t(" a side"),
        SideMode::OneHolds => t(" a side, the other holds"),
    };
    let reserve = match board.aim.map(crate::units::Rir::get) {
        Some(0) => t(", none in reserve").to_owned(),
        Some(n) => say!(", {n} in reserve", n),
        None => String::new(),
    };
    match &board.target {
        Target::Reps(reps) => match board.portions {
            Some((portions, pause)) => Figure {
                text: format!("{portions} × {reps}"),
                word: say!(
                    "reps{each}, {pause} s between{reserve}",
                    each,
                    pause,
                    reserve
                ),
            },
            None => Figure {
                text: reps.to_string(),
                word: say!("reps{each}{reserve}", each, reserve),
            },
        },
        Target::Timed(seconds) => Figure {
            text: clock(i64::from(seconds.get())),
            word: say!("hold{each}", each),
        },
        Target::Distance(metres) => Figure {
            text: metres.to_string(),
            word: say!("metres{each}", each),
        },
        Target::Stages(_) => Figure {
            text: String::new(),
            word: board.target.said() + each,
        },
    }
}

/// Which set of its kind it is, and with which band.
pub fn set_line(board: &Board) -> String {
    say!(
        "{kind} {number} of {of}",
        kind = board.kind,
        number = board.number,
        of = board.of,
    )
}

/// The line under the name: which set, what follows.
pub fn kind_line(board: &Board) -> String {
    let line = set_line(board);
    match board.then_rest {
        Some(rest) => say!("{line} · then rest {rest}", line, rest = rest.clock()),
        None => line,
    }
}

/// The bands next to the one of the set; none where the kit has no others.
pub fn bands_line(board: &Board) -> Option<String> {
    let words = [t("lighter"), t("heavier")].into_iter().zip(&board.bands);
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
                CuePhase::CountIn => counted(seconds, t("get set")),
                CuePhase::Hold => counted(seconds, t("s hold")),
                CuePhase::Pause => counted(seconds, t("s, breathe")),
                CuePhase::ChangeOver => counted(seconds, t("s, change sides")),
                CuePhase::Rest => None,
                CuePhase::Partial => counted(
                    span.rep.to_string(),
                    &many(
                        usize::from(span.rep_total),
                        "of {n} partial",
                        "of {n} partials",
                    ),
                ),
                CuePhase::Eccentric
                | CuePhase::Stretch
                | CuePhase::Concentric
                | CuePhase::Squeeze => {
                    let side = if span.side > 0 { t(", other side") } else { "" };
                    counted(
                        span.rep.to_string(),
                        &many_of(
                            usize::from(span.rep_total),
                            "of {n} rep{side}",
                            "of {n} reps{side}",
                            &[("side", &side)],
                        ),
                    )
                }
            }
        }
        Position::Open { seconds } => counted(clock(i64::from(seconds)), t("under way")),
        Position::Over => None,
    }
}

/// The amount on the large button: the figure, and whether it is set as a word.
pub fn pad_figure(target: &Target, offer: &Amount) -> (String, bool) {
    if let Some(stage) = stage_of(target, offer) {
        return (count_of(stage).to_string(), false);
    }
    match (offer, offer.reps()) {
        (Amount::Sides { first, second }, _) => (format!("{first} · {second}"), true),
        (Amount::Timed(seconds), _) => (seconds.clock(), true),
        (Amount::Distance(metres), _) => (format!("{metres} m"), true),
        (_, Some(reps)) => (reps.to_string(), false),
        (_, None) => (t("Done").to_owned(), true),
    }
}

/// The stage that the figure counts, of a set in stages: see [`stage_offered`].
fn stage_of<'a>(target: &Target, offer: &'a Amount) -> Option<&'a StageAmount> {
    match offer {
        Amount::Stages(stages) => stages.get(stage_offered(target, offer)?),
        _ => None,
    }
}

fn count_of(stage: &StageAmount) -> Reps {
    stage.count().unwrap_or(Reps::MIN)
}

/// How that which the figure counts of a set in stages is called.
pub fn stage_word(target: &Target, offer: &Amount) -> Option<&'static str> {
    let stage = stage_of(target, offer)?;
    let one = count_of(stage).get() == 1;
    Some(match stage {
        StageAmount::Partials(_) if one => t("partial"),
        StageAmount::Partials(_) => t("partials"),
        _ if one => t("rep"),
        _ => t("reps"),
    })
}

/// How much was done, in words.
pub fn amount_line(amount: &Amount) -> String {
    match amount {
        Amount::Reps(reps) => many(usize::from(reps.get()), "{n} rep", "{n} reps"),
        Amount::Sides { first, second } => say!("{first} and {second} reps", first, second),
        Amount::Timed(seconds) => say!("{time} held", time = seconds.clock()),
        Amount::Distance(metres) => format!("{metres} m"),
        Amount::Stages(stages) => stages_said(stages),
    }
}

/// What was logged of a set, in words.
pub fn logged_line(done: &Done, basis: &LoadBasis, unit: Unit) -> String {
    let amount = amount_line(&done.amount);
    match (done.load, basis) {
        (Some(load), LoadBasis::External) => {
            say!("{amount} at {load}", amount, load = load.shown(unit))
        }
        (Some(load), basis) => format!("{amount}, {}", load_said(load, basis, unit)),
        (None, _) => amount,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sheet::{RepTarget, Stage};
    use crate::units::{Seconds, Share};

    #[test]
    fn nothing_that_hangs_on_the_body_is_words_and_no_figure() {
        let said = |load: u16, basis: &LoadBasis| {
            let said = load_said(Load::whole_kg(load), basis, Unit::Kg);
            (said.text.clone(), said.to_string())
        };
        let words = |text: &str| (String::new(), text.to_owned());
        let share = LoadBasis::BodyMassShare(Share::percent(64));
        assert_eq!(said(0, &LoadBasis::BodyMassPlus), words("nothing added"));
        assert_eq!(said(0, &share), words("nothing added"));
        assert_eq!(said(0, &LoadBasis::BodyMassMinus), words("no assistance"));
        let both = |text: &str, all: &str| (text.to_owned(), all.to_owned());
        assert_eq!(said(5, &share), both("5", "5 kg added"));
        assert_eq!(
            said(20, &LoadBasis::BodyMassMinus),
            both("20", "20 kg assistance")
        );
        // What is lifted itself has a figure in any case.
        assert_eq!(said(0, &LoadBasis::External), both("0", "0 kg"));
    }

    #[test]
    fn of_stages_the_last_count_is_offered_and_of_a_set_left_before_it_the_last_begun() {
        let target = Target::Stages(vec![
            Stage::Hold {
                seconds: Seconds::saturating(10),
            },
            Stage::Reps {
                reps: RepTarget::Fixed(Reps::saturating(6)),
                tempo: "4/0/2/0".parse().unwrap(),
            },
            Stage::Partials {
                reps: RepTarget::AtLeast(Reps::saturating(8)),
            },
        ]);
        let said = |held, reps, partials| {
            let offer = Amount::Stages(vec![
                StageAmount::Hold(Seconds::saturating(held)),
                StageAmount::Reps(Reps::saturating(reps)),
                StageAmount::Partials(Reps::saturating(partials)),
            ]);
            let (figure, is_word) = pad_figure(&target, &offer);
            assert!(!is_word);
            format!("{figure} {}", stage_word(&target, &offer).unwrap())
        };
        assert_eq!(said(10, 6, 8), "8 partials");
        assert_eq!(said(10, 6, 0), "0 partials");
        assert_eq!(said(4, 0, 0), "0 reps");
        assert_eq!(said(10, 1, 0), "1 rep");
        assert_eq!(said(10, 6, 1), "1 partial");
        assert_eq!(said(10, 5, 3), "3 partials");
    }
}
