//! Tests of `device/` in a real browser.
#![cfg(target_arch = "wasm32")]

mod clock;
mod db;
mod db_faults;
mod db_forms;
mod files;
mod help;
mod keys;
mod locks;
mod pack;
mod page;
mod prefs;
mod send;
mod sound_live;
mod sound_render;
mod timers;
mod wake;
mod worker;

wasm_bindgen_test::wasm_bindgen_test_configure!(run_in_browser);
