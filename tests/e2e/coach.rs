//! The coach's view: another lifter's export is looked at, compared and written from, and nothing of it stays.

use super::away::file_of;
use super::browser::Browser;
use super::disk::{leave, return_to, rows};
use super::export::{download_into, downloaded, export, give_file};
use super::looks::picture;
use super::person::Person;
use super::server::Server;
use super::whole_session::{begin, end_now, log};
use serde_json::{Value, json};
use std::path::PathBuf;

/// Bea's file: the demo sheets and one session of Lower A.
async fn beas_file(server: &Server, name: &str) -> (Browser, PathBuf) {
    let browser = Browser::start(name);
    let person = Person::arrive(&browser, server).await;
    begin(&person, "Lower A").await;
    log(&person).await;
    end_now(&person).await;
    person.tap("rpe-7").await;
    person.tap("put-away").await;
    let (file, mut text) = export(&person, &browser.downloads()).await;
    // As if she had given her name.
    for version in text["lifter"].as_array_mut().unwrap() {
        version["name"] = json!("Bea");
    }
    std::fs::write(&file, text.to_string()).unwrap();
    person.close().await;
    (browser, file)
}

/// Everything on every shelf that a look must not change.
async fn all_rows(person: &Person) -> Vec<Vec<(String, String)>> {
    let mut all = Vec::new();
    for shelf in [
        "sessions",
        "headings",
        "summaries",
        "sheets",
        "kits",
        "lifters",
        "body_mass",
        "events",
    ] {
        all.push(rows(person, shelf).await);
    }
    all
}

/// Looks at a file from the ledger.
async fn look_at(person: &Person, file: &std::path::Path) {
    person.tap("go-ledger").await;
    give_file(person, "look-file", file).await;
    person.see("looking").await;
}

#[tokio::test]
async fn anothers_export_is_looked_at_and_nothing_of_it_stays() {
    let server = Server::start();
    let (_bea, file) = beas_file(&server, "bea-looked").await;
    let browser = Browser::start("coach");
    let person = Person::arrive(&browser, &server).await;
    leave(&person, &server).await;
    let before = all_rows(&person).await;
    return_to(&person, &server).await;
    person.tap("go-ledger").await;
    person.see("ledger-empty").await;
    look_at(&person, &file).await;
    person.reads("looking", "You look at Bea's ledger").await;
    person.see("session").await;
    picture(&person, "coach-ledger").await;
    person.tap("session").await;
    person.reads("set", "6 reps at 15 kg").await;
    // Nothing can be changed: nothing in a session, not the kit, no import.
    for own in [
        "rpe-3",
        "annotate",
        "forgotten",
        "resume",
        "again",
        "session-remove",
    ] {
        assert!(!person.has(own).await, "{own} in another one's session");
    }
    person.tap("go-kit").await;
    person.tap("unit-lb").await;
    person.reads("notice", "nothing is changed here").await;
    person.tap("notice-close").await;
    // Nor is hers exported under one's own name, or told to be erased.
    for own in ["export", "import", "erase", "sessions-remove"] {
        assert!(
            !person.has(own).await,
            "{own} while another one's file is looked at"
        );
    }
    person.tap("go-floor").await;
    person.see("looking-floor").await;
    picture(&person, "coach-floor").await;
    person.tap("looking-close").await;
    person.gone("looking").await;
    // Back where one was, and all as it was.
    person.see("ledger-empty").await;
    leave(&person, &server).await;
    assert_eq!(all_rows(&person).await, before);
    person.close().await;
}

