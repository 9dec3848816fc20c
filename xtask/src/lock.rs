//! Reads locked versions from Cargo.lock.

use std::fs;

use crate::places;
use crate::say::{Failure, OrNext, Outcome};

/// The version that Cargo.lock holds for a package.
pub fn version_of(package: &str) -> Outcome<String> {
    let path = places::root().join("Cargo.lock");
    let next = "restore Cargo.lock from the repository (git checkout Cargo.lock)";
    let text = fs::read_to_string(&path).or_next("reading Cargo.lock", next)?;
    locked(&text, package)
        .map(str::to_owned)
        .ok_or_else(|| Failure::new(format!("Cargo.lock holds no package `{package}`"), next))
}

/// The first version of a package in a lock file's text.
fn locked<'a>(lock: &'a str, package: &str) -> Option<&'a str> {
    lock.split("[[package]]").skip(1).find_map(|entry| {
        let value = |key: &str| {
            entry.lines().find_map(|line| {
                line.strip_prefix(key)?
                    .strip_prefix(" = \"")?
                    .strip_suffix('"')
            })
        };
        (value("name") == Some(package)).then(|| value("version"))?
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    const LOCK: &str = "version = 4\n\n\
        [[package]]\nname = \"wasm-bindgen-macro\"\nversion = \"0.1.0\"\n\n\
        [[package]]\nname = \"wasm-bindgen\"\nversion = \"0.2.130\"\ndependencies = [\n \"cfg-if\",\n]\n\n\
        [[package]]\nname = \"web-sys\"\nversion = \"0.3.107\"\n";

    #[test]
    fn finds_the_package_of_exactly_that_name() {
        assert_eq!(locked(LOCK, "wasm-bindgen"), Some("0.2.130"));
        assert_eq!(locked(LOCK, "web-sys"), Some("0.3.107"));
    }

    #[test]
    fn a_missing_package_has_no_version() {
        assert_eq!(locked(LOCK, "wasm"), None);
        assert_eq!(locked("", "web-sys"), None);
    }

    #[test]
    fn the_projects_own_lock_is_read() {
        assert!(version_of("wasm-bindgen").unwrap().starts_with("0.2."));
    }
}
