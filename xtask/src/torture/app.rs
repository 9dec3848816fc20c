//! The app under kills: its taps, and its screen held against the fold of what is on disk.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use serde_json::Value;
use stanchion::json::{Misread, parse, text};
use stanchion::session::{Event, Session, Status};
use stanchion::store::{SessionLog, open};

use super::Subject;

/// What both scripts begin with. `seen` gives what is on disk (by a connection of its own) and on screen.
const BEGIN: &str = "
    const done = arguments[0];
    const part = (name) => document.querySelector(`[data-part=\"${name}\"]`);
    const until = async (look) => {
      for (;;) {
        const it = look();
        if (it) return it;
        await new Promise((go) => setTimeout(go, 2));
      }
    };
    const asked = (request) => new Promise((good, bad) => {
      request.onsuccess = () => good(request.result);
      request.onerror = () => bad(request.error);
    });
    const saved = () => part('place') && !document.querySelector('[data-unsaved]') && !part('not-kept')
      && !part('not-saved') && (part('saved')?.innerText ?? 'saved').trim() === 'saved';
    const seen = async () => {
      const db = await asked(indexedDB.open('stanchion'));
      const store = (name) => db.transaction(name).objectStore(name);
      const events = await asked(store('events').getAll());
      const sessions = await asked(store('sessions').getAll());
      db.close();
      const marks = [...document.querySelectorAll('.notch')].map((one) => one.className.split(' ')[1]);
      const exercise = (part('next-exercise') ?? part('exercise'))?.innerText ?? null;
      return JSON.stringify({ events, sessions, marks, exercise, on: part('floor') !== null });
    };";

/// Waits for the app, goes through the first start, and looks.
const LOOK: &str = "
    (async () => {
      await until(() => performance.getEntriesByName('stanchion-ready').length);
      part('welcome-open')?.click();
      await until(saved);
      await until(() => part('floor') || part('choose') || part('finish'));
      done(await seen());
    })();";

/// One tap on what is there. Two rounds of the browser later the screen has followed; then it is waited until it says
/// that all is saved.
const TAP: &str = "
    (async () => {
      const settled = () => document.querySelectorAll('.notch.done, .notch.skipped').length;
      const click = async (name) => {
        part(name)?.click();
        for (let turn = 0; turn < 2; turn += 1) await new Promise((go) => setTimeout(go, 0));
      };
      // The pad takes a tap right after another for a slip: it is given again, as a person would.
      const press = async (name) => {
        const before = settled();
        while (part(name) && settled() === before) await click(name);
      };
      const often = (share) => chance % 100 < share;
      if (part('load-use')) { await click('load-step-more'); await click('load-use'); }
      else if (part('more-panel')) await click(often(50) ? 'skip' : 'panel-close');
      else if (part('panel-close')) await click('panel-close');
      else if (part('choose')) await click('begin');
      else if (part('finish')) await click(often(50) ? 'rpe-7' : 'put-away');
      else if (part('ledger')) await click('go-floor');
      else if (part('end')) { while (part('end')) await click('end'); }
      else if (part('rest-end')) await click('rest-end');
      else if (part('begin-set')) await click(often(10) ? 'undo-set' : often(40) ? 'rest-less' : 'rest-hold');
      else if (often(70)) await press('log');
      else if (often(85)) await click('reps-less');
      else if (often(95)) await click('reps-more');
      else await click('more');
      await until(saved);
      done(await seen());
    })();";

/// The built app, in its folder.
pub struct App(pub PathBuf);

impl Subject for App {
    fn folder(&self) -> &Path {
        &self.0
    }

    fn look(&self) -> String {
        format!("{BEGIN}{LOOK}")
    }

    fn tap(&self, chance: u64) -> String {
        format!("{BEGIN}const chance = {chance};{TAP}")
    }

    fn read(&self, seen: &Value) -> Result<BTreeMap<String, String>, String> {
        let seen = seen.as_str().ok_or("the app gave no text")?;
        let seen: Value = serde_json::from_str(seen).map_err(|error| error.to_string())?;
        let floor: Vec<Event> = rows(&seen["events"], parse)?;
        let ended: Vec<SessionLog> = rows(&seen["sessions"], parse)?;
        agrees(&floor, &seen)?;
        let ended = ended.iter().flat_map(SessionLog::events);
        let all = floor.into_iter().chain(ended);
        Ok(all
            .map(|event| (event.id.0.to_string(), text(&event)))
            .collect())
    }
}

/// Rows of a shelf as records; any that cannot be read is a fault.
fn rows<T>(rows: &Value, read: impl Fn(&str) -> Result<T, Misread>) -> Result<Vec<T>, String> {
    let rows = rows.as_array().ok_or("the app gave no rows")?;
    rows.iter()
        .map(|row| {
            let row = row.as_str().ok_or("a row is no text")?;
            let json = open(row).map_err(|error| error.to_string())?;
            read(json).map_err(|fault| fault.to_string())
        })
        .collect()
}

/// Whether the screen shows what the events on disk fold to: each set's mark, which one is next, and its exercise.
fn agrees(events: &[Event], seen: &Value) -> Result<(), String> {
    let on_screen: Vec<&str> = seen["marks"]
        .as_array()
        .map(|marks| marks.iter().filter_map(Value::as_str).collect())
        .unwrap_or_default();
    if events.is_empty() {
        return if seen["on"] == Value::Bool(true) {
            Err("a session is on the floor, and none of its events is on disk".to_owned())
        } else {
            Ok(())
        };
    }
    let session = Session::replay(events.to_vec()).map_err(|refusal| refusal.to_string())?;
    let state = session.state();
    let current = state.current();
    let folded: Vec<&str> = state
        .slots
        .iter()
        .map(|slot| match &slot.status {
            Status::Done(_) => "done",
            Status::Skipped => "skipped",
            Status::Pending if current == Some(slot) => "now",
            Status::Pending => "ahead",
        })
        .collect();
    if folded != on_screen {
        return Err(format!(
            "the screen shows {on_screen:?}, what is on disk comes to {folded:?}"
        ));
    }
    let exercise = current.map(|slot| state.block_of(slot).exercise.name.to_string());
    let shown = seen["exercise"].as_str();
    match (exercise, shown) {
        (Some(exercise), Some(shown)) if !shown.trim().starts_with(&exercise) => Err(format!(
            "the board shows {shown:?}, and the next set on disk is of {exercise:?}"
        )),
        _ => Ok(()),
    }
}
