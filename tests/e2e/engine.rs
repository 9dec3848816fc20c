//! The browser engines that the tests run in: which one this run is for, and what each is started with.

use super::driver::Driver;
use fantoccini::wd::Capabilities;
use serde_json::{Value, json};
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::Command;

/// An engine that the tests can drive.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Engine {
    /// Chromium, which has a protocol of its own beside WebDriver.
    Chromium,
    /// Firefox. Without a sound device its sound never runs, and its windows are at least 500 pixels wide.
    Firefox,
    /// WebKitGTK. Under a driver it keeps nothing past its end, and its windows are at least 447 pixels wide.
    Webkit,
}

/// Where a folder of this test takes downloads, in the engines that are told once, at the start.
pub const DOWNLOADS: &str = "out";

impl Engine {
    /// The engine of this run, by `STANCHION_ENGINE`.
    pub fn here() -> Engine {
        match std::env::var("STANCHION_ENGINE").as_deref() {
            Err(_) | Ok("" | "chromium") => Engine::Chromium,
            Ok("firefox") => Engine::Firefox,
            Ok("webkit") => Engine::Webkit,
            Ok(other) => {
                panic!("STANCHION_ENGINE is chromium, firefox or webkit; it says “{other}”")
            }
        }
    }

    /// Starts the engine's driver for a test's own folder.
    pub fn driver(self, folder: &Path) -> Driver {
        match self {
            Engine::Chromium => Driver::start(|| {
                let mut driver = Command::new(named("STANCHION_CHROMEDRIVER"));
                driver.arg("--port=0");
                (driver, None)
            }),
            Engine::Firefox => Driver::start(|| {
                let mut driver = Command::new(named("STANCHION_GECKODRIVER"));
                let other = Driver::free_port().to_string();
                driver.args(["--port", "0", "--websocket-port", &other]);
                driver.env("HOME", folder);
                (driver, None)
            }),
            Engine::Webkit => Driver::start(|| {
                let mut driver = Command::new(named("STANCHION_WEBKIT_DRIVER"));
                let port = Driver::free_port();
                driver.arg(format!("--port={port}")).env("HOME", folder);
                for (variable, under) in [
                    ("XDG_CONFIG_HOME", ".config"),
                    ("XDG_CACHE_HOME", ".cache"),
                    ("XDG_DATA_HOME", ".local/share"),
                ] {
                    driver.env(variable, folder.join(under));
                }
                (driver, Some(port))
            }),
        }
    }

    /// What is asked of the driver: a browser without a window to be seen, with its profile in the folder.
    pub fn capabilities(self, folder: &Path) -> Capabilities {
        let (key, options) = match self {
            Engine::Chromium => ("goog:chromeOptions", chromium(folder)),
            Engine::Firefox => ("moz:firefoxOptions", firefox(folder)),
            Engine::Webkit => ("webkitgtk:browserOptions", webkit(folder)),
        };
        let mut capabilities = Capabilities::new();
        capabilities.insert(key.to_owned(), options);
        capabilities
    }
}

/// Whether a test is for the engine of this run. Where it is not, the terminal says so and why: a test that was left
/// out shall not look like one that passed.
pub fn only_in(engines: &[Engine], why: &str) -> bool {
    let here = Engine::here();
    let meant = engines.contains(&here);
    if !meant {
        let thread = std::thread::current();
        let test = thread.name().unwrap_or("a test");
        // Not by a macro: what those print of a test that passes is kept back.
        let _ = writeln!(std::io::stderr(), "left out in {here:?}: {test}: {why}");
    }
    meant
}

/// A program that an environment variable names.
fn named(variable: &str) -> PathBuf {
    std::env::var_os(variable)
        .map(PathBuf::from)
        .unwrap_or_else(|| panic!("{variable} names a program"))
}

fn chromium(folder: &Path) -> Value {
    let flags = [
        "--headless=new",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--disable-dev-shm-usage",
        "--hide-scrollbars",
        "--autoplay-policy=user-gesture-required",
        "--window-size=390,844",
        // The lists below the address bar are pages of their own, which nobody sees here and a phone has not.
        "--disable-features=WebUIOmniboxPopup,WebUIOmniboxAimPopup",
    ];
    let mut args: Vec<String> = flags.iter().map(ToString::to_string).collect();
    args.push(format!("--user-data-dir={}", folder.display()));
    json!({
        "binary": named("STANCHION_CHROMIUM"),
        "args": args,
        "mobileEmulation": { "deviceMetrics": { "width": 390, "height": 844, "pixelRatio": 2.0, "touch": true } },
    })
}

fn firefox(folder: &Path) -> Value {
    let profile = folder.join("profile");
    std::fs::create_dir_all(&profile).expect("a profile folder can be made");
    json!({
        "binary": named("STANCHION_FIREFOX"),
        "args": ["-headless", "-profile", profile],
        "prefs": {
            // The question whether the page may keep its data is answered with yes.
            "dom.storageManager.prompt.testing": true,
            "dom.storageManager.prompt.testing.allow": true,
            // Downloads go to the folder, without a question or a panel.
            "browser.download.folderList": 2,
            "browser.download.dir": folder.join(DOWNLOADS),
            "browser.download.useDownloadDir": true,
            "browser.download.alwaysOpenPanel": false,
            "browser.download.always_ask_before_handling_new_types": false,
            "browser.helperApps.neverAsk.saveToDisk": "application/json,application/octet-stream",
            // A browser that was killed starts all the same, and does not bring its windows back.
            "toolkit.startup.max_resumed_crashes": -1,
            "browser.sessionstore.resume_from_crash": false,
            "app.update.disabledForTesting": true,
        },
    })
}

fn webkit(folder: &Path) -> Value {
    // Where a desktop's programs put downloads.
    let config = folder.join(".config");
    std::fs::create_dir_all(&config).expect("a folder can be made");
    let downloads = format!(
        "XDG_DOWNLOAD_DIR=\"{}\"\n",
        folder.join(DOWNLOADS).display()
    );
    std::fs::write(config.join("user-dirs.dirs"), downloads).expect("a file can be written");
    json!({ "binary": named("STANCHION_WEBKIT"), "args": ["--automation"] })
}
