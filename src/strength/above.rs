//! What is above the lifter and could come down on them.

use crate::sheet::{Block, Equipment, LoadBasis, Pattern};

/// A load above or on the lifter.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Above {
    /// A bar, which safety bars would catch.
    Bar,
    /// Dumbbells or the like, which nothing catches.
    Weights,
}

/// Exercises with a bar above or on the lifter whose pattern does not say so.
const UNDER_A_BAR: [&str; 2] = ["good-morning", "lying-triceps-extension"];
/// The same of what is held in the hands.
const UNDER_WEIGHTS: [&str; 4] = [
    "dumbbell-fly",
    "dumbbell-pullover",
    "overhead-triceps-extension",
    "turkish-get-up",
];
/// Its bar stands on the floor with one end.
const AT_THE_FLOOR: &str = "landmine-press";

/// What is above the lifter in that block: bars in squats and presses, weights in presses. Rows, raises, curls, carries and
/// lifts from the floor are put down.
///
/// Common practice, no source.
#[must_use]
pub fn above(block: &Block) -> Option<Above> {
    let id = block.exercise.id.as_str();
    if !is_held(block) || id == AT_THE_FLOOR {
        return None;
    }
    let squats = is_pattern(block, &[Pattern::Squat], "squat");
    let presses = is_pattern(block, &[Pattern::PushAcross, Pattern::PushUpward], "press");
    match block.exercise.equipment {
        Equipment::Dumbbell | Equipment::Handle => {
            (presses || UNDER_WEIGHTS.contains(&id)).then_some(Above::Weights)
        }
        _ => (squats || presses || UNDER_A_BAR.contains(&id)).then_some(Above::Bar),
    }
}

/// Whether it is of those patterns. One that nobody knows is of one joint until somebody says more: there its name tells.
fn is_pattern(block: &Block, patterns: &[Pattern], word: &str) -> bool {
    let exercise = &block.exercise;
    let named = || exercise.id.as_str().split('-').any(|part| part == word);
    patterns.contains(&exercise.pattern) || (exercise.pattern == Pattern::SingleJoint && named())
}

/// Whether a load is held or carried: not a stack, a band or the body alone.
pub(super) fn is_held(block: &Block) -> bool {
    let held = !matches!(
        block.exercise.equipment,
        Equipment::Stack | Equipment::Band | Equipment::Body
    );
    held && block.basis != LoadBasis::Unloaded
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::strength::propose::tests::block;

    fn of(id: &str, pattern: &str, equipment: &str) -> Option<Above> {
        let exercise = serde_json::json!({"id": id, "name": "Some", "pattern": pattern, "equipment": equipment});
        above(&block(serde_json::json!({"exercise": exercise})))
    }

    #[test]
    fn bars_are_above_in_squats_and_presses_and_weights_in_presses() {
        let (bar, weights) = (Some(Above::Bar), Some(Above::Weights));
        for (id, pattern, equipment, is) in [
            ("front-squat", "squat", "barbell", bar),
            ("bench-press", "push_across", "barbell", bar),
            ("good-morning", "hinge", "barbell", bar),
            ("pin-press", "single_joint", "other", bar),
            ("dumbbell-bench-press", "push_across", "handle", weights),
            ("dumbbell-fly", "single_joint", "dumbbell", weights),
            ("goblet-squat", "squat", "dumbbell", None),
            ("one-arm-dumbbell-row", "pull_across", "dumbbell", None),
            ("lateral-raise", "single_joint", "dumbbell", None),
            ("barbell-curl", "single_joint", "barbell", None),
            ("deadlift", "hinge", "barbell", None),
            ("landmine-press", "push_upward", "other", None),
            ("cable-chest-press", "push_across", "stack", None),
            ("push-up", "push_across", "body", None),
        ] {
            assert_eq!(of(id, pattern, equipment), is, "{id}");
        }
    }
}
