//! A sheet goes from one phone to another by link, QR code and file: looked at first, kept only when chosen.

use super::browser::Browser;
use super::export::{download_into, downloaded, give_file};
use super::person::Person;
use super::server::Server;
use super::whole_session::{begin, log};
use serde_json::{Value, json};

/// Six blocks; the length of a link is measured on them too.
const SIX: &str = include_str!("../golden/six_blocks.txt");

/// Opens the app without sheets and writes one from its lines.
pub async fn with_sheet(browser: &Browser, server: &Server, lines: &str) -> Person {
    let person = Person::open(browser, server).await;
    person.tap("welcome-skip").await;
    person.tap("go-sheets").await;
    person.tap("write-lines").await;
    write(&person, lines).await;
    person
}

/// Puts lines into the open field and keeps them.
pub async fn write(person: &Person, lines: &str) {
    person.see("lines").await;
    let script = format!(
        "const field = document.querySelector('[data-part=\"lines\"]');
         field.value = {};
         field.dispatchEvent(new Event('input', {{ bubbles: true }}));",
        json!(lines)
    );
    person.run(&script).await;
    person.see("lines-sum").await;
    person.tap("lines-keep").await;
    person.see("sheet-look").await;
}

/// The link of the sheet that is open, once the panel shows one that is not `before`.
async fn link_but(person: &Person, before: &str) -> String {
    let value = "document.querySelector('[data-part=\"share-link\"]')?.value ?? ''";
    let script = format!(
        "const link = {value}; return link.includes('#/s/') && link !== {}",
        json!(before)
    );
    person.until(&script, "the link is made").await;
    let link = person.run(&format!("return {value}")).await;
    link.as_str().expect("a link is a text").to_owned()
}

async fn link(person: &Person) -> String {
    person.tap("share-sheet").await;
    let link = link_but(person, "").await;
    person.tap("panel-close").await;
    person.gone("share-panel").await;
    link
}

async fn open(person: &Person, link: &str) {
    person.client.goto(link).await.expect("a link is opened");
}

async fn sheets(person: &Person) -> u64 {
    person.tap("go-sheets").await;
    person.see("sheets").await;
    person.count("[data-part=\"sheet\"]").await
}

#[tokio::test]
async fn share_link_is_previewed_kept_and_trained_on_in_a_fresh_profile() {
    let server = Server::start();
    let coach = Browser::start("sharecoach");
    let writer = with_sheet(&coach, &server, SIX).await;
    let first = link(&writer).await;
    let code = first.split_once("#/s/").expect("the mark of a link").1;
    assert!("#/s/".len() + code.len() <= 900, "{first}");

    let phone = Browser::start("sharephone");
    let lifter = Person {
        client: phone.open().await,
    };
    open(&lifter, &first).await;
    // The welcome comes first, and the link is not lost on it.
    lifter.reads("welcome", "shown after this page").await;
    lifter.tap("welcome-skip").await;
    lifter.reads("shared", "Boathouse lower").await;
    lifter.reads("shared", "Romanian deadlift").await;
    // All of it is seen before it is kept, the cues too.
    lifter.reads("shared", "elbows high all the way").await;
    lifter.reads("shared-known", "Nothing is kept yet").await;
    lifter.tap("shared-leave").await;
    assert_eq!(sheets(&lifter).await, 0);

    open(&lifter, &first).await;
    lifter.tap("shared-keep").await;
    lifter.reads("sheet-look", "Split squat").await;
    lifter.reads("sheet-look", "front heel heavy").await;
    open(&lifter, &first).await;
    lifter
        .reads("shared-known", "You have this sheet already")
        .await;
    lifter.tap("shared-look").await;
    lifter.see("sheet-look").await;

    // A later version is known as one, and an earlier one does not come back over it.
    writer.tap("change-sheet").await;
    writer.tap("draft-lines").await;
    write(&writer, &SIX.replace("2 × 40 s", "3 × 0:40")).await;
    let second = link(&writer).await;
    open(&lifter, &second).await;
    lifter.reads("shared-known", "A newer version").await;
    // Whoever changed it here is told what becomes of that, and can look before.
    lifter
        .reads("shared-known", "takes the place of yours")
        .await;
    lifter.tap("shared-look").await;
    lifter.reads("sheet-look", "2 × 0:40").await;
    open(&lifter, &second).await;
    lifter.tap("shared-keep").await;
    lifter.reads("sheet-look", "3 × 0:40").await;
    open(&lifter, &first).await;
    lifter.reads("shared-known", "An older version").await;
    assert!(!lifter.has("shared-keep").await);
    assert_eq!(sheets(&lifter).await, 1);
    lifter.reload().await;
    assert_eq!(sheets(&lifter).await, 1);

    lifter.tap("go-floor").await;
    begin(&lifter, "Boathouse lower").await;
    lifter.reads("exercise", "Kettlebell swing").await;
    // Without a load to start from it begins light; who knows better says so.
    lifter
        .reads("because", "first time: begin light with 4 kg")
        .await;
    lifter.tap("load").await;
    lifter.type_into("load-typed", "15").await;
    lifter.tap("load-use").await;
    lifter.gone("load-panel").await;
    log(&lifter).await;
    lifter.reads("logged", "6 reps at 15 kg").await;
    lifter.reads("saved", "saved").await;
    writer.close().await;
    lifter.close().await;
}

