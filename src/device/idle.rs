//! What waits until the browser has nothing else to do.

use super::js;
use super::timer::detached;
use wasm_bindgen::prelude::Closure;

/// Where the browser tells nothing of idle time, so many milliseconds later are taken for it.
const SOON_MS: u32 = 400;

/// Does `work` once nothing else waits, and before what the next tap starts. Never where the page is gone before.
pub fn when_idle(work: impl FnOnce() + 'static) {
    let Some(window) = web_sys::window() else {
        return;
    };
    if js::get(&window, "requestIdleCallback").is_some_and(|ask| ask.is_function()) {
        let _ = js::call(
            &window,
            "requestIdleCallback",
            &[Closure::once_into_js(work)],
        );
    } else {
        detached(SOON_MS, work);
    }
}
