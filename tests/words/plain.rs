//! What programs read is the same in every language: sheets as lines, files, the table of the sets.

use super::common::id;
use super::common::known::named;
use super::common::sheets::sheet;
use super::files;
use super::said::speaking;
use chrono::{DateTime, FixedOffset};
use proptest::prelude::*;
use serde_json::Value;
use stanchion::exercises::{Catalogue, add_cautions, without_cautions};
use stanchion::quick::{parse_sheet, print_sheet};
use stanchion::share::Parcel;
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

/// Lines that name exercises of the list: the cautions that the app adds are kept in English, and left out of the link.
#[test]
fn a_sheet_of_lines_has_the_same_link() {
    let text =
        "# Upper B\nBand row: 3 × 15; band light\nBench press: 3 × 5\nChin-up: 3 × 5; ! slowly";
    let written = "2026-03-01T08:00:00+01:00".parse().unwrap();
    same_in_every_language(|| {
        let mut n = 0;
        let mut ids = || {
            n += 1;
            id(n, n)
        };
        let mut sheet = parse_sheet(text, &named, &mut ids, written).unwrap();
        add_cautions(&mut sheet, None, &Catalogue::default());
        let bare = without_cautions(&sheet).expect("none is in the writer's words");
        let parcel = Parcel::of(&bare).without_cautions(&sheet);
        parcel.seal(None).unwrap()
    });
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
