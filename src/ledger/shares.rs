//! What was done of each exercise in a session, counted: what the weeks are summed from without its events.

use super::record::{BlockRecord, SessionRecord};
use super::volume::{Volume, VolumeLoad};
use crate::order;
use crate::sheet::{ExerciseId, SetKind};
use serde::{Deserialize, Serialize};

/// A set counts as hard when at most so many reps were left: the volume literature counts sets near failure (Pelland et
/// al. 2024, preprint; where near ends is common practice, no source).
pub const HARD_RESERVE_MAX: u8 = 4;

/// What was done of one exercise in a session.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ShareOf {
    /// The exercise.
    pub exercise: ExerciseId,
    /// Its sets but ramp-ups.
    pub sets: u32,
    /// Those of them that were hard: told to leave at most [`HARD_RESERVE_MAX`] reps, or to failure with nothing told. Any
    /// other of which nothing was told is not counted.
    pub hard: u32,
    /// Volume load of its work sets.
    pub volume: VolumeLoad,
}

/// The shares of a session, one an exercise, by the id of the exercise; exercises of which only ramp-ups were done are
/// there with no set.
#[must_use]
pub fn shares_of(record: &SessionRecord) -> Vec<ShareOf> {
    let mut ids: Vec<&ExerciseId> = Vec::new();
    for block in record.blocks.iter().filter(|block| !block.lines.is_empty()) {
        if !ids.contains(&&block.block.exercise.id) {
            ids.push(&block.block.exercise.id);
        }
    }
    order::by(&mut ids, Ord::cmp);
    ids.into_iter()
        .map(|exercise| share(record, exercise))
        .collect()
}

fn share(record: &SessionRecord, exercise: &ExerciseId) -> ShareOf {
    let blocks = || {
        let blocks = record.blocks.iter();
        blocks.filter(|block| block.block.exercise.id == *exercise)
    };
    let work = || {
        let lines = blocks().flat_map(|block| &block.lines);
        lines.filter(|line| line.kind.is_work())
    };
    let hard = work().filter(|line| {
        let told = line
            .reserve
            .map(|reserve| reserve.get() <= HARD_RESERVE_MAX);
        told.unwrap_or(line.kind == SetKind::ToFailure)
    });
    let lines = blocks()
        .flat_map(|BlockRecord { block, lines, .. }| lines.iter().map(move |line| (block, line)));
    let count = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
    ShareOf {
        exercise: exercise.clone(),
        sets: count(work().count()),
        hard: count(hard.count()),
        volume: Volume::of_lines(lines, record.body_mass).work,
    }
}
