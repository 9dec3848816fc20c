//! Small settings that may be lost: the look, the volume, the language. Kept in local
//! storage, which browsers write late and never sync; nothing that was lifted belongs here.

use super::js;
use crate::json;
use crate::say;
use crate::words::t;
use gloo_storage::{LocalStorage, Storage};
use serde::Serialize;
use serde::de::DeserializeOwned;
use std::fmt;
use wasm_bindgen::JsCast;

/// Other pages of the same host share the storage.
const PREFIX: &str = "stanchion.";

/// Why a setting was not kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PrefError {
    /// The browser has no local storage here, or refuses it.
    Unavailable,
    /// The storage is full, or the browser gave another reason.
    Refused {
        /// The browser's words.
        what: String,
    },
}

impl fmt::Display for PrefError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Unavailable => f.write_str(t(
                "This browser keeps no settings for this page (private window, or site data is \
                 blocked). They hold until the page is closed.",
            )),
            Self::Refused { what } => f.write_str(&say!(
                "The browser did not keep the setting ({what}). It holds until the page is closed.",
                what
            )),
        }
    }
}

impl std::error::Error for PrefError {}

/// The setting, if it was kept and still reads as a `T`.
#[must_use]
pub fn get<T: DeserializeOwned>(key: &str) -> Option<T> {
    let key = format!("{PREFIX}{key}");
    let storage = is_there(&key).then(LocalStorage::raw)?;
    json::parse(&storage.get_item(&key).ok()??).ok()
}

/// Keeps a setting.
///
/// # Errors
/// [`PrefError`]; the setting then ends with the page.
pub fn set<T: Serialize>(key: &str, value: &T) -> Result<(), PrefError> {
    let key = format!("{PREFIX}{key}");
    if !is_there(&key) {
        return Err(PrefError::Unavailable);
    }
    // Written by our own writer, as everything else is: gloo-storage would bring a second one.
    let kept = LocalStorage::raw().set_item(&key, &json::text(value));
    kept.map_err(|error| PrefError::Refused {
        what: js::error_text(&error),
    })
}

/// What was kept for this tab alone, if it still reads as a `T`. It outlives a reload and not the tab.
#[must_use]
pub fn get_in_tab<T: DeserializeOwned>(key: &str) -> Option<T> {
    let storage = js::global("sessionStorage")?;
    let kept = js::call(&storage, "getItem", &[format!("{PREFIX}{key}").into()]);
    json::parse(&kept.ok()?.as_string()?).ok()
}

/// Keeps something for this tab alone; where the browser refuses, it ends with the page.
pub fn set_in_tab<T: Serialize>(key: &str, value: &T) {
    if let Some(storage) = js::global("sessionStorage") {
        let key = format!("{PREFIX}{key}");
        // Refused, the tab opens as a new one does.
        let _ = js::call(&storage, "setItem", &[key.into(), json::text(value).into()]);
    }
}

/// Forgets a setting, if there is one.
pub fn remove(key: &str) {
    let key = format!("{PREFIX}{key}");
    if is_there(&key) {
        // Refused, it stays and is overwritten at the next start.
        let _ = LocalStorage::raw().remove_item(&key);
    }
}

/// Forgets every setting of ours; those of other pages of the host stay.
pub fn forget_all() {
    for storage in ["localStorage", "sessionStorage"] {
        if let Some(storage) = js::global(storage) {
            forget_in(&storage);
        }
    }
}

fn forget_in(storage: &wasm_bindgen::JsValue) {
    for key in js_sys::Object::keys(storage.unchecked_ref::<js_sys::Object>()) {
        let ours = key.as_string().is_some_and(|key| key.starts_with(PREFIX));
        if ours {
            // Refused: it holds no more than a look, a volume and a date.
            let _ = js::call(storage, "removeItem", &[key]);
        }
    }
}

/// gloo-storage panics where the storage is absent, or where looking at it or reading throws (a
/// blocked site); so the same steps are tried first in a way that can fail.
fn is_there(key: &str) -> bool {
    js::global("localStorage")
        .is_some_and(|storage| js::call(&storage, "getItem", &[key.into()]).is_ok())
}
