//! The quick line: everything survives it, nothing breaks it, and its page is true.

use crate::common;

use common::sheets::sheet;
use common::{id, time};
use proptest::prelude::*;
use proptest::test_runner::TestRunner;
use stanchion::quick::{
    Known, Unread, parse_block, parse_sheet, print_block, print_sheet, revise_sheet,
};
use stanchion::sheet::{
    Equipment, Exercise, ExerciseId, Group, Line, LoadBasis, Named, Pattern, Role, Sheet,
};
use uuid::Uuid;

/// One exercise that the tests know.
fn front_squat(name: &str) -> Option<Named> {
    let exercise = || Exercise {
        id: ExerciseId::new("front-squat").unwrap(),
        name: Line::new("Front squat").unwrap(),
        pattern: Pattern::Squat,
        equipment: Equipment::Barbell,
    };
    (name.to_lowercase() == "front squat").then(|| Named {
        exercise: exercise(),
        basis: LoadBasis::External,
    })
}

const KNOWN: Known = &front_squat;

fn ids() -> impl FnMut() -> Uuid {
    let mut n = 0;
    move || {
        n += 1;
        id(n, n)
    }
}

fn read(text: &str) -> Result<Sheet, Vec<Unread>> {
    parse_sheet(text, KNOWN, &mut ids(), time(0))
}

/// What a line is printed as.
fn again(line: &str) -> String {
    let written = parse_block(line, KNOWN).unwrap_or_else(|unread| panic!("{line}\n{unread}"));
    print_block(written.look(), KNOWN)
}

fn said(line: &str) -> String {
    parse_block(line, KNOWN).unwrap_err().to_string()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]

    #[test]
    fn every_block_survives_its_line(sheet in sheet()) {
        for block in sheet.blocks() {
            let line = print_block(block, KNOWN);
            let read = parse_block(&line, KNOWN).map_err(|unread| TestCaseError::fail(format!("{line}\n{unread}")))?;
            prop_assert_eq!(&read.clone().into_block(block.id), block, "{}", line);
            prop_assert_eq!(print_block(read.look(), KNOWN), line);
        }
    }

    #[test]
    fn every_sheet_survives_its_text(sheet in sheet()) {
        let text = print_sheet(&sheet, KNOWN);
        let read = revise_sheet(&text, &sheet, KNOWN, &mut || sheet.version.0, sheet.written);
        let read = read.map_err(|unread| TestCaseError::fail(format!("{text}\n{unread:?}")))?;
        prop_assert_eq!(print_sheet(&read, KNOWN), text);
        prop_assert_eq!(&read, &sheet);
    }

    #[test]
    fn no_text_breaks_it(text in any_text()) {
        unbroken(&text);
    }
}

/// Whatever the text: an answer, its places inside the text, and what is read is printed so that it is read again.
fn unbroken(text: &str) {
    match read(text) {
        Ok(sheet) => {
            sheet.check().unwrap();
            let printed = print_sheet(&sheet, KNOWN);
            assert_eq!(read(&printed).as_ref(), Ok(&sheet), "{printed}");
        }
        Err(faults) => {
            let lines: Vec<&str> = text.split('\n').collect();
            assert!(!faults.is_empty());
            for fault in faults {
                let line = lines[fault.line - 1];
                assert!(fault.column <= line.chars().count() + 1, "{fault}\n{text}");
            }
        }
    }
    if let Ok(written) = parse_block(text, KNOWN) {
        let line = print_block(written.look(), KNOWN);
        let second = parse_block(&line, KNOWN).unwrap();
        assert_eq!(second.look(), written.look(), "{line}");
    }
}

/// A line with most of the grammar in it, to be spoiled.
const RICH: &str = "# Lower A\nA1 Front squat (barbell, id a-b): ramp 3 × 4 at 40 %, 60 %; drop 1 × 8+ drops 2 to 80 %; \
    2 x [hold 10 s -> 6 at 4/0/X/0 → 8 partials] @ 2, 1 rising by 2,5 kg; −20 kg assistance; rest 2:30 then 90; \
    by reserve 2 step 5 lb; \"brace \\\" it\"; ! knees out; between 30\nA2 Row: cluster 2 × 3 in 4 pause 15";

