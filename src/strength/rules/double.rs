//! Double progression: reps rise inside the range, then the load rises (common practice, no source).

use super::super::because::Because;
use super::super::history::SetResult;
use super::super::ladder::Ladder;
use super::super::moved::Wish;
use super::Seen;
use super::coarse::{Coarse, Worth};
use crate::sheet::{Reach, Step};
use crate::units::Load;

/// Any work set below the bottom of its range: down. Every (or the last) work set at the top of its range: up; but where that
/// step is a coarse one, only with the reps that say it will go, unless the next load was `held` lately. Else the same load. Where the sets ask for different ranges,
/// the reason names the one that decided and the sets of it.
pub(in super::super) fn double(
    seen: &Seen<'_>,
    reach: Reach,
    [up, down]: [Step; 2],
    worth: Worth,
    held: impl Fn(Load) -> bool,
    ladder: &Ladder,
) -> Because {
    let missed = seen.missed();
    let short = short_of(seen, reach, |set| set.reps >= set.top);
    let decided = missed.or(short);
    let waits = || {
        let coarse = Coarse::of(seen.at, up, ladder, worth)?;
        let set = short_of(seen, reach, |set| coarse.is_there(set))?;
        // A cluster is no set in one go, which the curve could be asked about, and one that was held lately is known to go.
        let waits = !seen.has_cluster() && !held(coarse.to());
        waits.then_some((set, coarse))
    };
    let waits = decided.is_none().then(waits).flatten();
    let decided = decided.or(waits.as_ref().map(|(set, _)| *set));
    let decided = decided.unwrap_or(match reach {
        Reach::AllSets => seen.first(),
        Reach::LastSet => seen.last(),
    });
    let (low, top) = (decided.low, decided.top);
    let alike = seen.asked_like(decided);
    let reps = alike.iter().map(|set| set.reps).collect();
    let span = seen.span_of(&alike);
    if missed.is_some() {
        ladder.because(seen.at, Wish::Easier, down, |moved| Because::BelowRange {
            reps,
            low,
            top,
            moved: moved.over(span),
        })
    } else if short.is_some() {
        ladder.because(seen.at, Wish::Same, up, |moved| Because::InRange {
            reps,
            low,
            top,
            moved: moved.over(span),
        })
    } else if let Some((_, coarse)) = waits {
        ladder.because(seen.at, Wish::Same, up, |moved| Because::StepWaits {
            reps,
            low,
            aim: coarse.reps(low, top),
            last: reach == Reach::LastSet,
            next: coarse.to(),
            moved: moved.over(span),
        })
    } else {
        ladder.because(seen.at, Wish::Harder, up, |moved| Because::TopReached {
            reps,
            low,
            top,
            moved: moved.over(span),
        })
    }
}

/// The first of the sets that are asked which is not good enough.
fn short_of<'a>(
    seen: &Seen<'a>,
    reach: Reach,
    enough: impl Fn(&SetResult) -> bool,
) -> Option<&'a SetResult> {
    let short = |set: &&SetResult| !enough(set);
    match reach {
        Reach::AllSets => seen.work().iter().copied().find(short),
        Reach::LastSet => Some(seen.last()).filter(short),
    }
}
