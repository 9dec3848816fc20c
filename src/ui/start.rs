//! The start: stored data is read, the address followed, the service worker registered.

use super::archive::archive;
use super::away::read_settings;
use super::keep::Keep;
use super::model::{Keeping, Stage};
use super::place::Place;
use super::sheets::open_link;
use super::stanchion::Stanchion;
use crate::device::channel::Channel;
use crate::device::db::{Db, DbError};
use crate::device::locks::{Role, writer};
use crate::device::{dom, faults, persist, place as address, worker};
use crate::draft::Draft;
use crate::kit::Kit;
use crate::ledger::{ExerciseSummary, Heading, newest_first};
use crate::order;
use crate::session::{Event, Session};
use crate::sheet::Sheet;
use crate::store::{
    Archive, BodyMassRecord, DATABASE, DATABASE_VERSION, ExerciseRecord, KitRecord, LifterRecord,
    ProgrammeRecord, SheetRecord, Shelf, Taken,
};
use crate::units::Unit;
use leptos::prelude::*;
use leptos::task::spawn_local;
use serde::de::DeserializeOwned;
use std::sync::Arc;

/// Reads what is stored and opens the app.
pub fn start(app: Stanchion) {
    arrive(app, &address::here());
    let listener = address::on_change(move |fragment| {
        arrive(app, &fragment);
        dom::scroll_to_top();
    });
    // For the life of the page.
    std::mem::forget(listener);
    std::mem::forget(faults::watch());
    spawn_local(async move {
        let shelves: Vec<&str> = Shelf::ALL.iter().map(|shelf| shelf.name()).collect();
        match Db::open(DATABASE, DATABASE_VERSION, &shelves).await {
            Ok(db) => app.keep_in(Keep::Disk(db)),
            Err(error) => {
                faults::note(&format!("opening: {error}"));
                app.model
                    .update(|model| model.keeping = Keeping::Nothing(error.to_string()));
            }
        }
        app.model.update(read_settings);
        if let Err(error) = read(app, Memory::Counts).await {
            faults::note(&format!("reading: {error}"));
            app.model
                .update(|model| model.keeping = Keeping::Failing(error.to_string()));
        }
        watch(app);
        app.model.update(|model| {
            model.stage = if model.lifter.is_some() {
                Stage::Open
            } else {
                Stage::Welcome
            };
        });
        dom::remove("shell");
        dom::mark("stanchion-ready");
        persist::known(move |promise| app.model.update(|model| model.promise = Some(promise)));
        let worker = worker::register(move || app.model.update(|model| model.update_waits = true));
        app.worker.set_value(Some(worker));
    });
}

/// Goes where the fragment of the address leads.
fn arrive(app: Stanchion, fragment: &str) {
    app.model
        .update(|model| model.place = Place::from_fragment(fragment));
    open_link(app, Place::code_in(fragment));
}

/// One tab writes; the others follow what it writes, and read all of it anew when they take over.
fn watch(app: Stanchion) {
    let read_anew = move || {
        spawn_local(async move {
            if let Err(error) = read(app, Memory::Stale).await {
                app.complain(error.to_string());
            }
        });
    };
    let follow = Channel::open(DATABASE, move |_| {
        if app.model.with_untracked(|model| model.follows) {
            read_anew();
        }
    });
    app.others.set_value(Some(follow));
    let writer = writer(DATABASE, move |role| {
        let follows = role == Role::Waiting;
        let before = app.model.with_untracked(|model| model.follows);
        app.model.update(|model| model.follows = follows);
        if before && !follows {
            read_anew();
        }
    });
    app.writer.set_value(Some(writer));
}

/// What the session in memory is worth when the disk is read again.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Memory {
    /// This tab writes: its memory may be ahead of the disk.
    Counts,
    /// Another tab wrote: the disk alone is true.
    Stale,
}

