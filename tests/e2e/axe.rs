//! Every screen in every look by axe-core: nothing is broken, and what it could not tell is known and judged.

use super::browser::Browser;
use super::engine::{Engine, only_in};
use super::looks::resize;
use super::person::Person;
use super::server::Server;
use fantoccini::wd::TimeoutConfiguration;
use serde_json::Value;
use std::time::Duration;

/// The walk through the screens, which `cargo xtask measure` takes too.
pub const WALK: &str = include_str!("axe_walk.js");

/// All rules are asked in the first look, those that depend on colours in the others too.
const LOOKS: [&str; 4] = ["dark", "light", "sun", "night"];

/// Height of the window: that of the longest page and more.
const TALL: u32 = 16_000;

/// What axe-core cannot tell by itself: beginning of the rule, a part of the element's selector, a part of its words.
const JUDGED: [(&str, &str, &str); 12] = [
    // The signs − and + of a stepper: axe-core takes them for no text. They have a text's tokens, and those have 7:1 in
    // every look (`tests/looks.rs`; on the floor `tests/e2e/sight.rs` measures them).
    ("color-contrast", "-less\"]", "only non-text characters"),
    ("color-contrast", "-more\"]", "only non-text characters"),
    // The signs ‹ and › beside a month or a week, and their names: "month before", "week after". As above.
    ("color-contrast", "-before\"]", "only non-text characters"),
    ("color-contrast", "-after\"]", "only non-text characters"),
    (
        "label-content-name-mismatch",
        "-before\"]",
        "Unable to determine",
    ),
    (
        "label-content-name-mismatch",
        "-after\"]",
        "Unable to determine",
    ),
    // The names of those signs: "one rep more", "less rest". A sign is no word that one could say (WCAG 2.5.3, note 1).
    (
        "label-content-name-mismatch",
        "-less\"]",
        "Unable to determine",
    ),
    (
        "label-content-name-mismatch",
        "-more\"]",
        "Unable to determine",
    ),
    // The table behind a picture is scrolled sideways where it is wide: what is out of sight cannot be looked at, and has the
    // tokens of every text. A rating is one digit.
    ("color-contrast", "th[scope=\"col\"]", "partially obscured"),
    ("color-contrast", "td[data-head=\"RPE\"]", "too short"),
    // Covered on purpose while nothing is below; its tokens are those of every text.
    ("color-contrast", ".floor-more", "overlapped by another"),
    // Masses on drawn plates, which lie over a shape of the same drawing: `tests/e2e/sight.rs` measures them, 7:1.
    ("color-contrast", "", PLATE),
];

/// What axe-core says of the masses on the plates, put into words by `lines`.
const PLATE: &str = "on a drawing";

/// Runs a promise in the page and gives what it gives.
pub async fn promised(person: &Person, promise: &str) -> Value {
    let script = format!(
        "const done = arguments[arguments.length - 1];
         {promise}.then((said) => done({{ said: said ?? true }}), (error) => done({{ failed: String(error) }}));"
    );
    let answer = person
        .client
        .execute_async(&script, vec![])
        .await
        .expect("the script runs");
    assert!(
        answer["failed"].is_null(),
        "{promise}: {}",
        answer["failed"]
    );
    answer["said"].clone()
}

/// The elements of one list of axe-core's answer, each in a line.
fn lines(found: &Value, list: &str, look: &str) -> Vec<String> {
    let name = found["name"].as_str().unwrap_or_default();
    let nodes = found[list].as_array().expect("axe-core gives a list");
    let text = |value: &Value| value.as_str().unwrap_or_default().to_owned();
    let judged = |node: &Value| {
        JUDGED.iter().any(|(rule, at, words)| {
            text(&node["rule"]).starts_with(rule)
                && text(&node["at"]).contains(at)
                && (text(&node["why"]).contains(words) || *words == PLATE && node["drawn"] == true)
        })
    };
    nodes
        .iter()
        .filter(|node| list == "violations" || !judged(node))
        .map(|node| {
            let (rule, at, why) = (text(&node["rule"]), text(&node["at"]), text(&node["why"]));
            format!("{name}, {look}: {rule} at {at}: {why}")
        })
        .collect()
}

#[tokio::test]
async fn axe_finds_nothing_on_any_screen_in_any_look() {
    if !only_in(
        &[Engine::Chromium],
        "only Chromium's devtools give the window every size and look",
    ) {
        return;
    }
    let path = std::env::var("STANCHION_AXE").expect(
        "STANCHION_AXE names axe.min.js of axe-core; `cargo xtask test` fetches it from npm and sets it",
    );
    let axe = std::fs::read_to_string(&path).expect("axe.min.js can be read");
    let server = Server::start();
    let browser = Browser::start("axe");
    let person = Person::open(&browser, &server).await;
    let patience = TimeoutConfiguration::new(Some(Duration::from_secs(60)), None, None);
    person
        .client
        .update_timeouts(patience)
        .await
        .expect("the driver takes a timeout");
    // So high that nothing is scrolled under something else, where axe-core cannot see it.
    resize(&person, 390, TALL).await;
    person.see("welcome").await;
    // Through the driver: the page's own policy lets no foreign script in.
    person.run(&axe).await;
    person.run(WALK).await;
    let names = person.run("return axeWalk.names").await;
    let screens = names.as_array().expect("the walk names screens").len();
    assert!(screens > 30, "the walk goes to {screens} screens");
    let (mut broken, mut untold) = (Vec::new(), Vec::new());
    for at in 0..screens {
        promised(&person, &format!("axeWalk.go({at})")).await;
        for (place, look) in LOOKS.iter().enumerate() {
            let check = format!("axeWalk.check({at}, '{look}', {})", place == 0);
            let found = promised(&person, &check).await;
            assert!(found["passed"].as_u64() > Some(0), "{found}");
            broken.extend(lines(&found, "violations", look));
            untold.extend(lines(&found, "incomplete", look));
        }
    }
    assert!(
        broken.is_empty() && untold.is_empty(),
        "broken:\n{}\naxe-core could not tell; judge each and mend it or name it in JUDGED:\n{}",
        broken.join("\n"),
        untold.join("\n")
    );
    person.close().await;
}