#[tokio::test]
async fn share_what_is_no_sheet_says_so_and_keeps_nothing() {
    let server = Server::start();
    let browser = Browser::start("sharebroken");
    let person = with_sheet(&browser, &server, SIX).await;
    let good = link(&person).await;
    let (before, code) = good.split_once("#/s/").expect("the mark of a link");
    let changed: String = code.chars().rev().collect();
    let middle = code.len() / 2;
    let letter = if code[middle..].starts_with('A') {
        'B'
    } else {
        'A'
    };
    let other = format!("{}{letter}{}", &code[..middle], &code[middle + 1..]);
    for (code, said) in [
        (&code[..code.len() - 9], "This link is broken"),
        (&other, "This link is broken"),
        (&format!("Ag{}", &code[2..]), "made by a newer Stanchion"),
        (&format!("_{changed}"), "no link to a sheet"),
        ("WIFI:T:WPA;S:boathouse;;", "no link to a sheet"),
        (&"A".repeat(20_000), "too large"),
    ] {
        open(&person, &format!("{before}#/s/{code}")).await;
        person.reads("shared-wrong", said).await;
        person.reads("shared", "Nothing was kept").await;
    }
    assert_eq!(sheets(&person).await, 1);
    person.close().await;
}

#[tokio::test]
async fn share_leaves_the_start_loads_behind_unless_chosen() {
    let server = Server::start();
    let browser = Browser::start("shareloads");
    let person = with_sheet(
        &browser,
        &server,
        "# Boat day\nFront squat: 3 × 5; 62.5 kg\nChin-up: 3 × 5; +5 kg",
    )
    .await;
    person.tap("share-sheet").await;
    person
        .reads("share-stays", "Stays here: the loads to start from")
        .await;
    let bare = link_but(&person, "").await;
    person.tap("share-qr").await;
    person.see("qr").await;
    let drawn = "return document.querySelector('[data-part=\"qr\"] path').getAttribute('d')";
    let meant = stanchion::share::qr(&bare)
        .expect("a short link fits")
        .path();
    assert_eq!(person.run(drawn).await, json!(meant));
    person.tap("share-loads").await;
    let whole = link_but(&person, &bare).await;
    person.reads("share-stays", "go along too").await;

    let phone = Browser::start("shareloadsphone");
    let other = Person::open(&phone, &server).await;
    other.tap("welcome-skip").await;
    open(&other, &bare).await;
    other.reads("shared", "Front squat").await;
    let text = other.read("shared").await;
    assert!(!text.contains("62.5") && !text.contains("5 kg"), "{text}");
    other.tap("shared-keep").await;
    other.see("sheet-look").await;
    // What differs in content is another sheet.
    open(&other, &whole).await;
    other
        .reads("shared", "Front squat 62.5 kg, Chin-up 5 kg")
        .await;
    other.reads("shared-known", "sent to you").await;
    other.tap("shared-keep").await;
    other.see("sheet-look").await;
    assert_eq!(sheets(&other).await, 2);
    person.close().await;
    other.close().await;
}

