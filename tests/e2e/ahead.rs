//! What the floor thinks ahead: the next set, a set off plan, turns, the budget; the screen that stays on, and the look.

use super::browser::Browser;
use super::engine::Engine;
use super::looks::{picture, resize};
use super::person::Person;
use super::server::Server;
use super::sight::to_the_bar;
use super::whole_session::{begin, do_first, end_now, end_rest, log};
use super::write::paste;
use serde_json::{Value, json};

#[tokio::test]
async fn a_look_is_chosen_in_kit_and_kept() {
    let server = Server::start();
    let browser = Browser::start("chosen");
    let person = Person::arrive(&browser, &server).await;
    let ground = "return getComputedStyle(document.documentElement).backgroundColor";
    person.tap("go-kit").await;
    for (name, colour) in [
        ("look-sun", "rgb(255, 255, 255)"),
        ("look-night", "rgb(0, 0, 0)"),
    ] {
        person.tap(name).await;
        assert_eq!(person.run(ground).await, json!(colour));
        let pressed =
            format!("return document.querySelector('[data-part=\"{name}\"]').ariaPressed");
        assert_eq!(person.run(&pressed).await, json!("true"));
    }
    person.reload().await;
    let theme = "return document.documentElement.dataset.theme";
    assert_eq!(person.run(theme).await, json!("night"));
    person.tap("look-phone").await;
    assert_eq!(person.run(theme).await, Value::Null);
    person.close().await;
}

#[tokio::test]
async fn a_rest_shows_all_of_the_next_set_and_what_a_set_off_plan_changes() {
    let server = Server::start();
    let browser = Browser::start("ahead");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    to_the_bar(&person).await;
    // The last ramp-up set: the work set comes next.
    for _ in 0..2 {
        log(&person).await;
        end_rest(&person).await;
    }
    log(&person).await;
    person.see("rest").await;
    person.reads("next", "60 kg, 5–7 reps").await;
    person.reads("next-exercise", "Front squat").await;
    person.reads("next-kind", "work set 1 of 3 · tempo ").await;
    person.see("change").await;
    person.see("because").await;
    person.reads("budget", "45").await;
    person.reads("times", "of 45 min").await;
    assert!(!person.has("off-plan").await);
    picture(&person, "sight-rest").await;
    end_rest(&person).await;

    for _ in 0..4 {
        person.tap("reps-less").await;
    }
    log(&person).await;
    person
        .reads("off-plan", "3 reps where 5–7 were asked")
        .await;
    person.see("because").await;
    picture(&person, "sight-off-plan").await;
    person.close().await;
}

#[tokio::test]
async fn a_rest_says_whose_turn_it_is_in_a_pair() {
    let server = Server::start();
    let browser = Browser::start("turns");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    do_first(&person, 5).await;
    person.reads("exercise", "Calf raise on the step").await;
    log(&person).await;
    person.reads("next-exercise", "Side plank").await;
    person
        .reads("next-kind", "then Calf raise on the step")
        .await;
    picture(&person, "sight-pair").await;
    person.close().await;
}

/// Refuses to keep the screen on, as a phone low on battery does.
const REFUSE: &str = "
    Object.defineProperty(navigator, 'wakeLock', { configurable: true, value: {
      request: async () => { throw new DOMException('', 'NotAllowedError'); } } });";

#[tokio::test]
async fn the_floor_says_whether_the_screen_stays_on() {
    let server = Server::start();
    let browser = Browser::start("awake");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    person.tap("more").await;
    person.reads("screen-stays", "The screen stays on.").await;
    assert!(!person.has("may-sleep").await);
    person.tap("panel-close").await;
    person.reload().await;
    person.run(REFUSE).await;
    // It is asked for again when a page is shown; here it was not let go of, so the session is begun again.
    end_now(&person).await;
    person.tap("put-away").await;
    person.tap("go-floor").await;
    begin(&person, "Lower A").await;
    person.reads("may-sleep", "let the screen go dark").await;
    picture(&person, "sight-may-sleep").await;
    person.close().await;
}

/// A name of sixty letters; a hold, a carry and a set in stages that fall short; a cluster; a bar that goes no lower.
const ODD: &str = "# Odd day\\nPlank: 1 × 30 s; no load\\nFarmer\\'s walk: 1 × 20 m; 20 kg\\nLateral raise: 1 × [hold 10 s → 8 partials]; 8 kg\\nBench press: cluster 1 × 2 in 4 pause 15 s; 20 kg\\nFront squat with a pause and a name as long as sixty letters (barbell, squat): 1 × 5; 102.5 kg";

