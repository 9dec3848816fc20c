//! Where things stand in the books, and how their shelves are read.

use super::shelf::Shelf;
use crate::session::SessionId;
use crate::sheet::{ExerciseId, SheetId};
use chrono::{DateTime, Datelike, FixedOffset, NaiveDateTime, Timelike};

/// The form of the books. Rises when what is kept in them changes, or what a session may hold: then they are rebuilt
/// from the sessions, each of which is read.
pub const BOOKS_FORM: u32 = 7;

/// The key of the list of sessions that could not be read when the books were made.
pub const UNREAD_KEY: &str = "unread";

/// The key of [`BOOKS_FORM`] on its shelf.
pub const FORM_KEY: &str = "form";

/// Rows with their keys, by rising key.
pub type Rows = Vec<(String, String)>;

/// The shelves, as far as books are kept from them. Spans go from a key on to one before which they end.
pub trait Shelves {
    /// Why they cannot be read.
    type Fault;

    /// The first rows of a span, at most so many.
    fn first(
        &self,
        shelf: Shelf,
        span: (&str, &str),
        most: u32,
    ) -> impl Future<Output = Result<Rows, Self::Fault>>;

    /// The last rows of a span, at most so many.
    fn last(
        &self,
        shelf: Shelf,
        span: (&str, &str),
        most: u32,
    ) -> impl Future<Output = Result<Rows, Self::Fault>>;

    /// The rows with those keys that there are.
    fn some(
        &self,
        shelf: Shelf,
        keys: Vec<String>,
    ) -> impl Future<Output = Result<Rows, Self::Fault>>;
}

/// Behind every key that is written.
pub const END: &str = "\u{ffff}";

/// The beginning of a heading's key: the time in UTC, so that keys stand in the order of time.
fn time_key(at: NaiveDateTime) -> String {
    let (date, time) = (at.date(), at.time());
    // A year that cannot be written in four digits stands at the nearest end; a leap second at the end of its second.
    format!(
        "{:04}-{:02}-{:02}T{:02}:{:02}:{:02}.{:09}",
        date.year().clamp(0, 9999),
        date.month(),
        date.day(),
        time.hour(),
        time.minute(),
        time.second(),
        time.nanosecond().min(999_999_999)
    )
}

/// The key of a heading: when its session began, in UTC, then its id.
#[must_use]
pub fn heading_key(began: DateTime<FixedOffset>, session: SessionId) -> String {
    format!("{}/{}", time_key(began.naive_utc()), session.0)
}

/// The span of headings of sessions that began from a time on and before another one, both in UTC.
#[must_use]
pub fn headings_span(from: NaiveDateTime, to: NaiveDateTime) -> (String, String) {
    (time_key(from), time_key(to))
}

/// The year of a history: that of the beginning in UTC.
pub(super) fn year_of(began: DateTime<FixedOffset>) -> i32 {
    began.naive_utc().year().clamp(0, 9999)
}

/// The key of what was done of an exercise in a year.
pub(super) fn history_key(exercise: &ExerciseId, year: i32) -> String {
    format!("{exercise}/{year:04}")
}

/// The span of all that was ever done of an exercise. Ids hold no character before the slash but the hyphen.
#[must_use]
pub fn history_span(exercise: &ExerciseId) -> (String, String) {
    // The digit nought stands right behind the slash.
    (format!("{exercise}/"), format!("{exercise}0"))
}

/// The span of the newest sessions of sheets.
pub const LASTS: (&str, &str) = ("sheet/", "sheet0");

/// The key of the newest session of a sheet.
#[must_use]
pub fn last_key(sheet: SheetId) -> String {
    format!("sheet/{}", sheet.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn key(at: &str) -> String {
        let at = DateTime::parse_from_rfc3339(at).unwrap();
        heading_key(at, SessionId(uuid::Uuid::nil()))
    }

    #[test]
    fn keys_stand_in_the_order_of_time_whatever_the_offset() {
        let times = [
            "0000-01-01T00:00:00+14:00",
            "1999-12-31T23:59:59Z",
            "2026-03-29T01:30:00+01:00",
            "2026-03-29T01:30:00.000000001+01:00",
            "2026-03-29T03:00:00+02:00",
            "2026-03-28T23:30:00-02:00",
            "9999-12-31T23:59:59Z",
        ];
        let keys = times.map(key);
        assert!(keys.is_sorted(), "{keys:?}");
        let (from, to) = headings_span(
            "2026-03-29T00:00:00".parse().unwrap(),
            "2026-03-30T00:00:00".parse().unwrap(),
        );
        let within = keys.iter().filter(|key| **key >= from && **key < to);
        assert_eq!(within.count(), 4);
    }

    #[test]
    fn a_history_ends_before_that_of_a_longer_name() {
        let exercise = |id| ExerciseId::new(id).unwrap();
        let (from, to) = history_span(&exercise("squat"));
        let is_in = |key: String| key >= from && key < to;
        assert!(is_in(history_key(&exercise("squat"), 2026)));
        assert!(!is_in(history_key(&exercise("squat-2"), 2026)));
        assert!(!is_in(history_key(&exercise("squat0"), 2026)));
    }
}