/// Reads everything that the first screen may need.
pub async fn read(app: Stanchion, memory: Memory) -> Result<(), DbError> {
    let keep = app.keep();
    let mut lost = Vec::new();
    let lifters: Vec<LifterRecord> = records(&keep, Shelf::Lifters, &mut lost).await?;
    let kits: Vec<KitRecord> = records(&keep, Shelf::Kits, &mut lost).await?;
    let body_mass: Vec<BodyMassRecord> = records(&keep, Shelf::BodyMass, &mut lost).await?;
    let sheets: Vec<SheetRecord> = records(&keep, Shelf::Sheets, &mut lost).await?;
    let mut named = Archive::default();
    let exercises: Vec<ExerciseRecord> = records(&keep, Shelf::Exercises, &mut lost).await?;
    let programmes: Vec<ProgrammeRecord> = records(&keep, Shelf::Programmes, &mut lost).await?;
    let drafts: Vec<Sheet> = records(&keep, Shelf::Drafts, &mut lost).await?;
    let summaries: Vec<ExerciseSummary> = records(&keep, Shelf::Summaries, &mut lost).await?;
    let mut headings: Vec<Heading> = records(&keep, Shelf::Headings, &mut lost).await?;
    let events: Vec<Event> = records(&keep, Shelf::Events, &mut lost).await?;
    let imports: Vec<Taken> = records(&keep, Shelf::Imports, &mut lost).await?;
    let last_import = imports
        .into_iter()
        .max_by_key(|taken| taken.id)
        .map(Arc::new);
    newest_first(&mut headings);
    // Later ids are greater than all stored ones, even if the clock was set back since.
    let versions = lifters
        .iter()
        .map(|record| record.version)
        .chain(kits.iter().map(|record| record.version));
    let sheet_versions = sheets.iter().map(|record| record.version().0);
    let exercise_versions = exercises.iter().map(ExerciseRecord::version);
    let programme_versions = programmes.iter().map(ProgrammeRecord::version);
    for id in events
        .iter()
        .map(|event| event.id.0)
        .chain(versions)
        .chain(sheet_versions)
        .chain(exercise_versions)
        .chain(programme_versions)
    {
        app.see_id(id);
    }
    for record in exercises {
        named.exercises.put(record);
    }
    for record in programmes {
        named.programmes.put(record);
    }
    app.model.update(|model| {
        model.lifter = lifters.into_iter().max_by_key(|record| record.version);
        let newest_kit = kits.into_iter().max_by_key(|record| record.version);
        model.kit = newest_kit.map_or_else(|| Kit::starter(Unit::Kg), |record| record.kit);
        model.body_mass = body_mass;
        model.sheets = current(sheets);
        model.exercises = named.catalogue();
        model.programmes = named.current_programmes().into_iter().cloned().collect();
        let begun = drafts
            .into_iter()
            .map(|sheet| (sheet.id, Draft::resumed(sheet)));
        model.drafts = begun.collect();
        model.summaries.clear();
        for summary in summaries {
            model.summaries.insert(summary.exercise.clone(), summary);
        }
        model.headings = headings;
        model.last_import = last_import;
        let own = match memory {
            Memory::Counts => model.session.take(),
            Memory::Stale => None,
        };
        let own = own
            .iter()
            .flat_map(|session| session.events().iter().cloned());
        model.session = Session::replay(events.into_iter().chain(own).collect()).ok();
    });
    // The end and the archive are one write, but a session merged from elsewhere may still lie here ended.
    let ended = app.model.with_untracked(|model| {
        model
            .session
            .clone()
            .filter(|session| session.state().has_ended())
    });
    if let Some(session) = ended {
        let mut writes = Vec::new();
        app.model.update(|model| writes = archive(model, &session));
        app.write(writes);
    }
    if !lost.is_empty() {
        app.complain(format!(
            "{} of the stored records could not be read. They stay as they are; in Kit they can be saved to a file.",
            lost.len()
        ));
    }
    lost.extend(keep.raw(Shelf::Aside).await?);
    app.model.update(|model| model.aside = lost);
    Ok(())
}

/// Sheets in their newest version, by name.
fn current(records: Vec<SheetRecord>) -> Vec<Sheet> {
    let mut archive = Archive::default();
    for record in records {
        archive.sheets.put(record);
    }
    let mut sheets: Vec<Sheet> = archive.current_sheets().into_iter().cloned().collect();
    order::by(&mut sheets, |a, b| a.name.cmp(&b.name));
    sheets
}

async fn records<T: DeserializeOwned>(
    keep: &Keep,
    shelf: Shelf,
    lost: &mut Vec<String>,
) -> Result<Vec<T>, DbError> {
    let shelved = keep.all(shelf).await?;
    let rows = shelved.unreadable.into_iter();
    lost.extend(rows.map(|(key, row)| format!("{} {key} {row}", shelf.name())));
    Ok(shelved.records)
}
