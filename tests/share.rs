//! A sheet on its way: it comes through a link, a QR code and a file as it was, and nothing that is broken gets in.

use crate::common;
#[path = "share/left_out.rs"]
mod left_out;
#[path = "share/qr.rs"]
mod qr;
#[path = "share/spoiled.rs"]
mod spoiled;

use common::sheets::sheet;
use common::{id, time};
use flate2::read::{DeflateDecoder, DeflateEncoder};
use proptest::prelude::*;
use proptest::test_runner::TestRunner;
use spoiled::{any_code, any_file, envelope};
use stanchion::json;
use stanchion::quick::parse_sheet;
use stanchion::share::{
    CODE_CHARS_MAX, LINK_MARK, LinkFault, Parcel, TooLong, UNPACKED_BYTES_MAX, link, sheet_file,
    single_sheet, unseal, without_mark, without_start_loads,
};
use stanchion::sheet::{Line, Note, Sheet};
use stanchion::store::{demo, import, read};
use std::io::Read;

/// Raw DEFLATE by a library that is not the browser's.
fn pack(text: &str) -> Vec<u8> {
    let mut packed = Vec::new();
    DeflateEncoder::new(text.as_bytes(), flate2::Compression::default())
        .read_to_end(&mut packed)
        .unwrap();
    packed
}

/// Unpacks to one byte more than may be, as the shell does.
fn unpack(packed: &[u8]) -> Option<Vec<u8>> {
    let mut text = Vec::new();
    DeflateDecoder::new(packed)
        .take(UNPACKED_BYTES_MAX as u64 + 1)
        .read_to_end(&mut text)
        .ok()?;
    Some(text)
}

fn code_of(sheet: &Sheet) -> String {
    let parcel = Parcel::of(sheet);
    parcel.seal(Some(&pack(parcel.text()))).unwrap()
}

fn open(code: &str) -> Result<Sheet, LinkFault> {
    let sealed = unseal(code)?;
    match sealed.packed() {
        None => sealed.sheet(None),
        Some(packed) => sealed.sheet(Some(&unpack(packed).ok_or(LinkFault::Broken)?)),
    }
}

/// The six blocks that the length of a link is measured on, as a lifter wrote them.
fn six_blocks() -> Sheet {
    let text = include_str!("golden/six_blocks.txt");
    let mut n = 0;
    let mut ids = || {
        n += 1;
        id(n, n.wrapping_mul(0x9e37_79b9_7f4a_7c15))
    };
    parse_sheet(text, &common::known::named, &mut ids, time(0)).unwrap()
}

/// Equal in every field, the zone of the time among them.
fn same(a: &Sheet, b: &Sheet) -> bool {
    a == b && json::text(a) == json::text(b)
}

