//! A sheet unrolled: every planned set in the order it is done.

use super::block::{Block, BlockId, SideMode};
use super::group::{Group, Sheet};
use super::kind::{SetKind, Sets};
use super::loads::LoadPolicy;
use super::target::Target;
use super::tempo::Tempo;
use crate::order;
use crate::order::Map;
use crate::units::{Reps, Rir, Seconds};
use serde::{Deserialize, Serialize};

/// What identifies a planned set in its session: block, line of the prescription, number in the line, drop.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SetKey {
    /// The block.
    pub block: BlockId,
    /// Line of the block's prescription, from 0.
    pub line: u8,
    /// Set in the line, from 0; at and above the line's count: added on the floor.
    pub set: u8,
    /// Drop within a drop set, from 0, which is the full load.
    #[serde(default, skip_serializing_if = "is_zero")]
    pub drop: u8,
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "serde asks for a reference"
)]
fn is_zero(n: &u8) -> bool {
    *n == 0
}

/// One set as planned.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PlannedSet {
    /// Its key.
    pub key: SetKey,
    /// Index of its group on the sheet.
    pub group: usize,
    /// Round of its group that it belongs to, from 0.
    pub round: usize,
    /// Kind of set.
    pub kind: SetKind,
    /// Number among the block's sets of this kind, from 1.
    pub number: usize,
    /// How many sets of this kind the block has.
    pub of: usize,
    /// What it asks for.
    pub target: Target,
    /// Reps offered at the tap.
    pub offered: Option<Reps>,
    /// Reps in reserve aimed at.
    pub reserve: Option<Rir>,
    /// How the load of its line runs.
    pub load: LoadPolicy,
    /// Tempo of its reps.
    pub tempo: Option<Tempo>,
    /// How the sides share it.
    pub sides: SideMode,
    /// Rest before the next set of the same block, or the next round.
    pub rest: Seconds,
    /// Rest before another block of the same round.
    pub between: Option<Seconds>,
    /// Rest before the next group.
    pub rest_after: Seconds,
}

impl PlannedSet {
    /// Rest from this set to `next`.
    #[must_use]
    pub fn rest_before(&self, next: &PlannedSet) -> Seconds {
        let same_line = self.key.block == next.key.block && self.key.line == next.key.line;
        if same_line && self.key.set == next.key.set {
            // A drop follows at once.
            Seconds::MIN
        } else if self.group != next.group {
            self.rest_after
        } else if self.key.block != next.key.block && self.round == next.round {
            self.between.unwrap_or(self.rest)
        } else {
            self.rest
        }
    }
}

/// Sets added on the floor, by block and line.
pub type Added = Map<(BlockId, u8), u8>;

/// Every set of `sheet` in the order it is done.
#[must_use]
pub fn unroll(sheet: &Sheet) -> Vec<PlannedSet> {
    let order: Vec<usize> = (0..sheet.groups.len()).collect();
    unroll_with(sheet, &order, &Added::new())
}

/// Every set of `sheet`, its groups in `order`, with sets `added` to lines.
///
/// Indices of groups that the sheet does not have are passed over.
#[must_use]
pub fn unroll_with(sheet: &Sheet, order: &[usize], added: &Added) -> Vec<PlannedSet> {
    let groups = order
        .iter()
        .filter_map(|&index| Some((index, sheet.groups.get(index)?)));
    groups
        .flat_map(|(index, group)| unroll_group(index, group, added))
        .collect()
}

/// The sets of one group: block after block's turn, round by round.
pub(super) fn unroll_group(index: usize, group: &Group, added: &Added) -> Vec<PlannedSet> {
    let per_block: Vec<Vec<PlannedSet>> = group
        .blocks()
        .iter()
        .map(|block| unroll_block(index, block, group.between(), added))
        .collect();
    // The drops of a set stay with it: a turn is a set with all its drops.
    let mut turns: Vec<(usize, usize, PlannedSet)> = Vec::new();
    for (place, sets) in per_block.into_iter().enumerate() {
        turns.extend(sets.into_iter().map(|set| (set.round, place, set)));
    }
    order::by_key(&mut turns, |(round, place, set)| {
        (*round, *place, set.key.drop)
    });
    turns.into_iter().map(|(_, _, set)| set).collect()
}

fn unroll_block(
    group: usize,
    block: &Block,
    between: Option<Seconds>,
    added: &Added,
) -> Vec<PlannedSet> {
    let mut planned = Vec::new();
    let mut round = 0;
    for (line, sets) in block.sets.iter().enumerate() {
        let line = line as u8;
        let count = sets
            .count
            .saturating_add(added.get(&(block.id, line)).copied().unwrap_or(0));
        for set in 0..count {
            for drop in 0..=drops(sets) {
                let key = SetKey {
                    block: block.id,
                    line,
                    set,
                    drop,
                };
                planned.push(plan(group, round, key, block, sets, between));
            }
            round += 1;
        }
    }
    number(&mut planned);
    planned
}

fn drops(sets: &Sets) -> u8 {
    match sets.kind {
        SetKind::Drop { drops, .. } => drops,
        _ => 0,
    }
}

fn plan(
    group: usize,
    round: usize,
    key: SetKey,
    block: &Block,
    sets: &Sets,
    between: Option<Seconds>,
) -> PlannedSet {
    PlannedSet {
        key,
        group,
        round,
        kind: sets.kind.clone(),
        number: 0,
        of: 0,
        target: sets.target.clone(),
        offered: sets.offered_reps(),
        reserve: sets.reserve_of(usize::from(key.set)),
        load: sets.load.clone(),
        tempo: sets.tempo.or(block.tempo),
        sides: block.sides,
        rest: sets.rest.unwrap_or(block.rest),
        between,
        rest_after: block.rest_after,
    }
}

/// Numbers the sets of each kind within a block.
fn number(planned: &mut [PlannedSet]) {
    let mut counts: Map<&'static str, usize> = Map::new();
    for set in planned.iter_mut() {
        let count = counts.or_default(set.kind.word());
        *count += 1;
        set.number = *count;
    }
    for set in planned {
        set.of = counts.get(set.kind.word()).copied().unwrap_or(set.number);
    }
}
