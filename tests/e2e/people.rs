//! Several lifters on one phone: added, changed over to in two taps, kept apart on disk and in every tab, removed.

use super::browser::Browser;
use super::disk::{leave, return_to, rows_of};
use super::export::{download_into, downloaded};
use super::looks::picture;
use super::person::Person;
use super::server::Server;
use super::whole_session::{begin, end_now, log};
use super::write::paste;

/// Names the lifter who is here Ann, and adds Bea, who reads the welcome. Bea is here then.
pub async fn ann_and_bea(person: &Person) {
    person.run("location.hash = '/kit/lifters'").await;
    person.type_into("lifter-name", "Bea").await;
    person.tap("lifter-add").await;
    person.see("lifter-1").await;
    person.type_into("lifter-0", "Ann").await;
    person.reads("who", "Ann").await;
    change_over(person, 1).await;
    person.reads("welcome", "Stanchion, Bea").await;
    // One phone, one garage: what Ann has is offered first.
    person.reads("welcome-kit-shared", "as Ann has it").await;
    person.tap("welcome-open").await;
    person.see("lifters").await;
    person.reads("who", "Bea").await;
}

/// Lets the one of that number sit down, by two taps.
pub async fn change_over(person: &Person, n: usize) {
    person.tap("who").await;
    person.tap(&format!("who-{n}")).await;
    person.gone("who-panel").await;
}

/// The names of the databases of the page.
async fn databases(person: &Person) -> Vec<String> {
    let script = "indexedDB.databases().then((all) => done(all.map((one) => one.name).sort()))";
    serde_json::from_value(person.run_later(script).await).expect("names are texts")
}

#[tokio::test]
async fn another_lifter_begins_with_the_kit_and_the_unit_of_the_one_before() {
    let server = Server::start();
    let browser = Browser::start("one-garage");
    let person = Person::arrive(&browser, &server).await;
    person.tap("go-kit").await;
    person.tap("unit-lb").await;
    person
        .tap_css("button[aria-label=\"remove light band\"]")
        .await;
    person.reads("thing-gone", "light band").await;
    ann_and_bea(&person).await;
    person.tap("go-kit").await;
    person.find("[data-part=unit-lb][aria-pressed=true]").await;
    person.reads("bands", "middle band").await;
    assert!(!person.read("bands").await.contains("light band"));

    // What one types and does not keep is nothing of the other.
    person.tap("go-sheets").await;
    person.tap("write-lines").await;
    paste(&person, "# Bea\\nFront squat: 3 × seven").await;
    person.reads("lines-wrong", "line 2").await;
    person.client.back().await.unwrap();
    person.see("sheets").await;
    change_over(&person, 0).await;
    person.tap("go-sheets").await;
    person.tap("write-lines").await;
    person.see("lines-sum").await;
    change_over(&person, 1).await;
    person.tap("go-sheets").await;
    person.tap("write-lines").await;
    person.reads("lines-wrong", "line 2").await;
    person.close().await;
}

