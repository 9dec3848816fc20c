//! Cautions that a link leaves out: whoever opens it has them, word for word or as another version of the sheet.

use super::{envelope, open, pack, same, six_blocks, unpack};
use crate::common::{id, time};
use stanchion::exercises::{Catalogue, add_cautions, all, give_back_cautions, without_cautions};
use stanchion::json;
use stanchion::quick::parse_sheet;
use stanchion::share::{LINK_MARK, LinkFault, Parcel, unseal, without_start_loads};
use stanchion::sheet::{Block, Group, Line, Sheet};

/// The six blocks with the cautions of their exercises, as they are sent from the app.
fn cautioned() -> Sheet {
    let mut sheet = without_start_loads(&six_blocks());
    add_cautions(&mut sheet, None, &Catalogue::default());
    sheet
}

/// The code of a sheet as the app makes it, packed or plain.
fn sent(sheet: &Sheet, packed: bool) -> String {
    let bare = without_cautions(sheet).expect("some are of the list");
    let parcel = Parcel::of(&bare).without_cautions(sheet);
    let text = packed.then(|| pack(parcel.text()));
    parcel.seal(text.as_deref()).unwrap()
}

/// Opens a code where the cautions that are given back are these.
fn opened(code: &str, give: impl FnOnce(&mut Sheet)) -> Sheet {
    let sealed = unseal(code).unwrap();
    let unpacked = sealed.packed().map(|packed| unpack(packed).unwrap());
    let bare = sealed.sheet(unpacked.as_deref()).unwrap();
    sealed.with_cautions(bare, give)
}

fn blocks(sheet: &mut Sheet) -> impl Iterator<Item = &mut Block> {
    sheet.groups.iter_mut().flat_map(Group::blocks_mut)
}

/// A list that words every caution so.
fn worded(words: &str) -> impl Fn(&mut Sheet) {
    move |sheet| {
        for block in blocks(sheet).filter(|block| block.cautions.is_empty()) {
            block.cautions = vec![Line::new(words).unwrap()];
        }
    }
}

#[test]
fn what_is_left_out_comes_back_as_the_very_same_sheet() {
    let mut odd = cautioned();
    // It goes as JSON.
    odd.written += chrono::TimeDelta::nanoseconds(1);
    for sheet in [cautioned(), odd] {
        for packed in [false, true] {
            let code = sent(&sheet, packed);
            assert!(same(&opened(&code, give_back_cautions), &sheet));
            // Where they are not given back, the sheet is without them.
            let bare = without_cautions(&sheet).unwrap();
            assert!(same(&open(&code).unwrap(), &bare) && bare != sheet);
        }
    }
    let length = LINK_MARK.len() + sent(&cautioned(), true).len();
    assert!(length <= 900, "{length}");
}

#[test]
fn every_exercise_of_the_list_comes_back_with_its_cautions() {
    for entry in all() {
        let text = format!("# One\n{}: 3 × 5", entry.name());
        let mut ids = || id(1, 1);
        let known = &crate::common::known::named;
        let mut sheet = parse_sheet(&text, known, &mut ids, time(0)).unwrap();
        add_cautions(&mut sheet, None, &Catalogue::default());
        match without_cautions(&sheet) {
            Some(_) => assert!(same(
                &opened(&sent(&sheet, false), give_back_cautions),
                &sheet
            )),
            None => assert_eq!(entry.cautions(), [], "{}", entry.name()),
        }
    }
}

#[test]
fn a_link_that_leaves_nothing_out_gives_nothing_back() {
    let mut sheet = cautioned();
    for block in blocks(&mut sheet) {
        block.cautions.clear();
    }
    assert_eq!(without_cautions(&sheet), None, "they would come back");
    let code = Parcel::of(&sheet).seal(None).unwrap();
    assert!(same(&opened(&code, give_back_cautions), &sheet));
}

/// What differs in content differs in its ids: a list of another build words them otherwise.
#[test]
fn other_words_are_another_version() {
    let sheet = cautioned();
    let code = sent(&sheet, true);
    let one = opened(&code, worded("Slowly."));
    assert_eq!(one.id, sheet.id);
    assert_ne!(one.version, sheet.version);
    assert!(same(&opened(&code, worded("Slowly.")), &one));
    let other = opened(&code, worded("With care."));
    assert!(other.version != one.version && other.version != sheet.version);
    let (version, was) = (one.version.0, sheet.version.0);
    assert_eq!(version.get_version_num(), 7);
    assert_eq!(
        version.as_bytes()[..9],
        was.as_bytes()[..9],
        "it is of the same time"
    );
    let mut again = other;
    again.version = sheet.version;
    for (block, written) in blocks(&mut again).zip(sheet.blocks()) {
        block.cautions.clone_from(&written.cautions);
    }
    assert!(same(&again, &sheet), "all else is the same");
}

#[test]
fn a_sum_that_is_cut_off_is_refused() {
    let code = |bytes: &[u8]| envelope([&[1, 6], bytes].concat());
    for cut in [&[][..], &[1]] {
        assert_eq!(unseal(&code(cut)), Err(LinkFault::Broken));
    }
    let fault = open(&code(&[1, 2])).unwrap_err();
    assert!(matches!(fault, LinkFault::Unreadable { .. }), "{fault}");
}

/// A link of the first version that left cautions out, which must be read for ever, whatever the list says by then.
#[test]
fn the_golden_link_without_cautions_is_read() {
    let code = include_str!("../golden/link_v1_cautions.txt");
    let sheet: Sheet = json::parse(include_str!("../golden/link_v1_cautions.json")).unwrap();
    let as_then = |bare: &mut Sheet| {
        for (block, written) in blocks(bare).zip(sheet.blocks()) {
            block.cautions.clone_from(&written.cautions);
        }
    };
    assert!(same(&opened(code, as_then), &sheet));
    assert_eq!(opened(code, give_back_cautions).id, sheet.id);
    let left_out = |block: &Block| block.cautions.is_empty();
    assert!(open(code).unwrap().blocks().any(left_out));
}
