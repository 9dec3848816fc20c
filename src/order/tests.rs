//! The sort against std's.

use super::{by, by_key};
use proptest::prelude::*;
use std::cmp::Reverse;

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
