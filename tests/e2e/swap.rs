//! Another exercise on the floor, taken back and taken again; the sheet stays as it is written.

use super::browser::Browser;
use super::looks::picture;
use super::person::Person;
use super::server::Server;
use super::whole_session::{begin, end, end_now, end_rest, log};
use super::write::paste;

/// Taps the row of that name in the panel.
async fn take(person: &Person, name: &str) {
    person.see("swap-to").await;
    let script = format!(
        "const row = [...document.querySelectorAll('[data-part=\"swap-to\"]')]
            .find(row => row.querySelector('strong').innerText === '{name}');
         row?.click();
         return row !== undefined"
    );
    person.until(&script, &format!("{name} is offered")).await;
    person.gone("swap-panel").await;
}

#[tokio::test]
async fn another_exercise_is_taken_on_the_floor_and_the_sheet_stays_as_it_is() {
    let server = Server::start();
    let browser = Browser::start("swap");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    person.reads("exercise", "Kettlebell swing").await;

    // Before the first set; its load was for the swing, so this one begins light.
    person.tap("more").await;
    person.tap("swap").await;
    person
        .reads("swap-panel", "In place of: Kettlebell swing")
        .await;
    assert!(!person.has("swap-logged").await, "nothing is logged yet");
    picture(&person, "floor-swap").await;
    take(&person, "Dumbbell snatch").await;
    person.reads("exercise", "Dumbbell snatch").await;
    person.reads("kind", "work set 1 of 3").await;
    person.reads("cautions", "Room overhead").await;
    person.tap("load").await;
    person.type_into("load-typed", "10").await;
    person.tap("load-use").await;
    person.gone("load-panel").await;
    log(&person).await;
    person.reads("logged", "logged 6 reps at 10 kg").await;
    end_rest(&person).await;

    // Undone tap by tap: the rest ended and held, the set, its load, and the swap.
    for _ in 0..5 {
        person.tap("more").await;
        person.tap("undo").await;
        person.gone("more-panel").await;
    }
    person.reads("exercise", "Kettlebell swing").await;
    log(&person).await;
    end_rest(&person).await;

    // After a set of the swing, and while another is under way.
    person.tap("cues-begin").await;
    person.see("cues-stop").await;
    person.tap("more").await;
    person.tap("swap").await;
    person.reads("swap-waits", "Stop it first").await;
    person.tap("swap-stop").await;
    person
        .reads("swap-logged", "Sets done stay as they are")
        .await;
    take(&person, "Dumbbell snatch").await;
    person.reads("exercise", "Dumbbell snatch").await;
    person.reads("kind", "work set 2 of 3").await;
    person.tap("load").await;
    person.type_into("load-typed", "10").await;
    person.tap("load-use").await;
    person.gone("load-panel").await;
    log(&person).await;
    person.reload().await;
    person.reads("next-exercise", "Dumbbell snatch").await;
    person.reads("logged", "logged 6 reps at 10 kg").await;
    end_now(&person).await;
    end(&person).await;

    person.tap("session").await;
    for said in [
        "Kettlebell swing as written: 15 kg 6 reps at 15 kg",
        "Dumbbell snatch first time: begin light",
        "6 reps at 10 kg",
    ] {
        person.reads("session-record", said).await;
    }

    person.tap("go-floor").await;
    begin(&person, "Lower A").await;
    person.reads("exercise", "Kettlebell swing").await;
    person.close().await;
}

#[tokio::test]
async fn another_band_is_taken_on_the_floor_for_the_sets_that_are_left() {
    let server = Server::start();
    let browser = Browser::start("band");
    let person = Person::arrive(&browser, &server).await;
    person.tap("go-sheets").await;
    person.tap("write-lines").await;
    paste(&person, "# Bands\\nBand row: 3 × 12; band light").await;
    person.reads("lines-sum", "Bands: 1 block, 3 sets").await;
    person.tap("lines-keep").await;
    person.see("sheet-look").await;
    person.tap("go-floor").await;
    begin(&person, "Bands").await;
    person.reads("target", "band: light").await;
    person.reads("because", "as the sheet says").await;
    log(&person).await;
    end_rest(&person).await;

    // The kit has the light band of the sheet, so there are three.
    person.tap("load").await;
    person.see("band-panel").await;
    assert!(!person.has("band-take-3").await);
    picture(&person, "floor-band").await;
    person.tap("band-take-2").await;
    person.gone("band-panel").await;
    let chosen = "band: strong band chosen (band: light)";
    person.reads("because", chosen).await;
    log(&person).await;
    person.reads("next", "band: strong band").await;
    end_rest(&person).await;
    person.reads("because", chosen).await;

    // A set that is under way goes on with its band, or is stopped first.
    person.tap("cues-begin").await;
    person.see("cues-stop").await;
    person.tap("load").await;
    person.reads("swap-waits", "Stop it first").await;
    person.tap("swap-stop").await;
    person.tap("band-take-0").await;
    person.gone("band-panel").await;
    person.gone_words("because", "chosen").await;
    person.close().await;
}
