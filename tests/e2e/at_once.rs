//! Whoever taps in the very moment in which the first screen is there gets what is proposed to those who wait.

use super::browser::Browser;
use super::engine::{Engine, only_in};
use super::person::Person;
use super::server::Server;
use super::whole_session::{begin, end, end_rest, log, log_all};
use serde_json::json;

/// Taps what a selector finds as soon as it is on the page; and writes down whether what waits until the first screen is
/// painted, a tenth of a second, was done before.
const TAP: &str = "let looked = false;
const later = window.setTimeout;
window.setTimeout = (call, ms) => later(() => { looked ||= ms === 100; call(); }, ms);
new MutationObserver((_, watch) => {
    const found = document.querySelector(CSS);
    if (!found) return;
    watch.disconnect();
    window.tapped = looked ? 'late' : 'at once';
    found.click();
}).observe(document, { childList: true, subtree: true });";

/// Kit shows the body mass.
const MASS: &str = "return document.querySelector('[data-part=\"body-mass\"]')?.value === '81.4'";

/// Opens the app again and taps that at once.
async fn open_and_tap(person: &Person, css: &str) {
    let script = TAP.replace("CSS", &json!(css).to_string());
    let added = person.before_the_app(&script).await;
    person.reload().await;
    person
        .until("return window.tapped !== undefined", "it is tapped")
        .await;
    person
        .devtools("Page.removeScriptToEvaluateOnNewDocument", added)
        .await;
}

#[tokio::test]
async fn a_tap_in_the_moment_of_the_start_finds_all_that_is_known() {
    if !only_in(
        &[Engine::Chromium],
        "a script before the app comes by Chromium's devtools",
    ) {
        return;
    }
    let server = Server::start();
    let browser = Browser::start("at-once");
    let person = Person::arrive(&browser, &server).await;
    person.tap("go-kit").await;
    person.type_into("body-mass", "81.4").await;
    person.tap("go-floor").await;
    begin(&person, "Lower A").await;
    log_all(&person).await;
    end(&person).await;
    person.tap("go-floor").await;

    // Another place, at once: what it shows is all there.
    open_and_tap(&person, "[data-part=\"go-ledger\"]").await;
    person.reads("session", "18 sets").await;
    assert_eq!(person.run("return window.tapped").await, "at once");
    person.tap("go-kit").await;
    person.until(MASS, "the body mass is there").await;
    person.tap("go-floor").await;
    person.see("choose").await;

    // The same sheet, at once: the squat reached the top of its range the last time.
    let css = "button[data-part=\"begin\"][aria-label*=\"Lower A\"]";
    open_and_tap(&person, css).await;
    person.see("floor").await;
    assert_eq!(person.run("return window.tapped").await, "at once");
    for _ in 0..6 {
        log(&person).await;
        end_rest(&person).await;
    }
    person.reads("kind", "work set 1 of 3").await;
    person.reads("main", "62.5").await;
    person.reads("because", "top of 5–7").await;
    person.close().await;
}

/// Where the newest sessions begin is a setting that may be lost or wrong: they are found all the same.
#[tokio::test]
async fn the_newest_sessions_are_found_where_their_place_is_amiss() {
    let server = Server::start();
    let browser = Browser::start("newest");
    let person = Person::arrive(&browser, &server).await;
    for _ in 0..2 {
        begin(&person, "Lower A").await;
        log_all(&person).await;
        end(&person).await;
        person.tap("go-floor").await;
        person.see("choose").await;
    }
    person
        .run("localStorage.setItem('stanchion.newest', JSON.stringify('9999'))")
        .await;
    person.reload().await;
    person.tap("offer-look").await;
    person.reads("sheet-time", "the middle of your last").await;
    person.close().await;
}
