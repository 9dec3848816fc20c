//! The form of the database: an older one is brought up to date after a copy, a failed change leaves everything, a newer
//! one can be looked at and exported.

use super::browser::Browser;
use super::disk::{leave, on_disk, return_to, rows};
use super::engine::{Engine, only_in};
use super::export::{download_into, downloaded};
use super::person::Person;
use super::server::Server;
use super::whole_session::{begin, end, end_now, log};
use serde_json::{Value, json};
use stanchion::ledger::SessionRecord;
use stanchion::store::{Entry, Remaking, SessionLog, seal};
use std::collections::BTreeMap;

/// The shelves of version 1, as installed phones have them.
const SHELVES_OF_1: &str = "['events', 'sessions', 'headings', 'summaries', 'sheets', 'kits', 'lifters', 'body_mass', 'aside']";

/// A phone with one session in the ledger and another on the floor, its database laid out as version 1 did it.
async fn phone_of_version_1(browser: &Browser, server: &Server) -> Person {
    let person = Person::arrive(browser, server).await;
    begin(&person, "Lower A").await;
    log(&person).await;
    end_now(&person).await;
    end(&person).await;
    person.tap("go-floor").await;
    begin(&person, "Lower A").await;
    log(&person).await;
    person.reads("saved", "saved").await;
    leave(&person, server).await;
    let body = format!(
        "const shelves = {SHELVES_OF_1};
         const db = await open();
         const kept = [];
         for (const shelf of shelves) kept.push([shelf, await rows(db, shelf)]);
         db.close();
         await asked(indexedDB.deleteDatabase('stanchion'));
         const old = await open(1, (made) => shelves.forEach((shelf) => made.createObjectStore(shelf)));
         for (const [shelf, all] of kept) for (const [key, row] of all) await put(old, shelf, key, row);
         old.close();"
    );
    on_disk(&person, &body).await;
    person
}

async fn version(person: &Person) -> Value {
    on_disk(
        person,
        "const db = await open(); db.close(); return db.version;",
    )
    .await
}

async fn all_is_there(person: &Person) {
    person.see("floor").await;
    assert_eq!(person.count(".notch.done").await, 1);
    person.run("location.hash = '#/ledger'").await;
    person.reads("session", "Lower A").await;
}

#[tokio::test]
async fn an_older_form_is_copied_and_then_brought_up_to_date() {
    let server = Server::start();
    let browser = Browser::start("layout");
    let person = phone_of_version_1(&browser, &server).await;
    return_to(&person, &server).await;
    all_is_there(&person).await;
    assert!(!person.has("not-kept").await);

    // The copy is a file that any phone can import.
    let folder = browser.downloads();
    download_into(&person, &folder).await;
    person.tap("go-kit").await;
    person.tap("copy").await;
    let (path, file) = downloaded(&folder).await;
    assert_eq!(file["sessions"].as_array().unwrap().len(), 2);
    let text = std::fs::read_to_string(path).unwrap();
    let archive = stanchion::store::read(&text).unwrap();
    assert_eq!(archive.current_sheets().len(), 2);
    leave(&person, &server).await;
    assert_eq!(
        version(&person).await,
        json!(stanchion::store::DATABASE_VERSION)
    );
    person.close().await;
}

#[tokio::test]
async fn a_change_of_form_that_fails_leaves_old_data_and_a_usable_app() {
    if !only_in(
        &[Engine::Chromium],
        "a script before the app comes by Chromium's devtools",
    ) {
        return;
    }
    let server = Server::start();
    let browser = Browser::start("layout-fails");
    let person = phone_of_version_1(&browser, &server).await;
    let before = rows(&person, "events").await;
    let spoil = "
        const old = IDBDatabase.prototype.createObjectStore;
        IDBDatabase.prototype.createObjectStore = function (name) {
          if (name === 'programmes') throw new DOMException('not today', 'UnknownError');
          return old.call(this, name);
        };";
    let spoiled = person.before_the_app(spoil).await;
    return_to(&person, &server).await;
    // In a session the reason is folded.
    person.tap_css("[data-part=not-kept] summary").await;
    person
        .reads(
            "not-kept",
            "could not be brought into the form of this version",
        )
        .await;
    all_is_there(&person).await;
    // It can be used, in memory, and given out.
    person.run("location.hash = '#/'").await;
    person.tap("undo-set").await;
    let folder = browser.downloads();
    download_into(&person, &folder).await;
    person.tap("export-now").await;
    let (_, file) = downloaded(&folder).await;
    assert_eq!(file["sessions"].as_array().unwrap().len(), 2);
    assert!(file.to_string().contains("undone"));

    leave(&person, &server).await;
    assert_eq!(version(&person).await, json!(1));
    assert_eq!(rows(&person, "events").await, before);
    // The next start that can, does.
    person
        .devtools("Page.removeScriptToEvaluateOnNewDocument", spoiled)
        .await;
    return_to(&person, &server).await;
    all_is_there(&person).await;
    leave(&person, &server).await;
    assert_eq!(
        version(&person).await,
        json!(stanchion::store::DATABASE_VERSION)
    );
    person.close().await;
}

