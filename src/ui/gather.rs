//! Everything that is kept, in one archive: for an export, an import, and a copy before an update.

use super::keep::Keep;
use crate::device::db::DbError;
use crate::session::{Event, Session};
use crate::store::{
    Archive, BodyMassRecord, BodyRecord, ExerciseRecord, KitRecord, LifterRecord, ProgrammeRecord,
    RemovedSession, SessionLog, SheetRecord, Shelf, Unreadable,
};

/// Everything that could be read, and what could not.
pub struct Gathered {
    /// What could be read.
    pub archive: Archive,
    /// What could not.
    pub unreadable: Vec<(Shelf, Unreadable)>,
}

/// Everything that is kept, the session under way and what waits to be written among it.
pub async fn gather(keep: &Keep) -> Result<Gathered, DbError> {
    let mut archive = Archive::default();
    let mut lost = Vec::new();
    for record in keep
        .records::<LifterRecord>(Shelf::Lifters, &mut lost)
        .await?
    {
        archive.lifter.put(record);
    }
    for record in keep.records::<KitRecord>(Shelf::Kits, &mut lost).await? {
        archive.kit.put(record);
    }
    for record in keep
        .records::<BodyMassRecord>(Shelf::BodyMass, &mut lost)
        .await?
    {
        archive.body_mass.put(record);
    }
    for record in keep.records::<BodyRecord>(Shelf::Body, &mut lost).await? {
        archive.body.put(record);
    }
    for record in keep
        .records::<SheetRecord>(Shelf::Sheets, &mut lost)
        .await?
    {
        archive.sheets.put(record);
    }
    for record in keep
        .records::<ExerciseRecord>(Shelf::Exercises, &mut lost)
        .await?
    {
        archive.exercises.put(record);
    }
    for record in keep
        .records::<ProgrammeRecord>(Shelf::Programmes, &mut lost)
        .await?
    {
        archive.programmes.put(record);
    }
    for record in keep
        .records::<RemovedSession>(Shelf::Removed, &mut lost)
        .await?
    {
        archive.removed.put(record);
    }
    for log in keep
        .records::<SessionLog>(Shelf::Sessions, &mut lost)
        .await?
    {
        archive.sessions.insert(log.id(), log);
    }
    let floor: Vec<Event> = keep.records(Shelf::Events, &mut lost).await?;
    if let Ok(session) = Session::replay(floor) {
        let id = session.state().began.session;
        if let Ok(log) = SessionLog::new(id, session.events().iter().cloned()) {
            archive.sessions.entry(id).or_insert(log);
        }
    }
    archive.settle();
    Ok(Gathered {
        archive,
        unreadable: lost,
    })
}
