//! Kills: a real browser with a profile that stays is driven by taps, killed outright at a random moment, and started
//! again. All that the screen said was saved must be there.
//!
//! A power cut is not tried: no program can. What is tried is what a phone does to a page many times a day.

mod app;
mod options;
mod page;
mod told;
mod tree;

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::thread;
use std::time::Duration;

use serde_json::Value;

use crate::say::{Failure, OrNext, Outcome, note, step};
use crate::serve::{Host, Options as Served};
use crate::setup::{Browser, Firefox, Tools};
use crate::webdriver::{Engine, Session};
use crate::{build, measure, places};

pub use options::{Kind, Options};
use told::Tally;

/// A browser is killed at the latest so long after it was seen to be well, in milliseconds.
const LATEST_MS: u64 = 3_000;

/// A driver may find its port taken by another program; then it is started again.
const STARTS: usize = 4;

/// What is driven, killed and looked at.
pub trait Subject {
    /// The folder to serve.
    fn folder(&self) -> &Path;
    /// A function body that waits until it runs and gives what is on disk and on screen.
    fn look(&self) -> String;
    /// A function body for one tap, `chance` being any number; it waits until the screen says saved, and gives what is
    /// then on disk and on screen.
    fn tap(&self, chance: u64) -> String;
    /// Reads what one of the two gave: each record under its id, or what does not agree with the screen.
    fn read(&self, seen: &Value) -> Result<BTreeMap<String, String>, String>;
}

/// What a series of kills came to.
#[derive(Debug, Default, Clone, Copy, PartialEq, Eq)]
pub struct Series {
    /// Kills.
    pub runs: u32,
    /// Records of which the screen said that they were saved.
    pub acknowledged: usize,
    /// Those of them that were not there after a kill, or not the same.
    pub lost: usize,
}

/// The command: builds the app unless only local storage is tried, and writes the figures.
pub fn run(options: &Options) -> Outcome<()> {
    if !options.local_storage_only && options.dir.is_none() {
        build::dist(&Tools::prepare()?)?;
    }
    let browsers = step("Browser", || Browsers::prepare(options.kind))?;
    let series = step("Kills", || series(&browsers, options))?;
    let figures = figures(options, series);
    step("Figures", || measure::add(&figures))?;
    judged(options, series)
}

/// A few kills, for the tests: the app loses nothing, and a page that trusts local storage is caught losing.
pub fn few(runs: u32) -> Outcome<()> {
    let browsers = Browsers::prepare(Kind::Chromium)?;
    let options = Options {
        runs,
        ..Options::default()
    };
    judged(&options, series(&browsers, &options)?)?;
    let careless = Options {
        runs: 2,
        local_storage_only: true,
        ..Options::default()
    };
    judged(&careless, series(&browsers, &careless)?)
}

fn judged(options: &Options, series: Series) -> Outcome<()> {
    let Series {
        runs,
        acknowledged,
        lost,
    } = series;
    note(format!(
        "{runs} kills, {acknowledged} records said to be saved, {lost} of them lost"
    ));
    match (options.local_storage_only, lost) {
        (false, 0) | (true, 1..) => Ok(()),
        (false, _) => Err(Failure::new(
            "what the screen said was saved was lost",
            format!(
                "run `cargo xtask torture --seed {}` and look at src/device/db",
                options.seed
            ),
        )),
        (true, 0) => Err(Failure::new(
            "a page that trusts local storage lost nothing: the kills do not bite",
            "look at xtask/src/torture/tree.rs: are all of the browser's processes killed?",
        )),
    }
}

fn figures(options: &Options, series: Series) -> BTreeMap<&'static str, f64> {
    let [runs, acknowledged, lost] = match (options.local_storage_only, options.kind) {
        (true, _) => [
            "kill.local_storage_runs",
            "kill.local_storage_acknowledged",
            "kill.local_storage_lost",
        ],
        (false, Kind::Chromium) => ["kill.runs", "kill.acknowledged", "kill.lost"],
        (false, Kind::Firefox) => [
            "kill.firefox_runs",
            "kill.firefox_acknowledged",
            "kill.firefox_lost",
        ],
    };
    BTreeMap::from([
        (runs, f64::from(series.runs)),
        (acknowledged, series.acknowledged as f64),
        (lost, series.lost as f64),
    ])
}

/// The browser to kill.
enum Browsers {
    Chromium(Browser),
    Firefox(Firefox),
}

