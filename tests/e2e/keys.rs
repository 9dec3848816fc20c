//! The floor by keys alone: a keyboard, a page-turner, a headset.

use super::browser::Browser;
use super::engine::{Engine, only_in};
use super::person::Person;
use super::server::Server;
use super::whole_session::begin;
use fantoccini::actions::{InputSource, KeyAction, KeyActions};
use serde_json::json;

/// Presses a key and lets it go.
pub async fn press(person: &Person, key: &str) {
    // The keys that are no letters have numbers of their own in WebDriver.
    let value = match key {
        "Tab" => '\u{e004}',
        "Enter" => '\u{e007}',
        "Escape" => '\u{e00c}',
        "PageUp" => '\u{e00e}',
        "PageDown" => '\u{e00f}',
        "ArrowLeft" => '\u{e012}',
        "ArrowUp" => '\u{e013}',
        key => key.chars().next().expect("a key has a name"),
    };
    let keys = KeyActions::new("keys".to_owned())
        .then(KeyAction::Down { value })
        .then(KeyAction::Up { value });
    let pressed = person.client.perform_actions(keys).await;
    pressed.expect("the browser takes keys");
}

/// Presses a key with modifiers (1 Alt, 2 Ctrl, 4 Meta, 8 Shift), or lets a held one repeat; in Chromium only.
pub async fn down(person: &Person, key: &str, modifiers: u8, repeats: bool) {
    let text = match key {
        "Enter" => "\r".to_owned(),
        key if key.chars().count() == 1 && modifiers & 7 == 0 => key.to_owned(),
        _ => String::new(),
    };
    let kind = if text.is_empty() {
        "rawKeyDown"
    } else {
        "keyDown"
    };
    let event = json!({
        "type": kind, "key": key, "code": code(key), "text": text, "modifiers": modifiers,
        "autoRepeat": repeats, "windowsVirtualKeyCode": number(key),
    });
    person.devtools("Input.dispatchKeyEvent", event).await;
}

fn code(key: &str) -> String {
    match key {
        " " => "Space".to_owned(),
        key if key.chars().count() == 1 => format!("Key{}", key.to_uppercase()),
        key => key.to_owned(),
    }
}

fn number(key: &str) -> u32 {
    match key {
        "Tab" => 9,
        "Enter" => 13,
        "Escape" => 27,
        " " => 32,
        "PageUp" => 33,
        "PageDown" => 34,
        "ArrowLeft" => 37,
        "ArrowUp" => 38,
        "ArrowRight" => 39,
        "ArrowDown" => 40,
        key => key.to_uppercase().chars().next().map_or(0, u32::from),
    }
}

/// Goes on with Tab until what a selector finds has the focus, and the focus can be seen.
async fn tab_to(person: &Person, css: &str) {
    let has = format!(
        "return document.activeElement?.matches({}) ?? false",
        json!(css)
    );
    for _ in 0..80 {
        if person.run(&has).await == json!(true) {
            // Without a window manager its window is never the active one, and shows no focus.
            if Engine::here() == Engine::Webkit {
                return;
            }
            let seen = "return document.activeElement.matches(':focus-visible')
                && getComputedStyle(document.activeElement).outlineStyle !== 'none'";
            assert_eq!(
                person.run(seen).await,
                json!(true),
                "the focus on {css} is seen"
            );
            return;
        }
        press(person, "Tab").await;
    }
    panic!("Tab never came to {css}");
}

fn part(name: &str) -> String {
    format!("[data-part=\"{name}\"]")
}

/// Presses a key until a script says that it has happened: a press right after another is taken for a slip.
async fn press_until(person: &Person, key: &str, script: &str, what: &str) {
    for _ in 0..400 {
        if person.run(script).await == json!(true) {
            return;
        }
        press(person, key).await;
    }
    panic!("{key} pressed in vain until {what}");
}

const DONE: &str = "document.querySelectorAll('.notch.done').length";

