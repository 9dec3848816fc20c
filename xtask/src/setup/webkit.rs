//! WebKitGTK, its driver and a screen that is not seen, for the end-to-end tests in a third engine.

use std::env;
use std::fs;
use std::path::PathBuf;

use super::{apt, found};
use crate::run::which;
use crate::say::{Failure, Outcome};

/// The folders of the small browser that comes with the engine, the newest first.
const FLAVOURS: [&str; 3] = ["webkitgtk-6.0", "webkit2gtk-4.1", "webkit2gtk-4.0"];

/// A browser, the driver that steers it, and the program that gives both a screen.
pub struct Webkit {
    /// The browser's program.
    pub browser: PathBuf,
    /// The driver's program.
    pub driver: PathBuf,
    /// Runs a command under an X server of its own: this engine has no mode without a screen.
    pub screen: PathBuf,
}

impl Webkit {
    /// Finds the three programs, or installs them where Debian's packages are at hand.
    pub fn prepare() -> Outcome<Self> {
        if let Some(webkit) = Self::here() {
            return Ok(webkit);
        }
        if apt::is_here() {
            // Debian only recommends xauth to xvfb, and xvfb-run does not go without.
            apt::install(&["webkit2gtk-driver", "xvfb", "xauth"])?;
        }
        Self::here().ok_or_else(|| {
            Failure::new(
                "tests in WebKit need WebKitWebDriver, MiniBrowser and xvfb-run, and did not find all three",
                "install webkit2gtk-driver, xvfb and xauth, or name the first two in STANCHION_WEBKIT_DRIVER and STANCHION_WEBKIT",
            )
        })
    }

    /// What of this is on the machine already, if it is whole.
    pub fn here() -> Option<Self> {
        let webkit = Self {
            browser: named("STANCHION_WEBKIT").or_else(mini_browser)?,
            driver: named("STANCHION_WEBKIT_DRIVER").or_else(|| which("WebKitWebDriver"))?,
            screen: which("xauth").and_then(|_| which("xvfb-run"))?,
        };
        found("browser", &webkit.browser.display().to_string());
        Some(webkit)
    }
}

fn named(variable: &str) -> Option<PathBuf> {
    env::var_os(variable)
        .map(PathBuf::from)
        .filter(|path| path.is_file())
}

/// It is not on PATH, but in a folder of the library.
fn mini_browser() -> Option<PathBuf> {
    let folders: Vec<PathBuf> = ["/usr/lib", "/usr/libexec"]
        .into_iter()
        .filter_map(|base| fs::read_dir(base).ok())
        .flatten()
        .filter_map(|entry| Some(entry.ok()?.path()))
        .collect();
    FLAVOURS.into_iter().find_map(|flavour| {
        folders
            .iter()
            .map(|folder| {
                if folder.ends_with(flavour) {
                    folder.join("MiniBrowser")
                } else {
                    folder.join(flavour).join("MiniBrowser")
                }
            })
            .find(|path| path.is_file())
    })
}
