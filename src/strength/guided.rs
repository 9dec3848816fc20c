//! The guided start: the first time at an exercise, from set to set by the reserve that was said.
//!
//! Five or more left: a larger step, 10 % for the upper and 20 % for the lower body, which is the most that the NSCA's
//! test of the one-repetition maximum adds (Essentials of Strength Training and Conditioning, seen quoted). More left
//! than aimed at: the usual step. As aimed at: found, and the line goes on from there; after a ramp-up the same load once
//! more, for what it leaves in a work set is worked out and not seen. Fewer: a step down. That the test's steps serve for a
//! start is common practice, no source.

use super::ladder::Ladder;
use super::prescribed::DoneSet;
use super::set_because::{GuidedStep, SetBecause};
use super::steps::{Training, usual_step};
use crate::sheet::{Block, RepTarget, SetKind, Sets, Step};
use crate::units::{Load, Reps, Rir, Share};

/// So many left are too many to judge by: the larger step. Reserve is told about a rep off at 0–5 left, and worse above
/// (Hackett et al. 2017, J Strength Cond Res 31(8):2162–2168).
const MANY_LEFT: i64 = 5;

/// Reserve that is aimed at where the block names none (common practice, no source).
const USUAL_AIM: i64 = 2;

/// How far the guided start has come.
pub(super) enum Guide {
    /// Nothing was done with a load yet.
    Begin,
    /// The next set's load follows from the last one.
    Next(SetBecause),
    /// The work load was found: it is this.
    Found(Load),
}

/// How far the guided start of `block` has come after these sets, in the order they were done.
pub(super) fn guide(block: &Block, done: &[DoneSet], ladder: &Ladder) -> Guide {
    let aim = reserve_meant(block);
    let mut loaded = done
        .iter()
        .filter_map(|set| Some((set, set.load?)))
        .peekable();
    let mut last = None;
    while let Some((set, from)) = loaded.next() {
        let line = line(block, set);
        let ramp_up = line.is_some_and(|line| !line.kind.is_work());
        // Who goes on to the limit has none left, told or not.
        let to_limit = line.is_some_and(|line| goes_to_limit(block, line, set.key.set));
        let none = || (to_limit && !ramp_up).then_some(Rir::saturating(0));
        let Some(reserve) = set.reserve.or_else(none) else {
            last = Some(unsaid(from, ladder));
            continue;
        };
        let asked = asked(block, set);
        let aimed = i64::from(aim.get());
        let left = match left(set, asked, reserve) {
            // So many or more: it is not known that there were no more than aimed at.
            left if i64::from(reserve.get()) >= MANY_LEFT => left.max(aimed + 1),
            left => left,
        };
        if left == aimed && !ramp_up {
            return Guide::Found(from);
        }
        let easier = ladder.step(from, Step::Smallest, false);
        // What a ramp-up leaves is worked out, and what a work set left is seen: that goes on from it.
        if left < aimed && !ramp_up && loaded.peek().is_some() {
            return Guide::Found(easier.unwrap_or(from));
        }
        let (step, to) = if left < aimed {
            (GuidedStep::Down, easier)
        } else if left == aimed {
            (GuidedStep::Same, None)
        } else if left < MANY_LEFT {
            (GuidedStep::Usual, usual(block, from, ladder))
        } else {
            (GuidedStep::Larger, larger(block, from, ladder))
        };
        last = Some(match to.or_else(|| ladder.keep(from)) {
            Some(to) => SetBecause::Guided {
                from,
                reps: set.reps,
                reserve,
                weighed: weighed(set, asked, left, reserve),
                aim,
                step,
                to,
            },
            None => as_done(from, ladder),
        });
    }
    last.map_or(Guide::Begin, Guide::Next)
}

/// Reserve that the block aims at in its work sets, the usual one where it writes none: a set to the limit that was never done
/// like this is begun with as much to spare as any other.
pub(super) fn aim(block: &Block) -> Rir {
    written_aim(block).unwrap_or(Rir::saturating(USUAL_AIM))
}

/// Reserve that its work sets are meant to leave: none where the block writes none and they go to the limit.
pub(super) fn reserve_meant(block: &Block) -> Rir {
    written_aim(block).unwrap_or_else(|| {
        let to_limit = first_work(block).is_some_and(|sets| goes_to_limit(block, sets, 0));
        Rir::saturating(if to_limit { 0 } else { USUAL_AIM })
    })
}

