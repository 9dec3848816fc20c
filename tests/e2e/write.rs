//! A sheet written as lines: faults are named as one types, what is kept runs on the floor, a change is a new version.

use super::browser::Browser;
use super::export::{download_into, downloaded};
use super::person::Person;
use super::server::Server;
use super::whole_session::begin;

const SHEET: &str = "# Boat day\\n- 5 min easy rowing\\n\\nFront squat: ramp 2 × 4 at 50 %, 75 %; 2 × 5–7 @ 2; 60 kg\\nB1 Chin-up: 2 × 5; +5 kg; between 30 s\\nB2 Plank: 2 × 20 s; no load";

/// Puts a text into the field, as a paste does.
pub async fn paste(person: &Person, text: &str) {
    person.see("lines").await;
    let script = format!(
        "const field = document.querySelector('[data-part=\"lines\"]');
         field.value = '{text}';
         field.dispatchEvent(new Event('input', {{ bubbles: true }}));"
    );
    person.run(&script).await;
}

#[tokio::test]
async fn a_sheet_is_written_as_lines_trained_on_and_changed() {
    let server = Server::start();
    let browser = Browser::start("write");
    let person = Person::open(&browser, &server).await;
    person.tap("welcome-skip").await;
    person.tap("go-sheets").await;
    person.tap("write-lines").await;

    paste(&person, "# Boat day\\nFront squat: 3 × seven").await;
    person.reads("lines-wrong", "line 2, column 18").await;
    person.tap("lines-keep").await;
    person.reads("notice", "Not kept: 1 line to mend").await;
    // It is said of these lines: once they change it is gone.
    paste(&person, "# Boat day\\nFront squat: 3 × 7").await;
    person.gone("notice").await;

    // An exercise is found by a word and begins a line.
    person
        .see("exercise-find")
        .await
        .send_keys("goblet")
        .await
        .unwrap();
    person.tap("exercise-take").await;
    let begun = "return document.querySelector('[data-part=\"lines\"]').value.endsWith('\\nGoblet squat: ')";
    person.until(begun, "the line is begun").await;

    // What contradicts itself is said, and may be kept all the same.
    let contradicts = "# Boat day\\nFront squat: ramp 1 × 4 at 120 %; 3 × 5 @ 4, 3, 2, 1";
    paste(&person, contradicts).await;
    person
        .reads("lines-doubts", "Front squat: A ramp-up set at 120 %")
        .await;
    person
        .reads("lines-doubts", "Front squat: 4 are listed for 3 sets")
        .await;

    // So is a name that nobody knows yet, with the one that may be meant.
    paste(
        &person,
        "# Boat day\\nFrotn squat: 3 × 5; 60 kg\\nBanana: 3 × 5",
    )
    .await;
    person
        .reads(
            "lines-doubts",
            "“Frotn squat” is new here; is Front squat meant?",
        )
        .await;
    person
        .reads(
            "lines-doubts",
            "“Banana” is new here; no muscles are known of it.",
        )
        .await;

    paste(&person, SHEET).await;
    person
        .reads("lines-sum", "Boat day: 3 blocks, 8 sets")
        .await;
    let none = "return document.querySelector('[data-part=\"lines-doubts\"]').innerText === ''";
    person.until(none, "nothing contradicts itself").await;
    person.tap("lines-keep").await;
    person.see("sheet-look").await;
    person.reads("sheet-look", "Chin-up").await;

    // Another version of the same sheet: its lines are there to be changed.
    person.tap("change-sheet").await;
    person.tap("draft-lines").await;
    person
        .until(
            "return document.querySelector('[data-part=\"lines\"]')?.value.includes('Front squat: ramp 2 × 4') ?? false",
            "the lines of the sheet are there",
        )
        .await;
    paste(&person, &SHEET.replace("2 × 5–7", "3 × 5–7")).await;
    person.reads("lines-sum", "3 blocks, 9 sets").await;
    person.tap("lines-keep").await;
    person.see("sheet-look").await;
    person.tap("go-sheets").await;
    person.reads("sheet", "3 blocks, 9 sets").await;
    assert_eq!(person.count("[data-part=\"sheet\"]").await, 1);

    person.tap("go-floor").await;
    begin(&person, "Boat day").await;
    person.reads("exercise", "Front squat").await;
    person.reads("kind", "ramp-up 1 of 2").await;
    person.reads("main", "30").await;
    person.close().await;
}

#[tokio::test]
async fn a_sheet_that_is_being_written_is_not_in_an_export_which_says_so() {
    let server = Server::start();
    let browser = Browser::start("write-export");
    let person = Person::arrive(&browser, &server).await;
    person.tap("go-kit").await;
    person.see("exported").await;
    assert!(!person.has("export-drafts").await);
    person.tap("go-sheets").await;
    person.tap("sheet").await;
    person.tap("change-sheet").await;
    person.type_into("draft-name", "Lower A, soon").await;
    person.all_is_saved().await;
    person.tap("go-kit").await;
    let said = "1 sheet that is being written is not in the file: keep it";
    person.reads("export-drafts", said).await;
    download_into(&person, &browser.downloads()).await;
    person.tap("export").await;
    person.reads("notice", said).await;
    let (_, file) = downloaded(&browser.downloads()).await;
    assert!(!file.to_string().contains("Lower A, soon"));
    person.tap("notice-close").await;
    // Kept, it is in the next one.
    person.tap("go-sheets").await;
    person.tap("draft-begun").await;
    person.tap("draft-keep").await;
    person.reads("sheet-look", "Lower A, soon").await;
    person.tap("go-kit").await;
    person.gone("export-drafts").await;
    // Changed and undone it is as it was: nobody is told of it, neither here nor after the export.
    person.tap("go-sheets").await;
    person.tap("sheet").await;
    person.tap("change-sheet").await;
    person.type_into("draft-name", "Lower A, sooner").await;
    person.tap("draft-undo").await;
    person.gone("draft-undo").await;
    person.all_is_saved().await;
    person.tap("go-kit").await;
    person.see("exported").await;
    assert!(!person.has("export-drafts").await);
    person.tap("export").await;
    person.reads("notice", "stanchion-").await;
    person.gone_words("notice", "being written").await;
    person.close().await;
}
