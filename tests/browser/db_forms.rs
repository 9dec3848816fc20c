//! The store of record in other forms than this version's: none, older, newer, and a change that fails.

use crate::db::put;
use crate::help::{patch, run, text, until};
use stanchion::device::db::{Db, DbError};
use wasm_bindgen_test::wasm_bindgen_test;

#[wasm_bindgen_test]
async fn what_is_not_there_is_not_made() {
    assert!(Db::as_it_is("test-absent").await.unwrap().is_none());
    run("window.names = ''; indexedDB.databases().then(all => {
             window.names = 'of ' + all.map(one => one.name).join() })");
    until("the databases were listed", || !text("names").is_empty()).await;
    assert!(!text("names").contains("test-absent"));
}

#[wasm_bindgen_test]
async fn a_store_is_opened_as_it_is_and_says_its_version() {
    let made = Db::open("test-as-is", 3, &["events"]).await.unwrap();
    made.apply(vec![put("events", "a", "1")]).await.unwrap();
    drop(made);
    let db = Db::as_it_is("test-as-is").await.unwrap().unwrap();
    assert_eq!(db.version(), 3);
    assert_eq!(db.has("events").await, Ok(true));
    assert_eq!(db.has("sheets").await, Ok(false));
    assert_eq!(db.get("events", "a").await.unwrap().as_deref(), Some("1"));
}

#[wasm_bindgen_test]
async fn a_store_that_was_erased_meanwhile_is_not_made_again() {
    drop(Db::open("test-erased", 4, &["events"]).await.unwrap());
    let held = Db::as_it_is("test-erased").await.unwrap().unwrap().pinned();
    assert_eq!(held.get("events", "a").await, Ok(None));
    run("window.erased = '';
         indexedDB.deleteDatabase('test-erased').onsuccess = () => { window.erased = 'yes' }");
    until("it is erased", || text("erased") == "yes").await;
    assert_eq!(held.get("events", "a").await, Err(DbError::Absent));
    let written = held.apply(vec![put("events", "a", "1")]).await;
    assert_eq!(written, Err(DbError::Absent));
    assert!(Db::as_it_is("test-erased").await.unwrap().is_none());
}

#[wasm_bindgen_test]
async fn what_the_page_opened_is_taken_once_and_by_its_name() {
    drop(Db::open("test-given", 1, &["events"]).await.unwrap());
    drop(Db::open("test-other", 1, &["sheets"]).await.unwrap());
    // A promise of what is handed over stands where the page leaves it; `opens` counts what is opened besides.
    run("const open = name => new Promise(done => {
             const request = indexedDB.open(name);
             request.onsuccess = () => done(request.result);
         });
         window.give = (name, what) => { window.stanchionStore = Object.assign(what, { store: name }); };
         window.give('test-given', open('test-given'));");
    let _spy = patch(
        "window.opens = 0;
         const proto = IDBFactory.prototype, old = proto.open;
         shadow(proto, 'open', {value(...given) { window.opens += 1; return old.apply(this, given); }});",
    );
    let other = Db::as_it_is("test-other").await.unwrap().unwrap();
    assert_eq!(other.has("sheets").await, Ok(true));
    assert_eq!(text("String(opens)"), "1");
    let given = Db::as_it_is("test-given").await.unwrap().unwrap();
    assert_eq!(given.has("events").await, Ok(true));
    assert_eq!(text("String(opens)"), "1");
    // A second one is opened by the app itself.
    let own = Db::as_it_is("test-given").await.unwrap().unwrap();
    assert_eq!(own.has("events").await, Ok(true));
    assert_eq!(text("String(opens)"), "2");
    // Where the page found none there is none; where it could not look, the app looks.
    run("window.give('test-none', Promise.resolve(null))");
    assert!(Db::as_it_is("test-none").await.unwrap().is_none());
    run("window.give('test-given', Promise.resolve(undefined))");
    assert!(Db::as_it_is("test-given").await.unwrap().is_some());
    run("window.give('test-given', Promise.reject(new Error('not allowed')))");
    assert!(Db::as_it_is("test-given").await.unwrap().is_some());
}

#[wasm_bindgen_test]
async fn a_pinned_store_writes_into_no_newer_one() {
    drop(Db::open("test-pinned", 1, &["events"]).await.unwrap());
    let db = Db::as_it_is("test-pinned").await.unwrap().unwrap().pinned();
    db.apply(vec![put("events", "a", "1")]).await.unwrap();
    let newer = Db::open("test-pinned", 2, &["events", "sheets"])
        .await
        .unwrap();
    assert_eq!(
        db.apply(vec![put("events", "b", "2")]).await,
        Err(DbError::Newer)
    );
    assert_eq!(newer.count("events").await, Ok(1));
    assert_eq!(
        Db::open("test-pinned", 1, &["events"]).await.err(),
        Some(DbError::Newer)
    );
}

#[wasm_bindgen_test]
async fn a_change_of_form_that_fails_changes_nothing() {
    let old = Db::open("test-failing", 1, &["events"]).await.unwrap();
    old.apply(vec![put("events", "a", "1")]).await.unwrap();
    old.close();
    let shelves = ["events", "sheets", "exercises"];
    let failing = patch(
        "const proto = IDBDatabase.prototype, old = proto.createObjectStore;
         shadow(proto, 'createObjectStore', {value(name) {
             if (name === 'exercises') throw new DOMException('no room', 'UnknownError');
             return old.call(this, name);
         }});",
    );
    assert!(Db::open("test-failing", 2, &shelves).await.is_err());
    drop(failing);
    let db = Db::as_it_is("test-failing").await.unwrap().unwrap();
    assert_eq!(db.version(), 1);
    assert_eq!(db.has("sheets").await, Ok(false));
    assert_eq!(db.get("events", "a").await.unwrap().as_deref(), Some("1"));
    // The next try does all of it.
    db.close();
    let db = Db::open("test-failing", 2, &shelves).await.unwrap();
    assert_eq!(db.count("exercises").await, Ok(0));
    assert_eq!(db.get("events", "a").await.unwrap().as_deref(), Some("1"));
}

#[wasm_bindgen_test]
async fn what_is_no_text_is_given_as_one_and_costs_no_other_row() {
    let db = Db::open("test-odd", 1, &["events"]).await.unwrap();
    db.apply(vec![put("events", "a", "1")]).await.unwrap();
    run("window.put = false;
         indexedDB.open('test-odd').onsuccess = event => {
             const db = event.target.result, transaction = db.transaction('events', 'readwrite');
             transaction.objectStore('events').put({odd: [1]}, 'b');
             transaction.objectStore('events').put('2', 7);
             transaction.oncomplete = () => { db.close(); window.put = true } };");
    until("odd rows are there", || text("put") == "true").await;
    let pair = |key: &str, text: &str| (key.to_owned(), text.to_owned());
    assert_eq!(
        db.all("events").await.unwrap(),
        [pair("7", "2"), pair("a", "1"), pair("b", r#"{"odd":[1]}"#)]
    );
    assert_eq!(
        db.get("events", "b").await.unwrap().as_deref(),
        Some(r#"{"odd":[1]}"#)
    );
    assert_eq!(
        db.last("events", ("", "~"), 1).await.unwrap(),
        [pair("b", r#"{"odd":[1]}"#)]
    );
}
