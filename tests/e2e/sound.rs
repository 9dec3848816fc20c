//! What is heard and said, what the screen says when nothing can be, and clocks that jump.

use super::browser::Browser;
use super::engine::{Engine, only_in};
use super::looks::picture;
use super::person::Person;
use super::server::Server;
use super::whole_session::begin;
use serde_json::json;

/// Opens the app again once all of it is on disk.
async fn reload(person: &Person) {
    let script = "return document.querySelector('[data-unsaved]') === null";
    person.until(script, "everything is on disk").await;
    person.reload().await;
}

/// Logs the first set and waits until its rest is on disk.
async fn rest(person: &Person) {
    begin(person, "Lower A").await;
    person.tap("log").await;
    person.see("rest").await;
    person.reads("saved", "saved").await;
}

/// Seconds of the rest on screen.
async fn left(person: &Person) -> i64 {
    let clock = person.read("rest").await;
    let (minutes, seconds) = clock.split_once(':').expect("a clock reading");
    minutes.parse::<i64>().unwrap() * 60 + seconds.parse::<i64>().unwrap()
}

#[tokio::test]
async fn after_a_reload_the_screen_says_that_sound_needs_a_tap() {
    if !only_in(
        &[Engine::Chromium, Engine::Webkit],
        "Firefox sounds only on a sound device",
    ) {
        return;
    }
    let server = Server::start();
    let browser = Browser::start("no-sound");
    let person = Person::arrive(&browser, &server).await;
    rest(&person).await;
    assert!(!person.has("no-sound").await, "it sounds after a tap");
    reload(&person).await;
    person.reads("no-sound", "No sound: tap").await;
    picture(&person, "floor-no-sound").await;
    // Any tap brings it back; this one is there to say so.
    person.tap("sound-again").await;
    person.gone("no-sound").await;
    person.close().await;
}

#[tokio::test]
async fn sounds_are_chosen_in_kit_and_kept() {
    let server = Server::start();
    let browser = Browser::start("sounds");
    let person = Person::arrive(&browser, &server).await;
    person.tap("go-kit").await;
    person.reads("voice", "cannot speak here").await;
    person
        .reads("sound", "No page can ring once it is closed")
        .await;
    person.tap("sound-set-1").await;
    person.tap("sound-way-1").await;
    person.tap("rest-half").await;
    person.tap("sound-test").await;
    person
        .run("document.querySelector('[data-part=\"sound\"]').scrollIntoView()")
        .await;
    picture(&person, "kit-sound").await;
    reload(&person).await;
    let kept = "const on = (part) => document.querySelector(`[data-part=\"${part}\"]`);
                return on('sound-set-1')?.ariaPressed === 'true' && on('sound-set-0').ariaPressed === 'false'
                  && on('sound-way-1').ariaPressed === 'true' && on('rest-half').checked";
    person.until(kept, "the choices are kept").await;
    person.close().await;
}

#[tokio::test]
async fn a_rest_says_what_comes_next_and_its_end_is_felt() {
    if !only_in(
        &[Engine::Chromium],
        "a script before the app comes by Chromium's devtools",
    ) {
        return;
    }
    let server = Server::start();
    let browser = Browser::start("voice");
    let person = Person::arrive(&browser, &server).await;
    person.before_the_app(
        "window.spoken = []; window.shaken = []; window.hushed = 0;
         const near = { name: 'near', lang: 'en-GB', localService: true, default: true };
         const synthesis = new EventTarget();
         Object.assign(synthesis, { getVoices: () => [near], speak: (said) => spoken.push(said.text),
                                    cancel: () => { hushed++ } });
         Object.defineProperty(window, 'speechSynthesis', { value: synthesis });
         window.SpeechSynthesisUtterance = class { constructor(text) { this.text = text } };
         navigator.vibrate = (pattern) => { shaken.push(String(pattern)); return true };",
    )
    .await;
    reload(&person).await;
    person.tap("go-kit").await;
    person.tap("speech-1").await;
    person.tap("speech-next").await;
    person
        .until("return spoken.length === 2", "each choice is tried")
        .await;
    person
        .run("document.querySelector('[data-part=\"voice\"]').scrollIntoView({block: 'end'})")
        .await;
    picture(&person, "kit-voice").await;
    person.tap("go-floor").await;
    begin(&person, "Lower A").await;
    person.tap("cues-begin").await;
    person
        .until("return spoken.includes('3')", "the count-in is said")
        .await;
    person.tap("log").await;
    person
        .until(
            "return spoken.includes('next: 15 kilograms, 6 reps')",
            "what comes next is said",
        )
        .await;
    for _ in 0..2 {
        person.tap("rest-less").await;
    }
    person
        .until(
            "return shaken.includes('250,120,250,120,500')",
            "the end of the rest is felt",
        )
        .await;
    person.reads("log", "rest over by").await;
    person.close().await;
}

#[tokio::test]
async fn a_rest_outlives_a_clock_set_back_a_new_zone_and_sleep() {
    if !only_in(
        &[Engine::Chromium],
        "clocks and zones are set by Chromium's devtools",
    ) {
        return;
    }
    let server = Server::start();
    let browser = Browser::start("clocks");
    let person = Person::arrive(&browser, &server).await;
    rest(&person).await;
    let before = left(&person).await;
    for zone in ["Asia/Kathmandu", "America/St_Johns"] {
        person
            .devtools(
                "Emulation.setTimezoneOverride",
                json!({ "timezoneId": zone }),
            )
            .await;
        let now = left(&person).await;
        assert!(now <= before && now > before - 20, "{now} s of {before} s");
    }
    // An hour back, and the page opened again: the rest goes on and does not stand.
    person
        .before_the_app(
            "const real = Date.prototype.getTime; window.shift = -3600000;
         Date.prototype.getTime = function () { return real.call(this) + window.shift };",
        )
        .await;
    reload(&person).await;
    person.see("rest").await;
    let after = left(&person).await;
    assert!(after <= before, "{after} s of {before} s");
    person
        .until(
            &format!(
                "const [m, s] = document.querySelector('[data-part=\"rest\"]').innerText.split(':');
                 return m * 60 + +s < {after}"
            ),
            "the rest goes on",
        )
        .await;
    // The device sleeps for five minutes.
    person.run("window.shift += 300000").await;
    person.reads("log", "rest over by 4:").await;
    person.close().await;
}

#[tokio::test]
async fn the_count_on_the_board_waits_for_what_is_heard() {
    if !only_in(
        &[Engine::Chromium],
        "a script before the app comes by Chromium's devtools",
    ) {
        return;
    }
    let server = Server::start();
    let browser = Browser::start("latency");
    let person = Person::arrive(&browser, &server).await;
    // Headphones that are 0.9 s late.
    person
        .before_the_app(
            "Object.defineProperty(AudioContext.prototype, 'outputLatency', { get: () => 0.9 });",
        )
        .await;
    reload(&person).await;
    begin(&person, "Upper B").await;
    person
        .run(
            "const part = (name) => document.querySelector(`[data-part=\"${name}\"]`);
             const begun = performance.now();
             const look = () => {
               const count = part('count')?.innerText ?? '';
               if (count.startsWith('2')) window.waited = performance.now() - begun;
               else requestAnimationFrame(look);
             };
             part('cues-begin').click();
             look();",
        )
        .await;
    person
        .until("return window.waited > 0", "the count-in goes on")
        .await;
    let waited = person.run("return window.waited").await;
    // A second of count-in, and what the headphones take.
    assert!(waited.as_f64().unwrap() > 1700.0, "{waited} ms");
    person.close().await;
}