#[tokio::test]
async fn a_newer_form_is_looked_at_and_exported_and_not_touched() {
    let server = Server::start();
    let browser = Browser::start("layout-newer");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    log(&person).await;
    person.reads("saved", "saved").await;
    leave(&person, &server).await;
    let body = "const db = await open(9, (made) => made.createObjectStore('later'));
         await put(db, 'later', 'k', 'v');
         db.close();";
    on_disk(&person, body).await;
    let before = rows(&person, "events").await;

    return_to(&person, &server).await;
    person.tap_css("[data-part=not-kept] summary").await;
    person.reads("not-kept", "made by a newer version").await;
    person.see("floor").await;
    assert_eq!(person.count(".notch.done").await, 1);
    person.tap("rest-less").await;
    let folder = browser.downloads();
    download_into(&person, &folder).await;
    person.tap("export-now").await;
    let (_, file) = downloaded(&folder).await;
    let events = file["sessions"][0]["events"].as_array().unwrap();
    assert_eq!(events.len(), 3);

    leave(&person, &server).await;
    assert_eq!(version(&person).await, json!(9));
    assert_eq!(rows(&person, "events").await, before);
    assert_eq!(rows(&person, "later").await.len(), 1);
    person.close().await;
}

/// The shelves of version 3.
const SHELVES_OF_3: &str = "['events', 'sessions', 'headings', 'summaries', 'sheets', 'exercises', 'programmes', 'drafts', 'kits', 'lifters', 'body_mass', 'aside', 'removed', 'imports']";

/// The rows of a database of version 3, as that version wrote them: shelf, key, row.
const ROWS_OF_3: &str = include_str!("../golden/rows-3.json");

/// A phone whose database is that of version 3. The app was never opened on it.
async fn phone_of_version_3(browser: &Browser, server: &Server) -> Person {
    let person = Person::open(browser, server).await;
    person.see("welcome-skip").await;
    leave(&person, server).await;
    let body = format!(
        "await asked(indexedDB.deleteDatabase('stanchion'));
         const old = await open(3, (made) => {SHELVES_OF_3}.forEach((shelf) => made.createObjectStore(shelf)));
         for (const [shelf, key, row] of {ROWS_OF_3}) await put(old, shelf, key, row);
         old.close();"
    );
    on_disk(&person, &body).await;
    person
}

/// The books that follow from the sessions of those rows, by shelf.
fn books_of_3() -> BTreeMap<&'static str, Vec<(String, String)>> {
    let rows: Vec<[String; 3]> = serde_json::from_str(ROWS_OF_3).unwrap();
    let mut remaking = Remaking::default();
    for [shelf, _, row] in &rows {
        if shelf == "sessions" {
            let json = stanchion::store::open(row).unwrap();
            let log: SessionLog = stanchion::json::parse(json).unwrap();
            let record = SessionRecord::from_events(log.as_events()).unwrap();
            remaking.take(Entry::of(&record));
        }
    }
    let mut books: BTreeMap<&str, Vec<(String, String)>> = BTreeMap::new();
    let rows = std::iter::from_fn(|| remaking.next_rows());
    for change in rows.flatten() {
        let row = seal(&change.json.unwrap());
        books
            .entry(change.shelf.name())
            .or_default()
            .push((change.key, row));
    }
    books
        .entry("books")
        .or_default()
        .push(("unread".to_owned(), seal("[]")));
    books.values_mut().for_each(|rows| rows.sort());
    books
}

async fn has_the_books_of_3(person: &Person) {
    for (shelf, expected) in books_of_3() {
        assert_eq!(rows(person, shelf).await, expected, "{shelf}");
    }
}

#[tokio::test]
async fn headings_histories_and_summaries_are_made_of_the_sessions_once() {
    let books = books_of_3();
    assert_eq!(books["headings"].len(), 5);
    let years = books["histories"]
        .iter()
        .filter(|(key, _)| key.starts_with("front-squat/"));
    assert_eq!(years.count(), 2, "2026 and 2027");
    let server = Server::start();
    let browser = Browser::start("layout-books");
    let person = phone_of_version_3(&browser, &server).await;
    let sessions = rows(&person, "sessions").await;
    return_to(&person, &server).await;
    person.see("choose").await;
    assert!(!person.has("not-kept").await);
    leave(&person, &server).await;
    has_the_books_of_3(&person).await;
    assert_eq!(
        rows(&person, "sessions").await,
        sessions,
        "what was logged stays"
    );
    // What is made once is not made again: this row would go.
    on_disk(
        &person,
        "const db = await open(); await put(db, 'histories', 'zz/2026', '1 0d4cbb29 []'); db.close();",
    )
    .await;
    return_to(&person, &server).await;
    person.see("choose").await;
    leave(&person, &server).await;
    assert_eq!(
        rows(&person, "histories").await.len(),
        books["histories"].len() + 1
    );
    person.close().await;
}

#[tokio::test]
async fn books_that_cannot_be_made_cost_nothing_and_are_made_at_the_next_start() {
    if !only_in(
        &[Engine::Chromium],
        "a script before the app comes by Chromium's devtools",
    ) {
        return;
    }
    let server = Server::start();
    let browser = Browser::start("layout-no-books");
    let person = phone_of_version_3(&browser, &server).await;
    let (headings, summaries) = (
        rows(&person, "headings").await,
        rows(&person, "summaries").await,
    );
    let spoil = "
        const old = IDBObjectStore.prototype.put;
        IDBObjectStore.prototype.put = function (...given) {
          if (this.name === 'histories') throw new DOMException('not today', 'QuotaExceededError');
          return old.apply(this, given);
        };";
    let spoiled = person.before_the_app(spoil).await;
    return_to(&person, &server).await;
    person.see("choose").await;
    person.run("location.hash = '#/ledger'").await;
    person.reads("session", "Lower A").await;
    leave(&person, &server).await;
    assert_eq!(rows(&person, "headings").await, headings);
    assert_eq!(rows(&person, "summaries").await, summaries);
    assert_eq!(rows(&person, "books").await, []);
    person
        .devtools("Page.removeScriptToEvaluateOnNewDocument", spoiled)
        .await;
    return_to(&person, &server).await;
    person.see("choose").await;
    leave(&person, &server).await;
    has_the_books_of_3(&person).await;
    person.close().await;
}
