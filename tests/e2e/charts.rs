//! The pictures of the ledger: an exercise over a year, each place of a picture said, its table, its file.

use super::browser::Browser;
use super::common::built::{block, done, events, key, reps, work};
use super::common::events::event;
use super::common::time;
use super::engine::Engine;
use super::export::{download_into, give_file};
use super::looks::{picture, shots};
use super::person::Person;
use super::server::Server;
use super::whole_session::{begin, end_rest, log as log_set, log_all};
use serde_json::json;
use stanchion::session::{Amount, Event, What};
use stanchion::sheet::{Block, ExerciseId, Line, LoadBasis, SideMode};
use stanchion::store::{Archive, SessionLog, write};
use std::path::{Path, PathBuf};

const DAY: u64 = 86_400_000;

/// A year of two exercises in turn every fourth day: squats by tempo that rise, and chin-ups whose load rises slowly.
fn year() -> Archive {
    let mut squat = block(vec![work(3, 5, 7)], LoadBasis::External, SideMode::Both);
    squat.tempo = Some("3/1/1/0".parse().unwrap());
    let mut chin = block(vec![work(3, 5, 8)], LoadBasis::BodyMassPlus, SideMode::Both);
    chin.exercise.id = ExerciseId::new("chin-up").unwrap();
    chin.exercise.name = Line::new("Chin-up").unwrap();
    let mut archive = Archive::default();
    for n in 1..=80_u64 {
        let day = n * 4;
        let count = 4 + (n * 7 % 4) as i64;
        let log = if n.is_multiple_of(2) {
            let load = format!("{} kg", 80 + n / 4 + (n * 5 % 3));
            session(day, &squat, None, &load, count)
        } else {
            let load = format!("{} kg", (n / 8) * 5 / 2);
            let body = format!("{}.{} kg", 82 - n / 20, n % 10);
            session(day, &chin, Some(&body), &load, count)
        };
        archive.sessions.insert(log.id(), log);
    }
    archive
}

/// A session of three sets; the first is started by ear where there is a tempo, every third one hurried.
fn session(day: u64, block: &Block, body: Option<&str>, load: &str, count: i64) -> SessionLog {
    let sets: Vec<_> = (0..3_u8)
        .map(|n| {
            let amount = Amount::Reps(reps(count - i64::from(n / 2)));
            (key(0, n), done(Some(load), amount))
        })
        .collect();
    let mut all: Vec<Event> = events(day, block, body, &sets);
    if block.tempo.is_some() {
        let took = if day.is_multiple_of(3) {
            10_000
        } else {
            50_000
        };
        let set = key(0, 0);
        let start = What::SetStarted { set };
        all.push(event(day, day * DAY + 60_000 - took, 1, start));
    }
    let What::Began(began) = &all[0].what else {
        panic!("a session begins")
    };
    SessionLog::new(began.session, all.clone()).unwrap()
}

/// Writes that year into a file.
fn file(folder: &Path) -> PathBuf {
    let file = folder.join("year.json");
    std::fs::write(&file, write(&year(), time(0))).unwrap();
    file
}

/// A person whose phone holds that year.
async fn person_of_a_year(browser: &Browser, server: &Server) -> Person {
    let person = Person::arrive(browser, server).await;
    person.tap("go-kit").await;
    give_file(&person, "import", &file(browser.folder())).await;
    person.tap("import-take").await;
    person.reads("notice", "80 sessions new").await;
    person.tap("notice-close").await;
    person
}

async fn go(person: &Person, place: &str) {
    let script = format!("location.hash = '#{place}'");
    person.run(&script).await;
}

/// Scrolls a part to the top of the screen and takes its picture.
async fn picture_of(person: &Person, part: &str, name: &str) {
    let script = format!(
        "const at = document.querySelector('[data-part=\"{part}\"]');
         const see = () => at.scrollIntoView({{ block: 'start', behavior: 'instant' }});
         see(); addEventListener('resize', see)"
    );
    person.run(&script).await;
    picture(person, name).await;
}

