//! Every check and test of the project, in the order in which failures are cheapest to find.

use std::fs;
use std::num::NonZero;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::thread;

use serde_json::json;

use crate::advisories;
use crate::build;
use crate::engines::{self, Engines};
use crate::licences;
use crate::measure::{self, Figures};
use crate::places;
use crate::run::{run as run_tool, run_tests, run_tests_in_browser, tool};
use crate::same_bytes;
use crate::say::{OrNext, Outcome, note, step};
use crate::setup::{Browser, FLAGS, TRIPLE, Tools, axe};
use crate::torture;

/// What to do when a test fails.
pub const MEND: &str = "the first failure is above; mend it and run `cargo xtask test` again";

/// Those packages are compiled together in every step, since which they are decides on the features of what they use: other
/// packages, or fewer, and much would be compiled anew. The smallest Leptos app is not among them, nor are benchmarks.
const TESTED: [&str; 4] = ["-p", "stanchion", "-p", "xtask"];

/// Kills that every test run makes; `cargo xtask torture` makes many.
const KILLS: u32 = 10;

/// Runs everything; stops at the first failure. Engines other than Chromium are installed only where `engines` says so.
pub fn run(engines: Engines) -> Outcome<()> {
    step("Format", || {
        run_tool(
            native().args(["fmt", "--all", "--check"]),
            "run `cargo fmt --all` and commit",
        )
    })?;
    // The end-to-end tests are among the targets only where they are named.
    for (name, targets) in [
        ("Clippy, native", &["--all-targets"][..]),
        ("Clippy, end-to-end tests", &["--test", "e2e"]),
    ] {
        step(name, || {
            run_tool(
                native()
                    .args(["clippy", "--workspace"])
                    .args(targets)
                    .args(["--", "-D", "warnings"]),
                MEND,
            )
        })?;
    }
    step("Core tests, without a browser", || {
        run_tests(
            native()
                .arg("test")
                .args(TESTED)
                .arg("--no-default-features"),
            MEND,
        )
    })?;
    step("Tests of the views, without a browser", || {
        run_tests(
            native().arg("test").args(TESTED).args(["--lib", "ui::"]),
            MEND,
        )
    })?;

    step("Licences", licences::check)?;
    step("Withdrawn versions and advisories", advisories::check)?;

    let tools = Tools::prepare()?;
    let browser = step("Browser", Browser::prepare)?;
    let axe = step("axe-core", axe::prepare)?;
    step("Clippy, WebAssembly", || lint_web(&tools))?;
    // Both with the views: what they use is compiled once.
    for (name, suite) in [
        ("Browser tests", "browser"),
        ("Browser tests of the views", "views"),
    ] {
        step(name, || {
            run_tests(tests_in(&tools, &browser)?.args(["--test", suite]), MEND)
        })?;
    }
    build::dist(&tools)?;
    step("End-to-end tests", || end_to_end(&browser, &axe))?;
    same_bytes::check(&tools)?;
    let others = engines::run(engines)?;
    step("Kills", || torture::few(KILLS))?;
    // With Chromium, whose tests came first.
    let passed = Figures::from([("engines.passed", f64::from(1 + others))]);
    step("Figures", || measure::add(&passed))
}

fn lint_web(tools: &Tools) -> Outcome<()> {
    // The other suites are native and are linted there.
    let targets = [
        "--target", TRIPLE, "--lib", "--bins", "--test", "browser", "--test", "views",
    ];
    if tools.toolchain().clippy() {
        return run_tool(
            tools
                .web_cargo()?
                .arg("clippy")
                .args(targets)
                .args(["--", "-D", "warnings"]),
            MEND,
        );
    }
    note("this toolchain has no clippy: the compiler's own warnings are checked instead");
    run_tool(
        tools
            .web_cargo()?
            .arg("check")
            .args(targets)
            .env("RUSTFLAGS", "-D warnings"),
        MEND,
    )
}

