//! The keyboard stays on the page: what had it may be gone once it has done its work.

use super::browser::Browser;
use super::keys::press;
use super::person::Person;
use super::server::Server;
use super::whole_session::begin;
use super::write::paste;
use serde_json::Value;

/// Gives an element the keyboard and presses Enter.
async fn enter(person: &Person, css: &str) {
    person.find(css).await;
    let focus = format!("document.querySelector(`{css}`).focus()");
    person.run(&focus).await;
    press(person, "Enter").await;
}

/// Waits until an element that a selector finds has the keyboard.
async fn has_keyboard(person: &Person, css: &str) {
    let script = format!("return document.activeElement.matches(`{css}`)");
    person
        .until(&script, &format!("{css} has the keyboard"))
        .await;
}

async fn title(person: &Person) -> Value {
    person.run("return document.title").await
}

#[tokio::test]
async fn a_place_that_is_opened_is_told_by_its_heading_and_calls_the_page() {
    let server = Server::start();
    let browser = Browser::start("focus-places");
    let person = Person::arrive(&browser, &server).await;
    person.tap("go-sheets").await;
    enter(&person, "[data-part=sheet]").await;
    person.see("sheet-look").await;
    has_keyboard(&person, "#place h1").await;
    assert_eq!(title(&person).await, "Lower A · Stanchion");
    enter(&person, "[data-part=change-sheet]").await;
    person.see("draft-rows").await;
    has_keyboard(&person, "#place h1").await;
    assert_eq!(title(&person).await, "Write a sheet · Stanchion");
    person.close().await;
}

#[tokio::test]
async fn what_is_drawn_anew_keeps_the_keyboard_and_what_is_gone_leaves_it_to_its_undo() {
    let server = Server::start();
    let browser = Browser::start("focus-draft");
    let person = Person::open(&browser, &server).await;
    person.tap("welcome-skip").await;
    person.tap("go-sheets").await;
    person.tap("write-lines").await;
    let text = "# Boat day\\nFront squat: 3 × 5; 60 kg\\nChin-up: 3 × 5\\nPlank: 3 × 30 s";
    paste(&person, text).await;
    person.see("lines-sum").await;
    person.tap("lines-taps").await;
    person.see("draft-rows").await;
    person.tap("draft-arrange").await;
    enter(&person, "[aria-label='Down: Front squat']").await;
    let second = "[data-part=draft-rows] > li:nth-child(2) [aria-label='Down: Front squat']";
    has_keyboard(&person, second).await;
    press(&person, "Enter").await;
    // At the end it goes no further down, and beside that the keyboard waits.
    person
        .find("[data-part=draft-rows] > li:nth-child(3) [aria-label='Down: Front squat']:disabled")
        .await;
    person
        .until(
            "return document.activeElement.closest('[data-part=draft-rows] > li:nth-child(3)') !== null",
            "the keyboard is beside it",
        )
        .await;
    enter(&person, "[aria-label='Remove: Chin-up']").await;
    has_keyboard(&person, "[data-part=draft-undo]").await;
    press(&person, "Enter").await;
    person.find("[aria-label='Remove: Chin-up']").await;
    has_keyboard(&person, "[data-part=draft-undo], h1").await;
    // Of two of one name, the other one is not taken off by a key held too long.
    person.tap_css("[aria-label='Double: Plank']").await;
    person
        .find("[data-part=draft-rows] > li:nth-child(4)")
        .await;
    let copy = "[data-part=draft-rows] > li:nth-child(4) [aria-label^='Remove']";
    enter(&person, copy).await;
    has_keyboard(&person, "[data-part=draft-undo]").await;
    person.close().await;
}

#[tokio::test]
async fn who_ends_a_session_by_keys_goes_on_by_keys() {
    let server = Server::start();
    let browser = Browser::start("focus-end");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    enter(&person, "[data-part=more]").await;
    enter(&person, "[data-part=end-ask]").await;
    person.see("end-now").await;
    person
        .until(
            "return document.activeElement.closest('[role=dialog]') !== null",
            "the panel has the keyboard",
        )
        .await;
    enter(&person, "[data-part=end-now]").await;
    person.see("finish").await;
    has_keyboard(&person, "#place h1").await;
    person.close().await;
}
