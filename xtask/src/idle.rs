//! What a rest costs while nobody touches the phone: processor time of the main thread.

use std::thread;
use std::time::{Duration, Instant};

use serde_json::{Value, json};

use crate::in_app;
use crate::measure::metric;
use crate::say::{Failure, Outcome};
use crate::setup::Browser;
use crate::webdriver::Session;

/// How long the rest is watched.
const WATCHED: Duration = Duration::from_secs(60);

/// What is drawn after the last tap is over by then.
const SETTLING: Duration = Duration::from_secs(3);

/// Begins the first sheet, logs a set and makes its rest longer than it is watched. Gives whether a rest runs.
const TO_REST: &str = "
    const part = (name) => document.querySelector(`[data-part=\"${name}\"]`);
    const tap = async (name) => (await seen(() => part(name))).click();
    (async () => {
      await tap('welcome-open');
      await tap('begin');
      await tap('log');
      for (let steps = 0; steps < 8; steps += 1) await tap('rest-more');
      await seen(() => part('saved').innerText === 'saved');
      done(part('rest') !== null);
    })();";

/// Milliseconds of the main thread in each second of a rest.
pub fn of_rest(browser: &Browser) -> Outcome<f64> {
    let (session, _) = in_app::open(browser)?;
    if in_app::ask_in(&session, TO_REST)? != Value::Bool(true) {
        return Err(Failure::new(
            "no rest began",
            "open the app with `cargo xtask serve` and log a set",
        ));
    }
    // In time of the thread: what else runs on the machine makes it no longer.
    session.devtools(
        "Performance.enable",
        &json!({ "timeDomain": "threadTicks" }),
    )?;
    thread::sleep(SETTLING);
    let begun = Instant::now();
    let before = busy_seconds(&session)?;
    thread::sleep(WATCHED);
    let after = busy_seconds(&session)?;
    Ok((after - before) * 1000.0 / begun.elapsed().as_secs_f64())
}

/// Seconds that the main thread was busy so far.
fn busy_seconds(session: &Session) -> Outcome<f64> {
    let said = session.devtools("Performance.getMetrics", &json!({}))?;
    metric(&said, "TaskDuration").ok_or_else(|| {
        Failure::new(
            "the browser tells no TaskDuration",
            "use a Chromium of this year",
        )
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_metric_is_found_by_its_name() {
        let said = json!({ "metrics": [
            { "name": "Nodes", "value": 5 }, { "name": "TaskDuration", "value": 0.25 }
        ] });
        assert_eq!(metric(&said, "TaskDuration"), Some(0.25));
        assert_eq!(metric(&said, "ScriptDuration"), None);
    }
}
