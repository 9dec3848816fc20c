//! The language: as the browser, or one that was chosen in Kit; it changes when the app is opened, never in a session.

use super::browser::Browser;
use super::looks::picture;
use super::person::Person;
use super::server::Server;
use super::update::installed;
use super::whole_session::{begin, end_now, log};

/// The page speaks that language: Kit, which is open, has that heading.
pub async fn speaks(person: &Person, language: &str, kit: &str) {
    let script = format!(
        "return document.documentElement.lang === '{language}' \
         && document.querySelector('[data-part=\"kit\"] h1')?.textContent === '{kit}'"
    );
    person.until(&script, "the page speaks it").await;
}

#[tokio::test]
async fn a_language_that_was_chosen_is_spoken_and_stays() {
    let server = Server::start();
    let browser = Browser::start("language");
    let person = Person::arrive(&browser, &server).await;
    person.tap("go-kit").await;
    speaks(&person, "en", "Kit").await;
    // What is pressed already changes nothing.
    person.tap("language-browser").await;
    person.tap("language-de").await;
    speaks(&person, "de", "Geräte").await;
    person.reads("language-de", "Deutsch").await;
    // So does what the home screen would say.
    let manifest = "return fetch(document.querySelector('link[rel=manifest]').href)
        .then((answer) => answer.json()).then((manifest) => manifest.lang)";
    assert_eq!(person.run(manifest).await, "de");
    person
        .run("document.querySelector('[data-part=\"language-de\"]').scrollIntoView({block: 'center'})")
        .await;
    picture(&person, "kit-german").await;
    person.reload().await;
    speaks(&person, "de", "Geräte").await;
    for (go, place) in [
        ("go-floor", "choose-german"),
        ("go-sheets", "sheets-german"),
    ] {
        person.tap(go).await;
        picture(&person, place).await;
    }
    person.tap("go-kit").await;
    person.tap("language-browser").await;
    speaks(&person, "en", "Kit").await;
    person.close().await;
}

#[tokio::test]
async fn a_session_is_not_broken_off_for_a_language() {
    let server = Server::start();
    let browser = Browser::start("language-later");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    log(&person).await;
    person.tap("more").await;
    person.tap("leave-kit").await;
    person.tap("language-de").await;
    person.reads("language-said", "opened next").await;
    speaks(&person, "en", "Kit").await;
    person.reload().await;
    speaks(&person, "de", "Geräte").await;
    person.tap("go-floor").await;
    person.see("board").await;
    picture(&person, "floor-german").await;
    end_now(&person).await;
    person.tap("put-away").await;
    person.see("ledger").await;
    picture(&person, "ledger-german").await;
    person.tap("ledger-weeks").await;
    person.reads("week-sums", "davon").await;
    // It is the first week of all.
    person.reads("week-alone", "nichts zum Vergleichen").await;
    assert!(!person.read("week-sums").await.contains("davor"));
    picture(&person, "weeks-german").await;
    person.tap("go-ledger").await;
    person.tap("session").await;
    person.see("session-record").await;
    picture(&person, "session-german").await;
    person.close().await;
}

/// How many files of texts are kept for use without a network.
async fn kept(person: &Person) -> serde_json::Value {
    let script = "caches.keys().then(async (names) => {
        const lists = await Promise.all(names.map(async (name) => (await caches.open(name)).keys()));
        done(lists.flat().filter((request) => request.url.includes('/words/')).length);
    })";
    person.run_later(script).await
}

#[tokio::test]
async fn a_language_is_kept_once_it_is_chosen_and_then_needs_no_network() {
    let server = Server::start();
    let browser = Browser::start("language-offline");
    let person = Person::arrive(&browser, &server).await;
    installed(&person).await;
    // English needs no texts of its own, and a phone that speaks it keeps none.
    assert_eq!(kept(&person).await, 0);
    person.tap("go-kit").await;
    person.tap("language-de").await;
    speaks(&person, "de", "Geräte").await;
    assert_eq!(kept(&person).await, 1);
    server.serve_nothing();
    person.reload().await;
    speaks(&person, "de", "Geräte").await;
    person.close().await;
}

#[tokio::test]
async fn a_language_that_cannot_be_had_is_not_chosen() {
    let server = Server::start();
    let browser = Browser::start("language-none");
    let person = Person::arrive(&browser, &server).await;
    installed(&person).await;
    server.serve_nothing();
    person.tap("go-kit").await;
    person.tap("language-de").await;
    person
        .reads("notice", "The texts of this language could not be loaded")
        .await;
    picture(&person, "language-none").await;
    person.reload().await;
    speaks(&person, "en", "Kit").await;
    person.close().await;
}
