//! wasm-opt, from npm's binaryen. It makes the app smaller; without it the app still works.

use std::path::{Path, PathBuf};

use super::{found, npm};
use crate::places;
use crate::run::{answer, program_in, tool, which};
use crate::say::{Outcome, note};

/// The version whose results the size figures are about.
const VERSION: &str = "132.0.0";

/// How often npm is asked.
const ATTEMPTS: usize = 3;

/// wasm-opt's path, or none where npm is missing or cannot fetch it.
pub fn prepare() -> Outcome<Option<PathBuf>> {
    let folder = places::tool("binaryen", VERSION)?;
    if let Some(path) = working(&folder) {
        found("wasm-opt", VERSION);
        return Ok(Some(path));
    }
    if which("npm").is_none() {
        note(
            "wasm-opt: not here, and npm is missing; the app is built without it, larger than need be",
        );
        return Ok(None);
    }
    // Registries stumble: one more attempt is cheaper than a build that is larger than need be.
    for _ in 0..ATTEMPTS {
        note(format!("fetching wasm-opt (binaryen {VERSION}) with npm"));
        if let Err(failure) = npm::install(&folder, "binaryen", VERSION) {
            note(failure.to_string());
        } else if let Some(path) = working(&folder) {
            found("wasm-opt", VERSION);
            return Ok(Some(path));
        } else {
            note("npm has fetched it, and it does not answer `wasm-opt --version`");
        }
    }
    note("wasm-opt: not to be had; the app is built without it, larger than need be");
    Ok(None)
}

/// wasm-opt in this folder, if it runs and is of the version wanted.
fn working(folder: &Path) -> Option<PathBuf> {
    let path = program_in(&folder.join("node_modules/.bin"), "wasm-opt")?;
    let said = answer(tool(&path).arg("--version"))?;
    let major = VERSION.split('.').next()?;
    said.split_whitespace()
        .any(|word| word == major)
        .then_some(path)
}
