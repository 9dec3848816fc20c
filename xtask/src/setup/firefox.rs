//! Firefox and its driver, for kills in a second engine.

use std::env;
use std::path::PathBuf;

use super::{apt, cargo_tool, found, program};
use crate::run::which;
use crate::say::{Failure, Outcome};

/// The newest driver that builds with the project's Rust version.
const GECKODRIVER: &str = "0.37.1";

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
                "kills in Firefox need Firefox, and it was not found",
                "install it so that it is on PATH, or name it in STANCHION_FIREFOX",
            )
        })?;
        found("browser", &firefox.display().to_string());
        let driver = match which("geckodriver") {
            Some(driver) => driver,
            None => cargo_tool::prepare(&cargo_tool::Tool {
                package: "geckodriver",
                version: GECKODRIVER,
                programs: &["geckodriver"],
                locked: true,
                minutes: 3,
            })?
            .join(program("geckodriver")),
        };
        Ok(Self { firefox, driver })
    }

    fn find() -> Option<PathBuf> {
        let named = env::var_os("STANCHION_FIREFOX").map(PathBuf::from);
        named
            .filter(|path| path.is_file())
            .or_else(|| ["firefox-esr", "firefox"].into_iter().find_map(which))
    }
}
