//! The screen stays on while it is held, and is asked for again when the page is shown.

use crate::help::{Patch, number, patch, run, turn, until};
use stanchion::device::wake::keep_awake;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen_test::wasm_bindgen_test;

/// A browser whose locks the test can see, and take back.
fn locks() -> Patch {
    patch(
        "window.given = []; window.freed = 0; window.thinking = Promise.resolve();
         shadow(navigator, 'wakeLock', {value: {async request(kind) {
             await window.thinking;
             if (kind !== 'screen') throw new TypeError(kind);
             const lock = new EventTarget();
             lock.release = async () => { window.freed++ };
             window.given.push(lock);
             return lock;
         }}});",
    )
}

#[wasm_bindgen_test]
async fn it_is_asked_for_again_after_the_page_was_hidden() {
    let _locks = locks();
    let told: Rc<RefCell<Vec<bool>>> = Rc::default();
    let tell = Rc::clone(&told);
    let awake = keep_awake(move |held| tell.borrow_mut().push(held));
    assert!(!awake.is_held());
    until("it is held", || awake.is_held()).await;
    run("given[0].dispatchEvent(new Event('release'))");
    assert!(!awake.is_held());
    run("document.dispatchEvent(new Event('visibilitychange'))");
    until("it is held again", || awake.is_held()).await;
    assert_eq!(number("given.length"), 2.0);
    assert_eq!(*told.borrow(), [true, false, true]);
    let freed = number("freed");
    drop(awake);
    assert_eq!(number("freed"), freed + 1.0);
    run("document.dispatchEvent(new Event('visibilitychange'))");
    turn().await;
    assert_eq!(number("given.length"), 2.0, "nobody asks any more");
}

#[wasm_bindgen_test]
async fn a_lock_that_comes_too_late_is_given_back() {
    let _locks = locks();
    run("window.thinking = new Promise(resolve => { window.think = resolve })");
    let awake = keep_awake(|_| panic!("nobody is there to be told"));
    turn().await;
    drop(awake);
    run("think()");
    until("it was given back", || number("freed") == 1.0).await;
}

#[wasm_bindgen_test]
async fn a_refusal_is_no_error() {
    for refusal in [
        "undefined",
        "{request: async () => { throw new DOMException('', 'NotAllowedError') }}",
    ] {
        let _patch = patch(&format!(
            "shadow(navigator, 'wakeLock', {{value: {refusal}}});"
        ));
        let awake = keep_awake(|_| panic!("there is nothing to tell"));
        turn().await;
        assert!(!awake.is_held());
    }
}