#[tokio::test]
async fn a_whole_session_by_keys_alone() {
    let server = Server::start();
    let browser = Browser::start("keys");
    let person = Person::open(&browser, &server).await;
    person.see("welcome-open").await;
    tab_to(&person, &part("welcome-open")).await;
    press(&person, "Enter").await;
    person.see("choose").await;
    tab_to(&person, "button[aria-label=\"Lower A begin\"]").await;
    press(&person, "Enter").await;
    person.reads("exercise", "Kettlebell swing").await;

    // The reps before the tap, and a panel by its key.
    press(&person, "ArrowUp").await;
    person.reads("log", "7").await;
    press(&person, "-").await;
    person.reads("log", "6").await;
    press(&person, "u").await;
    person.reads("log", "7").await;
    press(&person, "u").await;
    person.reads("log", "6").await;
    press(&person, "l").await;
    person.see("load-panel").await;
    person
        .until(
            "return !!document.activeElement.closest('.panel')",
            "the panel has the focus",
        )
        .await;
    tab_to(&person, &part("load-step-more")).await;
    press(&person, "Enter").await;
    person.reads("load-step-figure", "17.5 kg").await;
    press(&person, "Escape").await;
    person.gone("load-panel").await;
    press(&person, "u").await;
    press(&person, "r").await;
    person.see("reserve-panel").await;
    tab_to(&person, &part("reserve-3")).await;
    press(&person, " ").await;
    person.gone("reserve-panel").await;
    person.reads("reserve", "3 in reserve").await;

    // Logged by Enter; the focus goes on to the pad of the rest.
    press(&person, "Enter").await;
    person.see("rest").await;
    person.reads("logged", "logged 6 reps at 15 kg").await;
    person.reads("saved", "saved").await;
    person
        .until(
            "return document.activeElement.dataset.part === 'begin-set'",
            "the pad has the focus",
        )
        .await;
    let before = person.read("rest").await;
    press(&person, "ArrowUp").await;
    person
        .until(
            &format!(
                "return document.querySelector('{}').innerText > {}",
                part("rest"),
                json!(before)
            ),
            "the rest is longer",
        )
        .await;
    press(&person, "b").await;
    person.see("rest-end").await;
    press(&person, "PageUp").await;
    person.see("log").await;

    // The others by a page-turner.
    for done in 2..=18 {
        let logged = format!("return {DONE} === {done}");
        press_until(&person, "PageDown", &logged, "the set is logged").await;
        if done < 18 {
            person.until("return !!document.querySelector('[data-part=\"rest-hold\"], [data-part=\"log\"]')", "a pad is there").await;
            if person.has("rest-hold").await {
                press(&person, "ArrowLeft").await;
                person.see("rest-end").await;
                press(&person, "ArrowLeft").await;
            }
            person.see("log").await;
        }
    }
    person.see("end").await;
    let finish = format!("return !!document.querySelector('{}')", part("finish"));
    press_until(&person, "Enter", &finish, "the session is closed").await;
    person.reads("finish-saved", "saved in the ledger").await;
    tab_to(&person, &part("rpe-7")).await;
    press(&person, " ").await;
    tab_to(&person, &part("put-away")).await;
    press(&person, "Enter").await;
    person.see("ledger").await;
    person.reads("session", "18 sets").await;
    person.close().await;
}

#[tokio::test]
async fn a_key_that_is_held_modified_or_typed_never_acts_on_the_pad() {
    if !only_in(
        &[Engine::Chromium],
        "a held key repeats by Chromium's devtools",
    ) {
        return;
    }
    let server = Server::start();
    let browser = Browser::start("held");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    for modifiers in [1, 2, 4, 8] {
        down(&person, "ArrowUp", modifiers, false).await;
    }
    down(&person, "Enter", 0, true).await;
    down(&person, "PageDown", 0, true).await;
    // Held on the button that has the focus, Enter presses it once.
    person
        .run("document.querySelector('[data-part=\"reps-more\"]').focus()")
        .await;
    down(&person, "Enter", 0, false).await;
    for _ in 0..3 {
        down(&person, "Enter", 0, true).await;
    }
    person.reads("log", "7").await;
    press(&person, "u").await;
    person.reads("log", "6").await;

    press(&person, "m").await;
    person.see("more-panel").await;
    // Under a panel the pad keeps still.
    press(&person, "PageDown").await;
    press(&person, "ArrowUp").await;
    tab_to(&person, &part("note")).await;
    press(&person, "Enter").await;
    person.see("note-panel").await;
    tab_to(&person, &part("note-text")).await;
    for key in ["u", "l", "m", "b"] {
        press(&person, key).await;
    }
    person
        .until(
            "return document.querySelector('[data-part=\"note-text\"]').value === 'ulmb'",
            "it is written",
        )
        .await;
    press(&person, "Escape").await;
    // Escape belongs to the field first where it is typed into; the button closes in any case.
    if person.has("note-panel").await {
        tab_to(&person, &part("panel-close")).await;
        press(&person, "Enter").await;
    }
    person.gone("note-panel").await;
    person.reads("log", "6").await;
    assert_eq!(person.run(&format!("return {DONE}")).await, json!(0));
    person.close().await;
}

