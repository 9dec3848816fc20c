//! One tab writes: an exclusive lock held for as long as the page lives. The others watch. Where the
//! browser has no locks, a record in local storage stands for it.

mod beat;

use super::js;
use super::oneshot::OneShot;
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
    /// What stands for the lock in a browser without locks.
    beat: RefCell<Option<beat::Beat>>,
}

/// Asks to be the writer under this name; `on_change` is told the role, first and whenever it
/// changes: when the other tab closes, or when another tab takes the lock by force.
/// A browser without locks, or that refuses them, keeps a record in local storage in their place; one
/// that refuses that too lets every tab write.
pub fn writer(name: &str, on_change: impl FnMut(Role) + 'static) -> Writer {
    let state = Rc::new(State {
        name: name.to_owned(),
        role: Cell::new(Role::Asking),
        on_change: RefCell::new(Box::new(on_change)),
        release: RefCell::new(None),
        beat: RefCell::new(None),
    });
    let weak = Rc::downgrade(&state);
    spawn_local(async move {
        // First a look, because a queued request does not tell that it waits.
        let locks = js::navigator("locks");
        match &locks {
            Some(locks) => match probe(locks, &weak).await {
                Some(true) => {}
                Some(false) => {
                    set_role(&weak, Role::Waiting);
                    queue(locks, &weak).await;
                }
                None => without_locks(&weak),
            },
            None => without_locks(&weak),
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
        if let Some(beat) = &*self.state.beat.borrow() {
            return beat.take();
        }
        let Some(locks) = js::navigator("locks").filter(|_| self.role() == Role::Waiting) else {
            return;
        };
        let weak = Rc::downgrade(&self.state);
        spawn_local(async move {
            request(&locks, &weak, &[("steal", JsValue::TRUE)], |_| {}).await;
        });
    }
}

impl Drop for Writer {
    fn drop(&mut self) {
        if let Some(release) = self.state.release.borrow_mut().take() {
            // The resolve function of a promise does not throw.
            let _ = release.call0(&JsValue::UNDEFINED);
        }
    }
}

fn without_locks(state: &Weak<State>) {
    let begun = beat::begin(state);
    match (begun, state.upgrade()) {
        (Some(beat), Some(state)) => *state.beat.borrow_mut() = Some(beat),
        (None, _) => set_role(state, Role::Writer),
        // It was given up meanwhile.
        (Some(_), None) => {}
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

/// Takes the lock if it is free; whether it was, or `None` if the browser refuses to say. Goes on
/// holding it in the background.
async fn probe(locks: &JsValue, state: &Weak<State>) -> Option<bool> {
    let answer = OneShot::new();
    let (said, refused) = (answer.clone(), answer.clone());
    let (held, manager) = (state.clone(), locks.clone());
    spawn_local(async move {
        let options = [("ifAvailable", JsValue::TRUE)];
        request(&manager, &held, &options, move |got| said.give(Some(got))).await;
        // The first answer counts: this one is for a request that was never called back.
        refused.give(None);
    });
    answer.wait().await
}

/// Waits for the lock, then holds it.
async fn queue(locks: &JsValue, state: &Weak<State>) {
    request(locks, state, &[], |_| {}).await;
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
