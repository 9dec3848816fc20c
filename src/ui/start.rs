//! The start: stored data is read, the address followed, the service worker registered.

use super::archive::archive;
use super::away::{open_received, read_settings};
use super::books;
use super::keep::Keep;
use super::model::{HEADINGS_NEWEST, Keeping, Model, Stage};
use super::people;
use super::place::Place;
use super::sheets::open_link;
use super::stanchion::Stanchion;
use crate::device::db::DbError;
use crate::device::install::Install;
use crate::device::{clock, dom, faults, persist, place as address, prefs, received, worker};
use crate::draft::Draft;
use crate::json;
use crate::kit::Kit;
use crate::ledger::{ExerciseSummary, Heading, newest_first};
use crate::order;
use crate::say;
use crate::session::{Event, Session, What};
use crate::sheet::Sheet;
use crate::store::{
    Archive, BodyMassRecord, BodyRecord, END, ExerciseRecord, KitRecord, LASTS, LastOf,
    LifterRecord, ProgrammeRecord, SheetRecord, Shelf, Shelves, Unreadable, aside_line,
    body_entries, seal, shelved,
};
use crate::units::Unit;
use crate::words::t;
use leptos::prelude::*;
use leptos::task::spawn_local;
use std::collections::BTreeMap;

/// The setting with the mark of what was said to be unreadable.
const TOLD: &str = "told";

/// The setting that says that someone has been here before; `assets/boot.js` reads it too.
const KNOWN: &str = "known";

/// Form and checksum of a sealed text.
const MARK_CHARS: usize = 10;

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
        people::arrive(app).await;
        known(app);
        dom::remove("shell");
        dom::mark("stanchion-ready");
        app.install.with_value(|install| {
            install.watch(move || app.home.set(app.install.with_value(Install::way)));
        });
        persist::known(move |promise| app.model.update(|model| model.promise = Some(promise)));
        received::on_opened(move |file| spawn_local(open_received(app, file)));
        if let Some(file) = received::sent().await {
            open_received(app, file).await;
        }
        let worker = worker::register(move || app.model.update(|model| model.update_waits = true));
        app.worker.set_value(Some(worker));
    });
}

/// Remembers, for the page that is shown while the app loads, that someone has been here before.
fn known(app: Stanchion) {
    if app.model.with_untracked(|model| model.stage == Stage::Open)
        && prefs::get::<bool>(KNOWN).is_none()
    {
        // Not kept, the caution is read once more.
        let _ = prefs::set(KNOWN, &true);
    }
}

/// Reads what the records in use hold, and takes a seat at them.
pub async fn sit_down(app: Stanchion) {
    app.model.update(read_settings);
    if let Err(error) = read(app).await {
        faults::note(&format!("reading: {error}"));
        app.model
            .update(|model| model.keeping = Keeping::Failing(error.to_string()));
    }
    app.sit();
}

/// Opens the app on what was read.
pub fn open(app: Stanchion) {
    app.model.update(|model| {
        model.stage = if is_new(model) {
            Stage::Welcome
        } else {
            Stage::Open
        };
    });
}

/// Goes where the fragment of the address leads.
fn arrive(app: Stanchion, fragment: &str) {
    app.model
        .update(|model| model.place = Place::from_fragment(fragment));
    open_link(app, Place::code_in(fragment));
}

/// True when nothing was ever kept here. Settings that cannot be read are no first start.
fn is_new(model: &Model) -> bool {
    !matches!(model.keeping, Keeping::Failing(_))
        && model.lifter.is_none()
        && model.sheets.is_empty()
        && model.headings.is_empty()
        && model.session.is_none()
        && model.aside.is_empty()
}

/// Reads what another tab has written.
pub async fn read_anew(app: Stanchion) {
    if let Err(error) = read(app).await {
        app.complain(error.to_string());
    }
}

/// Reads everything that the first screen may need.
pub async fn read(app: Stanchion) -> Result<(), DbError> {
    let keep = app.keep();
    let mut lost = Vec::new();
    let lifters: Vec<LifterRecord> = keep.records(Shelf::Lifters, &mut lost).await?;
    let kits: Vec<KitRecord> = keep.records(Shelf::Kits, &mut lost).await?;
    let body_mass: Vec<BodyMassRecord> = keep.records(Shelf::BodyMass, &mut lost).await?;
    let body: Vec<BodyRecord> = keep.records(Shelf::Body, &mut lost).await?;
    let sheets = newest_sheets(&keep, &mut lost).await?;
    let mut named = Archive::default();
    let exercises: Vec<ExerciseRecord> = keep.records(Shelf::Exercises, &mut lost).await?;
    let programmes: Vec<ProgrammeRecord> = keep.records(Shelf::Programmes, &mut lost).await?;
    let drafts: Vec<Sheet> = keep.records(Shelf::Drafts, &mut lost).await?;
    let books = read_books(&keep, app.model.with_untracked(|model| !model.follows)).await?;
    let events: Vec<Event> = keep.records(Shelf::Events, &mut lost).await?;
    let (strays, events) = strays(events);
    if app.has_left(&keep) {
        return Ok(());
    }
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
        .chain(body.iter().map(|record| record.version))
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
        model.body = body_entries(&body_mass, &body);
        model.sheets = current(sheets);
        model.exercises = named.catalogue();
        model.programmes = named.current_programmes().into_iter().cloned().collect();
        let begun = drafts
            .into_iter()
            .map(|sheet| (sheet.id, Draft::resumed(sheet)));
        model.drafts = begun.collect();
        model.summaries.clear();
        for summary in books.summaries {
            model.summaries.insert(summary.exercise.clone(), summary);
        }
        model.headings = books.headings;
        newest_first(&mut model.headings);
        model.sessions = books.sessions;
        model.lasts = books
            .lasts
            .into_iter()
            .map(|last| (last.sheet, last))
            .collect();
        // Memory may be ahead of the disk in the tab that writes; in one that follows the disk alone is true.
        let own = model.session.take().filter(|_| !model.follows);
        let own = own
            .iter()
            .flat_map(|session| session.events().iter().cloned());
        model.session = Session::replay(events.into_iter().chain(own).collect()).ok();
        if let Some(session) = &model.session {
            let times = session.events().iter().map(|event| event.at);
            times.max().into_iter().for_each(clock::run_on_from);
        }
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
    let newer = lost.iter().filter(|(_, row)| row.newer).count();
    let broken = lost.len() - newer;
    app.model.update(|model| model.aside = strays);
    app.set_aside(lost);
    let aside = app.model.with_untracked(|model| model.aside.clone());
    tell(app, &aside, broken, newer);
    let aside = keep.raw(Shelf::Aside).await?;
    if !app.has_left(&keep) {
        app.model.update(|model| model.aside.extend(aside));
    }
    Ok(())
}

