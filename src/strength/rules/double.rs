//! Double progression: reps rise inside the range, then the load rises (common practice, no source).

use super::super::because::{Because, Wish};
use super::super::ladder::Ladder;
use super::Seen;
use crate::sheet::{Reach, Step};

/// Any work set below the bottom of its range: down. Every (or the last) work set at the top of its range: up. Else the
/// same load.
pub(in super::super) fn double(
    seen: &Seen<'_>,
    reach: Reach,
    up: Step,
    down: Step,
    ladder: &Ladder,
) -> Because {
    let reps = seen.reps();
    let (low, top) = (seen.first().low, seen.first().top);
    let reached = match reach {
        Reach::AllSets => seen.work().iter().all(|set| set.reps >= set.top),
        Reach::LastSet => seen.last().reps >= seen.last().top,
    };
    if seen.missed().is_some() {
        ladder.because(seen.at, Wish::Easier, down, |moved| Because::BelowRange {
            reps,
            low,
            top,
            moved: moved.over(seen.span()),
        })
    } else if reached {
        ladder.because(seen.at, Wish::Harder, up, |moved| Because::TopReached {
            reps,
            low,
            top,
            moved: moved.over(seen.span()),
        })
    } else {
        ladder.because(seen.at, Wish::Same, up, |moved| Because::InRange {
            reps,
            low,
            top,
            moved: moved.over(seen.span()),
        })
    }
}
