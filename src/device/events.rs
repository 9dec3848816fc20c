//! What the page is told: shown or hidden, keys, leaving. Each listener is a guard.

use super::js;
use wasm_bindgen::prelude::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Event, EventTarget, KeyboardEvent, PointerEvent};

/// A listener that is attached; dropping it detaches it.
#[must_use = "a listener is detached when it is dropped"]
pub struct Listener {
    attached: Option<Attached>,
}

struct Attached {
    target: EventTarget,
    kind: &'static str,
    closure: Closure<dyn FnMut(Event)>,
    /// Whether it is told on the way down to what the event is of, before that one is.
    first: bool,
}

/// Attaches `f` to events of this kind.
pub(super) fn listen(
    target: &EventTarget,
    kind: &'static str,
    f: impl FnMut(Event) + 'static,
) -> Listener {
    attach(target, kind, false, Closure::new(f))
}

fn attach(
    target: &EventTarget,
    kind: &'static str,
    first: bool,
    closure: Closure<dyn FnMut(Event)>,
) -> Listener {
    let f = closure.as_ref().unchecked_ref();
    let attached = target
        .add_event_listener_with_callback_and_bool(kind, f, first)
        .is_ok()
        .then(|| Attached {
            target: target.clone(),
            kind,
            closure,
            first,
        });
    Listener { attached }
}

impl Drop for Listener {
    fn drop(&mut self) {
        if let Some(Attached {
            target,
            kind,
            closure,
            first,
        }) = &self.attached
        {
            let f = closure.as_ref().unchecked_ref();
            // Nothing to be done if the target refuses: the closure is gone either way.
            let _ = target.remove_event_listener_with_callback_and_bool(kind, f, *first);
        }
    }
}

pub(super) fn on_window(kind: &'static str, f: impl FnMut(Event) + 'static) -> Listener {
    match web_sys::window() {
        Some(window) => listen(&window, kind, f),
        None => Listener { attached: None },
    }
}

/// The same on the way down, before whatever the event is for hears of it.
fn on_window_first(kind: &'static str, f: impl FnMut(Event) + 'static) -> Listener {
    match web_sys::window() {
        Some(window) => attach(&window, kind, true, Closure::new(f)),
        None => Listener { attached: None },
    }
}

/// Calls `f` with each tap or press before what was pressed is told: it stands then as it was.
pub(super) fn on_press_first(f: impl FnMut(Event) + 'static) -> Listener {
    on_window_first("click", f)
}

/// Lets Enter press a control once, however long it is held.
pub(super) fn press_once() -> Listener {
    let once = |event: Event| {
        let press = event.dyn_ref::<KeyboardEvent>();
        let is_held = press.is_some_and(|press| press.repeat() && press.key() == "Enter");
        if is_held && focus_of(&event) == On::Button {
            event.prevent_default();
        }
    };
    on_window_first("keydown", once)
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

/// Calls `f` after each tap or click anywhere on the page.
pub fn on_tap(mut f: impl FnMut() + 'static) -> Listener {
    on_window("click", move |_| f())
}

/// Calls `f` when another tab has changed what is in local storage.
pub(super) fn on_storage(mut f: impl FnMut() + 'static) -> Listener {
    on_window("storage", move |_| f())
}

/// Calls `f` when the fragment of the address has changed, by us or by the back gesture.
pub fn on_hash_change(mut f: impl FnMut() + 'static) -> Listener {
    on_window("hashchange", move |_| f())
}

/// Calls `f` when the page has got another size: turned, split, or its text made larger by the zoom.
pub fn on_resize(mut f: impl FnMut() + 'static) -> Listener {
    on_window("resize", move |_| f())
}

/// Where the focus is when a key goes down.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum On {
    /// In something to type into.
    Field,
    /// On a button or a link, which Enter and Space operate.
    Button,
    /// Elsewhere.
    Page,
}

/// A key that went down.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Press {
    /// Its name (`KeyboardEvent.key`): `"Enter"`, `" "`, `"ArrowUp"`, `"u"`, …
    pub key: String,
    /// True where it is held down and repeats.
    pub held: bool,
    /// True with Ctrl, Alt or Meta, and while an input method composes.
    pub modified: bool,
    /// True with Shift.
    pub shifted: bool,
    /// Where the focus is.
    pub on: On,
}

/// Calls `f` with every key that goes down; `true` from `f` means the browser shall do nothing with it.
pub fn on_press(mut f: impl FnMut(&Press) -> bool + 'static) -> Listener {
    on_window("keydown", move |event| {
        let Some(press) = event.dyn_ref::<KeyboardEvent>() else {
            return;
        };
        let press = Press {
            key: press.key(),
            held: press.repeat(),
            modified: press.is_composing()
                || press.ctrl_key()
                || press.alt_key()
                || press.meta_key(),
            shifted: press.shift_key(),
            on: focus_of(&event),
        };
        if f(&press) {
            event.prevent_default();
        }
    })
}

/// Calls `f` with the key when one goes down; `true` from `f` means it was used, and the browser does nothing else with
/// it.
///
/// Not told: keys typed into a field, held keys repeating, shortcuts with Ctrl, Alt or Meta, and Enter or space on a
/// control that they operate.
pub fn on_key(mut f: impl FnMut(&str) -> bool + 'static) -> Listener {
    on_press(move |press| {
        let operates = press.on == On::Button && matches!(press.key.as_str(), "Enter" | " ");
        let theirs = press.held || press.modified || press.on == On::Field || operates;
        !theirs && f(&press.key)
    })
}

fn focus_of(event: &Event) -> On {
    let Some(target) = event.target() else {
        return On::Page;
    };
    let is_in = |selector: &str| {
        js::call(&target, "closest", &[JsValue::from_str(selector)])
            .is_ok_and(|found| !found.is_null())
    };
    if is_in("input, textarea, select, [contenteditable]") {
        On::Field
    } else if is_in("button, a, summary, [role=button]") {
        On::Button
    } else {
        On::Page
    }
}

/// What a finger or another pointer does.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Pointer {
    /// It comes down: which one, and the larger of the width and the height that it covers, in CSS pixels.
    Down(i32, f64),
    /// It goes up.
    Up(i32),
    /// It was taken for a gesture of the system, or for a palm.
    Cancelled(i32),
}

/// Calls `f` with every pointer that comes down or goes up, before what it does to the page.
pub fn on_pointer(f: impl FnMut(Pointer) + Clone + 'static) -> Vec<Listener> {
    ["pointerdown", "pointerup", "pointercancel"]
        .into_iter()
        .map(|kind| {
            let mut f = f.clone();
            on_window(kind, move |event| {
                let Some(pointer) = event.dyn_ref::<PointerEvent>() else {
                    return;
                };
                let (id, size) = (
                    pointer.pointer_id(),
                    f64::from(pointer.width().max(pointer.height())),
                );
                f(match kind {
                    "pointerdown" => Pointer::Down(id, size),
                    "pointerup" => Pointer::Up(id),
                    _ => Pointer::Cancelled(id),
                });
            })
        })
        .collect()
}
