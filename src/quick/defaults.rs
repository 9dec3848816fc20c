//! What a line means where it is silent.

use crate::sheet::{Equipment, Exercise, ExerciseId, Line, LoadBasis, Pattern, Role, Sets};
use crate::units::Seconds;

/// Up to so many reps a block is for strength unless it says otherwise. NSCA, Essentials of Strength Training and
/// Conditioning: strength at most 6 reps, muscle-building 6–12 (from memory).
const STRENGTH_REPS_MAX: u16 = 6;

/// What a block is for when it does not say: strength when its first work sets have at most 6 reps, else
/// muscle-building.
#[must_use]
pub fn default_role(sets: &[Sets]) -> Role {
    let mut work = sets.iter().filter(|sets| sets.kind.is_work());
    let reps = work.find_map(|sets| sets.target.plain_reps());
    match reps {
        Some(reps) if reps.top().get() <= STRENGTH_REPS_MAX => Role::Strength,
        _ => Role::Hypertrophy,
    }
}

/// Rest between sets when the line gives none: what is usual for the role.
#[must_use]
pub fn default_rest(role: Role) -> Seconds {
    role.usual().rest
}

/// What the load is added to when the line does not say.
pub(super) fn default_basis(equipment: Equipment) -> LoadBasis {
    match equipment {
        Equipment::Body => LoadBasis::BodyMassPlus,
        _ => LoadBasis::External,
    }
}

/// An exercise that nobody knows, by its name: an id made from its name, one joint and any load, until the line says
/// more. That is the cautious side: one joint gets the smaller steps.
pub fn named_exercise(name: Line) -> Exercise {
    Exercise {
        id: ExerciseId::of_name(name.as_str()),
        name,
        pattern: Pattern::SingleJoint,
        equipment: Equipment::Other,
    }
}
