//! Weeks and the report of a period: figures, pictures, formulas, and one page of paper.

use super::browser::Browser;
use super::engine::{Engine, only_in};
use super::ledger::{type_day, with_past};
use super::looks::picture;
use super::paper::{on_both, picture as on_paper};
use super::server::Server;
use serde_json::json;

#[tokio::test]
async fn a_week_stands_beside_those_before_it_with_its_formulas() {
    let server = Server::start();
    let browser = Browser::start("weeks");
    let (person, _) = with_past(&browser, &server, 20).await;
    person.tap("ledger-weeks").await;
    person.reads("week-name", "This week").await;
    person.reads("week-sums", "0 of them hard").await;
    person
        .reads("week-left", "of this week still to come")
        .await;
    person.reads("week-spread", "when the week is over").await;
    // The last week was the 20th: three sessions, rated.
    person.tap("week-before").await;
    person.reads("week-name", "Week from").await;
    person.reads("week-sums", "12 weeks before").await;
    assert!(!person.has("week-alone").await);
    person.reads("week-sums", "in 3 sessions").await;
    person.reads("week-spread", "Monotony").await;
    person.reads("week-spread", "strain").await;
    person.reads("week-days", "Tue 0").await;
    person.reads("week-balance", "hinge").await;
    person.reads("week-bands", "10 and more sets: ").await;
    person.reads("week-budget", "sessions with a budget").await;
    picture(&person, "weeks").await;
    for part in ["weeks-sets", "weeks-muscles", "weeks-load", "weeks-volume"] {
        person
            .run(&format!(
                "document.querySelector('[data-part=\"{part}\"]').scrollIntoView()"
            ))
            .await;
        picture(&person, part).await;
    }
    // The table behind a picture says what the figures say.
    let sets = person.read("week-sums").await;
    let sets = sets
        .split_once("sets ")
        .unwrap()
        .1
        .split(' ')
        .next()
        .unwrap()
        .to_owned();
    person.tap("weeks-sets-table").await;
    let newest = "return document.querySelector('[data-part=\"weeks-sets\"] tbody td').innerText";
    assert_eq!(person.run(newest).await.as_str(), Some(sets.as_str()));
    person
        .tap_css("[data-part=\"how-counted\"] > summary")
        .await;
    person.reads("how-counted", "n − 1").await;
    person.reads("how-counted", "Foster").await;
    picture(&person, "weeks-counted").await;
    // The 19th had no ratings: said, and no monotony.
    let last = person.read("week-name").await;
    person.tap("week-before").await;
    person.gone_words("week-name", &last).await;
    person.reads("week-load", "have no rating").await;
    person
        .reads("week-spread", "No monotony and no strain")
        .await;
    person.tap("week-now").await;
    person.reads("week-name", "This week").await;
    person.close().await;
}

#[tokio::test]
async fn only_weeks_since_the_first_session_are_counted_with() {
    let server = Server::start();
    let browser = Browser::start("weeks-few");
    let (person, _) = with_past(&browser, &server, 3).await;
    person.tap("ledger-weeks").await;
    person.tap("week-before").await;
    person.reads("week-sums", "2 weeks before").await;
    person.tap("week-before").await;
    person.reads("week-sums", "the week before: ").await;
    person.tap("week-before").await;
    person.reads("week-alone", "nothing to compare with").await;
    person.close().await;
}

#[tokio::test]
async fn a_report_is_one_page_of_paper() {
    if !only_in(
        &[Engine::Chromium],
        "paper is set up by Chromium's devtools",
    ) {
        return;
    }
    let server = Server::start();
    let browser = Browser::start("report");
    let (person, _) = with_past(&browser, &server, 30).await;
    person.tap("ledger-report").await;
    person.reads("report-title", "Runa Boatwright").await;
    person.reads("report-facts", "Volume load").await;
    person.reads("report-facts", "Body mass").await;
    person.reads("report-exercises", "Front squat").await;
    person.reads("report-exercises", "noise").await;
    person.reads("report-muscles", "a week").await;
    person.reads("report-notes", "Cold boathouse").await;
    picture(&person, "report").await;
    let whole = "return document.documentElement.scrollHeight <= innerHeight";
    person
        .until(whole, "the window itself does not scroll")
        .await;
    on_paper(&person, "report-paper").await;
    on_both(&person, "a report of eight weeks", 1).await;
    // With somebody else on the phone it says whose it is, and nothing to tap is on the paper.
    person.run("location.hash = '/kit/lifters'").await;
    person.type_into("lifter-name", "Bea").await;
    person.tap("lifter-add").await;
    person.see("who").await;
    person.run("location.hash = '/ledger/report'").await;
    person.reads("report-title", "Runa Boatwright").await;
    person.reads("report-exercises", "Front squat").await;
    let print = json!({ "media": "print" });
    person.devtools("Emulation.setEmulatedMedia", print).await;
    let hidden = "return document.querySelector('[data-part=\"who\"]').getClientRects().length";
    assert_eq!(person.run(hidden).await, 0);
    let screen = json!({ "media": "" });
    person.devtools("Emulation.setEmulatedMedia", screen).await;
    person.tap("report-of-3").await;
    let title = person.read("report-title").await;
    person.gone_words("report-title", &title).await;
    on_paper(&person, "report-paper-long").await;
    on_both(&person, "a report of half a year", 1).await;
    type_day(&person, "report-first", "2020-01-01").await;
    type_day(&person, "report-last", "2020-02-01").await;
    person
        .reads("report-page", "Nothing was done in this period")
        .await;
    type_day(&person, "report-last", "2019-02-01").await;
    person
        .reads("report-wrong", "The last day lies before the first")
        .await;
    person.close().await;
}
