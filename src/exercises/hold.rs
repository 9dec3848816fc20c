//! What is held instead of repeated.

use crate::sheet::{Exercise, Pattern};

/// How the ids of what is held end, of the list and of what people write themselves. Common practice, no source.
const HELD: [&str; 6] = ["plank", "hold", "hang", "wall-sit", "l-sit", "isometric"];

/// Whether a set of `exercise` is a hold: a plank, a hang, a wall sit. A clean from the hang is none.
#[must_use]
pub fn is_hold(exercise: &Exercise) -> bool {
    let ends = |end: &&str| {
        let before = exercise.id.as_str().strip_suffix(*end);
        before.is_some_and(|before| before.is_empty() || before.ends_with('-'))
    };
    exercise.pattern != Pattern::Explosive && HELD.iter().any(ends)
}
