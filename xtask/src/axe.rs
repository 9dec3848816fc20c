//! What axe-core finds on every screen in every look of the built app.

use std::fs;

use serde_json::{Value, json};

use crate::in_app;
use crate::say::{Failure, OrNext, Outcome, note};
use crate::setup::{Browser, axe};

/// The walk through the screens, which the end-to-end tests take too.
const WALK: &str = include_str!("../../tests/e2e/axe_walk.js");

/// The looks. All rules are asked in the first, those that depend on colours in the others too.
const LOOKS: [&str; 4] = ["dark", "light", "sun", "night"];

/// How many elements break a rule, summed over all screens and looks; each is named in a line.
pub fn violations(browser: &Browser) -> Outcome<f64> {
    let file = axe::prepare()?;
    let script =
        fs::read_to_string(&file).or_next("reading axe-core", "delete its folder and run again")?;
    let (session, _) = in_app::open(browser)?;
    // A phone's width, and so high that nothing is scrolled under something else, where axe-core cannot see it.
    let window = json!({ "width": 390, "height": 16_000, "deviceScaleFactor": 1, "mobile": true });
    session.devtools("Emulation.setDeviceMetricsOverride", &window)?;
    // Through the driver: the page's own policy lets no foreign script in.
    session.ask(&script)?;
    session.ask(WALK)?;
    let names = session.ask("return axeWalk.names")?;
    let names = names.as_array().map(Vec::as_slice).unwrap_or_default();
    if names.is_empty() {
        return Err(Failure::new(
            "the walk names no screens",
            "look at tests/e2e/axe_walk.js",
        ));
    }
    let mut found = 0;
    for (at, name) in names.iter().enumerate() {
        asked(
            &session.ask_later(&later(&format!("axeWalk.go({at})")))?,
            name,
        )?;
        for (place, look) in LOOKS.iter().enumerate() {
            let check = format!("axeWalk.check({at}, '{look}', {})", place == 0);
            let said = session.ask_later(&later(&check))?;
            let said = asked(&said, name)?;
            let broken = said["violations"].as_array().ok_or_else(|| {
                Failure::new(
                    format!("axe-core gave no answer for {name}: {said}"),
                    "look at tests/e2e/axe_walk.js",
                )
            })?;
            for one in broken {
                note(format!("{name}, {look}: {} at {}", one["rule"], one["at"]));
            }
            found += broken.len();
        }
    }
    note(format!("{} screens, {} looks", names.len(), LOOKS.len()));
    Ok(found as f64)
}

/// A script that answers with what a promise gives, or with its error.
fn later(promise: &str) -> String {
    format!(
        "const done = arguments[arguments.length - 1];
         {promise}.then((said) => done({{ said: said ?? true }}), (error) => done({{ failed: String(error) }}));"
    )
}

/// What the promise gave.
fn asked<'a>(answer: &'a Value, name: &Value) -> Outcome<&'a Value> {
    match answer.get("said") {
        Some(said) => Ok(said),
        _ => Err(Failure::new(
            format!("the walk stopped at {name}: {}", answer["failed"]),
            "run the end-to-end test `axe` and look at the screen",
        )),
    }
}
