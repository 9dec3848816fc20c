//! What a session adds to the history of each exercise: what the pictures of an exercise are drawn from.

use super::record::{BlockRecord, SessionRecord};
use super::summary::performance;
use super::tempo::TempoKept;
use super::volume::{Volume, VolumeLoad};
use crate::order;
use crate::session::SessionId;
use crate::sheet::{ExerciseId, Line, SheetId, moved_part};
use crate::strength::Performance;
use serde::{Deserialize, Serialize};

/// What was done of one block in one session, light weeks too.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Past {
    /// Name of the exercise at the time.
    pub name: Line,
    /// Its sets, as the rules see them.
    pub performance: Performance,
    /// The sheet that it was done by.
    pub sheet: SheetId,
    /// True when it was done light: no rule and no estimate judges by it.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub light: bool,
    /// Volume load of its work sets: see [`Volume::of`].
    pub volume: VolumeLoad,
    /// Its sets by tempo that were timed.
    #[serde(default, skip_serializing_if = "TempoKept::is_empty")]
    pub tempo: TempoKept,
}

impl Past {
    /// The session.
    #[must_use]
    pub fn session(&self) -> SessionId {
        SessionId(self.performance.session)
    }
}

/// Sorts a history: the oldest first, blocks of one session in the order that they had.
pub fn in_order(history: &mut [Past]) {
    order::by_key(history, |past| {
        (past.performance.at, past.performance.session)
    });
}

/// Of a history, the oldest first, what counts and was moved as in the newest that does; what was done light counts for
/// nothing. And whether something that counts was moved otherwise.
pub fn moved_as_newest<'a>(history: impl Iterator<Item = &'a Past>) -> (Vec<&'a Past>, bool) {
    let mut alike: Vec<&Past> = history.filter(|past| !past.light).collect();
    let counting = alike.len();
    if let Some(newest) = alike.last().copied() {
        let moved = moved_part(&newest.performance.shape);
        alike.retain(|past| moved_part(&past.performance.shape) == moved);
    }
    let others = alike.len() < counting;
    (alike, others)
}

/// What a session adds to the history of each exercise, block by block in the order of its sheet; blocks of which
/// nothing was done add nothing.
#[must_use]
pub fn pasts_of(record: &SessionRecord) -> Vec<(ExerciseId, Past)> {
    let done = record.blocks.iter().filter(|block| !block.lines.is_empty());
    done.map(|block| (block.block.exercise.id.clone(), past(record, block)))
        .collect()
}

fn past(record: &SessionRecord, block: &BlockRecord) -> Past {
    let lines = block.lines.iter().map(|line| (&block.block, line));
    let timed = block.lines.iter().filter_map(|line| line.tempo_kept);
    Past {
        name: block.block.exercise.name.clone(),
        performance: performance(record, block),
        sheet: record.sheet,
        light: record.light,
        volume: Volume::of_lines(lines, record.body_mass).work,
        tempo: timed.fold(TempoKept::default(), TempoKept::and),
    }
}
