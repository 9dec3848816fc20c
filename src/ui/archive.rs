//! An ended session goes into the ledger.

use super::keep::{put, put_json};
use super::model::Model;
use crate::device::db::Write;
use crate::ledger::{Heading, SessionRecord, newest_first, performances_of, update};
use crate::session::Session;
use crate::store::{SessionLog, Shelf};

/// Takes an ended session into the ledger: its record, its heading and what it says of its exercises, and its rows of
/// the floor away, all in one write.
pub fn archive(model: &mut Model, session: &Session) -> Vec<Write> {
    let Ok(record) = SessionRecord::from_events(session.events()) else {
        return Vec::new();
    };
    let key = record.session.0.to_string();
    let heading = Heading::of(&record, &model.headings);
    let Ok(log) = SessionLog::new(record.session, session.events().iter().cloned()) else {
        return Vec::new();
    };
    let mut writes = vec![
        put_json(Shelf::Sessions, &key, &log.to_json()),
        put(Shelf::Headings, &key, &heading),
    ];
    if model
        .session
        .as_ref()
        .is_some_and(|own| own.state().began.session == record.session)
    {
        // Each by its key: a row that could not be read stays where it is.
        writes.extend(session.events().iter().map(|event| Write::Delete {
            shelf: Shelf::Events.name().to_owned(),
            key: event.id.0.to_string(),
        }));
    }
    model
        .headings
        .retain(|other| other.session != heading.session);
    model.headings.push(heading);
    newest_first(&mut model.headings);
    update(&mut model.summaries, &record);
    for (exercise, _) in performances_of(&record) {
        if let Some(summary) = model.summaries.get(&exercise) {
            writes.push(put(Shelf::Summaries, exercise.as_str(), summary));
        }
    }
    writes
}
