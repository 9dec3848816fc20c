//! What a person sees: a screenshot of every screen in both looks and several sizes, and checks that can be counted.
//!
//! With `STANCHION_SHOTS` set to a folder, the pictures are kept there for people to look at.

use super::browser::Browser;
use super::engine::{Engine, only_in};
use super::person::Person;
use super::server::Server;
use super::whole_session::{begin, end_rest, log, log_all};
use serde_json::json;
use std::path::PathBuf;

/// Sizes that are looked at: name, width, height, and how much larger the text is.
const SIZES: [(&str, u32, u32, f64); 4] = [
    ("phone", 390, 844, 1.0),
    ("side", 844, 390, 1.0),
    ("narrow", 320, 568, 1.0),
    ("large", 390, 844, 2.0),
];

/// Where pictures are kept, if anywhere; a name that is empty counts as none.
pub fn shots() -> Option<PathBuf> {
    let named = std::env::var_os("STANCHION_SHOTS").filter(|name| !name.is_empty());
    named.map(PathBuf::from)
}

/// Makes the window of that size.
pub async fn resize(person: &Person, width: u32, height: u32) {
    let metrics =
        json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": true });
    person
        .devtools("Emulation.setDeviceMetricsOverride", metrics)
        .await;
    let script = format!("return innerWidth === {width}");
    person.until(&script, "the window has its size").await;
}

/// The looks: dark and light as the phone says, sun and night as one chooses them.
pub const LOOKS: [&str; 4] = ["dark", "light", "sun", "night"];

/// Chooses a look.
pub async fn look(person: &Person, look: &str) {
    let by_phone = ["dark", "light"].contains(&look);
    let scheme = if by_phone { look } else { "dark" };
    let media = json!({ "features": [{ "name": "prefers-color-scheme", "value": scheme }] });
    person.devtools("Emulation.setEmulatedMedia", media).await;
    let script = if by_phone {
        "delete document.documentElement.dataset.theme".to_owned()
    } else {
        format!("document.documentElement.dataset.theme = '{look}'")
    };
    person.run(&script).await;
}

/// How far the floor's largest figure lies behind the pad, in pixels; none where there is no floor, or something lies
/// over it. What is not saved comes before all figures.
const FIGURE_BEHIND: &str = "
    const figure = document.querySelector('.board-main .figure');
    const pad = document.querySelector('[data-part=\"pad\"]');
    if (!figure || !pad || document.querySelector('dialog[open], [data-part=\"not-saved\"]')) return 0;
    document.querySelector('.floor-upper').scrollTop = 0;
    const [seen, taken] = [figure.getBoundingClientRect(), pad.getBoundingClientRect()];
    return taken.left < seen.right ? Math.ceil(seen.bottom - taken.top) : 0;
";

/// How far the page, a place or a panel would have to be pushed to the side to be read, in pixels.
const SIDEWAYS: &str = "
    const all = [document.documentElement, ...document.querySelectorAll('.place, .panel, .floor-upper')];
    return Math.max(...all.map((one) => one.scrollWidth - one.clientWidth));
";

/// Makes the window of that size and its text so much larger; nothing may stick out to the side.
async fn sized(person: &Person, name: &str, (width, height, text): (u32, u32, f64)) {
    resize(person, width, height).await;
    person
        .run(&format!(
            "document.documentElement.style.fontSize = '{}%'; dispatchEvent(new Event('resize'))",
            text * 100.0
        ))
        .await;
    let overflow = person.run(SIDEWAYS).await;
    assert!(
        overflow.as_i64().unwrap_or(0) <= 0,
        "{name} sticks out by {overflow} px at {width} px, text {text}"
    );
}

/// Takes a picture of the screen in every look and size; nothing may stick out to the side, and the floor's largest
/// figure is seen.
///
/// Only where the window takes every size and look: in Chromium. Elsewhere the test that wants it goes on without.
pub async fn picture(person: &Person, name: &str) {
    if Engine::here() != Engine::Chromium {
        return;
    }
    // Twice the text in the narrowest window is for reading, not for a picture.
    sized(person, name, (320, 568, 2.0)).await;
    for (size, width, height, text) in SIZES {
        sized(person, name, (width, height, text)).await;
        let behind = person.run(FIGURE_BEHIND).await;
        assert!(
            behind.as_i64().unwrap_or(0) <= 0,
            "the figure of {name} is behind the pad by {behind} px at {size}"
        );
        for theme in LOOKS {
            look(person, theme).await;
            let picture = person
                .client
                .screenshot()
                .await
                .expect("the browser takes pictures");
            if let Some(folder) = shots() {
                std::fs::create_dir_all(&folder).unwrap();
                std::fs::write(folder.join(format!("{name}-{size}-{theme}.png")), picture).unwrap();
            }
        }
    }
    person
        .run("document.documentElement.style.fontSize = ''")
        .await;
    resize(person, 390, 844).await;
    person.run("dispatchEvent(new Event('resize'))").await;
    look(person, "dark").await;
}

