//! A session that is begun light: on a sheet's own page in a light week, and where nothing was gained for weeks.

use super::browser::Browser;
use super::export::give_file;
use super::looks::picture;
use super::own::{end_early, give_light_week};
use super::person::Person;
use super::server::Server;
use super::whole_session::{begin, log};
use serde_json::{Value, json};

/// A file of fourteen sessions, four days apart, the last the day before yesterday: five reps with 90 kg and none left.
fn nothing_gained() -> Value {
    let id = |n: u64| format!("019b8d2b-8c20-7000-80b0-{n:012x}");
    let now = std::time::SystemTime::now()
        .duration_since(std::time::UNIX_EPOCH)
        .unwrap();
    let at = |n: u64, minute: u64| {
        let ago = 2 * 86_400 + (13 - n) * 4 * 86_400;
        let seconds = now.as_secs() - ago + minute * 60;
        chrono::DateTime::from_timestamp(i64::try_from(seconds).unwrap(), 0)
            .unwrap()
            .to_rfc3339()
    };
    let session = |n: u64| {
        let event = |k: u64, what: Value| {
            json!({
                "id": id(1000 + n * 10 + k),
                "at": at(n, k),
                "tick": {"run": 1, "ms": k * 60_000},
                "what": what,
            })
        };
        let began = json!({"began": {
            "session": id(100 + n),
            "sheet": {
                "id": id(3),
                "version": id(4),
                "written": "2026-01-05T09:00:00+01:00",
                "name": "Squats",
                "groups": [{"straight": {
                    "id": id(1),
                    "exercise": {"id": "front-squat", "name": "Front squat", "pattern": "squat", "equipment": "barbell"},
                    "role": "strength",
                    "sets": [{"kind": "work", "count": 1, "target": {"reps": {"from": 5, "to": 7}}, "load": "same"}],
                    "basis": "external",
                    "rest": 150,
                    "rest_after": 180,
                }}],
            },
            "proposals": [],
        }});
        let done = json!({"set_done": {
            "set": {"block": id(1), "line": 0, "set": 0},
            "done": {"load": "90 kg", "amount": {"reps": 5}, "reserve": 0},
        }});
        json!({"id": id(100 + n), "events": [event(0, began), event(1, done), event(2, json!("ended"))]})
    };
    let sessions: Vec<Value> = (0..14).map(session).collect();
    json!({"format": "stanchion", "version": 1, "sessions": sessions})
}

#[tokio::test]
async fn where_nothing_was_gained_a_light_session_is_one_tap_and_so_is_the_usual_one() {
    let server = Server::start();
    let browser = Browser::start("plateau");
    let person = Person::arrive(&browser, &server).await;
    assert!(!person.has("begin-light").await);
    let file = browser.folder().join("flat.json");
    std::fs::write(&file, nothing_gained().to_string()).unwrap();
    person.tap("go-kit").await;
    give_file(&person, "import", &file).await;
    person.tap("import-take").await;
    person.reads("notice", "14 sessions new").await;
    person.tap("notice-close").await;

    // The sheet with front squats says so, and no other.
    person.tap("go-floor").await;
    person
        .reads("light-because", "Front squat: no gain to be seen in")
        .await;
    let offers = person.count("[data-part=\"begin-light\"]").await;
    assert_eq!(offers, json!(1));
    picture(&person, "light-offer").await;
    let look = "const offers = [...document.querySelectorAll('[data-part=\"offer\"]')];
        const one = offers.find((offer) => offer.querySelector('[data-part=\"begin-light\"]'));
        one.querySelector('[data-part=\"offer-look\"]').click()";
    person.run(look).await;
    person.see("sheet-look").await;
    person.reads("light-because", "90 % of the load").await;
    person.reads("begin", "Begin").await;
    picture(&person, "light-offer-sheet").await;
    person.tap("begin-light").await;
    person.see("floor").await;
    person.reads("kind", "work set 1 of 2").await;
    person.reads("because", "light week: 90 % of 15 kg").await;
    log(&person).await;
    end_early(&person).await;
    person.tap("session").await;
    person.reads("facts", "light week").await;

    // A light week is a week: it is offered still, and the usual session is one tap as before.
    person.tap("go-floor").await;
    person.see("begin-light").await;
    begin(&person, "Lower A").await;
    person.reads("kind", "work set 1 of 3").await;
    person.close().await;
}

#[tokio::test]
async fn the_page_of_a_sheet_follows_the_light_week() {
    let server = Server::start();
    let browser = Browser::start("light-page");
    let person = Person::arrive(&browser, &server).await;
    give_light_week(&person, &browser).await;
    person.tap("go-floor").await;
    person.tap("offer-look").await;
    person.see("sheet-look").await;
    person.reads("begin", "Begin, light").await;
    person.reads("offer-light", "60 % of the load").await;
    picture(&person, "light-sheet").await;
    person.tap("begin").await;
    person.see("floor").await;
    person.reads("kind", "work set 1 of 1").await;
    log(&person).await;
    end_early(&person).await;

    person.tap("go-floor").await;
    person.tap("offer-look").await;
    person.tap("begin-usual").await;
    person.see("floor").await;
    person.reads("kind", "work set 1 of 3").await;
    person.close().await;
}
