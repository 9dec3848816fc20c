//! A sheet built by taps alone, and trained on.

use super::browser::Browser;
use super::person::Person;
use super::server::Server;
use super::whole_session::{begin, end_rest, log};
use serde_json::json;

/// Adds the exercise of that name, found by its pattern; ends in the block.
async fn add(person: &Person, pattern: usize, name: &str) {
    person.tap("draft-add").await;
    person.tap(&format!("pattern-{pattern}")).await;
    tap_named(person, "exercise-take", name).await;
    person.see("draft-one").await;
}

/// Taps the part whose first words are `words`.
async fn tap_named(person: &Person, part: &str, words: &str) {
    let find = format!(
        "return [...document.querySelectorAll('[data-part=\"{part}\"]')]
            .findIndex(one => one.innerText.trim().startsWith({}))",
        json!(words)
    );
    person
        .until(
            &format!("{} >= 0", find.replace("return ", "return (") + ")"),
            &format!("{words} is there"),
        )
        .await;
    let at = person.run(&find).await.as_i64().unwrap();
    let script = format!(
        "[...document.querySelectorAll('[data-part=\"{part}\"]')].forEach((one, n) => n === {at}
            ? one.setAttribute('data-meant', '') : one.removeAttribute('data-meant'))"
    );
    person.run(&script).await;
    person.tap_css("[data-meant]").await;
}

/// Opens the last line of sets.
async fn open_sets(person: &Person) {
    person
        .tap_css("[data-part=\"set-lines\"] > li:last-child button")
        .await;
    person.see("set-panel").await;
}

async fn close_sets(person: &Person) {
    person.tap("line-done").await;
    person.gone("set-panel").await;
}

async fn back(person: &Person) {
    person.tap("draft-back").await;
    person.see("draft-rows").await;
}

/// The names of the blocks in order, with their marks.
async fn rows(person: &Person) -> Vec<String> {
    let rows = person
        .run("return [...document.querySelectorAll('[data-part=\"draft-block\"] strong')].map(one => one.innerText)")
        .await;
    let rows = rows.as_array().unwrap().iter();
    rows.map(|row| row.as_str().unwrap().to_owned()).collect()
}

async fn build(person: &Person) {
    person.tap("go-sheets").await;
    person.tap("write-sheet").await;
    person.type_into("draft-name", "Boat day").await;

    add(person, 7, "Kettlebell swing").await;
    person.type_into("start", "15").await;
    back(person).await;

    add(person, 0, "Front squat").await;
    person.tap("add-ramp").await;
    close_sets(person).await;
    open_sets(person).await;
    person.tap("policy-1").await;
    person.reads("set-panel", "by how much").await;
    person.tap("line-count-more").await;
    person.reads("line-count-figure", "4").await;
    close_sets(person).await;
    person.type_into("start", "60").await;
    person
        .reads(
            "set-lines",
            "4 × 4–6, 2 in reserve, rising by the smallest step",
        )
        .await;
    back(person).await;

    add(person, 5, "Chin-up").await;
    back(person).await;
    add(person, 2, "Push-up").await;
    back(person).await;

    add(person, 9, "Lateral raise").await;
    person.tap("sides-2").await;
    open_sets(person).await;
    person.tap("target-3").await;
    person.see("stage-hold").await;
    person.tap("stage-add").await;
    person
        .tap_css("[aria-label=\"stage 3\"] [data-part=\"stage-2\"]")
        .await;
    close_sets(person).await;
    person
        .reads("set-lines", "hold 10 s → 8–12 at 3/0/1/0 → 8–12 partials")
        .await;
    back(person).await;

    add(person, 9, "Barbell curl").await;
    person.tap("role-3").await;
    person.reads("role-source", "rest at most 30 s").await;
    open_sets(person).await;
    person.tap("kind-3").await;
    person.see("drops").await;
    close_sets(person).await;
    back(person).await;
}

