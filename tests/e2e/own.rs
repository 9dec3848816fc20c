//! A programme by taps and the sheet that the floor then offers; an exercise under another name with its history.

use super::browser::Browser;
use super::export::give_file;
use super::person::Person;
use super::server::Server;
use super::whole_session::{begin, end, end_now, end_rest, log, log_all};

/// Taps the first element of that part with those words.
async fn tap_said(person: &Person, part: &str, words: &str) {
    person.see(part).await;
    let script = format!(
        "const all = [...document.querySelectorAll('[data-part=\"{part}\"]')];
         const one = all.find((one) => one.innerText.includes('{words}'));
         one?.click();
         return one !== undefined"
    );
    person
        .until(&script, &format!("{part} with {words} is there"))
        .await;
}

/// Ends the session early, from its panel, and puts it away.
pub async fn end_early(person: &Person) {
    end_now(person).await;
    person.see("finish").await;
    person.reads("finish-saved", "saved in the ledger").await;
    person.tap("put-away").await;
    person.see("ledger").await;
}

#[tokio::test]
async fn a_programme_by_taps_offers_the_sheet_that_comes_next() {
    let server = Server::start();
    let browser = Browser::start("programme");
    let person = Person::arrive(&browser, &server).await;
    assert!(!person.has("offer-because").await);

    person.tap("go-sheets").await;
    person.reads("programme", "None.").await;
    person.tap("programme-open").await;
    person.tap("programme-keep").await;
    person
        .reads("programme-wrong", "1 to 14 sheets, not 0")
        .await;
    tap_said(&person, "programme-add", "Lower A").await;
    tap_said(&person, "programme-add", "Upper B").await;
    person.reads("programme-order", "2. Upper B").await;
    person.gone_words("programme-wrong", "not 0").await;
    person.tap("light-on").await;
    person.tap("light-load-less").await;
    person.reads("light-load-figure", "85 % load").await;
    person.tap("programme-keep").await;
    person
        .reads("programme-plan", "Lower A → Upper B, and again")
        .await;
    person
        .reads("programme", "every 4 weeks one is light")
        .await;

    person.tap("go-floor").await;
    person.reads("offer", "Lower A").await;
    person.reads("offer-because", "first of the rotation").await;
    begin(&person, "Lower A").await;
    log(&person).await;
    end_rest(&person).await;
    end_early(&person).await;
    person.tap("go-floor").await;
    person.reads("offer", "Upper B").await;
    person
        .reads("offer-because", "follows on Lower A, done on")
        .await;

    // Kept over a reload; on days, the first one that has a sheet.
    person.reload().await;
    person.reads("offer", "Upper B").await;
    person.tap("go-sheets").await;
    person.tap("programme-open").await;
    person.tap("plan-days").await;
    for day in 0..7 {
        person.tap(&format!("day-{day}-1")).await;
    }
    person.tap("programme-keep").await;
    person.reads("programme-plan", "Monday Upper B").await;
    person.tap("go-floor").await;
    person.reads("offer-because", ", today").await;

    person.tap("go-sheets").await;
    person.tap("programme-remove").await;
    person.tap("programme-remove-sure").await;
    person.reads("programme", "None.").await;
    person.close().await;
}

/// A file with a programme of Lower A of which every second week is light, this one too.
fn light_now(last_monday: &str) -> String {
    format!(
        r#"{{"format": "stanchion", "version": 1, "programmes": [{{
            "id": "019b8d2b-8c00-7007-80b0-a7b005e10007",
            "version": "019b8d2b-8c14-7008-80b0-a7b005e10008",
            "written": "2026-01-05T09:00:00+01:00",
            "name": "Winter",
            "plan": {{"rotation": ["019b8d2b-8c00-7001-80b0-a7b005e00001"]}},
            "light": {{"every": 2, "from": "{last_monday}", "load": "60 %", "sets": "30 %"}}
        }}]}}"#
    )
}

/// Takes in a programme whose week is light now.
pub async fn give_light_week(person: &Person, browser: &Browser) {
    let monday = "const day = new Date();
        day.setDate(day.getDate() - (day.getDay() + 6) % 7 - 7);
        const two = (n) => String(n).padStart(2, '0');
        return `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`";
    let monday = person.run(monday).await;
    let file = browser.folder().join("light.json");
    std::fs::write(&file, light_now(monday.as_str().unwrap())).unwrap();
    person.tap("go-kit").await;
    give_file(person, "import", &file).await;
    person.tap("import-take").await;
    person.reads("notice", "1 programme new").await;
    person.tap("notice-close").await;
}