#[tokio::test]
async fn every_screen_in_every_look() {
    if !only_in(
        &[Engine::Chromium],
        "only Chromium's devtools give the window every size and look",
    ) {
        return;
    }
    let server = Server::start();
    let browser = Browser::start("looks");
    let person = Person::open(&browser, &server).await;
    person.see("welcome").await;
    picture(&person, "welcome").await;
    person.tap("welcome-open").await;
    person.see("choose").await;
    picture(&person, "choose").await;
    person.tap("go-sheets").await;
    person.see("sheet").await;
    picture(&person, "sheets").await;
    person.tap("write-lines").await;
    person.see("lines-sum").await;
    picture(&person, "write").await;
    person.tap("go-sheets").await;
    person.tap("sheet").await;
    person.tap("change-sheet").await;
    person.see("draft").await;
    picture(&person, "draft").await;
    person.tap("draft-arrange").await;
    person.see("draft-up").await;
    picture(&person, "draft-arrange").await;
    person
        .tap_css("li:nth-child(2) [data-part=\"draft-block\"]")
        .await;
    person.see("draft-one").await;
    picture(&person, "draft-one").await;
    person
        .tap_css("li:nth-child(2) [data-part=\"set-line\"]")
        .await;
    person.see("set-panel").await;
    picture(&person, "draft-sets").await;
    person.tap("line-done").await;
    person.gone("set-panel").await;
    person.tap("draft-exercise-other").await;
    person.tap("pattern-0").await;
    person.see("exercise-take").await;
    picture(&person, "draft-exercise").await;
    person.tap("go-sheets").await;
    person.tap("sheet").await;
    person.see("sheet-look").await;
    picture(&person, "sheet").await;
    person.tap("share-sheet").await;
    person.tap("share-qr").await;
    person.see("qr").await;
    picture(&person, "share").await;
    let link = "return document.querySelector('[data-part=\"share-link\"]').value";
    let link = person.run(link).await;
    person
        .client
        .goto(link.as_str().unwrap_or_default())
        .await
        .expect("a link is opened");
    person.see("shared-known").await;
    picture(&person, "shared").await;
    person.tap("go-kit").await;
    person.see("kit").await;
    picture(&person, "kit").await;
    person.tap("go-ledger").await;
    person.see("ledger-empty").await;
    picture(&person, "ledger-empty").await;

    person.tap("go-floor").await;
    begin(&person, "Lower A").await;
    for _ in 0..6 {
        log(&person).await;
        end_rest(&person).await;
    }
    person.reads("kind", "work set 1 of 3").await;
    picture(&person, "floor-set").await;
    person.tap("load").await;
    person.see("load-panel").await;
    picture(&person, "floor-load").await;
    person.tap("load-use").await;
    person.gone("load-panel").await;
    person.tap("more").await;
    person.see("more-panel").await;
    picture(&person, "floor-more").await;
    person.tap("panel-close").await;
    person.gone("more-panel").await;
    person.tap("cues-begin").await;
    person.reads("count", "of 7").await;
    picture(&person, "floor-cues").await;
    log(&person).await;
    person.reads("saved", "saved").await;
    picture(&person, "floor-rest").await;
    end_rest(&person).await;
    log_all(&person).await;
    picture(&person, "floor-done").await;
    // A tap right after the last one is taken for a slip; it is given again.
    let tap = "document.querySelector('[data-part=\"end\"]')?.click();
               return document.querySelector('[data-part=\"finish\"]') !== null";
    person.until(tap, "the summary is there").await;
    picture(&person, "finish").await;
    person.tap("rpe-7").await;
    person.tap("put-away").await;
    person.see("session").await;
    picture(&person, "ledger").await;
    person.tap("session").await;
    person.see("session-record").await;
    picture(&person, "session").await;
    person.close().await;
}

#[tokio::test]
async fn what_one_names_and_plans_in_every_look() {
    if !only_in(
        &[Engine::Chromium],
        "only Chromium's devtools give the window every size and look",
    ) {
        return;
    }
    let server = Server::start();
    let browser = Browser::start("own-looks");
    let person = Person::arrive(&browser, &server).await;
    person.tap("go-sheets").await;
    person.tap("exercises-open").await;
    person.see("exercise-row").await;
    picture(&person, "exercises").await;
    person.tap("exercise-row").await;
    person.see("exercise-look").await;
    picture(&person, "exercise").await;
    person.tap("exercise-change").await;
    person.see("exercise-write").await;
    picture(&person, "exercise-write").await;
    person.tap("go-sheets").await;
    person.tap("programme-open").await;
    person.tap("programme-add").await;
    person.tap("light-on").await;
    person.see("light-every").await;
    picture(&person, "programme").await;
    person.tap("plan-days").await;
    person.see("day-0-1").await;
    picture(&person, "programme-days").await;
    person.tap("plan-turn").await;
    person.tap("programme-keep").await;
    person.see("programme-plan").await;
    picture(&person, "sheets-programme").await;
    person.tap("go-floor").await;
    person.see("offer-because").await;
    picture(&person, "choose-programme").await;
    person.close().await;
}

/// How many small buttons the pad has, and in how many rows they stand.
pub const SMALL_BUTTONS: &str = "
    const all = [...document.querySelectorAll('.pad-row > button')].map((button) => button.getBoundingClientRect());
    return [all.length, new Set(all.map((one) => one.top)).size];
";

#[tokio::test]
async fn the_pad_is_large() {
    if !only_in(
        &[Engine::Chromium],
        "only Chromium's devtools give the window every size and look",
    ) {
        return;
    }
    let server = Server::start();
    let browser = Browser::start("large");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    resize(&person, 390, 844).await;
    let pad = person.run("return document.querySelector('[data-part=\"pad\"]').getBoundingClientRect().height / innerHeight").await;
    assert!(
        pad.as_f64().unwrap_or(0.0) >= 0.4,
        "the pad takes {pad} of the screen"
    );
    let small = person
        .run(
            "return [...document.querySelectorAll('[data-part=\"floor\"] button')].filter(b => {
                const r = b.getBoundingClientRect(); return r.width < 64 || r.height < 64;
            }).map(b => b.dataset.part)",
        )
        .await;
    assert_eq!(
        small,
        json!([]),
        "no target on the floor is smaller than 64 px"
    );
    // In the narrowest window five still have one row, and leave the figures their room.
    resize(&person, 320, 568).await;
    assert_eq!(person.run(SMALL_BUTTONS).await, json!([5, 1]));
    person.close().await;
}
