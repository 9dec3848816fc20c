//! Timers that end when their guard is dropped. They paint; nothing that must be on time hangs
//! on them, because a hidden page's timers are slowed to one a second or one a minute.

use std::cell::{Cell, RefCell};
use std::rc::{Rc, Weak};
use wasm_bindgen::prelude::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::Window;

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
    Frame(Rc<Frames>),
}

type OnFrame = Closure<dyn FnMut(f64)>;

struct Frames {
    /// The request that is pending; `None` once the guard is gone.
    pending: Cell<Option<i32>>,
    tick: RefCell<Option<OnFrame>>,
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

/// Calls `f` before every paint, with the frame's time in milliseconds on the clock of
/// [`monotonic_ms`](super::clock::monotonic_ms). Hidden pages paint nothing and call nothing.
pub fn on_frame(mut f: impl FnMut(f64) + 'static) -> Timer {
    let Some(window) = web_sys::window() else {
        return Timer { kind: Kind::None };
    };
    let frames = Rc::new(Frames {
        pending: Cell::new(None),
        tick: RefCell::new(None),
    });
    let again: Weak<Frames> = Rc::downgrade(&frames);
    let next = window.clone();
    let tick = OnFrame::new(move |now| {
        f(now);
        // The guard may have been dropped inside `f`, and the frames with it.
        if let Some(frames) = again.upgrade() {
            frames.request(&next);
        }
    });
    *frames.tick.borrow_mut() = Some(tick);
    frames.request(&window);
    Timer {
        kind: Kind::Frame(frames),
    }
}

impl Frames {
    fn request(&self, window: &Window) {
        let id = self.tick.borrow().as_ref().and_then(|tick| {
            window
                .request_animation_frame(tick.as_ref().unchecked_ref())
                .ok()
        });
        self.pending.set(id);
    }
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
            Kind::Frame(frames) => {
                if let Some(id) = frames.pending.take() {
                    // A frame that is not cancelled finds no closure and does nothing.
                    let _ = window.cancel_animation_frame(id);
                }
            }
        }
    }
}
