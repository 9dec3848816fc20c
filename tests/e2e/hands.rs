//! The floor under careless hands: targets large and apart, slips that do nothing, reps as they were heard or tapped.

use super::browser::Browser;
use super::engine::{Engine, only_in};
use super::person::Person;
use super::server::Server;
use super::whole_session::{begin, do_first, end_now, end_rest, log_all};
use serde_json::{Value, json};

/// A second tap within this time does nothing, in milliseconds: what `ui/floor/touch.rs` says.
const SLIP_MS: u64 = 600;

const DONE: &str = ".notch.done";

/// Everything that can be tapped and is too small or too near to its neighbour, in words.
const CROWDED: &str = "
    const shown = [...document.querySelectorAll('.floor button, .floor a, .floor input, .floor textarea')]
      .filter((one) => !one.closest('[inert]') && one.getClientRects().length > 0);
    const box = (one) => one.getBoundingClientRect();
    const name = (one) => one.dataset.part ?? one.innerText;
    const wrong = shown.filter((one) => box(one).width < 63.5 || box(one).height < 63.5)
      .map((one) => `${name(one)} is ${box(one).width.toFixed(0)} × ${box(one).height.toFixed(0)}`);
    shown.forEach((a, i) => shown.slice(i + 1).forEach((b) => {
      // A window too narrow for five and what keeps them apart has them edge to edge (docs/hands.md).
      if (innerWidth < 352 && a.closest('.pad-row') && a.closest('.pad-row') === b.closest('.pad-row')) return;
      const [p, q] = [box(a), box(b)];
      const across = Math.max(p.left - q.right, q.left - p.right);
      const down = Math.max(p.top - q.bottom, q.top - p.bottom);
      if (Math.max(across, down) < 7.5) wrong.push(`${name(a)} and ${name(b)} are ${Math.max(across, down).toFixed(0)} apart`);
    }));
    if (shown.length === 0) wrong.push('nothing can be tapped');
    return wrong;";

/// The share of the screen that the pad takes.
const PAD: &str = "
    const pad = document.querySelector('.pad').getBoundingClientRect();
    return pad.width * pad.height / (innerWidth * innerHeight)";

async fn resize(person: &Person, width: u32, height: u32) {
    let metrics =
        json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": true });
    person
        .devtools("Emulation.setDeviceMetricsOverride", metrics)
        .await;
    person
        .until(
            &format!("return innerWidth === {width}"),
            "the window has its size",
        )
        .await;
}

/// Measures what can be tapped, in three sizes; where the window takes none, in its own.
async fn roomy(person: &Person, screen: &str) {
    if Engine::here() != Engine::Chromium {
        roomy_at(person, screen, "its own size").await;
        return;
    }
    for (width, height) in [(390, 844), (844, 390), (320, 568)] {
        resize(person, width, height).await;
        roomy_at(person, screen, &format!("{width} × {height}")).await;
    }
    resize(person, 390, 844).await;
}

async fn roomy_at(person: &Person, screen: &str, size: &str) {
    let crowded = person.run(CROWDED).await;
    assert_eq!(crowded, json!([]), "{screen} at {size}");
    let share = person.run(PAD).await.as_f64().unwrap_or(0.0);
    assert!(share >= 0.4, "{screen}: the pad takes {share} at {size}");
}

/// Opens a panel, measures it, and puts it away.
async fn roomy_panel(person: &Person, ways: &[&str], panel: &str) {
    for way in ways {
        person.tap(way).await;
    }
    person.see(panel).await;
    roomy(person, panel).await;
    person.tap("panel-close").await;
    person.gone(panel).await;
}

#[tokio::test]
async fn everything_to_tap_is_large_and_apart_and_the_pad_takes_two_fifths() {
    if !only_in(
        &[Engine::Chromium],
        "only Chromium's devtools give the window every size and look",
    ) {
        return;
    }
    let server = Server::start();
    let browser = Browser::start("roomy");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    roomy(&person, "the board of a set").await;
    super::looks::picture(&person, "hands-set").await;
    roomy_panel(&person, &["load"], "load-panel").await;
    roomy_panel(&person, &["reserve"], "reserve-panel").await;
    roomy_panel(&person, &["more"], "more-panel").await;
    for (way, panel) in [
        ("short-open", "short-panel"),
        ("swap", "swap-panel"),
        ("order", "order-panel"),
        ("heat", "heat-panel"),
        ("note", "note-panel"),
        ("keys", "keys-panel"),
    ] {
        roomy_panel(&person, &["more", way], panel).await;
    }
    person.tap("more").await;
    person.tap("end-ask").await;
    person.see("end-now").await;
    roomy(&person, "the question before the end").await;
    person.tap("end-not").await;
    person.tap("panel-close").await;
    person.gone("more-panel").await;
    person.tap("count-taps").await;
    person.see("count-log").await;
    roomy(&person, "the pad that counts").await;
    super::looks::picture(&person, "hands-count").await;
    person.tap("count-stop").await;
    person.tap("log").await;
    person.see("rest").await;
    roomy(&person, "the board of a rest").await;
    super::looks::picture(&person, "hands-rest").await;
    roomy_panel(&person, &["amend"], "amend-panel").await;
    end_rest(&person).await;
    log_all(&person).await;
    roomy(&person, "the board of the end").await;
    person.close().await;
}

