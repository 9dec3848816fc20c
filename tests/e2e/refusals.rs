//! What is not right is refused with a sentence that names the place, and nothing is changed.

use super::browser::Browser;
use super::engine::{Engine, only_in};
use super::export::give_file;
use super::person::Person;
use super::server::Server;
use serde_json::{Value, json};

/// A sheet of the demo, for tests to spoil.
fn sheet_file() -> Value {
    serde_json::from_str(include_str!("../../assets/demo/boathouse.json"))
        .expect("the demo is JSON")
}

#[tokio::test]
async fn a_bad_file_is_refused_with_its_place_and_nothing_is_imported() {
    let server = Server::start();
    let browser = Browser::start("badfile");
    let person = Person::arrive(&browser, &server).await;
    person.tap("go-sheets").await;
    person.see("sheets").await;
    let spoil = |path: &str, value: Value| {
        let mut file = sheet_file();
        *file
            .pointer_mut(path)
            .unwrap_or_else(|| panic!("{path} is in the demo")) = value;
        file.to_string()
    };
    let squat = "/sheets/0/groups/1/straight";
    let cases = [
        ("{ not json".to_owned(), vec!["line 1"]),
        (spoil("/version", json!(2)), vec!["version 2"]),
        (
            spoil(&format!("{squat}/start"), json!("-60 kg")),
            vec!["sheets[0].groups[1]", "0 to 2000 kg"],
        ),
        (
            spoil(&format!("{squat}/start"), json!("60 stone")),
            vec!["sheets[0].groups[1]", "kg or lb"],
        ),
        (
            spoil(&format!("{squat}/tempo"), json!("900/1/1/0")),
            vec!["sheets[0].groups[1]", "0 to 20 seconds"],
        ),
        (
            spoil(&format!("{squat}/sets/0/count"), json!(10_000)),
            vec!["sheets[0].groups[1]", "1 to 20"],
        ),
    ];
    for (i, (text, words)) in cases.into_iter().enumerate() {
        let path = browser.folder().join(format!("bad-{i}.json"));
        std::fs::write(&path, text).unwrap();
        give_file(&person, "open-sheet", &path).await;
        person.reads("notice", "nothing was imported").await;
        for word in words {
            person.reads("notice", word).await;
        }
        person.tap("notice-close").await;
        person.gone("notice").await;
    }
    assert_eq!(person.count("[data-part=\"sheet\"]").await, 2);
    person.close().await;
}

#[tokio::test]
async fn a_sheet_opened_from_a_file_runs_on_the_floor() {
    let server = Server::start();
    let browser = Browser::start("sheetfile");
    let person = Person::open(&browser, &server).await;
    person.tap("welcome-skip").await;
    person.tap("go-sheets").await;
    let path = browser.folder().join("sheets.json");
    std::fs::write(&path, sheet_file().to_string()).unwrap();
    give_file(&person, "open-sheet", &path).await;
    person.tap("import-take").await;
    person.reads("notice", "2 sheets new").await;
    person.tap("notice-close").await;
    person.tap("sheet").await;
    person.reads("sheet-look", "Front squat").await;
    person.tap("begin").await;
    person.reads("exercise", "Kettlebell swing").await;
    person.close().await;
}

#[tokio::test]
async fn where_storage_is_refused_the_app_runs_and_says_that_nothing_is_kept() {
    if !only_in(
        &[Engine::Chromium],
        "a script before the app comes by Chromium's devtools",
    ) {
        return;
    }
    let server = Server::start();
    let browser = Browser::start("refused");
    let client = browser.open().await;
    let source = "Object.defineProperty(window, 'indexedDB', { get() { throw new DOMException('no', 'SecurityError') } });
                  Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('no', 'SecurityError') } });";
    let person = Person { client };
    person.before_the_app(source).await;
    person.client.goto(&server.url()).await.unwrap();
    person.tap("welcome-open").await;
    person.reads("not-kept", "Nothing new will be kept").await;
    super::whole_session::begin(&person, "Lower A").await;
    person.tap("log").await;
    person.reads("saved", "in memory only").await;
    person.close().await;
}

#[tokio::test]
async fn a_body_mass_that_is_none_is_refused_in_place() {
    let server = Server::start();
    let browser = Browser::start("mass");
    let person = Person::open(&browser, &server).await;
    person.type_into("body-mass", "a lot").await;
    person.tap("welcome-open").await;
    person.reads("welcome", "“a lot” is no plain number").await;
    person.type_into("body-mass", "79.5").await;
    person.tap("welcome-open").await;
    person.see("choose").await;
    person.tap("go-kit").await;
    person
        .until(
            "return document.querySelector('[data-part=\"body-mass\"]')?.value === '79.5'",
            "it is kept",
        )
        .await;
    person.close().await;
}
