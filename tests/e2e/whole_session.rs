//! The main job: train through a sheet, end, and find the next loads with their reasons.

use super::browser::Browser;
use super::person::Person;
use super::server::Server;
use fantoccini::Locator;

/// Logs the set on the board with one tap and waits until the rail shows it. A tap right after another is taken for
/// a slip and does nothing, so it is given again, as a person would.
pub async fn log(person: &Person) {
    let before = person.count(".notch.done").await;
    person.see("log").await;
    let script = format!(
        "document.querySelector('[data-part=\"log\"]')?.click();
         return document.querySelectorAll('.notch.done').length > {before}"
    );
    person.until(&script, "the rail has a notch more").await;
}

/// Logs every set that is left, each with one tap, and gives how many there were.
pub async fn log_all(person: &Person) -> usize {
    let mut logged = 0;
    loop {
        person
            .until(
                "return !!document.querySelector('[data-part=\"log\"], [data-part=\"begin-set\"], [data-part=\"end\"]')",
                "a pad is there",
            )
            .await;
        if person.has("end").await {
            return logged;
        }
        if person.has("begin-set").await {
            end_rest(person).await;
            continue;
        }
        log(person).await;
        logged += 1;
        assert!(logged < 100, "the session never ends");
    }
}

/// Cuts the rest under way.
pub async fn end_rest(person: &Person) {
    person.tap("rest-hold").await;
    person.tap("rest-end").await;
    person.see("log").await;
}

/// Ends the session, rates it, and puts it away.
pub async fn end(person: &Person) {
    // A tap right after the last one is taken for a slip; it is given again.
    let tap = "document.querySelector('[data-part=\"end\"]')?.click();
               return document.querySelector('[data-part=\"finish\"]') !== null";
    person.until(tap, "the summary is there").await;
    person.reads("finish-saved", "saved in the ledger").await;
    person.tap("rpe-7").await;
    person
        .until(
            "return document.querySelector('[data-part=\"rpe-7\"]').ariaPressed === 'true'",
            "7 is chosen",
        )
        .await;
    person.reads("finish-saved", "saved in the ledger").await;
    person.tap("put-away").await;
    person.see("ledger").await;
}

/// Does the group of that place in the order of the sheet, from 1, next.
pub async fn do_first(person: &Person, place: usize) {
    person.tap("more").await;
    person.tap("order").await;
    person
        .tap_css(&format!(
            "[data-part=\"order-panel\"] li:nth-child({place}) button"
        ))
        .await;
}

/// Ends the session before all of it is done.
pub async fn end_now(person: &Person) {
    person.tap("more").await;
    person.tap("end-ask").await;
    person.tap("end-now").await;
}

/// Begins the sheet of that name from the floor.
pub async fn begin(person: &Person, sheet: &str) {
    person
        .tap_css(&format!(
            "button[data-part=\"begin\"][aria-label*=\"{sheet}\"]"
        ))
        .await;
    person.see("floor").await;
}

#[tokio::test]
async fn a_whole_session_by_taps_and_the_next_one_with_its_reasons() {
    let server = Server::start();
    let browser = Browser::start("whole");
    let person = Person::arrive(&browser, &server).await;

    begin(&person, "Lower A").await;
    person.reads("exercise", "Kettlebell swing").await;
    person.reads("kind", "work set 1 of 3").await;
    assert_eq!(person.count(".notch").await, 18);

    // One tap logs the set as prescribed, starts its rest, and says when it is on disk.
    person.tap("log").await;
    person.see("rest").await;
    person.reads("logged", "logged 6 reps at 15 kg").await;
    person.reads("saved", "saved").await;
    end_rest(&person).await;

    assert_eq!(log_all(&person).await, 17);
    end(&person).await;
    person.reads("session", "Lower A").await;
    person.reads("session", "18 sets").await;
    person.reads("session", "RPE 7").await;

    // What the estimate says of the next time, with its doubt.
    person.tap("go-sheets").await;
    person.tap("sheet").await;
    person.reads("sheet-look", "Estimated maximum").await;
    person.reads("sheet-look", "in 8 of 10 cases").await;

    // The same sheet again: the swing's every rep was done, the squat reached the top of its range.
    person.tap("go-floor").await;
    begin(&person, "Lower A").await;
    for _ in 0..3 {
        log(&person).await;
        end_rest(&person).await;
    }
    for _ in 0..3 {
        person.reads("exercise", "Front squat").await;
        person.reads("kind", "ramp-up").await;
        log(&person).await;
        end_rest(&person).await;
    }
    person.reads("kind", "work set 1 of 3").await;
    person.reads("main", "62.5").await;
    person.reads("because", "top of 5–7").await;
    person.reads("because", "likely").await;
    person.close().await;
}

