//! What was done in one set.

use crate::units::{Load, Metres, Reps, Rir, Seconds};
use crate::words::many;
use serde::{Deserialize, Serialize};

/// How much of one stage was done.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum StageAmount {
    /// Held for so long.
    Hold(Seconds),
    /// Full repetitions.
    Reps(Reps),
    /// Partial repetitions.
    Partials(Reps),
}

impl StageAmount {
    /// Its repetitions, full or partial; none for what is held.
    #[must_use]
    pub fn count(&self) -> Option<Reps> {
        match self {
            StageAmount::Reps(reps) | StageAmount::Partials(reps) => Some(*reps),
            StageAmount::Hold(_) => None,
        }
    }

    /// The bare number of seconds or repetitions.
    #[must_use]
    pub fn get(&self) -> u16 {
        match self {
            StageAmount::Hold(seconds) => seconds.get(),
            StageAmount::Reps(reps) | StageAmount::Partials(reps) => reps.get(),
        }
    }

    /// So much of the same kind of stage.
    #[must_use]
    pub fn of_as_much(&self, number: u16) -> StageAmount {
        let number = i64::from(number);
        match self {
            StageAmount::Hold(_) => StageAmount::Hold(Seconds::saturating(number)),
            StageAmount::Reps(_) => StageAmount::Reps(Reps::saturating(number)),
            StageAmount::Partials(_) => StageAmount::Partials(Reps::saturating(number)),
        }
    }

    /// How much was done, in words.
    fn said(&self) -> String {
        let reps = usize::from(self.get());
        match self {
            StageAmount::Hold(seconds) => format!("{seconds} s"),
            StageAmount::Reps(_) => many(reps, "{n} rep", "{n} reps"),
            StageAmount::Partials(_) => many(reps, "{n} partial", "{n} partials"),
        }
    }
}

/// How much was done of a set in stages, in words.
#[must_use]
pub fn stages_said(stages: &[StageAmount]) -> String {
    let said: Vec<String> = stages.iter().map(StageAmount::said).collect();
    said.join(" → ")
}

/// How much was done.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Amount {
    /// Repetitions; where the sides work apart, those of each side.
    Reps(Reps),
    /// A time under load.
    Timed(Seconds),
    /// A distance.
    Distance(Metres),
    /// The stages in order.
    Stages(Vec<StageAmount>),
    /// Repetitions of sides that did not do as many: the side that was first, then the other.
    Sides {
        /// Of the first side.
        first: Reps,
        /// Of the other.
        second: Reps,
    },
}

impl Amount {
    /// The same with one rep, or five seconds held, more or fewer in the stage of that place.
    #[must_use]
    pub fn stage_stepped(&self, at: usize, more: bool) -> Amount {
        let sign = if more { 1 } else { -1 };
        let mut amount = self.clone();
        if let Amount::Stages(stages) = &mut amount {
            match stages.get_mut(at) {
                Some(StageAmount::Hold(held)) => {
                    *held = Seconds::saturating(i64::from(*held) + 5 * sign);
                }
                Some(StageAmount::Reps(reps) | StageAmount::Partials(reps)) => {
                    *reps = Reps::saturating(i64::from(*reps) + sign);
                }
                None => {}
            }
        }
        amount
    }

    /// Repetitions of the first and the second side, in the simpler form where both did as many.
    #[must_use]
    pub fn of_sides(first: Reps, second: Reps) -> Amount {
        if first == second {
            Amount::Reps(first)
        } else {
            Amount::Sides { first, second }
        }
    }

    /// The repetitions that the lifter counted last: of a staged set those of its last counted stage; of sides that
    /// differ the fewer, so that no rule takes the stronger side for both. Common practice, no source.
    #[must_use]
    pub fn reps(&self) -> Option<Reps> {
        match self {
            Amount::Reps(reps) => Some(*reps),
            Amount::Sides { first, second } => Some(*first.min(second)),
            Amount::Timed(_) | Amount::Distance(_) => None,
            Amount::Stages(stages) => stages.iter().rev().find_map(StageAmount::count),
        }
    }

    /// Full repetitions of both sides, where `rounds` sides do the set one after the other: what volume load counts.
    #[must_use]
    pub fn reps_of_sides(&self, rounds: u8) -> u32 {
        match self {
            Amount::Sides { first, second } => u32::from(first.get()) + u32::from(second.get()),
            other => other.full_reps() * u32::from(rounds),
        }
    }

    /// Full repetitions in all, without partials; of sides that differ the fewer.
    #[must_use]
    pub fn full_reps(&self) -> u32 {
        match self {
            Amount::Reps(reps) => u32::from(reps.get()),
            Amount::Sides { first, second } => u32::from(first.min(second).get()),
            Amount::Timed(_) | Amount::Distance(_) => 0,
            Amount::Stages(stages) => stages
                .iter()
                .map(|stage| match stage {
                    StageAmount::Reps(reps) => u32::from(reps.get()),
                    StageAmount::Hold(_) | StageAmount::Partials(_) => 0,
                })
                .sum(),
        }
    }
}

/// What was done in one set.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Done {
    /// The load as written on the block's basis: on the bar, added, or assisting. None where there is none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub load: Option<Load>,
    /// How much.
    pub amount: Amount,
    /// Reps left in reserve, when said.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub reserve: Option<Rir>,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_stage_is_stepped_and_the_others_stay() {
        let stages = |held, slow, partials| {
            Amount::Stages(vec![
                StageAmount::Hold(Seconds::saturating(held)),
                StageAmount::Reps(Reps::saturating(slow)),
                StageAmount::Partials(Reps::saturating(partials)),
            ])
        };
        let done = stages(10, 6, 8);
        assert_eq!(done.stage_stepped(0, false), stages(5, 6, 8));
        assert_eq!(done.stage_stepped(1, false), stages(10, 5, 8));
        assert_eq!(done.stage_stepped(2, true), stages(10, 6, 9));
        assert_eq!(done.stage_stepped(3, true), done);
        // Nothing is less than none.
        assert_eq!(stages(3, 0, 8).stage_stepped(0, false), stages(0, 0, 8));
        assert_eq!(stages(0, 0, 8).stage_stepped(1, false), stages(0, 0, 8));
        let reps = Amount::Reps(Reps::saturating(5));
        assert_eq!(reps.stage_stepped(0, true), reps);
    }
}
