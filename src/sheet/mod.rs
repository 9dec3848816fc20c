//! What is to be done: a sheet of blocks, each with its exercise and prescription, and the planned sets it unrolls to.

mod block;
mod cuts;
mod doubt;
mod exercise;
mod form;
mod group;
mod kind;
mod length;
mod loads;
mod progression;
mod ramp;
mod target;
mod tempo;
mod text;
mod unroll;
mod usual;
mod warning;

pub use block::{Block, BlockId, Role, SideMode, moved_part, moved_words};
pub use cuts::{Cut, Off, apply, cuts, worth};
pub use doubt::Doubt;
pub use exercise::{Equipment, Exercise, ExerciseId, Named, Pattern, UnfitId};
pub(crate) use form::SheetForm;
pub(crate) use group::{
    BLOCKS_MAX, BUDGET_MINUTES_MAX, CIRCUIT_BLOCKS_MAX, LINES_MAX, SET_LINES_MAX,
};
pub use group::{Group, Sheet, SheetId, SheetVersion, UnfitSheet};
pub(crate) use kind::LINE_SETS_MAX;
pub use kind::{SetKind, Sets, UnfitSets};
pub use length::{GroupTime, PARTIAL_SECONDS, Prediction, gap_seconds, set_seconds};
pub use loads::{LoadBasis, LoadPolicy, Step, is_any_band, is_same_band};
pub use progression::{Progression, Reach};
pub use ramp::usual_ramp;
pub(crate) use target::STAGES_MAX;
pub use target::{RepTarget, Stage, Target, UnfitReps};
pub use tempo::{Digit, Tempo};
pub(crate) use text::LINE_CHARS_MAX;
pub use text::{Line, Note, UnfitText};
pub use unroll::{Added, PlannedSet, SetKey, unroll, unroll_with};
pub use usual::Usual;
pub use warning::{OrderWarning, WarningKind};

#[cfg(test)]
pub(crate) mod tests {
    use super::Block;

    /// A block of a front squat with these lines of sets, as JSON.
    pub fn block(sets: &str) -> Block {
        let text = format!(
            r#"{{"id":"019b8d2b-8c00-7003-80b0-a7b005e00003","exercise":{{"id":"front-squat","name":"Front squat",
            "pattern":"squat","equipment":"barbell"}},"role":"strength","sets":{sets},"basis":"external","rest":150,"rest_after":150}}"#
        );
        serde_json::from_str(&text).unwrap()
    }
}
