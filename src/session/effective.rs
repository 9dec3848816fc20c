//! Which events count: all but those undone, in the order of their ids.

use super::event::{Event, EventId, What};
use crate::order;
use crate::order::Set;

/// The events that count, by rising id, each once; undone ones and the undoing itself left out.
///
/// An undo may itself be undone: from the newest to the oldest, an undo that still counts takes its target away.
#[must_use]
pub fn effective(events: &[Event]) -> Vec<&Event> {
    let mut sorted = sorted(events);
    let gone = gone(&sorted);
    sorted.retain(|event| !gone.contains(&event.id) && !matches!(event.what, What::Undone { .. }));
    sorted
}

/// The undos that count: those that were not undone themselves.
pub(super) fn undos(events: &[Event]) -> Vec<&Event> {
    let mut sorted = sorted(events);
    let gone = gone(&sorted);
    sorted.retain(|event| !gone.contains(&event.id) && matches!(event.what, What::Undone { .. }));
    sorted
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

/// What was undone.
fn gone(sorted: &[&Event]) -> Set<EventId> {
    let mut gone: Set<EventId> = Set::new();
    for event in sorted.iter().rev() {
        if let What::Undone { event: target } = &event.what
            && !gone.contains(&event.id)
        {
            gone.insert(*target);
        }
    }
    gone
}
