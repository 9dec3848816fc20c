//! A new block, filled with what is usual.

use crate::exercises::is_hold;
use crate::sheet::{
    Block, BlockId, Equipment, Exercise, Line, LoadBasis, Pattern, Role, SideMode, Target,
};
use crate::units::{Metres, Seconds};

/// Seconds of a new hold. Common practice, no source.
const HOLD_SECONDS: i64 = 30;
/// Metres of a new carry. Common practice, no source.
const CARRY_METRES: i64 = 20;

/// A new block of `exercise`, filled with what is usual for its role: power for explosive ones, muscle-building for
/// one joint and the trunk, else strength. `basis`, `sides` and `cautions` are those of the exercise.
#[must_use]
pub fn new_block(
    id: BlockId,
    exercise: Exercise,
    basis: LoadBasis,
    sides: SideMode,
    cautions: Vec<Line>,
) -> Block {
    let role = match (exercise.pattern, exercise.equipment) {
        (Pattern::Explosive, _) => Role::Power,
        (Pattern::SingleJoint | Pattern::Trunk | Pattern::Carry, _)
        | (_, Equipment::Band | Equipment::Body) => Role::Hypertrophy,
        _ => Role::Strength,
    };
    let usual = role.usual();
    let mut line = usual.line();
    let mut tempo = usual.tempo;
    if exercise.pattern == Pattern::Carry {
        line.target = Target::Distance(Metres::saturating(CARRY_METRES));
        line.reserve = Vec::new();
        tempo = None;
    } else if is_hold(&exercise) {
        line.target = Target::Timed(Seconds::saturating(HOLD_SECONDS));
        line.reserve = Vec::new();
        tempo = None;
    }
    Block {
        id,
        exercise,
        role,
        sets: vec![line],
        basis,
        start: None,
        tempo,
        sides,
        rest: usual.rest,
        rest_after: usual.rest,
        cues: Vec::new(),
        cautions,
        progression: usual.progression,
    }
}
