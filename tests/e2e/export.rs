//! The data in own hands: the export holds to its schema, and an empty phone that imports it exports the same.

use super::browser::Browser;
use super::engine::{DOWNLOADS, Engine};
use super::person::Person;
use super::server::Server;
use super::whole_session::{begin, end_now};
use serde_json::{Value, json};
use std::path::{Path, PathBuf};

/// Exports everything into a folder and reads the file.
pub async fn export(person: &Person, folder: &Path) -> (PathBuf, Value) {
    download_into(person, folder).await;
    person.tap("go-kit").await;
    person.tap("export").await;
    person.reads("notice", "is in your downloads").await;
    person.tap("notice-close").await;
    downloaded(folder).await
}

/// Lets downloads go into a folder.
pub async fn download_into(person: &Person, folder: &Path) {
    std::fs::create_dir_all(folder).unwrap();
    if Engine::here() != Engine::Chromium {
        // They were told their folder when they started.
        assert!(folder.ends_with(DOWNLOADS), "downloads go to one folder");
        return;
    }
    let allow = json!({ "behavior": "allow", "downloadPath": folder, "eventsEnabled": false });
    person.devtools("Browser.setDownloadBehavior", allow).await;
}

/// The file that was downloaded into a folder, once it is whole.
pub async fn downloaded(folder: &Path) -> (PathBuf, Value) {
    let since = std::time::Instant::now();
    loop {
        let file = std::fs::read_dir(folder)
            .unwrap()
            .filter_map(Result::ok)
            .map(|entry| entry.path())
            .find(|path| path.extension().is_some_and(|end| end == "json"));
        if let Some(file) = file
            && let Ok(text) = std::fs::read_to_string(&file)
            && let Ok(value) = serde_json::from_str(&text)
        {
            return (file, value);
        }
        assert!(since.elapsed().as_secs() < 20, "no export arrived");
        tokio::task::yield_now().await;
    }
}

/// Gives a file to a field.
pub async fn give_file(person: &Person, part: &str, file: &Path) {
    let field = person.see(part).await;
    field
        .send_keys(&file.display().to_string())
        .await
        .expect("the field takes a file");
}

#[tokio::test]
async fn an_export_is_valid_and_an_import_into_an_empty_phone_exports_the_same() {
    let server = Server::start();
    let first = Browser::start("export");
    let person = Person::arrive(&first, &server).await;
    begin(&person, "Lower A").await;
    person.tap("log").await;
    person.reads("saved", "saved").await;
    end_now(&person).await;
    person.see("finish").await;
    person.tap("rpe-5").await;
    person.tap("put-away").await;
    person.see("ledger").await;
    let (file, mut ours) = export(&person, &first.downloads()).await;

    let schema: Value =
        serde_json::from_str(include_str!("../../assets/stanchion-1.schema.json")).unwrap();
    let validator = jsonschema::validator_for(&schema).expect("the schema is a schema");
    let errors: Vec<String> = validator
        .iter_errors(&ours)
        .map(|error| error.to_string())
        .collect();
    assert_eq!(errors, Vec::<String>::new());
    assert_eq!(ours["sessions"].as_array().map(Vec::len), Some(1));
    assert_eq!(ours["sheets"].as_array().map(Vec::len), Some(2));

    let second = Browser::start("import");
    let other = Person::open(&second, &server).await;
    give_file(&other, "welcome-import", &file).await;
    other.reads("import-said", "1 session new").await;
    other.tap("import-take").await;
    other.reads("notice", "1 session new").await;
    other.tap("notice-close").await;
    let (_, mut theirs) = export(&other, &second.downloads()).await;
    ours["written"] = Value::Null;
    theirs["written"] = Value::Null;
    assert_eq!(ours, theirs);

    // A second import of the same file adds nothing.
    give_file(&other, "import", &file).await;
    other.reads("import-said", "1 session known").await;
    other.tap("import-leave").await;
    other.gone("import-panel").await;
    other.tap("go-ledger").await;
    other.see("session").await;
    assert_eq!(other.count("[data-part=\"session\"]").await, 1);
    other.tap("session").await;
    other.reads("set", "6 reps at 15 kg").await;
    person.close().await;
    other.close().await;
}

#[tokio::test]
async fn a_file_of_sheets_alone_leaves_the_welcome_and_says_so() {
    let server = Server::start();
    let browser = Browser::start("sheetsalone");
    let person = Person::open(&browser, &server).await;
    let bad = browser.folder().join("bad.json");
    std::fs::write(&bad, "{ not json").unwrap();
    give_file(&person, "welcome-import", &bad).await;
    person.reads("notice", "nothing was imported").await;
    let sheets = browser.folder().join("sheets.json");
    std::fs::write(&sheets, include_str!("../../assets/demo/boathouse.json")).unwrap();
    give_file(&person, "welcome-import", &sheets).await;
    person.tap("import-take").await;
    person.reads("notice", "2 sheets new").await;
    person.reads("notice", "no settings of a lifter").await;
    assert!(person.has("welcome").await);
    person.tap("welcome-skip").await;
    person.reads("choose", "Lower A").await;
    person.close().await;
}

#[tokio::test]
async fn the_kit_follows_the_unit_on_display() {
    let server = Server::start();
    let browser = Browser::start("unit");
    let person = Person::arrive(&browser, &server).await;
    person.tap("go-kit").await;
    person.reads("bars", "20 kg").await;
    person.tap("unit-lb").await;
    person.reads("bars", "44").await;
    let (_, file) = export(&person, &browser.downloads()).await;
    let newest = |list: &str| file[list].as_array().and_then(|all| all.last()).cloned();
    assert_eq!(newest("kit").unwrap()["kit"]["unit"], "lb");
    assert_eq!(newest("lifter").unwrap()["unit"], "lb");
    person.close().await;
}
