//! The floor: change before and after the tap, skip, undo, add, drop, order, note; and what a reload or a kill leaves.

use super::browser::Browser;
use super::disk::{leave, rows};
use super::engine::{Engine, only_in};
use super::person::Person;
use super::server::Server;
use super::whole_session::{begin, do_first, end_rest};

#[tokio::test]
async fn reps_and_load_are_changed_before_and_after_the_tap() {
    let server = Server::start();
    let browser = Browser::start("change");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;

    person.tap("reps-less").await;
    person.reads("log", "5").await;
    person.tap("load").await;
    person.see("load-panel").await;
    person.type_into("load-typed", "heavy").await;
    person
        .reads("load-panel", "“heavy” is no plain number")
        .await;
    // What was typed and not taken does not go away with the panel.
    person.tap("load-use").await;
    person
        .reads("load-wrong", "“heavy” is no plain number")
        .await;
    person.type_into("load-typed", "16").await;
    // Not one of the kit: borrowed, and used all the same.
    person.reads("load-refused", "15 or 17.5 kg").await;
    person.tap("load-use").await;
    person.see("load-anyway").await;
    person.tap("load-anyway").await;
    person.gone("load-panel").await;
    person.reads("main", "16").await;
    person.tap("reserve").await;
    person.tap("reserve-3").await;
    person.reads("reserve", "3 in reserve").await;
    person.tap("log").await;
    person.reads("logged", "logged 5 reps at 16 kg").await;

    person.tap("amend").await;
    person.tap("amend-reps-more").await;
    person.tap("amend-close").await;
    person.reads("logged", "logged 6 reps at 16 kg").await;
    person.reads("saved", "saved").await;
    person.close().await;
}

#[tokio::test]
async fn skip_undo_add_drop_order_and_note() {
    let server = Server::start();
    let browser = Browser::start("more");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;

    person.tap("more").await;
    person.tap("skip").await;
    person.reads("kind", "work set 2 of 3").await;
    person.tap("more").await;
    person.tap("undo").await;
    person.reads("kind", "work set 1 of 3").await;

    person.tap("more").await;
    person.tap("add").await;
    person.reads("kind", "work set 1 of 4").await;
    assert_eq!(person.count(".notch").await, 19);
    person.tap("more").await;
    person.tap("drop").await;
    person
        .until(
            "return document.querySelectorAll('.notch').length === 18",
            "a set is off",
        )
        .await;

    do_first(&person, 3).await;
    person.reads("exercise", "Romanian deadlift").await;

    person.tap("more").await;
    person.tap("note").await;
    person.see("note-panel").await;
    person.type_into("note-text", "<b>damp</b> handles").await;
    person.tap("note-keep").await;
    person.gone("note-panel").await;

    person.tap("log").await;
    person.see("rest").await;
    person.tap("undo-set").await;
    person.see("log").await;
    person.reads("exercise", "Romanian deadlift").await;
    assert_eq!(person.count(".notch.done").await, 0);
    person.close().await;
}

#[tokio::test]
async fn a_double_tap_logs_one_set_and_does_not_cut_its_rest() {
    let server = Server::start();
    let browser = Browser::start("double");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    person
        .run(
            "document.querySelector('[data-part=\"log\"]').click();
             requestAnimationFrame(() => document.querySelector('[data-part=\"begin-set\"]')?.click());",
        )
        .await;
    person.see("rest").await;
    person.reads("saved", "saved").await;
    assert!(person.has("begin-set").await, "the rest goes on");
    assert_eq!(person.count(".notch.done").await, 1);
    person.close().await;
}

/// What the first tap calls is gone through before, in a model that nobody sees (`ui/floor/rehearse.rs`).
#[tokio::test]
async fn of_the_first_tap_rehearsed_nothing_is_seen_and_nothing_kept() {
    let server = Server::start();
    let browser = Browser::start("rehearse");
    let person = Person::arrive(&browser, &server).await;
    // Every idle moment that is asked for on the floor, and which parts were ever on the page.
    person
        .run(
            "window.idle = [];
             window.requestIdleCallback = (work) => window.idle.push(work);
             window.shown = new Set();
             const look = () => document.querySelectorAll('[data-part]')
               .forEach((it) => window.shown.add(it.dataset.part));
             new MutationObserver(look).observe(document.body, { childList: true, subtree: true });
             // Elements of a rest that are made, on the page or not.
             window.made = 0;
             const set = Element.prototype.setAttribute;
             Element.prototype.setAttribute = function (name, value) {
               if (name === 'data-part' && value === 'rest') window.made += 1;
               return set.call(this, name, value);
             };",
        )
        .await;
    begin(&person, "Lower A").await;
    person
        .until(
            "return window.idle.length === 1",
            "an idle moment is asked for",
        )
        .await;
    let before = person.read("floor").await;
    // Each step asks for the next.
    person
        .run("while (window.idle.length) window.idle.shift()()")
        .await;
    let made = person.run("return window.made").await;
    assert_eq!(made, 1, "the rest was drawn");
    assert_eq!(person.read("floor").await, before);
    let shown = person.run("return window.shown.has('rest')").await;
    assert_eq!(shown, false, "and not on the page");
    person.all_is_saved().await;
    leave(&person, &server).await;
    let events = rows(&person, "events").await;
    assert_eq!(events.len(), 1, "only the beginning is kept: {events:?}");
    person.close().await;
}

