//! Where the person is, in the fragment of the address, so that the back gesture and a reload
//! lead where one expects.

use super::events::{Listener, on_hash_change};
use wasm_bindgen::JsValue;
use web_sys::Window;

/// The place named in the address, without the `#`; empty for none.
#[must_use]
pub fn here() -> String {
    let raw = web_sys::window()
        .and_then(|window| window.location().hash().ok())
        .unwrap_or_default();
    decoded(raw.strip_prefix('#').unwrap_or(&raw))
}

fn decoded(raw: &str) -> String {
    js_sys::decode_uri_component(raw).map_or_else(|_| raw.to_owned(), String::from)
}

/// Goes to the place that a fragment names as it stands in an address, unless one is there.
pub(super) fn go_to(fragment: &str) {
    let to = decoded(fragment);
    if to != here() {
        go(&to);
    }
}

/// The whole address of the page.
#[must_use]
pub fn address() -> String {
    web_sys::window()
        .and_then(|window| window.location().href().ok())
        .unwrap_or_default()
}

/// Goes to a place; the back gesture returns from it. Listeners are told.
pub fn go(place: &str) {
    if let Some(window) = web_sys::window() {
        // It refuses only when flooded, and then staying here is right.
        let _ = window.location().set_hash(&encoded(place));
    }
}

/// Renames the place one is at, leaving no step to go back to. Listeners are not told.
pub fn rename(place: &str) {
    let rename = |window: Window| {
        let history = window.history().ok()?;
        let state = history.state().unwrap_or(JsValue::NULL);
        history
            .replace_state_with_url(&state, "", Some(&format!("#{}", encoded(place))))
            .ok()
    };
    // As above.
    let _ = web_sys::window().and_then(rename);
}

/// Does what the back gesture does.
pub fn back() {
    if let Some(history) = web_sys::window().and_then(|window| window.history().ok()) {
        // As above.
        let _ = history.back();
    }
}

/// Loads the page again, where it is.
pub fn reload() {
    if let Some(window) = web_sys::window() {
        // A refusal leaves the old page, which works until it is closed.
        let _ = window.location().reload();
    }
}

/// Calls `f` with the new place each time it changes, by [`go`] or by the back gesture.
pub fn on_change(mut f: impl FnMut(String) + 'static) -> Listener {
    on_hash_change(move || f(here()))
}

/// Slashes and the like stay readable; `%` is escaped, so [`here`] gives back what went in.
fn encoded(place: &str) -> String {
    js_sys::encode_uri(place).into()
}
