//! Out, in and away: an import looked at, taken and taken back; sessions removed; the table; the reminder; everything
//! erased; the state of the app.

use super::browser::Browser;
use super::common::built::{block, done, events, key, reps, work};
use super::common::time;
use super::export::{download_into, export, give_file};
use super::looks::picture;
use super::person::Person;
use super::server::Server;
use super::whole_session::{begin, end, log_all};
use serde_json::json;
use stanchion::session::{Amount, What};
use stanchion::sheet::{Line, LoadBasis, Note, SideMode};
use stanchion::store::{Archive, SessionLog, write};
use std::path::{Path, PathBuf};

/// Writes a file of so many sessions, with that name on sheet, exercise and note.
pub fn file_of(folder: &Path, sessions: u64, name: &str) -> PathBuf {
    let mut squat = block(vec![work(1, 5, 8)], LoadBasis::External, SideMode::Both);
    squat.exercise.name = Line::new(name).unwrap();
    let mut archive = Archive::default();
    for n in 1..=sessions {
        let mut all = events(
            n,
            &squat,
            None,
            &[(key(0, 0), done(Some("60 kg"), Amount::Reps(reps(5))))],
        );
        let note = What::Noted {
            set: None,
            text: Note::new(name).unwrap(),
        };
        all.push(super::common::events::event(
            n,
            n * 86_400_000 + 600_000,
            1,
            note,
        ));
        if let What::Began(began) = &mut all[0].what {
            began.sheet.name = Line::new(name).unwrap();
            let id = began.session;
            archive
                .sessions
                .insert(id, SessionLog::new(id, all).unwrap());
        }
    }
    let file = folder.join(format!("{sessions}.json"));
    std::fs::write(&file, write(&archive, time(0))).unwrap();
    file
}

async fn sessions(person: &Person) -> u64 {
    person.tap("go-ledger").await;
    person.see("ledger").await;
    person.count("[data-part=\"session\"]").await
}

#[tokio::test]
async fn an_import_is_looked_at_taken_in_and_taken_back() {
    let server = Server::start();
    let browser = Browser::start("bring");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    assert_eq!(log_all(&person).await, 18);
    end(&person).await;
    let (first, before) = export(&person, &browser.downloads()).await;
    // Not every engine lets a test choose another folder for the second.
    std::fs::remove_file(first).unwrap();
    let file = file_of(browser.folder(), 14, "Front squat");

    give_file(&person, "import", &file).await;
    person.reads("import-said", "14 sessions new").await;
    picture(&person, "import").await;
    person.tap("import-leave").await;
    person.gone("import-panel").await;
    assert_eq!(sessions(&person).await, 1, "nothing was written");

    person.tap("go-kit").await;
    give_file(&person, "import", &file).await;
    person.tap("import-take").await;
    person.reads("notice", "14 sessions new").await;
    person.tap("notice-close").await;
    assert_eq!(sessions(&person).await, 15);
    // The way back outlives a reload.
    person.reload().await;
    person.tap("go-kit").await;
    person.reads("import-last", "14 sessions new").await;
    person
        .run("document.querySelector('[data-part=\"export\"]').scrollIntoView()")
        .await;
    picture(&person, "kit-data").await;
    person.tap("import-undo").await;
    person.reads("notice", "Taken back").await;
    person.tap("notice-close").await;
    assert!(!person.has("import-undo").await);
    assert_eq!(sessions(&person).await, 1);
    let (_, after) = export(&person, &browser.downloads()).await;
    assert_eq!(before["sessions"], after["sessions"]);
    assert_eq!(before["sheets"], after["sheets"]);
    person.close().await;
}

