//! What earlier sessions say about an exercise, as the rules see it.

use super::unfed::Unfed;
use crate::sheet::{Block, LoadBasis};
use crate::units::{Load, Metres, Reps, Rir, Seconds};
use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// How much was done of a set without repetitions.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Stretch {
    /// Held for so long.
    Held(Seconds),
    /// Carried so far.
    Carried(Metres),
}

impl Stretch {
    /// The bare number of seconds or metres.
    #[must_use]
    pub fn get(self) -> u32 {
        match self {
            Stretch::Held(seconds) => u32::from(seconds.get()),
            Stretch::Carried(metres) => u32::from(metres.get()),
        }
    }
}

/// One set as the rules see it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SetResult {
    /// Load as written on the block's basis.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub load: Option<Load>,
    /// Full repetitions.
    pub reps: Reps,
    /// How long it was held or how far carried; none for a set of repetitions or stages.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stretch: Option<Stretch>,
    /// Of a set in stages how much was done of each, in seconds where it is held and in repetitions else; empty for other sets.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub stages: Vec<u16>,
    /// Repetitions asked for at least.
    pub low: Reps,
    /// Top of the repetitions asked for.
    pub top: Reps,
    /// Reps in reserve, when said.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub reserve: Option<Rir>,
    /// True for plain work sets: no ramp-up, back-off, drop or staged set.
    pub work: bool,
    /// True for a set that goes on until no rep more can be done: to failure, or so many and more.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub to_limit: bool,
    /// True where reps were to be left in reserve, by the line or by the rule: the set stops as planned anywhere in its range.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub to_spare: bool,
    /// Why its kind of set says nothing about strength; none for a plain set, and in rows of older versions.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub unfed: Option<Unfed>,
}

/// What was done of one exercise in one session.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Performance {
    /// The session.
    pub session: Uuid,
    /// When it began.
    pub at: DateTime<FixedOffset>,
    /// The prescription, told apart from others of the same exercise: see [`crate::sheet::Block::shape`].
    pub shape: String,
    /// What the loads are added to; none in rows of older versions.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub basis: Option<LoadBasis>,
    /// Body mass on the day, when known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub body_mass: Option<Load>,
    /// Its counted sets in order.
    pub sets: Vec<SetResult>,
    /// Plain work sets that the block planned and that were not done.
    #[serde(default, skip_serializing_if = "is_none_left")]
    pub left: u8,
}

impl Performance {
    /// Whether both were done in one session.
    #[must_use]
    pub(super) fn is_of_one_session(&self, other: &Performance) -> bool {
        (self.at, self.session) == (other.at, other.session)
    }
}

/// Of `history` what was moved as the block moves it: see [`Block::moved_shape`]. What else the exercise was done with says
/// nothing of strength here.
pub fn moved_alike<'a>(
    history: &'a [Performance],
    block: &Block,
) -> impl Iterator<Item = &'a Performance> + Clone + use<'a> {
    let moved = block.moved_shape();
    let alike = move |done: &&Performance| done.shape.starts_with(&moved);
    history.iter().filter(alike)
}

/// The last of each session's performances, in order: where two blocks of a session are alike, the later one says what could
/// be done in it, the earlier being in the muscles.
pub(super) fn last_of_each_session(history: &[Performance]) -> impl Iterator<Item = &Performance> {
    let sessions = history.chunk_by(Performance::is_of_one_session);
    sessions.filter_map(<[Performance]>::last)
}

// Serde hands over a reference.
#[allow(clippy::trivially_copy_pass_by_ref)]
fn is_none_left(left: &u8) -> bool {
    *left == 0
}

#[cfg(test)]
#[path = "history_tests.rs"]
mod tests;
