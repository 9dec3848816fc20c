//! Steered by reps in reserve: more left than aimed at, up; fewer, down (common practice, no source).

use super::super::because::{Because, Wish};
use super::super::ladder::Ladder;
use super::Seen;
use crate::sheet::Step;
use crate::units::Rir;
use std::cmp::Ordering;

/// Looks at the last work set; without a said reserve the load stays.
pub(in super::super) fn by_reserve(
    seen: &Seen<'_>,
    aim: Rir,
    step: Step,
    ladder: &Ladder,
) -> Because {
    let Some(reserve) = seen.last().reserve else {
        return ladder.because(seen.at, Wish::Same, step, |moved| Because::NoReserveSaid {
            moved,
        });
    };
    match reserve.cmp(&aim) {
        Ordering::Greater => ladder.because(seen.at, Wish::Harder, step, |moved| {
            Because::MoreInReserve {
                reserve,
                aim,
                moved,
            }
        }),
        Ordering::Equal => ladder.because(seen.at, Wish::Same, step, |moved| Because::AsAimed {
            reserve,
            moved,
        }),
        Ordering::Less => ladder.because(seen.at, Wish::Easier, step, |moved| {
            Because::LessInReserve {
                reserve,
                aim,
                moved,
            }
        }),
    }
}
