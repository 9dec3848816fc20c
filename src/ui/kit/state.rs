//! The state of the app, for a report: versions, storage, counts, the last faults. Nothing that a person typed or logged.

use super::data::promise_words;
use crate::device::sound::{Sound, State};
use crate::device::{faults, persist, send};
use crate::store::{DATABASE_VERSION, FormatVersion, Shelf};
use crate::ui::keep::Keep;
use crate::ui::model::Keeping;
use crate::ui::parts::{button, dynamic, h1, list, page, quiet, way, words};
use crate::ui::place::Place;
use crate::ui::stanchion::{Stanchion, stanchion};
use leptos::prelude::*;
use leptos::task::spawn_local;

/// How many rows are on each shelf.
async fn counts(keep: &Keep, lines: &mut Vec<String>) {
    for shelf in Shelf::ALL {
        lines.push(match keep.count(shelf).await {
            Ok(count) => format!("{}: {count}", shelf.name()),
            Err(_) => format!("{}: cannot be read", shelf.name()),
        });
    }
}

/// The lines of the page.
async fn lines(app: Stanchion) -> Vec<String> {
    let mut lines = vec![
        concat!("Stanchion ", env!("CARGO_PKG_VERSION")).to_owned(),
        format!(
            "file format {}, database layout {DATABASE_VERSION}",
            FormatVersion::CURRENT.number()
        ),
    ];
    let (kept, promise, unsaved, aside) = app.model.with_untracked(|model| {
        let kept = match model.keeping {
            Keeping::Safe => "on disk",
            Keeping::Nothing(_) => "in memory only",
            Keeping::Failing(_) => "writing fails",
        };
        (kept, model.promise, model.unsaved, model.aside.len())
    });
    lines.push(format!("kept: {kept}, {unsaved} writes under way"));
    lines.push(promise_words(promise).to_owned());
    lines.push(match persist::used().await {
        Some(bytes) => format!(
            "storage used, by the browser's estimate: {} KiB",
            bytes / 1024
        ),
        None => "storage used: the browser does not say".to_owned(),
    });
    let people: Vec<String> = app.model.with_untracked(|model| {
        let databases = model.people.here().map(|person| person.database.clone());
        databases.collect()
    });
    if people.is_empty() {
        counts(&app.keep(), &mut lines).await;
    }
    // By number: a name is something that was typed.
    for (n, database) in people.iter().enumerate() {
        lines.push(format!("lifter {} of {}", n + 1, people.len()));
        counts(&app.records_of(database).await.0, &mut lines).await;
    }
    lines.push(format!("rows set aside or unreadable: {aside}"));
    let sound = app.sound.with_value(Sound::state);
    lines.push(format!(
        "sound: {}, {}",
        if app.hearing.get_untracked().on {
            "on"
        } else {
            "off"
        },
        match sound {
            State::Absent => "not in this browser",
            State::Locked => "waits for a tap",
            State::Running => "running",
            State::Interrupted => "interrupted",
        }
    ));
    let faults = faults::last();
    if faults.is_empty() {
        lines.push("no faults".to_owned());
    }
    lines.extend(faults.into_iter().rev());
    lines
}

/// The state of the app.
#[component]
pub fn StatePlace() -> impl IntoView {
    let app = stanchion();
    let said = RwSignal::new(Vec::<String>::new());
    spawn_local(async move {
        let lines = lines(app).await;
        // The page may be left by now.
        let _ = said.try_set(lines);
    });
    let copy = move || {
        let text = said.get_untracked().join("\n");
        spawn_local(async move {
            if send::copy(&text).await {
                app.say("Copied.");
            } else {
                app.complain("This browser copies nothing here. Mark the lines and copy them.");
            }
        });
    };
    page(
        "state",
        vec![
            way(Place::Kit.href(), "Kit"),
            h1("State of the app"),
            quiet("For a report of a fault. Nothing that you typed or logged is in it."),
            button("wide", "state-copy", "Copy all of it", copy),
            dynamic(move || {
                let lines = said.get().into_iter();
                let lines = lines.map(|said| words("", said)).collect();
                list("rows", Some("state-lines"), lines)
            }),
        ],
    )
}
