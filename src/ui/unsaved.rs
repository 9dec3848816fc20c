//! What is not on disk yet, in words.

use super::keep::Keep;
use super::model::Model;
use crate::say;
use crate::session::State;
use crate::store::Shelf;
use crate::words::many;

/// Most sets that are named one by one.
const NAMED_MOST: usize = 4;

/// What of the session on the floor waits to be written: its sets by name, or how many changes.
pub fn waits(model: &Model, keep: &Keep, unsaved: usize) -> String {
    let keys = keep.waiting_on(Shelf::Events);
    let session = model.session.as_ref();
    let sets = session.map_or_else(Vec::new, |session| sets_of(session.state(), &keys));
    if sets.is_empty() {
        return many(unsaved, "Not saved: {n} change.", "Not saved: {n} changes.");
    }
    let mut said = String::new();
    let mut before = String::new();
    for (at, (name, number)) in sets.iter().take(NAMED_MOST).enumerate() {
        if at > 0 {
            said.push_str(", ");
        }
        if *name != before {
            said.push_str(name);
            said.push(' ');
            before.clone_from(name);
        }
        said.push_str(&number.to_string());
    }
    if sets.len() > NAMED_MOST {
        let more = sets.len() - NAMED_MOST;
        return say!("Not saved: {sets} and {more} more.", sets = said, more);
    }
    say!("Not saved: {sets}.", sets = said)
}

/// The sets that were logged by one of these events: exercise and kind, and the number among the sets of that kind.
fn sets_of(state: &State, events: &[String]) -> Vec<(String, usize)> {
    let slots = state.slots.iter().filter(|slot| {
        slot.logged()
            .is_some_and(|logged| events.contains(&logged.event.0.to_string()))
    });
    let named = slots.map(|slot| {
        let exercise = state.block_of(slot).exercise.said();
        let planned = &slot.planned;
        (
            format!("{exercise} {}", planned.kind.name()),
            planned.number,
        )
    });
    named.collect()
}
