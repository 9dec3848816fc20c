//! Double progression: reps rise inside the range, then the load rises (common practice, no source).

use super::super::because::Because;
use super::super::ladder::Ladder;
use super::super::moved::Wish;
use super::Seen;
use crate::sheet::{Reach, Step};

/// Any work set below the bottom of its range: down. Every (or the last) work set at the top of its range: up. Else the
/// same load. Where the sets ask for different ranges, the reason names the one that decided and the sets of it.
pub(in super::super) fn double(
    seen: &Seen<'_>,
    reach: Reach,
    up: Step,
    down: Step,
    ladder: &Ladder,
) -> Because {
    let missed = seen.missed();
    let short = match reach {
        Reach::AllSets => seen.work().iter().copied().find(|set| set.reps < set.top),
        Reach::LastSet => Some(seen.last()).filter(|set| set.reps < set.top),
    };
    let decided = missed.or(short).unwrap_or(match reach {
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
    } else if short.is_none() {
        ladder.because(seen.at, Wish::Harder, up, |moved| Because::TopReached {
            reps,
            low,
            top,
            moved: moved.over(span),
        })
    } else {
        ladder.because(seen.at, Wish::Same, up, |moved| Because::InRange {
            reps,
            low,
            top,
            moved: moved.over(span),
        })
    }
}
