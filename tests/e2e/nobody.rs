//! Nobody else: names with markup stay text, nothing leaves the phone, and the policy of the page holds.

use super::away::file_of;
use super::browser::Browser;
use super::export::give_file;
use super::person::Person;
use super::server::{Server, dist};
use super::whole_session::{end, log_all};
use serde_json::json;

/// A name that would run as a program where a text is taken for markup.
const MARKUP: &str = "<img src=x onerror=\"window.hit=1\">";

#[tokio::test]
async fn names_with_markup_stay_text_and_nothing_leaves_the_phone() {
    let server = Server::start();
    let browser = Browser::start("markup");
    let person = Person::arrive(&browser, &server).await;
    let file = file_of(browser.folder(), 1, MARKUP);
    person.tap("go-kit").await;
    give_file(&person, "import", &file).await;
    person.tap("import-take").await;
    person.reads("notice", "1 session new").await;
    person.tap("notice-close").await;
    person.tap("go-ledger").await;
    person.reads("session", MARKUP).await;
    person.tap("session").await;
    person.reads("session-record", MARKUP).await;
    // A sheet of that name, shared by link and opened again.
    person.tap("go-sheets").await;
    person.tap("sheet").await;
    person.tap("change-sheet").await;
    person.type_into("draft-name", MARKUP).await;
    person.tap("draft-keep").await;
    person.reads("sheet-look", MARKUP).await;
    person.tap("share-sheet").await;
    let link = "return document.querySelector('[data-part=\"share-link\"]').value";
    person
        .until(&format!("{link} !== ''"), "there is a link")
        .await;
    let link = person.run(link).await.as_str().unwrap().to_owned();
    let (address, code) = link.split_once('#').unwrap();
    assert_eq!(
        address,
        server.url(),
        "the sheet is in the fragment, which is sent to no host"
    );
    assert!(code.len() > 50);
    person.client.goto(&link).await.unwrap();
    person.reads("shared", MARKUP).await;
    // A whole session on it.
    person.tap("go-floor").await;
    person.reads("choose", MARKUP).await;
    person.tap("begin").await;
    log_all(&person).await;
    end(&person).await;
    // Every place that is left.
    person.tap("go-kit").await;
    for part in ["bars", "plates", "estimate"] {
        person.see(part).await;
    }
    let found = person
        .run("return [window.hit ?? null, document.querySelectorAll('img').length]")
        .await;
    assert_eq!(found, json!([null, 0]));
    let elsewhere = person
        .run(
            "return performance.getEntries().map((entry) => entry.name).filter((name) => name.includes(':'))
                .filter((name) => new URL(name).origin !== location.origin || new URL(name).search !== '')",
        )
        .await;
    assert_eq!(elsewhere, json!([]));
    // What the policy forbids would be among the faults.
    let faults = person
        .run("return localStorage.getItem('stanchion.faults')")
        .await;
    assert_eq!(faults, json!(null));
    person.close().await;
}

#[tokio::test]
async fn the_policy_lets_no_text_become_markup_or_a_script() {
    let server = Server::start();
    let browser = Browser::start("types");
    let person = Person::arrive(&browser, &server).await;
    let tried = person
        .run(
            "const name = (what) => { try { what(); return 'let through'; } catch (error) { return error.name; } };
             return [
                 name(() => document.createElement('template').innerHTML = '<b>x</b>'),
                 name(() => document.createElement('script').src = 'x.js'),
                 name(() => trustedTypes.createPolicy('other', {})),
             ]",
        )
        .await;
    assert_eq!(tried, json!(["TypeError", "TypeError", "TypeError"]));
    // The worker is registered under it all the same.
    person
        .until(
            "navigator.serviceWorker.getRegistration().then((found) => window.found = !!found);
             return window.found === true",
            "the worker is registered",
        )
        .await;
    // No code of the app can set markup: the glue does not even name it.
    let glue = std::fs::read_dir(dist())
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .find(|path| {
            path.extension().is_some_and(|end| end == "js")
                && path.to_string_lossy().contains("stanchion-")
        })
        .expect("the glue is there");
    let glue = std::fs::read_to_string(glue).unwrap();
    assert!(
        !glue.contains("innerHTML"),
        "a view has an element without anything that changes: put its text into {{}}"
    );
    person.close().await;
}
