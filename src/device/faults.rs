//! The last things that went wrong, for the page that shows the state of the app: what kind, when, where in the program.
//! No name, no load, no text that a person typed is ever in it.

use super::events::{Listener, listen};
use super::{clock, js, prefs};
use std::cell::RefCell;
use std::panic::Location;

/// Where they are kept, so that they outlive the page.
const KEY: &str = "faults";
/// How many are kept.
const MOST: usize = 20;

thread_local! {
    /// They hold here as well where the browser keeps no settings.
    static RING: RefCell<Option<Vec<String>>> = const { RefCell::new(None) };
}

/// The last faults, the newest last; each one line with its time.
#[must_use]
pub fn last() -> Vec<String> {
    RING.with_borrow_mut(|ring| ring.get_or_insert_with(kept).clone())
}

fn kept() -> Vec<String> {
    prefs::get(KEY).unwrap_or_default()
}

/// Notes one. `what` must hold nothing that a person typed or logged.
pub fn note(what: &str) {
    let line = format!("{} {what}", clock::wall().to_rfc3339());
    let faults = RING.with_borrow_mut(|ring| {
        let ring = ring.get_or_insert_with(kept);
        ring.push(line);
        let surplus = ring.len().saturating_sub(MOST);
        ring.drain(..surplus);
        ring.clone()
    });
    // Then they hold until the page is closed.
    let _ = prefs::set(KEY, &faults);
}

/// Notes a panic: its place alone, as its message may hold anything.
pub fn panicked(place: Option<&Location<'_>>) {
    match place {
        Some(place) => note(&format!(
            "panic at {}:{}",
            file_of(place.file()),
            place.line()
        )),
        None => note("panic"),
    }
}

/// Notes what no one caught: the name of the error alone.
pub fn watch() -> Vec<Listener> {
    let Some(window) = web_sys::window() else {
        return Vec::new();
    };
    let caught = |kind: &'static str, field: &'static str| {
        move |event: web_sys::Event| {
            let name = js::get(&event, field).map(|error| js::error_name(&error));
            let name = name.filter(|name| !name.is_empty());
            note(&format!("{kind}: {}", name.as_deref().unwrap_or("error")));
        }
    };
    vec![
        listen(&window, "error", caught("uncaught", "error")),
        listen(&window, "unhandledrejection", caught("unhandled", "reason")),
        listen(&window, "securitypolicyviolation", |event| {
            let what = js::get(&event, "effectiveDirective").and_then(|what| what.as_string());
            note(&format!(
                "forbidden by the page's policy: {}",
                what.unwrap_or_default()
            ));
        }),
    ]
}

/// The file without the folders of the machine that it was built on.
fn file_of(path: &str) -> &str {
    path.find("src/").map_or(path, |at| &path[at..])
}
