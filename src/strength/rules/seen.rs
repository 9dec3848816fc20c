//! What a rule sees of one earlier session.

use super::super::because::{Because, Wish};
use super::super::history::{Performance, SetResult};
use super::super::ladder::Ladder;
use crate::sheet::{Block, LoadPolicy, SetKind, Step};
use crate::units::{Load, Reps};

/// The work sets of one session with their work load.
///
/// The work load is that of the first work set: from it the loads of rising and falling sets follow, so a step of it
/// moves them all. Whether the reps were reached is asked of every work set at its own load.
pub(in super::super) struct Seen<'a> {
    /// Load of the first work set that has one.
    pub at: Load,
    /// The work sets with a load, in order, never empty.
    work: Vec<&'a SetResult>,
}

impl<'a> Seen<'a> {
    /// The work sets of a session; none where no work set has a load.
    pub(in super::super) fn new(performance: &'a Performance) -> Option<Seen<'a>> {
        let sets = performance.sets.iter();
        let work: Vec<&SetResult> = sets.filter(|set| set.work && set.load.is_some()).collect();
        let at = work.first()?.load?;
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

    /// Reps of the work sets in order.
    pub(super) fn reps(&self) -> Vec<Reps> {
        self.work.iter().map(|set| set.reps).collect()
    }

    /// The easiest load of the work sets, where it is easier than the first though the block does not plan that.
    ///
    /// Reps reached with less load than planned do not earn a step up.
    pub(in super::super) fn lightened(&self, block: &Block, ladder: &Ladder) -> Option<Load> {
        let falls_by_plan = block.sets.iter().any(|sets| {
            let counted = matches!(
                sets.kind,
                SetKind::Work | SetKind::Cluster { .. } | SetKind::ToFailure
            );
            let keeps_up = matches!(
                sets.load,
                LoadPolicy::Same | LoadPolicy::Rising(_) | LoadPolicy::RisingByOutcome { .. }
            );
            counted && !keeps_up
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