impl Browsers {
    fn prepare(kind: Kind) -> Outcome<Self> {
        Ok(match kind {
            Kind::Chromium => Self::Chromium(Browser::prepare()?),
            Kind::Firefox => Self::Firefox(Firefox::prepare()?),
        })
    }

    fn engine(&self, profile: &Path) -> Outcome<Engine> {
        match self {
            Self::Chromium(browser) => Ok(Engine::chromium(browser, profile)),
            Self::Firefox(firefox) => Engine::firefox(firefox, profile),
        }
    }

    /// Opens the browser on its profile.
    fn open(&self, profile: &Path) -> Outcome<Session> {
        let mut tries = 1;
        loop {
            match self.engine(profile).and_then(Session::stay) {
                Err(failure) if tries < STARTS => {
                    note(format!("the browser is started again: {}", failure.what));
                    tries += 1;
                }
                answer => return answer,
            }
        }
    }
}

/// A profile folder of this process's own; gone at the end.
struct Profile(PathBuf);

impl Profile {
    fn new() -> Outcome<Self> {
        let folder = places::target(&format!("torture-profile-{}", std::process::id()));
        fs::remove_dir_all(&folder).ok();
        fs::create_dir_all(&folder).or_next(
            "making a browser profile",
            "check that target/ can be written",
        )?;
        Ok(Self(folder))
    }

    /// What a killed browser left locked is free again.
    fn unlock(&self) {
        for lock in [
            "SingletonLock",
            "SingletonCookie",
            "SingletonSocket",
            ".parentlock",
            "lock",
        ] {
            fs::remove_file(self.0.join(lock)).ok();
        }
    }
}

impl Drop for Profile {
    fn drop(&mut self) {
        fs::remove_dir_all(&self.0).ok();
    }
}

/// Kills so often, and looks after each.
fn series(browsers: &Browsers, options: &Options) -> Outcome<Series> {
    let subject: Box<dyn Subject> = if options.local_storage_only {
        Box::new(page::Page::new()?)
    } else {
        Box::new(app::App(options.dir.clone().unwrap_or_else(places::dist)))
    };
    let folder = subject.folder().to_string_lossy().into_owned();
    let host = Host::open(&Served::parse(&["--port", "0", "--dir", &folder])?)?;
    let address = host.address()?;
    thread::spawn(move || host.answer());
    let profile = Profile::new()?;
    let mut chance = oorandom::Rand64::new(u128::from(options.seed));
    let mut tally = Tally::default();
    note(format!("seed {}", options.seed));
    for run in 0..=options.runs {
        let mut session = browsers.open(&profile.0)?;
        session.open(&address)?;
        let seen = session.ask_later(&subject.look())?;
        let lost = tally.found(&subject.read(&seen).map_err(disagrees)?);
        if lost > 0 && !options.local_storage_only {
            note(format!("kill {run}: {lost} records lost"));
        }
        if run == options.runs {
            break;
        }
        let after = chance.rand_range(0..LATEST_MS);
        if run % 10 == 0 {
            let told = tally.told();
            note(format!("kill {} after {after} ms; {told} saved", run + 1));
        }
        drive(&session, subject.as_ref(), &mut tally, &mut chance, after)?;
        session.forget_browser();
        drop(session);
        profile.unlock();
    }
    Ok(Series {
        runs: options.runs,
        acknowledged: tally.acknowledged(),
        lost: tally.lost(),
    })
}

fn disagrees(what: String) -> Failure {
    Failure::new(
        what,
        "run it again with the seed that is printed above, and open the app with `cargo xtask serve`",
    )
}

/// Taps until the browser is killed under it, `after` so many milliseconds.
fn drive(
    session: &Session,
    subject: &dyn Subject,
    tally: &mut Tally,
    chance: &mut oorandom::Rand64,
    after: u64,
) -> Outcome<()> {
    let driver = session.driver_id();
    let killer = thread::spawn(move || {
        thread::sleep(Duration::from_millis(after));
        tree::kill_below(driver)
    });
    while !killer.is_finished() {
        // The answer to the tap under which the browser dies never comes: nothing was said to be saved.
        let Ok(seen) = session.ask_later(&subject.tap(chance.rand_range(0..1_000))) else {
            break;
        };
        tally.said(subject.read(&seen).map_err(disagrees)?);
    }
    killer
        .join()
        .map_err(|_| disagrees("the browser could not be killed".to_owned()))?
}
