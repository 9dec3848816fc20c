//! Keeping the screen on while a session runs.
//!
//! The browser lets go whenever the page is hidden, so it is asked again each time the page is
//! shown; and with the next tap where it refused, because some want one first. A phone low on
//! battery may let go without a word.

use super::events::{Listener, is_visible, listen, on_tap, on_visibility};
use super::js;
use crate::words::t;
use std::cell::{Cell, RefCell};
use std::rc::{Rc, Weak};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::spawn_local;
use web_sys::EventTarget;

/// Whether the screen stays on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Stay {
    /// Nobody asked for it, or the answer is on its way, or the page is not on screen.
    #[default]
    Unasked,
    /// The browser keeps it on, as far as can be known.
    Held,
    /// The browser cannot: it has no such thing, or not for an address without https.
    Missing,
    /// The browser refused or took it back, a phone low on battery for one.
    Refused,
}

impl Stay {
    /// What to do where the screen may go dark; nothing where that is not known.
    #[must_use]
    pub fn said(self) -> Option<&'static str> {
        match self {
            Stay::Unasked | Stay::Held => None,
            Stay::Missing => Some(t(
                "This browser lets the screen go dark: set the phone's screen timeout to long.",
            )),
            Stay::Refused => Some(t("The phone may let the screen go dark. A tap asks again.")),
        }
    }
}

/// Keeps the screen on until it is dropped, as far as the browser allows.
#[must_use = "the screen may go off when this is dropped"]
pub struct Awake {
    _state: Rc<State>,
    _on_shown: Listener,
    _on_tap: Listener,
}

struct State {
    lock: RefCell<Option<Lock>>,
    asking: Cell<bool>,
    on_change: RefCell<Box<dyn FnMut(Stay)>>,
}

struct Lock {
    sentinel: JsValue,
    _on_release: Option<Listener>,
}

impl Drop for Lock {
    fn drop(&mut self) {
        if let Ok(done) = js::call(&self.sentinel, "release", &[]) {
            spawn_local(async move {
                // Released already is as good as released now.
                let _ = wasm_bindgen_futures::JsFuture::from(js_sys::Promise::resolve(&done)).await;
            });
        }
    }
}

/// Asks for the screen to stay on; `on_change` is told each time that begins or ends, and why it cannot be.
pub fn keep_awake(on_change: impl FnMut(Stay) + 'static) -> Awake {
    let state = Rc::new(State {
        lock: RefCell::new(None),
        asking: Cell::new(false),
        on_change: RefCell::new(Box::new(on_change)),
    });
    let weak = Rc::downgrade(&state);
    let on_shown = on_visibility(move |shown| {
        if let Some(state) = weak.upgrade().filter(|_| shown) {
            ask(&state);
        }
    });
    let weak = Rc::downgrade(&state);
    let on_tap = on_tap(move || {
        if let Some(state) = weak.upgrade() {
            ask(&state);
        }
    });
    ask(&state);
    Awake {
        _state: state,
        _on_shown: on_shown,
        _on_tap: on_tap,
    }
}

fn ask(state: &Rc<State>) {
    let Some(wake_lock) = js::navigator("wakeLock") else {
        state.tell(Stay::Missing);
        return;
    };
    if state.asking.get() || state.lock.borrow().is_some() || !is_visible() {
        return;
    }
    state.asking.set(true);
    let weak = Rc::downgrade(state);
    spawn_local(async move {
        let answer = js::call_async(&wake_lock, "request", &["screen".into()]).await;
        let granted = answer.ok().map(|sentinel| Lock::new(sentinel, &weak));
        // Refused for being hidden is no news: it is asked again when it is shown.
        let refused = if is_visible() {
            Stay::Refused
        } else {
            Stay::Unasked
        };
        let Some(state) = weak.upgrade() else {
            // Let go of while the browser was thinking: dropping the lock gives it back.
            return;
        };
        state.asking.set(false);
        state.tell(if granted.is_some() {
            Stay::Held
        } else {
            refused
        });
        *state.lock.borrow_mut() = granted;
    });
}

impl Lock {
    fn new(sentinel: JsValue, state: &Weak<State>) -> Self {
        let weak = state.clone();
        let on_release = sentinel.dyn_ref::<EventTarget>().map(|target| {
            listen(target, "release", move |_| {
                if let Some(state) = weak.upgrade() {
                    let lost = state.lock.borrow_mut().take();
                    if lost.is_some() {
                        // Not asked again at once: a browser that takes back at once would be asked for ever.
                        state.tell(if is_visible() {
                            Stay::Refused
                        } else {
                            Stay::Unasked
                        });
                    }
                }
            })
        });
        Self {
            sentinel,
            _on_release: on_release,
        }
    }
}

impl State {
    fn tell(&self, stay: Stay) {
        // A listener that asks from within its own call is not called again for it.
        if let Ok(mut on_change) = self.on_change.try_borrow_mut() {
            on_change(stay);
        }
    }
}
