//! The start: stored data is read, the address followed, the service worker registered.

use super::away::{open_received, read_settings};
use super::books;
use super::ended::into_ledger;
use super::keep::Keep;
use super::later::{Later, Lost, NEWEST, only_chooses};
use super::model::{Keeping, Model, Stage};
use super::people;
use super::place::Place;
use super::sheets::open_link;
use super::stanchion::Stanchion;
use super::wanted::{Ahead, Wanted};
use crate::device::db::{Answer, DbError};
use crate::device::install::Install;
use crate::device::timer::after;
use crate::device::{
    clock, dom, faults, focus, persist, place as address, prefs, received, rest, steps, worker,
};
use crate::json;
use crate::order;
use crate::session::{Event, Session, What};
use crate::sheet::Sheet;
use crate::store::{
    Archive, LASTS, LastOf, LifterRecord, ProgrammeRecord, SheetRecord, Shelf, aside_line, seal,
    shelved,
};
use leptos::prelude::*;
use leptos::task::spawn_local;

/// The setting that says that someone has been here before; `assets/boot.js` reads it too.
const KNOWN: &str = "known";

/// How long after the first screen the rest is looked through, in milliseconds: it is painted by then.
const LATER_MS: u32 = 100;

/// Reads what is stored and opens the app.
pub fn start(app: Stanchion, ahead: Ahead) {
    arrive(app, &address::here());
    let listener = address::on_change(move |fragment| {
        dom::leave_field();
        app.completed(move || {
            arrive(app, &fragment);
            // Behind the effects that draw the place, and before the next picture.
            spawn_local(async {
                steps::show_place();
                focus::arrive();
            });
        });
    });
    // For the life of the page.
    std::mem::forget(listener);
    std::mem::forget(steps::follow());
    std::mem::forget(focus::keep());
    std::mem::forget(faults::watch());
    std::mem::forget(rest::on_here(move || {
        app.whole.set(true);
        let waited = app
            .model
            .with_untracked(|model| model.place != Place::Floor);
        focus::come(waited);
    }));
    spawn_local(async move {
        people::arrive(app, ahead).await;
        known(app);
        dom::remove("shell");
        focus::begin();
        dom::mark("stanchion-ready");
        rest::bring();
        // What the first screen does not show is looked through when it is painted.
        std::mem::forget(after(LATER_MS, move || app.completed(|| {})));
        app.install.with_value(|install| {
            install.watch(move || app.home.set(app.install.with_value(Install::way)));
        });
        persist::known(move |promise| app.model.update(|model| model.promise = Some(promise)));
        received::on_opened(move |file| {
            app.completed(move || spawn_local(open_received(app, file)));
        });
        if let Some(file) = received::sent().await {
            app.completed(move || spawn_local(open_received(app, file)));
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
    let nothing = |later: &Option<Later>| later.as_ref().is_none_or(Later::is_empty);
    if app.model.with_untracked(is_new) && !app.later.with_value(nothing) {
        // Something may have been set aside.
        app.complete();
    }
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
    let place = Place::from_fragment(fragment);
    app.model.update(|model| {
        if place != model.place {
            // What was done is told where it was done. What went wrong stays until it is put away.
            model.notice.take_if(|notice| !notice.wrong);
        }
        model.place = place;
    });
    open_link(app, Place::code_in(fragment));
}

/// True when nothing was ever kept here. Settings that cannot be read are no first start.
fn is_new(model: &Model) -> bool {
    !matches!(model.keeping, Keeping::Failing(_))
        && model.lifter.is_none()
        && model.sheets.is_empty()
        && model.sessions == 0
        && model.session.is_none()
        && model.aside.is_empty()
}

/// Reads what another tab has written.
pub async fn read_again(app: Stanchion) {
    if let Err(error) = read(app).await {
        app.complain(error.to_string());
    }
    // Who was welcomed there is welcomed here.
    let waits = |model: &Model| model.stage == Stage::Welcome && !is_new(model);
    if app.model.with_untracked(waits) {
        open(app);
    }
}

/// Reads everything that a screen may need without asking for it.
///
/// At the start, where the choice of a sheet is all that is shown, what that does not show is read, and looked through
/// later: see [`Stanchion::complete`].
pub async fn read(app: Stanchion) -> Result<(), DbError> {
    app.complete();
    if read_once(app, false).await? {
        Ok(())
    } else {
        mend(app).await
    }
}

/// The same where the books are known to be spoiled: they are rebuilt first.
pub async fn mend(app: Stanchion) -> Result<(), DbError> {
    // Spoiled again, they cannot be written: what can be read of them is shown.
    read_once(app, true).await.map(drop)
}

/// False where a row of the books cannot be read.
async fn read_once(app: Stanchion, spoiled: bool) -> Result<bool, DbError> {
    let keep = app.keep();
    let writes = app.model.with_untracked(|model| !model.follows);
    let from: Option<String> = prefs::get(&app.model.with_untracked(|model| model.pref(NEWEST)));
    let mut lost = app
        .model
        .with_untracked(|model| people::unreadable(&model.people));
    let ahead = app.take_ahead(&keep).map(Wanted);
    let (mut wanted, lasts) =
        read_books(app, &keep, ahead, from.as_deref(), (writes, spoiled)).await?;
    let lifters: Vec<LifterRecord> = wanted.records(Shelf::Lifters, &mut lost);
    let sheets = newest_sheets(&keep, wanted.take(Shelf::Sheets), &mut lost).await?;
    let programmes: Vec<ProgrammeRecord> = wanted.records(Shelf::Programmes, &mut lost);
    let events: Vec<Event> = wanted.records(Shelf::Events, &mut lost);
    let (strays, events) = strays(events);
    if app.has_left(&keep) {
        return Ok(true);
    }
    // Later ids are greater than all stored ones, even if the clock was set back since.
    let sheet_versions = sheets.iter().map(|record| record.version().0);
    let programme_versions = programmes.iter().map(ProgrammeRecord::version);
    for id in events
        .iter()
        .map(|event| event.id.0)
        .chain(lifters.iter().map(|record| record.version))
        .chain(sheet_versions)
        .chain(programme_versions)
    {
        app.see_id(id);
    }
    let mut named = Archive::default();
    for record in programmes {
        named.programmes.put(record);
    }
    let sheets = current(sheets);
    app.model.update(|model| {
        model.lifter = lifters.into_iter().max_by_key(|record| record.version);
        model.sheets = sheets;
        model.programmes = named.current_programmes().into_iter().cloned().collect();
        model.summaries.clear();
        model.headings.clear();
        model.sessions = wanted.sessions();
        model.lasts = lasts.into_iter().map(|last| (last.sheet, last)).collect();
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
    app.later.set_value(Some(Later {
        kits: wanted.take(Shelf::Kits),
        body_mass: wanted.take(Shelf::BodyMass),
        body: wanted.take(Shelf::Body),
        exercises: wanted.take(Shelf::Exercises),
        drafts: wanted.take(Shelf::Drafts),
        aside: wanted.take(Shelf::Aside),
        headings: wanted.take(Shelf::Headings),
        summaries: wanted.take(Shelf::Summaries),
        lost,
        strays,
    }));
    if app.model.with_untracked(only_chooses) {
        return Ok(true);
    }
    let whole = app.complete();
    // The end of a session and its record in the ledger are one write, but a session merged from elsewhere may still lie
    // here ended.
    let ended = app.model.with_untracked(|model| {
        model
            .session
            .clone()
            .filter(|session| session.state().has_ended())
    });
    if let Some(session) = ended {
        let mut writes = Vec::new();
        app.model
            .update(|model| writes = into_ledger(model, &session));
        app.write(writes);
    }
    Ok(whole || !writes)
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

/// Reads what is wanted, and of the books the last session of each sheet. Where they are of an older form or spoiled, they
/// are rebuilt first, by the tab that `writes`.
async fn read_books(
    app: Stanchion,
    keep: &Keep,
    ahead: Option<Wanted>,
    from: Option<&str>,
    (writes, mut spoiled): (bool, bool),
) -> Result<(Wanted, Vec<LastOf>), DbError> {
    // They follow from the sessions: what cannot be read is no loss, and what cannot be written is made next time.
    let note = |error: &DbError| faults::note(&format!("making the books anew: {error}"));
    let mut asked = false;
    let mut wanted = match ahead {
        Some(ahead) => ahead.whole(keep).await?,
        None => Wanted::read(keep, from).await?,
    };
    loop {
        if writes && spoiled && !asked {
            make(app, keep).await.unwrap_or_else(|error| note(&error));
            wanted = Wanted::read(keep, from).await?;
            asked = true;
        }
        let rows = wanted.take(Shelf::Books).rows();
        if writes && !asked && !books::are_kept_in(&rows) {
            asked = true;
            if wanted.has_sessions() {
                match make(app, keep).await {
                    Ok(()) => {
                        wanted = Wanted::read(keep, from).await?;
                        continue;
                    }
                    Err(error) => note(&error),
                }
            }
        }
        let (from, to) = LASTS;
        let is_last = |(key, _): &(String, String)| (from..to).contains(&key.as_str());
        let lasts = shelved(rows.into_iter().filter(is_last).collect());
        if writes && !spoiled && !lasts.unreadable.is_empty() {
            (spoiled, asked) = (true, false);
            continue;
        }
        return Ok((wanted, lasts.records));
    }
}

/// Rebuilds the books of what nobody changes meanwhile.
async fn make(app: Stanchion, keep: &Keep) -> Result<(), DbError> {
    let _alone = app.hold_back(keep).await;
    books::make(keep).await
}

/// The newest version of each sheet; all versions where one of those cannot be read.
async fn newest_sheets(
    keep: &Keep,
    newest: Answer,
    lost: &mut Lost,
) -> Result<Vec<SheetRecord>, DbError> {
    let newest = shelved(newest.rows());
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
