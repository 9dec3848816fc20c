//! Back after a break: the longer it was, the lighter the first time; and a last time that lies ahead (common practice, no
//! source).

use super::super::because::Because;
use super::super::ladder::Ladder;
use super::super::moved::Wish;
use crate::sheet::Step;
use crate::units::{Load, Share};
use chrono::{DateTime, FixedOffset};

/// So many days are no break yet: who trains an exercise every second week has none.
pub const NO_BREAK_DAYS: i64 = 14;

/// After more than so many days the load is lighter, the longest first: by a share, or by one step.
const BREAKS: [(i64, Option<u8>); 3] = [(56, Some(20)), (28, Some(10)), (NO_BREAK_DAYS, None)];

/// Days from one date to the other, each as the lifter's calendar had it, whatever the hour. Of what lies ahead whole days,
/// negative; who crossed the date line lost or won a day, and nothing lies ahead of them for that.
#[must_use]
pub fn days_between(from: DateTime<FixedOffset>, to: DateTime<FixedOffset>) -> i64 {
    if to < from {
        return (to - from).num_days();
    }
    (to.date_naive() - from.date_naive()).num_days().max(0)
}

/// The same because, or that the last time is long ago where the load would then be easier.
///
/// A last time that lies a day or more ahead is no break: the clock was set back, so that it is not known what was done
/// last. Then there is no step up.
pub(in super::super) fn after_break(
    because: Because,
    at: Load,
    last: DateTime<FixedOffset>,
    now: DateTime<FixedOffset>,
    ladder: &Ladder,
) -> Because {
    let days = days_between(last, now);
    let up = because.load().is_some_and(|to| ladder.is_harder(to, at));
    if days < 0 && up {
        let days = u32::try_from(-days).unwrap_or(u32::MAX);
        return ladder.because(at, Wish::Same, Step::Smallest, |moved| Because::LiesAhead {
            days,
            moved,
        });
    }
    let Some((_, percent)) = BREAKS.iter().find(|(longer_than, _)| days > *longer_than) else {
        return because;
    };
    let less = percent.map(Share::percent);
    let back = match less {
        Some(less) => ladder.lightened(at, less),
        None => ladder
            .step(at, Step::Smallest, false)
            .or_else(|| ladder.keep(at))
            .or_else(|| ladder.easiest_above(at)),
    };
    match (because.load(), back) {
        (Some(ruled), Some(to)) if ladder.is_harder(ruled, to) => Because::AfterBreak {
            days: u32::try_from(days).unwrap_or(u32::MAX),
            less,
            moved: ladder.eased(at, to),
        },
        _ => because,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn days(from: &str, to: &str) -> i64 {
        let at = |text| DateTime::parse_from_rfc3339(text).unwrap();
        days_between(at(from), at(to))
    }

    #[test]
    fn days_are_those_of_the_calendar_and_over_the_date_line_nothing_lies_ahead() {
        assert_eq!(
            days("2026-12-24T23:00:00+01:00", "2027-01-08T18:00:00+01:00"),
            15
        );
        // Six hours later, and a day earlier by the calendar there.
        assert_eq!(
            days("2026-03-07T08:00:00+13:00", "2026-03-06T15:00:00-10:00"),
            0
        );
        // A clock that was set back: by an hour over midnight, and by two days.
        assert_eq!(
            days("2026-03-07T00:30:00+01:00", "2026-03-06T23:30:00+01:00"),
            0
        );
        assert_eq!(
            days("2026-03-07T08:00:00+01:00", "2026-03-05T08:00:00+01:00"),
            -2
        );
    }
}
