//! The ledger: list, calendar and search over many sessions; a session that is changed, goes on, and is done again.

use super::browser::Browser;
use super::export::give_file;
use super::looks::picture;
use super::past::past;
use super::person::Person;
use super::server::Server;
use super::whole_session::{begin, end, end_now, end_rest, log, log_all};
use super::write::paste;
use serde_json::json;

/// How many of a part there are.
fn many(part: &str) -> String {
    format!("document.querySelectorAll('[data-part=\"{part}\"]').length")
}

/// Opens the app with so many weeks behind it, at the ledger; gives how many sessions that are.
pub async fn with_past(browser: &Browser, server: &Server, weeks: u64) -> (Person, usize) {
    let person = Person::arrive(browser, server).await;
    let (file, count) = past(browser.folder(), weeks);
    person.tap("go-kit").await;
    give_file(&person, "import", &file).await;
    person.tap("import-take").await;
    person
        .reads("notice", &format!("{count} sessions new"))
        .await;
    person.tap("notice-close").await;
    person.tap("go-ledger").await;
    person.see("session").await;
    (person, count)
}

#[tokio::test]
async fn many_sessions_as_a_list_a_search_and_a_calendar() {
    let server = Server::start();
    let browser = Browser::start("ledger");
    let (person, count) = with_past(&browser, &server, 30).await;
    assert!(count > 60, "{count}");

    // The newest first, and further back as asked.
    person.reads("found", "The newest 60 sessions").await;
    picture(&person, "ledger-list").await;
    person.tap("earlier").await;
    person
        .until(
            &format!("return {} === {count}", many("session")),
            "all sessions stand there",
        )
        .await;
    let twice = "const all = [...document.querySelectorAll('[data-part=\"session\"]')].map((row) => row.href);
                 return new Set(all).size === all.length";
    assert_eq!(person.run(twice).await, json!(true), "none stands twice");
    // Coming back from a session, it is as far back as before.
    person
        .tap_css("li:nth-child(70) > [data-part=\"session\"]")
        .await;
    person.see("session-record").await;
    person.client.back().await.unwrap();
    person
        .until(
            &format!("return {} === {count}", many("session")),
            "all stand there again",
        )
        .await;

    person.type_into("find-text", "front squat").await;
    person.reads("found", "found in the whole ledger").await;
    person.reads("session", "Front squat").await;
    let whole = person.run(&format!("return {}", many("session"))).await;
    assert!(
        whole.as_u64().unwrap() < count as u64,
        "only one sheet has it"
    );
    person.type_into("find-text", "stiff cold").await;
    person.reads("session", "Left knee stiff").await;
    picture(&person, "ledger-found").await;
    person.type_into("find-text", "no such word").await;
    person
        .reads("found", "0 sessions found in the whole ledger")
        .await;
    person.tap("find-all").await;
    person.reads("found", "The newest 60 sessions").await;
    person.tap_css("[data-part=\"find-days\"] > summary").await;
    type_day(&person, "find-last", "2020-01-01").await;
    person.reads("found", "0 sessions found").await;
    type_day(&person, "find-first", "2021-01-01").await;
    person
        .reads("find-wrong", "The last day lies before the first")
        .await;
    person.tap("find-all").await;

    person.tap("ledger-as-1").await;
    person.see("month").await;
    person.tap("month-before").await;
    person
        .until(
            "return document.querySelectorAll('.day.done').length > 5 &&
             document.querySelectorAll('[data-part=\"session\"]').length >=
             document.querySelectorAll('.day.done').length",
            "the month before has its sessions",
        )
        .await;
    picture(&person, "ledger-calendar").await;
    // By the keys alone: a day takes the focus and Enter, and shows its own session.
    // Not by `:focus`, which WebKit gives to no element of a window that is not the active one.
    person
        .until(
            "const day = document.querySelector('.day.done');
             day.focus();
             return document.activeElement === day",
            "a day has the keyboard",
        )
        .await;
    let day = person.find(".day.done").await;
    day.send_keys("\u{e007}").await.unwrap();
    person
        .until(
            &format!("return {} === 1", many("session")),
            "the session of that day",
        )
        .await;
    person.reads("month-said", "1 session").await;
    person.tap("session").await;
    person.see("session-record").await;
    person.tap("go-ledger").await;
    person.see("month").await;
    assert!(person.has("month-now").await, "it is the month of before");
    person.tap("month-now").await;
    person.gone("month-now").await;
    person.tap("ledger-as-0").await;
    person.see("find-text").await;
    person.close().await;
}

/// Chooses a day in a field of the browser's own.
pub async fn type_day(person: &Person, part: &str, day: &str) {
    person.see(part).await;
    person
        .run(&format!(
            "const field = document.querySelector('[data-part=\"{part}\"]');
             field.value = '{day}';
             field.dispatchEvent(new Event('input', {{ bubbles: true }}));
             field.dispatchEvent(new Event('change', {{ bubbles: true }}));"
        ))
        .await;
}

/// The sets that stand on the page of a session.
async fn sets_are(person: &Person, count: usize) {
    person
        .until(
            &format!("return {} === {count}", many("set")),
            &format!("{count} sets"),
        )
        .await;
}

