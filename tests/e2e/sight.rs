//! What is seen from two metres: how large, how strong, how still, and that nothing is out of reach.

use super::browser::Browser;
use super::engine::{Engine, only_in};
use super::looks::{LOOKS, look, picture, resize};
use super::person::Person;
use super::server::Server;
use super::share::with_sheet;
use super::whole_session::{begin, end_rest, log};
use serde_json::{Value, json};

/// Goes on until a barbell lies on the board.
pub async fn to_the_bar(person: &Person) {
    for _ in 0..3 {
        log(person).await;
        end_rest(person).await;
    }
    person.see("plates").await;
}

/// Height in CSS pixels of the digits of what a selector finds, as the browser draws them in the face it has.
async fn digits(person: &Person, css: &str) -> f64 {
    let script = format!(
        "const one = document.querySelector('{css}');
         const pen = document.createElement('canvas').getContext('2d');
         const style = getComputedStyle(one);
         pen.font = `${{style.fontWeight}} ${{style.fontSize}} ${{style.fontFamily}}`;
         const drawn = pen.measureText('8');
         return drawn.actualBoundingBoxAscent + drawn.actualBoundingBoxDescent"
    );
    person.run(&script).await.as_f64().unwrap_or(0.0)
}

/// 20 minutes of arc at two metres are 11.64 mm (NUREG-0700 rev. 2, 1.3.1-4), and 75 CSS pixels of 0.155 mm; how these
/// are derived is in `tests/looks.rs`.
#[tokio::test]
async fn load_rest_count_and_reps_are_read_from_two_metres() {
    if !only_in(
        &[Engine::Chromium],
        "only Chromium's devtools give the window every size and look",
    ) {
        return;
    }
    let server = Server::start();
    let browser = Browser::start("far");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    to_the_bar(&person).await;
    for (width, height) in [(390, 844), (844, 390)] {
        resize(&person, width, height).await;
        for css in ["[data-part=\"main\"] .figure", ".pad-figure"] {
            let size = digits(&person, css).await;
            assert!(size >= 75.0, "{css} has {size} px at {width} × {height}");
        }
    }
    person.tap("cues-begin").await;
    person.reads("count", "of ").await;
    let size = digits(&person, "[data-part=\"count\"] .second").await;
    assert!(size >= 75.0, "the count has {size} px");
    log(&person).await;
    for (width, height) in [(390, 844), (844, 390)] {
        resize(&person, width, height).await;
        let size = digits(&person, "[data-part=\"rest\"] .figure").await;
        assert!(size >= 75.0, "the rest has {size} px at {width} × {height}");
    }
    person.close().await;
}

/// Five characters and six: the widest loads. They and their unit stay on the screen, and as large as they can be.
#[tokio::test]
async fn a_wide_load_is_as_large_and_fits() {
    if !only_in(
        &[Engine::Chromium],
        "only Chromium's devtools give the window every size and look",
    ) {
        return;
    }
    let server = Server::start();
    let browser = Browser::start("wide");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    to_the_bar(&person).await;
    // 16 minutes of arc are 60 pixels.
    for (load, least) in [("102.5", 75.0), ("101.25", 60.0)] {
        person.tap("load").await;
        person.type_into("load-typed", load).await;
        person
            .until(
                "const part = (name) => document.querySelector(`[data-part=\"${name}\"]`);
                 (part('load-anyway') ?? part('load-use'))?.click();
                 return part('load-panel') === null",
                "the load is taken, even one that the kit cannot make",
            )
            .await;
        person.reads("main", load).await;
        for (width, height) in [(390, 844), (844, 390), (320, 568)] {
            resize(&person, width, height).await;
            let beyond = "const upper = document.querySelector('[data-part=\"upper\"]').getBoundingClientRect();
                          return [...document.querySelectorAll('[data-part=\"board\"] *')]
                            .filter((one) => one.getBoundingClientRect().right > upper.right + 0.5)
                            .map((one) => one.outerHTML)";
            assert_eq!(person.run(beyond).await, json!([]), "{load} at {width}");
            let size = digits(&person, "[data-part=\"main\"] .figure").await;
            assert!(
                size >= least || width == 320,
                "{load} has {size} px at {width}"
            );
        }
        picture(&person, &format!("sight-wide-{}", load.len())).await;
    }
    person.close().await;
}