#[tokio::test]
async fn what_is_no_plain_set_is_said_as_it_is() {
    let server = Server::start();
    let browser = Browser::start("odd");
    let person = Person::open(&browser, &server).await;
    person.tap("welcome-skip").await;
    person.tap("go-sheets").await;
    person.tap("write-lines").await;
    paste(&person, ODD).await;
    person.tap("lines-keep").await;
    person.see("sheet-look").await;
    person.tap("go-floor").await;
    begin(&person, "Odd day").await;

    person.reads("log", "tap when done").await;
    person.tap("reps-less").await;
    log(&person).await;
    let held = "held 0:25 where 0:30 were asked";
    person.reads("off-plan", held).await;
    end_rest(&person).await;

    person.reads("log", "tap when put down").await;
    person.tap("reps-less").await;
    log(&person).await;
    person.reads("off-plan", "15 m where 20 m were asked").await;
    end_rest(&person).await;

    person.reads("log", "partials · tap when put down").await;
    person.tap("reps-less").await;
    log(&person).await;
    person.reads("off-plan", "7 in place of 8 partials").await;
    // Each stage of it is put right by itself.
    person.tap("amend").await;
    person.tap("done-stage-1-less").await;
    person.reads("done-stage-1-figure", "5 s").await;
    person.tap("done-stage-2-more").await;
    person.reads("done-stage-2-figure", "8 partials").await;
    let name = "return document.querySelector('[data-part=\"done-stage-1-less\"]').getAttribute('aria-label')";
    assert_eq!(person.run(name).await, json!("less time held in stage 1"));
    person.tap("amend-close").await;
    person.reads("off-plan", "5 s in place of hold 10 s").await;
    end_rest(&person).await;

    person.reads("target", "4 × 2").await;
    person.reads("target", "reps, 15 s between").await;
    person.reads("log", "tap when racked").await;
    log(&person).await;
    person.see("rest").await;
    assert!(
        !person.has("off-plan").await,
        "eight reps are four times two"
    );
    // The empty bar: nothing is lighter, and that is said.
    person.tap("amend").await;
    person.tap("amend-load-less").await;
    person
        .reads("amend-wrong", "nothing further that way")
        .await;
    person.tap("amend-reps-less").await;
    let gone = "return document.querySelector('[data-part=\"amend-wrong\"]').innerText === ''";
    person.until(gone, "that was of the load").await;
    person.tap("amend-reps-more").await;
    person.tap("amend-load-less").await;
    person
        .reads("amend-wrong", "nothing further that way")
        .await;
    person.tap("amend-load-more").await;
    person.until(gone, "there is a step that way").await;
    // Far from what was logged it is typed; what is no load keeps the panel open.
    person.type_into("load-typed", "heavy").await;
    person.reads("amend-wrong", "heavy").await;
    person.tap("amend-close").await;
    person.see("amend-panel").await;
    person.type_into("load-typed", "60").await;
    person.reads("amend-load-figure", "60").await;
    person.until(gone, "what was wrong is put right").await;
    person.tap("amend-close").await;
    person.gone("amend-panel").await;
    end_rest(&person).await;

    person.reads("main", "102.5").await;
    picture(&person, "sight-long-name").await;
    person.close().await;
}

/// A push-up with nothing added, and a dip with help: the words behind its load are the longest there are.
const BODY: &str = "# Body day\\nPush-up (body, push across): 1 × 12; 64 % body; as written\\nDip (body, push across): 1 × 6; -20 kg assistance";

#[tokio::test]
async fn of_a_body_with_nothing_added_the_reps_are_the_largest_figure() {
    let server = Server::start();
    let browser = Browser::start("body");
    let person = Person::open(&browser, &server).await;
    person.tap("welcome-skip").await;
    person.tap("go-sheets").await;
    person.tap("write-lines").await;
    paste(&person, BODY).await;
    person.tap("lines-keep").await;
    person.see("sheet-look").await;
    person.tap("go-floor").await;
    begin(&person, "Body day").await;

    person.reads("main", "12 reps").await;
    person.reads("target", "nothing added").await;
    picture(&person, "body-alone").await;
    log(&person).await;
    person.reads("logged", "12 reps, nothing added").await;
    person.reads("next", "20 kg assistance, 6 reps").await;
    end_rest(&person).await;
    person.reads("main", "20 kg assistance").await;
    person.reads("target", "6 reps").await;

    // On its side the phone has little room beside such a load: the seconds under way stay in one line all the same.
    if Engine::here() == Engine::Chromium {
        resize(&person, 844, 390).await;
    }
    person.tap("cues-begin").await;
    person.reads("count", "under way").await;
    let lines = "
        const text = document.createRange();
        text.selectNodeContents(document.querySelector('[data-part=\"count\"] > .second'));
        const upper = document.querySelector('.floor-upper');
        return [new Set([...text.getClientRects()].map((line) => line.top)).size, upper.scrollWidth - upper.clientWidth];";
    assert_eq!(
        person.run(lines).await,
        json!([1, 0]),
        "lines of the count, and how far it sticks out"
    );
    person.close().await;
}