#[tokio::test]
async fn an_exercise_is_seen_over_a_year() {
    let server = Server::start();
    let browser = Browser::start("history");
    let person = person_of_a_year(&browser, &server).await;
    person.tap("go-ledger").await;
    person
        .tap_css("[data-part=\"ledger-pictures\"] a[href=\"#/ledger/exercise\"]")
        .await;
    person.see("histories").await;
    picture(&person, "histories").await;
    person
        .tap_css("a[href=\"#/ledger/exercise/front-squat\"]")
        .await;
    person.see("history-estimate").await;
    person.tap("history-period-2").await;
    person.reads("history-estimate-says", "estimate").await;
    picture(&person, "history").await;
    for part in [
        "history-estimate",
        "history-best",
        "history-reps",
        "history-volume",
        "history-tempo",
    ] {
        picture_of(&person, part, part).await;
    }
    go(&person, "/ledger/exercise/chin-up").await;
    person.see("history-moved").await;
    person.tap("history-period-2").await;
    picture_of(&person, "history-moved", "history-moved").await;

    // The newest place is said first; the keys lead to the others, and so does a tap.
    let says = "history-moved-says";
    let newest = person.read(says).await;
    assert!(
        newest.contains("moved in all") && newest.contains("as written"),
        "{newest}"
    );
    person
        .client
        .find(fantoccini::Locator::Css(
            "[data-part=\"history-moved-step\"]",
        ))
        .await
        .unwrap()
        .send_keys("\u{e012}")
        .await
        .unwrap();
    person
        .until(
            &format!(
                "return document.querySelector('[data-part=\"{says}\"]').innerText !== {}",
                json!(newest)
            ),
            "another place is said",
        )
        .await;
    let before = person.read(says).await;
    person
        .tap_css("[data-part=\"history-moved\"] .chart-face")
        .await;
    person
        .until(
            &format!(
                "return document.querySelector('[data-part=\"{says}\"]').innerText !== {}",
                json!(before)
            ),
            "the place of the tap is said",
        )
        .await;

    // The table says the same, the newest first.
    person.tap("history-moved-table").await;
    person.see("history-moved-table").await;
    let first = person
        .find("[data-part=\"history-moved\"] tbody tr")
        .await
        .text()
        .await
        .unwrap();
    let day = newest.split(':').next().unwrap();
    assert!(first.starts_with(day), "{first} is of {day}");
    picture_of(&person, "history-moved-table", "history-table").await;
    if Engine::here() == Engine::Chromium {
        on_paper(&person).await;
    }
}

/// Printed, a picture is dark ink on white, and what is for fingers is gone.
async fn on_paper(person: &Person) {
    let print = json!({ "media": "print" });
    person.devtools("Emulation.setEmulatedMedia", print).await;
    let seen = "const style = (css) => getComputedStyle(document.querySelector(css));
                return style('.chart-slider').display === 'none'
                    && style('.chart-picture text').fill === 'rgb(0, 0, 0)'
                    && style('.chart-table').display !== 'none'";
    person.until(seen, "the picture is printed").await;
    if let Some(shots) = shots() {
        let picture = person.client.screenshot().await.unwrap();
        std::fs::write(shots.join("history-print.png"), picture).unwrap();
    }
    let screen = json!({ "media": "" });
    person.devtools("Emulation.setEmulatedMedia", screen).await;
}

#[tokio::test]
async fn a_picture_is_saved_as_a_file() {
    let server = Server::start();
    let browser = Browser::start("pictures");
    let person = person_of_a_year(&browser, &server).await;
    let folder = match Engine::here() {
        Engine::Chromium => browser.folder().join("saved"),
        _ => browser.downloads(),
    };
    download_into(&person, &folder).await;
    go(&person, "/ledger/exercise/front-squat").await;
    person.see("history-volume").await;
    person.tap("history-period-2").await;
    person.tap("history-volume-save").await;
    for (part, ending, head) in [
        ("history-volume-svg", "svg", &b"<svg"[..]),
        ("history-volume-png", "png", &b"\x89PNG"[..]),
    ] {
        person.tap(part).await;
        person.reads("notice", ending).await;
        person.tap("notice-close").await;
        let since = std::time::Instant::now();
        let bytes = loop {
            let entries = std::fs::read_dir(&folder).unwrap().filter_map(Result::ok);
            let mut paths = entries.map(|entry| entry.path());
            let found = paths.find(|path| path.extension().is_some_and(|end| end == ending));
            if let Some(bytes) = found
                .and_then(|path| std::fs::read(path).ok())
                .filter(|bytes| bytes.len() > 500)
            {
                break bytes;
            }
            assert!(since.elapsed().as_secs() < 20, "no {ending} arrived");
            tokio::task::yield_now().await;
        };
        assert!(bytes.starts_with(head), "a file of the kind {ending}");
        if let Some(shots) = shots() {
            std::fs::create_dir_all(&shots).unwrap();
            std::fs::write(shots.join(format!("saved.{ending}")), &bytes).unwrap();
        }
    }
}

