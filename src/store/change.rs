//! What must be written so that what is kept becomes something else: row by row.

use super::archive::Archive;
use super::kept::{Kept, Record, content};
use super::sheet_record::SheetRecord;
use super::shelf::Shelf;
use crate::session::SessionId;

/// One row that changes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Change {
    /// Its shelf.
    pub shelf: Shelf,
    /// Its key.
    pub key: String,
    /// Its JSON text from now on; none when the row goes.
    pub json: Option<String>,
}

/// Every row that differs between `from` and `to`, so that writing all of them makes one of the other.
///
/// The session `running` on the floor has a row for each of its events; any other session is one row.
#[must_use]
pub fn changes(from: &Archive, to: &Archive, running: Option<SessionId>) -> Vec<Change> {
    let mut all = Vec::new();
    let key = |id: uuid::Uuid| id.to_string();
    differ(&mut all, Shelf::Lifters, &from.lifter, &to.lifter, key);
    differ(&mut all, Shelf::Kits, &from.kit, &to.kit, key);
    differ(
        &mut all,
        Shelf::BodyMass,
        &from.body_mass,
        &to.body_mass,
        key,
    );
    differ(&mut all, Shelf::Body, &from.body, &to.body, key);
    differ(
        &mut all,
        Shelf::Exercises,
        &from.exercises,
        &to.exercises,
        key,
    );
    differ(
        &mut all,
        Shelf::Programmes,
        &from.programmes,
        &to.programmes,
        key,
    );
    let sheet_key =
        |(sheet, version): <SheetRecord as Record>::Id| format!("{}/{}", sheet.0, version.0);
    differ(&mut all, Shelf::Sheets, &from.sheets, &to.sheets, sheet_key);
    let session_key = |id: SessionId| id.0.to_string();
    differ(
        &mut all,
        Shelf::Removed,
        &from.removed,
        &to.removed,
        session_key,
    );
    for (id, log) in &to.sessions {
        let before = from.sessions.get(id);
        if before == Some(log) {
            continue;
        }
        if running == Some(*id) {
            for event in log.as_events() {
                let known = before.and_then(|log| log.event(event.id));
                if known != Some(event) {
                    let key = event.id.0.to_string();
                    put(&mut all, Shelf::Events, key, Some(content(event)));
                }
            }
        } else {
            put(
                &mut all,
                Shelf::Sessions,
                session_key(*id),
                Some(log.to_json()),
            );
        }
    }
    for (id, log) in &from.sessions {
        let after = to.sessions.get(id);
        if running == Some(*id) {
            let gone = log
                .event_ids()
                .filter(|event| after.is_none_or(|log| log.event(*event).is_none()));
            for event in gone {
                put(&mut all, Shelf::Events, event.0.to_string(), None);
            }
        } else if after.is_none() {
            put(&mut all, Shelf::Sessions, session_key(*id), None);
        }
    }
    all
}

fn put(all: &mut Vec<Change>, shelf: Shelf, key: String, json: Option<String>) {
    all.push(Change { shelf, key, json });
}

fn differ<R: Record>(
    all: &mut Vec<Change>,
    shelf: Shelf,
    from: &Kept<R>,
    to: &Kept<R>,
    key: impl Fn(R::Id) -> String,
) {
    for record in to.iter() {
        let json = content(record);
        // Compared as texts: what compares every kind of record field by field would be loaded by every phone.
        if from.get(record.id()).map(content).as_ref() != Some(&json) {
            put(all, shelf, key(record.id()), Some(json));
        }
    }
    for record in from.iter() {
        if to.get(record.id()).is_none() {
            put(all, shelf, key(record.id()), None);
        }
    }
}