/// Every text that is on the floor with less than 7:1 to what lies behind it, by what the browser computed.
const FAINT: &str = "
    const channels = (colour) => colour.match(/[\\d.]+/g).map(Number);
    const light = (colour) => {
      const [r, g, b] = channels(colour).map((c) => c / 255)
        .map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
      return 0.2126 * r + 0.7152 * g + 0.0722 * b;
    };
    const behind = (one) => {
      for (let at = one; at; at = at.parentElement) {
        const colour = getComputedStyle(at).backgroundColor;
        if ((channels(colour)[3] ?? 1) > 0) return colour;
      }
      return 'rgb(255, 255, 255)';
    };
    const faint = [];
    const walker = document.createTreeWalker(document.querySelector('[data-part=\"floor\"]'), NodeFilter.SHOW_TEXT);
    let texts = 0;
    while (walker.nextNode()) {
      const one = walker.currentNode.parentElement;
      if (!walker.currentNode.data.trim() || !one.getClientRects().length) continue;
      texts += 1;
      const style = getComputedStyle(one);
      const drawn = one.closest('svg') !== null;
      const front = light(drawn ? style.fill : style.color);
      const back = light(drawn ? getComputedStyle(one.parentElement.querySelector('rect')).fill : behind(one));
      const ratio = (Math.max(front, back) + 0.05) / (Math.min(front, back) + 0.05);
      if (ratio < 7) faint.push(`${walker.currentNode.data}: ${ratio.toFixed(2)}`);
    }
    return texts < 5 ? ['no floor'] : faint;";

async fn nothing_is_faint(person: &Person, screen: &str) {
    for name in LOOKS {
        look(person, name).await;
        let faint = person.run(FAINT).await;
        assert_eq!(faint, json!([]), "{screen} in the look {name}");
    }
    look(person, "dark").await;
}

#[tokio::test]
async fn every_text_on_the_floor_has_seven_to_one_in_every_look() {
    if !only_in(
        &[Engine::Chromium],
        "only Chromium's devtools give the window every size and look",
    ) {
        return;
    }
    let server = Server::start();
    let browser = Browser::start("strong");
    let person = Person::arrive(&browser, &server).await;
    person.tap("go-kit").await;
    person.tap("competition-discs").await;
    person.tap("go-floor").await;
    begin(&person, "Lower A").await;
    nothing_is_faint(&person, "a set").await;
    to_the_bar(&person).await;
    for _ in 0..2 {
        log(&person).await;
        end_rest(&person).await;
    }
    // Its plates have the colours of competition, and what is written on them is seen.
    person.find("svg [class^=\"disc-\"]").await;
    nothing_is_faint(&person, "a set with plates").await;
    for (open, panel) in [
        ("load", "load-panel"),
        ("reserve", "reserve-panel"),
        ("more", "more-panel"),
    ] {
        person.tap(open).await;
        person.see(panel).await;
        nothing_is_faint(&person, panel).await;
        person.tap("panel-close").await;
        person.gone(panel).await;
    }
    person.tap("cues-begin").await;
    person.see("count").await;
    nothing_is_faint(&person, "a set by ear").await;
    log(&person).await;
    person.see("rest").await;
    nothing_is_faint(&person, "a rest").await;
    picture(&person, "sight-discs").await;
    person.close().await;
}

/// Where the parts of the floor are, watched at every frame until `until` holds: each part with all its places.
async fn places(person: &Person, until: &str) -> Value {
    let script = format!(
        "const done = arguments[0];
         const places = {{}};
         const look = () => {{
           for (const one of document.querySelectorAll('[data-part=\"floor\"] [data-part]')) {{
             const at = one.getBoundingClientRect();
             const name = one.dataset.part;
             (places[name] ??= new Set()).add(`${{at.left.toFixed(1)}} ${{at.top.toFixed(1)}}`);
           }}
           if ({until}) {{
             done(Object.fromEntries(Object.entries(places).map(([name, all]) => [name, [...all]])));
           }} else {{
             requestAnimationFrame(look);
           }}
         }};
         look();"
    );
    person
        .client
        .execute_async(&script, vec![])
        .await
        .expect("the floor is watched")
}

fn stood_still(places: &Value, whenever: &str) {
    let places = places.as_object().expect("places by part");
    assert!(places.len() > 10, "{places:?}");
    for (part, places) in places {
        // What is aligned at its end begins elsewhere when it is shorter: the time on the right.
        let moves = part == "times";
        assert!(
            moves || places.as_array().is_some_and(|all| all.len() == 1),
            "{part} moved {whenever}: {places}"
        );
    }
}

