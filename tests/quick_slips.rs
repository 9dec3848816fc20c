//! What the quick line says of frequent slips: what was meant, and what stands there.

mod common;

use common::{id, time};
use stanchion::quick::{Unread, parse_sheet};
use stanchion::sheet::Sheet;

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
fn a_line_that_wants_another_is_named_by_what_stands_there() {
    let said = read("# A\nB1 Curl: 3 × 5\nRow: 3 × 5").unwrap_err()[0].to_string();
    assert_eq!(
        said,
        "line 2, column 1: expected 2 to 8 neighbouring lines with one letter, found “B1”"
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