#[tokio::test]
async fn a_sheet_of_six_blocks_is_built_by_taps_and_trained_on() {
    let server = Server::start();
    let browser = Browser::start("draft");
    let person = Person::open(&browser, &server).await;
    person.tap("welcome-skip").await;
    build(&person).await;

    // A pair of the chin-ups and the push-ups; the curls before the raises, and back again by undo.
    person.tap("draft-arrange").await;
    person
        .tap_css("[data-part=\"draft-rows\"] > li:nth-child(3) [data-part=\"draft-join\"]")
        .await;
    person
        .tap_css("[data-part=\"draft-rows\"] > li:nth-child(6) [data-part=\"draft-up\"]")
        .await;
    let names = [
        "Kettlebell swing",
        "Front squat",
        "C1 Chin-up",
        "C2 Push-up",
    ];
    person.reads("draft-undo", "moving Barbell curl").await;
    assert_eq!(
        rows(&person).await,
        [&names[..], &["Barbell curl", "Lateral raise"]].concat()
    );
    person.tap("draft-undo").await;
    person.reads("draft-undo", "doing Chin-up together").await;
    assert_eq!(
        rows(&person).await,
        [&names[..], &["Lateral raise", "Barbell curl"]].concat()
    );

    // One taken off is brought back where it stood; the first has nowhere to go up to.
    let of_row = |row, part| {
        format!("[data-part=\"draft-rows\"] > li:nth-child({row}) [data-part=\"{part}\"]")
    };
    person.find(&(of_row(1, "draft-up") + ":disabled")).await;
    person.tap_css(&of_row(2, "draft-remove")).await;
    let undo = person.find(&of_row(2, "draft-undo")).await;
    assert_eq!(undo.text().await.unwrap(), "Undo removing Front squat");
    assert_eq!(person.count("[data-part=draft-undo]").await, 1);
    person.tap("draft-undo").await;
    person.reads("draft-undo", "doing Chin-up together").await;
    assert_eq!(
        rows(&person).await,
        [&names[..], &["Lateral raise", "Barbell curl"]].concat()
    );

    // What is being written outlives a reload.
    person
        .until(
            "return document.querySelector('.app').dataset.unsaved === undefined",
            "all is on disk",
        )
        .await;
    person.reload().await;
    person.see("draft-rows").await;
    assert_eq!(rows(&person).await.len(), 6);

    // A finger drags the first block to the end and the last one to the front.
    drag(&person, 1, 6).await;
    assert_eq!(
        rows(&person).await.last().map(String::as_str),
        Some("Kettlebell swing")
    );
    drag(&person, 6, 1).await;
    assert_eq!(
        rows(&person).await.first().map(String::as_str),
        Some("Kettlebell swing")
    );

    person.tap("draft-keep").await;
    person.see("sheet-look").await;
    person.reads("sheet-look", "Boat day").await;
    person.tap("go-sheets").await;
    person.reads("sheet", "6 blocks, 25 sets").await;

    person.tap("go-floor").await;
    begin(&person, "Boat day").await;
    person.reads("exercise", "Kettlebell swing").await;
    for _ in 0..3 {
        log(&person).await;
        end_rest(&person).await;
    }
    person.reads("exercise", "Front squat").await;
    person.reads("kind", "ramp-up 1 of 3").await;
    person.close().await;
}

/// Drags the row at `from` onto the row at `onto`, counted from 1.
async fn drag(person: &Person, from: usize, onto: usize) {
    let before = rows(person).await;
    let script = format!(
        "const row = n => document.querySelector('[data-part=\"draft-rows\"] > li:nth-child(' + n + ')');
         const grip = row({from}).querySelector('[data-part=\"draft-grip\"]');
         row({onto}).scrollIntoView({{ block: 'center' }});
         const at = one => {{ const box = one.getBoundingClientRect(); return {{ clientX: box.x + box.width / 2, clientY: box.y + box.height / 2 }}; }};
         const send = (kind, where) => grip.dispatchEvent(new PointerEvent(kind, {{ bubbles: true, cancelable: true, pointerId: 1, ...where }}));
         send('pointerdown', at(grip));
         send('pointermove', at(row({onto})));
         send('pointerup', at(row({onto})));"
    );
    person.run(&script).await;
    let moved = format!(
        "return document.querySelectorAll('[data-part=\"draft-block\"] strong')[{}].innerText === {}",
        onto - 1,
        json!(before[from - 1])
    );
    person.until(&moved, "the row has moved").await;
}