const WATCH_SHIFTS: &str = "
    window.shifts = [];
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) {
        // The words under the figure of the pad are set in the middle of a line of their own.
        const words = (node) => (node?.closest ? node : node?.parentElement)?.closest('.pad-word');
        const moved = entry.sources.filter(({ node }) => !words(node)).map(({ node, previousRect, currentRect }) =>
          `${node?.nodeName} ${node?.textContent} ${JSON.stringify(previousRect)} ${JSON.stringify(currentRect)}`);
        if (!entry.hadRecentInput && moved.length > 0) window.shifts.push(`${entry.value} ${moved}`);
      }
    }).observe({ type: 'layout-shift', buffered: false });";

#[tokio::test]
async fn nothing_moves_while_figures_change_over_a_set_and_its_rest() {
    if !only_in(
        &[Engine::Chromium, Engine::Webkit],
        "Firefox sounds only on a sound device, and the screen says so",
    ) {
        return;
    }
    let server = Server::start();
    let browser = Browser::start("still");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    to_the_bar(&person).await;
    person.run(WATCH_SHIFTS).await;
    let before = places(&person, "true").await;
    person.tap("cues-begin").await;
    person.reads("count", "get set").await;
    let by_ear = places(
        &person,
        "/2 of/.test(document.querySelector('[data-part=\"count\"]').innerText.replace(/\\s+/g, ' '))",
    )
    .await;
    stood_still(&by_ear, "while a set is counted");
    for part in ["pad", "rail", "plates", "because"] {
        assert_eq!(before[part], by_ear[part], "{part} when the count begins");
    }
    person.tap("log").await;
    person.see("rest").await;
    person.reads("saved", "saved").await;
    // From four digits to three.
    while !person.read("rest").await.starts_with("10:") {
        person.tap("rest-more").await;
    }
    let resting = places(
        &person,
        "document.querySelector('[data-part=\"rest\"]').innerText.startsWith('9:')",
    )
    .await;
    stood_still(&resting, "while a rest runs down from ten minutes");
    assert_eq!(before["pad"], resting["pad"], "the pad from set to rest");
    assert_eq!(person.run("return shifts").await, json!([]));
    person.close().await;
}

#[tokio::test]
async fn the_end_of_a_full_board_is_reached_on_a_small_screen() {
    if !only_in(
        &[Engine::Chromium],
        "only Chromium's devtools give the window every size and look",
    ) {
        return;
    }
    let server = Server::start();
    let browser = Browser::start("small");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    to_the_bar(&person).await;
    for (width, height) in [(320, 568), (390, 844), (844, 390)] {
        resize(&person, width, height).await;
        // What hides below is announced, and what is announced is there.
        let told = "
            const upper = document.querySelector('[data-part=\"upper\"]');
            const below = document.querySelector('[data-part=\"below\"]').getBoundingClientRect();
            const seen = document.elementFromPoint(below.left + below.width / 2, below.top + below.height / 2);
            const announced = seen?.dataset.part === 'below';
            const hides = upper.scrollHeight - upper.clientHeight > 1;
            return [announced, hides]";
        let before = person.run(told).await;
        assert_eq!(before[0], before[1], "at {width} × {height}: {before}");
        person
            .run("const upper = document.querySelector('[data-part=\"upper\"]'); upper.scrollTop = upper.scrollHeight")
            .await;
        let at_end = "
            const last = document.querySelector('[data-part=\"board\"]').lastElementChild.getBoundingClientRect();
            const upper = document.querySelector('[data-part=\"upper\"]').getBoundingClientRect();
            const below = document.querySelector('[data-part=\"below\"]').getBoundingClientRect();
            const seen = document.elementFromPoint(below.left + below.width / 2, below.top + below.height / 2);
            return last.bottom <= upper.bottom && seen?.dataset.part !== 'below'";
        person.until(at_end, "the end of the board is seen").await;
        person
            .run("document.querySelector('[data-part=\"upper\"]').scrollTop = 0")
            .await;
    }
    person.close().await;
}

#[tokio::test]
async fn a_long_name_of_a_sheet_leaves_the_load_in_sight() {
    let server = Server::start();
    let browser = Browser::start("far-name");
    let name = "W".repeat(200);
    let lines = format!("# {name}\nFront squat: 3 × 5; 60 kg");
    let person = with_sheet(&browser, &server, &lines).await;
    person.tap("begin").await;
    person.see("floor").await;
    // Cut where it is seen, whole where it is heard.
    person.reads("sheet-name", &name).await;
    let seen = "const [main, upper, name] = ['main', 'upper', 'sheet-name']
            .map((part) => document.querySelector(`[data-part=\"${part}\"]`).getBoundingClientRect());
        return main.bottom <= upper.bottom && name.width <= upper.width";
    person.until(seen, "the load is in sight").await;
    person.close().await;
}
