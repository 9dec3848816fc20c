//! What programs read is the same in every language: sheets as lines, files, the table of the sets.

use super::common::known::named;
use super::common::sheets::sheet;
use super::files;
use super::said::speaking;
use chrono::{DateTime, FixedOffset};
use proptest::prelude::*;
use serde_json::Value;
use stanchion::quick::print_sheet;
use stanchion::sheet::{Block, Sheet};
use stanchion::store::{csv, read, write};

const FILES: [&str; 5] = [
    include_str!("../golden/v1.json"),
    include_str!("../golden/v1-own.json"),
    include_str!("../golden/v1-hands.json"),
    include_str!("../golden/v1-body.json"),
    include_str!("../../assets/demo/boathouse.json"),
];

/// Runs `made` in every language; all must make what English does.
fn same_in_every_language(made: impl Fn() -> String) {
    let english = made();
    for file in files::all() {
        speaking(&file, || assert_eq!(made(), english, "{}", file.name));
    }
}

fn lines(sheet: &Sheet) -> String {
    print_sheet(sheet, &named)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    #[test]
    fn a_sheet_is_the_same_lines_and_the_same_json(sheet in sheet()) {
        same_in_every_language(|| lines(&sheet));
        same_in_every_language(|| serde_json::to_string(&sheet).unwrap());
        // What was done under one prescription is found by it.
        same_in_every_language(|| sheet.blocks().map(Block::shape).collect());
    }
}

#[test]
fn a_file_is_read_and_written_the_same() {
    for text in FILES {
        let value: Value = serde_json::from_str(text).unwrap();
        let written: DateTime<FixedOffset> = value["written"].as_str().unwrap().parse().unwrap();
        same_in_every_language(|| write(&read(text).unwrap(), written));
        same_in_every_language(|| csv(&read(text).unwrap()));
        let archive = read(text).unwrap();
        for sheet in archive.current_sheets() {
            same_in_every_language(|| lines(sheet));
        }
    }
}