/// The middle of a part.
async fn middle(person: &Person, part: &str) -> Value {
    person.see(part).await;
    let script = format!(
        "const box = document.querySelector('[data-part=\"{part}\"]').getBoundingClientRect();
         return {{ x: box.x + box.width / 2, y: box.y + box.height / 2 }}"
    );
    person.run(&script).await
}

/// Touches the screen: what the fingers do, and where each is with the radius that it covers.
async fn touch(person: &Person, kind: &str, fingers: &[(f64, f64, f64)]) {
    let points: Vec<Value> = fingers
        .iter()
        .zip(0..)
        .map(|(&(x, y, radius), id)| json!({ "x": x, "y": y, "radiusX": radius, "radiusY": radius, "id": id }))
        .collect();
    let event = json!({ "type": kind, "touchPoints": points });
    person.devtools("Input.dispatchTouchEvent", event).await;
}

/// Touches once with one finger.
async fn dab(person: &Person, x: f64, y: f64, radius: f64) {
    touch(person, "touchStart", &[(x, y, radius)]).await;
    touch(person, "touchEnd", &[]).await;
}

/// Lets some milliseconds pass for the app, which reads this clock.
async fn pass(person: &Person, ms: u64) {
    let script = format!(
        "window.passed = (window.passed ?? 0) + {ms};
         if (!window.before) {{
           window.before = performance.now.bind(performance);
           performance.now = () => window.before() + window.passed;
         }}"
    );
    person.run(&script).await;
}

#[tokio::test]
async fn slips_palms_and_second_fingers_log_nothing_and_a_knuckle_logs_once() {
    if !only_in(
        &[Engine::Chromium],
        "fingers of every size come by Chromium's devtools",
    ) {
        return;
    }
    let server = Server::start();
    let browser = Browser::start("slips");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    let at = middle(&person, "log").await;
    let (x, y) = (at["x"].as_f64().unwrap(), at["y"].as_f64().unwrap());

    // A palm, a touch that the system takes, and two fingers at once.
    dab(&person, x, y, 90.0).await;
    touch(&person, "touchStart", &[(x, y, 8.0)]).await;
    touch(&person, "touchCancel", &[]).await;
    touch(&person, "touchStart", &[(x, y, 8.0)]).await;
    touch(&person, "touchStart", &[(x, y, 8.0), (x + 40.0, y, 8.0)]).await;
    touch(&person, "touchEnd", &[(x + 40.0, y, 8.0)]).await;
    touch(&person, "touchEnd", &[]).await;
    // What they did would be on the screen by the next frame, and the tap after them comes later.
    let frame = "return await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(true))))";
    person.until(frame, "a frame is painted").await;
    assert_eq!(person.count(DONE).await, 0);

    // A knuckle, and its bounce on what is now in its place.
    pass(&person, SLIP_MS).await;
    dab(&person, x, y, 30.0).await;
    dab(&person, x, y, 30.0).await;
    person.see("rest").await;
    assert_eq!(person.count(DONE).await, 1);
    assert!(person.has("begin-set").await, "the rest goes on");

    // Just within the time it is a slip, after it a tap.
    pass(&person, SLIP_MS).await;
    dab(&person, x, y, 8.0).await;
    person.see("cues-stop").await;
    person.close().await;
}

#[tokio::test]
async fn a_rest_that_ends_under_the_finger_logs_nothing() {
    let server = Server::start();
    let browser = Browser::start("under");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    person.tap("log").await;
    person.see("begin-set").await;
    pass(&person, 45_000).await;
    // The moment the pad of the set is there, the finger that was on its way comes down.
    let script = "const log = document.querySelector('[data-part=\"log\"]'); log?.click(); return log !== null";
    person.until(script, "the rest is over").await;
    person.reads("kind", "work set 2 of 3").await;
    assert_eq!(person.count(DONE).await, 1);
    person.close().await;
}

#[tokio::test]
async fn the_reps_that_were_heard_are_offered_and_logged_by_one_tap() {
    let server = Server::start();
    let browser = Browser::start("heard");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Upper B").await;
    do_first(&person, 2).await;
    person.reads("exercise", "Chin-up").await;
    person.reads("log", "6").await;
    person.tap("cues-begin").await;
    person.reads("count", "get set").await;
    // Three seconds to count in, three reps of five, and a little.
    pass(&person, 3000 + 3 * 5000 + 500).await;
    person.reads("log", "3 as far as heard").await;
    person.tap("cues-stop").await;
    person.see("cues-begin").await;
    person.reads("log", "3 as far as heard").await;
    // A reload keeps it: it was written with the stop.
    person
        .until(
            "return document.querySelector('[data-unsaved]') === null",
            "it is on disk",
        )
        .await;
    person.reload().await;
    person.reads("log", "3 as far as heard").await;
    person.tap("log").await;
    person.reads("logged", "logged 3 reps").await;
    person.close().await;
}

