//! What a tap on the floor costs, in the built app: taps a set, and milliseconds from a tap to its picture and to the disk.

use serde_json::{Value, json};

use crate::in_app;
use crate::measure::{Figures, SLOWDOWN, slow};
use crate::say::{Failure, Outcome, note};
use crate::setup::Browser;
use crate::webdriver::Session;

/// How often a set is logged and taken back; every tap of it counts.
const ROUNDS: usize = 100;

/// In how many turns two apps are tapped one after the other, and how many rounds make a turn: what else the machine does
/// falls on both.
const TURNS: usize = 5;
const TURN_ROUNDS: usize = 40;

/// Begins a sheet of the demo on a clock that can be put on, so that no rest is waited for.
const BEGIN: &str = "
    const part = (name) => document.querySelector(`[data-part=\"${name}\"]`);
    window.passed = 0;
    window.real = performance.now.bind(performance);
    performance.now = () => window.real() + window.passed;
    (async () => {
      const welcome = await seen(() => part('welcome-open') ?? part('choose'));
      welcome.matches('button') && welcome.click();
      (await seen(() => document.querySelector('[aria-label^=\"Lower A begin\"]'))).click();
      await seen(() => part('log'));
      done(true);
    })();";

/// Writes down, of every tap, the milliseconds to the frame after it and, of one that logs, to the word that it is saved.
const WATCH: &str = "
    window.painted = [];
    window.saved = [];
    // The browser tells of tasks of the main thread that take more than 50 ms, and of no others.
    window.long = [];
    new PerformanceObserver((list) => window.long.push(...list.getEntries().map((task) => task.duration)))
      .observe({ type: 'longtask' });
    let logged = null;
    addEventListener('click', (event) => {
      const at = event.timeStamp;
      if (event.target.closest('[data-part=log]')) logged = at;
      requestAnimationFrame(() => {
        // A message that is posted in a frame arrives after the frame was painted.
        const after = new MessageChannel();
        after.port1.onmessage = () => window.painted.push(window.real() - at);
        after.port2.postMessage(0);
      });
    }, true);
    new MutationObserver(() => {
      const said = document.querySelector('[data-part=saved]')?.textContent;
      if (logged !== null && said === 'saved') {
        window.saved.push(window.real() - logged);
        logged = null;
      }
    }).observe(document.body, { subtree: true, childList: true, characterData: true });
    return true;";

/// Logs every set that is left as it is planned and gives the taps that took and the sets; rests are let pass.
const PLANNED: &str = "
    const part = (name) => document.querySelector(`[data-part=\"${name}\"]`);
    const sets = document.querySelectorAll('.notch').length;
    let taps = 0;
    (async () => {
      while (!part('end')) {
        const log = part('log');
        // As long as a set and its rest: the pad of the next one is there.
        window.passed += 600000;
        if (log) {
          log.click();
          taps += 1;
          if (taps > 3 * sets) return done('the session never ends');
        }
        await new Promise(requestAnimationFrame);
      }
      const logged = document.querySelectorAll('.notch.done').length;
      done(logged === sets ? [taps, sets] : `${logged} of ${sets} sets were logged`);
    })();";

/// Taps a set that is done as planned, and the time of a tap to the disk on a processor slowed four times.
pub fn figures(browser: &Browser) -> Outcome<Figures> {
    let (session, _) = in_app::open(browser)?;
    let mut taps = Taps::begin(&session)?;
    taps.rounds(ROUNDS)?;
    let saved = times(&session, "saved")?;
    note(format!("{} taps logged a set", saved.len()));
    let long = times(&session, "long")?;
    note(format!("tasks of more than 50 ms: {long:?}"));
    slow(&session, 1)?;
    let planned = in_app::ask_in(&session, PLANNED)?;
    let pair = planned[0].as_f64().zip(planned[1].as_f64());
    let (taps, sets) = pair.ok_or_else(|| wrong(&format!("the session says {planned}")))?;
    Ok(Figures::from([
        ("floor.taps_per_planned_set", taps / sets),
        ("floor.long_tasks", long.len() as f64),
        ("tap.saved_p95_ms", percentile_95(saved)),
    ]))
}