/// Random texts, texts of the grammar's own pieces, and a valid text that was spoiled.
fn any_text() -> BoxedStrategy<String> {
    let pieces: Vec<&'static str> = RICH.split_inclusive(' ').collect();
    let edit = (
        0..RICH.chars().count(),
        0..6_usize,
        proptest::string::string_regex("[ -~×–→“”;:0-9]{0,3}").unwrap(),
    );
    prop_oneof![
        any::<String>(),
        proptest::collection::vec(proptest::sample::select(pieces), 0..30)
            .prop_map(|all| all.concat()),
        proptest::collection::vec(edit, 0..4).prop_map(|edits| {
            let mut chars: Vec<char> = RICH.chars().collect();
            for (at, cut, put) in edits {
                let at = at.min(chars.len());
                let end = (at + cut).min(chars.len());
                chars.splice(at..end, put.chars());
            }
            chars.into_iter().collect()
        }),
    ]
    .boxed()
}

#[test]
#[ignore = "a million cases: cargo test --release --test core quick:: -- --ignored"]
fn quick_a_million_texts_break_nothing() {
    let mut runner = TestRunner::new(ProptestConfig {
        failure_persistence: None,
        ..ProptestConfig::with_cases(1_000_000)
    });
    let done = runner.run(&any_text(), |text| {
        unbroken(&text);
        Ok(())
    });
    done.unwrap();
}

#[test]
fn a_line_is_printed_back_as_it_was_written() {
    for line in [
        "Front squat: ramp 3 × 4 at 40 %, 60 %, 80 % rest 1:00; 3 × 5–7 @ 2, 2, 1 rising; 60 kg; tempo 3/1/1/0; rest 2:30 then 2:00; power",
        "Dip (body, push upward): 3 × 8+; +5 kg",
    ] {
        assert_eq!(again(line), line);
    }
}

#[test]
fn other_spellings_mean_the_same() {
    let plain = "Front squat: 3 × 5–7 @ 2; 62.5 kg; tempo 3/1/X/0; rest 1:00";
    let other = " FRONT SQUAT:3x5-7 RIR 2 ;62,5kg; tempo 3/1/x/0 ; rest 60;";
    assert_eq!(again(other), plain);
}

#[test]
fn a_silent_line_gets_its_role_and_rest_from_its_reps() {
    let look = |line: &str| {
        let block = parse_block(line, KNOWN).unwrap().look().clone();
        (block.role, block.rest.get(), block.rest_after.get())
    };
    // NSCA: strength and power 2–5 min, muscle-building 30–90 s, endurance at most 30 s.
    assert_eq!(look("Front squat: 3 × 4–6"), (Role::Strength, 150, 150));
    assert_eq!(look("Front squat: 3 × 8"), (Role::Hypertrophy, 90, 90));
    assert_eq!(look("Front squat: 3 × 8; power"), (Role::Power, 120, 120));
    assert_eq!(look("Front squat: 3 × 20; endurance"), (Role::Pump, 30, 30));
}

#[test]
fn an_exercise_that_nobody_knows_is_taken() {
    let exercise = |line: &str| parse_block(line, KNOWN).unwrap().look().exercise.clone();
    let row = exercise("Row on rings (body, pull across): 3 × 8");
    assert_eq!(row.id.as_str(), "row-on-rings");
    assert_eq!(
        (row.pattern, row.equipment),
        (Pattern::PullAcross, Equipment::Body)
    );
    // Names in other scripts stay apart.
    assert_ne!(exercise("قرفصاء: 3 × 8").id, exercise("موازنة: 3 × 8").id);
    // A quoted name stays as written, with the lasting id of the known exercise.
    let squat = exercise("\"front squat\": 3 × 8");
    assert_eq!(
        (squat.id.as_str(), squat.name.as_str()),
        ("front-squat", "front squat")
    );
}

