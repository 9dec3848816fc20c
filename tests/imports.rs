//! What an import says that it changes, and what it leaves aside once.

use crate::common;

use common::built::{block, sheet, work};
use common::{id, time};
use stanchion::kit::Kit;
use stanchion::sheet::{LoadBasis, SheetVersion, SideMode};
use stanchion::store::{Archive, Conflict, KitRecord, RemovedSheet, SheetRecord, Taken};
use stanchion::units::Unit;

/// A kit, as its version `n`.
fn kit(n: u64, unit: Unit) -> Archive {
    let mut archive = Archive::default();
    archive.kit.put(KitRecord {
        version: id(n, n),
        written: time(n),
        kit: Kit::starter(unit),
    });
    archive
}

/// Two texts of one version do not come about by themselves: the one that is not kept is set aside, and a second time it is
/// known.
#[test]
fn what_was_set_aside_once_is_not_brought_again() {
    let (one, other) = (kit(1, Unit::Kg), kit(1, Unit::Lb));
    let first = one.clone().merge(other.clone());
    let (mine, theirs) = if first.archive == one {
        (one, other)
    } else {
        (other, one)
    };
    let mut merged = mine.merge(theirs);
    assert_eq!(merged.news, Archive::default(), "nothing to take back");
    assert!(!merged.summary.is_nothing(), "something to set aside");
    let aside: Vec<String> = merged.summary.conflicts.iter().map(Conflict::key).collect();
    merged.summary.leave_out_aside(&["another".to_owned()]);
    assert_eq!(merged.summary.conflicts.len(), 1);
    merged.summary.leave_out_aside(&aside);
    assert_eq!(merged.summary.to_string(), "nothing new");
    assert!(merged.summary.is_nothing());
}

/// Where the text of the file takes the place of what is here, something is written: taken back, it can be brought in again.
#[test]
fn what_takes_the_place_of_another_is_brought_again_although_that_was_set_aside() {
    let (one, other) = (kit(1, Unit::Kg), kit(1, Unit::Lb));
    let kept = one.clone().merge(other.clone()).archive;
    let lost = if kept == one { other } else { one };
    let mut merged = lost.merge(kept.clone());
    assert_eq!(merged.news, kept);
    let aside: Vec<String> = merged.summary.conflicts.iter().map(Conflict::key).collect();
    merged.summary.leave_out_aside(&aside);
    assert!(!merged.summary.is_nothing());
    assert!(kept.clone().merge(kept).summary.is_nothing());
}

#[test]
fn of_a_kit_it_says_whether_it_is_another_now() {
    let one = |n| kit(n, Unit::Kg);
    let first = Archive::default().merge(one(1)).summary;
    assert_eq!(first.to_string(), "the kit");
    let newer = one(1).merge(one(2)).summary;
    assert_eq!(
        newer.to_string(),
        "your kit is replaced by the newer one of the file"
    );
    let of = (id(9, 9), time(9), String::new());
    let now = one(1).merge(one(2)).archive;
    let taken = Taken::between(&one(1), &now, of);
    let undone = |now: Archive| taken.undone(&now, &taken.take_back(now.clone()).unwrap());
    assert_eq!(undone(now.clone()), "the kit is as it was before");
    // A kit of later stays: nothing is as it was before.
    let since = now.merge(one(3)).archive;
    assert_eq!(undone(since), "older versions of the kit");
    let before = one(2).merge(one(1)).summary;
    assert_eq!(
        before.to_string(),
        "older versions of the kit, and yours stays as it is"
    );
    assert!(!before.is_nothing());
    assert_eq!(one(1).merge(one(1)).summary.to_string(), "nothing new");
}

/// Versions of one sheet; the one that is negative is the note of its removal.
fn versions(of: &[i64]) -> Archive {
    let mut archive = Archive::default();
    for n in of {
        let at = n.unsigned_abs();
        let mut sheet = sheet(block(
            vec![work(3, 5, 8)],
            LoadBasis::External,
            SideMode::Both,
        ));
        (sheet.version, sheet.written) = (SheetVersion(id(at, at)), time(at));
        archive.sheets.put(match n {
            0.. => SheetRecord::Written(Box::new(sheet)),
            _ => SheetRecord::Removed(RemovedSheet {
                id: sheet.id,
                version: sheet.version,
                written: sheet.written,
            }),
        });
    }
    archive
}

#[test]
fn of_a_sheet_that_stays_only_its_versions_are_taken_back() {
    let undone = |here: &[i64], file: &[i64], since: &[i64]| {
        let mine = versions(here);
        let now = mine.clone().merge(versions(file)).archive;
        let taken = Taken::between(&mine, &now, (id(9, 9), time(9), String::new()));
        let now = now.merge(versions(since)).archive;
        taken.undone(&now, &taken.take_back(now.clone()).unwrap())
    };
    assert_eq!(undone(&[], &[1, 2], &[]), "1 sheet");
    assert_eq!(undone(&[1], &[1, 2], &[]), "what was new in 1 sheet");
    assert_eq!(undone(&[1], &[1, -2], &[]), "what was new in 1 sheet");
    assert_eq!(undone(&[], &[1], &[2]), "what was new in 1 sheet");
}

/// What is written but does not count changes nothing, and is told as that.
#[test]
fn of_a_sheet_it_says_whether_it_is_another_now() {
    let told = |here: &[i64], file: &[i64]| {
        let merged = versions(here).merge(versions(file));
        let again = merged.archive.clone().merge(versions(file));
        assert!(again.summary.is_nothing(), "{}", again.summary);
        let summary = merged.summary;
        assert_eq!(summary.is_nothing(), merged.news == Archive::default());
        summary.to_string()
    };
    assert_eq!(told(&[], &[1, 2]), "1 sheet new");
    assert_eq!(told(&[1], &[1, 2]), "1 sheet changed");
    assert_eq!(told(&[1, 2], &[2]), "1 sheet known");
    assert_eq!(told(&[1, 3], &[2]), "1 sheet with older versions");
    assert_eq!(told(&[3], &[1, -2]), "1 sheet with older versions");
    assert_eq!(told(&[1], &[1, -2]), "1 sheet removed");
    assert_eq!(
        told(&[1, -3], &[1, 2]),
        "1 sheet left out, as removed here before"
    );
    assert_eq!(told(&[1, -3], &[1]), "nothing new");
    assert_eq!(told(&[1, -3], &[-2]), "1 sheet with older versions");
    assert_eq!(told(&[1, -2], &[1, 3]), "1 sheet new");
    assert_eq!(told(&[1, -2], &[1, -3]), "1 removal noted");
    assert_eq!(told(&[], &[1, -2]), "1 removal noted");
}
