//! The built app, opened in a browser for a measurement.

use std::path::PathBuf;
use std::thread;

use serde_json::Value;

use crate::measure::once_ready;
use crate::places;
use crate::say::Outcome;
use crate::serve::{Host, Options};
use crate::setup::Browser;
use crate::webdriver::Session;

/// What every script that drives the app begins with: `done` ends it, and `seen` waits until there is what it looks for.
const BEGIN: &str = "
    const done = arguments[0];
    const seen = async (look) => {
      for (;;) {
        const it = look();
        if (it) return it;
        await new Promise(requestAnimationFrame);
      }
    };";

/// Opens the app from a host of its own and waits until it runs; gives its address too.
pub fn open(browser: &Browser) -> Outcome<(Session, String)> {
    open_from(browser, places::dist())
}

/// The same of another folder that holds an app.
pub fn open_from(browser: &Browser, folder: PathBuf) -> Outcome<(Session, String)> {
    let host = Host::open(&Options::of(folder))?;
    let address = host.address()?;
    thread::spawn(move || host.answer());
    let session = Session::start(browser)?;
    session.open(&address)?;
    once_ready(&session)?;
    Ok((session, address))
}

/// Runs a script in the app that is new to this browser, and gives what it says when it is done.
pub fn ask(browser: &Browser, script: &str) -> Outcome<Value> {
    let (session, _) = open(browser)?;
    ask_in(&session, script)
}

/// The same in an app that is open already.
pub fn ask_in(session: &Session, script: &str) -> Outcome<Value> {
    session.ask_later(&format!("{BEGIN}{script}"))
}
