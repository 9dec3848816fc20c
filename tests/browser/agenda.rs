//! What is done at times: in order, not early, left out when it is too late or called off.

use crate::help::until;
use stanchion::device::agenda::Agenda;
use stanchion::device::clock::monotonic_ms;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen_test::wasm_bindgen_test;

type Done = Rc<RefCell<Vec<(char, f64)>>>;

fn begin(items: &[(f64, char)], done: &Done) -> Agenda<char> {
    let done = Rc::clone(done);
    Agenda::begin(items.to_vec(), 5_000.0, move |item| {
        done.borrow_mut().push((item, monotonic_ms()));
    })
}

fn names(done: &Done) -> String {
    done.borrow().iter().map(|(name, _)| *name).collect()
}

#[wasm_bindgen_test]
async fn items_come_in_order_and_not_early() {
    let done = Done::default();
    let start = monotonic_ms();
    let _agenda = begin(&[(0.0, 'a'), (60.0, 'b'), (60.0, 'c'), (120.0, 'd')], &done);
    until("all is done", || done.borrow().len() == 4).await;
    assert_eq!(names(&done), "abcd");
    for ((_, at), meant) in done.borrow().iter().zip([0.0, 60.0, 60.0, 120.0]) {
        assert!(
            at - start >= meant,
            "{} ms is before {meant} ms",
            at - start
        );
    }
}

#[wasm_bindgen_test]
async fn what_is_too_late_is_left_out() {
    let done = Done::default();
    let _agenda = begin(&[(-6_000.0, 'a'), (-10.0, 'b'), (20.0, 'c')], &done);
    until("the last is done", || names(&done).ends_with('c')).await;
    assert_eq!(names(&done), "bc");
}

#[wasm_bindgen_test]
async fn a_dropped_agenda_does_nothing_more() {
    let (dropped, other) = (Done::default(), Done::default());
    drop(begin(&[(10.0, 'a')], &dropped));
    let _after = begin(&[(60.0, 'b')], &other);
    until("the other one is done", || names(&other) == "b").await;
    assert_eq!(names(&dropped), "");
}
