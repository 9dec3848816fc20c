//! An ended session goes into the ledger.

use super::books::off_the_floor;
use super::keep::put_json;
use super::model::{HEADINGS_NEWEST, Model};
use crate::device::db::Write;
use crate::ledger::{Heading, Past, SessionRecord, newest_first, pasts_of};
use crate::order::Map;
use crate::session::Session;
use crate::sheet::ExerciseId;
use crate::store::{SessionLog, Shelf};

/// Takes an ended session into the ledger: its record, and its rows of the floor away, all in one write; what follows from
/// it for the books is written with it ([`super::books::apply_next`]). The model shows what of that is known at once.
pub fn into_ledger(model: &mut Model, session: &Session) -> Vec<Write> {
    let Ok(record) = SessionRecord::from_events(session.events()) else {
        return Vec::new();
    };
    let Ok(log) = SessionLog::new(record.session, session.events().iter().cloned()) else {
        return Vec::new();
    };
    let key = record.session.0.to_string();
    let mut writes = vec![put_json(Shelf::Sessions, &key, &log.to_json())];
    let own = model.session.as_ref();
    if own.is_some_and(|own| own.state().began.session == record.session) {
        writes.extend(off_the_floor(session));
    }
    show(model, &record);
    writes
}

/// What is known at once. A correction that takes back what was best is known when the history was read.
fn show(model: &mut Model, record: &SessionRecord) {
    let heading = Heading::of(record, &model.headings);
    let known = model.headings.len();
    model
        .headings
        .retain(|other| other.session != heading.session);
    if model.headings.len() == known {
        model.sessions += usize::from(model.heading(record.session).is_none());
    }
    model.headings.push(heading);
    newest_first(&mut model.headings);
    model.headings.truncate(HEADINGS_NEWEST);
    let mut new: Map<ExerciseId, Vec<Past>> = Map::new();
    for (exercise, past) in pasts_of(record) {
        new.or_default(exercise).push(past);
    }
    for (exercise, session) in new {
        match model.summaries.get_mut(&exercise) {
            Some(summary) => _ = summary.take(&session),
            None => {
                let first = crate::ledger::ExerciseSummary::of(&exercise, &session);
                if let Some(first) = first {
                    model.summaries.insert(exercise, first);
                }
            }
        }
    }
}