/// The command that runs the tests of `device/` alone; arguments may be added.
pub fn browser_tests(tools: &Tools, browser: &Browser) -> Outcome<Command> {
    let mut command = tests_in(tools, browser)?;
    command
        // Without the views: device/ is what these test, and Leptos takes minutes to compile.
        .args(["--no-default-features", "--features", "device"])
        .args(["--test", "browser"]);
    Ok(command)
}

/// The command that runs tests in that browser; which, is to be added.
fn tests_in(tools: &Tools, browser: &Browser) -> Outcome<Command> {
    let mut command = tools.web_cargo()?;
    command
        .args(["test", "--target", TRIPLE])
        .env("CHROMEDRIVER", &browser.driver)
        .env("WASM_BINDGEN_TEST_WEBDRIVER_JSON", capabilities(browser)?)
        // The defaults, 20 s for the suite and 5 s for the driver, are for fast machines.
        .env("WASM_BINDGEN_TEST_TIMEOUT", "300")
        .env("WASM_BINDGEN_TEST_DRIVER_TIMEOUT", "60");
    Ok(command)
}

/// Writes what the test runner asks of the driver, with the browser that was found here.
fn capabilities(browser: &Browser) -> Outcome<PathBuf> {
    let path = places::target("webdriver.json");
    // Nobody taps in these tests.
    let args: Vec<&str> = FLAGS
        .iter()
        .copied()
        .chain(["--autoplay-policy=no-user-gesture-required"])
        .collect();
    let wanted = json!({
        "goog:chromeOptions": { "binary": browser.chromium, "args": args }
    });
    fs::write(&path, wanted.to_string()).or_next(
        "writing target/webdriver.json",
        "check that target/ can be written",
    )?;
    Ok(path)
}

fn end_to_end(browser: &Browser, axe: &Path) -> Outcome<()> {
    run_tests_in_browser(
        |names| {
            let mut command = in_chromium(browser);
            command.env("STANCHION_AXE", axe);
            only(&mut command, names);
            command
        },
        MEND,
    )
}

/// Keeps a test command to these tests; to none where there are no names.
pub fn only(command: &mut Command, names: &[&str]) {
    if !names.is_empty() {
        command.arg("--exact").args(names);
    }
}

/// The end-to-end tests in Chromium; names of tests may be added.
fn in_chromium(browser: &Browser) -> Command {
    let mut command = native();
    end_to_end_by(&mut command)
        .env("STANCHION_ENGINE", "chromium")
        .env("STANCHION_CHROMIUM", &browser.chromium)
        .env("STANCHION_CHROMEDRIVER", &browser.driver);
    command
}

/// Lets a command, which is cargo or runs it, run the end-to-end tests in the app that was built; names of tests may be added.
pub fn end_to_end_by(cargo: &mut Command) -> &mut Command {
    // One more than processors, since a browser often waits: a sixth less time on two.
    let at_once = 1 + thread::available_parallelism().map_or(1, NonZero::get);
    cargo
        .arg("test")
        .args(TESTED)
        .args(["--no-default-features", "--test", "e2e"])
        .args(["--", &format!("--test-threads={at_once}")])
        .env("STANCHION_DIST", places::dist())
}

/// Builds the app and takes the pictures of `docs/screens.md`.
pub fn shots() -> Outcome<()> {
    let tools = Tools::prepare()?;
    let browser = step("Browser", Browser::prepare)?;
    build::dist(&tools)?;
    step("Pictures of every screen", || {
        run_tests(
            in_chromium(&browser)
                .arg("screens::every_screen_has_its_picture")
                .env("STANCHION_SHOTS", places::root().join("docs/shots")),
            "the first failure is above; mend it and run `cargo xtask shots` again",
        )
    })
}

/// The cargo that builds for this machine.
pub fn native() -> Command {
    let mut command = tool("cargo");
    command.current_dir(places::root());
    command
}
