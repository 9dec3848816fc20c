//! The next work load of a block, by its rule, from what was done before, on this kit.

use super::because::{Because, Proposal};
use super::curves::Curve;
use super::estimate::best_e1rm;
use super::from_estimate::from_estimate;
use super::guided::reserve_meant;
use super::history::{Performance, SetResult, last_of_each_session};
use super::ladder::Ladder;
use super::maximum::Maximum;
use super::moved::Wish;
use super::rules::{
    Seen, Worth, after_break, as_written, by_reserve, double, fixed, goes_by_maximum,
    share_of_e1rm, two_for_two, unless_cut_short, unless_deload, unless_lightened,
};
use super::safety::LATELY;
use super::unfed::Unfed;
use crate::kit::Kit;
use crate::sheet::{Block, LoadPolicy, Progression, Step};
use crate::units::Load;
use chrono::{DateTime, FixedOffset};

/// What a proposal is made from beside its block.
#[derive(Debug, Clone, Copy)]
pub struct Today<'a> {
    /// The exercise's performances, newest last.
    pub history: &'a [Performance],
    /// What can be loaded.
    pub kit: &'a Kit,
    /// Now, to tell how long ago the last time was.
    pub now: DateTime<FixedOffset>,
    /// The curve that the lifter's maximum is estimated by.
    pub curve: Curve,
    /// Body mass of the day, where it is known: a share of the maximum counts it where the body is moved.
    pub body_mass: Option<Load>,
}

impl Today<'_> {
    /// What is proposed for `block`: see [`propose`].
    #[must_use]
    pub fn propose(&self, block: &Block) -> Proposal {
        propose(block, self)
    }
}

/// The next work load of `block`, always one that the kit can make.
///
/// Of the history only what is of the block's shape counts. The work load is that of the first work set; how the other
/// sets follow from it is the business of [`super::set_load`]. Where now lies before the last time, there was no break.
#[must_use]
pub fn propose(block: &Block, today: &Today<'_>) -> Proposal {
    let because = decide(block, today);
    Proposal {
        block: block.id,
        load: because.load(),
        because,
    }
}

fn decide(block: &Block, today: &Today<'_>) -> Because {
    let &Today {
        history, kit, now, ..
    } = today;
    if !block.basis.has_load() {
        return Because::NoLoad {};
    }
    let shape = block.shape();
    let like: Vec<Performance> = history
        .iter()
        .filter(|performance| performance.shape == shape)
        .filter(|performance| behind_ramp(performance).any(|set| set.load.is_some()))
        .cloned()
        .collect();
    let alike: Vec<Performance> = last_of_each_session(&like).cloned().collect();
    // A session of which only shares of the maximum were done leaves the work load where it was.
    let telling = alike.iter().filter(|performance| {
        let mut sets = behind_ramp(performance);
        sets.any(|set| tells_load(set, block))
    });
    let telling: Vec<Performance> = telling.cloned().collect();
    let like = if telling.is_empty() { &alike } else { &telling };
    let started = block.start.or_else(|| first_listed(block));
    if let (Progression::AsWritten, Some(wanted)) = (&block.progression, started) {
        return as_written(wanted, &Ladder::new(block, kit, Some(wanted)));
    }
    let Some(last) = like.last() else {
        let known = match started {
            None => from_estimate(block, today),
            Some(_) => None,
        };
        return known.unwrap_or_else(|| start(block, started, kit));
    };
    let seen = Seen::new(last, block, kit);
    let Some(at) = seen
        .as_ref()
        .map(|seen| seen.at)
        .or_else(|| first_after_ramp(block, last, kit))
    else {
        return Because::NothingKnown {};
    };
    let ladder = Ladder::new(block, kit, Some(at));
    let because = match seen {
        Some(seen) => by_rule(block, [like, &alike], &seen, today, &ladder),
        // Staged, timed and other sets give a rule nothing to judge.
        None => same(at, &ladder),
    };
    after_break(because, at, last.at, now, &ladder)
}

