//! The service worker that lets the page start without a network, and its updates: a new one
//! waits until the person agrees.

use super::events::{Listener, listen};
use super::{js, language, place};
use std::cell::{Cell, RefCell};
use std::rc::{Rc, Weak};
use wasm_bindgen::prelude::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::spawn_local;
use web_sys::EventTarget;

/// The registration of the worker; a clone is the same.
#[derive(Clone)]
pub struct Worker {
    state: Rc<State>,
}

struct State {
    registration: RefCell<Option<JsValue>>,
    on_waiting: RefCell<Box<dyn FnMut()>>,
    /// Only a tab that asked for the update reloads: another may be in the middle of a set.
    asked: Cell<bool>,
    listeners: RefCell<Vec<Listener>>,
}

/// Registers `./sw.js` for this page's directory; does nothing where there are no workers.
/// `on_waiting` is called when an update is ready and waits for [`Worker::take_over`].
pub fn register(on_waiting: impl FnMut() + 'static) -> Worker {
    let state = Rc::new(State {
        registration: RefCell::new(None),
        on_waiting: RefCell::new(Box::new(on_waiting)),
        asked: Cell::new(false),
        listeners: RefCell::new(Vec::new()),
    });
    if let Some(container) = js::navigator("serviceWorker") {
        let held = Rc::clone(&state);
        spawn_local(async move {
            let options = js::object(&[("updateViaCache", "none".into())]);
            let answer = js::call_async(&container, "register", &[trusted(), options]).await;
            // Refused (private window, no https): the page works while there is a network.
            if let Ok(registration) = answer {
                held.attend(&container, registration);
            }
        });
    }
    Worker { state }
}

/// The worker's address.
const SCRIPT: &str = "./sw.js";

/// The address as the page's policy wants it: where the browser knows trusted types, only the policy of this name makes
/// an address for scripts, and it makes this one only.
fn trusted() -> JsValue {
    let make = |_: JsValue| JsValue::from_str(SCRIPT);
    let address = || {
        let types = js::global("trustedTypes")?;
        let make = Closure::<dyn FnMut(JsValue) -> JsValue>::new(make).into_js_value();
        let rules = js::object(&[("createScriptURL", make)]);
        let policy = js::call(&types, "createPolicy", &["stanchion".into(), rules]).ok()?;
        js::call(&policy, "createScriptURL", &[SCRIPT.into()]).ok()
    };
    address().unwrap_or_else(|| SCRIPT.into())
}

impl Worker {
    /// Lets the update that waits take over, and loads the page again when it has. To be called
    /// when the person has agreed and no session is under way.
    pub fn take_over(&self) {
        let waiting = self
            .state
            .registration
            .borrow()
            .as_ref()
            .and_then(|found| js::get(found, "waiting"));
        if let Some(waiting) = waiting {
            self.state.asked.set(true);
            let word = js::object(&[("type", "take-over".into())]);
            // A worker that is gone has been replaced, and the one in its place is announced in its turn.
            let _ = js::call(&waiting, "postMessage", &[word]);
        }
    }

    /// Lets every worker of this page keep the texts of its language, the one that waits too: an update then brings them.
    pub fn keep_language(&self) {
        if let Some(registration) = &*self.state.registration.borrow() {
            keep_language(registration);
        }
    }

    /// Looks for an update; browsers do so by themselves only when the page is opened.
    pub fn check(&self) {
        if let Some(registration) = self.state.registration.borrow().clone() {
            spawn_local(async move {
                // Without a network there is no update.
                let _ = js::call_async(&registration, "update", &[]).await;
            });
        }
    }
}

impl State {
    fn attend(self: &Rc<Self>, container: &JsValue, registration: JsValue) {
        let mut listeners = Vec::new();
        if let Some(target) = container.dyn_ref::<EventTarget>() {
            let weak = Rc::downgrade(self);
            listeners.push(listen(target, "controllerchange", move |_| {
                if weak.upgrade().is_some_and(|state| state.asked.take()) {
                    place::reload();
                }
            }));
        }
        if let Some(target) = registration.dyn_ref::<EventTarget>() {
            let (weak, found) = (Rc::downgrade(self), registration.clone());
            listeners.push(listen(target, "updatefound", move |_| {
                if let Some(coming) = js::get(&found, "installing") {
                    follow(&weak, coming);
                }
            }));
        }
        self.listeners.borrow_mut().extend(listeners);
        if let Some(coming) = js::get(&registration, "installing") {
            follow(&Rc::downgrade(self), coming);
        }
        keep_language(&registration);
        let waits = js::get(&registration, "waiting").is_some();
        *self.registration.borrow_mut() = Some(registration);
        if waits {
            self.tell();
        }
    }

    fn tell(&self) {
        if let Ok(mut on_waiting) = self.on_waiting.try_borrow_mut() {
            on_waiting();
        }
    }
}

/// Tells the workers which file the language of the page needs. What a page loaded before it had a worker they do not know.
fn keep_language(registration: &JsValue) {
    let Some(file) = language::file_of(language::chosen().as_deref()) else {
        return;
    };
    for state in ["installing", "waiting", "active"] {
        if let Some(worker) = js::get(registration, state) {
            let word = js::object(&[("type", "keep".into()), ("address", (&file).into())]);
            // One that is gone has been replaced by one that looks into its cache.
            let _ = js::call(&worker, "postMessage", &[word]);
        }
    }
}

/// Watches a worker until it is installed. The very first one is no update: nothing is in control
/// of the page before it.
fn follow(state: &Weak<State>, coming: JsValue) {
    let Some(target) = coming.dyn_ref::<EventTarget>() else {
        return;
    };
    let weak = state.clone();
    let own = coming.clone();
    let listener = listen(target, "statechange", move |_| {
        let installed = js::get(&own, "state").is_some_and(|state| state == "installed");
        let is_update =
            js::navigator("serviceWorker").is_some_and(|all| js::get(&all, "controller").is_some());
        if let Some(state) = weak.upgrade().filter(|_| installed && is_update) {
            state.tell();
        }
    });
    if let Some(state) = state.upgrade() {
        state.listeners.borrow_mut().push(listener);
    }
}
