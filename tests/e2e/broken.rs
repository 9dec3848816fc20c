//! Rows that are spoiled on the disk: the app starts, reads all others, says so once, and gives the spoiled ones out as
//! they are.

use super::browser::Browser;
use super::disk::{leave, on_disk, return_to, rows};
use super::export::download_into;
use super::person::Person;
use super::server::Server;
use super::whole_session::{begin, end, end_now, end_rest, log};
use std::path::Path;

/// Changes one character of the newest row of a shelf, each time another one; gives the row as it is then.
async fn flip(person: &Person, shelf: &str, chance: u32) -> String {
    let body = format!(
        "const db = await open();
         const [key, row] = (await rows(db, '{shelf}')).at(-1);
         const at = {chance} % row.length;
         const other = String.fromCharCode(row.charCodeAt(at) ^ (1 + {chance} % 15));
         const spoiled = row.slice(0, at) + other + row.slice(at + 1);
         await put(db, '{shelf}', key, spoiled);
         db.close();
         return spoiled;"
    );
    let spoiled = on_disk(person, &body).await;
    spoiled.as_str().expect("rows are texts").to_owned()
}

/// The file with what was set aside.
async fn set_aside(person: &Person, folder: &Path) -> String {
    download_into(person, folder).await;
    person.tap("go-kit").await;
    person.tap("aside").await;
    let file = folder.join("stanchion-aside.txt");
    let since = std::time::Instant::now();
    loop {
        match std::fs::read_to_string(&file) {
            Ok(text) if !text.is_empty() => return text,
            _ => assert!(since.elapsed().as_secs() < 20, "no file arrived"),
        }
        tokio::task::yield_now().await;
    }
}

#[tokio::test]
async fn spoiled_rows_cost_no_other_row_and_come_out_as_a_file() {
    let server = Server::start();
    let browser = Browser::start("broken");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    log(&person).await;
    end_now(&person).await;
    end(&person).await;
    person.tap("go-floor").await;
    begin(&person, "Lower A").await;
    for _ in 0..2 {
        log(&person).await;
        end_rest(&person).await;
    }
    log(&person).await;
    person.reads("saved", "saved").await;

    // Chance, printed so that a failure can be had again.
    let mut chance = std::process::id();
    println!("chance begins at {chance}");
    leave(&person, &server).await;
    let mut spoiled = Vec::new();
    // The newest event is the third log. The newest of each other shelf is the only one, or one of two sheets.
    for shelf in ["lifters", "kits", "sheets", "events"] {
        chance = chance.wrapping_mul(1_664_525).wrapping_add(1_013_904_223) % (1 << 30);
        spoiled.push(flip(&person, shelf, chance).await);
    }
    // These follow from the sessions: they are rebuilt, and nobody needs to know.
    for shelf in ["headings", "summaries"] {
        flip(&person, shelf, chance).await;
    }
    // Something that is no text at all.
    let body =
        "const db = await open(); await put(db, 'body_mass', 'odd', { odd: 7 }); db.close();";
    on_disk(&person, body).await;

    return_to(&person, &server).await;
    person
        .reads("notice", "5 of the stored records could not be read")
        .await;
    person.see("floor").await;
    assert_eq!(person.count(".notch.done").await, 2);
    person.run("location.hash = '#/ledger'").await;
    person.reads("session", "Lower A").await;
    person.reads("session", "RPE 7").await;

    // Once.
    person.reload().await;
    person.reads("session", "Lower A").await;
    assert!(!person.has("notice").await);
    let file = set_aside(&person, &browser.downloads()).await;
    for row in &spoiled {
        assert!(file.contains(row.as_str()), "{row} is not in {file}");
    }
    assert!(file.contains(r#"body_mass odd {"odd":7}"#), "{file}");
    person.close().await;
}

#[tokio::test]
async fn a_session_whose_beginning_is_spoiled_is_set_aside_and_another_can_be_begun() {
    let server = Server::start();
    let browser = Browser::start("headless");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    log(&person).await;
    person.reads("saved", "saved").await;
    leave(&person, &server).await;
    let body = "const db = await open();
         const [key, row] = (await rows(db, 'events'))[0];
         await put(db, 'events', key, row.replace('began', 'begun'));
         db.close();";
    on_disk(&person, body).await;
    let before = rows(&person, "events").await;

    return_to(&person, &server).await;
    person
        .reads("notice", "2 of the stored records could not be read")
        .await;
    begin(&person, "Upper B").await;
    log(&person).await;
    end_now(&person).await;
    end(&person).await;
    person.reads("session", "Upper B").await;
    person.reads("session", "1 set").await;
    // What was set aside is still where it was.
    leave(&person, &server).await;
    assert_eq!(rows(&person, "events").await, before);
    person.close().await;
}

#[tokio::test]
async fn rows_of_a_newer_version_are_left_alone_and_told() {
    let server = Server::start();
    let browser = Browser::start("newer-rows");
    let person = Person::arrive(&browser, &server).await;
    person
        .until(
            "return document.querySelector('[data-unsaved]') === null",
            "all is saved",
        )
        .await;
    leave(&person, &server).await;
    let body = "const db = await open();
         const [key, row] = (await rows(db, 'sheets'))[0];
         await put(db, 'sheets', key, '2' + row.slice(1));
         db.close();";
    on_disk(&person, body).await;
    let before = rows(&person, "sheets").await;
    return_to(&person, &server).await;
    person
        .reads(
            "notice",
            "1 of the stored records were written by a newer version",
        )
        .await;
    person.see("choose").await;
    leave(&person, &server).await;
    assert_eq!(rows(&person, "sheets").await, before);
    person.close().await;
}