#[tokio::test]
async fn the_next_sheet_is_written_from_theirs_and_sent_back() {
    let server = Server::start();
    let (_bea, file) = beas_file(&server, "bea-writes").await;
    let browser = Browser::start("coach-writes");
    let person = Person::arrive(&browser, &server).await;
    look_at(&person, &file).await;
    person.tap("go-sheets").await;
    person.tap("sheet").await;
    // Proposed by what Bea did.
    person.reads("sheet-look", "15 kg").await;
    picture(&person, "coach-sheet").await;
    // What cannot be changed is told, and no more once something can.
    let in_place = "return location.hash";
    let sheet = person.run(in_place).await;
    person.tap("go-kit").await;
    person.tap("unit-lb").await;
    person.reads("notice", "nothing is changed here").await;
    person.run(&format!("location.hash = {sheet}")).await;
    person.tap("write-next").await;
    person.see("draft").await;
    assert!(!person.has("notice").await);
    person.type_into("draft-name", "Lower A, next").await;
    // A reload closes what was looked at; what was begun for Bea is among one's own.
    person
        .until(
            "return document.querySelector('.app').dataset.unsaved === undefined",
            "the draft is on disk",
        )
        .await;
    person.reload().await;
    assert!(!person.has("looking").await);
    person.tap("go-sheets").await;
    person.reads("draft-begun", "being written for Bea").await;
    look_at(&person, &file).await;
    person.tap("go-sheets").await;
    assert!(!person.has("draft-begun").await, "Bea's sheets are Bea's");
    person.tap("sheet").await;
    person.tap("write-next").await;
    person.type_into("draft-name", "Lower A, again").await;
    person.tap("draft-keep").await;
    person.reads("sheet-for", "Written for Bea").await;
    person.reads("sheet-look", "15 kg").await;
    picture(&person, "coach-written").await;
    person.tap("share-sheet").await;
    download_into(&person, &browser.folder().join("sent")).await;
    person.tap("share-file").await;
    let (sent, text) = downloaded(&browser.folder().join("sent")).await;
    assert_eq!(text["sheets"][0]["name"], "Lower A, again");
    assert_eq!(
        text["sheets"][0]["written_for"],
        Value::Null,
        "Bea knows whose it is"
    );
    person.tap("panel-close").await;
    person.tap("looking-close").await;
    person.gone("looking").await;
    person.tap("go-sheets").await;
    person.reads("sheets", "for Bea").await;
    // On one's own floor it is not offered.
    person.tap("go-floor").await;
    person.see("choose").await;
    assert!(!person.read("choose").await.contains("again"));
    person.close().await;

    // Bea takes it, by the file.
    let bea = Browser::start("coach-takes");
    let person = Person::arrive(&bea, &server).await;
    person.tap("go-sheets").await;
    give_file(&person, "open-sheet", &sent).await;
    person.tap("shared-keep").await;
    person.reads("sheet-look", "Lower A, again").await;
    person.tap("go-floor").await;
    person.reads("choose", "Lower A, again").await;
    person.close().await;
}

#[tokio::test]
async fn a_file_of_another_one_says_so_before_it_is_mixed_in() {
    let server = Server::start();
    let (_bea, file) = beas_file(&server, "bea-import").await;
    let browser = Browser::start("coach-import");
    let person = Person::arrive(&browser, &server).await;
    super::people::ann_and_bea(&person).await;
    super::people::change_over(&person, 0).await;
    person.run("location.hash = '/kit'").await;
    give_file(&person, "import", &file).await;
    person
        .reads("import-other", "This is Bea's file, and Ann is here")
        .await;
    picture(&person, "coach-import").await;
    person.tap("import-look").await;
    person.reads("looking", "Bea's ledger").await;
    assert!(!person.has("who").await);
    person.tap("looking-close").await;
    person.see("kit").await;
    person.reads("who", "Ann").await;
    person.close().await;
}

#[tokio::test]
async fn two_periods_stand_side_by_side() {
    let server = Server::start();
    let browser = Browser::start("coach-compare");
    let person = Person::arrive(&browser, &server).await;
    // Sessions from 6 January 2026 on, one a day, 5 reps at 60 kg each.
    let file = file_of(browser.folder(), 4, "Kingfisher squat");
    look_at(&person, &file).await;
    person.run("location.hash = '/ledger/compare'").await;
    person.see("compare-none").await;
    for (part, day) in [
        ("compare-second-to", "2026-01-09"),
        ("compare-second-from", "2026-01-07"),
        ("compare-first-to", "2026-01-06"),
        ("compare-first-from", "2026-01-07"),
    ] {
        choose_day(&person, part, day).await;
    }
    person
        .reads("compare-wrong", "ends on its first day or later")
        .await;
    choose_day(&person, "compare-first-from", "2026-01-05").await;
    person.reads("compare", "Kingfisher squat").await;
    let cells = "return [...document.querySelectorAll('.compared:last-of-type td')].map((cell) => cell.innerText)";
    let said = person.run(cells).await;
    let said: Vec<String> = serde_json::from_value(said).unwrap();
    assert_eq!(
        said[1..],
        [
            "1",
            "3",
            "1",
            "3",
            "0",
            "0",
            "300 kg",
            "900 kg",
            "60 kg × 5, 6 Jan 2026",
            "60 kg × 5, 7 Jan 2026"
        ]
    );
    picture(&person, "coach-compare").await;
    person.close().await;
}

/// Chooses a day in a field, as the phone's own calendar does.
async fn choose_day(person: &Person, part: &str, day: &str) {
    person
        .run(&format!(
            "const field = document.querySelector('[data-part=\"{part}\"]');
             field.value = '{day}';
             field.dispatchEvent(new Event('change', {{ bubbles: true }}));"
        ))
        .await;
}