#[tokio::test]
async fn a_reload_leads_back_to_the_same_point_of_a_set_and_of_a_rest() {
    let server = Server::start();
    let browser = Browser::start("reload");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    person.tap("log").await;
    person.see("rest").await;
    person.tap("rest-more").await;
    person.reads("saved", "saved").await;
    let before = seconds(&person.read("rest").await);

    person.reload().await;
    person.see("rest").await;
    let after = seconds(&person.read("rest").await);
    assert!(
        after <= before && after + 20 > before,
        "{before} s before, {after} s after the reload"
    );
    // And it goes on, without a tap.
    let shown = person.read("rest").await;
    person.gone_words("rest", &shown).await;

    // In the middle of a set: the cues go on where they are by the clock.
    person.tap("begin-set").await;
    person.see("cues-stop").await;
    person
        .until(
            "return !document.querySelector('[data-part=\"not-saved\"]')",
            "it is written",
        )
        .await;
    saved(&person).await;
    person.reload().await;
    person.see("cues-stop").await;
    person.reads("kind", "work set 2 of 3").await;
    person.tap("log").await;
    person.reads("logged", "logged 6 reps at 15 kg").await;
    person.close().await;
}

#[tokio::test]
async fn what_was_called_saved_outlives_a_killed_browser() {
    if !only_in(
        &[Engine::Chromium, Engine::Firefox],
        "under a driver WebKit keeps nothing past its end",
    ) {
        return;
    }
    let server = Server::start();
    let browser = Browser::start("kill");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Upper B").await;
    person.tap("log").await;
    person.reads("saved", "saved").await;
    browser.kill();
    drop(person);

    let person = Person::open(&browser, &server).await;
    person.see("rest").await;
    person.reads("logged", "logged 4 reps at 25 kg").await;
    end_rest(&person).await;
    person.reads("kind", "work set 2 of 3").await;
    person.close().await;
}

#[tokio::test]
async fn a_rest_ends_by_itself_and_the_pad_logs_again() {
    let server = Server::start();
    let browser = Browser::start("rest");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    person.tap("log").await;
    // 45 s less 3 × 15 s: nothing is left of it.
    for _ in 0..3 {
        person.tap("rest-less").await;
    }
    person.reads("log", "rest over by").await;
    person.reads("kind", "work set 2 of 3").await;
    person.close().await;
}

#[tokio::test]
async fn the_tempo_strip_and_the_count_follow_the_cues() {
    let server = Server::start();
    let browser = Browser::start("cues");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Upper B").await;
    do_first(&person, 2).await;
    person.reads("exercise", "Chin-up").await;
    person.tap("cues-begin").await;
    person.reads("count", "get set").await;
    person.reads("count", "of 6").await;
    person
        .until(
            "return !!document.querySelector('.tempo-part.lit')",
            "a part of the tempo is lit",
        )
        .await;
    person.tap("cues-stop").await;
    person.see("cues-begin").await;
    person.close().await;
}

#[tokio::test]
async fn one_can_look_elsewhere_and_the_session_goes_on() {
    let server = Server::start();
    let browser = Browser::start("leave");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    person.tap("log").await;
    person.reads("saved", "saved").await;
    person.tap("more").await;
    person.tap("leave-kit").await;
    person.see("kit").await;
    // The back gesture leads back, and so does the way to the floor.
    person.client.back().await.expect("the browser goes back");
    person.reads("logged", "logged 6 reps at 15 kg").await;
    person.tap("more").await;
    person.tap("leave-ledger").await;
    person.see("ledger-empty").await;
    person.tap("go-floor").await;
    person.see("rest").await;
    person.close().await;
}

/// Waits until nothing is left to write.
async fn saved(person: &Person) {
    person
        .until(
            "return document.querySelector('[data-unsaved]') === null",
            "everything is on disk",
        )
        .await;
}

/// Seconds of a clock reading, `m:ss`.
fn seconds(clock: &str) -> i64 {
    let (minutes, seconds) = clock.split_once(':').expect("a clock reading");
    minutes.parse::<i64>().unwrap() * 60 + seconds.parse::<i64>().unwrap()
}
