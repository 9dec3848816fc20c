//! Trust in a load: a jump wants a second tap; a first time is led by the reserve that is said.

use super::browser::Browser;
use super::looks::picture;
use super::person::Person;
use super::server::Server;
use super::whole_session::{begin, end_rest, log};
use super::write::paste;

const DONE: &str = ".notch.done";

#[tokio::test]
async fn a_jump_of_load_is_logged_by_the_second_tap() {
    let server = Server::start();
    let browser = Browser::start("jump");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    person.reads("main", "15").await;

    person.tap("load").await;
    person.type_into("load-typed", "19.5").await;
    person.tap("load-anyway").await;
    person.gone("load-panel").await;
    person.reads("board", "More than 10 % above").await;
    person.reads("log", "tap when put down").await;

    // The first tap asks, and one that bounces is a slip and no answer.
    let bounce =
        "for (let n = 0; n < 3; n++) document.querySelector('[data-part=\"log\"]').click()";
    person.run(bounce).await;
    person
        .reads("log", "up: tap again for yes, this load")
        .await;
    assert_eq!(person.count(DONE).await, 0);
    assert!(!person.has("rest").await, "nothing was logged");
    picture(&person, "jump").await;

    // Other reps are seen before they are logged, and asked about again.
    person.tap("reps-less").await;
    person.reads("log", "tap when put down").await;
    person.tap("reps-more").await;
    person.reads("log", "6").await;
    assert_eq!(person.count(DONE).await, 0);

    // Another load is asked about again.
    person.tap("load").await;
    person.type_into("load-typed", "20").await;
    person.tap("load-use").await;
    person.reads("log", "tap when put down").await;
    let ask = "document.querySelector('[data-part=\"log\"]').click();
               return document.querySelector('[data-part=\"log\"]').innerText.includes('tap again')";
    person.until(ask, "it is asked about").await;
    assert_eq!(person.count(DONE).await, 0);
    log(&person).await;
    person.reads("logged", "logged 6 reps at 20 kg").await;

    // Done once, it is no jump any more: one tap.
    end_rest(&person).await;
    person.reads("main", "20").await;
    assert!(!person.has("jump-caution").await);
    log(&person).await;
    assert_eq!(person.count(DONE).await, 2);
    person.close().await;
}

/// Taps that part until the cues of a set run.
async fn until_begun(person: &Person, part: &str) {
    let script = format!(
        "document.querySelector('[data-part=\"{part}\"]')?.click();
         return document.querySelector('[data-part=\"cues-stop\"]') !== null"
    );
    person.until(&script, "the set is begun by ear").await;
}

/// Taps the large button until a set more is logged; it must never ask.
async fn log_unasked(person: &Person) {
    let done = person.count(DONE).await;
    let script = format!(
        "const log = document.querySelector('[data-part=\"log\"]');
         window.wasAsked = (window.wasAsked ?? false) || (log?.innerText ?? '').includes('tap again');
         log?.click();
         return document.querySelectorAll('.notch.done').length > {done}"
    );
    person.until(&script, "the set is logged").await;
    assert_eq!(person.run("return window.wasAsked").await, false);
}

#[tokio::test]
async fn a_jump_of_load_is_begun_by_ear_by_the_second_tap_and_logged_by_one() {
    let server = Server::start();
    let browser = Browser::start("jump-by-ear");
    let person = Person::open(&browser, &server).await;
    person.tap("welcome-skip").await;
    person.tap("go-sheets").await;
    person.tap("write-lines").await;
    let sheet = "# Jumps\\nFront squat: 3 × 5 loads 20, 40, 60 kg; 20 kg; rest 60";
    paste(&person, sheet).await;
    person.tap("lines-keep").await;
    person.see("sheet-look").await;
    person.tap("go-floor").await;
    begin(&person, "Jumps").await;
    log(&person).await;

    // From the rest: the first tap asks, and one that bounces is no answer.
    person.reads("begin-set", "count-in 3 s").await;
    let bounce =
        "for (let n = 0; n < 3; n++) document.querySelector('[data-part=\"begin-set\"]').click()";
    person.until(&format!("{bounce}; return document.querySelector('[data-part=\"begin-set\"]').innerText.includes('tap again')"), "it is asked about").await;
    assert!(!person.has("cues-stop").await, "nothing was begun");
    picture(&person, "jump-by-ear").await;
    until_begun(&person, "begin-set").await;
    log_unasked(&person).await;

    // From the pad of the set, beside the large button, which goes on to ask for itself.
    end_rest(&person).await;
    person.reads("main", "60").await;
    person.reads("cues-begin", "by ear").await;
    // A tap right after the one that logged is taken for a slip; it is given again.
    let ask = "const ear = document.querySelector('[data-part=\"cues-begin\"]');
               const asked = ear.innerText.includes('sure? by ear');
               if (!asked) ear.click();
               return asked";
    person.until(ask, "it is asked about").await;
    person.reads("log", "tap when racked").await;
    assert!(!person.has("cues-stop").await, "nothing was begun");
    until_begun(&person, "cues-begin").await;
    log_unasked(&person).await;
    assert_eq!(person.count(DONE).await, 3);
    person.close().await;
}

#[tokio::test]
async fn a_first_time_begins_light_and_follows_the_reserve() {
    let server = Server::start();
    let browser = Browser::start("first");
    let person = Person::open(&browser, &server).await;
    person.tap("welcome-skip").await;
    person.tap("go-sheets").await;
    person.tap("write-lines").await;
    paste(&person, "# First day\\nFront squat: 3 × 5–7 @ 2; rest 60").await;
    person.tap("lines-keep").await;
    person.see("sheet-look").await;
    person
        .reads("because", "first time: begin light with 20 kg")
        .await;
    person.tap("go-floor").await;
    begin(&person, "First day").await;
    person.reads("main", "20").await;
    person.reads("because", "say how much you had left").await;
    person.reads("reserve", "reps left?").await;
    picture(&person, "first-time").await;

    person.tap("reserve").await;
    person.tap("reserve-5").await;
    person.reads("reserve", "5 in reserve").await;
    log(&person).await;
    end_rest(&person).await;
    person.reads("main", "22.5").await;
    person
        .reads(
            "because",
            "7 at 20 kg with 5 or more left, 2 aimed at: a larger step to 22.5 kg",
        )
        .await;
    person.tap("reserve").await;
    person.tap("reserve-2").await;
    log(&person).await;
    end_rest(&person).await;
    person.reads("main", "22.5").await;
    person
        .reads("because", "as in the set before: 22.5 kg")
        .await;
    person.reads("reserve", "reserve").await;
    person.close().await;
}
