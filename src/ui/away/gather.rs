//! Everything that is stored, in one value, and one write that replaces it by another.

use crate::device::db::{DbError, Write};
use crate::session::SessionId;
use crate::store::{
    Archive, BodyMassRecord, ExerciseRecord, KitRecord, LifterRecord, ProgrammeRecord,
    RemovedSession, SessionLog, SheetRecord, Shelf,
};
use crate::ui::stanchion::Stanchion;
use crate::ui::{change, start};
use leptos::prelude::*;

/// The session on the floor that has not ended.
pub fn running(app: Stanchion) -> Option<SessionId> {
    app.model.with_untracked(|model| {
        let session = model.session.as_ref()?;
        (!session.state().has_ended()).then_some(session.state().began.session)
    })
}

/// Everything that is stored, and the session under way.
pub async fn gather(app: Stanchion) -> Result<Archive, DbError> {
    let keep = app.keep();
    let mut archive = Archive::default();
    for record in keep.all::<LifterRecord>(Shelf::Lifters).await?.records {
        archive.lifter.put(record);
    }
    for record in keep.all::<KitRecord>(Shelf::Kits).await?.records {
        archive.kit.put(record);
    }
    for record in keep.all::<BodyMassRecord>(Shelf::BodyMass).await?.records {
        archive.body_mass.put(record);
    }
    for record in keep.all::<SheetRecord>(Shelf::Sheets).await?.records {
        archive.sheets.put(record);
    }
    for record in keep.all::<ExerciseRecord>(Shelf::Exercises).await?.records {
        archive.exercises.put(record);
    }
    let programmes = keep.all::<ProgrammeRecord>(Shelf::Programmes).await?;
    for record in programmes.records {
        archive.programmes.put(record);
    }
    for record in keep.all::<RemovedSession>(Shelf::Removed).await?.records {
        archive.removed.put(record);
    }
    for log in keep.all::<SessionLog>(Shelf::Sessions).await?.records {
        archive.sessions.insert(log.id(), log);
    }
    // The session on the floor as it is in memory: what is not on disk yet belongs to it as well.
    let running = app.model.with_untracked(|model| model.session.clone());
    if let Some(session) = running {
        let id = session.state().began.session;
        if let Ok(log) = SessionLog::new(id, session.events().iter().cloned()) {
            archive.sessions.insert(id, log);
        }
    }
    archive.settle();
    Ok(archive)
}

/// Makes `to` of `from` on disk, together with `more`, in one write; then reads all of it again.
pub async fn replace(
    app: Stanchion,
    from: &Archive,
    to: &Archive,
    more: Vec<Write>,
) -> Result<(), DbError> {
    let running = running(app);
    let mut writes = app
        .model
        .with_untracked(|model| change::writes(model, from, to, running));
    writes.extend(more);
    app.keep().apply(writes).await?;
    app.tell_others();
    app.model.update(|model| model.opened = None);
    start::read(app, start::Memory::Counts).await
}
