//! What waits until a tap is on the screen: work that nobody sees yet, done right after the next picture.

use super::events::{Listener, is_visible, on_page_hide, on_visibility};
use super::timer::{Timer, after, detached};
use std::cell::{Cell, RefCell};
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::Closure;

/// No picture may come, as under a dialog of the browser: then it is done so many milliseconds later.
const LATEST_MS: u32 = 250;

type Work = Box<dyn FnOnce()>;

thread_local! {
    static WAITING: RefCell<Vec<Work>> = const { RefCell::new(Vec::new()) };
    static LATEST: RefCell<Option<Timer>> = const { RefCell::new(None) };
    static LEAVING: RefCell<Option<[Listener; 2]>> = const { RefCell::new(None) };
    static ASKED: Cell<bool> = const { Cell::new(false) };
}

/// Does `work` once the next picture is on the screen, after what waits already. A page that is hidden has no pictures
/// and may be gone soon: there it is done at once, and what waits is done as soon as the page is hidden or left.
pub fn once_painted(work: impl FnOnce() + 'static) {
    wait(Box::new(work));
}

fn wait(work: Work) {
    WAITING.with_borrow_mut(|waiting| waiting.push(work));
    if ASKED.get() {
        // A picture is on its way; if the page is hidden before it, the listeners below do the work.
    } else if !is_visible() {
        do_all();
    } else {
        ASKED.set(true);
        LEAVING.with_borrow_mut(|leaving| {
            leaving.get_or_insert_with(|| {
                let hidden = on_visibility(|shown| {
                    if !shown {
                        do_all();
                    }
                });
                [hidden, on_page_hide(do_all)]
            });
        });
        LATEST.set(Some(after(LATEST_MS, do_all)));
        if let Some(window) = web_sys::window() {
            // Before a picture: what is set to come at once then comes after it. A browser that refuses has the timer.
            let before = Closure::once_into_js(|| detached(0, do_all));
            let _ = window.request_animation_frame(before.unchecked_ref());
        }
    }
}

fn do_all() {
    ASKED.set(false);
    // Not while it is in use: the timer may be the one that rings.
    drop(LATEST.take());
    for work in WAITING.take() {
        work();
    }
}
