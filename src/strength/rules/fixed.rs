//! A fixed step whenever every rep that was asked for was done (common practice, no source).

use super::super::because::Because;
use super::super::ladder::Ladder;
use super::super::moved::Wish;
use super::Seen;
use crate::sheet::Step;

/// Up when every work set has at least the reps asked for, else the same load.
pub(in super::super) fn fixed(seen: &Seen<'_>, up: Step, ladder: &Ladder) -> Because {
    if seen.missed().is_none() {
        ladder.because(seen.at, Wish::Harder, up, |moved| Because::AllDone {
            moved: moved.over(seen.span()),
        })
    } else {
        ladder.because(seen.at, Wish::Same, up, |moved| Because::NotAllDone {
            moved: moved.over(seen.span()),
        })
    }
}
