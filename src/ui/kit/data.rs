//! The data in own hands: export of everything as one file, import of such a file.

use crate::device::db::DbError;
use crate::device::files::{Sharing, read_text, save_as, share_file};
use crate::store::{
    Archive, BodyMassRecord, ExerciseRecord, FILE_BYTES_MAX, KitRecord, LifterRecord,
    ProgrammeRecord, SessionLog, SheetRecord, Shelf, import, write,
};
use crate::ui::model::Stage;
use crate::ui::parts::{button, file_field, quiet, section, when};
use crate::ui::sheets::look_at_file;
use crate::ui::stanchion::Stanchion;
use crate::ui::{start, take};
use crate::units::iso_day;
use leptos::ev::Event as DomEvent;
use leptos::prelude::*;
use leptos::task::spawn_local;
use leptos::wasm_bindgen::JsCast;

/// Everything that is stored, and the session under way.
async fn gather(app: Stanchion) -> Result<Archive, DbError> {
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
    for record in keep
        .all::<ProgrammeRecord>(Shelf::Programmes)
        .await?
        .records
    {
        archive.programmes.put(record);
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
    Ok(archive)
}

fn export(app: Stanchion, share: bool) {
    spawn_local(async move {
        let archive = match gather(app).await {
            Ok(archive) => archive,
            Err(error) => return app.complain(error.to_string()),
        };
        let now = crate::device::clock::wall();
        let text = write(&archive, now);
        let name = format!("stanchion-{}.json", iso_day(now));
        if share {
            match share_file(&name, &text).await {
                Sharing::Shared | Sharing::Cancelled => return,
                Sharing::Unsupported => {}
            }
        }
        if save_as(&name, "application/json", &text) {
            app.say(format!("{name} is in your downloads."));
        } else {
            app.complain("The browser refused the download. Try again, or open this page in another browser.");
        }
    });
}

/// Reads the file that was chosen, and takes in what is new in it.
pub fn import_file(app: Stanchion, event: &DomEvent) {
    take_file(app, event, false);
}

/// As [`import_file`]; a file that holds one sheet and nothing else is shown before it is kept.
pub fn open_sheet_file(app: Stanchion, event: &DomEvent) {
    take_file(app, event, true);
}

fn take_file(app: Stanchion, event: &DomEvent, look_first: bool) {
    let input = event
        .target()
        .and_then(|target| target.dyn_into::<web_sys::HtmlInputElement>().ok());
    let Some(input) = input else { return };
    let Some(file) = input.files().and_then(|files| files.get(0)) else {
        return;
    };
    if !app.may_write() {
        return;
    }
    spawn_local(async move {
        let taken = take_in(app, &file, look_first).await;
        // The same file may be chosen again.
        input.set_value("");
        match taken {
            Ok(Some(summary)) => app.say(summary),
            Ok(None) => {}
            Err(why) => app.complain(format!("{}: nothing was imported. {why}", file.name())),
        }
    });
}

/// What an import came to in words; none where the file is only looked at so far.
async fn take_in(
    app: Stanchion,
    file: &web_sys::File,
    look_first: bool,
) -> Result<Option<String>, String> {
    let text = read_text(file, FILE_BYTES_MAX)
        .await
        .map_err(|error| error.to_string())?;
    if look_first && look_at_file(app, &text).await {
        return Ok(None);
    }
    let ours = gather(app).await.map_err(|error| error.to_string())?;
    let merged = import(ours, &text).map_err(|error| error.to_string())?;
    let writes = app.model.with_untracked(|model| {
        let running = model
            .session
            .as_ref()
            .map(|session| session.state().began.session);
        take::writes(model, &merged, running)
    });
    app.keep()
        .apply(writes)
        .await
        .map_err(|error| error.to_string())?;
    start::read(app, start::Memory::Counts)
        .await
        .map_err(|error| error.to_string())?;
    let summary = merged.summary.to_string();
    if open_if_known(app) {
        Ok(Some(summary))
    } else {
        Ok(Some(format!(
            "{summary}. There are no settings of a lifter in it: choose yours here, then open."
        )))
    }
}

/// Leaves the welcome when there is a lifter now. False where the welcome must stay.
fn open_if_known(app: Stanchion) -> bool {
    let known = app.model.with_untracked(|model| model.lifter.is_some());
    let welcoming = app
        .model
        .with_untracked(|model| model.stage == Stage::Welcome);
    if known && welcoming {
        app.model.update(|model| model.stage = Stage::Open);
    }
    known || !welcoming
}

/// Saves the rows that could not be read, and records that an import found twice with different content, as they are.
fn save_aside(app: Stanchion) {
    let rows = app.model.with_untracked(|model| model.aside.join("\n"));
    if !save_as("stanchion-aside.txt", "text/plain", &rows) {
        app.complain(
            "The browser refused the download. Try again, or open this page in another browser.",
        );
    }
}

/// Export and import.
pub fn data(app: Stanchion) -> AnyView {
    let aside = app.of(|model| !model.aside.is_empty());
    section(
        None,
        "Your data",
        vec![
            quiet(
                "Everything in one file: keep a copy where you keep what matters. Its form is documented and open.",
            ),
            button("wide", "export", "Export everything", move || {
                export(app, false);
            }),
            button("wide", "share", "Send it to another app", move || {
                export(app, true);
            }),
            file_field("import", "Import a file", move |event| {
                import_file(app, &event);
            }),
            quiet("An import adds what is new. It never overwrites or removes anything."),
            when(aside, move || {
                button("wide", "aside", "Save what was set aside", move || {
                    save_aside(app)
                })
            }),
        ],
    )
}
