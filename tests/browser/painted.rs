//! Work that waits for a picture is done after it, and at the latest when the page goes.

use crate::help::{Patch, patch, run, until};
use stanchion::device::painted::once_painted;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen_test::wasm_bindgen_test;

/// What happened, in order.
type Happened = Rc<RefCell<Vec<&'static str>>>;

fn note(happened: &Happened, what: &'static str) -> impl FnOnce() + 'static {
    let happened = Rc::clone(happened);
    move || happened.borrow_mut().push(what)
}

/// Frames that come when the test lets them: `frame()` is one.
fn frames() -> Patch {
    patch(
        "let asked = [];
         shadow(window, 'requestAnimationFrame', {value: (call) => asked.push(call)});
         window.frame = () => asked.splice(0).forEach((call) => call(0));",
    )
}

/// The page is hidden, or shown again.
fn hide(is_hidden: bool) -> Patch {
    let state = if is_hidden { "hidden" } else { "visible" };
    let patch = patch(&format!(
        "shadow(document, 'visibilityState', {{value: '{state}'}});"
    ));
    run("document.dispatchEvent(new Event('visibilitychange'))");
    patch
}

#[wasm_bindgen_test]
async fn it_is_done_after_the_picture_and_in_order() {
    let _frames = frames();
    let happened = Happened::default();
    once_painted(note(&happened, "one"));
    let after = Rc::clone(&happened);
    once_painted(move || {
        after.borrow_mut().push("two");
        once_painted(note(&after, "asked for amid them"));
    });
    run("frame()");
    happened.borrow_mut().push("picture");
    until("both were done", || happened.borrow().len() == 3).await;
    run("frame()");
    until("the last was done", || happened.borrow().len() == 4).await;
    assert_eq!(
        *happened.borrow(),
        ["picture", "one", "two", "asked for amid them"]
    );
}

#[wasm_bindgen_test]
async fn without_a_picture_it_is_done_all_the_same() {
    let _frames = frames();
    let happened = Happened::default();
    once_painted(note(&happened, "done"));
    until("it was done", || happened.borrow().len() == 1).await;
}

#[wasm_bindgen_test]
fn a_page_that_goes_leaves_nothing_undone() {
    let _frames = frames();
    let happened = Happened::default();
    once_painted(note(&happened, "hidden"));
    let hidden = hide(true);
    assert_eq!(*happened.borrow(), ["hidden"]);
    once_painted(note(&happened, "while hidden"));
    assert_eq!(*happened.borrow(), ["hidden", "while hidden"]);
    drop(hidden);
    let _shown = hide(false);
    once_painted(note(&happened, "left"));
    run("window.dispatchEvent(new PageTransitionEvent('pagehide'))");
    assert_eq!(*happened.borrow(), ["hidden", "while hidden", "left"]);
}
