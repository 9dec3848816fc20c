//! The rest of the app: asked for by the page's own function, and told when it is there.

use super::help::{number, patch, run};
use stanchion::device::rest;
use std::cell::Cell;
use std::rc::Rc;
use wasm_bindgen_test::wasm_bindgen_test;

#[wasm_bindgen_test]
fn a_page_that_has_no_rest_is_not_asked_for_it() {
    rest::bring();
    assert!(!rest::is_here());
}

#[wasm_bindgen_test]
fn all_that_is_missing_is_asked_for_and_its_coming_is_told() {
    let _patch = patch(
        "window.asked = [];
         shadow(window, 'stanchionPart', {value: (part) => window.asked.push(part)});
         shadow(window, 'stanchionWhole', {value: false, writable: true});",
    );
    let told = Rc::new(Cell::new(0));
    let seen = Rc::clone(&told);
    let listener = rest::on_here(move || seen.set(seen.get() + 1));
    rest::bring();
    assert_eq!(
        number("window.asked.length === 1 && window.asked[0] === 0"),
        1.0
    );
    assert!(!rest::is_here());
    run("window.stanchionWhole = true; dispatchEvent(new Event('stanchion-whole'))");
    assert!(rest::is_here());
    assert_eq!(told.get(), 1);
    drop(listener);
    run("dispatchEvent(new Event('stanchion-whole'))");
    assert_eq!(told.get(), 1);
}
