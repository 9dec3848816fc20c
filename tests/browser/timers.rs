//! Timers run, and end with their guards.

use crate::help::{number, patch, until};
use stanchion::device::timer::{Timer, after, every};
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen_test::wasm_bindgen_test;

fn counter() -> (Rc<Cell<u32>>, impl Fn() + Clone) {
    let count = Rc::new(Cell::new(0));
    let counting = Rc::clone(&count);
    (count, move || counting.set(counting.get() + 1))
}

#[wasm_bindgen_test]
async fn timers_call() {
    let (count, up) = counter();
    let up_once = up.clone();
    let _once = after(1, up_once);
    until("it was called", || count.get() == 1).await;
    let up_often = up.clone();
    let _often = every(1, up_often);
    until("it was called again and again", || count.get() >= 4).await;
}

#[wasm_bindgen_test]
async fn a_dropped_timer_does_not_call() {
    // A timer that is still set calls a closure that is gone, and that is an error on the page.
    let _errors = patch(
        "window.errors = 0;
         const count = () => { window.errors++ };
         window.addEventListener('error', count);
         undo.push(() => window.removeEventListener('error', count));",
    );
    let (count, up) = counter();
    let again = up.clone();
    drop(after(1, up));
    drop(every(1, again));
    // What comes due later, and is called, shows that the others had their chance.
    let (later, up) = counter();
    let _sentinel = after(20, up);
    until("a later timer was called", || later.get() == 1).await;
    assert_eq!((count.get(), number("errors")), (0, 0.0));
}

#[wasm_bindgen_test]
async fn a_timer_may_end_itself() {
    let held: Rc<RefCell<Option<Timer>>> = Rc::default();
    let (count, up) = counter();
    let own = Rc::clone(&held);
    *held.borrow_mut() = Some(every(1, move || {
        up();
        own.borrow_mut().take();
    }));
    until("it was called", || count.get() == 1).await;
    let (later, up) = counter();
    let _sentinel = after(20, up);
    until("more time has gone by", || later.get() == 1).await;
    assert_eq!(count.get(), 1);
}
