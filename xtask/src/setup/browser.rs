//! Chromium and its driver, for the tests and the measurements.

use std::env;
use std::path::PathBuf;

use super::{apt, found};
use crate::run::which;
use crate::say::{Failure, Outcome};

/// A browser and the driver that steers it.
pub struct Browser {
    /// The browser's program.
    pub chromium: PathBuf,
    /// The driver's program.
    pub driver: PathBuf,
}

/// What a quiet headless run needs, in every place that starts the browser.
pub const FLAGS: &[&str] = &[
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--disable-dev-shm-usage",
    // The lists below the address bar are pages of their own, which nobody sees here and a phone has not.
    "--disable-features=WebUIOmniboxPopup,WebUIOmniboxAimPopup",
];

impl Browser {
    /// Finds the two programs, or installs them where Debian's packages are at hand.
    pub fn prepare() -> Outcome<Self> {
        if let Some(browser) = Self::find() {
            return Ok(browser);
        }
        if apt::is_here() {
            apt::install(&["chromium", "chromium-driver"])?;
        }
        Self::find().ok_or_else(|| {
            Failure::new(
                "the tests need Chromium (or Chrome) and a chromedriver of the same version, and did not find both",
                "install them so that they are on PATH, or name them in STANCHION_CHROMIUM and STANCHION_CHROMEDRIVER",
            )
        })
    }

    fn find() -> Option<Self> {
        let browser = Self {
            chromium: named("STANCHION_CHROMIUM").or_else(|| {
                [
                    "chromium",
                    "chromium-browser",
                    "google-chrome",
                    "google-chrome-stable",
                    "chrome",
                ]
                .into_iter()
                .find_map(which)
            })?,
            driver: named("STANCHION_CHROMEDRIVER").or_else(|| which("chromedriver"))?,
        };
        found("browser", &browser.chromium.display().to_string());
        Some(browser)
    }
}

fn named(variable: &str) -> Option<PathBuf> {
    env::var_os(variable)
        .map(PathBuf::from)
        .filter(|path| path.is_file())
}
