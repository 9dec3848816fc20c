//! The home screen: whether the app was opened from there, and how it gets there.

use super::events::{Listener, listen};
use super::js;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::spawn_local;

/// How the app gets to the home screen of this device.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// It is there, and was opened from there.
    There,
    /// The browser offers it: [`Install::ask`].
    Offered,
    /// By the browser's share sheet, as browsers do that tell a page whether it was opened from the home screen.
    ShareSheet,
    /// By the browser's menu, if at all.
    Menu,
}

/// The browser's offer, when it makes one; a clone is the same.
#[derive(Clone, Default)]
pub struct Install {
    offer: Rc<RefCell<Option<JsValue>>>,
}

impl Install {
    /// Waits for the offer and for the end of it; `on_change` is told of both. The listeners live as long as the page.
    pub fn watch(&self, on_change: impl Fn() + Clone + 'static) {
        let Some(window) = web_sys::window() else {
            return;
        };
        let (own, told) = (Rc::clone(&self.offer), on_change.clone());
        let offered = listen(&window, "beforeinstallprompt", move |event| {
            // Kept for a moment when the person asks for it.
            event.prevent_default();
            *own.borrow_mut() = Some(event.into());
            told();
        });
        let own = Rc::clone(&self.offer);
        let done = listen(&window, "appinstalled", move |_| {
            own.borrow_mut().take();
            on_change();
        });
        let for_life: [Listener; 2] = [offered, done];
        std::mem::forget(for_life);
    }

    /// How it gets there now.
    #[must_use]
    pub fn way(&self) -> Way {
        let standing = js::navigator("standalone").and_then(|standing| standing.as_bool());
        if standing == Some(true) || shown_alone() {
            Way::There
        } else if self.offer.borrow().is_some() {
            Way::Offered
        } else if standing.is_some() {
            Way::ShareSheet
        } else {
            Way::Menu
        }
    }

    /// Lets the browser ask the person. To be called in a tap; the offer can be taken once.
    pub fn ask(&self) {
        if let Some(offer) = self.offer.borrow_mut().take() {
            spawn_local(async move {
                // The event `appinstalled` says that the person agreed; a refusal is no fault.
                let _ = js::call_async(&offer, "prompt", &[]).await;
            });
        }
    }
}

/// Whether the page has a window of its own, without the browser's controls.
fn shown_alone() -> bool {
    let Some(window) = js::global("window") else {
        return false;
    };
    let asked = js::call(
        &window,
        "matchMedia",
        &["(display-mode: standalone)".into()],
    );
    asked
        .ok()
        .and_then(|answer| js::get(&answer, "matches"))
        .is_some_and(|matches| matches.is_truthy())
}