#[tokio::test]
async fn each_lifter_has_an_own_floor_ledger_and_export() {
    let server = Server::start();
    let browser = Browser::start("people");
    let person = Person::arrive(&browser, &server).await;
    assert!(!person.has("who").await, "alone nobody is asked who it is");
    ann_and_bea(&person).await;
    picture(&person, "people-kit").await;
    person.run("location.hash = '/ledger/report'").await;
    person.reads("report-title", "Bea, ").await;
    person.tap("go-floor").await;
    begin(&person, "Lower A").await;
    log(&person).await;
    person.reads("saved", "saved").await;
    picture(&person, "people-floor").await;
    person.tap("who").await;
    person.see("who-panel").await;
    picture(&person, "people-who").await;
    person.tap("who-0").await;
    // Nothing is under way here, and nothing of Bea's is in the ledger.
    person.see("choose").await;
    person.reads("who", "Ann").await;
    begin(&person, "Upper B").await;
    log(&person).await;
    log_more(&person).await;
    end_now(&person).await;
    person.tap("rpe-6").await;
    person.tap("put-away").await;
    person.see("session").await;
    change_over(&person, 1).await;
    person.see("ledger-empty").await;
    person.tap("go-floor").await;
    person.reads("sheet-name", "Lower A").await;
    assert_eq!(person.count(".notch.done").await, 1);
    // A reload brings back who was here last, as it was.
    person.reload().await;
    person.reads("who", "Bea").await;
    person.reads("sheet-name", "Lower A").await;
    person.run("location.hash = '/kit'").await;
    download_into(&person, &browser.downloads()).await;
    person.tap("export").await;
    let (path, file) = downloaded(&browser.downloads()).await;
    let name = path.file_name().unwrap().to_string_lossy().into_owned();
    assert!(name.starts_with("stanchion-bea-"), "{name}");
    assert_eq!(file["sessions"].as_array().map(Vec::len), Some(1));
    let last = file["lifter"]
        .as_array()
        .and_then(|all| all.last())
        .cloned();
    assert_eq!(last.unwrap()["name"], "Bea");
    person.run("location.hash = '/kit/state'").await;
    person.reads("state-lines", "lifter 2 of 2").await;
    let said = person.read("state-lines").await;
    assert!(said.contains("sessions: 1"), "Ann's one: {said}");
    assert!(!said.contains("Bea"), "{said}");
    person.close().await;
}

async fn log_more(person: &Person) {
    super::whole_session::end_rest(person).await;
    log(person).await;
}

#[tokio::test]
async fn a_name_without_a_space_makes_no_page_wider() {
    let server = Server::start();
    let browser = Browser::start("people-long");
    let person = Person::arrive(&browser, &server).await;
    ann_and_bea(&person).await;
    let long = "W".repeat(200);
    person.type_into("lifter-0", &long).await;
    let fits = "const place = document.querySelector('[data-part=\"place\"]');
        return place.scrollWidth <= place.clientWidth && document.documentElement.scrollWidth <= innerWidth";
    person.reads("lifter-0-remove", &long).await;
    person.until(fits, "the page of the lifters fits").await;
    person.tap("go-floor").await;
    person.reads("with-1", &long).await;
    person.until(fits, "the floor fits").await;
    person.close().await;
}

#[tokio::test]
async fn what_waits_to_be_written_goes_to_its_own_lifter() {
    let server = Server::start();
    let browser = Browser::start("people-wait");
    let person = Person::arrive(&browser, &server).await;
    ann_and_bea(&person).await;
    person.tap("go-floor").await;
    begin(&person, "Lower A").await;
    // The log, and the change to Ann in the same turn of the page: the write cannot be done yet.
    person.tap("who").await;
    person.see("who-0").await;
    person
        .run(
            "document.querySelector('[data-part=\"log\"]').click();
             document.querySelector('[data-part=\"who-0\"]').click();",
        )
        .await;
    person.see("choose").await;
    person
        .until(
            "return document.querySelector('.app').dataset.unsaved === undefined",
            "all is written",
        )
        .await;
    leave(&person, &server).await;
    let bea = databases(&person).await;
    let bea = bea
        .iter()
        .find(|name| name.starts_with("stanchion-") && !name.ends_with("snapshot"))
        .expect("Bea has a database");
    let events = rows_of(&person, bea, "events").await;
    assert!(
        events.iter().any(|(_, row)| row.contains("set_done")),
        "{events:?}"
    );
    assert_eq!(rows_of(&person, "stanchion", "events").await, vec![]);
    return_to(&person, &server).await;
    person.reads("who", "Ann").await;
    person.close().await;
}

#[tokio::test]
async fn one_tab_shows_one_lifter_and_another_tab_another() {
    let server = Server::start();
    let browser = Browser::start("people-tabs");
    let person = Person::arrive(&browser, &server).await;
    ann_and_bea(&person).await;
    person.tap("go-floor").await;
    begin(&person, "Lower A").await;
    log(&person).await;
    let bea = person.client.window().await.unwrap();
    let ann = person.client.new_window(true).await.unwrap().handle;
    person.client.switch_to_window(ann.clone()).await.unwrap();
    person.client.goto(&server.url()).await.unwrap();
    // The newest tab shows who was here last, and follows; then the other one, and both write.
    person.reads("follows", "in use in another tab").await;
    change_over(&person, 0).await;
    person.see("choose").await;
    person.gone("follows").await;
    begin(&person, "Upper B").await;
    log(&person).await;
    person.reads("saved", "saved").await;
    person.client.switch_to_window(bea).await.unwrap();
    assert!(!person.has("follows").await);
    person.reload().await;
    person.reads("who", "Bea").await;
    person.reads("sheet-name", "Lower A").await;
    person.client.switch_to_window(ann).await.unwrap();
    person.reload().await;
    person.reads("who", "Ann").await;
    person.reads("sheet-name", "Upper B").await;
    person.close().await;
}

