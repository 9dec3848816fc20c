//! What is read of the history when a screen asks for it: nothing of it is in the model.

use super::keep::Keep;
use crate::device::db::DbError;
use crate::ledger::{Heading, Past, in_order, newest_first};
use crate::session::SessionId;
use crate::sheet::ExerciseId;
use crate::store::{END, Shelf, Shelves, heading_key, headings_span, history_span, shelved};
use chrono::{DateTime, FixedOffset, NaiveDate, NaiveDateTime, TimeDelta};

/// A day begins up to so many hours before it begins in UTC, and ends up to so many after.
const OFFSET_HOURS: i64 = 24;

/// The headings of the sessions that began from the first day to the last, both among them, the newest first.
pub async fn headings_between(
    keep: &Keep,
    first: NaiveDate,
    last: NaiveDate,
) -> Result<Vec<Heading>, DbError> {
    let morning = |day: NaiveDate, hours: i64| {
        let begins = NaiveDateTime::from(day);
        begins
            .checked_add_signed(TimeDelta::hours(hours))
            .unwrap_or(begins)
    };
    let (from, to) = headings_span(
        morning(first, -OFFSET_HOURS),
        morning(last, 24 + OFFSET_HOURS),
    );
    let rows = keep.first(Shelf::Headings, (&from, &to), u32::MAX).await?;
    let mut headings = shelved::<Heading>(rows).records;
    headings.retain(|heading| (first..=last).contains(&heading.began.date_naive()));
    newest_first(&mut headings);
    Ok(headings)
}

/// The day of the first session that is kept; none where there is no session.
pub async fn first_day(keep: &Keep) -> Result<Option<NaiveDate>, DbError> {
    let rows = keep.first(Shelf::Headings, ("", END), 1).await?;
    let first = shelved::<Heading>(rows).records.into_iter().next();
    Ok(first.map(|heading| heading.began.date_naive()))
}

/// All that was ever done of an exercise, the oldest first.
pub async fn history_of(keep: &Keep, exercise: &ExerciseId) -> Result<Vec<Past>, DbError> {
    let (from, to) = history_span(exercise);
    let rows = keep.first(Shelf::Histories, (&from, &to), u32::MAX).await?;
    let years = shelved::<Vec<Past>>(rows).records;
    let mut history: Vec<Past> = years.into_iter().flatten().collect();
    in_order(&mut history);
    Ok(history)
}

/// The heading of one session.
pub async fn heading_of(
    keep: &Keep,
    began: DateTime<FixedOffset>,
    session: SessionId,
) -> Result<Option<Heading>, DbError> {
    keep.get(Shelf::Headings, &heading_key(began, session))
        .await
}
