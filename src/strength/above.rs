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

/// Exercises with a load above or on the lifter whose pattern and name do not say so; the equipment, which may be swapped,
/// says what it is.
const UNDER: [&str; 7] = [
    "dumbbell-fly",
    "dumbbell-pullover",
    "good-morning",
    "lying-triceps-extension",
    "overhead-squat",
    "overhead-triceps-extension",
    "turkish-get-up",
];
/// Parts of names that end with the load above the lifter. A clean ends at the shoulders with a free way down, a swing in
/// front.
const OVERHEAD: [&str; 4] = ["press", "jerk", "thruster", "snatch"];
/// Its bar stands on the floor with one end.
const AT_THE_FLOOR: &str = "landmine-press";

/// What is above the lifter in that block: bars in squats and presses, weights in presses; explosive lifts that end overhead
/// among them. Rows, raises, curls, carries, swings and lifts from the floor are put down.
///
/// Common practice, no source.
#[must_use]
pub fn above(block: &Block) -> Option<Above> {
    let id = block.exercise.id.as_str();
    if !is_held(block) || id == AT_THE_FLOOR {
        return None;
    }
    let squats = is_pattern(block, &[Pattern::Squat], &["squat"]);
    let upward = [Pattern::PushAcross, Pattern::PushUpward];
    let over = is_pattern(block, &upward, &OVERHEAD) || UNDER.contains(&id);
    match block.exercise.equipment {
        Equipment::Dumbbell | Equipment::Handle => over.then_some(Above::Weights),
        _ => (squats || over).then_some(Above::Bar),
    }
}

/// Whether it is of those patterns. One that nobody knows is of one joint until somebody says more, and explosive is said of
/// jumps and of jerks: there its name tells.
fn is_pattern(block: &Block, patterns: &[Pattern], words: &[&str]) -> bool {
    let (pattern, id) = (block.exercise.pattern, block.exercise.id.as_str());
    let named = || id.split('-').any(|part| words.contains(&part));
    let by_name = matches!(pattern, Pattern::SingleJoint | Pattern::Explosive);
    patterns.contains(&pattern) || (by_name && named())
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
            ("push-press", "explosive", "barbell", bar),
            ("push-jerk", "explosive", "barbell", bar),
            ("thruster", "explosive", "barbell", bar),
            ("thruster", "explosive", "dumbbell", weights),
            ("clean-and-jerk", "explosive", "barbell", bar),
            ("power-snatch", "explosive", "barbell", bar),
            ("kettlebell-snatch", "explosive", "dumbbell", weights),
            ("lying-triceps-extension", "single_joint", "barbell", bar),
            (
                "lying-triceps-extension",
                "single_joint",
                "dumbbell",
                weights,
            ),
            ("lying-triceps-extension", "single_joint", "handle", weights),
            (
                "overhead-triceps-extension",
                "single_joint",
                "dumbbell",
                weights,
            ),
            ("overhead-triceps-extension", "single_joint", "barbell", bar),
            ("dumbbell-pullover", "pull_downward", "barbell", bar),
            ("overhead-squat", "squat", "dumbbell", weights),
            ("turkish-get-up", "trunk", "dumbbell", weights),
            ("power-clean", "explosive", "barbell", None),
            ("clean-pull", "explosive", "barbell", None),
            ("kettlebell-swing", "explosive", "dumbbell", None),
            ("medicine-ball-slam", "explosive", "other", None),
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
