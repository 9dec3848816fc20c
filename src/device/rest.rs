//! The rest of the app's WebAssembly: it is built as several modules (`xtask/src/split`), and those that a start does not
//! need come once the first screen is painted. `assets/boot.js` brings them and puts them in.

use super::events::{Listener, on_window};
use super::js;
use wasm_bindgen::prelude::wasm_bindgen;

/// Sent to the window when all of them are there.
const WHOLE: &str = "stanchion-whole";

#[wasm_bindgen]
extern "C" {
    /// Brings a part, or with 0 all that are missing. The split finds this import by its name and calls it where a function
    /// is called before its part is there.
    #[wasm_bindgen(js_name = stanchionPart)]
    fn part(number: u32);
}

/// Begins to bring what is missing, unless it is on its way. What could not be had is asked for again.
pub fn bring() {
    // A page that is no page of the app, as in tests, brings nothing.
    if js::global("stanchionPart").is_some() {
        part(0);
    }
}

/// Whether all of the app is there.
#[must_use]
pub fn is_here() -> bool {
    js::global("stanchionWhole").is_some_and(|whole| whole.is_truthy())
}

/// Calls `f` when all of the app is there.
pub fn on_here(mut f: impl FnMut() + 'static) -> Listener {
    on_window(WHOLE, move |_| f())
}
