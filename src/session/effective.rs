//! Which events count: all but those undone, in the order of their ids.

use super::event::{Event, What};
use crate::order;

/// The events that count, by rising id, each once; undone ones and the undoing itself left out.
///
/// An undo may itself be undone: from the newest to the oldest, an undo that still counts takes its target away.
#[must_use]
pub fn effective(events: &[Event]) -> Vec<&Event> {
    counting(events, false)
}

/// The undos that count: those that were not undone themselves.
pub(super) fn undos(events: &[Event]) -> Vec<&Event> {
    counting(events, true)
}

/// The undos that count, or all else that does.
fn counting(events: &[Event], are_undos: bool) -> Vec<&Event> {
    let sorted = sorted(events);
    let gone = gone(&sorted);
    let counting = sorted
        .into_iter()
        .zip(gone)
        .filter(|(event, gone)| !gone && matches!(event.what, What::Undone { .. }) == are_undos);
    counting.map(|(event, _)| event).collect()
}

fn sorted(events: &[Event]) -> Vec<&Event> {
    let mut sorted: Vec<&Event> = events.iter().collect();
    // As they are kept.
    if !events.windows(2).all(|two| two[0].id < two[1].id) {
        order::by_key(&mut sorted, |event| event.id);
        sorted.dedup_by_key(|event| event.id);
    }
    sorted
}

/// Of each event, whether it was undone. Folded at every tap: what was undone is marked where it stands, not collected.
fn gone(sorted: &[&Event]) -> Vec<bool> {
    let mut gone = vec![false; sorted.len()];
    for (at, event) in sorted.iter().enumerate().rev() {
        if let What::Undone { event: target } = &event.what
            && !gone[at]
            && let Ok(target) = sorted.binary_search_by_key(target, |event| event.id)
        {
            gone[target] = true;
        }
    }
    gone
}
