//! Everything that is kept, in one archive: for an export, an import, and a copy before an update.

use super::books;
use super::keep::Keep;
use crate::device::db::DbError;
use crate::order::Map;
use crate::session::{Event, Session, SessionId};
use crate::store::{
    Archive, BodyMassRecord, BodyRecord, ExerciseRecord, KitRecord, LifterRecord, ProgrammeRecord,
    RemovedSession, SessionLog, SheetRecord, Shelf, UNREAD_KEY, Unreadable, entry, shelved,
    write_with,
};
use chrono::{DateTime, FixedOffset};

/// Everything that could be read, and what could not.
pub struct Gathered {
    /// What could be read.
    pub archive: Archive,
    /// What could not.
    pub unreadable: Vec<(Shelf, Unreadable)>,
}

/// Everything that is kept, the session under way and what waits to be written among it.
pub async fn gather(keep: &Keep) -> Result<Gathered, DbError> {
    let mut unreadable = Vec::new();
    let mut archive = but_sessions(keep, &mut unreadable).await?;
    let lost = &mut unreadable;
    for log in keep.records::<SessionLog>(Shelf::Sessions, lost).await? {
        archive.sessions.insert(log.id(), log);
    }
    if let Some(log) = on_floor(keep, lost).await? {
        archive.sessions.or_insert_with(log.id(), || log);
    }
    archive.settle();
    Ok(Gathered {
        archive,
        unreadable,
    })
}

/// The text of a file with everything that could be read, written at `written`, and what could not.
///
/// It is that of [`write`]. Where the books are kept, every session was read when they were made, and a row whose
/// checksum holds stands in the file as it is: nothing of it is read again.
pub async fn file(
    keep: &Keep,
    written: DateTime<FixedOffset>,
) -> Result<(String, Vec<(Shelf, Unreadable)>), DbError> {
    let mut lost = Vec::new();
    let archive = but_sessions(keep, &mut lost).await?;
    let unread = match books::are_kept(keep).await? {
        true => keep.get::<Vec<String>>(Shelf::Books, UNREAD_KEY).await?,
        false => None,
    };
    let floor = on_floor(keep, &mut lost).await?;
    let mut sessions: Map<SessionId, String> = Map::new();
    for (key, row) in keep.rows(Shelf::Sessions).await? {
        let known = unread.as_ref().is_some_and(|unread| !unread.contains(&key));
        let as_it_is = key.parse().ok().filter(|_| known).zip(entry(&row));
        if let Some((id, text)) = as_it_is {
            sessions.insert(SessionId(id), text.to_owned());
            continue;
        }
        let read = shelved::<SessionLog>(vec![(key, row)]);
        for log in read.records {
            sessions.insert(log.id(), log.to_json());
        }
        lost.extend(
            read.unreadable
                .into_iter()
                .map(|row| (Shelf::Sessions, row)),
        );
    }
    if let Some(log) = floor {
        sessions.or_insert_with(log.id(), || log.to_json());
    }
    sessions.retain(|id, _| archive.removed.get(*id).is_none());
    Ok((write_with(&archive, sessions.into_values(), written), lost))
}

/// The session on the floor.
async fn on_floor(
    keep: &Keep,
    lost: &mut Vec<(Shelf, Unreadable)>,
) -> Result<Option<SessionLog>, DbError> {
    let events: Vec<Event> = keep.records(Shelf::Events, lost).await?;
    Ok(Session::replay(events).ok().and_then(|session| {
        let id = session.state().began.session;
        SessionLog::new(id, session.events().iter().cloned()).ok()
    }))
}

/// Everything but the sessions.
async fn but_sessions(
    keep: &Keep,
    lost: &mut Vec<(Shelf, Unreadable)>,
) -> Result<Archive, DbError> {
    let mut archive = Archive::default();
    for record in keep.records::<LifterRecord>(Shelf::Lifters, lost).await? {
        archive.lifter.put(record);
    }
    for record in keep.records::<KitRecord>(Shelf::Kits, lost).await? {
        archive.kit.put(record);
    }
    for record in keep
        .records::<BodyMassRecord>(Shelf::BodyMass, lost)
        .await?
    {
        archive.body_mass.put(record);
    }
    for record in keep.records::<BodyRecord>(Shelf::Body, lost).await? {
        archive.body.put(record);
    }
    for record in keep.records::<SheetRecord>(Shelf::Sheets, lost).await? {
        archive.sheets.put(record);
    }
    for record in keep
        .records::<ExerciseRecord>(Shelf::Exercises, lost)
        .await?
    {
        archive.exercises.put(record);
    }
    for record in keep
        .records::<ProgrammeRecord>(Shelf::Programmes, lost)
        .await?
    {
        archive.programmes.put(record);
    }
    for record in keep.records::<RemovedSession>(Shelf::Removed, lost).await? {
        archive.removed.put(record);
    }
    Ok(archive)
}
