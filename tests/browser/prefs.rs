//! Small settings, kept or not.

use crate::help::{patch, run, text};
use stanchion::device::prefs::{PrefError, forget_all, get, get_in_tab, set, set_in_tab};
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
fn what_is_kept_for_one_tab_is_apart_from_what_is_kept_for_all() {
    set("who", &"all").unwrap();
    set_in_tab("who", &"this one");
    assert_eq!(get::<String>("who"), Some("all".to_owned()));
    assert_eq!(get_in_tab::<String>("who"), Some("this one".to_owned()));
    assert_eq!(
        text("sessionStorage.getItem('stanchion.who')"),
        "\"this one\""
    );
    run("sessionStorage.setItem('stanchion.who', '{')");
    assert_eq!(get_in_tab::<String>("who"), None);
    forget_all();
    assert_eq!(
        text("String(sessionStorage.getItem('stanchion.who'))"),
        "null"
    );
}

#[wasm_bindgen_test]
fn a_browser_that_refuses_the_storage_of_a_tab_makes_nothing_fail() {
    for refusal in [
        "window, 'sessionStorage', {get() { throw new DOMException('', 'SecurityError') }}",
        "window, 'sessionStorage', {value: null}",
    ] {
        let _patch = patch(&format!("shadow({refusal});"));
        set_in_tab("who", &"nobody");
        assert_eq!(get_in_tab::<String>("who"), None, "{refusal}");
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
