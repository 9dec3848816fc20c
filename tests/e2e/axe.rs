//! Every screen in every look by axe-core: nothing is broken, and what it could not tell is known and judged.

use super::browser::Browser;
use super::person::Person;
use super::server::Server;
use fantoccini::wd::TimeoutConfiguration;
use serde_json::Value;
use std::time::Duration;

/// The walk through the screens, which `cargo xtask measure` takes too.
const WALK: &str = include_str!("axe_walk.js");

/// All rules are asked in the first look, those that hang on colours in the others too.
const LOOKS: [&str; 4] = ["dark", "light", "sun", "night"];

/// What axe-core cannot tell by itself, and why it is well: rule, a part of its words, judgement.
const JUDGED: [(&str, &str, &str); 0] = [];

/// Runs a promise in the page and gives what it gives.
async fn promised(person: &Person, promise: &str) -> Value {
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
        JUDGED
            .iter()
            .any(|(rule, words, _)| node["rule"] == *rule && text(&node["why"]).contains(words))
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
