//! What a rule sees of one earlier session.

use super::super::because::{Because, Wish};
use super::super::history::{Performance, SetResult};
use super::super::ladder::Ladder;
use crate::sheet::{Block, LoadPolicy, SetKind, Step};
use crate::units::{Load, Reps};

/// The work sets of one session with their work load.
///
/// The work load is that of the first work set: from it the loads of rising and falling sets follow, so a step of it
/// moves them all. Whether the reps were reached is asked of every work set at its own load. Where the block plans one
/// load and the lifter went up on the way, the work load is the hardest that was done with the reps asked for, and the
/// sets before it were on the way there.
pub(in super::super) struct Seen<'a> {
    /// The work load.
    pub at: Load,
    /// The work sets from the first at the work load on, in order, never empty.
    work: Vec<&'a SetResult>,
}

impl<'a> Seen<'a> {
    /// The work sets of a session; none where no work set has a load.
    pub(in super::super) fn new(performance: &'a Performance, block: &Block) -> Option<Seen<'a>> {
        let sets = performance.sets.iter();
        let mut work: Vec<&SetResult> = sets.filter(|set| set.work && set.load.is_some()).collect();
        let mut at = work.first()?.load?;
        let mut from = 0;
        if policies(block).all(|policy| *policy == LoadPolicy::Same) {
            for (index, set) in work
                .iter()
                .enumerate()
                .filter(|(_, set)| set.reps >= set.low)
            {
                let harder = |load: Load| match block.basis.assists() {
                    true => load < at,
                    false => load > at,
                };
                if let Some(load) = set.load.filter(|&load| harder(load)) {
                    (at, from) = (load, index);
                }
            }
        }
        work.drain(..from);
        Some(Seen { at, work })
    }

    /// The work sets in order.
    pub(super) fn work(&self) -> &[&'a SetResult] {
        &self.work
    }

    /// The first work set.
    pub(super) fn first(&self) -> &'a SetResult {
        self.work[0]
    }

    /// The last work set.
    pub(super) fn last(&self) -> &'a SetResult {
        self.work[self.work.len() - 1]
    }

    /// The work set with the fewest reps of those that are below the bottom of their range.
    pub(super) fn missed(&self) -> Option<&'a SetResult> {
        let missed = self.work.iter().filter(|set| set.reps < set.low);
        missed.copied().min_by_key(|set| set.reps)
    }

    /// The easiest load at which not one rep was done.
    pub(super) fn not_one_rep(&self, ladder: &Ladder) -> Option<Load> {
        let missed = self.work.iter().filter(|set| set.reps.get() == 0);
        let loads = missed.filter_map(|set| set.load);
        loads.reduce(|a, b| if ladder.is_harder(a, b) { b } else { a })
    }

    /// Reps of the work sets in order.
    pub(super) fn reps(&self) -> Vec<Reps> {
        self.work.iter().map(|set| set.reps).collect()
    }

    /// The easiest load of the work sets, where it is easier than the first though the block does not plan that.
    ///
    /// Reps reached with less load than planned do not earn a step up.
    pub(in super::super) fn lightened(&self, block: &Block, ladder: &Ladder) -> Option<Load> {
        let falls_by_plan = policies(block).any(|policy| {
            !matches!(
                policy,
                LoadPolicy::Same | LoadPolicy::Rising(_) | LoadPolicy::RisingByOutcome { .. }
            )
        });
        if falls_by_plan {
            return None;
        }
        let loads = self.work.iter().filter_map(|set| set.load);
        loads
            .filter(|&load| ladder.is_harder(self.at, load))
            .reduce(|a, b| if ladder.is_harder(a, b) { b } else { a })
    }
}

/// How the loads of the block's plain work sets run.
fn policies(block: &Block) -> impl Iterator<Item = &LoadPolicy> {
    let counted = block.sets.iter().filter(|sets| {
        matches!(
            sets.kind,
            SetKind::Work | SetKind::Cluster { .. } | SetKind::ToFailure
        )
    });
    counted.map(|sets| &sets.load)
}

/// What a rule says, or the same load again where it would step up although the sets were made easier midway.
pub(in super::super) fn unless_lightened(
    because: Because,
    seen: &Seen<'_>,
    block: &Block,
    ladder: &Ladder,
) -> Because {
    let up = because
        .moved()
        .is_some_and(|moved| moved.wish == Wish::Harder);
    match seen.lightened(block, ladder) {
        Some(down_to) if up => ladder.because(seen.at, Wish::Same, Step::Smallest, |moved| {
            Because::Lightened { down_to, moved }
        }),
        _ => because,
    }
}