/// Says once what could not be read: again only when it is something else.
fn tell(app: Stanchion, aside: &[String], broken: usize, newer: usize) {
    let mark: String = seal(&aside.join("\n")).chars().take(MARK_CHARS).collect();
    let told = app.model.with_untracked(|model| model.pref(TOLD));
    if aside.is_empty() || prefs::get::<String>(&told).as_ref() == Some(&mark) {
        return;
    }
    // Not kept, it is said again at the next start.
    let _ = prefs::set(&told, &mark);
    let broken = aside.len().saturating_sub(newer).max(broken);
    let mut said = String::new();
    if broken > 0 {
        said.push_str(&say!(
            "{broken} of the stored records could not be read.",
            broken,
        ));
        said.push(' ');
    }
    if newer > 0 {
        said.push_str(&say!(
            "{newer} of the stored records were written by a newer version: close all tabs of this page and open it again to get that version.",
            newer,
        ));
        said.push(' ');
    }
    said.push_str(t(
        "They stay as they are; in Kit they can be saved to a file.",
    ));
    app.complain(said);
}

/// Events before the beginning of the session on the floor, as lines of what is set aside, and the rest. There are such
/// where the beginning itself cannot be read.
fn strays(mut events: Vec<Event>) -> (Vec<String>, Vec<Event>) {
    order::by_key(&mut events, |event| event.id);
    let begins = |event: &Event| matches!(event.what, What::Began(_));
    let begun = events.iter().position(begins).unwrap_or(events.len());
    let rest = events.split_off(begun);
    let lines = events.iter().map(|event| {
        let row = seal(&json::text(event));
        aside_line(Shelf::Events, &event.id.0.to_string(), &row)
    });
    (lines.collect(), rest)
}

/// What is read of the books at the start: the newest headings, the summaries, the last session of each sheet.
struct Books {
    sessions: usize,
    headings: Vec<Heading>,
    summaries: Vec<ExerciseSummary>,
    lasts: Vec<LastOf>,
}

/// Reads the books. Where they are of an older form or spoiled, they are made anew first, by the tab that `writes`.
async fn read_books(keep: &Keep, writes: bool) -> Result<Books, DbError> {
    let mut spoiled = false;
    loop {
        // They follow from the sessions: what cannot be read is no loss, and what cannot be written is made next time.
        if writes && let Err(error) = books::settle(keep, spoiled).await {
            faults::note(&format!("making the books anew: {error}"));
        }
        let newest = HEADINGS_NEWEST as u32;
        let headings = shelved(keep.last(Shelf::Headings, ("", END), newest).await?);
        let summaries = keep.all(Shelf::Summaries).await?;
        let (from, to) = LASTS;
        let lasts = shelved(keep.first(Shelf::Books, (from, to), u32::MAX).await?);
        let lost = [
            &headings.unreadable,
            &summaries.unreadable,
            &lasts.unreadable,
        ];
        if writes && !spoiled && lost.into_iter().any(|lost| !lost.is_empty()) {
            spoiled = true;
            continue;
        }
        return Ok(Books {
            sessions: keep.count(Shelf::Headings).await?,
            headings: headings.records,
            summaries: summaries.records,
            lasts: lasts.records,
        });
    }
}

/// The newest version of each sheet; all versions where one of those cannot be read.
async fn newest_sheets(
    keep: &Keep,
    lost: &mut Vec<(Shelf, Unreadable)>,
) -> Result<Vec<SheetRecord>, DbError> {
    let of = |key: &String| {
        key.split_once('/')
            .map_or(String::new(), |(sheet, _)| sheet.to_owned())
    };
    // Keys rise by sheet, then by version: the last of each counts.
    let newest: BTreeMap<String, String> = keep
        .keys(Shelf::Sheets)
        .await?
        .into_iter()
        .map(|key| (of(&key), key))
        .collect();
    let rows = keep
        .some(Shelf::Sheets, newest.into_values().collect())
        .await?;
    let newest = shelved(rows);
    if newest.unreadable.is_empty() {
        return Ok(newest.records);
    }
    keep.records(Shelf::Sheets, lost).await
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
