//! The optimised build, into dist/.

use std::ffi::OsStr;
use std::path::{Path, PathBuf};

use crate::freshness;
use crate::places;
use crate::run::run;
use crate::say::{Outcome, note, step};
use crate::setup::{TRIPLE, Tools};

/// Builds dist/ unless it is already what the sources give.
pub fn dist(tools: &Tools) -> Outcome<()> {
    step("Build (optimised)", || {
        let dist = places::dist();
        let inputs = freshness::of_inputs(places::root(), &tools.fingerprint())?;
        if freshness::holds(&inputs, &dist) {
            note("nothing has changed since the last build");
            return Ok(());
        }
        // Trunk is kept off the network, so that cargo has everything before.
        run(
            tools.web_cargo()?.args(["fetch", "--target", TRIPLE]),
            "check the network and run the command again",
        )?;
        note("compiling; from nothing this takes a few minutes");
        bundle(tools, places::root(), &[])?;
        freshness::remember(&inputs, &dist)
    })
}

/// Builds the smallest Leptos app beside it, with the same profile and by the same hook; gives its folder.
pub fn floor(tools: &Tools) -> Outcome<PathBuf> {
    step("Build (the smallest Leptos app)", || {
        bundle(
            tools,
            places::root(),
            &["--config", "tests/floor/Trunk.toml"],
        )?;
        Ok(places::target("floor"))
    })
}

/// Lets Trunk build the project in a folder, with what is compiled kept where it always is.
pub fn bundle(tools: &Tools, project: &Path, more: &[&str]) -> Outcome<()> {
    run(
        tools
            .trunk()?
            .args(["build", "--release", "--offline"])
            .args(more)
            .current_dir(project)
            .env("CARGO_TARGET_DIR", tools.toolchain().target_dir())
            .env(
                crate::finish::WASM_OPT,
                tools
                    .wasm_opt()
                    .map_or(OsStr::new(""), |path| path.as_os_str()),
            ),
        "correct what the compiler or Trunk says above, then run the command again",
    )
}