/// The time from a tap to its picture in apps of one browser, in turns; each is on its floor with no session under way.
/// The one that waits is hidden and not slowed, so that it takes no time from the other.
pub fn painted(session: &Session, addresses: &[&str]) -> Outcome<Vec<f64>> {
    let mut tabs = Vec::new();
    for address in addresses {
        let tab = session.new_tab()?;
        session.show(&tab)?;
        in_app::again(session, address)?;
        tabs.push((tab, Taps::begin(session)?));
        slow(session, 1)?;
    }
    for _ in 0..TURNS {
        for (tab, taps) in &mut tabs {
            session.show(tab)?;
            slow(session, SLOWDOWN)?;
            taps.rounds(TURN_ROUNDS)?;
            slow(session, 1)?;
        }
    }
    let mut painted = Vec::new();
    for (tab, _) in &tabs {
        session.show(tab)?;
        painted.push(percentile_95(times(session, "painted")?));
    }
    Ok(painted)
}

/// A set that is logged and taken back again and again, on a processor slowed four times. The app writes down the
/// milliseconds to the picture of every tap, and to the disk of those that log.
struct Taps<'s> {
    session: &'s Session,
    rounds: usize,
}

impl<'s> Taps<'s> {
    fn begin(session: &'s Session) -> Outcome<Self> {
        in_app::ask_in(session, BEGIN)?;
        session.ask(WATCH)?;
        slow(session, SLOWDOWN)?;
        Ok(Self { session, rounds: 0 })
    }

    fn rounds(&mut self, more: usize) -> Outcome<()> {
        for round in self.rounds..self.rounds + more {
            tap(self.session, "log", 2 * round + 1)?;
            let saved = format!("window.saved.length === {}", round + 1);
            until(self.session, &saved)?;
            tap(self.session, "undo-set", 2 * round + 2)?;
        }
        self.rounds += more;
        Ok(())
    }
}

fn wrong(what: &str) -> Failure {
    Failure::new(
        what,
        "open the app with `cargo xtask serve` and log a set by hand",
    )
}

/// Taps a part as a finger does, through the browser's own input, and waits until so many frames are painted.
fn tap(session: &Session, part: &str, painted: usize) -> Outcome<()> {
    until(
        session,
        &format!("!!document.querySelector('[data-part={part}]')"),
    )?;
    // Taps right after each other would be taken for slips.
    let at = session.ask(&format!(
        "window.passed += 1000;
         const box = document.querySelector('[data-part={part}]').getBoundingClientRect();
         return [box.x + box.width / 2, box.y + box.height / 2];"
    ))?;
    for kind in ["mousePressed", "mouseReleased"] {
        let event =
            json!({ "type": kind, "x": at[0], "y": at[1], "button": "left", "clickCount": 1 });
        session.devtools("Input.dispatchMouseEvent", &event)?;
    }
    until(session, &format!("window.painted.length === {painted}"))
}

/// Waits until a condition holds.
fn until(session: &Session, condition: &str) -> Outcome<()> {
    let script = format!(
        "const done = arguments[0];
         const look = () => ({condition}) ? done(true) : requestAnimationFrame(look);
         look();"
    );
    session.ask_later(&script).map(drop)
}

fn times(session: &Session, name: &str) -> Outcome<Vec<f64>> {
    let times = session.ask(&format!("return window.{name}"))?;
    let times = times
        .as_array()
        .map(|all| all.iter().filter_map(Value::as_f64).collect());
    times.ok_or_else(|| wrong(&format!("no times of what is {name}")))
}

/// The time that 95 of 100 do not exceed: the nearest rank.
fn percentile_95(mut times: Vec<f64>) -> f64 {
    times.sort_by(f64::total_cmp);
    let rank = (times.len() * 95).div_ceil(100);
    times
        .get(rank.saturating_sub(1))
        .copied()
        .unwrap_or(f64::NAN)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn of_a_hundred_times_five_may_be_longer() {
        let hundred: Vec<f64> = (1..=100).rev().map(f64::from).collect();
        assert_eq!(percentile_95(hundred), 95.0);
        assert_eq!(percentile_95(vec![7.0]), 7.0);
        assert_eq!(percentile_95(vec![1.0, 2.0, 3.0]), 3.0);
    }
}
