//! A deload after repeated misses: three sessions running below the bottom, and no harder each time, give 10 % less
//! (common practice, no source).

use super::super::because::Because;
use super::super::ladder::Ladder;
use super::super::moved::Missed;
use super::Seen;
use crate::units::Share;

/// How much lighter a deload is, in percent.
const LESS: u8 = 10;

/// The same because, or a deload where the three newest sessions, the newest last, all missed the bottom.
///
/// A session that was lightened by as much as a deload begins a new count: after a deload the rule goes on from there.
/// A deload is never heavier than what the rule says.
pub(in super::super) fn unless_deload(
    because: Because,
    newest: &[Seen<'_>],
    ladder: &Ladder,
) -> Because {
    let less = Share::percent(LESS);
    let [a, b, c] = newest else {
        return because;
    };
    let goes_on = |before: &Seen<'_>, after: &Seen<'_>| {
        let lightened = ladder
            .lightened(before.at, less)
            .filter(|&to| ladder.is_harder(before.at, to) && !ladder.is_harder(after.at, to));
        !ladder.is_harder(after.at, before.at) && lightened.is_none()
    };
    let missed = |seen: &Seen<'_>| {
        let worst = seen.missed()?;
        Some(Missed {
            at: worst.load.unwrap_or(seen.at),
            reps: worst.reps,
            low: worst.low,
        })
    };
    let (Some(first), Some(second), Some(third)) = (missed(a), missed(b), missed(c)) else {
        return because;
    };
    if !(goes_on(a, b) && goes_on(b, c)) {
        return because;
    }
    match (because.load(), ladder.lightened(c.at, less)) {
        (Some(ruled), Some(to)) if !ladder.is_harder(to, ruled) => Because::Deload {
            missed: [first, second, third],
            less,
            moved: ladder.eased(c.at, to),
        },
        _ => because,
    }
}