#[tokio::test]
async fn share_shows_names_of_every_kind_as_text() {
    let server = Server::start();
    let browser = Browser::start("sharenames");
    let name = "<b>Rig</b><img src=x onerror=\"window.hit=1\"> 🚣 جلسة";
    let person = with_sheet(
        &browser,
        &server,
        &format!("# {name}\n\"{}\": 3 × 5", name.replace('"', "\\\"")),
    )
    .await;
    let link = link(&person).await;
    let phone = Browser::start("sharenamesphone");
    let other = Person::open(&phone, &server).await;
    other.tap("welcome-skip").await;
    open(&other, &link).await;
    other.reads("shared", name).await;
    let inside = "return document.querySelectorAll('[data-part=\"shared\"] :is(b, img, script)').length + (window.hit ?? 0)";
    assert_eq!(other.run(inside).await, 0);
    person.close().await;
    other.close().await;
}

#[tokio::test]
async fn share_file_of_one_sheet_is_previewed_and_kept() {
    let server = Server::start();
    let browser = Browser::start("sharefile");
    let person = with_sheet(&browser, &server, SIX).await;
    let folder = browser.downloads();
    download_into(&person, &folder).await;
    person.tap("share-sheet").await;
    person.tap("share-file").await;
    // Told in the panel: the page behind it is out of reach.
    person
        .reads("share-told", "stanchion-boathouse-lower.json")
        .await;
    let (file, _) = downloaded(&folder).await;

    let phone = Browser::start("sharefilephone");
    let other = Person::open(&phone, &server).await;
    other.tap("welcome-skip").await;
    other.tap("go-sheets").await;
    give_file(&other, "open-sheet", &file).await;
    other.reads("shared", "Boathouse lower").await;
    other.reads("shared-known", "Nothing is kept yet").await;
    other.tap("shared-keep").await;
    other.reads("sheet-look", "Split squat").await;
    assert_eq!(sheets(&other).await, 1);
    person.close().await;
    other.close().await;
}

#[tokio::test]
async fn share_brings_back_a_sheet_that_was_removed() {
    let server = Server::start();
    let browser = Browser::start("shareremoved");
    let person = Person::open(&browser, &server).await;
    person.tap("welcome-skip").await;
    let link = format!(
        "{}#/s/{}",
        server.url(),
        include_str!("../golden/link_v1.txt")
    );
    open(&person, &link).await;
    person.tap("shared-keep").await;
    person.reads("sheet-look", "Upper B").await;
    let mut file: Value = serde_json::from_str(include_str!("../golden/link_v1.json")).unwrap();
    let removed = json!({
        "id": file["id"].take(), "version": "019b8d2c-0000-7000-8000-000000000001",
        "written": file["written"].take(), "removed": true,
    });
    let file = json!({ "format": "stanchion", "version": 1, "sheets": [removed] });
    let path = browser.folder().join("removed.json");
    std::fs::write(&path, file.to_string()).unwrap();
    person.tap("go-sheets").await;
    give_file(&person, "open-sheet", &path).await;
    person.tap("import-take").await;
    person.reads("notice", "1 sheet removed").await;
    person.tap("notice-close").await;
    assert_eq!(sheets(&person).await, 0);

    open(&person, &link).await;
    person.reads("shared-known", "Nothing is kept yet").await;
    person.tap("shared-keep").await;
    person.reads("sheet-look", "Upper B").await;
    person.reload().await;
    assert_eq!(sheets(&person).await, 1);
    person.close().await;
}
