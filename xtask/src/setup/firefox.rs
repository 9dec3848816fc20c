//! Firefox and its driver, for kills and end-to-end tests in a second engine.

use std::env;
use std::path::PathBuf;

use super::{apt, cargo_tool, found, program};
use crate::run::which;
use crate::say::{Failure, Outcome};

/// The newest driver that builds with the project's Rust version.
const GECKODRIVER: &str = "0.37.1";

const DRIVER: cargo_tool::Tool = cargo_tool::Tool {
    package: "geckodriver",
    version: GECKODRIVER,
    programs: &["geckodriver"],
    locked: true,
    optimised: 0,
    minutes: 2,
};

/// A browser and the driver that steers it.
pub struct Firefox {
    /// The browser's program.
    pub firefox: PathBuf,
    /// The driver's program.
    pub driver: PathBuf,
}

impl Firefox {
    /// Finds the two programs. The browser is installed where Debian's packages are at hand; the driver, which Debian
    /// does not have, is built.
    pub fn prepare() -> Outcome<Self> {
        let mut firefox = Self::find();
        if firefox.is_none() && apt::is_here() {
            apt::install(&["firefox-esr"])?;
            firefox = Self::find();
        }
        let firefox = firefox.ok_or_else(|| {
            Failure::new(
                "tests in Firefox need Firefox, and it was not found",
                "install it so that it is on PATH, or name it in STANCHION_FIREFOX",
            )
        })?;
        found("browser", &firefox.display().to_string());
        let driver = match named("STANCHION_GECKODRIVER").or_else(|| which("geckodriver")) {
            Some(driver) => driver,
            None => cargo_tool::prepare(&DRIVER)?.join(program("geckodriver")),
        };
        Ok(Self { firefox, driver })
    }

    /// What of this is on the machine already, if it is both.
    pub fn here() -> Option<Self> {
        let firefox = Self {
            firefox: Self::find()?,
            driver: named("STANCHION_GECKODRIVER")
                .or_else(|| which("geckodriver"))
                .or_else(|| Some(cargo_tool::here(&DRIVER)?.join(program("geckodriver"))))?,
        };
        found("browser", &firefox.firefox.display().to_string());
        Some(firefox)
    }

    fn find() -> Option<PathBuf> {
        named("STANCHION_FIREFOX")
            .or_else(|| ["firefox-esr", "firefox"].into_iter().find_map(which))
    }
}

fn named(variable: &str) -> Option<PathBuf> {
    env::var_os(variable)
        .map(PathBuf::from)
        .filter(|path| path.is_file())
}
