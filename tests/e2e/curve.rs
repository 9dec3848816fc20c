//! The curve is the lifter's choice and stays; the ledger says why a set does not count for the estimate.

use super::browser::Browser;
use super::export::give_file;
use super::looks::picture;
use super::person::Person;
use super::server::Server;
use super::whole_session::{begin, end, end_now, log};
use super::write::paste;
use serde_json::{Value, json};

#[tokio::test]
async fn a_curve_that_was_chosen_in_kit_stays() {
    let server = Server::start();
    let browser = Browser::start("curve");
    let person = Person::arrive(&browser, &server).await;
    let pressed = |n: usize| {
        format!(
            "return document.querySelector('[data-part=\"curve-{n}\"]')?.getAttribute('aria-pressed') === 'true'"
        )
    };
    person.tap("go-kit").await;
    person.reads("estimate", "Epley 1985").await;
    person
        .until(&pressed(0), "the default is chosen at first")
        .await;
    person.tap("curve-5").await;
    person.until(&pressed(5), "Wathan is chosen").await;
    picture(&person, "estimate").await;
    // Another setting leaves it as it is.
    person.tap("unit-lb").await;
    person.until(&pressed(5), "Wathan is still chosen").await;
    person.reload().await;
    person.until(&pressed(5), "Wathan stayed").await;
    person.close().await;
}

/// A file with one session: a set of 6 reps and one to failure that came to 30.
fn drop_set() -> Value {
    let id = |n: u64| format!("019b8d2b-8c20-7000-80b0-{n:012x}");
    let block = id(1);
    let event = |n: u64, what: Value| {
        json!({
            "id": id(100 + n),
            "at": format!("2026-01-05T18:{n:02}:00+01:00"),
            "tick": {"run": 1, "ms": n * 60_000},
            "what": what,
        })
    };
    let done = |line: u64, reps: u64| {
        json!({"set_done": {
            "set": {"block": block, "line": line, "set": 0},
            "done": {"load": "40 kg", "amount": {"reps": reps}},
        }})
    };
    let began = json!({"began": {
        "session": id(2),
        "sheet": {
            "id": id(3),
            "version": id(4),
            "written": "2026-01-05T09:00:00+01:00",
            "name": "Lower A",
            "groups": [{"straight": {
                "id": block,
                "exercise": {"id": "front-squat", "name": "Front squat", "pattern": "squat", "equipment": "barbell"},
                "role": "strength",
                "sets": [
                    {"kind": "work", "count": 1, "target": {"reps": {"from": 5, "to": 7}}, "load": "same"},
                    {"kind": {"drop": {"drops": 2, "keep": "75 %"}}, "count": 1, "target": {"reps": 10}, "load": "same"},
                ],
                "basis": "external",
                "rest": 150,
                "rest_after": 180,
            }}],
        },
        "proposals": [],
    }});
    json!({
        "format": "stanchion",
        "version": 1,
        "sessions": [{
            "id": id(2),
            "events": [event(0, began), event(1, done(0, 6)), event(2, done(1, 10)), event(3, json!("ended"))],
        }],
    })
}

#[tokio::test]
async fn the_ledger_says_why_a_drop_set_does_not_count() {
    let server = Server::start();
    let browser = Browser::start("drop-set");
    let person = Person::arrive(&browser, &server).await;
    let file = browser.folder().join("drop-set.json");
    std::fs::write(&file, drop_set().to_string()).unwrap();
    person.tap("go-kit").await;
    give_file(&person, "import", &file).await;
    person.tap("import-take").await;
    person.reads("notice", "1 session new").await;
    person.tap("notice-close").await;
    person.tap("go-ledger").await;
    person.tap("session").await;
    person
        .reads("unfed", "not in the estimate: a drop set")
        .await;
    // The set of 6 says nothing.
    let reasons = person.count("[data-part=\"unfed\"]").await;
    assert_eq!(reasons, json!(1));
    picture(&person, "unfed").await;
    person.close().await;
}

#[tokio::test]
async fn a_share_of_the_maximum_counts_the_body() {
    let server = Server::start();
    let browser = Browser::start("with-body");
    let person = Person::open(&browser, &server).await;
    person.tap("welcome-skip").await;
    let write = "# Chins\\nChin-up: 1 × 5; +10 kg; follow 85 % e1RM; rest 60";
    person.tap("go-sheets").await;
    person.tap("write-lines").await;
    paste(&person, write).await;
    person.tap("lines-keep").await;
    person.see("sheet-look").await;
    person.tap("go-kit").await;
    person.type_into("body-mass", "80").await;

    // 90 kg moved five times and none left: by Epley 105 kg, 85 % of it 89.25 kg.
    person.tap("go-floor").await;
    begin(&person, "Chins").await;
    person.reads("main", "10").await;
    person.tap("reserve").await;
    person.tap("reserve-0").await;
    log(&person).await;
    end(&person).await;
    person.tap("go-floor").await;
    begin(&person, "Chins").await;
    person
        .reads(
            "because",
            "85 % of the estimated maximum 105 kg with the body is 89.25 kg, less 80 kg of body: 9.25 kg",
        )
        .await;
    person.reads("main", "8.75").await;
    picture(&person, "with-body").await;

    // A heavier body carries less: the session goes by the mass that it began with, the next one by the new one.
    person.tap("more").await;
    person.tap("leave-kit").await;
    person.type_into("body-mass", "86").await;
    person.tap("go-floor").await;
    person.reads("main", "8.75").await;
    end_now(&person).await;
    person.see("finish").await;
    person.tap("put-away").await;
    person.tap("go-floor").await;
    begin(&person, "Chins").await;
    person.reads("because", "less 86 kg of body: 3.25 kg").await;
    person.reads("main", "2.5").await;
    person.close().await;
}