#[tokio::test]
async fn the_keys_are_listed_and_those_of_a_headset_are_taken_when_asked_for() {
    let server = Server::start();
    let browser = Browser::start("headset");
    let person = Person::arrive(&browser, &server).await;
    // The browser gives such keys to whoever asks; here they are pressed by hand.
    person
        .run(
            // Held by the window, or what is changed on it may be forgotten.
            "window.asked = {};
             const session = window.session = navigator.mediaSession;
             const set = session.setActionHandler.bind(session);
             session.setActionHandler = (name, f) => { window.asked[name] = f; set(name, f); };",
        )
        .await;
    begin(&person, "Lower A").await;
    assert_eq!(
        person.run("return Object.keys(window.asked).length").await,
        json!(0)
    );
    press(&person, "?").await;
    person
        .reads("keys-panel", "log the set; in a rest, begin the next one")
        .await;
    super::looks::picture(&person, "floor-keys").await;
    person.tap("headset").await;
    person.reads("headset", "on").await;
    person.tap("panel-close").await;
    person.gone("keys-panel").await;
    person.run("window.asked.nexttrack()").await;
    person.reads("logged", "logged 6 reps at 15 kg").await;
    person.run("window.asked.pause()").await;
    person.see("rest-end").await;
    person.run("window.asked.play()").await;
    person.see("log").await;
    person.run("window.asked.previoustrack()").await;
    person.see("rest-end").await;
    press(&person, "?").await;
    person.tap("headset").await;
    person.reads("headset", "off").await;
    assert_eq!(
        person.run("return window.asked.nexttrack").await,
        json!(null)
    );
    person.close().await;
}

/// A panel keeps the keyboard, lets go of it by Escape, and gives it back to what opened it.
#[tokio::test]
async fn a_panel_keeps_the_keyboard_and_gives_it_back() {
    let server = Server::start();
    let browser = Browser::start("panel");
    let person = Person::arrive(&browser, &server).await;
    person.tap("go-sheets").await;
    person.tap("sheet").await;
    // Tab goes on from what was tapped. From further down it would come round by the browser's own bars, and in Firefox
    // by a driver the page has no focus to show after that.
    person.tap_css("[data-part=\"sheet-look\"] h1").await;
    tab_to(&person, "[data-part=\"share-sheet\"]").await;
    press(&person, "Enter").await;
    let has = "return document.activeElement?.matches('[data-part=\"share-panel\"]')";
    person.until(has, "the panel has the keyboard").await;
    let reached = "const on = document.activeElement;
        return on === document.body || on.closest('[role=dialog]') !== null;";
    for tabs in 0..30 {
        press(&person, "Tab").await;
        let inside = person.run(reached).await;
        assert_eq!(
            inside,
            json!(true),
            "after {tabs} tabs what lies under the panel has the keyboard"
        );
    }
    press(&person, "Escape").await;
    person.gone("share-panel").await;
    let back = "return document.activeElement?.matches('[data-part=\"share-sheet\"]')";
    person.until(back, "the keyboard is where it was").await;
    let under = person.run("return document.querySelector('[inert]')").await;
    assert!(under.is_null(), "the page is out of reach: {under}");
    person.close().await;
}

#[tokio::test]
async fn on_the_floor_one_panel_after_another_gives_the_keyboard_back_to_what_opened_the_first() {
    let server = Server::start();
    let browser = Browser::start("panels");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    tab_to(&person, &part("more")).await;
    press(&person, "Enter").await;
    let within = |panel: &str| {
        let panel = part(panel);
        format!("return document.activeElement?.closest('{panel}') !== null")
    };
    person
        .until(&within("more-panel"), "the panel has the keyboard")
        .await;
    tab_to(&person, &part("note")).await;
    press(&person, "Enter").await;
    person
        .until(&within("note-panel"), "the next panel has the keyboard")
        .await;
    // What lies under it is neither read nor reached, whatever the pad turns to meanwhile.
    let under = "return [...document.querySelectorAll('[data-part=\"board\"], [data-part=\"pad\"], nav')]
        .every((one) => one.closest('[inert]') !== null) && !document.activeElement.closest('[inert]')";
    person.until(under, "the floor is out of reach").await;
    press(&person, "Escape").await;
    person.gone("note-panel").await;
    let back = format!("return document.activeElement?.matches('{}')", part("more"));
    person.until(&back, "the keyboard is where it was").await;
    let left = person.run("return document.querySelector('[inert]')").await;
    assert!(left.is_null(), "the floor is out of reach: {left}");
    // What opened a panel may be gone when it closes: then the pad has the keyboard.
    press(&person, "m").await;
    tab_to(&person, &part("skip")).await;
    press(&person, "Enter").await;
    person.gone("more-panel").await;
    let somewhere = "return document.activeElement !== document.body && !document.activeElement.closest('[inert]')";
    person.until(somewhere, "something has the keyboard").await;
    person.close().await;
}
