//! What the quick line says of frequent slips: what was meant, and what stands there.

use crate::common;

use common::{id, time};
use stanchion::quick::{Unread, parse_sheet, print_sheet, revise_sheet};
use stanchion::sheet::Sheet;
use std::num::NonZeroU16;

fn read(text: &str) -> Result<Sheet, Vec<Unread>> {
    let mut n = 0;
    let mut ids = || {
        n += 1;
        id(n, n)
    };
    parse_sheet(text, &|_: &str| None, &mut ids, time(0))
}

#[test]
fn a_forgotten_semicolon_is_told_as_one() {
    for (text, found) in [
        ("# A\nFront squat: 3 × 5 60 kg", "60"),
        ("# A\nFront squat: 3 × 5, 5, 3", "5"),
    ] {
        let said = read(text).unwrap_err()[0].to_string();
        assert!(said.contains("or ; before the next part"), "{said}");
        assert!(said.contains(&format!("found “{found}")), "{said}");
    }
    // Where a share is meant, that is what is missing.
    let said = read("# A\nFront squat: 3 × 5 80 % bottom").unwrap_err()[0].to_string();
    assert!(said.contains("of top or, after one share, e1RM"), "{said}");
}

#[test]
fn what_the_trade_writes_otherwise_is_told_as_it_is_written_here() {
    for (line, hint) in [
        ("5 × 5 RPE 8", "RPE 8 is @ 2."),
        ("5 × 5 @ RPE 8", "RPE 8 is @ 2."),
        ("3 × AMRAP", "8+ to failure."),
        ("3 × max", "8+ to failure."),
        ("3 × 8 each leg", "; each side"),
        ("2 × 30 s per side", "; each side"),
        ("EMOM 10 × 10", "write the rest."),
        ("3 × 5 60kg", "Before a load there is a semicolon."),
        ("3 × 5 @ 80%", "80 % e1RM"),
        ("3 × 5; tempo 4010", "4/0/1/0."),
    ] {
        let said = read(&format!("# A\nFront squat: {line}")).unwrap_err()[0].to_string();
        assert!(said.ends_with(hint), "{line}: {said}");
    }
}

#[test]
fn a_line_that_wants_another_is_named_by_what_stands_there() {
    let said = read("# A\nB1 Curl: 3 × 5\nRow: 3 × 5").unwrap_err()[0].to_string();
    assert_eq!(
        said,
        "line 2, column 1: expected a second line with its letter behind it, as A2 behind A1, or no letter, found “B1”"
    );
    let said = read("# A\nRow: 3 × 5; between 30 s").unwrap_err()[0].to_string();
    assert!(said.ends_with("found “between”"), "{said}");
}

#[test]
fn a_sheet_without_a_name_is_told_by_its_first_line() {
    let said = |text: &str| read(text).unwrap_err()[0].to_string();
    assert_eq!(
        said("Front squat: 3 × 5"),
        "line 1, column 1: expected # and the name of the sheet, found “Front”"
    );
    assert!(said("").ends_with("found the end of the line"));
}

/// A dash before the load is soon typed, and a bar takes no load off the body.
#[test]
fn a_dash_before_a_load_that_is_lifted_is_no_assistance() {
    let one = |equipment: &str, load: &str| {
        let sheet = read(&format!("# A\nRow ({equipment}): 3 × 5; {load}"));
        sheet.map(|sheet| sheet.blocks().next().unwrap().basis.assists())
    };
    for equipment in ["barbell", "dumbbell", "handle"] {
        for dash in ["-60 kg", "− 60 kg", "– 60 kg"] {
            let said = one(equipment, dash).unwrap_err()[0].to_string();
            assert!(
                said.contains("expected a load like 60 kg, or the word assistance"),
                "{said}"
            );
            let found = &dash[..dash.chars().next().unwrap().len_utf8()];
            assert!(said.contains(&format!("found “{found}")), "{said}");
        }
        assert_eq!(one(equipment, "−60 kg assistance"), Ok(true));
        assert_eq!(one(equipment, "60 kg"), Ok(false));
    }
    for equipment in ["stack", "band", "body", "other"] {
        assert_eq!(one(equipment, "-20 kg"), Ok(true), "{equipment}");
    }
}

#[test]
fn a_budget_of_no_time_is_none() {
    for minutes in [0, 601] {
        let text = format!("# A\nbudget {minutes} min\nRow: 3 × 5");
        let said = read(&text).unwrap_err()[0].to_string();
        let place = "line 2, column 8: expected 1 to 600 minutes";
        assert_eq!(said, format!("{place}, found “{minutes}”"));
    }
    let sheet = read("# A\nbudget 600 min\nRow: 3 × 5").unwrap();
    assert_eq!(sheet.budget_minutes.unwrap().get(), 600);
}

/// A file may say more than 600 minutes: a sheet of it can be changed as lines all the same.
#[test]
fn a_longer_budget_stays_where_it_is_not_changed() {
    let mut old = read("# Lower A\nbudget 45 min\nRow: 3 × 5").unwrap();
    old.budget_minutes = NonZeroU16::new(700);
    let mut n = 9;
    let mut ids = || {
        n += 1;
        id(n, n)
    };
    let mut revised = |text: &str| revise_sheet(text, &old, &|_: &str| None, &mut ids, time(9));
    let text = print_sheet(&old, &|_: &str| None).replace("3 × 5", "4 × 5");
    let kept = revised(&text).map(|sheet| sheet.budget_minutes);
    assert_eq!(kept, Ok(old.budget_minutes));
    let longer = text.replace("700", "701");
    let faults = revised(&longer).unwrap_err();
    let said: Vec<String> = faults.iter().map(ToString::to_string).collect();
    assert_eq!(
        said,
        ["line 2, column 8: expected 1 to 600 minutes, found “701”"]
    );
    // A new sheet has none before.
    assert!(read(&text).is_err());
}
