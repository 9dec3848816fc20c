//! A set to failure under a load asks for safety bars or a spotter, once for each exercise.

use super::browser::Browser;
use super::person::Person;
use super::server::Server;
use super::share::with_sheet;
use super::whole_session::{begin, end_rest, log};

const SHEET: &str = "# Boat day\nBench press: 1 × 8+ to failure; 40 kg\nPush-up: 1 × 12+ to failure; no load\nLateral raise: 1 × 12+ to failure; 4 kg";

/// Waits until the board is of an exercise, and no panel lies over it.
async fn plain(person: &Person, exercise: &str) {
    person.reads("exercise", exercise).await;
    person.see("log").await;
    assert!(!person.has("safety-panel").await);
}

/// Chooses a language in Kit and comes back to the floor in it.
async fn speak(person: &Person, language: &str) {
    person.tap("more").await;
    person.tap("leave-kit").await;
    person.tap(language).await;
    // The texts are there and the choice is kept only once this is said.
    person
        .until(
            "return document.querySelector('[data-part=\"language-said\"]')?.innerText.trim().length > 0",
            "the language is kept for the next opening",
        )
        .await;
    person.reload().await;
    person.tap("go-floor").await;
}

#[tokio::test]
async fn to_failure_under_a_load_asks_once_and_the_caution_stays_to_be_found() {
    let server = Server::start();
    let browser = Browser::start("safety");
    let person = with_sheet(&browser, &server, SHEET).await;
    person.tap("go-floor").await;
    begin(&person, "Boat day").await;
    person.reads("safety-panel", "Set safety bars").await;
    // Put away without an answer, it is asked again.
    person.tap("panel-close").await;
    person.gone("safety-panel").await;
    person.reload().await;
    person.see("safety-panel").await;
    person.tap("safety-bars").await;
    person.gone("safety-panel").await;
    person.reads("cautions", "To technical failure").await;
    person.reload().await;
    plain(&person, "Bench press").await;
    // It is the same exercise in another language.
    speak(&person, "language-de").await;
    plain(&person, "Bankdrücken").await;
    speak(&person, "language-en").await;
    plain(&person, "Bench press").await;
    person.tap("more").await;
    person.tap("note").await;
    person.reads("note-panel", "To technical failure").await;
    person.tap("panel-close").await;
    person.gone("note-panel").await;
    log(&person).await;
    end_rest(&person).await;
    // Nothing falls in a push-up.
    plain(&person, "Push-up").await;
    log(&person).await;
    end_rest(&person).await;
    // Nor does a raise, which is put down.
    plain(&person, "Lateral raise").await;
    person.reads("cautions", "put the load down").await;
    person.close().await;
}

#[tokio::test]
async fn in_a_rest_it_is_asked_before_anything_counts_in() {
    let server = Server::start();
    let browser = Browser::start("safety-rest");
    let sheet = "# Boat day\nBench press: 1 × 8; 1 × 8+ to failure; 40 kg; rest 10 min";
    let person = with_sheet(&browser, &server, sheet).await;
    person.tap("go-floor").await;
    begin(&person, "Boat day").await;
    log(&person).await;
    person.see("rest").await;
    // A tap right after the last one is taken for a slip; it is given again.
    let begin_set = |until: &str| {
        format!(
            "document.querySelector('[data-part=\"begin-set\"]')?.click();
             return document.querySelector('[data-part=\"{until}\"]') !== null"
        )
    };
    person
        .until(&begin_set("safety-panel"), "the question")
        .await;
    assert!(person.has("rest").await && !person.has("cues-stop").await);
    person.tap("panel-close").await;
    person.gone("safety-panel").await;
    // Put away, it is not asked twice of one set.
    person.until(&begin_set("cues-stop"), "the cues").await;
    assert!(!person.has("safety-panel").await);
    person.close().await;
}
