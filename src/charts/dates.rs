//! Ticks of a scale of days or weeks: single days, Mondays, months or years, whichever are few enough.

use super::ticks::Tick;
use crate::say;
use crate::units::{day_and_month, month_short};
use chrono::{Datelike, NaiveDate};
use std::ops::Range;

/// The number of a day: how many days it is after the last day of the year 0.
#[must_use]
pub fn day_of(date: NaiveDate) -> i64 {
    i64::from(date.num_days_from_ce())
}

/// The day of a number; none where the calendar ends.
#[must_use]
pub fn date_of(day: i64) -> Option<NaiveDate> {
    NaiveDate::from_num_days_from_ce_opt(i32::try_from(day).ok()?)
}

/// Days from the Monday of a week to its Thursday.
pub const TO_THURSDAY: i64 = 3;

/// A step between ticks.
#[derive(Clone, Copy)]
enum Step {
    Days(i64),
    Months(i64),
}

/// From one day to ten centuries.
const STEPS: [Step; 17] = [
    Step::Days(1),
    Step::Days(2),
    Step::Days(7),
    Step::Days(14),
    Step::Months(1),
    Step::Months(2),
    Step::Months(3),
    Step::Months(6),
    Step::Months(12),
    Step::Months(24),
    Step::Months(60),
    Step::Months(120),
    Step::Months(240),
    Step::Months(600),
    Step::Months(1_200),
    Step::Months(6_000),
    Step::Months(12_000),
];

/// Which of them are weeks.
const WEEKS: Range<usize> = 2..4;

/// Ticks within `from` to `to`, at most `most` (at least one may be asked for): each on the first of a month or a year,
/// a Monday, or a day. `wide` says that there is room for month and year at every tick.
#[must_use]
pub fn time_ticks(from: i64, to: i64, most: usize, wide: bool) -> Vec<Tick> {
    ticks(&STEPS, from, to, most, wide)
}

/// Ticks of weeks whose Thursdays lie within `from` to `to`, as [`time_ticks`] has those of days: the tick of a week lies at its
/// Thursday and is called by its Monday. No day has one of its own.
#[must_use]
pub fn week_ticks(from: i64, to: i64, most: usize, wide: bool) -> Vec<Tick> {
    let (monday, last) = (from - TO_THURSDAY, to - TO_THURSDAY);
    let mondays = ticks(&STEPS[WEEKS], monday, last, most, wide);
    if mondays.is_empty() {
        return ticks(&STEPS[WEEKS.end..], from, to, most, wide);
    }
    let at_thursday = |tick: Tick| Tick {
        at: tick.at + TO_THURSDAY,
        ..tick
    };
    mondays.into_iter().map(at_thursday).collect()
}

/// The ticks of the first of these steps that makes few enough.
fn ticks(steps: &[Step], from: i64, to: i64, most: usize, wide: bool) -> Vec<Tick> {
    let most = most.max(1);
    for &step in steps {
        let count = match step {
            Step::Days(days) => usize::try_from((to - from) / days + 1).unwrap_or(usize::MAX),
            Step::Months(months) => {
                let between = months_of(to).zip(months_of(from));
                let between = between.map_or(0, |(to, from)| to - from);
                usize::try_from(between / months + 1).unwrap_or(usize::MAX)
            }
        };
        if count <= most {
            let days = match step {
                Step::Days(days) => of_days(from, to, days),
                Step::Months(months) => of_months(from, to, months),
            };
            return labelled(&days, step, wide);
        }
    }
    Vec::new()
}

fn months_of(day: i64) -> Option<i64> {
    let date = date_of(day)?;
    Some(i64::from(date.year()) * 12 + i64::from(date.month0()))
}

fn of_days(from: i64, to: i64, step: i64) -> Vec<i64> {
    // Day 1 was a Monday.
    let first = if step < 7 {
        from
    } else {
        from + (1 - from).rem_euclid(7)
    };
    let count = (to - first).div_euclid(step);
    (0..=count).map(|n| first + n * step).collect()
}