#[tokio::test]
async fn an_import_that_breaks_half_way_leaves_nothing() {
    let server = Server::start();
    let browser = Browser::start("half");
    let person = Person::arrive(&browser, &server).await;
    let file = file_of(browser.folder(), 14, "Front squat");
    person.tap("go-kit").await;
    give_file(&person, "import", &file).await;
    person.reads("import-said", "14 sessions new").await;
    person
        .run(
            "let left = 5;
             const put = IDBObjectStore.prototype.put;
             IDBObjectStore.prototype.put = function (...rest) {
                 if (left-- === 0) throw new DOMException('full', 'QuotaExceededError');
                 return put.apply(this, rest);
             }",
        )
        .await;
    person.tap("import-take").await;
    person.reads("notice", "nothing was imported").await;
    person.reload().await;
    assert_eq!(sessions(&person).await, 0);
    person.tap("go-kit").await;
    assert!(!person.has("import-undo").await);
    person.close().await;
}

#[tokio::test]
async fn a_removed_session_comes_back_by_undo_and_by_nothing_else() {
    let server = Server::start();
    let browser = Browser::start("remove");
    let person = Person::arrive(&browser, &server).await;
    let file = file_of(browser.folder(), 3, "Front squat");
    person.tap("go-kit").await;
    give_file(&person, "import", &file).await;
    person.tap("import-take").await;
    person.reads("notice", "3 sessions new").await;
    person.tap("notice-close").await;
    assert_eq!(sessions(&person).await, 3);
    person.tap("session").await;
    person.tap("session-remove").await;
    picture(&person, "session-remove").await;
    person.tap("session-remove-sure").await;
    person.reads("sessions-gone", "1 session removed").await;
    assert_eq!(sessions(&person).await, 2);
    picture(&person, "sessions-gone").await;
    person.tap("session-back").await;
    person.reads("notice", "1 session back").await;
    person.tap("notice-close").await;
    assert_eq!(sessions(&person).await, 3);

    person.tap("go-kit").await;
    person.tap("sessions-remove").await;
    person.tap("sessions-remove-sure").await;
    person.reads("sessions-gone", "3 sessions removed").await;
    assert_eq!(sessions(&person).await, 0);
    person.reload().await;
    person.tap("go-kit").await;
    give_file(&person, "import", &file).await;
    person
        .reads("import-said", "3 sessions left out, as removed here before")
        .await;
    person.tap("import-leave").await;
    person.close().await;
}

#[tokio::test]
async fn the_reminder_comes_and_an_export_quiets_it() {
    let server = Server::start();
    let browser = Browser::start("remind");
    let person = Person::arrive(&browser, &server).await;
    let file = file_of(browser.folder(), 6, "Front squat");
    person.tap("go-kit").await;
    person.reads("exported", "Not exported").await;
    give_file(&person, "import", &file).await;
    person.tap("import-take").await;
    person.reads("notice", "6 sessions new").await;
    person.tap("notice-close").await;
    person.tap("go-floor").await;
    person.see("choose").await;
    assert!(!person.has("remind").await, "ten is usual");
    person.tap("go-kit").await;
    person.tap("remind-after-0").await;
    person.tap("go-floor").await;
    person
        .reads("remind-said", "6 sessions are in no export yet")
        .await;
    picture(&person, "remind").await;
    person.tap("go-ledger").await;
    download_into(&person, &browser.folder().join("out")).await;
    person.tap("remind-export").await;
    person.reads("notice", "is in your downloads").await;
    person.gone("remind").await;
    person.close().await;
}