#[tokio::test]
async fn each_side_is_logged_with_its_own_reps() {
    let server = Server::start();
    let browser = Browser::start("sides");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    do_first(&person, 4).await;
    person.reads("exercise", "split squat").await;
    person.tap("more").await;
    person.tap("sides-apart").await;
    person.see("sides-panel").await;
    roomy(&person, "sides-panel").await;
    person.tap("second-side-less").await;
    person.tap("second-side-less").await;
    person.tap("sides-use").await;
    person.reads("log", "10 · 8").await;
    super::looks::picture(&person, "hands-sides").await;
    if person.read("log").await.contains("Load?") {
        person.tap("load").await;
        person.tap("load-step-more").await;
        person.tap("load-use").await;
    }
    person.tap("log").await;
    person.reads("logged", "10 and 8 reps").await;
    person.tap("amend").await;
    person.tap("second-side-more").await;
    person.tap("amend-close").await;
    person.reads("logged", "10 and 9 reps").await;

    // In the ledger each side is put right by itself too.
    end_now(&person).await;
    person.tap("put-away").await;
    person.tap("session").await;
    person.tap("set").await;
    person.reads("second-side-figure", "9").await;
    person.tap("second-side-more").await;
    person.tap("first-side-less").await;
    person.tap("correct-keep").await;
    person.reads("session-record", "9 and 10 reps").await;
    person
        .reads("session-record", "first logged as 10 and 8 reps")
        .await;
    person.close().await;
}

#[tokio::test]
async fn a_tap_a_rep_counts_and_another_button_logs() {
    let server = Server::start();
    let browser = Browser::start("taps");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    person.tap("count-taps").await;
    person.reads("log", "0 tap once a rep").await;
    for rep in 1..=4 {
        pass(&person, 1000).await;
        // The bounce of a wet finger counts nothing.
        let log = "document.querySelector('[data-part=\"log\"]').click();";
        person.run(&format!("{log} {log}")).await;
        person.reads("log", &rep.to_string()).await;
    }
    person.tap("reps-less").await;
    person.reads("count-log", "log 3 reps").await;
    person.tap("count-log").await;
    person.reads("logged", "logged 3 reps").await;
    person.tap("undo-set").await;
    person.see("log").await;
    person.close().await;
}

#[tokio::test]
async fn a_session_short_of_time_is_shortened_by_one_tap_and_brought_back_by_one() {
    let server = Server::start();
    let browser = Browser::start("short");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    assert!(!person.has("short").await);
    person.tap("log").await;
    person.see("begin-set").await;
    person.tap("rest-hold").await;
    // Half an hour of the forty-five minutes is gone.
    pass(&person, 30 * 60_000).await;
    person.reads("short", "min over").await;
    // What is held open has no length to change.
    for part in ["rest-less", "rest-more"] {
        let off =
            format!("return document.querySelector('[data-part=\"{part}\"]')?.disabled === true");
        person.until(&off, &format!("{part} is off")).await;
    }
    roomy(&person, "the board of a rest without time").await;
    super::looks::picture(&person, "hands-over").await;
    person.tap("short").await;
    person.see("short-panel").await;
    person.reads("short-gone", "saves").await;
    person.reads("short-gone", "Side plank").await;
    roomy(&person, "short-panel").await;
    super::looks::picture(&person, "floor-short").await;
    let said = person.read("short-gone").await;
    assert!(!said.contains("swing"), "power stays: {said}");
    person.tap("short-take").await;
    person.see("short-undo").await;
    let fewer = person.count(".notch").await;
    assert!(fewer < 18, "{fewer} sets are left");
    person.tap("short-undo").await;
    person
        .until(
            "return document.querySelectorAll('.notch').length === 18",
            "all sets are back",
        )
        .await;
    person.tap("short-take").await;
    person.tap("short-done").await;
    person.gone("short-panel").await;
    assert!(!person.has("short").await, "it fits now");
    // Later it is undone as a whole too.
    person.tap("more").await;
    person.tap("undo").await;
    person
        .until(
            "return document.querySelectorAll('.notch').length === 18",
            "all sets are back",
        )
        .await;
    person.close().await;
}

#[tokio::test]
async fn a_pair_says_who_is_next() {
    let server = Server::start();
    let browser = Browser::start("pair");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    do_first(&person, 5).await;
    person.reads("turn", "pair 1 of 2 · ").await;
    person.reads("turn", "Side plank").await;
    super::looks::picture(&person, "hands-pair").await;
    person.close().await;
}
