//! Vibration, where there is any. A phone on the rack is seldom felt: never the only signal.

use super::js;
use js_sys::Array;
use wasm_bindgen::JsValue;

/// Vibrates by a pattern of milliseconds: on, off, on, … Does nothing where the phone can't or the
/// person has not tapped yet.
pub fn buzz(pattern: &[u32]) {
    let pattern: Array = pattern.iter().map(|&ms| JsValue::from(ms)).collect();
    if let Some(navigator) = js::global("navigator") {
        // Refusal is silence, which is what there was before.
        let _ = js::call(&navigator, "vibrate", &[pattern.into()]);
    }
}