#[test]
fn a_fault_says_where_and_what_was_expected() {
    let start = "line 1, column 18: expected a number of reps like 5, 5–7 or 8+";
    let seven = said("Front squat: 3 × seven");
    assert!(
        seven.starts_with(start) && seven.ends_with("found “seven”"),
        "{seven}"
    );
    for (line, place, part) in [
        (
            "Front squat",
            12,
            "expected : after the exercise, found the end",
        ),
        ("", 1, "the name of an exercise"),
        ("Front squat: 3 × 7–5", 18, "rises like 5–7, found “7–5”"),
        ("Front squat: 30 × 5", 14, "a number of sets from 1 to 20"),
        ("Front squat: 3 × 5; 2500 kg", 21, "a load up to 2000 kg"),
        ("Front squat: 3 × 5; 60", 23, "kg or lb after the number"),
        ("Front squat: 3 × 5; rest 60; rest 90", 30, "only once"),
        (
            "Front squat: 3 × 5; tempo 3/1/1",
            32,
            "four parts like 3/1/X/0",
        ),
        ("Front squat: 60 kg", 19, "sets like 3 × 5–7"),
        (
            "Front squat: ramp 3 × 5; 60 kg",
            24,
            "at 40 %, 60 %, 80 %, found “;”",
        ),
        (
            "Front squat: drop 1 × 30 s drops 2 to 80 %",
            23,
            "is counted",
        ),
        (
            "Front squat: 3 × 5; \"brace",
            27,
            "a closing quotation mark",
        ),
        ("Front squat: 3 × 5; sideways", 21, "each side"),
    ] {
        let unread = said(line);
        assert!(
            unread.starts_with(&format!("line 1, column {place}:")),
            "{line}\n{unread}"
        );
        assert!(unread.contains(part), "{line}\n{unread}");
    }
}

#[test]
fn all_faulty_lines_are_named_at_once() {
    let faults = read("Front squat: 3 × x\n\nRow: 3 by 5\nDip: 3 × 5").unwrap_err();
    let lines: Vec<usize> = faults.iter().map(|fault| fault.line).collect();
    assert_eq!(lines, [1, 1, 3]);
    assert!(faults[0].to_string().contains("the name of the sheet"));
    for (text, line, part) in [
        ("", 1, "the name of the sheet"),
        ("# Lower A", 1, "a line like Front squat"),
        (
            "# Lower A\nA1 Row: 3 × 5\nDip: 3 × 5",
            2,
            "a second line with its letter",
        ),
        ("# Lower A\nRow: 3 × 5; between 30", 2, "A1 and A2"),
        ("# Lower A\n# Upper B\nRow: 3 × 5", 2, "one name"),
        ("# Lower A\nbudget 45 hours", 2, "min after the minutes"),
    ] {
        let faults = read(text).unwrap_err();
        assert_eq!(faults[0].line, line, "{text}");
        assert!(faults[0].to_string().contains(part), "{}", faults[0]);
    }
}

#[test]
fn a_text_is_bounded() {
    let long = "x".repeat(64 * 1024 + 1);
    assert!(read(&long).unwrap_err()[0].to_string().contains("64 KiB"));
    assert!(said(&long).contains("64 KiB"));
    let many = format!("# Lower A\n{}", "\n".repeat(400));
    assert!(
        read(&many).unwrap_err()[0]
            .to_string()
            .contains("400 lines")
    );
    let blocks = format!("# Lower A\n{}", "Row: 3 × 5\n".repeat(41));
    assert!(
        read(&blocks).unwrap_err()[0]
            .to_string()
            .contains("40 blocks")
    );
}

#[test]
fn a_changed_sheet_keeps_the_ids_of_its_blocks() {
    let old = read("# Lower A\nFront squat: 3 × 5\nRow: 3 × 8").unwrap();
    let text = "# Lower A\nRow: 4 × 8\nDip: 3 × 8\nFront squat: 3 × 5\nRow: 1 × 20";
    let mut n = 100;
    let mut fresh = || {
        n += 1;
        id(n, n)
    };
    let new = revise_sheet(text, &old, KNOWN, &mut fresh, time(9)).unwrap();
    assert_eq!(new.id, old.id);
    assert!(new.version > old.version);
    let of = |sheet: &Sheet| -> Vec<_> { sheet.blocks().map(|block| block.id).collect() };
    let (was, is) = (of(&old), of(&new));
    assert_eq!((is[0], is[2]), (was[1], was[0]));
    assert!(!was.contains(&is[1]) && !was.contains(&is[3]));
    new.check().unwrap();
}

