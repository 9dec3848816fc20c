//! What can be done instead.

use super::entry::Entry;
use super::table::all;
use crate::kit::Kit;
use crate::order;
use crate::sheet::{Equipment, Pattern};
use std::cmp::Reverse;

/// The entries of one pattern that `kit` can do, in the order of the list; for exercises that are not in it.
pub fn of_pattern(pattern: Pattern, kit: &Kit) -> impl Iterator<Item = &'static Entry> {
    all()
        .iter()
        .filter(move |entry| entry.pattern() == pattern && entry.means.in_kit(kit).is_some())
}

/// The other entries with the pattern of the one with `id` that `kit` can do, nearest first: most main muscles in
/// common, then most of all muscles, then sides alike. What takes things that no kit lists (a sled, a sandbag) comes
/// last. None for an id that is not in the list: see [`of_pattern`].
#[must_use]
pub fn alike(id: &str, kit: &Kit) -> Vec<&'static Entry> {
    let Some(from) = super::entry(id) else {
        return Vec::new();
    };
    let mut found: Vec<&Entry> = of_pattern(from.pattern(), kit)
        .filter(|entry| !std::ptr::eq(*entry, from))
        .collect();
    order::by_key(&mut found, |entry| {
        let unlisted = entry.equipment() == Equipment::Other;
        let sides_differ = entry.is_unilateral() != from.is_unilateral();
        (unlisted, Reverse(common(from, entry)), sides_differ)
    });
    found
}

/// How much two entries work the same muscles: main ones in common, less those that only one has, then any.
fn common(one: &Entry, other: &Entry) -> (i64, u32) {
    let both = (one.main & other.main).count_ones();
    let apart = (one.main ^ other.main).count_ones();
    let any = (one.main | one.also) & (other.main | other.also);
    (2 * i64::from(both) - i64::from(apart), any.count_ones())
}
