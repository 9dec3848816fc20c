//! The sort, the map and the set against those of std.

use super::{Map, Set, by, by_key};
use proptest::prelude::*;
use std::cmp::Reverse;
use std::collections::{BTreeMap, BTreeSet};

#[test]
fn nothing_and_one_are_sorted() {
    let mut none: [u8; 0] = [];
    by_key(&mut none, |item| *item);
    let mut one = ["only"];
    by_key(&mut one, |item| *item);
    assert_eq!(one, ["only"]);
}

#[test]
fn equals_stay_in_the_order_they_came_in() {
    let mut items = [(2, 'a'), (1, 'b'), (2, 'c'), (1, 'd'), (1, 'e')];
    by_key(&mut items, |(key, _)| *key);
    assert_eq!(items, [(1, 'b'), (1, 'd'), (1, 'e'), (2, 'a'), (2, 'c')]);
    by_key(&mut items, |(key, _)| Reverse(*key));
    assert_eq!(items, [(2, 'a'), (2, 'c'), (1, 'b'), (1, 'd'), (1, 'e')]);
}

#[test]
fn a_list_in_order_is_compared_once_from_item_to_item() {
    let compared = std::cell::Cell::new(0);
    let mut items: Vec<u32> = (0..1000).collect();
    by(&mut items, |a, b| {
        compared.set(compared.get() + 1);
        a.cmp(b)
    });
    assert_eq!(compared.get(), 999);
    assert!(items.is_sorted());
}

#[test]
fn a_comparison_that_is_no_order_loses_nothing() {
    let mut items: Vec<u32> = (0..37).collect();
    by(&mut items, |a, b| (a * 7 % 5).cmp(&(b * 3 % 4)));
    items.sort_unstable();
    assert!(items.into_iter().eq(0..37));
}

proptest! {
    /// Few keys and many items: most are equal to others, so that a swap of equals would show.
    #[test]
    fn sorts_as_std_does(keys in prop::collection::vec(0_u8..8, 0..200)) {
        let items: Vec<(u8, String)> = keys
            .into_iter()
            .enumerate()
            .map(|(at, key)| (key, at.to_string()))
            .collect();
        let (mut ours, mut theirs) = (items.clone(), items);
        by_key(&mut ours, |(key, _)| *key);
        theirs.sort_by_key(|(key, _)| *key);
        prop_assert_eq!(&ours, &theirs);
        by(&mut ours, |a, b| b.0.cmp(&a.0));
        theirs.sort_by_key(|item| Reverse(item.0));
        prop_assert_eq!(ours, theirs);
    }
}

/// What is done to a map and to std's, and what both say of it.
fn done(ours: &mut Map<u8, usize>, theirs: &mut BTreeMap<u8, usize>, at: usize, what: (u8, u8)) {
    let (kind, key) = what;
    match kind {
        0 => assert_eq!(ours.insert(key, at), theirs.insert(key, at)),
        1 => assert_eq!(ours.remove(&key), theirs.remove(&key)),
        2 => {
            *ours.or_default(key) += at;
            *theirs.entry(key).or_default() += at;
        }
        3 => assert_eq!(ours.get_mut(&key), theirs.get_mut(&key)),
        _ => {
            ours.retain(|it, _| *it != key);
            theirs.retain(|it, _| *it != key);
        }
    }
    assert_eq!(ours.get(&key), theirs.get(&key));
    assert_eq!(ours.contains_key(&key), theirs.contains_key(&key));
    assert_eq!(ours.last(), theirs.values().next_back());
    assert_eq!(ours.len(), theirs.len());
    assert_eq!(ours.is_empty(), theirs.is_empty());
}

proptest! {
    #[test]
    fn a_map_is_as_stds(steps in prop::collection::vec((0_u8..5, 0_u8..12), 0..60)) {
        let (mut ours, mut theirs) = (Map::new(), BTreeMap::new());
        for (at, what) in steps.into_iter().enumerate() {
            done(&mut ours, &mut theirs, at, what);
        }
        prop_assert!(ours.keys().eq(theirs.keys()));
        prop_assert!(ours.values().rev().eq(theirs.values().rev()));
        prop_assert!(ours.into_iter().eq(theirs));
    }

    /// Of one key several times the last counts.
    #[test]
    fn a_map_and_a_set_gather_as_stds(pairs in prop::collection::vec((0_u8..12, 0_u8..3), 0..40)) {
        let ours: Map<u8, u8> = pairs.iter().copied().collect();
        let theirs: BTreeMap<u8, u8> = pairs.iter().copied().collect();
        prop_assert!(ours.iter().eq(theirs.iter()));
        let mut ours: Set<u8> = pairs.iter().map(|(key, _)| *key).collect();
        let mut theirs: BTreeSet<u8> = pairs.iter().map(|(key, _)| *key).collect();
        for (_, item) in &pairs {
            prop_assert_eq!(ours.contains(item), theirs.contains(item));
            prop_assert_eq!(ours.insert(*item), theirs.insert(*item));
        }
        ours.extend([7, 3]);
        theirs.extend([7, 3]);
        prop_assert_eq!(ours.len(), theirs.len());
        prop_assert!(ours.into_iter().eq(theirs));
    }
}

#[test]
fn what_comes_in_order_is_compared_once() {
    let compared = std::cell::Cell::new(0);
    let compare = |_| {
        compared.set(compared.get() + 1);
        std::cmp::Ordering::Less
    };
    assert_eq!(super::map::find(1000, &compare), Err(1000));
    assert_eq!(compared.get(), 1);
    assert_eq!(super::map::find(0, &compare), Err(0));
}