#[tokio::test]
async fn a_light_week_is_lighter_and_may_be_done_as_usual_instead() {
    let server = Server::start();
    let browser = Browser::start("light");
    let person = Person::arrive(&browser, &server).await;
    give_light_week(&person, &browser).await;
    person.tap("go-sheets").await;
    person.reads("programme", "this week is light").await;

    person.tap("go-floor").await;
    person.reads("offer-light", "60 % of the load").await;
    begin(&person, "Lower A begin, light").await;
    person.reads("exercise", "Kettlebell swing").await;
    person.reads("kind", "work set 1 of 1").await;
    person.reads("because", "light week: 60 % of 15 kg").await;
    log(&person).await;
    end_rest(&person).await;
    end_early(&person).await;
    person.tap("session").await;
    person.reads("facts", "light week").await;

    // As usual instead: every set, and the load as if nothing had been done.
    person.tap("go-floor").await;
    person.tap("begin-usual").await;
    person.reads("kind", "work set 1 of 3").await;
    person.reads("because", "as written: 15 kg").await;
    person.close().await;
}

#[tokio::test]
async fn an_exercise_under_another_name_keeps_its_history() {
    let server = Server::start();
    let browser = Browser::start("rename");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    assert_eq!(log_all(&person).await, 18);
    end(&person).await;

    person.tap("go-sheets").await;
    tap_said(&person, "sheet", "Lower A").await;
    person.see("sheet-look").await;
    let block = "return [...document.querySelectorAll('[data-part=\"block\"]')].map((block) => block.innerText).find((text) => text.includes('quat'))";
    let before = person.run(block).await;
    let before = before.as_str().unwrap().to_owned();
    assert!(
        before.contains("Front squat") && before.contains("top of"),
        "{before}"
    );

    person.tap("go-sheets").await;
    person.tap("exercises-open").await;
    person.type_into("exercise-sought", "front squat").await;
    tap_said(&person, "exercise-row", "Front squat").await;
    person.reads("exercise-facts", "pattern: squat").await;
    person.reads("exercise-facts", "done last on").await;
    person.type_into("exercise-name", "Back squat").await;
    person.tap("exercise-rename").await;
    person
        .reads("exercise-name-wrong", "another exercise")
        .await;
    person.type_into("exercise-name", "Rack squat").await;
    person.tap("exercise-rename").await;
    person.reads("notice", "It is called Rack squat").await;
    person
        .reads("exercise-facts", "in the list: Front squat")
        .await;

    // The sheet calls it so, and what it proposes is the same.
    person.tap("go-sheets").await;
    tap_said(&person, "sheet", "Lower A").await;
    person.reads("sheet-look", "Rack squat").await;
    let after = person.run(block).await;
    let after = after.as_str().unwrap().to_owned();
    assert_eq!(after, before.replace("Front squat", "Rack squat"));

    // After a reload too, and a line knows it by both names.
    person.reload().await;
    person.reads("sheet-look", "Rack squat").await;
    person.close().await;
}

#[tokio::test]
async fn an_exercise_of_ones_own_is_written_by_taps() {
    let server = Server::start();
    let browser = Browser::start("own");
    let person = Person::arrive(&browser, &server).await;
    person.tap("go-sheets").await;
    person.tap("exercises-open").await;
    person.tap("exercise-begin").await;
    person.tap("exercise-keep").await;
    person.reads("exercise-wrong", "give it a name").await;
    person.type_into("exercise-own-name", "Boat pull").await;
    person.tap("exercise-pattern-4").await;
    person.tap("exercise-equipment-3").await;
    person.tap("exercise-main-lats").await;
    person.tap("exercise-also-biceps").await;
    person.tap("exercise-sides-1").await;
    person
        .type_into("exercise-cautions", "Look the rope over first.")
        .await;
    person.tap("exercise-keep").await;
    person.see("exercise-look").await;
    person.reads("exercise-facts", "main muscles: lats").await;
    person
        .reads("exercise-look", "Look the rope over first.")
        .await;

    person.tap("go-sheets").await;
    person.tap("write-lines").await;
    person
        .see("exercise-find")
        .await
        .send_keys("boat")
        .await
        .unwrap();
    tap_said(&person, "exercise-take", "Boat pull").await;

    person.tap("go-sheets").await;
    person.tap("exercises-open").await;
    tap_said(&person, "exercise-row", "Boat pull").await;
    person.tap("exercise-remove").await;
    person.tap("exercise-remove-sure").await;
    person.see("exercises").await;
    person.reload().await;
    person.type_into("exercise-sought", "boat pull").await;
    person.reads("exercises", "Nothing of that name").await;
    person.close().await;
}
