//! What is not on disk yet, in words.

use super::keep::Keep;
use super::model::Model;
use super::parts::counted;
use crate::store::Shelf;

/// Most sets that are named one by one.
const NAMED_MOST: usize = 3;

/// What of the session on the floor waits to be written: its sets by name, or how many changes.
pub fn waits(model: &Model, keep: &Keep) -> String {
    let keys = keep.waiting_on(Shelf::Events);
    let sets = model.session.as_ref().map(|session| {
        let state = session.state();
        let is_waiting = |id: String| keys.contains(&id);
        let slots = state.slots.iter().filter(|slot| {
            slot.logged()
                .is_some_and(|logged| is_waiting(logged.event.0.to_string()))
        });
        let names = slots.map(|slot| {
            let planned = &slot.planned;
            format!(
                "{} {} {} of {}",
                state.block_of(slot).exercise.name,
                planned.kind.name(),
                planned.number,
                planned.of
            )
        });
        names.collect::<Vec<_>>()
    });
    let sets = sets.unwrap_or_default();
    match sets.len() {
        0 => format!("Not saved: {}.", counted(model.unsaved, "change")),
        n if n > NAMED_MOST => format!(
            "Not saved: {}, and {} more.",
            sets[..NAMED_MOST].join(", "),
            n - NAMED_MOST
        ),
        _ => format!("Not saved: {}.", sets.join(", ")),
    }
}
