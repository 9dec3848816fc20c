//! No room left on the disk in mid-session: the session goes on, the screen names what is not saved and offers the
//! export, and saves it when there is room again.

use super::browser::Browser;
use super::engine::{Engine, only_in};
use super::export::{download_into, downloaded};
use super::looks::picture;
use super::person::Person;
use super::server::Server;
use super::whole_session::{begin, end_rest, log};
use serde_json::{Value, json};

/// The room that the browser gives the page, in bytes; none: as usual. To be set before the page is opened: the browser
/// remembers for half a minute how much room there was.
async fn room(person: &Person, server: &Server, bytes: Option<u32>) {
    let origin = server.url();
    let origin = origin.trim_end_matches("/boathouse/");
    let mut params = json!({ "origin": origin });
    if let Some(bytes) = bytes {
        params["quotaSize"] = json!(bytes);
    }
    person
        .devtools("Storage.overrideQuotaForOrigin", params)
        .await;
}

/// What the page may keep, in bytes: more than the app's own files, which come out of the same room.
const ROOM: u32 = 30_000_000;

/// Fills the room to the last bytes with what is not the app's.
async fn fill(person: &Person) {
    let script = "
        const request = indexedDB.open('ballast', 1);
        request.onupgradeneeded = () => request.result.createObjectStore('ballast');
        request.onsuccess = async () => {
          const db = request.result;
          const kept = (size) => new Promise((go) => {
            const transaction = db.transaction('ballast', 'readwrite');
            const bytes = crypto.getRandomValues(new Uint8Array(Math.min(size, 65536)));
            const parts = Array(Math.ceil(size / 65536)).fill(bytes);
            transaction.objectStore('ballast').put(parts, Math.random());
            transaction.oncomplete = () => go(true);
            transaction.onabort = () => go(false);
          });
          for (const size of [2e6, 2e5, 2e4, 2e3, 200, 20]) while (await kept(size));
          db.close();
          done(true);
        };";
    assert_eq!(person.run_later(script).await, json!(true));
}

#[tokio::test]
async fn a_session_goes_on_with_a_full_disk_and_is_saved_when_there_is_room() {
    if !only_in(
        &[Engine::Chromium],
        "the disk is filled by Chromium's devtools",
    ) {
        return;
    }
    let server = Server::start();
    let browser = Browser::start("full");
    let client = browser.open().await;
    let person = Person { client };
    room(&person, &server, Some(ROOM)).await;
    person.client.goto(&server.url()).await.unwrap();
    person.tap("welcome-open").await;
    person.see("choose").await;
    begin(&person, "Lower A").await;
    person.tap("log").await;
    person.reads("saved", "saved").await;

    fill(&person).await;
    end_rest(&person).await;
    log(&person).await;
    person
        .reads("not-saved", "Kettlebell swing work set 2.")
        .await;
    person.reads("not-saved", "no room left to save").await;
    person.reads("saved", "saving").await;
    end_rest(&person).await;
    log(&person).await;
    person
        .reads("not-saved", "Kettlebell swing work set 2, 3.")
        .await;
    picture(&person, "full-disk").await;
    person.tap("write-again").await;
    person.see("not-saved").await;

    // At once, from where one is, and with what is in memory only.
    let folder = browser.folder().join("downloads");
    download_into(&person, &folder).await;
    person.tap("export-now").await;
    person.reads("notice", "is in your downloads").await;
    let (_, file) = downloaded(&folder).await;
    let events = file["sessions"][0]["events"].as_array().unwrap();
    let logged = |event: &&Value| event["what"].get("set_done").is_some();
    assert_eq!(events.iter().filter(logged).count(), 3);

    // Without a tap.
    room(&person, &server, None).await;
    person.gone("not-saved").await;
    person.reads("saved", "saved").await;
    browser.kill();
    drop(person);
    let person = Person::open(&browser, &server).await;
    person.see("floor").await;
    let done = person.count(".notch.done").await;
    assert_eq!(done, json!(3));
    person.close().await;
}
