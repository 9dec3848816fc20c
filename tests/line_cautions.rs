//! Cautions of a sheet that was written as lines.

use stanchion::exercises::{Catalogue, add_cautions, give_back_cautions, without_cautions};
use stanchion::kit::Kit;
use stanchion::quick::parse_sheet;
use stanchion::sheet::{Block, Sheet};
use stanchion::units::Unit;
use uuid::Uuid;

#[test]
fn lines_have_the_cautions_of_their_exercises_but_for_those_that_were_taken_off() {
    let exercises = Catalogue::default();
    let kit = Kit::starter(Unit::Kg);
    let mut n = 0;
    let mut ids = || {
        n += 1;
        Uuid::from_u128(n)
    };
    let text =
        "# Upper B\nBand row: 3 × 15; band light\nPull-up: 3 × 5; ! slowly\nSculling drill: 3 × 10";
    let named = |name: &str| exercises.named(name, &kit);
    let written = "2026-03-01T08:00:00+01:00".parse().unwrap();
    let mut sheet = parse_sheet(text, &named, &mut ids, written).unwrap();
    add_cautions(&mut sheet, None, &exercises);
    let said = |sheet: &Sheet| -> Vec<Vec<String>> {
        let cautions = |block: &Block| {
            block
                .cautions
                .iter()
                .map(|it| it.said().to_owned())
                .collect()
        };
        sheet.blocks().map(cautions).collect()
    };
    let first = said(&sheet);
    assert!(!first[0].is_empty(), "a band has cautions");
    assert_eq!(first[1], ["slowly"]);
    assert!(first[2].is_empty(), "of an unknown exercise none is known");

    // A link is without those that whoever opens it has anyway, and only where the very same sheet comes back.
    let sent = without_cautions(&sheet).unwrap();
    assert_eq!(said(&sent), [vec![], vec!["slowly".to_owned()], vec![]]);
    let mut opened = sent.clone();
    give_back_cautions(&mut opened);
    assert_eq!(opened, sheet);
    assert_eq!(without_cautions(&sent), None, "they would come back");

    let mut off = sheet.clone();
    off.groups[0].blocks_mut()[0].cautions.clear();
    let before = off.clone();
    add_cautions(&mut off, Some(&before), &exercises);
    assert!(said(&off)[0].is_empty());
}