#[tokio::test]
async fn sets_that_were_left_out_earn_no_heavier_load() {
    let server = Server::start();
    let browser = Browser::start("cut-short");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    do_first(&person, 2).await;
    person.reads("exercise", "Front squat").await;
    // Three sets to ramp up, and the first of the work sets, at the top of its range.
    for _ in 0..3 {
        log(&person).await;
        end_rest(&person).await;
    }
    log(&person).await;
    end_now(&person).await;
    person.tap("put-away").await;
    person.see("ledger").await;
    person.tap("go-sheets").await;
    person.tap("sheet").await;
    person
        .reads(
            "sheet-look",
            "1 of 3 work sets done at 60 kg: same load again",
        )
        .await;
    person.close().await;
}

#[tokio::test]
async fn a_set_in_the_ledger_is_corrected_and_what_was_logged_first_stays_to_be_seen() {
    let server = Server::start();
    let browser = Browser::start("correct");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    person.tap("log").await;
    person.see("rest").await;
    end_now(&person).await;
    person.see("finish").await;
    person.reads("sum-predicted", "predicted ").await;
    person.tap("put-away").await;
    person.tap("session").await;
    person.see("session-record").await;
    person.reads("sum-predicted", "min, took ").await;

    person.tap("set").await;
    person.see("correct-panel").await;
    person.type_into("correct-load", "2500").await;
    person.tap("correct-keep").await;
    person
        .reads("correct-wrong", "a load is 0 to 2000 kg (4409 lb)")
        .await;
    person.type_into("correct-load", "20").await;
    person.tap("correct-reps-less").await;
    // So much more than was done may be a slip: it is asked about once.
    person.tap("correct-keep").await;
    person.reads("correct-wrong", "20 kg is more than 10").await;
    person.tap("correct-keep").await;
    person.gone("correct-panel").await;
    person.reads("set", "5 reps at 20 kg").await;
    person.reads("set", "first logged as 6 reps at 15 kg").await;

    let written = "return document.querySelector('[data-unsaved]') === null";
    person.until(written, "everything is on disk").await;
    person.reload().await;
    person.reads("set", "5 reps at 20 kg").await;
    let sets = person
        .client
        .find_all(Locator::Css("[data-part=\"set\"]"))
        .await
        .unwrap();
    assert_eq!(sets.len(), 1);
    person.close().await;
}

#[tokio::test]
async fn a_session_on_the_floor_and_in_the_ledger_at_once_is_one_session() {
    let server = Server::start();
    let browser = Browser::start("twice");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    log(&person).await;
    end_now(&person).await;
    person.see("finish").await;

    // Not put away: it lies on the floor while it is corrected in the ledger. The ways are hidden there; the back
    // gesture or a bookmark leads to the ledger all the same.
    person.run("location.hash = '#/ledger'").await;
    person.tap("session").await;
    person.tap("set").await;
    person.see("correct-panel").await;
    person.type_into("correct-load", "16").await;
    person.tap("correct-keep").await;
    person.reads("set", "6 reps at 16 kg").await;

    // Rated on the floor, which writes the session whole: the correction must be in it.
    person.tap("go-floor").await;
    person.see("finish").await;
    person.tap("rpe-8").await;
    person.reads("finish-saved", "saved in the ledger").await;

    // Corrected again in the ledger, which writes it whole from there: the rating must be in it.
    person.run("location.hash = '#/ledger'").await;
    person.reads("session", "RPE 8").await;
    person.tap("session").await;
    person.tap("set").await;
    person.tap("correct-reps-less").await;
    person.tap("correct-keep").await;
    person.reads("set", "5 reps at 16 kg").await;
    let written = "return document.querySelector('[data-unsaved]') === null";
    person.until(written, "everything is on disk").await;

    person.reload().await;
    person.reads("set", "5 reps at 16 kg").await;
    person.reads("set", "first logged as 6 reps at 15 kg").await;
    let chosen = "return document.querySelector('[data-part=\"rpe-8\"]')?.ariaPressed === 'true'";
    person.until(chosen, "RPE 8 is chosen").await;
    person.close().await;
}
