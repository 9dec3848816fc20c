//! Timers that end when their guard is dropped. They paint; nothing that must be on time depends
//! on them, because a hidden page's timers are slowed to one a second or one a minute.

use wasm_bindgen::prelude::Closure;
use wasm_bindgen::{JsCast, JsValue};

/// A running timer; dropping it ends it.
#[must_use = "a timer ends when it is dropped"]
pub struct Timer {
    kind: Kind,
}

enum Kind {
    /// The browser gave no timer: nothing will be called.
    None,
    Every {
        id: i32,
        _call: Closure<dyn FnMut()>,
    },
    After {
        id: i32,
        _call: Closure<dyn FnMut()>,
    },
}

fn ms(length: u32) -> i32 {
    i32::try_from(length).unwrap_or(i32::MAX)
}

/// Calls `f` every `length_ms` milliseconds, first after `length_ms`.
pub fn every(length_ms: u32, f: impl FnMut() + 'static) -> Timer {
    let tick = Closure::<dyn FnMut()>::new(f);
    let id = web_sys::window().and_then(|window| {
        window
            .set_interval_with_callback_and_timeout_and_arguments_0(
                tick.as_ref().unchecked_ref(),
                ms(length_ms),
            )
            .ok()
    });
    Timer {
        kind: id.map_or(Kind::None, |id| Kind::Every { id, _call: tick }),
    }
}

/// Calls `f` once, `length_ms` milliseconds from now.
pub fn after(length_ms: u32, f: impl FnOnce() + 'static) -> Timer {
    let ring = Closure::once(f);
    let id = set_timeout(ring.as_ref(), length_ms);
    Timer {
        kind: id.map_or(Kind::None, |id| Kind::After { id, _call: ring }),
    }
}

/// Calls `f` once after `length_ms`, with no way to stop it.
pub(super) fn detached(length_ms: u32, f: impl FnOnce() + 'static) {
    // If the browser refuses, the closure is simply never called.
    let _ = set_timeout(&Closure::once_into_js(f), length_ms);
}

fn set_timeout(callback: &JsValue, length_ms: u32) -> Option<i32> {
    web_sys::window()?
        .set_timeout_with_callback_and_timeout_and_arguments_0(
            callback.unchecked_ref(),
            ms(length_ms),
        )
        .ok()
}

impl Drop for Timer {
    fn drop(&mut self) {
        let Some(window) = web_sys::window() else {
            return;
        };
        match &self.kind {
            Kind::None => {}
            Kind::Every { id, .. } => window.clear_interval_with_handle(*id),
            Kind::After { id, .. } => window.clear_timeout_with_handle(*id),
        }
    }
}
