//! The texts that fuzzers are started with, and those that once broke something: each holds to its law.

#[path = "fuzz/laws.rs"]
mod laws;

use std::path::Path;

/// Tries every text of a folder of the corpus; how many there were.
fn every(name: &str, law: fn(&[u8])) -> usize {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("tests/fuzz/corpus")
        .join(name);
    let mut tried = 0;
    for entry in std::fs::read_dir(folder).expect("the corpus is there") {
        law(&std::fs::read(entry.unwrap().path()).unwrap());
        tried += 1;
    }
    tried
}

#[test]
fn every_kept_text_holds_to_its_law() {
    for (name, law) in [
        ("file", laws::file as fn(&[u8])),
        ("line", laws::line),
        ("link", laws::link),
        ("row", laws::row),
        ("json", laws::json),
    ] {
        assert!(every(name, law) > 1, "{name}");
    }
}
