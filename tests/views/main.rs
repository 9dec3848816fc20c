//! Tests of what all views are made of, in a real browser.
#![cfg(target_arch = "wasm32")]

mod element;
mod follows;
#[expect(dead_code, reason = "the tests of `device/` use all of it")]
#[path = "../browser/help.rs"]
mod help;
mod stage;

wasm_bindgen_test::wasm_bindgen_test_configure!(run_in_browser);
