//! What is read of the history when a screen asks for it: nothing of it is in the model.

use super::keep::Keep;
use crate::device::db::DbError;
use crate::ledger::{Heading, Past, SessionRecord, newest_first, pasts_of};
use crate::order;
use crate::sheet::ExerciseId;
use crate::store::{SessionLog, Shelf};
use chrono::NaiveDate;

/// The headings of the sessions that began from the first day to the last, both among them, the newest first.
pub async fn headings_between(
    keep: &Keep,
    first: NaiveDate,
    last: NaiveDate,
) -> Result<Vec<Heading>, DbError> {
    let mut headings: Vec<Heading> = keep.records(Shelf::Headings, &mut Vec::new()).await?;
    headings.retain(|heading| (first..=last).contains(&heading.began.date_naive()));
    newest_first(&mut headings);
    Ok(headings)
}

/// All that was ever done of an exercise, the oldest first.
pub async fn history_of(keep: &Keep, exercise: &ExerciseId) -> Result<Vec<Past>, DbError> {
    let logs: Vec<SessionLog> = keep.records(Shelf::Sessions, &mut Vec::new()).await?;
    let records = logs
        .iter()
        .filter_map(|log| SessionRecord::from_events(&log.events()).ok());
    let mut pasts: Vec<Past> = records
        .flat_map(|record| pasts_of(&record))
        .filter(|(id, _)| id == exercise)
        .map(|(_, past)| past)
        .collect();
    order::by_key(&mut pasts, |past| {
        (past.performance.at, past.performance.session)
    });
    Ok(pasts)
}