#[tokio::test]
async fn the_sets_are_written_as_a_table_and_a_file_goes_where_it_is_chosen() {
    let server = Server::start();
    let browser = Browser::start("table");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    assert_eq!(log_all(&person).await, 18);
    end(&person).await;
    person.tap("go-kit").await;
    // A file of the browser's own stands for the one that a person chooses.
    person
        .run(
            "window.showSaveFilePicker = async (asked) => {
                 window.asked = asked;
                 const folder = await navigator.storage.getDirectory();
                 return folder.getFileHandle('chosen.csv', { create: true });
             }",
        )
        .await;
    person.tap("export-sets").await;
    person.reads("notice", "chosen.csv is written").await;
    let read = "navigator.storage.getDirectory()
            .then((folder) => folder.getFileHandle('chosen.csv'))
            .then((handle) => handle.getFile()).then((file) => file.text())
            .then((text) => window.written = text);
        return typeof window.written === 'string'";
    person.until(read, "the file is read").await;
    let text = person.run("return window.written").await;
    let mut table = csv::Reader::from_reader(text.as_str().unwrap().as_bytes());
    let rows: Vec<csv::StringRecord> = table.records().map(Result::unwrap).collect();
    assert_eq!(rows.len(), 18);
    assert_eq!(&rows[0][1], "Lower A");
    let asked = person.run("return window.asked.suggestedName").await;
    assert!(asked.as_str().unwrap().starts_with("stanchion-sets-"));

    // Closed, nothing is written; nothing is said.
    person.tap("notice-close").await;
    person
        .run("window.showSaveFilePicker = () => Promise.reject(new DOMException('', 'AbortError'))")
        .await;
    person.tap("export").await;
    assert!(!person.has("notice").await);
    // Without the dialog it is a download.
    person.run("delete window.showSaveFilePicker").await;
    let (_, all) = export(&person, &browser.folder().join("out")).await;
    assert_eq!(all["sessions"].as_array().unwrap().len(), 1);
    person.close().await;
}

#[tokio::test]
async fn the_state_of_the_app_holds_nothing_that_was_typed() {
    let server = Server::start();
    let browser = Browser::start("state");
    let person = Person::arrive(&browser, &server).await;
    let file = file_of(browser.folder(), 2, "Kingfisher squat");
    person.tap("go-kit").await;
    give_file(&person, "import", &file).await;
    person.tap("import-take").await;
    person.reads("notice", "2 sessions new").await;
    person.tap("notice-close").await;
    person
        .run(
            "const reason = new RangeError('Kingfisher');
             window.dispatchEvent(new PromiseRejectionEvent('unhandledrejection', { promise: Promise.resolve(), reason }))",
        )
        .await;
    person.run("location.hash = '/kit/state'").await;
    person.reads("state-lines", "sessions: 2").await;
    person.reads("state-lines", "sheets: 2").await;
    person.reads("state-lines", "file format 1").await;
    person.reads("state-lines", "unhandled: RangeError").await;
    let said = person.read("state").await;
    assert!(!said.contains("Kingfisher"), "{said}");
    picture(&person, "state").await;
    person.close().await;
}

#[tokio::test]
async fn everything_is_erased_after_an_export_and_only_then() {
    let server = Server::start();
    let browser = Browser::start("erase");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    log_all(&person).await;
    end(&person).await;
    person.run("localStorage.setItem('another.app', '1')").await;
    person.tap("go-kit").await;
    person.tap("look-dark").await;
    person.tap("erase").await;
    person.reads("erase-goes", "1 session, 2 sheets").await;
    assert!(!person.has("erase-sure").await, "first the export");
    picture(&person, "erase").await;
    person.tap("erase-leave").await;
    person.gone("erase-panel").await;
    person.tap("erase").await;
    download_into(&person, &browser.folder().join("out")).await;
    person.tap("erase-export").await;
    person.tap("erase-sure").await;
    person.see("welcome").await;
    let left = person
        .run("return Object.keys(localStorage).filter((key) => key.startsWith('stanchion.'))")
        .await;
    assert_eq!(left, json!([]));
    assert_eq!(
        person
            .run("return localStorage.getItem('another.app')")
            .await,
        json!("1")
    );
    person.tap("welcome-skip").await;
    person.see("no-sheets").await;
    assert_eq!(sessions(&person).await, 0);
    // Declined expressly, it works too.
    person.tap("go-kit").await;
    person.tap("erase").await;
    person.tap("erase-decline").await;
    person.tap("erase-sure").await;
    person.see("welcome").await;
    person.close().await;
}
