//! No room left on the disk in mid-session: the session goes on, the screen names what is not saved and offers the
//! export, and saves it when there is room again.

use super::browser::Browser;
use super::export::{download_into, downloaded};
use super::looks::picture;
use super::person::Person;
use super::server::Server;
use super::whole_session::{begin, end_rest, log};
use serde_json::{Value, json};

/// The room that the browser gives the page, in bytes; none: as usual.
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

#[tokio::test]
async fn a_session_goes_on_with_a_full_disk_and_is_saved_when_there_is_room() {
    let server = Server::start();
    let browser = Browser::start("full");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    person.tap("log").await;
    person.reads("saved", "saved").await;

    room(&person, &server, Some(1)).await;
    end_rest(&person).await;
    log(&person).await;
    person
        .reads("not-saved", "Kettlebell swing work set 2 of 3")
        .await;
    person.reads("not-saved", "no room left to save").await;
    person.reads("saved", "saving").await;
    end_rest(&person).await;
    log(&person).await;
    person
        .reads(
            "not-saved",
            "Kettlebell swing work set 2 of 3, Kettlebell swing work set 3 of 3",
        )
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
    let done = person
        .run("return document.querySelectorAll('.notch.done').length")
        .await;
    assert_eq!(done, json!(3));
    person.close().await;
}
