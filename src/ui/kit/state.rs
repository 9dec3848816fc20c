//! The state of the app, for a report: versions, storage, counts, the last faults. Nothing that a person typed or logged.

use super::data::promise_words;
use crate::device::sound::{Sound, State};
use crate::device::{faults, persist, send};
use crate::say;
use crate::store::{DATABASE_VERSION, FormatVersion, Shelf};
use crate::ui::keep::Keep;
use crate::ui::live::Live;
use crate::ui::model::Keeping;
use crate::ui::parts::{button, dynamic, h1, list, page, quiet, way, words};
use crate::ui::place::Place;
use crate::ui::stanchion::{Stanchion, stanchion};
use crate::words::{t, t_in};
use leptos::prelude::*;
use leptos::task::spawn_local;

/// How many rows are on each shelf.
async fn counts(keep: &Keep, lines: &mut Vec<String>) {
    for shelf in Shelf::ALL {
        lines.push(match keep.count(shelf).await {
            Ok(count) => format!("{}: {count}", shelf.name()),
            Err(_) => say!("{shelf}: cannot be read", shelf = shelf.name()),
        });
    }
}

/// The lines of the page.
async fn lines(app: Stanchion) -> Vec<String> {
    let mut lines = vec![
        concat!("Stanchion ", env!("CARGO_PKG_VERSION")).to_owned(),
        say!(
            "file format {form}, database layout {layout}",
            form = FormatVersion::CURRENT.number(),
            layout = DATABASE_VERSION
        ),
    ];
    let unsaved = app.unsaved.get_untracked();
    let (kept, promise, aside) = app.model.with_untracked(|model| {
        let kept = match model.keeping {
            Keeping::Safe => t("on disk"),
            Keeping::Nothing(_) => t("in memory only"),
            Keeping::Failing(_) => t("writing fails"),
        };
        (kept, model.promise, model.aside.len())
    });
    lines.push(say!(
        "kept: {kept}, {unsaved} writes under way",
        kept,
        unsaved
    ));
    lines.push(promise_words(promise).to_owned());
    lines.push(match persist::used().await {
        Some(bytes) => say!(
            "storage used, by the browser's estimate: {size} KiB",
            size = bytes / 1024
        ),
        None => t("storage used: the browser does not say").to_owned(),
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
        lines.push(say!("lifter {n} of {all}", n = n + 1, all = people.len()));
        counts(&app.records_of(database).await.0, &mut lines).await;
    }
    lines.push(say!("rows set aside or unreadable: {aside}", aside));
    let sound = app.sound.with_value(Sound::state);
    lines.push(say!(
        "sound: {on}, {state}",
        on = if app.hearing.get_untracked().on {
            t_in("sound", "on")
        } else {
            t_in("sound", "off")
        },
        state = match sound {
            State::Absent => t("not in this browser"),
            State::Locked => t("waits for a tap"),
            State::Running => t("running"),
            State::Interrupted => t("interrupted"),
        }
    ));
    let faults = faults::last();
    if faults.is_empty() {
        lines.push(t("no faults").to_owned());
    }
    lines.extend(faults.into_iter().rev());
    lines
}

/// The state of the app.
pub fn state_place() -> AnyView {
    let app = stanchion();
    let said = Live::new(Vec::<String>::new());
    spawn_local(async move {
        let lines = lines(app).await;
        // The page may be left by now.
        said.set(lines);
    });
    let copy = move || {
        let text = said.get_untracked().join("\n");
        spawn_local(async move {
            if send::copy(&text).await {
                app.say(t("Copied."));
            } else {
                app.complain(t(
                    "This browser copies nothing here. Mark the lines and copy them.",
                ));
            }
        });
    };
    page(
        "state",
        vec![
            way(Place::Kit.href(), t("Kit")),
            h1(t("State of the app")),
            quiet(t(
                "For a report of a fault. Nothing that you typed or logged is in it.",
            )),
            button("wide", "state-copy", t("Copy all of it"), copy),
            dynamic(move || {
                let lines = said.get().into_iter();
                let lines = lines.map(|said| words("", said)).collect();
                list("rows", Some("state-lines"), lines)
            }),
        ],
    )
}
