//! The next work load of a block, by its rule, from what was done before, on this kit.

use super::because::{Because, Proposal, Wish};
use super::estimate::best_e1rm;
use super::history::Performance;
use super::ladder::Ladder;
use super::rules::{
    Seen, as_written, by_reserve, double, fixed, share_of_e1rm, two_for_two, unless_lightened,
};
use crate::kit::Kit;
use crate::sheet::{Block, LoadBasis, LoadPolicy, Progression, Step};
use crate::units::Load;

/// The next work load of `block`, always one that `kit` can make.
///
/// `history` holds the exercise's performances, newest last; only those of the block's shape count. The work load is
/// that of the first work set; how the other sets follow from it is the business of [`super::set_load`].
#[must_use]
pub fn propose(block: &Block, history: &[Performance], kit: &Kit) -> Proposal {
    let because = decide(block, history, kit);
    Proposal {
        block: block.id,
        load: because.load(),
        because,
    }
}

fn decide(block: &Block, history: &[Performance], kit: &Kit) -> Because {
    if !block.basis.has_load() {
        return Because::NoLoad {};
    }
    let shape = block.shape();
    let like: Vec<Performance> = history
        .iter()
        .filter(|performance| performance.shape == shape)
        .filter(|performance| performance.sets.iter().any(|set| set.load.is_some()))
        .cloned()
        .collect();
    let started = block.start.or_else(|| first_listed(block));
    if let (Progression::AsWritten, Some(wanted)) = (&block.progression, started) {
        return as_written(wanted, &Ladder::new(block, kit, Some(wanted)));
    }
    let Some(last) = like.last() else {
        return start(block, started, kit);
    };
    let Some(seen) = Seen::new(last) else {
        return no_work_set(block, last, kit);
    };
    let ladder = Ladder::new(block, kit, Some(seen.at));
    let because = match &block.progression {
        Progression::Double { reach, up, down } => double(&seen, *reach, *up, *down, &ladder),
        Progression::TwoForTwo { up } => {
            let before = like.iter().rev().nth(1).and_then(Seen::new);
            two_for_two(&seen, before.as_ref(), *up, &ladder)
        }
        Progression::Fixed { up } => fixed(&seen, *up, &ladder),
        Progression::ShareOfE1rm { share } => {
            let alone = block.basis == LoadBasis::External;
            let e1rm = if alone { best_e1rm(&like) } else { None };
            share_of_e1rm(&seen, *share, e1rm, &ladder)
        }
        Progression::ByReserve { aim, step } => by_reserve(&seen, *aim, *step, &ladder),
        Progression::AsWritten => same(seen.at, &ladder),
    };
    unless_lightened(because, &seen, block, &ladder)
}

/// The first load of the block's first line of work, where the line lists its loads.
fn first_listed(block: &Block) -> Option<Load> {
    let work = block.sets.iter().find(|sets| sets.kind.is_work())?;
    match &work.load {
        LoadPolicy::List(loads) => loads.first().copied(),
        _ => None,
    }
}

fn start(block: &Block, wanted: Option<Load>, kit: &Kit) -> Because {
    let Some(wanted) = wanted else {
        return Because::NothingKnown {};
    };
    match Ladder::new(block, kit, Some(wanted)).fit(wanted) {
        Some(to) => Because::StartOfSheet { wanted, to },
        None => Because::OutOfKit { wanted },
    }
}

/// Staged, timed and other sets give a rule nothing to judge: the load of the first of them again.
fn no_work_set(block: &Block, last: &Performance, kit: &Kit) -> Because {
    let ramp_ups = block.sets.iter().filter(|sets| !sets.kind.is_work());
    let ramp_ups: usize = ramp_ups.map(|sets| usize::from(sets.count)).sum();
    let loads: Vec<Load> = last.sets.iter().filter_map(|set| set.load).collect();
    match loads.get(ramp_ups).or(loads.last()) {
        Some(&at) => same(at, &Ladder::new(block, kit, Some(at))),
        None => Because::NothingKnown {},
    }
}

fn same(at: Load, ladder: &Ladder) -> Because {
    ladder.because(at, Wish::Same, Step::Smallest, |moved| {
        Because::SameAsLast { moved }
    })
}

#[cfg(test)]
#[path = "propose_tests.rs"]
pub(super) mod tests;