/// Reserve that the block says it aims at: its rule's, else that of the first work set, whose load is looked for.
fn written_aim(block: &Block) -> Option<Rir> {
    let of_set = || first_work(block)?.reserve_of(0);
    block.rule_aim().or_else(of_set)
}

/// The line of the first work set.
fn first_work(block: &Block) -> Option<&Sets> {
    block.sets.iter().find(|sets| sets.kind.is_work())
}

/// Whether a set of this line goes on until no rep more can be done.
fn goes_to_limit(block: &Block, line: &Sets, set: u8) -> bool {
    let reserve = line.reserve_of(usize::from(set));
    block.goes_to_limit(&line.kind, &line.target, reserve)
}

/// The line of a set.
fn line<'a>(block: &'a Block, set: &DoneSet) -> Option<&'a Sets> {
    block.sets.get(usize::from(set.key.line))
}

/// What a work set of the block asks for; of a cluster, all of its portions.
fn asked(block: &Block, set: &DoneSet) -> Option<RepTarget> {
    let mut work = block.sets.iter().filter(|sets| sets.kind.is_work());
    match line(block, set).filter(|own| matches!(own.kind, SetKind::Cluster { .. })) {
        Some(own) => own
            .target
            .plain_reps()
            .map(|portion| own.kind.whole(portion)),
        None => work.find_map(|sets| sets.target.plain_reps()),
    }
}

/// Reps that would have been left, had the set asked for as many as a work set: a ramp-up of three with five left
/// leaves little in a set of eight.
fn left(set: &DoneSet, asked: Option<RepTarget>, reserve: Rir) -> i64 {
    let reserve = i64::from(reserve.get());
    match (set.reps, asked) {
        (Some(reps), Some(asked)) => {
            let reps = i64::from(reps.get());
            let low = i64::from(asked.low().get());
            let as_many = match asked {
                RepTarget::AtLeast(_) => reps.max(low),
                _ => reps.clamp(low, i64::from(asked.top().get())),
            };
            reserve + reps - as_many
        }
        _ => reserve,
    }
}

/// The reps that a work set asks for and those left in it, where that is not what was said.
fn weighed(
    set: &DoneSet,
    asked: Option<RepTarget>,
    left: i64,
    reserve: Rir,
) -> Option<(Reps, Rir)> {
    let (reps, asked) = (set.reps?, asked?);
    let of = if reps < asked.low() {
        asked.low()
    } else {
        asked.top()
    };
    let left = Rir::saturating(left);
    // More than can be told is not worked out further.
    let told = i64::from(reserve.get()) < MANY_LEFT;
    (told && left != reserve).then_some((of, left))
}

/// The step of a lifter who is new to the exercise; none where the kit ends.
fn usual(block: &Block, from: Load, ladder: &Ladder) -> Option<Load> {
    let step = usual_step(block.exercise.pattern, Training::Less, from.unit());
    ladder.step(from, Step::By(step), true)
}

/// The step while many are left, at least the usual one; of assistance twice the usual one, for a share of it says
/// nothing. None where the kit ends.
fn larger(block: &Block, from: Load, ladder: &Ladder) -> Option<Load> {
    let usual = usual(block, from, ladder)?;
    let up = if ladder.assists() {
        let step = usual_step(block.exercise.pattern, Training::Less, from.unit());
        ladder.step(from, Step::By(step.plus(step)), true)?
    } else {
        let percent = match block.exercise.pattern.is_lower_body() {
            false => 110,
            true => 120,
        };
        ladder.up_to(from, from.times(Share::percent(percent).factor()))?
    };
    Some(ladder.harder_of(usual, up))
}

/// No reserve was said: there is nothing to go by, so the same again.
fn unsaid(at: Load, ladder: &Ladder) -> SetBecause {
    match ladder.keep(at) {
        Some(to) => SetBecause::GuideUnsaid { to },
        None => as_done(at, ladder),
    }
}

/// The load of the set before where the kit makes nothing for the exercise at all; else it makes none as easy.
fn as_done(at: Load, ladder: &Ladder) -> SetBecause {
    if ladder.is_empty() {
        SetBecause::AsDone { at, to: at }
    } else {
        SetBecause::OutOfKit { wanted: at }
    }
}
