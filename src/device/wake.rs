//! Keeping the screen on while a session runs.
//!
//! The browser lets go whenever the page is hidden, so it is asked again each time the page is
//! shown. A phone low on battery may let go without a word.

use super::events::{Listener, is_visible, listen, on_visibility};
use super::js;
use std::cell::{Cell, RefCell};
use std::rc::{Rc, Weak};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::spawn_local;
use web_sys::EventTarget;

/// Keeps the screen on until it is dropped, as far as the browser allows.
#[must_use = "the screen may go off when this is dropped"]
pub struct Awake {
    state: Rc<State>,
    _on_shown: Listener,
}

struct State {
    lock: RefCell<Option<Lock>>,
    asking: Cell<bool>,
    on_change: RefCell<Box<dyn FnMut(bool)>>,
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

/// Asks for the screen to stay on; `on_change` is told each time that begins or ends.
pub fn keep_awake(on_change: impl FnMut(bool) + 'static) -> Awake {
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
    ask(&state);
    Awake {
        state,
        _on_shown: on_shown,
    }
}

impl Awake {
    /// Whether the browser has granted it and not taken it back.
    #[must_use]
    pub fn is_held(&self) -> bool {
        self.state.lock.borrow().is_some()
    }
}

fn ask(state: &Rc<State>) {
    let Some(wake_lock) = js::navigator("wakeLock") else {
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
        let Some(state) = weak.upgrade() else {
            // Let go of while the browser was thinking: dropping the lock gives it back.
            return;
        };
        state.asking.set(false);
        if let Some(lock) = granted {
            *state.lock.borrow_mut() = Some(lock);
            state.tell(true);
        }
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
                        state.tell(false);
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
    fn tell(&self, held: bool) {
        // A listener that asks from within its own call is not called again for it.
        if let Ok(mut on_change) = self.on_change.try_borrow_mut() {
            on_change(held);
        }
    }
}
