//! How long a sheet takes: its sets by tempo and reps, its rests, and the change-overs between its groups.
//!
//! The warm-up list is not counted: its lines are the writer's own words, and many do it before they come.

use super::block::{Block, BlockId};
use super::group::{Group, Sheet};
use super::kind::SetKind;
use super::target::{Stage, Target};
use super::tempo::Tempo;
use super::unroll::{PlannedSet, unroll_group};
use crate::units::{Seconds, minutes_up};

/// Seconds of one repetition whose tempo is not prescribed. Common practice, no source.
const REP_SECONDS: u64 = 3;
/// Seconds of one partial repetition, which has no tempo: as it is cued. Common practice, no source.
pub const PARTIAL_SECONDS: u16 = 1;
/// Seconds of a metre carried, at an easy walk. Common practice, no source.
const METRE_SECONDS: u64 = 1;

/// Predicted seconds under way in one set: reps by tempo (at the top of a range), a cluster with its pauses, stages one
/// after the other, both sides in turn with the change between them.
///
/// The sum of the four digits times the reps: 3/1/1/0 × 8 is 40 s.
#[must_use]
pub fn set_seconds(set: &PlannedSet) -> u64 {
    let rep =
        |tempo: Option<Tempo>| tempo.map_or(REP_SECONDS, |tempo| u64::from(tempo.rep_seconds()));
    let work = match &set.target {
        Target::Reps(_) => set.offered.map_or(0, |reps| u64::from(reps.get())) * rep(set.tempo),
        Target::Timed(seconds) => u64::from(seconds.get()),
        Target::Distance(metres) => u64::from(metres.get()) * METRE_SECONDS,
        Target::Stages(stages) => stages
            .iter()
            .map(|stage| match stage {
                Stage::Hold { seconds } => u64::from(seconds.get()),
                Stage::Reps { reps, tempo } => u64::from(reps.top().get()) * rep(Some(*tempo)),
                Stage::Partials { reps } => {
                    u64::from(reps.top().get()) * u64::from(PARTIAL_SECONDS)
                }
            })
            .sum(),
    };
    let pauses = match set.kind {
        SetKind::Cluster { portions, pause } => {
            u64::from(portions.saturating_sub(1)) * u64::from(pause.get())
        }
        _ => 0,
    };
    let sides = u64::from(set.sides.rounds());
    sides * (work + pauses) + (sides - 1) * u64::from(set.sides.change_seconds())
}

/// Predicted seconds from the end of `set` to the beginning of `next`: the prescribed rest, and between groups the
/// change-over beyond it.
#[must_use]
pub fn gap_seconds(set: &PlannedSet, next: &PlannedSet, change_over: Seconds) -> u64 {
    let change_over = if set.group == next.group {
        0
    } else {
        u64::from(change_over.get())
    };
    u64::from(set.rest_before(next).get()) + change_over
}

/// How long one group takes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct GroupTime {
    /// Seconds of each of its blocks in order: its sets and the rests that follow them within the group.
    pub blocks: Vec<(BlockId, u64)>,
    /// Seconds of rest after it.
    pub rest_after: u64,
}

impl GroupTime {
    /// The time of `group`, whatever stands before and after it.
    #[must_use]
    pub fn of(group: &Group) -> GroupTime {
        let planned = unroll_group(0, group, &super::unroll::Added::new());
        let mut blocks: Vec<(BlockId, u64)> =
            group.blocks().iter().map(|block| (block.id, 0)).collect();
        for (at, set) in planned.iter().enumerate() {
            let rest = planned
                .get(at + 1)
                .map_or(0, |next| gap_seconds(set, next, Seconds::MIN));
            if let Some((_, seconds)) = blocks.iter_mut().find(|(id, _)| *id == set.key.block) {
                *seconds += set_seconds(set) + rest;
            }
        }
        GroupTime {
            blocks,
            rest_after: planned
                .last()
                .map_or(0, |last| u64::from(last.rest_after.get())),
        }
    }

    /// Seconds from its first set to its last one.
    #[must_use]
    pub fn seconds(&self) -> u64 {
        self.blocks.iter().map(|(_, seconds)| seconds).sum()
    }
}

/// How long a sheet takes, group by group.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Prediction {
    /// Its groups in order.
    pub groups: Vec<GroupTime>,
}

impl Prediction {
    /// The prediction for `sheet` as it is written.
    #[must_use]
    pub fn of(sheet: &Sheet) -> Prediction {
        Prediction {
            groups: sheet.groups.iter().map(GroupTime::of).collect(),
        }
    }

    /// Seconds from the first set to the end of the last, with `change_over` beyond the rest between two groups.
    #[must_use]
    pub fn seconds(&self, change_over: Seconds) -> u64 {
        let within: u64 = self.groups.iter().map(GroupTime::seconds).sum();
        let (_, before_last) = self.groups.split_last().unwrap_or((&NO_TIME, &[]));
        let between = before_last
            .iter()
            .map(|group| group.rest_after + u64::from(change_over.get()));
        within + between.sum::<u64>()
    }

    /// [`Prediction::seconds`] in whole minutes, rounded up.
    #[must_use]
    pub fn minutes(&self, change_over: Seconds) -> u32 {
        u32::try_from(minutes_up(self.seconds(change_over))).unwrap_or(u32::MAX)
    }

    /// Seconds of one block: its sets and the rests that follow them within its group.
    #[must_use]
    pub fn of_block(&self, block: &Block) -> u64 {
        let all = self.groups.iter().flat_map(|group| &group.blocks);
        all.filter(|(id, _)| *id == block.id)
            .map(|(_, seconds)| seconds)
            .sum()
    }
}

/// A group of nothing.
const NO_TIME: GroupTime = GroupTime {
    blocks: Vec::new(),
    rest_after: 0,
};
