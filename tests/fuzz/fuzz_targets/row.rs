//! Any bytes for the law of the same name in `laws.rs`.
#![no_main]

#[path = "../laws.rs"]
#[allow(dead_code, reason = "each target uses its own law")]
mod laws;

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| laws::row(bytes));
