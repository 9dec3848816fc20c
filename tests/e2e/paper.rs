//! A sheet on paper: one page on both common sizes, boxes for every set, nothing of the screen.

use super::browser::Browser;
use super::engine::{Engine, only_in};
use super::looks::shots;
use super::person::Person;
use super::server::Server;
use super::share::with_sheet;
use fantoccini::wd::{PrintConfiguration, PrintSize};
use serde_json::json;

/// Pages of the open place when it is printed on that paper.
async fn pages(person: &Person, size: PrintSize) -> usize {
    let how = PrintConfiguration::builder().size(size).build();
    let pdf = person
        .client
        .print(how.expect("a common size"))
        .await
        .expect("the browser prints");
    // Each page is an object of its own; `/Pages` is the list of them.
    let text = String::from_utf8_lossy(&pdf).into_owned();
    let kinds = text.split("/Type /Page").skip(1);
    kinds.filter(|rest| !rest.starts_with('s')).count()
}

pub async fn on_both(person: &Person, what: &str, most: usize) {
    for (paper, size) in [("A4", PrintSize::A4), ("Letter", PrintSize::US_LETTER)] {
        let pages = pages(person, size).await;
        assert!(
            (1..=most).contains(&pages),
            "{what} takes {pages} pages of {paper}"
        );
    }
}

/// How the open place looks on paper, kept for people to look at where `STANCHION_SHOTS` names a folder.
pub async fn picture(person: &Person, name: &str) {
    let Some(folder) = shots() else {
        return;
    };
    let print = json!({ "media": "print" });
    person.devtools("Emulation.setEmulatedMedia", print).await;
    // A4 within its margins, at 96 pixels an inch.
    let metrics = json!({ "width": 711, "height": 1040, "deviceScaleFactor": 1, "mobile": false });
    person
        .devtools("Emulation.setDeviceMetricsOverride", metrics)
        .await;
    let picture = person.client.screenshot().await.expect("a picture");
    std::fs::create_dir_all(&folder).unwrap();
    std::fs::write(folder.join(format!("{name}.png")), picture).unwrap();
    person
        .devtools("Emulation.setEmulatedMedia", json!({ "media": "" }))
        .await;
    person
        .devtools("Emulation.clearDeviceMetricsOverride", json!({}))
        .await;
}

#[tokio::test]
async fn paper_of_both_demo_sheets_is_one_page() {
    if !only_in(
        &[Engine::Chromium],
        "paper is set up by Chromium's devtools",
    ) {
        return;
    }
    let server = Server::start();
    let browser = Browser::start("paper");
    let person = Person::arrive(&browser, &server).await;
    for (row, name, boxes) in [(1, "Lower A", 18), (2, "Upper B", 16)] {
        person.tap("go-sheets").await;
        person
            .tap_css(&format!("li:nth-child({row}) > [data-part=\"sheet\"]"))
            .await;
        person.reads("sheet-look", name).await;
        let drawn = "[data-part=\"paper\"] .paper-box";
        assert_eq!(person.count(drawn).await, boxes, "boxes of {name}");
        let hidden =
            "return document.querySelector('[data-part=\"paper\"]').getClientRects().length";
        assert_eq!(
            person.run(hidden).await,
            0,
            "paper is not seen on the screen"
        );
        picture(&person, &format!("paper-{row}")).await;
        on_both(&person, name, 1).await;
    }
    person.close().await;
}

#[tokio::test]
async fn paper_of_twelve_blocks_is_one_page_and_of_forty_more() {
    if !only_in(
        &[Engine::Chromium],
        "paper is set up by Chromium's devtools",
    ) {
        return;
    }
    let block = "Front squat: ramp 2 × 4 at 50 %, 75 %; 3 × 5–7 @ 2, 2, 1; tempo 3/1/1/0; \"elbows high all the way\"\n";
    let sheet = |blocks| {
        format!(
            "# Long day\n- 5 min easy on the rower\n> Safety bars set.\n{}",
            block.repeat(blocks)
        )
    };
    let server = Server::start();
    let browser = Browser::start("paperlong");
    let person = with_sheet(&browser, &server, &sheet(12)).await;
    picture(&person, "paper-long").await;
    on_both(&person, "a sheet of twelve blocks", 1).await;
    person.tap("change-sheet").await;
    person.tap("draft-lines").await;
    super::share::write(&person, &sheet(40)).await;
    person.reads("sheet-look", "Long day").await;
    assert!(pages(&person, PrintSize::A4).await > 1);
    person.close().await;
}