#[tokio::test]
async fn one_who_is_removed_can_come_back_until_the_next_start() {
    let server = Server::start();
    let browser = Browser::start("people-gone");
    let person = Person::arrive(&browser, &server).await;
    ann_and_bea(&person).await;
    person.tap("go-floor").await;
    begin(&person, "Lower A").await;
    log(&person).await;
    person.reads("saved", "saved").await;
    person.run("location.hash = '/kit/lifters'").await;
    person.tap("lifter-1-remove").await;
    person.tap("erase-decline").await;
    person.tap("erase-sure").await;
    person
        .reads("notice", "A session of theirs is under way")
        .await;
    person.tap("notice-close").await;
    person.run("location.hash = '/'").await;
    end_now(&person).await;
    person.tap("rpe-6").await;
    person.tap("put-away").await;
    person.see("session").await;
    person.run("location.hash = '/kit/lifters'").await;
    person.type_into("lifter-name", "ann").await;
    person.tap("lifter-add").await;
    person.reads("lifter-name-wrong", "is here already").await;
    picture(&person, "people-lifters").await;
    person.tap("lifter-1-remove").await;
    person.reads("erase-goes", "all that Bea logged").await;
    assert!(!person.has("erase-sure").await, "first the export");
    picture(&person, "people-remove").await;
    download_into(&person, &browser.downloads()).await;
    person.tap("erase-export").await;
    let (_, file) = downloaded(&browser.downloads()).await;
    assert_eq!(file["sessions"].as_array().map(Vec::len), Some(1));
    person.tap("erase-sure").await;
    // Ann is here now, alone.
    person.gone("who").await;
    person.run("location.hash = '/kit/lifters'").await;
    person.reads("lifter-gone", "Bea is removed").await;
    person.tap("lifter-back").await;
    person.see("who").await;
    change_over(&person, 1).await;
    person.run("location.hash = '/ledger'").await;
    person.reads("session", "Lower A").await;
    person.run("location.hash = '/kit/lifters'").await;
    person.tap("lifter-1-remove").await;
    person.tap("erase-decline").await;
    person.tap("erase-sure").await;
    person.see("lifter-gone").await;
    person.reload().await;
    person.gone("lifter-gone").await;
    person
        .until(
            "return document.querySelector('[data-part=\"lifter-1\"]') === null",
            "Bea is not in the list",
        )
        .await;
    leave(&person, &server).await;
    let left = databases(&person).await;
    assert_eq!(left, ["stanchion"]);
    assert_eq!(rows_of(&person, "stanchion", "people").await.len(), 1);
    assert_eq!(rows_of(&person, "stanchion", "sheets").await.len(), 2);
    person.close().await;
}

#[tokio::test]
async fn erasing_everything_erases_every_lifter() {
    let server = Server::start();
    let browser = Browser::start("people-erase");
    let person = Person::arrive(&browser, &server).await;
    ann_and_bea(&person).await;
    person.run("location.hash = '/kit'").await;
    person.tap("erase").await;
    person.reads("erase-goes", "the other lifter").await;
    person.tap("erase-decline").await;
    person.tap("erase-sure").await;
    person.reads("welcome", "Stanchion").await;
    assert!(!person.has("who").await);
    leave(&person, &server).await;
    let left = databases(&person).await;
    assert_eq!(left, ["stanchion"]);
    assert_eq!(rows_of(&person, "stanchion", "lifters").await, vec![]);
    assert_eq!(rows_of(&person, "stanchion", "people").await, vec![]);
    person.close().await;
}
