//! What an import says that it changes, and what it leaves aside once.

use crate::common;

use common::{id, time};
use stanchion::kit::Kit;
use stanchion::store::{Archive, Conflict, KitRecord};
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

#[test]
fn of_a_kit_it_says_whether_it_is_another_now() {
    let one = |n| kit(n, Unit::Kg);
    assert_eq!(one(1).merge(one(2)).summary.to_string(), "the kit");
    let before = one(2).merge(one(1)).summary;
    assert_eq!(before.to_string(), "how the kit was before");
    assert!(!before.is_nothing());
    assert_eq!(one(1).merge(one(1)).summary.to_string(), "nothing new");
}