#[tokio::test]
async fn what_contradicts_itself_is_explained_or_refused() {
    let server = Server::start();
    let browser = Browser::start("doubts");
    let person = Person::open(&browser, &server).await;
    person.tap("welcome-skip").await;
    person.tap("go-sheets").await;
    person.tap("write-sheet").await;
    // A sheet without a block is not kept.
    person.tap("draft-keep").await;
    person
        .reads("draft-not-kept", "Not kept: the sheet has 0 blocks")
        .await;
    person.type_into("draft-name", "   ").await;
    person.reads("draft-name-wrong", "give it a name").await;
    person
        .type_into("draft-name", "<b>Ruder & مجداف 🚣</b>")
        .await;

    add(&person, 0, "Front squat").await;
    back(&person).await;
    person.gone_words("draft-not-kept", "Not kept").await;
    person.tap("draft-block").await;
    open_sets(&person).await;
    // A range cannot be turned upside down: the other number makes room.
    for _ in 0..3 {
        person.tap("reps-low-more").await;
    }
    person.reads("reps-low-figure", "7").await;
    person.reads("reps-top-figure", "8").await;
    // A share of a maximum that nobody knows asks for a load.
    person.tap("policy-5").await;
    close_sets(&person).await;
    person
        .reads("draft-doubts", "give a load to start from")
        .await;
    person.type_into("start", "sixty").await;
    person.reads("start-wrong", "sixty").await;
    // The kit has no plates for it.
    person.type_into("start", "61 kg").await;
    person.reads("start-doubt", "can't be loaded").await;
    person.type_into("start", "60").await;
    person.gone_words("start-doubt", "can't be loaded").await;
    person.gone_words("draft-doubts", "give a load").await;
    // The field takes what it shows, with its unit.
    for load in ["145 lb", "65 kg", "60 kg"] {
        person.type_into("start", load).await;
        person.gone_words("start-wrong", "plain number").await;
        back(&person).await;
        person.tap("draft-block").await;
        let shown =
            format!("return document.querySelector('[data-part=\"start\"]')?.value === '{load}'");
        person.until(&shown, &format!("{load} is kept")).await;
    }
    // A ramp-up goes no further than the work sets.
    person.tap("add-ramp").await;
    for _ in 0..5 {
        person.tap("ramp-2-more").await;
    }
    person.reads("ramp-2-figure", "100 %").await;
    person.tap("line-done").await;
    person.gone_words("draft-doubts", "%").await;
    back(&person).await;
    // A pair of one is not offered; a name is text, whatever it holds.
    person.tap("draft-arrange").await;
    person.see("draft-up").await;
    assert!(!person.has("draft-join").await);
    person.tap("draft-keep").await;
    person.reads("sheet-look", "<b>Ruder & مجداف 🚣</b>").await;
    person.close().await;
}

#[tokio::test]
async fn a_sheet_is_copied_removed_and_brought_back() {
    let server = Server::start();
    let browser = Browser::start("copies");
    let person = Person::arrive(&browser, &server).await;
    person.tap("go-sheets").await;
    tap_named(&person, "sheet", "Lower A").await;
    person.tap("copy-sheet").await;
    person.see("draft-rows").await;
    person.tap("draft-keep").await;
    person.reads("sheet-look", "Lower A, copy").await;
    person.tap("remove-sheet").await;
    person.reads("bring-back", "bring Lower A, copy back").await;
    let names = "return [...document.querySelectorAll('[data-part=\"sheet\"] strong')].map(one => one.innerText).join()";
    let listed = |names_wanted: &str| format!("{names} === '{names_wanted}'");
    person
        .until(&listed("Lower A,Upper B"), "the copy is gone")
        .await;
    person.tap("bring-back").await;
    person
        .until(&listed("Lower A,Lower A, copy,Upper B"), "the copy is back")
        .await;
    person.gone("bring-back").await;
    person.close().await;
}

#[tokio::test]
async fn a_search_by_taps_offers_first_what_the_kit_can_do_and_more_at_a_tap() {
    let server = Server::start();
    let browser = Browser::start("search");
    let person = Person::open(&browser, &server).await;
    person.tap("welcome-skip").await;
    person.tap("go-sheets").await;
    person.tap("write-sheet").await;
    person.tap("draft-add").await;
    person.see("pattern-0").await;
    // The starter kit has no stack.
    person.type_into("exercise-find", "lats").await;
    // What is found stands right below the field.
    person.gone("pattern-0").await;
    person
        .until(
            "const rows = [...document.querySelectorAll('[data-part=\"exercise-take\"]')];
             return rows.length === 12 && !rows[0].innerText.includes('not with your kit')",
            "what fits comes first",
        )
        .await;
    person.tap("exercise-more").await;
    person
        .until(
            "return document.querySelectorAll('[data-part=\"exercise-take\"]').length > 12",
            "there are more",
        )
        .await;
    person.type_into("exercise-find", "band-assisted").await;
    tap_named(&person, "exercise-take", "Band-assisted pull-up").await;
    person.see("draft-one").await;
    // The strongest band of the kit is chosen, so there is nothing to doubt.
    let chosen =
        "return document.querySelector('[data-part=\"basis-band\"]')?.value === 'strong band'";
    person.until(chosen, "a band of the kit").await;
    assert!(!person.read("draft-one").await.contains("is not in Kit"));
    // Without a figure of load there is no rule to choose.
    assert!(!person.has("rule-0").await);
    person.tap("basis-0").await;
    person.see("rule-0").await;
    person.close().await;
}