fn of_months(from: i64, to: i64, step: i64) -> Vec<i64> {
    let Some((first, last)) = months_of(from).zip(months_of(to)) else {
        return Vec::new();
    };
    let firsts = (first.div_euclid(step)..=last.div_euclid(step)).map(|n| n * step);
    let days = firsts.filter_map(|months| {
        let year = i32::try_from(months.div_euclid(12)).ok()?;
        let month = u32::try_from(months.rem_euclid(12)).ok()? + 1;
        NaiveDate::from_ymd_opt(year, month, 1).map(day_of)
    });
    days.filter(|day| (from..=to).contains(day)).collect()
}

fn labelled(days: &[i64], step: Step, wide: bool) -> Vec<Tick> {
    let dates = days.iter().filter_map(|day| date_of(*day));
    let has_january = dates.clone().any(|date| date.month() == 1);
    let label = |n: usize, date: NaiveDate| match step {
        Step::Days(_) => day_and_month(date),
        Step::Months(months) if months >= 12 || date.month() == 1 => date.year().to_string(),
        // Somewhere the year must stand.
        Step::Months(_) if n == 0 && !has_january && wide => {
            say!(
                "{month} {year}",
                month = month_short(date),
                year = date.year()
            )
        }
        Step::Months(_) => month_short(date).to_owned(),
    };
    dates
        .enumerate()
        .map(|(n, date)| Tick {
            at: day_of(date),
            label: label(n, date),
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn day(year: i32, month: u32, day: u32) -> i64 {
        day_of(NaiveDate::from_ymd_opt(year, month, day).unwrap())
    }

    fn labels(from: i64, to: i64, most: usize) -> Vec<String> {
        let ticks = time_ticks(from, to, most, true);
        ticks.into_iter().map(|tick| tick.label).collect()
    }

    #[test]
    fn few_days_many_months_and_ten_years_each_have_their_ticks() {
        let from = day(2026, 2, 3);
        assert_eq!(labels(from, from + 2, 5), ["3 Feb", "4 Feb", "5 Feb"]);
        assert_eq!(labels(from, from + 20, 4), ["9 Feb", "16 Feb", "23 Feb"]);
        assert_eq!(labels(from, from + 90, 5), ["Mar 2026", "Apr", "May"]);
        assert_eq!(
            labels(day(2025, 11, 5), day(2026, 2, 5), 5),
            ["Dec", "2026", "Feb"]
        );
        assert_eq!(
            labels(from, from + 3_650, 6),
            ["2028", "2030", "2032", "2034", "2036"]
        );
    }

    #[test]
    fn a_week_is_called_by_its_monday_and_has_its_tick_below_its_bar() {
        let thursday = day(2026, 11, 26);
        let said = |weeks: i64, most| {
            let ticks = week_ticks(thursday, thursday + 7 * (weeks - 1), most, true);
            ticks.into_iter().map(|tick| tick.label).collect::<Vec<_>>()
        };
        assert_eq!(said(1, 8), ["23 Nov"]);
        assert_eq!(week_ticks(thursday, thursday, 8, true)[0].at, thursday);
        assert_eq!(said(3, 30), ["23 Nov", "30 Nov", "7 Dec"]);
        assert_eq!(said(3, 2), ["23 Nov", "7 Dec"]);
        assert_eq!(said(12, 5), ["Dec", "2027", "Feb"]);
    }

    #[test]
    fn a_day_is_found_again_by_its_number() {
        let date = NaiveDate::from_ymd_opt(2026, 11, 25).unwrap();
        assert_eq!(date_of(day_of(date)), Some(date));
        assert_eq!(date_of(i64::MAX), None);
    }

    proptest! {
        #[test]
        fn ticks_lie_within_and_are_not_too_many(
            from in -200_000_i64..1_000_000,
            length in 0_i64..400_000,
            most in 0_usize..12,
        ) {
            let to = from + length;
            let ticks = time_ticks(from, to, most, false);
            prop_assert!(ticks.len() <= most.max(1));
            prop_assert!(ticks.iter().all(|tick| (from..=to).contains(&tick.at)));
            prop_assert!(ticks.windows(2).all(|two| two[0].at < two[1].at));
        }
    }
}
