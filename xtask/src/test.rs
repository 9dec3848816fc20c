//! Every check and test of the project, in the order in which failures are cheapest to find.

use std::fs;
use std::path::PathBuf;
use std::process::Command;

use serde_json::json;

use crate::build;
use crate::places;
use crate::run::{run as run_tool, run_tests, tool};
use crate::say::{OrNext, Outcome, note, step};
use crate::setup::{Browser, FLAGS, TRIPLE, Tools};

/// What to do when a test fails.
const MEND: &str = "the first failure is above; mend it and run `cargo xtask test` again";

/// The test suites that live beside the library's own tests, where they are there.
const IN_BROWSER: &str = "tests/browser/main.rs";
const END_TO_END: &str = "tests/e2e/main.rs";

/// Runs everything; stops at the first failure.
pub fn run() -> Outcome<()> {
    step("Format", || {
        run_tool(
            native().args(["fmt", "--all", "--check"]),
            "run `cargo fmt --all` and commit",
        )
    })?;
    step("Clippy, native", || {
        let mut clippy = native();
        clippy.args([
            "clippy",
            "--workspace",
            "--no-default-features",
            "--all-targets",
        ]);
        if there(END_TO_END) {
            clippy.args(["--features", "stanchion/e2e"]);
        }
        run_tool(clippy.args(["--", "-D", "warnings"]), MEND)
    })?;
    step("Core tests, without a browser", || {
        run_tests(
            native().args(["test", "--workspace", "--no-default-features"]),
            MEND,
        )
    })?;

    let tools = Tools::prepare()?;
    let browser = step("Browser", Browser::prepare)?;
    step("Clippy, WebAssembly", || lint_web(&tools))?;
    suite("Browser tests", IN_BROWSER, || in_browser(&tools, &browser))?;
    build::dist(&tools)?;
    suite("End-to-end tests", END_TO_END, || end_to_end(&browser))
}

/// Runs a suite whose file is there; says so if it is not.
fn suite(title: &str, file: &str, work: impl FnOnce() -> Outcome<()>) -> Outcome<()> {
    step(title, || {
        if there(file) {
            work()
        } else {
            note(format!("skipped: there is no {file} yet"));
            Ok(())
        }
    })
}

fn lint_web(tools: &Tools) -> Outcome<()> {
    // The other suites are native and are linted there.
    let mut targets = vec!["--target", TRIPLE, "--lib", "--bins"];
    if there(IN_BROWSER) {
        targets.extend(["--test", "browser"]);
    }
    if tools.toolchain().clippy() {
        return run_tool(
            tools
                .web_cargo()?
                .arg("clippy")
                .args(&targets)
                .args(["--", "-D", "warnings"]),
            MEND,
        );
    }
    note("this toolchain has no clippy: the compiler's own warnings are checked instead");
    run_tool(
        tools
            .web_cargo()?
            .arg("check")
            .args(&targets)
            .env("RUSTFLAGS", "-D warnings"),
        MEND,
    )
}

fn in_browser(tools: &Tools, browser: &Browser) -> Outcome<()> {
    run_tests(
        tools
            .web_cargo()?
            .args(["test", "--target", TRIPLE, "--test", "browser"])
            .env("CHROMEDRIVER", &browser.driver)
            .env("WASM_BINDGEN_TEST_WEBDRIVER_JSON", capabilities(browser)?)
            // The defaults, 20 s for the suite and 5 s for the driver, are for fast machines.
            .env("WASM_BINDGEN_TEST_TIMEOUT", "300")
            .env("WASM_BINDGEN_TEST_DRIVER_TIMEOUT", "60"),
        MEND,
    )
}

/// Writes what the test runner asks of the driver, with the browser that was found here.
fn capabilities(browser: &Browser) -> Outcome<PathBuf> {
    let path = places::target("webdriver.json");
    let wanted = json!({
        "goog:chromeOptions": { "binary": browser.chromium, "args": FLAGS }
    });
    fs::write(&path, wanted.to_string()).or_next(
        "writing target/webdriver.json",
        "check that target/ can be written",
    )?;
    Ok(path)
}

fn end_to_end(browser: &Browser) -> Outcome<()> {
    let xtask = std::env::current_exe().or_next("finding this program", "run the command again")?;
    run_tests(
        native()
            .args(["test", "--no-default-features", "--features", "e2e"])
            .args(["--test", "e2e", "--", "--test-threads=1"])
            .env("STANCHION_DIST", places::dist())
            .env("STANCHION_CHROMIUM", &browser.chromium)
            .env("STANCHION_CHROMEDRIVER", &browser.driver)
            // `host` is the server that the suite starts and stops.
            .env("STANCHION_XTASK", xtask),
        MEND,
    )
}

/// The cargo that builds for this machine.
fn native() -> Command {
    let mut command = tool("cargo");
    command.current_dir(places::root());
    command
}

fn there(file: &str) -> bool {
    places::root().join(file).is_file()
}
