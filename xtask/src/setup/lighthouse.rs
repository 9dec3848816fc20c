//! Lighthouse, from npm: it loads the page as a slow phone would. Only measurements run it.

use std::path::PathBuf;

use super::{found, npm};
use crate::places;
use crate::say::{Failure, Outcome, note};

/// The newest that runs on the Node.js of Debian's stable release; its weights are part of the figures.
const VERSION: &str = "12.2.3";

/// The path of its command, a script for Node.js.
pub fn prepare() -> Outcome<PathBuf> {
    let folder = places::tool("lighthouse", VERSION)?;
    let script = folder.join("node_modules/lighthouse/cli/index.js");
    // Written last, as npm was interrupted before.
    let whole = folder.join("whole");
    if whole.is_file() && script.is_file() {
        found("Lighthouse", VERSION);
        return Ok(script);
    }
    note(format!("fetching Lighthouse {VERSION} with npm"));
    npm::install(&folder, "lighthouse", VERSION)?;
    if !script.is_file() {
        return Err(Failure::new(
            "Lighthouse was fetched, but its command is not there",
            format!("delete {} and run the command again", folder.display()),
        ));
    }
    std::fs::write(&whole, VERSION).ok();
    found("Lighthouse", VERSION);
    Ok(script)
}
