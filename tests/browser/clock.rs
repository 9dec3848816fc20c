//! Clock and chance.

use crate::help::{number, patch};
use stanchion::device::clock::{
    go_by_the_phone, monotonic_ms, random_bytes, run_id, run_on_from, running_on, wall,
};
use wasm_bindgen_test::wasm_bindgen_test;

#[wasm_bindgen_test]
fn wall_time_is_the_browsers_with_its_offset() {
    let (before, now, after) = (number("Date.now()"), wall(), number("Date.now()"));
    assert!(
        (before..=after).contains(&(now.timestamp_millis() as f64)),
        "{now}"
    );
    let behind = number("new Date().getTimezoneOffset()");
    assert_eq!(f64::from(now.offset().local_minus_utc()), -behind * 60.0);
}

#[wasm_bindgen_test]
fn offsets_run_the_right_way() {
    for (behind, written) in [(-330, "+05:30"), (210, "-03:30"), (0, "+00:00")] {
        let _patch = patch(&format!(
            "shadow(Date.prototype, 'getTimezoneOffset', {{value: () => {behind}}});"
        ));
        assert!(
            wall().to_rfc3339().ends_with(written),
            "{} is not {written}",
            wall()
        );
    }
}

#[wasm_bindgen_test]
fn the_steady_clock_never_steps_back() {
    let readings: Vec<f64> = (0..10_000).map(|_| monotonic_ms()).collect();
    assert!(readings.is_sorted());
    assert!(readings[0] > 0.0);
}

#[wasm_bindgen_test]
fn random_bytes_differ_with_and_without_the_browsers_generator() {
    let draw = || random_bytes::<10>();
    assert_ne!(draw(), draw());
    let _patch = patch("shadow(window, 'crypto', {value: undefined});");
    assert_ne!(draw(), draw());
}

#[wasm_bindgen_test]
fn a_run_keeps_its_number() {
    assert_eq!(run_id(), run_id());
}

#[wasm_bindgen_test]
fn what_was_begun_goes_on_after_the_phones_clock_was_set_back() {
    let begun = wall();
    let _patch = patch(
        "const real = Date.prototype.getTime;
         shadow(Date.prototype, 'getTime', {value() { return real.call(this) - 3600000 }});",
    );
    assert!(wall() < begun);
    assert!(running_on() < begun);
    run_on_from(begun);
    let after = (running_on() - begun).num_milliseconds();
    assert!((0..1000).contains(&after), "{after} ms after it");
    // An older time changes nothing.
    run_on_from(wall());
    assert!(running_on() >= begun);
    go_by_the_phone();
    assert!(running_on() < begun);
}
