//! Two lifters at one rack: each logs in turn on one phone, into an own session in an own database.

use super::browser::Browser;
use super::disk::{leave, return_to, rows_of};
use super::engine::{Engine, only_in};
use super::looks::{SMALL_BUTTONS, picture, resize};
use super::people::{ann_and_bea, change_over};
use super::person::Person;
use super::server::Server;
use super::whole_session::{end_now, end_rest};
use serde_json::json;

/// Ann and Bea begin: Ann with the sheet of that name, Bea with the same one.
async fn begin_both(person: &Person, sheet: &str) {
    ann_and_bea(person).await;
    change_over(person, 0).await;
    person.run("location.hash = '/'").await;
    person.tap("with-1").await;
    person
        .tap_css(&format!(
            "button[data-part=\"begin\"][aria-label*=\"{sheet}\"]"
        ))
        .await;
    person.reads("pair-asks", "Which sheet does Bea do?").await;
}

/// Whose board it is.
async fn on(person: &Person, name: &str) {
    let script = format!(
        "return document.querySelector('.pair-name.on')?.innerText.includes('{name}') === true"
    );
    person
        .until(&script, &format!("it is {name}'s board"))
        .await;
}

/// Logs the set on the board, whoever's it is, once its rest is ended; the slip after a turn is waited out by tapping again.
async fn log_turn(person: &Person, from: &str, to: &str) {
    on(person, from).await;
    if person.has("begin-set").await {
        end_rest(person).await;
    }
    let script = format!(
        "if (document.querySelector('.pair-name.on')?.innerText.includes('{from}'))
           document.querySelector('[data-part=\"log\"]')?.click();
         return document.querySelector('.pair-name.on')?.innerText.includes('{to}') === true"
    );
    person
        .until(&script, &format!("the board turns to {to}"))
        .await;
    on(person, to).await;
}

async fn done(person: &Person) -> u64 {
    person.count(".notch.done").await
}

#[tokio::test]
async fn two_take_turns_each_in_an_own_session() {
    let server = Server::start();
    let browser = Browser::start("pair");
    let person = Person::arrive(&browser, &server).await;
    begin_both(&person, "Lower A").await;
    picture(&person, "pair-asks").await;
    person.tap("pair-same").await;
    person.see("pair").await;
    on(&person, "Ann").await;
    picture(&person, "pair-ann").await;
    // The edge along their side takes width from the pad, and still five small buttons have one row.
    if Engine::here() == Engine::Chromium {
        for (width, height) in [(844, 390), (320, 568), (390, 844)] {
            resize(&person, width, height).await;
            let at = format!("{width} × {height}");
            assert_eq!(person.run(SMALL_BUTTONS).await, json!([5, 1]), "{at}");
        }
    }
    log_turn(&person, "Ann", "Bea").await;
    assert_eq!(done(&person).await, 0, "Bea did nothing yet");
    person.reads("pair-left", "saved: 6 reps at 15 kg").await;
    // Bea does fewer, in her own session.
    person.tap("reps-less").await;
    person.reads("log", "5").await;
    log_turn(&person, "Bea", "Ann").await;
    person.reads("pair-right", "saved: 5 reps at 15 kg").await;
    // The rest that is shown is Ann's.
    person.reads("logged", "logged 6 reps at 15 kg").await;
    picture(&person, "pair-rest").await;
    // What was logged last was Bea's: taken back, it is her board again.
    person.tap("undo-set").await;
    on(&person, "Bea").await;
    assert_eq!(done(&person).await, 0);
    log_turn(&person, "Bea", "Ann").await;
    // By hand to Bea and back.
    person.tap("pair-right").await;
    on(&person, "Bea").await;
    person.tap("pair-left").await;
    on(&person, "Ann").await;
    // A reload brings back both, and the turn.
    log_turn(&person, "Ann", "Bea").await;
    person.reads("pair-left", "saved").await;
    person.reload().await;
    on(&person, "Bea").await;
    assert_eq!(done(&person).await, 1);
    person.tap("pair-left").await;
    on(&person, "Ann").await;
    assert_eq!(done(&person).await, 2);
    // Ann stays, and logs two in a row.
    person.tap("more").await;
    person.tap("pair-stay").await;
    person.tap("panel-close").await;
    end_rest(&person).await;
    person
        .until(
            "document.querySelector('[data-part=\"log\"]')?.click();
             return document.querySelectorAll('.notch.done').length === 3",
            "Ann's third set is logged",
        )
        .await;
    on(&person, "Ann").await;
    // Ann ends; Bea goes on alone.
    end_now(&person).await;
    person.see("finish").await;
    person.tap("rpe-6").await;
    picture(&person, "pair-finish").await;
    person.reads("put-away", "on with Bea").await;
    person.tap("put-away").await;
    person.gone("pair").await;
    person.reads("who", "Bea").await;
    person.see("floor").await;
    assert_eq!(done(&person).await, 1);
    end_now(&person).await;
    person.tap("rpe-7").await;
    person.tap("put-away").await;
    person.see("ledger").await;
    let sessions = "[data-part=\"session\"]";
    person.see("session").await;
    assert_eq!(person.count(sessions).await, 1);
    change_over(&person, 0).await;
    person.see("session").await;
    assert_eq!(person.count(sessions).await, 1);
    person.tap("session").await;
    person.reads("session-record", "3 sets").await;
    person.close().await;
}

