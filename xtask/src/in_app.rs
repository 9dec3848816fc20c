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

/// Waits until this page may write.
const WRITES: &str = "
    (async () => {
      for (;;) {
        const who = async () => {
          const { held, pending } = await navigator.locks.query();
          return held.length === 1 && pending.length === 0 ? held[0].clientId : null;
        };
        const before = await who();
        // The one that is gone lets go within this.
        await new Promise((later) => setTimeout(later, 1500));
        if (before !== null && before === await who()) return done(true);
      }
    })();";

/// Opens the app from a host of its own and waits until it runs; gives its address too.
pub fn open(browser: &Browser) -> Outcome<(Session, String)> {
    let address = another()?;
    let session = Session::start(browser)?;
    session.open(&address)?;
    once_ready(&session)?;
    Ok((session, address))
}

/// Serves the app from one more host: to a browser it is another app, with nothing stored.
pub fn another() -> Outcome<String> {
    served(places::dist())
}

/// Serves a folder that holds an app from one more host.
pub fn served(folder: PathBuf) -> Outcome<String> {
    let host = Host::open(&Options::of(folder))?;
    let address = host.address()?;
    thread::spawn(move || host.answer());
    Ok(address)
}

/// Opens the app again in the same browser and waits until it may write.
pub fn again(session: &Session, address: &str) -> Outcome<()> {
    session.open("about:blank")?;
    session.open(address)?;
    once_ready(session)?;
    // The page of before may hold the lock of the writer a moment longer, and nothing is written meanwhile.
    ask_in(session, WRITES).map(drop)
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
