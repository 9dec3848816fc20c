//! The end-to-end tests in other engines than Chromium: in those that are here, or in all.

use std::process::Command;

use crate::places;
use crate::run::{run_tests_in_browser, tool};
use crate::say::{Outcome, note, step};
use crate::setup::{Firefox, Webkit};
use crate::test::{MEND, end_to_end_by, native, only};

/// What of the end-to-end tests runs in every engine: what a person does from the first start to the export. The names
/// begin with these words; `docs/engines.md` says why the others do not.
const EVERYWHERE: &[&str] = &[
    "whole_session::",
    "floor::a_reload",
    "offline::",
    "parts::",
    "back::",
    "export::",
    "keys::",
    "two_tabs::",
    "draft::",
    "write::",
    "language::a_language",
    "ledger::many",
    "away::an_import_is_looked",
];

/// The engines that a run is for, beside Chromium.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Engines {
    /// Those that are on the machine.
    Installed,
    /// All; what is missing is installed.
    All,
}

/// Runs the tests that are for every engine in Firefox and in WebKit. An engine that is not here is named, and is no
/// failure unless all were asked for. Gives how many of both passed.
pub fn run(engines: Engines) -> Outcome<u8> {
    let mut passed = 0;
    let all = engines == Engines::All;
    let firefox = if all {
        Some(step("Firefox", Firefox::prepare)?)
    } else {
        Firefox::here()
    };
    match firefox {
        Some(firefox) => {
            step("End-to-end tests in Firefox", || in_firefox(&firefox))?;
            passed += 1;
        }
        None => absent("Firefox"),
    }
    let webkit = if all {
        Some(step("WebKit", Webkit::prepare)?)
    } else {
        Webkit::here()
    };
    match webkit {
        Some(webkit) => {
            step("End-to-end tests in WebKit", || in_webkit(&webkit))?;
            passed += 1;
        }
        None => absent("WebKit"),
    }
    Ok(passed)
}

fn absent(engine: &str) {
    println!("\n== End-to-end tests in {engine}: left out");
    note("it or its driver is not installed; `cargo xtask test --all-engines` installs both");
}

fn in_firefox(firefox: &Firefox) -> Outcome<()> {
    let command = |names: &[&str]| {
        let mut command = everywhere(native(), names);
        command
            .env("STANCHION_ENGINE", "firefox")
            .env("STANCHION_FIREFOX", &firefox.firefox)
            .env("STANCHION_GECKODRIVER", &firefox.driver);
        command
    };
    run_tests_in_browser(command, MEND)
}

fn in_webkit(webkit: &Webkit) -> Outcome<()> {
    let command = |names: &[&str]| {
        let mut screen = tool(&webkit.screen);
        screen
            .current_dir(places::root())
            .args(["--auto-servernum", "cargo"]);
        let mut command = everywhere(screen, names);
        command
            .env("STANCHION_ENGINE", "webkit")
            .env("STANCHION_WEBKIT", &webkit.browser)
            .env("STANCHION_WEBKIT_DRIVER", &webkit.driver);
        command
    };
    run_tests_in_browser(command, MEND)
}

/// The tests that run everywhere, or of them those with these names, by a command that is cargo or runs it.
fn everywhere(mut cargo: Command, names: &[&str]) -> Command {
    end_to_end_by(&mut cargo);
    if names.is_empty() {
        cargo.args(EVERYWHERE);
    }
    only(&mut cargo, names);
    cargo
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_runs_everywhere_is_there() {
        for name in EVERYWHERE {
            let (file, test) = name.split_once("::").unwrap();
            let path = places::root().join("tests/e2e").join(format!("{file}.rs"));
            let text = std::fs::read_to_string(path).unwrap();
            assert!(text.contains(&format!("async fn {test}")), "{name}");
        }
    }
}