/// What the block's rule says of its earlier sessions that tell a work load, the newest of which is `seen`; of all that are alike
/// the maximum is taken.
fn by_rule(
    block: &Block,
    [like, alike]: [&[Performance]; 2],
    seen: &Seen<'_>,
    today: &Today<'_>,
    ladder: &Ladder,
) -> Because {
    let because = match &block.progression {
        Progression::Double { reach, up, down } => {
            let worth = Worth {
                curve: today.curve,
                reserve: reserve_meant(block),
            };
            // Whichever of the last ones was as hard decides.
            let lately = like.iter().rev().skip(1).take(LATELY);
            let held = |next| {
                let seen = |done| Seen::new(done, block, today.kit);
                let as_hard = |seen: &Seen<'_>| !ladder.is_harder(next, seen.at);
                let tried = lately.clone().filter_map(seen).find(as_hard);
                tried.is_some_and(|tried| tried.missed().is_none())
            };
            double(seen, *reach, [*up, *down], worth, held, ladder)
        }
        Progression::TwoForTwo { up } => {
            let before = like
                .iter()
                .rev()
                .nth(1)
                .and_then(|before| Seen::new(before, block, today.kit));
            two_for_two(seen, before.as_ref(), *up, ladder)
        }
        Progression::Fixed { up } => fixed(seen, *up, ladder),
        Progression::ShareOfE1rm { share } => {
            let maximum = Maximum {
                e1rm: best_e1rm(alike, today.curve),
                body_mass: today.body_mass,
            };
            share_of_e1rm(seen, *share, &maximum, &block.basis, ladder)
        }
        Progression::ByReserve { aim, step } => by_reserve(seen, *aim, *step, ladder),
        Progression::AsWritten => return same(seen.at, ladder),
    };
    let because = unless_lightened(because, seen, block, ladder);
    let because = unless_cut_short(because, seen, ladder);
    let newest = &like[like.len().saturating_sub(3)..];
    let newest: Vec<Seen<'_>> = newest
        .iter()
        .filter_map(|performance| Seen::new(performance, block, today.kit))
        .collect();
    unless_deload(because, &newest, ladder)
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
    let ladder = Ladder::new(block, kit, wanted);
    match wanted {
        Some(wanted) => match ladder.keep(wanted) {
            Some(to) => Because::StartOfSheet { wanted, to },
            None => ladder.out_of_kit(wanted),
        },
        None => match ladder.lightest() {
            Some(to) => Because::GuidedStart { to },
            None => Because::NothingKnown {},
        },
    }
}

/// The sets behind the ramp-ups, of whatever kind. Ramp-ups say nothing of a work load: a session that ended among them leaves
/// it where it was.
fn behind_ramp(last: &Performance) -> impl Iterator<Item = &SetResult> {
    let sets = last.sets.iter();
    sets.filter(|set| set.unfed != Some(Unfed::RampUp))
}

/// True for a set whose load follows from the work load, or is it.
fn tells_load(set: &SetResult, block: &Block) -> bool {
    set.load.is_some() && !(set.work && goes_by_maximum(set, block))
}

/// The load of the first set behind the ramp-ups, best of one that tells the work load. Of drop sets that plan one load the hardest done with
/// the reps asked for, as of work sets: a first time finds its load on the way.
fn first_after_ramp(block: &Block, last: &Performance, kit: &Kit) -> Option<Load> {
    let telling = behind_ramp(last).filter(|set| tells_load(set, block));
    let all = telling.chain(behind_ramp(last));
    let first = all.filter_map(|set| set.load).next()?;
    let mut work = block.sets.iter().filter(|sets| sets.kind.is_work());
    if work.any(|sets| sets.load != LoadPolicy::Same) {
        return Some(first);
    }
    let ladder = Ladder::new(block, kit, Some(first));
    let drops =
        behind_ramp(last).filter(|set| set.unfed == Some(Unfed::Drop) && set.reps >= set.low);
    let loads = drops.filter_map(|set| set.load);
    Some(loads.fold(first, |a, b| ladder.harder_of(a, b)))
}

fn same(at: Load, ladder: &Ladder) -> Because {
    ladder.because(at, Wish::Same, Step::Smallest, |moved| {
        Because::SameAsLast { moved }
    })
}

#[cfg(test)]
#[path = "propose_tests.rs"]
pub(super) mod tests;

#[cfg(test)]
#[path = "named_tests.rs"]
mod named_tests;

#[cfg(test)]
#[path = "turns_tests.rs"]
mod turns_tests;

#[cfg(test)]
#[path = "laws_tests.rs"]
mod laws_tests;
