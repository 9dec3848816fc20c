//! What a sheet says of its own time and order: cuts that bring it within its budget, a warning that stays settled.

use super::browser::Browser;
use super::looks::picture;
use super::person::Person;
use super::server::Server;
use super::write::paste;

/// Opens the app without the demo and keeps a sheet pasted as text.
async fn keep(person: &Person, text: &str) {
    person.tap("welcome-skip").await;
    person.tap("go-sheets").await;
    person.tap("write-lines").await;
    paste(person, text).await;
    person.see("lines-sum").await;
    person.tap("lines-keep").await;
    person.see("sheet-look").await;
}

#[tokio::test]
async fn a_warning_about_the_order_stays_settled() {
    let server = Server::start();
    let browser = Browser::start("settled-order");
    let person = Person::open(&browser, &server).await;
    let text = "# Boat day\\nPush-up: 2 × 15; pump\\nFront squat: 3 × 5; 60 kg; strength";
    keep(&person, text).await;

    person
        .reads("warning", "Front squat (heavy) comes after Push-up")
        .await;
    person.reads("warning", "From: NSCA guidance").await;
    picture(&person, "sheet-order").await;
    person.tap("leave-so").await;
    person.reads("left-so", "Left so: Front squat").await;
    assert!(!person.has("warning").await);

    person.reload().await;
    person.reads("left-so", "Left so: Front squat").await;
    assert!(!person.has("warning").await);

    // Another version from its lines keeps it settled, as its blocks are still there.
    person.tap("change-sheet").await;
    person.tap("draft-lines").await;
    person.see("lines").await;
    paste(&person, &text.replace("2 × 15", "3 × 15")).await;
    person.tap("lines-keep").await;
    person.reads("sheet-look", "3 × 15").await;
    person.see("left-so").await;
    assert!(!person.has("warning").await);

    person.tap("warn-again").await;
    person.see("warning").await;
    person.gone("left-so").await;
    person.close().await;
}

#[tokio::test]
async fn a_line_has_the_cautions_of_its_exercise() {
    let server = Server::start();
    let browser = Browser::start("line-cautions");
    let person = Person::open(&browser, &server).await;
    keep(&person, "# Boat day\\nBand row: 3 × 15; band light band").await;
    person.reads("sheet-look", "Look the band over").await;
    person.tap("begin").await;
    person.reads("upper", "Look the band over").await;
    person.close().await;
}

#[tokio::test]
async fn beside_the_question_for_a_load_nothing_steps_the_reps() {
    let server = Server::start();
    let browser = Browser::start("asks-load");
    let person = Person::open(&browser, &server).await;
    keep(&person, "# Boat day\\nLeg curl (stack): 3 × 10").await;
    person.tap("begin").await;
    person.reads("log", "Load?").await;
    assert!(!person.has("reps-more").await);
    person.tap("log").await;
    person.type_into("load-typed", "40").await;
    // The kit has no stack: used all the same.
    person.tap("load-use").await;
    person.tap("load-anyway").await;
    person.see("reps-more").await;
    person.close().await;
}

#[tokio::test]
async fn of_several_warnings_the_first_is_open_and_the_others_are_folded() {
    let server = Server::start();
    let browser = Browser::start("folded-order");
    let person = Person::open(&browser, &server).await;
    let text = "# Boat day\\nPush-up: 2 × 15; pump\\nFront squat: 3 × 5; 60 kg; strength\\nKettlebell swing: 3 × 5; 16 kg; power";
    keep(&person, text).await;
    let open = "[data-part=order-check] > [data-part=warning]";
    assert_eq!(person.count(open).await, 1);
    let all = person.count("[data-part=warning]").await;
    assert!(all > 1);
    let words = format!("{} more on the order", all - 1);
    person.reads("order-more", &words).await;

    // Settled, it makes place for the next.
    person
        .tap_css(&format!("{open} [data-part=leave-so]"))
        .await;
    person.see("order-more").await;
    person
        .until(
            "return document.querySelectorAll('[data-part=left-so]').length === 1",
            "one is settled",
        )
        .await;
    assert_eq!(person.count(open).await, 1);
    person.close().await;
}

#[tokio::test]
async fn a_sheet_over_its_budget_is_kept_shortened() {
    let server = Server::start();
    let browser = Browser::start("shortened");
    let person = Person::open(&browser, &server).await;
    let text = "# Boat day\\nbudget 20 min\\nFront squat: 4 × 5; 60 kg; tempo 3/1/1/0; rest 3:00; strength\\nChin-up: 4 × 8; tempo 3/0/1/0; rest 2:00\\nPush-up: 3 × 15; rest 1:00; pump";
    keep(&person, text).await;

    // Hand-worked: 4 × 25 + 3 × 180 = 640; 180 + 60; 4 × 32 + 3 × 120 = 488; 120 + 60; 3 × 45 + 2 × 60 = 255: 1,803 s.
    person
        .reads(
            "predicted",
            "about 31 min, 11 min over the budget of 20 min",
        )
        .await;
    person.reads("sheet-look", "takes 10:40").await;
    // Hand-worked: the push-ups with the rest before them 435 s, two sets of chin-ups with their rests 304 s.
    person
        .reads("cuts", "Push-up: leave it out, saves 7:15")
        .await;
    person
        .reads("cuts", "Chin-up: 2 sets off, saves 5:04")
        .await;
    picture(&person, "sheet-over-budget").await;
    person.tap("cuts-keep").await;
    person.gone("cuts").await;
    person
        .reads("predicted", "about 18 min, within the budget of 20 min")
        .await;

    person.reload().await;
    person
        .reads("predicted", "within the budget of 20 min")
        .await;
    person.tap("go-sheets").await;
    person
        .reads("sheet", "2 blocks, 6 sets, about 18 min")
        .await;
    person.close().await;
}
