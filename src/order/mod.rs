//! Sorting and sorted collections. One sort for everything: std's own is compiled again for each type that is sorted, three
//! kilobytes of WebAssembly each time. Here only a comparison and the swaps belong to the type; the sorting itself moves
//! indices. Of the collections see [`Map`].

mod map;
#[cfg(test)]
mod tests;

pub use map::{Map, Set};

use std::cmp::Ordering;

/// Sorts by a key, rising; what is equal stays in the order it came in.
pub fn by_key<T, K: Ord>(items: &mut [T], key: impl Fn(&T) -> K) {
    by(items, |a, b| key(a).cmp(&key(b)));
}

/// Sorts by a comparison, the least first; what is equal stays in the order it came in.
///
/// A comparison that is no total order leaves the same items in some order.
pub fn by<T>(items: &mut [T], compare: impl Fn(&T, &T) -> Ordering) {
    let mut places = places(items.len(), &|a, b| compare(&items[a], &items[b]));
    for at in 0..items.len() {
        // Each swap brings one item to its place for good.
        while places[at] != at {
            let place = places[at];
            items.swap(at, place);
            places.swap(at, place);
        }
    }
}

/// Where each of `len` items goes.
fn places(len: usize, compare: &dyn Fn(usize, usize) -> Ordering) -> Vec<usize> {
    let mut places = vec![0; len];
    for (place, item) in merged(len, compare).into_iter().enumerate() {
        places[item] = place;
    }
    places
}

/// The items in order, by merging runs of doubled length.
fn merged(len: usize, compare: &dyn Fn(usize, usize) -> Ordering) -> Vec<usize> {
    let mut from: Vec<usize> = (0..len).collect();
    let mut into = from.clone();
    let mut run = 1;
    while run < len {
        for start in (0..len).step_by(2 * run) {
            let middle = len.min(start + run);
            let end = len.min(middle + run);
            merge(
                &from[start..middle],
                &from[middle..end],
                &mut into[start..end],
                compare,
            );
        }
        std::mem::swap(&mut from, &mut into);
        run *= 2;
    }
    from
}

fn merge<'a>(
    mut left: &'a [usize],
    mut right: &'a [usize],
    into: &mut [usize],
    compare: &dyn Fn(usize, usize) -> Ordering,
) {
    // Most lists come in order: two runs that follow each other are not gone through.
    let follow = match (left.last(), right.first()) {
        (Some(a), Some(b)) => compare(*a, *b).is_le(),
        _ => true,
    };
    if follow {
        into[..left.len()].copy_from_slice(left);
        into[left.len()..].copy_from_slice(right);
        return;
    }
    for slot in into {
        let from_left = match (left.first(), right.first()) {
            (Some(a), Some(b)) => compare(*a, *b).is_le(),
            (first, _) => first.is_some(),
        };
        let side = if from_left { &mut left } else { &mut right };
        if let Some((first, rest)) = side.split_first() {
            *slot = *first;
            *side = rest;
        }
    }
}
