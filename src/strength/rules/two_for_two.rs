//! The 2-for-2 rule: two or more reps over the goal in the last set, in two sessions running at one load (Baechle &
//! Earle, Essentials of Strength Training and Conditioning).

use super::super::because::Because;
use super::super::ladder::Ladder;
use super::super::moved::Wish;
use super::Seen;
use crate::sheet::Step;
use crate::units::Reps;

/// Up when the last set of this session and of the one before were both two over the goal at one load.
pub(in super::super) fn two_for_two(
    seen: &Seen<'_>,
    before: Option<&Seen<'_>>,
    up: Step,
    ladder: &Ladder,
) -> Because {
    let (reps, goal) = (seen.last().reps, seen.last().top);
    let over = |reps: Reps, goal: Reps| reps.get() >= goal.get().saturating_add(2);
    let earlier = before
        .filter(|before| before.at == seen.at && before.last().load == seen.last().load)
        .filter(|before| over(before.last().reps, before.last().top))
        .map(|before| before.last().reps);
    match earlier {
        Some(earlier) if over(reps, goal) => {
            ladder.because(seen.at, Wish::Harder, up, |moved| Because::TwoOverTwice {
                reps: [earlier, reps],
                goal,
                moved: moved.over(seen.last_load()),
            })
        }
        _ => ladder.because(seen.at, Wish::Same, up, |moved| Because::NotTwiceYet {
            reps,
            goal,
            moved: moved.over(seen.last_load()),
        }),
    }
}
