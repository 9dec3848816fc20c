//! From outside: a file sent by another app, a file opened with the app, and the way to the home screen.

use super::away::file_of;
use super::browser::Browser;
use super::engine::{Engine, only_in};
use super::person::Person;
use super::server::Server;
use serde_json::json;

/// Once the service worker answers for the page.
async fn worker_answers(person: &Person) {
    person
        .until(
            "return navigator.serviceWorker.controller !== null \
             || (navigator.serviceWorker.getRegistration().then(r => window.ready = !!r?.active), window.ready === true)",
            "the service worker is there",
        )
        .await;
    person.reload().await;
}

#[tokio::test]
async fn a_file_that_another_app_sends_is_looked_at_once() {
    let server = Server::start();
    let browser = Browser::start("sent");
    let person = Person::arrive(&browser, &server).await;
    worker_answers(&person).await;
    let file = file_of(browser.folder(), 3, "Front squat");
    let text = json!(std::fs::read_to_string(file).unwrap());
    // What the system does when an app sends a file, as the manifest says it.
    let send = format!(
        "const form = new FormData();
         form.set('file', new File([{text}], 'log.json', {{ type: 'application/json' }}));
         fetch('./receive', {{ method: 'POST', body: form }}).then(answer => window.at = answer.url);"
    );
    person.run(&send).await;
    person
        .until(
            "return Boolean(window.at)",
            "the worker took the file and leads to the page",
        )
        .await;
    let address = format!("{}?received", server.url());
    person.client.goto(&address).await.unwrap();
    person.reads("import-said", "3 sessions new").await;
    person.tap("import-take").await;
    person.reads("notice", "3 sessions new").await;
    person.tap("notice-close").await;
    person.reload().await;
    person.see("choose").await;
    assert!(!person.has("import-panel").await, "it is shown once");
    person.close().await;
}

#[tokio::test]
async fn a_file_that_is_opened_with_the_app_is_looked_at() {
    if !only_in(&[Engine::Chromium], "a script before the app") {
        return;
    }
    let server = Server::start();
    let browser = Browser::start("opened");
    let person = Person::arrive(&browser, &server).await;
    let file = file_of(browser.folder(), 2, "Front squat");
    let text = json!(std::fs::read_to_string(file).unwrap());
    let opens = format!(
        "window.launchQueue = {{ setConsumer: consume => consume({{ files: [
           {{ getFile: async () => {{ throw new DOMException('gone', 'NotFoundError') }} }},
           {{ getFile: async () => new File([{text}], 'log.json') }},
         ] }}) }};"
    );
    let script = format!(
        "Object.defineProperty(window, 'launchQueue', {{ configurable: true, value: null, writable: true }}); {opens}"
    );
    person.before_the_app(&script).await;
    person.reload().await;
    person.reads("import-said", "2 sessions new").await;
    person.tap("import-leave").await;
    person.gone("import-panel").await;
    person.close().await;
}

#[tokio::test]
async fn kit_says_how_the_app_gets_to_the_home_screen() {
    let server = Server::start();
    let browser = Browser::start("home");
    let person = Person::arrive(&browser, &server).await;
    person.tap("go-kit").await;
    person.reads("home", "home screen").await;
    person
        .run(
            "const offer = new Event('beforeinstallprompt', { cancelable: true });
             offer.prompt = async () => { window.asked = true };
             window.dispatchEvent(offer); window.kept = offer.defaultPrevented;",
        )
        .await;
    person.tap("home-add").await;
    person
        .until("return window.asked && window.kept", "the browser asks")
        .await;
    person.gone("home-add").await;
    person.close().await;
}
