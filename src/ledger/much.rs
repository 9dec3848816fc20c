//! How much of a set was done, as sets are compared: repetitions, a time or a distance.

use crate::strength::{SetResult, Stretch, Unfed};
use crate::units::{Metres, Reps, Seconds, clock};
use crate::words::many;
use serde::{Deserialize, Serialize};

/// How much was done. Only what is counted in the same way is compared: see [`Much::is_like`].
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Much {
    /// Full repetitions.
    Reps(Reps),
    /// Full repetitions of all stages of a set together.
    Staged(Reps),
    /// Held, or carried by time.
    Held(Seconds),
    /// Carried so far.
    Carried(Metres),
}

impl Much {
    /// What of a set counts for bests; none where nothing was done, and for ramp-ups, back-offs, drops and clusters.
    #[must_use]
    pub fn of(set: &SetResult) -> Option<Much> {
        let much = match (set.stretch, set.unfed) {
            (None, None) if set.work => Much::Reps(set.reps),
            (None, Some(Unfed::Staged)) => Much::Staged(set.reps),
            (Some(Stretch::Held(seconds)), Some(Unfed::Timed | Unfed::Distance)) => {
                Much::Held(seconds)
            }
            (Some(Stretch::Carried(metres)), Some(Unfed::Timed | Unfed::Distance)) => {
                Much::Carried(metres)
            }
            _ => return None,
        };
        (much.get() > 0).then_some(much)
    }

    /// The bare number of repetitions, seconds or metres.
    #[must_use]
    pub fn get(self) -> u32 {
        match self {
            Much::Reps(reps) | Much::Staged(reps) => u32::from(reps.get()),
            Much::Held(seconds) => u32::from(seconds.get()),
            Much::Carried(metres) => u32::from(metres.get()),
        }
    }

    /// Whether both are counted in the same way.
    #[must_use]
    pub fn is_like(self, other: Much) -> bool {
        std::mem::discriminant(&self) == std::mem::discriminant(&other)
    }

    /// For people: “45 s”, “2:05”, “20 m”, “8 reps”.
    #[must_use]
    pub fn said(self) -> String {
        match self {
            Much::Reps(reps) => many(usize::from(reps.get()), "{n} rep", "{n} reps"),
            Much::Staged(reps) => many(
                usize::from(reps.get()),
                "{n} full rep in stages",
                "{n} full reps in stages",
            ),
            Much::Held(seconds) if seconds.get() < 60 => format!("{seconds} s"),
            Much::Held(seconds) => clock(i64::from(seconds)),
            Much::Carried(metres) => format!("{metres} m"),
        }
    }
}
