//! The screen stays on while it is held, and is asked for again when the page is shown.

use crate::help::{Patch, number, patch, run, turn, until};
use stanchion::device::wake::{Stay, keep_awake};
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
    let told: Rc<RefCell<Vec<Stay>>> = Rc::default();
    let tell = Rc::clone(&told);
    let awake = keep_awake(move |stay| tell.borrow_mut().push(stay));
    let held = || told.borrow().last() == Some(&Stay::Held);
    assert!(!held());
    until("it is held", held).await;
    run("given[0].dispatchEvent(new Event('release'))");
    assert!(!held());
    run("document.dispatchEvent(new Event('visibilitychange'))");
    until("it is held again", held).await;
    assert_eq!(number("given.length"), 2.0);
    assert_eq!(*told.borrow(), [Stay::Held, Stay::Refused, Stay::Held]);
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
async fn a_refusal_is_no_error_and_is_told() {
    for (lock, why) in [
        ("undefined", Stay::Missing),
        (
            "{request: async () => { throw new DOMException('', 'NotAllowedError') }}",
            Stay::Refused,
        ),
    ] {
        let _patch = patch(&format!(
            "shadow(navigator, 'wakeLock', {{value: {lock}}});"
        ));
        let told: Rc<RefCell<Vec<Stay>>> = Rc::default();
        let tell = Rc::clone(&told);
        let _awake = keep_awake(move |stay| tell.borrow_mut().push(stay));
        until("it is told", || *told.borrow() == [why]).await;
        assert!(why.said().is_some());
    }
}

#[wasm_bindgen_test]
async fn a_browser_that_wants_a_tap_first_is_asked_again_with_it() {
    let _locks = locks();
    run(
        "const give = navigator.wakeLock.request; window.tapped = false;
         navigator.wakeLock.request = async (kind) => {
             if (!window.tapped) throw new DOMException('', 'NotAllowedError');
             return give(kind);
         };",
    );
    let told: Rc<RefCell<Vec<Stay>>> = Rc::default();
    let tell = Rc::clone(&told);
    let _awake = keep_awake(move |stay| tell.borrow_mut().push(stay));
    until("it is refused", || *told.borrow() == [Stay::Refused]).await;
    run("window.tapped = true; document.body.click()");
    until("it is held", || told.borrow().last() == Some(&Stay::Held)).await;
    assert_eq!(*told.borrow(), [Stay::Refused, Stay::Held]);
    assert_eq!(number("given.length"), 1.0);
}
