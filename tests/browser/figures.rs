//! Figures that a test measures, said so that `cargo xtask measure` can read them.

use wasm_bindgen_test::console_log;

/// Says a figure under its key.
pub fn figure(key: &str, value: f64) {
    console_log!("figure {key} {value:.4}");
}
