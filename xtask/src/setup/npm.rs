//! Packages from npm, each version in its own folder of the user's cache.

use std::path::Path;

use crate::run::{run, tool, which};
use crate::say::{Failure, Outcome};

/// Puts `package` in that version below `folder`, without running its scripts.
pub fn install(folder: &Path, package: &str, version: &str) -> Outcome<()> {
    let npm = which("npm").ok_or_else(|| {
        Failure::new(
            format!("{package} comes from npm, and npm is missing"),
            "install Node.js with npm so that `npm` is on PATH (Debian: `apt-get install npm` as root), \
             then run the command again",
        )
    })?;
    std::fs::create_dir_all(folder).ok();
    run(
        tool(npm)
            .args(["install", "--loglevel=error", "--no-audit", "--no-fund"])
            .args(["--ignore-scripts", "--prefix"])
            .arg(folder)
            .arg(format!("{package}@{version}")),
        "check the network, then run the command again",
    )
}
