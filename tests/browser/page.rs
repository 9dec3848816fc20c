//! The page: its address, its root, other tabs of it, and whether its data is kept.

use crate::help::{patch, run, text, turn, until};
use stanchion::device::channel::Channel;
use stanchion::device::persist::{Keeping, ask, known};
use stanchion::device::{dom, haptic, place, steps};
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen_test::wasm_bindgen_test;

#[wasm_bindgen_test]
async fn places_are_steps_that_the_back_gesture_returns_from() {
    let seen: Rc<RefCell<Vec<String>>> = Rc::default();
    let told = Rc::clone(&seen);
    let listener = place::on_change(move |place| told.borrow_mut().push(place));
    place::go("floor");
    until("the first place was told", || seen.borrow().len() == 1).await;
    place::rename("floor/set");
    assert_eq!(place::here(), "floor/set");
    place::go("sheets/Lower A ½ 100%25");
    until("the second place was told", || seen.borrow().len() == 2).await;
    assert_eq!(place::here(), "sheets/Lower A ½ 100%25");
    place::back();
    until("the way back was told", || seen.borrow().len() == 3).await;
    assert_eq!(
        *seen.borrow(),
        ["floor", "sheets/Lower A ½ 100%25", "floor/set"]
    );
    drop(listener);
    place::go("kit");
    let later: Rc<RefCell<Vec<String>>> = Rc::default();
    let told = Rc::clone(&later);
    let _listener = place::on_change(move |place| told.borrow_mut().push(place));
    until("a later listener was told", || later.borrow().len() == 1).await;
    assert_eq!(seen.borrow().len(), 3, "a dropped listener is not");
}

#[wasm_bindgen_test]
async fn the_back_gesture_puts_away_what_lies_over_a_place() {
    let _following = steps::follow();
    place::go("steps/below");
    place::go("steps/above");
    let away = Rc::new(Cell::new(0));
    let told = Rc::clone(&away);
    let over = steps::over(move || told.set(told.get() + 1));
    place::back();
    until("it was put away", || away.get() == 1).await;
    assert_eq!(place::here(), "steps/above");
    drop(over);
    // What was put away by its button is no step: one goes on to the place before.
    drop(steps::over(|| {}));
    place::back();
    until("the place was left", || place::here() == "steps/below").await;
    assert_eq!(away.get(), 1);
}

#[wasm_bindgen_test]
async fn a_fragment_that_is_no_encoding_is_taken_as_it_is() {
    run("location.hash = '#50%'");
    assert_eq!(place::here(), "50%");
    run("location.hash = ''");
    assert_eq!(place::here(), "");
}

#[wasm_bindgen_test]
fn the_root_takes_a_theme() {
    let theme = || text("document.documentElement.getAttribute('data-theme')");
    dom::set_theme(Some("chalk"));
    assert_eq!(theme(), "chalk");
    dom::set_theme(None);
    assert_eq!(theme(), "null");
}

#[wasm_bindgen_test]
fn elements_take_focus_or_go() {
    run("document.body.insertAdjacentHTML('beforeend',
             '<button id=\"here\">x</button><p id=\"plain\">y</p>')");
    assert!(dom::focus("here"));
    assert_eq!(text("document.activeElement.id"), "here");
    assert!(!dom::focus("plain"));
    assert!(!dom::focus("nowhere"));
    for id in ["here", "plain", "nowhere"] {
        dom::remove(id);
    }
    assert_eq!(text("document.querySelector('#here, #plain')"), "null");
}

#[wasm_bindgen_test]
fn marks_are_on_the_timeline_and_the_top_is_shown() {
    dom::mark("started");
    assert_eq!(text("performance.getEntriesByName('started').length"), "1");
    let _tall = patch(
        "document.body.style.minHeight = '9000px';
                       undo.push(() => { document.body.style.minHeight = '' });",
    );
    run("window.scrollTo(0, 500)");
    assert_eq!(text("window.scrollY"), "500");
    dom::scroll_to_top();
    assert_eq!(text("window.scrollY"), "0");
}

#[wasm_bindgen_test]
fn a_phone_that_vibrates_is_told_and_others_are_left_alone() {
    let telling = patch(
        "window.felt = '';
         shadow(navigator, 'vibrate', {value(pattern) { window.felt = pattern.join() }});",
    );
    haptic::buzz(&[100, 50, 100]);
    assert_eq!(text("felt"), "100,50,100");
    drop(telling);
    let _absent = patch("shadow(navigator, 'vibrate', {value: undefined});");
    haptic::buzz(&[100]);
    assert_eq!(text("felt"), "100,50,100");
}

#[wasm_bindgen_test]
async fn tabs_hear_each_other_and_not_themselves() {
    let heard: Rc<RefCell<Vec<String>>> = Rc::default();
    let listen = |who: &'static str| {
        let told = Rc::clone(&heard);
        Channel::open("test-channel", move |text| {
            told.borrow_mut().push(format!("{who}: {text}"))
        })
    };
    let (one, two) = (listen("one"), listen("two"));
    one.post("set done");
    until("the other heard", || heard.borrow().len() == 1).await;
    two.post("thanks");
    until("the first heard", || heard.borrow().len() == 2).await;
    assert_eq!(*heard.borrow(), ["two: set done", "one: thanks"]);
    let _absent = patch("shadow(window, 'BroadcastChannel', {value: undefined});");
    listen("three").post("nobody hears");
}

#[wasm_bindgen_test]
async fn keeping_is_asked_for_and_nothing_waits_for_it() {
    let storage = |persisted: &str, persist: &str| {
        patch(&format!(
            "shadow(navigator, 'storage', {{value: {{persisted: async () => {persisted},
                 persist: () => {persist}}}}});"
        ))
    };
    for (persisted, persist, expected) in [
        ("false", "Promise.resolve(true)", Keeping::Promised),
        (
            "false",
            "Promise.resolve(false)",
            Keeping::AsLongAsThereIsRoom,
        ),
        ("true", "null.x", Keeping::Promised),
        ("null.x", "Promise.reject(new Error())", Keeping::Unknown),
    ] {
        let _patch = storage(persisted, persist);
        assert_eq!(answer().await, expected, "{persisted} {persist}");
    }
    let absent = patch("shadow(navigator, 'storage', {value: undefined});");
    assert_eq!(answer().await, Keeping::Unknown);
    drop(absent);
    let _never = storage("false", "(window.begged = true, new Promise(() => {}))");
    ask(|_| panic!("there is no answer"));
    until("the browser was asked", || text("window.begged") == "true").await;
    turn().await;
}

async fn answer() -> Keeping {
    let got: Rc<RefCell<Option<Keeping>>> = Rc::default();
    let told = Rc::clone(&got);
    ask(move |answer| *told.borrow_mut() = Some(answer));
    until("there was an answer", || got.borrow().is_some()).await;
    got.take().expect("an answer")
}

#[wasm_bindgen_test]
async fn what_was_promised_is_known_without_asking() {
    let _storage = patch(
        "window.begged = false;
         shadow(navigator, 'storage', {value: {persisted: async () => false,
             persist: () => { window.begged = true; }}});",
    );
    let got: Rc<RefCell<Option<Keeping>>> = Rc::default();
    let told = Rc::clone(&got);
    known(move |answer| *told.borrow_mut() = Some(answer));
    until("there was an answer", || got.borrow().is_some()).await;
    assert_eq!(got.take(), Some(Keeping::AsLongAsThereIsRoom));
    assert_eq!(text("window.begged"), "false");
}
