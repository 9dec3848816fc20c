//! A new build on the host: it waits, it says nothing during a session, and it takes over when the person says so.

use super::browser::Browser;
use super::language::speaks;
use super::person::Person;
use super::server::{Server, dist};
use super::whole_session::{begin, end, end_now, end_rest, log};
use serde_json::{Value, json};
use std::path::{Path, PathBuf};

/// A copy of the built app that calls itself another version: its worker differs, its files are the same.
fn next_build(into: &Path) -> PathBuf {
    let folder = into.join("next-build");
    copy(&dist(), &folder);
    let worker = folder.join("sw.js");
    let text = std::fs::read_to_string(&worker).expect("the build has a worker");
    let (head, rest) = text
        .split_once("\"version\"")
        .expect("it names its version");
    let (before, rest) = rest.split_once('"').expect("the version is a text");
    let next = format!("{head}\"version\"{before}\"next-{rest}");
    std::fs::write(worker, next).expect("the copy can be written");
    folder
}

/// Copies a folder with all that is in it.
pub fn copy(from: &Path, to: &Path) {
    std::fs::create_dir_all(to).expect("a folder can be made");
    for entry in std::fs::read_dir(from).expect("the build can be read") {
        let path = entry.expect("an entry can be read").path();
        let target = to.join(path.file_name().expect("it has a name"));
        if path.is_dir() {
            copy(&path, &target);
        } else {
            std::fs::copy(&path, &target).expect("a file can be copied");
        }
    }
}

/// Waits until the page is served by a worker of its own.
pub async fn installed(person: &Person) {
    person.all_is_saved().await;
    person
        .run_later("navigator.serviceWorker.ready.then(() => done(true))")
        .await;
    person.reload().await;
    let controlled = "return navigator.serviceWorker.controller !== null";
    person.until(controlled, "the worker serves the page").await;
}

/// Looks for the build that the host has now, until it is installed and waits.
async fn comes(person: &Person) {
    let waits = person
        .run_later(
            "navigator.serviceWorker.getRegistration().then(async (found) => {
               await found.update();
               const look = () => found.waiting ? done(true) : setTimeout(look, 5);
               look();
             }).catch((why) => done(String(why)))",
        )
        .await;
    assert_eq!(waits, json!(true));
}

/// The versions that the browser keeps the files of, the one that waits among them.
async fn versions(person: &Person) -> Vec<String> {
    let names = person
        .run_later("caches.keys().then((names) => done(names.map((name) => name.split(' ')[1])))")
        .await;
    let mut names: Vec<String> = serde_json::from_value(names).expect("names are texts");
    names.sort();
    names
}

#[tokio::test]
async fn a_new_version_never_takes_over_during_a_session() {
    let server = Server::start();
    let browser = Browser::start("update");
    let person = Person::arrive(&browser, &server).await;
    installed(&person).await;
    let old = versions(&person).await;
    assert_eq!(old.len(), 1);
    begin(&person, "Lower A").await;
    log(&person).await;

    server.serve(next_build(browser.folder()));
    comes(&person).await;
    // The session goes on, also after a reload, in the version that it began in, and nobody asks.
    for _ in 0..2 {
        end_rest(&person).await;
        log(&person).await;
        assert!(!person.has("update").await);
        person.reload().await;
        person.see("rest").await;
        let state = "navigator.serviceWorker.getRegistration().then((found) =>
             done([found.waiting !== null, found.active.state]))";
        assert_eq!(person.run_later(state).await, json!([true, "activated"]));
        assert_eq!(versions(&person).await.len(), 2);
        assert!(!person.has("update").await);
    }

    end_now(&person).await;
    end(&person).await;
    person.reads("update", "A new version is ready").await;
    person.run("window.before = true").await;
    person.tap("update-take").await;
    let anew = "return window.before === undefined && document.querySelector('[data-part=\"place\"]') !== null";
    person.until(anew, "the page was loaded anew").await;
    let only = async |person: &Person| -> Value { json!(versions(person).await) };
    let new = json!([format!("next-{}", old[0])]);
    let since = std::time::Instant::now();
    while only(&person).await != new {
        assert!(since.elapsed().as_secs() < 20, "the old version stays");
    }
    person.tap("go-ledger").await;
    person.reads("session", "3 sets").await;
    person.close().await;
}

/// The next build, in which Kit is called another thing in German.
async fn next_words(person: &Person, into: &Path) -> PathBuf {
    let folder = next_build(into);
    let words = folder.join("words/de.json");
    let text = std::fs::read_to_string(&words).expect("the build has the texts");
    let renamed = text.replace("\"Kit\": \"Geräte\"", "\"Kit\": \"Garage\"");
    assert_ne!(renamed, text);
    let digest = async |text: &str| -> String {
        let script = format!(
            "crypto.subtle.digest('SHA-256', new TextEncoder().encode({}))
               .then((digest) => done(btoa(String.fromCharCode(...new Uint8Array(digest)))))",
            json!(text)
        );
        let digest = person.run_later(&script).await;
        format!("sha256-{}", digest.as_str().expect("a digest"))
    };
    let worker = folder.join("sw.js");
    let build = std::fs::read_to_string(&worker).expect("the copy has a worker");
    let other = build.replace(&digest(&text).await, &digest(&renamed).await);
    assert_ne!(other, build);
    std::fs::write(worker, other).expect("the copy can be written");
    std::fs::write(words, renamed).expect("the copy can be written");
    folder
}

#[tokio::test]
async fn a_new_version_brings_the_texts_of_the_language_that_is_spoken() {
    let server = Server::start();
    let browser = Browser::start("update-words");
    let person = Person::arrive(&browser, &server).await;
    installed(&person).await;
    person.tap("go-kit").await;
    person.tap("language-de").await;
    speaks(&person, "de", "Geräte").await;
    let next = next_words(&person, browser.folder()).await;
    server.serve(next);
    comes(&person).await;
    person.see("update-take").await;
    // It has all that it needs.
    server.serve_nothing();
    person.tap("update-take").await;
    speaks(&person, "de", "Garage").await;
    person.close().await;
}
