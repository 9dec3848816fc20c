//! Tests of `device/` in a real browser.
#![cfg(target_arch = "wasm32")]

mod agenda;
mod clock;
mod db;
mod db_faults;
mod db_forms;
mod db_parts;
mod figures;
mod files;
mod hands;
mod heard;
mod help;
mod keys;
mod language;
mod locks;
mod pack;
mod page;
mod painted;
mod picture;
mod prefs;
mod rest;
mod send;
mod sound_cues;
mod sound_jank;
mod sound_live;
mod sound_render;
mod speech;
mod timers;
mod wake;
mod worker;

wasm_bindgen_test::wasm_bindgen_test_configure!(run_in_browser);
