//! Dates and times of day as they are read on screen. Chrono's own patterns would bring their whole interpreter
//! along for four fixed wordings.

use crate::say;
use crate::words::{t, t_in};
use chrono::{DateTime, Datelike, FixedOffset, NaiveDate, Timelike};

/// The days of a week by their number, Monday first: 0 to 6.
pub const WEEK: std::ops::Range<usize> = 0..7;

/// The name of a day of the week, Monday being 0.
///
/// # Panics
/// From 7.
#[must_use]
pub fn weekday(from_monday: usize) -> &'static str {
    t([
        "Monday",
        "Tuesday",
        "Wednesday",
        "Thursday",
        "Friday",
        "Saturday",
        "Sunday",
    ][from_monday])
}

/// The short name of a day of the week, Monday being 0: `Mon`.
///
/// # Panics
/// From 7.
#[must_use]
pub fn weekday_short(from_monday: usize) -> &'static str {
    t(["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"][from_monday])
}

/// The name of the month in full.
fn month_long(date: NaiveDate) -> &'static str {
    t([
        "January",
        "February",
        "March",
        "April",
        "May",
        "June",
        "July",
        "August",
        "September",
        "October",
        "November",
        "December",
    ][date.month0() as usize])
}

/// The day alone: `3 Feb 2026`.
#[must_use]
pub fn day(at: DateTime<FixedOffset>) -> String {
    date(at.date_naive())
}

/// A date: `3 Feb 2026`.
#[must_use]
pub fn date(date: NaiveDate) -> String {
    dated(date, month_short(date))
}

fn dated(date: NaiveDate, month: &str) -> String {
    say!(
        "{day} {month} {year}",
        day = date.day(),
        month,
        year = date.year()
    )
}

/// The day and the month, in short: `3 Feb`.
#[must_use]
pub fn day_and_month(date: NaiveDate) -> String {
    say!("{day} {month}", day = date.day(), month = month_short(date))
}

/// The month in short: `Feb`.
#[must_use]
pub fn month_short(date: NaiveDate) -> &'static str {
    t_in(
        "short",
        [
            "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec",
        ][date.month0() as usize],
    )
}

/// The day and the time of day in short: `Tue 3 Feb 2026, 07:05`.
#[must_use]
pub fn day_and_time(at: DateTime<FixedOffset>) -> String {
    let weekday = weekday_short(from_monday(at.date_naive()));
    say!(
        "{weekday} {date}, {time}",
        weekday,
        date = day(at),
        time = time(at)
    )
}

/// The day and the time of day in full: `Tuesday 3 February 2026, 07:05`.
#[must_use]
pub fn long_day_and_time(at: DateTime<FixedOffset>) -> String {
    say!(
        "{date}, {time}",
        date = long_date(at.date_naive()),
        time = time(at)
    )
}

/// The day in the form of ISO 8601, for names of files: `2026-02-03`.
#[must_use]
pub fn iso_day(at: DateTime<FixedOffset>) -> String {
    iso_date(at.date_naive())
}

/// A date in the form of ISO 8601: `2026-02-03`.
#[must_use]
pub fn iso_date(date: NaiveDate) -> String {
    format!("{:04}-{:02}-{:02}", date.year(), date.month(), date.day())
}

/// Reads what [`iso_date`] writes; none for anything else, and for a day that there is not.
#[must_use]
pub fn parse_date(text: &str) -> Option<NaiveDate> {
    let mut parts = text.trim().split('-');
    let year = parts.next()?.parse().ok()?;
    let month = parts.next()?.parse().ok()?;
    let day = parts.next()?.parse().ok()?;
    match parts.next() {
        None => NaiveDate::from_ymd_opt(year, month, day),
        Some(_) => None,
    }
}

/// The month of a date: `February 2026`.
#[must_use]
pub fn month(date: NaiveDate) -> String {
    say!(
        "{month} {year}",
        month = month_long(date),
        year = date.year()
    )
}

/// The day and its weekday in full: `Tuesday 3 February 2026`.
#[must_use]
pub fn long_date(date: NaiveDate) -> String {
    let weekday = weekday(from_monday(date));
    say!(
        "{weekday} {date}",
        weekday,
        date = dated(date, month_long(date))
    )
}

fn from_monday(date: NaiveDate) -> usize {
    date.weekday().num_days_from_monday() as usize
}

/// The time of day: `07:05`.
#[must_use]
pub fn time(at: DateTime<FixedOffset>) -> String {
    format!("{:02}:{:02}", at.hour(), at.minute())
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn reads_as_written() {
        let at = DateTime::parse_from_rfc3339("2026-02-03T07:05:59+13:00").unwrap();
        assert_eq!(day(at), "3 Feb 2026");
        assert_eq!(day_and_time(at), "Tue 3 Feb 2026, 07:05");
        assert_eq!(long_day_and_time(at), "Tuesday 3 February 2026, 07:05");
        assert_eq!(iso_day(at), "2026-02-03");
    }

    #[test]
    fn a_date_is_read_as_it_is_written() {
        let date = NaiveDate::from_ymd_opt(2026, 2, 3).unwrap();
        assert_eq!(parse_date(&iso_date(date)), Some(date));
        for text in ["", "2026-02-30", "2026-02", "2026-02-03-04", "3 Feb"] {
            assert_eq!(parse_date(text), None, "{text}");
        }
        assert_eq!(month(date), "February 2026");
        assert_eq!(long_date(date), "Tuesday 3 February 2026");
    }

    proptest! {
        /// Years of four digits, and offsets as far as they go.
        #[test]
        fn reads_as_chrono_writes_it(
            seconds in -30_610_224_000_i64..253_402_214_400,
            offset in -86_399_i32..86_400,
        ) {
            let zone = FixedOffset::east_opt(offset).unwrap();
            let at = DateTime::from_timestamp(seconds, 0).unwrap().with_timezone(&zone);
            prop_assume!((1000..=9999).contains(&at.year()));
            prop_assert_eq!(day(at), at.format("%-d %b %Y").to_string());
            prop_assert_eq!(day_and_time(at), at.format("%a %-d %b %Y, %H:%M").to_string());
            prop_assert_eq!(long_day_and_time(at), at.format("%A %-d %B %Y, %H:%M").to_string());
            prop_assert_eq!(iso_day(at), at.format("%Y-%m-%d").to_string());
        }
    }
}
