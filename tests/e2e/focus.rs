//! The keyboard stays on the page: what had it may be gone once it has done its work.

use super::browser::Browser;
use super::engine::{Engine, only_in};
use super::keys::{down, press};
use super::person::Person;
use super::server::Server;
use super::whole_session::begin;
use super::write::paste;

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

/// Waits until the page has a title.
async fn called(person: &Person, title: &str) {
    let script = format!("return document.title === {title:?}");
    person
        .until(&script, &format!("the page is called {title}"))
        .await;
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
    called(&person, "Lower A · Stanchion").await;
    enter(&person, "[data-part=change-sheet]").await;
    person.see("draft-rows").await;
    has_keyboard(&person, "#place h1").await;
    called(&person, "Write a sheet · Stanchion").await;
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
    has_keyboard(&person, "[aria-label='Up: Front squat']").await;
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

#[tokio::test]
async fn on_the_floor_the_pad_has_the_keyboard_and_the_page_the_name_of_the_app() {
    let server = Server::start();
    let browser = Browser::start("focus-floor");
    let person = Person::arrive(&browser, &server).await;
    called(&person, "Which sheet today? · Stanchion").await;
    enter(&person, "button[data-part='begin'][aria-label*='Lower A']").await;
    person.see("floor").await;
    has_keyboard(&person, ".pad-main").await;
    called(&person, "Stanchion").await;
    // What was pressed gives its place to what counts.
    enter(&person, "[data-part=count-taps]").await;
    person.see("count-stop").await;
    has_keyboard(&person, ".pad-main").await;
    press(&person, "Enter").await;
    enter(&person, "[data-part=count-log]").await;
    person.reads("saved", "saved").await;
    has_keyboard(&person, ".pad-main").await;
    person.close().await;
}

#[tokio::test]
async fn a_page_that_is_read_again_is_called_by_its_place() {
    let server = Server::start();
    let browser = Browser::start("focus-again");
    let person = Person::arrive(&browser, &server).await;
    person.tap("go-ledger").await;
    person.see("ledger").await;
    person.reload().await;
    called(&person, "Ledger · Stanchion").await;
    person.close().await;
}

#[tokio::test]
async fn a_key_held_down_takes_one_thing_out_of_the_kit() {
    if !only_in(
        &[Engine::Chromium],
        "a held key repeats by Chromium's devtools",
    ) {
        return;
    }
    let server = Server::start();
    let browser = Browser::start("focus-held");
    let person = Person::arrive(&browser, &server).await;
    person.tap("go-kit").await;
    person.see("bands").await;
    let rows = "return document.querySelectorAll('[data-part=bands] .kit-row').length";
    let before = person.run(rows).await.as_u64().unwrap();
    person
        .run("document.querySelector('[data-part=bands] [data-part=remove]').focus()")
        .await;
    down(&person, "Enter", 0, false).await;
    for _ in 0..4 {
        down(&person, "Enter", 0, true).await;
    }
    has_keyboard(&person, "[data-part=thing-back]").await;
    down(&person, "Enter", 0, true).await;
    person
        .until(&format!("{rows} === {}", before - 1), "one is gone")
        .await;
    press(&person, "Enter").await;
    person
        .until(&format!("{rows} === {before}"), "it is back")
        .await;
    person.close().await;
}
