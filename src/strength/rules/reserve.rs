//! Steered by reps in reserve: more left than aimed at, up; fewer, down (common practice, no source).

use super::super::because::Because;
use super::super::ladder::Ladder;
use super::super::moved::Wish;
use super::Seen;
use crate::sheet::Step;
use crate::units::Rir;
use std::cmp::Ordering;

/// Looks at the last work set; without a said reserve the load stays, and so it does where reps were missed although
/// more were left than aimed at.
pub(in super::super) fn by_reserve(
    seen: &Seen<'_>,
    aim: Rir,
    step: Step,
    ladder: &Ladder,
) -> Because {
    let Some(reserve) = seen.last().reserve else {
        return ladder.because(seen.at, Wish::Same, step, |moved| Because::NoReserveSaid {
            moved: moved.over(seen.last_load()),
        });
    };
    match reserve.cmp(&aim) {
        // Reps missed with reps left do not fit together: the safe side is no step up.
        Ordering::Greater if seen.missed().is_some() => {
            let worst = seen.missed().unwrap_or(seen.last());
            let (reps, low) = (worst.reps, worst.low);
            ladder.because(seen.at, Wish::Same, step, |moved| Because::Disagrees {
                reps,
                low,
                reserve,
                moved: moved.over([worst.load.unwrap_or(seen.at); 2]),
            })
        }
        Ordering::Greater => ladder.because(seen.at, Wish::Harder, step, |moved| {
            Because::MoreInReserve {
                reserve,
                aim,
                moved: moved.over(seen.last_load()),
            }
        }),
        Ordering::Equal => ladder.because(seen.at, Wish::Same, step, |moved| Because::AsAimed {
            reserve,
            moved: moved.over(seen.last_load()),
        }),
        Ordering::Less => ladder.because(seen.at, Wish::Easier, step, |moved| {
            Because::LessInReserve {
                reserve,
                aim,
                moved: moved.over(seen.last_load()),
            }
        }),
    }
}