#[tokio::test]
async fn a_year_hangs_on_one_upright() {
    let server = Server::start();
    let browser = Browser::start("year");
    let person = person_of_a_year(&browser, &server).await;
    go(&person, "/ledger/year/2026").await;
    person.reads("year-chart", "80 sessions in").await;
    picture(&person, "year").await;
    picture_of(&person, "year-chart", "year-chart").await;
    let says = "year-chart-says";
    let first = person.read(says).await;
    assert!(first.contains("min") && first.contains("sets"), "{first}");
    person.tap("year-peg-2").await;
    person
        .until(
            "return [...document.querySelectorAll('[data-part=\"year-chart\"] text')].some((at) => at.textContent === 'kg')",
            "the pegs are volume load",
        )
        .await;
    person.tap("year-chart-table").await;
    let rows = "return document.querySelectorAll('[data-part=\"year-chart\"] tbody tr').length";
    assert_eq!(person.run(rows).await.as_i64(), Some(60));
    person.tap("year-chart-rows").await;
    person
        .until(&rows.replace("length", "length === 80"), "all rows")
        .await;
    go(&person, "/ledger/year/2024").await;
    person.reads("year-chart", "No session in 2024").await;
}

#[tokio::test]
async fn the_body_is_weighed_corrected_and_removed_with_a_way_back() {
    let server = Server::start();
    let browser = Browser::start("body");
    let person = Person::arrive(&browser, &server).await;
    person.tap("go-ledger").await;
    person
        .tap_css("[data-part=\"ledger-pictures\"] a[href=\"#/ledger/body\"]")
        .await;
    person
        .reads("body-mass-chart", "No body mass in this period")
        .await;
    person.type_into("body-weigh", "heavy").await;
    person.tap("body-weigh-keep").await;
    person.reads("body-weigh-wrong", "is no plain number").await;
    person.type_into("body-weigh", "28.4").await;
    person.tap("body-weigh-keep").await;
    person.reads("body-mass-chart-says", "28.4 kg").await;
    person.tap("body-entry").await;
    person.see("body-panel").await;
    person.type_into("body-correct", "82.4").await;
    person.tap("body-correct-keep").await;
    person.reads("body-mass-chart-says", "82.4 kg").await;
    person.tap("body-another").await;
    person.type_into("body-name", "waist").await;
    person.type_into("body-value", "84,5").await;
    person.tap("body-keep").await;
    person.reads("body-own-says", "84.5 cm").await;
    picture(&person, "body").await;
    person.tap("body-entry").await;
    person.tap("body-remove").await;
    person.reads("body-gone", "waist 84.5 cm").await;
    assert!(!person.has("body-own").await);
    person.tap("body-back").await;
    person.reads("body-own-says", "84.5 cm").await;
    // All of it is on disk, and the session that follows goes by the corrected mass.
    person.all_is_saved().await;
    person.reload().await;
    person.reads("body-mass-chart-says", "82.4 kg").await;
    person.reads("body-own-says", "84.5 cm").await;
    person.tap("go-kit").await;
    let mass = "return document.querySelector('[data-part=\"body-mass\"]')?.value === '82.4'";
    person.until(mass, "Kit has the corrected mass").await;
}

#[tokio::test]
async fn a_best_is_told_once_in_one_line() {
    let server = Server::start();
    let browser = Browser::start("best");
    let person = Person::arrive(&browser, &server).await;
    // Three reps with 60 kg a while ago: five are a best.
    let squat = block(vec![work(3, 5, 7)], LoadBasis::External, SideMode::Both);
    let log = session(1, &squat, None, "60 kg", 3);
    let mut archive = Archive::default();
    archive.sessions.insert(log.id(), log);
    let file = browser.folder().join("one.json");
    std::fs::write(&file, write(&archive, time(0))).unwrap();
    person.tap("go-kit").await;
    give_file(&person, "import", &file).await;
    person.tap("import-take").await;
    person.reads("notice", "1 session new").await;
    person.tap("notice-close").await;
    person.tap("go-floor").await;
    begin(&person, "Lower A").await;
    let mut told = Vec::new();
    for _ in 0..9 {
        log_set(&person).await;
        person.see("rest").await;
        if person.has("best").await {
            told.push(person.read("best").await);
            if told.len() == 1 {
                picture(&person, "best").await;
            }
        }
        end_rest(&person).await;
    }
    assert!(
        told[0].starts_with("Best: ") && told[0].ends_with(", most reps"),
        "{told:?}"
    );
    assert_eq!(
        told.iter().filter(|best| **best == told[0]).count(),
        1,
        "{told:?}"
    );
    log_all(&person).await;
    person
        .until(
            "document.querySelector('[data-part=\"end\"]')?.click();
             return document.querySelector('[data-part=\"finish\"]') !== null",
            "the summary is there",
        )
        .await;
    person.reads("bests", "Front squat: ").await;
    picture(&person, "bests").await;
    go(&person, "/ledger/exercise/front-squat").await;
    person.reads("exercise-bests", "hardest: ").await;
    go(&person, "/exercises/front-squat").await;
    person
        .reads("exercise-bests", "most volume load in a session")
        .await;
}