#[test]
fn marked_neighbours_are_done_together() {
    let text = "# Upper B\nA1 Row: 3 × 8; between 30\nA2 Dip: 3 × 8\nB1 Curl: 2 × 12\nB2 Raise: 2 × 12\nB3 Crunch: 2 × 12\nC1 Walk: 1 × 20 m; circuit\nC2 Plank: 1 × 30 s";
    let sheet = read(text).unwrap();
    let [
        Group::Pair { between, .. },
        Group::Circuit { blocks, .. },
        Group::Circuit { .. },
    ] = &sheet.groups[..]
    else {
        panic!("{:?}", sheet.groups);
    };
    assert_eq!((between.get(), blocks.len()), (30, 3));
}

#[test]
fn notes_and_warm_up_stay_as_written() {
    let text = "# # Lower A\r\n- - hips\r\n> > as said:\r\n>\r\n>  slow <b>\r\nRow: 3 × 5";
    let sheet = read(text).unwrap();
    assert_eq!(sheet.name.as_str(), "# Lower A");
    assert_eq!(sheet.warm_up[0].as_str(), "- hips");
    assert_eq!(sheet.notes.as_str(), "> as said:\n\n slow <b>");
    assert_eq!(read(&print_sheet(&sheet, KNOWN)), Ok(sheet));
}

#[test]
fn bodies_carry_their_load_their_own_way() {
    let basis = |line: &str| {
        let block = parse_block(line, KNOWN).unwrap().look().clone();
        (block.basis, block.start.map(|load| load.to_string()))
    };
    let some = |load: &str| Some(load.to_owned());
    assert_eq!(
        basis("Chin-up (body): 3 × 5"),
        (LoadBasis::BodyMassPlus, None)
    );
    assert_eq!(
        basis("Chin-up: 3 × 5; -20kg"),
        (LoadBasis::BodyMassMinus, some("20 kg"))
    );
    let share = LoadBasis::BodyMassShare("64 %".parse().unwrap());
    assert_eq!(
        basis("Push-up: 3 × 5; 64 % body +10 lb"),
        (share, some("10 lb"))
    );
    assert_eq!(
        basis("Row: 3 × 5; band light"),
        (LoadBasis::Band(Line::new("light").unwrap()), None)
    );
}

/// The lines of the page's blocks in that language.
fn fenced(language: &str) -> Vec<String> {
    let page = include_str!("../docs/quick-line.md");
    let opening = format!("```{language}\n");
    let blocks = page.split(&opening).skip(1);
    blocks
        .map(|rest| rest.split("```").next().unwrap().to_owned())
        .collect()
}

#[test]
fn the_examples_of_the_page_are_read_and_printed_back() {
    let lines: Vec<String> = fenced("line").concat().lines().map(str::to_owned).collect();
    assert!(lines.len() > 15, "{}", lines.len());
    for line in lines {
        match line.split_once(" ⇒ ") {
            Some((typed, printed)) => assert_eq!(again(typed), printed),
            None => assert_eq!(again(&line), line),
        }
    }
    let sheets = fenced("sheet");
    assert!(!sheets.is_empty());
    for text in sheets {
        let sheet = read(&text).unwrap_or_else(|faults| panic!("{}", faults[0]));
        assert_eq!(print_sheet(&sheet, KNOWN), text);
    }
    let faults: Vec<String> = fenced("fault")
        .concat()
        .lines()
        .map(str::to_owned)
        .collect();
    assert!(faults.len() > 2);
    for pair in faults.chunks(2) {
        assert_eq!(said(&pair[0]), pair[1]);
    }
}
