//! A whole session by roles and names alone, as a screen reader has them: nothing is found by its hook or its look.

use super::browser::{Browser, devtools};
use super::engine::{Engine, only_in};
use super::person::Person;
use super::server::Server;
use super::whole_session::{begin, log};
use serde_json::{Value, json};
use std::time::{Duration, Instant};

/// Longest wait for anything to appear.
const PATIENCE: Duration = Duration::from_secs(20);

/// A node of the tree that the browser gives to screen readers.
struct Node {
    name: String,
    dom: i64,
}

/// All nodes of a role, in the order of the page; none while the page changes under the question.
async fn read(person: &Person, role: &str) -> Option<Vec<Node>> {
    let ask = |command, params| devtools(&person.client, command, params);
    let document = ask("DOM.getDocument", json!({ "depth": 0 })).await.ok()?;
    let asked = json!({ "nodeId": document["root"]["nodeId"], "role": role });
    let found = ask("Accessibility.queryAXTree", asked).await.ok()?;
    let nodes = found["nodes"].as_array().cloned().unwrap_or_default();
    let heard = nodes.iter().filter(|node| node["ignored"] != json!(true));
    let named = heard.filter_map(|node| {
        Some(Node {
            name: node["name"]["value"].as_str()?.to_owned(),
            dom: node["backendDOMNodeId"].as_i64()?,
        })
    });
    Some(named.collect())
}

/// The same, asked again where the browser lost a node between question and answer.
async fn nodes(person: &Person, role: &str) -> Vec<Node> {
    let since = Instant::now();
    loop {
        if let Some(nodes) = read(person, role).await {
            return nodes;
        }
        assert!(
            since.elapsed() < PATIENCE,
            "the browser never says its tree"
        );
        tokio::task::yield_now().await;
    }
}

/// The first of a role whose name begins with `name`, if it is there now.
async fn has(person: &Person, role: &str, name: &str) -> Option<i64> {
    let all = nodes(person, role).await;
    all.iter()
        .find(|node| node.name.starts_with(name))
        .map(|node| node.dom)
}

/// Waits for it.
async fn find(person: &Person, role: &str, name: &str) -> i64 {
    let since = Instant::now();
    loop {
        if let Some(dom) = has(person, role, name).await {
            return dom;
        }
        if since.elapsed() > PATIENCE {
            let names: Vec<String> = nodes(person, role)
                .await
                .into_iter()
                .map(|node| node.name)
                .collect();
            panic!("no {role} “{name}” among {names:?}");
        }
        tokio::task::yield_now().await;
    }
}

/// Does to it what a screen reader does when it is activated. False where it has gone meanwhile.
async fn activate(person: &Person, dom: i64) -> bool {
    let asked = json!({ "backendNodeId": dom });
    let Ok(object) = devtools(&person.client, "DOM.resolveNode", asked).await else {
        return false;
    };
    let call = json!({
        "objectId": object["object"]["objectId"],
        "functionDeclaration": "function () { this.click(); }",
    });
    let called = devtools(&person.client, "Runtime.callFunctionOn", call).await;
    called.is_ok_and(|said: Value| said["exceptionDetails"].is_null())
}

/// Finds it and activates it.
async fn choose(person: &Person, role: &str, name: &str) {
    for _ in 0..5 {
        let dom = find(person, role, name).await;
        if activate(person, dom).await {
            return;
        }
    }
    panic!("{role} “{name}” cannot be activated");
}

#[tokio::test]
async fn a_whole_session_by_roles_and_names_alone() {
    if !only_in(
        &[Engine::Chromium],
        "roles and names are read by Chromium's devtools",
    ) {
        return;
    }
    let server = Server::start();
    let browser = Browser::start("roles");
    let person = Person::open(&browser, &server).await;
    choose(&person, "button", "Understood, open with").await;
    choose(&person, "button", "Lower A begin").await;
    find(&person, "heading", "Kettlebell swing").await;

    choose(&person, "button", "one rep more").await;
    find(&person, "button", "Log 7 reps").await;
    choose(&person, "button", "one rep less").await;
    choose(&person, "button", "reserve").await;
    find(&person, "dialog", "Reps left in reserve").await;
    assert!(
        has(&person, "button", "Log ").await.is_none(),
        "what lies under a panel is not heard"
    );
    choose(&person, "button", "3").await;
    find(&person, "button", "3 in reserve").await;

    let mut logged = 0;
    loop {
        if has(&person, "button", "End").await.is_some() {
            break;
        }
        if let Some(hold) = has(&person, "button", "hold here").await {
            find(&person, "timer", "rest left").await;
            activate(&person, hold).await;
            choose(&person, "button", "end rest").await;
            logged += 1;
            continue;
        }
        if let Some(log) = has(&person, "button", "Log ").await {
            activate(&person, log).await;
        } else if let Some(sure) = has(&person, "button", "Sure?").await {
            activate(&person, sure).await;
        }
        assert!(logged < 40, "the session never ends");
    }
    // Between a set and its drops or its partner there may be no rest at all.
    assert!(logged >= 12, "{logged} rests");
    find(&person, "image", "18 of 18 sets done or skipped").await;
    while has(&person, "heading", "All sets done").await.is_some() {
        for name in ["End", "Close it?"] {
            if let Some(end) = has(&person, "button", name).await {
                activate(&person, end).await;
            }
        }
    }
    choose(&person, "button", "7").await;
    choose(&person, "button", "To the ledger").await;
    find(&person, "heading", "Ledger").await;
    person.close().await;
}

/// What is said unasked: each set and each rest once, and nothing while a clock goes on.
#[tokio::test]
async fn a_set_and_a_rest_are_said_once_and_clocks_are_not() {
    let server = Server::start();
    let browser = Browser::start("told");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    let told = "Now: Kettlebell swing: 15 kg, 6 reps, 5 in reserve";
    person.reads_hidden("told", told).await;
    log(&person).await;
    person.see("rest").await;
    let told = "Rest. Next: Kettlebell swing: 15 kg, 6 reps, 5 in reserve";
    person.reads_hidden("told", told).await;
    person.reads("saved", "saved").await;
    person
        .run(
            "window.heard = []; window.ticks = new Set();
             const live = '[role=status], [role=alert], [aria-live=polite], [aria-live=assertive]';
             new MutationObserver((changes) => {
               ticks.add(document.querySelector('[data-part=rest]').innerText);
               for (const { target } of changes) {
                 const element = target.nodeType === Node.ELEMENT_NODE ? target : target.parentElement;
                 const at = element?.closest(live);
                 if (at) heard.push(at.textContent);
               }
             }).observe(document, { subtree: true, childList: true, characterData: true });",
        )
        .await;
    person
        .until("return ticks.size >= 3", "the clock of the rest goes on")
        .await;
    let heard = person.run("return heard").await;
    assert_eq!(heard, json!([]));
    person.close().await;
}
