//! What the page is told: shown or hidden, keys, leaving. Each listener is a guard.

use super::js;
use wasm_bindgen::prelude::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Event, EventTarget, KeyboardEvent};

/// A listener that is attached; dropping it detaches it.
#[must_use = "a listener is detached when it is dropped"]
pub struct Listener {
    attached: Option<Attached>,
}

struct Attached {
    target: EventTarget,
    kind: &'static str,
    closure: Closure<dyn FnMut(Event)>,
}

/// Attaches `f` to events of this kind.
pub(super) fn listen(
    target: &EventTarget,
    kind: &'static str,
    f: impl FnMut(Event) + 'static,
) -> Listener {
    let closure = Closure::<dyn FnMut(Event)>::new(f);
    let attached = target
        .add_event_listener_with_callback(kind, closure.as_ref().unchecked_ref())
        .is_ok()
        .then(|| Attached {
            target: target.clone(),
            kind,
            closure,
        });
    Listener { attached }
}

impl Drop for Listener {
    fn drop(&mut self) {
        if let Some(Attached {
            target,
            kind,
            closure,
        }) = &self.attached
        {
            // Nothing to be done if the target refuses: the closure is gone either way.
            let _ =
                target.remove_event_listener_with_callback(kind, closure.as_ref().unchecked_ref());
        }
    }
}

fn on_window(kind: &'static str, f: impl FnMut(Event) + 'static) -> Listener {
    match web_sys::window() {
        Some(window) => listen(&window, kind, f),
        None => Listener { attached: None },
    }
}

/// Whether the page is on screen now. A browser that can't tell counts as showing it.
#[must_use]
pub fn is_visible() -> bool {
    js::global("document")
        .and_then(|document| js::get(&document, "visibilityState"))
        .is_none_or(|state| state != "hidden")
}

/// Calls `f` with whether the page is on screen, each time that changes.
pub fn on_visibility(mut f: impl FnMut(bool) + 'static) -> Listener {
    match web_sys::window().and_then(|window| window.document()) {
        Some(document) => listen(&document, "visibilitychange", move |_| f(is_visible())),
        None => Listener { attached: None },
    }
}

/// Calls `f` when the page is left or put away; the last chance to hand work to the browser.
pub fn on_page_hide(mut f: impl FnMut() + 'static) -> Listener {
    on_window("pagehide", move |_| f())
}

/// Calls `f` when another tab has changed what is in local storage.
pub(super) fn on_storage(mut f: impl FnMut() + 'static) -> Listener {
    on_window("storage", move |_| f())
}

/// Calls `f` when the fragment of the address has changed, by us or by the back gesture.
pub fn on_hash_change(mut f: impl FnMut() + 'static) -> Listener {
    on_window("hashchange", move |_| f())
}

/// Calls `f` with the key (`KeyboardEvent.key`: `"Enter"`, `" "`, `"ArrowUp"`, `"u"`, …) when one
/// goes down; `true` from `f` means it was used, and the browser does nothing else with it.
///
/// Not told: keys typed into a field, held keys repeating (a set must not be logged ten times),
/// shortcuts with Ctrl, Alt or Meta, and Enter or space on a control that they operate.
pub fn on_key(mut f: impl FnMut(&str) -> bool + 'static) -> Listener {
    on_window("keydown", move |event| {
        let Some(press) = event.dyn_ref::<KeyboardEvent>() else {
            return;
        };
        if press.repeat()
            || press.is_composing()
            || press.ctrl_key()
            || press.alt_key()
            || press.meta_key()
        {
            return;
        }
        let key = press.key();
        if belongs_to_target(&event, &key) {
            return;
        }
        if f(&key) {
            event.prevent_default();
        }
    })
}

fn belongs_to_target(event: &Event, key: &str) -> bool {
    let Some(target) = event.target() else {
        return false;
    };
    let is_in = |selector: &str| {
        js::call(&target, "closest", &[JsValue::from_str(selector)])
            .is_ok_and(|found| !found.is_null())
    };
    is_in("input, textarea, select, [contenteditable]")
        || (matches!(key, "Enter" | " ") && is_in("button, a, summary, [role=button]"))
}
