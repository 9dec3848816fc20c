//! One tab writes: an exclusive lock held for as long as the page lives. The others watch.

use super::js;
use js_sys::{Function, Promise};
use std::cell::{Cell, RefCell};
use std::rc::{Rc, Weak};
use wasm_bindgen::prelude::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, spawn_local};

/// What this tab may do.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Role {
    /// The browser has not answered yet; it does within milliseconds.
    Asking,
    /// This tab writes.
    Writer,
    /// Another tab writes; this one follows when that one closes.
    Waiting,
}

/// This tab's place in the queue of writers; dropping it gives it up.
#[must_use = "the lock is given up when this is dropped"]
pub struct Writer {
    state: Rc<State>,
}

struct State {
    name: String,
    role: Cell<Role>,
    on_change: RefCell<Box<dyn FnMut(Role)>>,
    /// Resolving it releases the lock we hold.
    release: RefCell<Option<Function>>,
    /// Aborts the request that is queued.
    abort: RefCell<Option<JsValue>>,
}

/// Asks to be the writer under this name; `on_change` is told the role, first and whenever it
/// changes: when the other tab closes, or when another tab takes the lock by force.
/// A browser without locks lets every tab write.
pub fn writer(name: &str, on_change: impl FnMut(Role) + 'static) -> Writer {
    let state = Rc::new(State {
        name: name.to_owned(),
        role: Cell::new(Role::Asking),
        on_change: RefCell::new(Box::new(on_change)),
        release: RefCell::new(None),
        abort: RefCell::new(None),
    });
    let weak = Rc::downgrade(&state);
    spawn_local(async move {
        match js::navigator("locks") {
            Some(locks) => {
                // First a look, because a queued request does not tell that it waits.
                if !probe(&locks, &weak).await {
                    set_role(&weak, Role::Waiting);
                    queue(&locks, &weak).await;
                }
            }
            None => set_role(&weak, Role::Writer),
        }
    });
    Writer { state }
}

impl Writer {
    /// What this tab may do now.
    #[must_use]
    pub fn role(&self) -> Role {
        self.state.role.get()
    }

    /// Takes the lock from the other tab, because the person said so; that tab is told.
    pub fn steal(&self) {
        let Some(locks) = js::navigator("locks").filter(|_| self.role() == Role::Waiting) else {
            return;
        };
        self.state.leave_queue();
        let weak = Rc::downgrade(&self.state);
        spawn_local(async move {
            hold(&locks, &weak, &[("steal", JsValue::TRUE)]).await;
        });
    }
}

impl State {
    fn leave_queue(&self) {
        if let Some(abort) = self.abort.borrow_mut().take() {
            // An abort that comes too late changes nothing.
            let _ = js::call(&abort, "abort", &[]);
        }
    }
}

impl Drop for Writer {
    fn drop(&mut self) {
        self.state.leave_queue();
        if let Some(release) = self.state.release.borrow_mut().take() {
            // The resolve function of a promise does not throw.
            let _ = release.call0(&JsValue::UNDEFINED);
        }
    }
}

fn set_role(state: &Weak<State>, role: Role) {
    let Some(state) = state.upgrade() else { return };
    if state.role.replace(role) != role
        && let Ok(mut on_change) = state.on_change.try_borrow_mut()
    {
        on_change(role);
    }
}

/// Takes the lock if it is free; whether it was. Goes on holding it in the background.
async fn probe(locks: &JsValue, state: &Weak<State>) -> bool {
    let free = super::oneshot::OneShot::new();
    let (said, refused) = (free.clone(), free.clone());
    let (held, manager) = (state.clone(), locks.clone());
    spawn_local(async move {
        let options = [("ifAvailable", JsValue::TRUE)];
        request(&manager, &held, &options, move |got| said.give(got)).await;
        // Never called back: the request itself was refused.
        refused.give(false);
    });
    free.wait().await
}

/// Waits for the lock in the queue, then holds it.
async fn queue(locks: &JsValue, state: &Weak<State>) {
    let mut options = Vec::new();
    if let Some(abort) = js::construct("AbortController") {
        if let Some(signal) = js::get(&abort, "signal") {
            options.push(("signal", signal));
        }
        let Some(state) = state.upgrade() else { return };
        *state.abort.borrow_mut() = Some(abort);
    }
    hold(locks, state, &options).await;
}

async fn hold(locks: &JsValue, state: &Weak<State>, options: &[(&str, JsValue)]) {
    request(locks, state, options, |_| {}).await;
}

/// Requests the lock; `on_answer` is told whether it was given. Returns when it is no longer
/// held, or was never given.
async fn request(
    locks: &JsValue,
    state: &Weak<State>,
    options: &[(&str, JsValue)],
    on_answer: impl FnOnce(bool) + 'static,
) {
    let Some(name) = state.upgrade().map(|state| state.name.clone()) else {
        return;
    };
    let held = state.clone();
    let ours = Rc::new(Cell::new(false));
    let own = Rc::clone(&ours);
    let granted = Closure::once(move |lock: JsValue| -> JsValue {
        let got = !lock.is_null() && held.upgrade().is_some();
        let keep = if got {
            keep_until_released(&held)
        } else {
            JsValue::UNDEFINED
        };
        own.set(got);
        on_answer(got);
        if got {
            set_role(&held, Role::Writer);
        }
        keep
    });
    let arguments = [name.into(), js::object(options), granted.as_ref().clone()];
    let end = match js::call(locks, "request", &arguments) {
        Ok(promise) => JsFuture::from(promise.unchecked_into::<Promise>()).await,
        Err(error) => Err(error),
    };
    if ours.get() && end.is_err() {
        // Taken by force: back into the queue, as one who waits.
        set_role(state, Role::Waiting);
        let (locks, state) = (locks.clone(), state.clone());
        spawn_local(async move { queue(&locks, &state).await });
    }
}

/// A promise that stays open until the guard is dropped.
fn keep_until_released(state: &Weak<State>) -> JsValue {
    Promise::new(&mut |resolve, _| {
        if let Some(state) = state.upgrade() {
            *state.release.borrow_mut() = Some(resolve);
        }
    })
    .into()
}
