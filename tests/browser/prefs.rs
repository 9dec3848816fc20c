//! Small settings, kept or not.

use crate::help::{patch, run, text};
use stanchion::device::prefs::{PrefError, forget_all, get, set};
use wasm_bindgen_test::wasm_bindgen_test;

#[wasm_bindgen_test]
fn a_setting_comes_back_under_our_prefix() {
    set("volume", &0.5).unwrap();
    assert_eq!(get::<f64>("volume"), Some(0.5));
    assert_eq!(text("localStorage.getItem('stanchion.volume')"), "0.5");
    set("unit", &Some("kg")).unwrap();
    assert_eq!(get::<Option<String>>("unit"), Some(Some("kg".to_owned())));
}

#[wasm_bindgen_test]
fn what_is_missing_or_not_readable_is_none() {
    assert_eq!(get::<f64>("never-set"), None);
    run("localStorage.setItem('stanchion.broken', '{')");
    assert_eq!(get::<f64>("broken"), None);
    set("word", &"light").unwrap();
    assert_eq!(get::<f64>("word"), None);
}

#[wasm_bindgen_test]
fn a_browser_that_refuses_storage_makes_nothing_fail() {
    for refusal in [
        "window, 'localStorage', {get() { throw new DOMException('', 'SecurityError') }}",
        "window, 'localStorage', {value: null}",
        "window, 'localStorage', {value: undefined}",
        "Storage.prototype, 'getItem', {value() { throw new DOMException('', 'SecurityError') }}",
    ] {
        let _patch = patch(&format!("shadow({refusal});"));
        assert_eq!(get::<f64>("volume"), None, "{refusal}");
        assert_eq!(
            set("volume", &1.0),
            Err(PrefError::Unavailable),
            "{refusal}"
        );
    }
}

#[wasm_bindgen_test]
fn a_full_storage_is_told() {
    let _patch = patch(
        "shadow(Storage.prototype, 'setItem', {value() {
             throw new DOMException('no room', 'QuotaExceededError') }});",
    );
    let error = set("volume", &1.0).unwrap_err();
    assert!(
        matches!(&error, PrefError::Refused { what } if what.contains("no room")),
        "{error:?}"
    );
}

#[wasm_bindgen_test]
fn forgetting_leaves_what_other_pages_keep() {
    set("look", &"dark").expect("it is kept");
    run("localStorage.setItem('another.app', '1')");
    forget_all();
    assert_eq!(get::<String>("look"), None);
    assert_eq!(text("localStorage.getItem('another.app')"), "1");
    run("localStorage.removeItem('another.app')");
}