#[tokio::test]
async fn each_stage_of_a_set_is_corrected_by_itself() {
    let server = Server::start();
    let browser = Browser::start("stages");
    let person = Person::open(&browser, &server).await;
    person.tap("welcome-skip").await;
    person.tap("go-sheets").await;
    person.tap("write-lines").await;
    let line = "Lateral raise: 2 × [hold 10 s → 6 at 4/0/2/0 → 2 partials]; 8 kg";
    paste(&person, &format!("# Boat day\\n{line}")).await;
    person.tap("lines-keep").await;
    person.see("sheet-look").await;
    person.tap("go-floor").await;
    begin(&person, "Boat day").await;
    log(&person).await;
    end_rest(&person).await;
    end_now(&person).await;
    person.reads("finish-saved", "saved in the ledger").await;
    person.tap("put-away").await;
    person.tap("session").await;
    person
        .reads("set", "10 s → 6 reps → 2 partials at 8 kg")
        .await;
    person.tap("set").await;
    for _ in 0..4 {
        person.tap("done-stage-2-less").await;
    }
    person.reads("done-stage-2-figure", "2 reps").await;
    person.tap("done-stage-3-less").await;
    person.reads("done-stage-3-figure", "1 partial").await;
    // A load that was taken out is missed.
    let empty = "const field = document.querySelector('[data-part=\"correct-load\"]');
        field.value = '';
        field.dispatchEvent(new Event('input', { bubbles: true }));";
    person.run(empty).await;
    person.tap("correct-keep").await;
    person.reads("correct-wrong", "a number is missing").await;
    person.type_into("correct-load", "8").await;
    person.tap("correct-keep").await;
    person.gone("correct-panel").await;
    person
        .reads("set", "10 s → 2 reps → 1 partial at 8 kg")
        .await;
    person.close().await;
}

#[tokio::test]
async fn a_session_is_changed_and_goes_on_and_is_done_again() {
    let server = Server::start();
    let browser = Browser::start("change");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    log(&person).await;
    end_rest(&person).await;
    log(&person).await;
    end_rest(&person).await;
    end_now(&person).await;
    person.reads("finish-saved", "saved in the ledger").await;
    person.tap("put-away").await;
    person.tap("session").await;
    sets_are(&person, 2).await;
    person.reads("set", "6 reps at 15 kg").await;
    person.reads("set", "load as proposed").await;
    person.reads("proposed", "as written: 15 kg").await;
    person.reads("session-record", "prescribed").await;
    picture(&person, "session-open").await;

    // A correction and a note on the set are one change, and one undo.
    person.tap("set").await;
    person.tap("correct-reps-less").await;
    person.type_into("correct-note", "Grip slipped").await;
    picture(&person, "session-correct").await;
    person.tap("correct-keep").await;
    person.gone("correct-panel").await;
    person.reads("set", "5 reps at 15 kg").await;
    person.reads("set", "first logged as 6 reps").await;
    person.reads("set-note", "Grip slipped").await;
    person.tap("changed-undo").await;
    person.reads("set", "6 reps at 15 kg").await;
    person.gone("set-note").await;

    // One that was not done is taken out, and put back.
    person.tap("set").await;
    person.tap("correct-out").await;
    sets_are(&person, 1).await;
    person.reads("changed", "removed").await;
    person.tap("changed-undo").await;
    sets_are(&person, 2).await;

    // One that was forgotten; and one of a block of which nothing was done.
    person.tap("forgotten").await;
    person.type_into("correct-load", "a lot").await;
    person.tap("forgotten-keep").await;
    person.reads("correct-wrong", "plain number").await;
    person.type_into("correct-load", "16").await;
    person.tap("forgotten-keep").await;
    sets_are(&person, 3).await;
    person.tap("not-done").await;
    person.type_into("correct-load", "40").await;
    person.tap("forgotten-keep").await;
    sets_are(&person, 4).await;

    person.tap("annotate").await;
    person.type_into("annotate-text", "Cold boathouse").await;
    person.tap("annotate-keep").await;
    person.reads("session-note", "Cold boathouse").await;
    // All of it is on disk.
    let saved = "return document.querySelector('.app').dataset.unsaved === undefined";
    person.until(saved, "all is written").await;
    person.reload().await;
    sets_are(&person, 4).await;
    person.reads("session-note", "Cold boathouse").await;

    // It goes on where it stopped: out of the ledger, onto the floor, over a reload too.
    person.tap("resume").await;
    person.see("floor").await;
    person.see("log").await;
    assert!(!person.has("rest").await, "the rest of then is long over");
    person.reload().await;
    person.see("log").await;
    person.tap("more").await;
    person.tap("leave-ledger").await;
    person.see("ledger-empty").await;
    person.tap("go-floor").await;
    let logged = log_all(&person).await;
    assert_eq!(logged, 14);
    end(&person).await;
    person.tap("session").await;
    sets_are(&person, 18).await;
    person.reads("session-note", "Cold boathouse").await;

    person.tap("again").await;
    person.see("draft-rows").await;
    person.reads("draft-rows", "16 kg").await;
    let name = "return document.querySelector('[data-part=\"draft-name\"]').value";
    let name = person.run(name).await;
    assert!(
        name.as_str().unwrap().starts_with("Lower A, as on "),
        "{name}"
    );
    picture(&person, "again").await;
    person.tap("draft-keep").await;
    person.see("sheet-look").await;
    person.tap("begin").await;
    person.reads("main", "15").await;
    person.close().await;
}
