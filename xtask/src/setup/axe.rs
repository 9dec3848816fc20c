//! axe-core, from npm: it looks for what keeps people out of the app. Only tests and measurements load it.

use std::env;
use std::fs;
use std::path::{Path, PathBuf};

use super::{found, npm};
use crate::places;
use crate::say::{Failure, Outcome, note};

/// The version whose findings the figures are about.
const VERSION: &str = "4.14.1";

/// Names a file `axe.min.js` that is here already, for a machine without npm.
const VARIABLE: &str = "STANCHION_AXE";

/// The path of `axe.min.js`.
pub fn prepare() -> Outcome<PathBuf> {
    if let Some(path) = env::var_os(VARIABLE).map(PathBuf::from) {
        found("axe-core", &path.display().to_string());
        return Ok(path);
    }
    let folder = places::tool("axe-core", VERSION)?;
    if let Some(path) = whole(&folder, VERSION) {
        found("axe-core", VERSION);
        return Ok(path);
    }
    note(format!("fetching axe-core {VERSION} with npm"));
    npm::install(&folder, "axe-core", VERSION).map_err(|failure| {
        let next = format!(
            "{}; or name the file axe.min.js of axe-core {VERSION} in {VARIABLE}",
            failure.next
        );
        Failure::new(failure.what, next)
    })?;
    let path = whole(&folder, VERSION).ok_or_else(|| {
        Failure::new(
            "axe-core was fetched, but its file is not whole",
            format!("delete {} and run the command again", folder.display()),
        )
    })?;
    found("axe-core", VERSION);
    Ok(path)
}

/// The file, if it says in its first line that it is of this version and was written to its end.
fn whole(folder: &Path, version: &str) -> Option<PathBuf> {
    let path = folder.join("node_modules/axe-core/axe.min.js");
    let text = fs::read_to_string(&path).ok()?;
    let head = text.lines().next()?;
    let named = head
        .split_whitespace()
        .any(|word| word == format!("v{version}"));
    (named && text.trim_end().ends_with("window:this);")).then_some(path)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scratch::Scratch;

    const PLACE: &str = "node_modules/axe-core/axe.min.js";

    #[test]
    fn the_file_of_the_version_is_whole() {
        let folder = Scratch::new("axe");
        folder.write(PLACE, b"/*! axe v1.2.3\n */\n!function(){}(window:this);\n");
        assert!(whole(folder.path(), "1.2.3").is_some());
        assert!(whole(folder.path(), "1.2.4").is_none());
    }

    #[test]
    fn a_file_cut_short_or_missing_is_not() {
        let folder = Scratch::new("axe-cut");
        assert!(whole(folder.path(), "1.2.3").is_none());
        folder.write(PLACE, b"/*! axe v1.2.3\n */\n!function(){");
        assert!(whole(folder.path(), "1.2.3").is_none());
    }
}