/// What a code says when it cannot be opened: a sentence with something to do.
fn answered(code: &str) {
    if let Err(fault) = open(code) {
        let said = fault.to_string();
        assert!(said.ends_with('.') && said.len() > 40, "{said}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(192))]

    #[test]
    fn every_sheet_survives_its_link(sheet in sheet()) {
        let parcel = Parcel::of(&sheet);
        for packed in [None, Some(pack(parcel.text()))] {
            match parcel.seal(packed.as_deref()) {
                Ok(code) => prop_assert!(same(&open(&code).unwrap(), &sheet)),
                Err(too_long) => prop_assert_eq!(too_long, TooLong::Link),
            }
        }
    }

    #[test]
    fn every_sheet_survives_its_file(sheet in sheet()) {
        let text = sheet_file(&sheet, time(9));
        let archive = read(&text).unwrap();
        prop_assert!(same(single_sheet(&archive).unwrap(), &sheet));
        let merged = import(archive, &text).unwrap();
        prop_assert_eq!(merged.summary.sheets.new, 0);
    }

    #[test]
    fn the_mark_for_whom_stays_behind(sheet in sheet()) {
        let bare = without_mark(&sheet);
        prop_assert_eq!(&bare.written_for, &None);
        if sheet.written_for.is_none() {
            prop_assert!(same(&bare, &sheet));
            return Ok(());
        }
        // What differs in content differs in its ids, and always in the same way.
        prop_assert!(bare.id != sheet.id && bare.version != sheet.version);
        prop_assert!(same(&without_mark(&sheet), &bare));
        let loadless = without_start_loads(&bare);
        prop_assert!(same(&loadless, &bare) || loadless.id != bare.id);
        prop_assert!(without_start_loads(&sheet).id != bare.id);
        let mut again = bare;
        (again.id, again.version) = (sheet.id, sheet.version);
        again.written_for.clone_from(&sheet.written_for);
        prop_assert!(same(&again, &sheet));
    }

    #[test]
    fn start_loads_stay_behind_and_versions_follow_each_other(sheet in sheet()) {
        let bare = without_start_loads(&sheet);
        prop_assert!(bare.blocks().all(|block| block.start.is_none()));
        if sheet.blocks().all(|block| block.start.is_none()) {
            prop_assert!(same(&bare, &sheet));
            return Ok(());
        }
        prop_assert!(bare.id != sheet.id && bare.version != sheet.version);
        prop_assert_eq!(bare.id.0.get_version_num(), 7);
        prop_assert!(same(&without_start_loads(&sheet), &bare));
        let mut later = sheet.clone();
        later.version = stanchion::sheet::SheetVersion(id(9_999, 1));
        let next = without_start_loads(&later);
        prop_assert_eq!(next.id, bare.id);
        prop_assert!(next.version > bare.version);
        // All else goes along.
        let mut again = bare;
        (again.id, again.version) = (sheet.id, sheet.version);
        let starts: Vec<_> = sheet.blocks().map(|block| block.start).collect();
        let blocks = again.groups.iter_mut().flat_map(stanchion::sheet::Group::blocks_mut);
        for (block, start) in blocks.zip(starts) {
            block.start = start;
        }
        prop_assert!(same(&again, &sheet));
    }

    #[test]
    fn no_code_breaks_it(code in any_code()) {
        answered(&code);
    }

    #[test]
    fn no_file_breaks_it(text in any_file()) {
        if let Ok(archive) = read(&text) {
            let _ = single_sheet(&archive);
        }
    }
}

fn demo_sheet() -> Sheet {
    demo().current_sheets()[0].clone()
}

#[test]
#[ignore = "two million cases: cargo test --release --test core share:: -- --ignored"]
fn share_a_million_codes_and_files_break_nothing() {
    let config = || ProptestConfig {
        failure_persistence: None,
        ..ProptestConfig::with_cases(1_000_000)
    };
    let codes = TestRunner::new(config()).run(&any_code(), |code| {
        answered(&code);
        Ok(())
    });
    codes.unwrap();
    let files = TestRunner::new(config()).run(&any_file(), |text| {
        if let Ok(archive) = read(&text) {
            let _ = single_sheet(&archive);
        }
        Ok(())
    });
    files.unwrap();
}

#[test]
fn a_code_cut_anywhere_is_refused() {
    let code = code_of(&six_blocks());
    for end in 0..code.len() {
        let fault = open(&code[..end]).unwrap_err();
        let cut_short = if end < 4 {
            LinkFault::NotOurs
        } else {
            LinkFault::Broken
        };
        assert_eq!(fault, cut_short, "{end}");
    }
}

#[test]
fn a_code_with_any_letter_changed_is_refused() {
    let code = code_of(&six_blocks());
    for at in 0..code.len() {
        for letter in ['A', 'b', '7', '_', '.', 'ü'] {
            if code[at..].starts_with(letter) {
                continue;
            }
            let spoiled = format!("{}{letter}{}", &code[..at], &code[at + 1..]);
            assert!(open(&spoiled).is_err(), "{at} {letter}");
        }
    }
}

#[test]
fn a_newer_link_asks_for_an_update_and_others_are_told_apart() {
    let said = |code: &str| open(code).unwrap_err();
    assert_eq!(said(&envelope(vec![2, 0, 1, 2, 3])), LinkFault::Newer);
    // A flag that this version does not know is of a newer one as well.
    assert_eq!(said(&envelope(vec![1, 64, 1, 2, 3])), LinkFault::Newer);
    assert_eq!(said(&envelope(vec![0, 0, 1, 2, 3])), LinkFault::NotOurs);
    assert_eq!(said("WIFI:T:WPA;S:boathouse;;"), LinkFault::NotOurs);
    assert_eq!(said("x/y"), LinkFault::NotOurs);
    assert_eq!(said(""), LinkFault::NotOurs);
    assert!(LinkFault::Newer.to_string().contains("Update the app"));
}

#[test]
fn a_whole_envelope_without_a_sheet_says_what_is_wrong() {
    let mut head = vec![1, 0];
    head.extend([0; 8]);
    head.push(0);
    head.extend([16, 16]);
    let with = |text: &str| envelope([&head[..], text.as_bytes()].concat());
    let fault = open(&with("# Lower A\nRow: 3 x many")).unwrap_err();
    assert!(fault.to_string().contains("line 2, column 10"), "{fault}");
    let fault = open(&with("# Lower A\nRow: 3 × 5")).unwrap_err();
    assert!(fault.to_string().contains("number of blocks"), "{fault}");
    let fault = open(&envelope(b"\x01\x02{\"id\": 3}".to_vec())).unwrap_err();
    assert!(matches!(fault, LinkFault::Unreadable { .. }), "{fault}");
    assert!(fault.to_string().contains("as a file"));
    assert_eq!(
        open(&envelope(b"\x01\x02\xff".to_vec())),
        Err(LinkFault::Broken)
    );
}

#[test]
fn a_packed_link_without_anything_to_unpack_it_says_so() {
    let sealed = unseal(&code_of(&six_blocks())).unwrap();
    assert_eq!(sealed.sheet(None), Err(LinkFault::NoUnpacking));
}

#[test]
fn what_unpacks_to_too_much_is_refused() {
    let bomb = pack(&"-".repeat(50_000_000));
    let parcel = Parcel::of(&six_blocks());
    assert_eq!(parcel.seal(Some(&bomb)), Err(TooLong::Link));
    let long = "A".repeat(CODE_CHARS_MAX + 1);
    assert_eq!(unseal(&long), Err(LinkFault::TooLarge));
    let small_bomb = pack(&"-".repeat(5_000_000));
    let code = parcel.seal(Some(&small_bomb)).unwrap();
    assert_eq!(open(&code), Err(LinkFault::TooLarge));
}

#[test]
fn a_sheet_that_lines_cannot_hold_goes_as_json() {
    let mut odd = six_blocks();
    // The head knows no times finer than a millisecond, and none before 1970.
    odd.written += chrono::TimeDelta::nanoseconds(1);
    assert!(Parcel::of(&odd).text().starts_with('{'));
    assert!(same(&open(&code_of(&odd)).unwrap(), &odd));
    let mut early = six_blocks();
    early.written = "1969-12-31T23:59:59-08:30".parse().unwrap();
    assert!(same(&open(&code_of(&early)).unwrap(), &early));
}

#[test]
fn names_of_every_kind_come_through() {
    for name in [
        "<b>Lower</b> & <script>alert(1)</script>",
        "🏋️‍♀️ A",
        "جلسة الأرجل \u{202e}A",
        "# - > \"x\\",
    ] {
        let mut sheet = six_blocks();
        sheet.name = Line::new(name).unwrap();
        sheet.notes = Note::new(&format!("{name}\n\n- {name}")).unwrap();
        assert!(same(&open(&code_of(&sheet)).unwrap(), &sheet), "{name}");
    }
}

#[test]
fn six_blocks_make_a_link_of_at_most_900_characters() {
    let length = LINK_MARK.len() + code_of(&without_start_loads(&six_blocks())).len();
    assert!(length <= 900, "{length}");
}

#[test]
fn a_link_is_the_address_the_mark_and_the_code() {
    assert_eq!(
        link("https://x.example/a/", "AQ"),
        "https://x.example/a/#/s/AQ"
    );
    assert_eq!(
        link("https://x.example/#/kit", "AQ"),
        "https://x.example/#/s/AQ"
    );
}

/// A link of the first version, which must be read for ever.
#[test]
fn the_golden_link_is_read() {
    let code = include_str!("golden/link_v1.txt");
    let sheet: Sheet = json::parse(include_str!("golden/link_v1.json")).unwrap();
    assert!(same(&open(code).unwrap(), &sheet));
    // As it stands in a sentence.
    assert!(same(&open(&format!("{code}).\n")).unwrap(), &sheet));
}
