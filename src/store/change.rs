//! What must be written so that what is kept becomes something else: row by row.

use super::archive::Archive;
use super::kept::{Kept, Record, content};
use super::session_log::SessionLog;
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
    let mut all = changes_but_sessions(from, to, running);
    let sessions = sessions_that_differ(from, to, running).into_iter();
    all.extend(sessions.map(|id| session_row(to, id)));
    all
}

/// The sessions that are one row and differ, or are in one of both only.
#[must_use]
pub fn sessions_that_differ(
    from: &Archive,
    to: &Archive,
    running: Option<SessionId>,
) -> Vec<SessionId> {
    let mut ids = Vec::new();
    for (id, log) in &to.sessions {
        if running != Some(*id) && from.sessions.get(id) != Some(log) {
            ids.push(*id);
        }
    }
    for id in from.sessions.keys() {
        if running != Some(*id) && !to.sessions.contains_key(id) {
            ids.push(*id);
        }
    }
    ids
}

/// The row of a session as `to` has it, which is long.
#[must_use]
pub fn session_row(to: &Archive, id: SessionId) -> Change {
    Change {
        shelf: Shelf::Sessions,
        key: id.0.to_string(),
        json: to.sessions.get(&id).map(SessionLog::to_json),
    }
}

/// As [`changes`], without [`sessions_that_differ`].
#[must_use]
pub fn changes_but_sessions(
    from: &Archive,
    to: &Archive,
    running: Option<SessionId>,
) -> Vec<Change> {
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
    if let Some(id) = running {
        let (before, after) = (from.sessions.get(&id), to.sessions.get(&id));
        for event in after.map(SessionLog::as_events).unwrap_or_default() {
            if before.and_then(|log| log.event(event.id)) != Some(event) {
                let key = event.id.0.to_string();
                put(&mut all, Shelf::Events, key, Some(content(event)));
            }
        }
        for event in before.map(SessionLog::as_events).unwrap_or_default() {
            if after.and_then(|log| log.event(event.id)).is_none() {
                put(&mut all, Shelf::Events, event.id.0.to_string(), None);
            }
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
