//! Another lifter's export is looked at: read into memory, shown in place of one's own, and forgotten when it is closed.

use crate::device::files::read_text;
use crate::say;
use crate::store::{Archive, FILE_BYTES_MAX, read_file};
use crate::ui::app::banner;
use crate::ui::away::chosen_file;
use crate::ui::change;
use crate::ui::keep::Keep;
use crate::ui::model::{Model, Stage};
use crate::ui::parts::{button, dynamic, file_field, group, h1, page, quiet, way};
use crate::ui::place::Place;
use crate::ui::stanchion::Stanchion;
use crate::ui::start::sit_down;
use crate::words::t;
use leptos::ev::Event as DomEvent;
use leptos::prelude::*;
use leptos::task::spawn_local;
use std::sync::Arc;

/// Whose file it is: by the settings in it, else by its own name.
fn called(archive: &Archive, file: &str) -> String {
    let name = archive.lifter.newest().and_then(|own| own.name.as_ref());
    let stem = file.split('.').next().unwrap_or_default();
    name.map_or_else(|| stem.to_owned(), ToString::to_string)
}

/// Reads the file that was chosen and shows what is in it.
fn open_file(app: Stanchion, event: &DomEvent) {
    let Some((input, file)) = chosen_file(event) else {
        return;
    };
    spawn_local(async move {
        let archive = async {
            let text = read_text(&file, FILE_BYTES_MAX).await;
            read_file(text.map_err(|error| error.to_string())?).map_err(|error| error.to_string())
        };
        let archive = archive.await;
        // The same file may be chosen again.
        input.set_value("");
        match archive {
            Ok(archive) => look_at(app, &Arc::new(archive), &file.name()),
            Err(why) => app.complain(say!(
                "{name} cannot be looked at: {why}",
                name = file.name(),
                why
            )),
        }
    });
}

/// Why nothing can be looked at now.
fn refusal(model: &Model, archive: &Archive) -> Option<&'static str> {
    if model.looks_at.is_some() {
        Some(t("You look at a ledger already: close that first."))
    } else if model.in_session() || model.other.is_some() {
        Some(t(
            "A session is under way: its rests would not be heard. End it first.",
        ))
    } else if archive.sessions.is_empty() && archive.sheets.is_empty() {
        Some(t("There is no session and no sheet in this file."))
    } else {
        None
    }
}

/// Shows what is in an archive in place of one's own, until it is closed.
pub fn look_at(app: Stanchion, archive: &Archive, file: &str) {
    if let Some(why) = app.model.with_untracked(|model| refusal(model, archive)) {
        return app.complain(why);
    }
    if !app.is_settled() {
        return;
    }
    let name = called(archive, file);
    let theirs = Keep::in_memory("");
    let archive = archive.clone();
    app.put_aside(theirs.clone());
    app.model.update(|model| model.looks_at = Some(name));
    spawn_local(async move {
        // In memory: there is nothing that could fail.
        let _ = change::apply(&theirs, &Archive::default(), &archive, None, Vec::new()).await;
        sit_down(app).await;
        app.model.update(|model| model.stage = Stage::Open);
        app.go(Place::Ledger);
    });
}

/// Forgets what was looked at and brings back one's own, where one was.
fn close(app: Stanchion) {
    let place = app.model.with_untracked(|model| {
        let own = model.other.as_ref().filter(|_| model.looks_at.is_some());
        own.map(|own| own.place.clone())
    });
    let Some(place) = place else { return };
    // Whoever was told that nothing can be changed here is here no more.
    if let Some(said) = app.model.with_untracked(Model::only_looks) {
        app.unsay(&said);
    }
    app.exchange();
    app.drop_other();
    app.go(place);
}

/// Whose ledger it is, and the way back.
pub fn looking(app: Stanchion) -> AnyView {
    let name = app.of(|model| model.looks_at.clone());
    dynamic(move || match name.get() {
        None => ().into_any(),
        Some(name) => {
            let text = say!(
                "You look at {name}'s ledger. Nothing of it is kept here.",
                name
            );
            // A message beside it is closed too: this one says what it closes.
            let word = t("Close the ledger");
            let close = button("plain", "looking-close", word, move || close(app));
            banner("looking", true, text, close)
        }
    })
}

/// The floor while another one's ledger is looked at.
pub fn floor() -> AnyView {
    page(
        "looking-floor",
        vec![
            h1(t("The floor is yours alone")),
            quiet(t("Close what you look at, and it is here again as it was.")),
            way(Place::Ledger.href(), t("Their ledger")),
        ],
    )
}

/// The ways from a ledger: two periods side by side, and another lifter's file.
pub fn doors(app: Stanchion) -> AnyView {
    let mut inside = vec![way(Place::Compare.href(), t("Compare two periods"))];
    if app.model.with_untracked(|model| model.looks_at.is_none()) {
        inside.push(file_field(
            "look-file",
            t("Look at another lifter's export"),
            move |event| open_file(app, &event),
        ));
        inside.push(quiet(t(
            "As a coach does: it is not mixed into yours, and nothing of it is kept.",
        )));
    }
    group(None, inside)
}