#[tokio::test]
async fn a_sheet_asks_on_its_own_page_too_and_the_next_session_is_one_s_own() {
    let server = Server::start();
    let browser = Browser::start("pair-sheet");
    let person = Person::arrive(&browser, &server).await;
    ann_and_bea(&person).await;
    change_over(&person, 0).await;
    person.run("location.hash = '/'").await;
    person.tap("with-1").await;
    person.tap("go-sheets").await;
    person.tap("sheet").await;
    person.see("sheet-look").await;
    person.tap("begin").await;
    // The question is led to, and seen.
    person.reads("pair-asks", "Which sheet does Bea do?").await;
    person.tap("pair-same").await;
    on(&person, "Ann").await;
    // Ann's slip is taken back from the board of Bea, who did nothing yet.
    log_turn(&person, "Ann", "Bea").await;
    person.tap("more").await;
    person.tap("undo").await;
    on(&person, "Ann").await;
    assert_eq!(done(&person).await, 0);
    // Both end, the other one first.
    person.tap("pair-right").await;
    on(&person, "Bea").await;
    end_now(&person).await;
    person.reads("put-away", "on with Ann").await;
    person.tap("put-away").await;
    person.gone("pair").await;
    end_now(&person).await;
    person.tap("put-away").await;
    person.see("ledger").await;
    // Alone again, from the same page.
    person.tap("go-sheets").await;
    person.tap("sheet").await;
    person.see("sheet-look").await;
    person.tap("begin").await;
    person.see("floor").await;
    assert!(!person.has("pair").await);
    person.close().await;
}

#[tokio::test]
async fn the_plates_go_from_the_one_s_to_the_other_s() {
    let server = Server::start();
    let browser = Browser::start("pair-plates");
    let person = Person::arrive(&browser, &server).await;
    begin_both(&person, "Lower A").await;
    person.tap("pair-same").await;
    for (name, other, load) in [("Ann", "Bea", "60"), ("Bea", "Ann", "80")] {
        on(&person, name).await;
        super::whole_session::do_first(&person, 2).await;
        person.see("plates").await;
        person.tap("load").await;
        person.type_into("load-typed", load).await;
        person.tap("load-use").await;
        person.gone("load-panel").await;
        if name == "Bea" {
            // 60 kg lie there: 10 a side more, from Ann's plates.
            person.reads("change", "each side").await;
            picture(&person, "pair-plates").await;
        }
        let turned = format!(
            "if (document.querySelector('.pair-name.on')?.innerText.includes('{name}'))
               document.querySelector('[data-part=\"log\"]')?.click();
             return document.querySelector('.pair-name.on')?.innerText.includes('{other}') === true"
        );
        person.until(&turned, "the board turns").await;
    }
    person.close().await;
}

#[tokio::test]
async fn a_kill_amid_turns_loses_nothing_of_either() {
    if !only_in(
        &[Engine::Chromium, Engine::Firefox],
        "under a driver WebKit keeps nothing past its end",
    ) {
        return;
    }
    let server = Server::start();
    let browser = Browser::start("pair-kill");
    let person = Person::arrive(&browser, &server).await;
    begin_both(&person, "Lower A").await;
    person.tap("pair-same").await;
    log_turn(&person, "Ann", "Bea").await;
    log_turn(&person, "Bea", "Ann").await;
    log_turn(&person, "Ann", "Bea").await;
    person.reads("pair-left", "saved").await;
    browser.kill();
    let person = Person::open(&browser, &server).await;
    on(&person, "Bea").await;
    assert_eq!(done(&person).await, 1);
    person.tap("pair-left").await;
    on(&person, "Ann").await;
    assert_eq!(done(&person).await, 2);
    leave(&person, &server).await;
    assert_eq!(set_events(&person, "stanchion").await, 2);
    let names = "indexedDB.databases().then((all) => done(all.map((one) => one.name)))";
    let names: Vec<String> = serde_json::from_value(person.run_later(names).await).unwrap();
    let bea = names.iter().find(|name| name.len() > 30).unwrap();
    assert_eq!(set_events(&person, bea).await, 1);
    return_to(&person, &server).await;
    person.see("pair").await;
    person.close().await;
}

async fn set_events(person: &Person, database: &str) -> usize {
    let rows = rows_of(person, database, "events").await;
    rows.iter()
        .filter(|(_, row)| row.contains("set_done"))
        .count()
}
