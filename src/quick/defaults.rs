//! What a line means where it is silent.

use crate::sheet::{Equipment, Exercise, ExerciseId, Line, LoadBasis, Named, Pattern, Role, Sets};
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

/// What a line says of that which the load is added to.
#[derive(Default)]
pub(super) enum Said {
    /// Nothing.
    #[default]
    Nothing,
    /// A load without a sign or a word: `60 kg`.
    Load,
    /// A load on top of the body: `+5 kg`.
    Added,
    /// All of it.
    Basis(LoadBasis),
}

/// The usual basis of the exercise that the line names. None where nobody knows it, or where the line makes another
/// one of it: under another id, or with other equipment.
pub(super) fn usual_basis(named: Option<&Named>, exercise: &Exercise) -> Option<LoadBasis> {
    named
        .filter(|named| {
            let loaded_as = named.exercise.equipment.loaded_as();
            named.exercise.id == exercise.id && loaded_as == exercise.equipment.loaded_as()
        })
        .map(|named| named.basis.clone())
}

/// What the load is added to, by what the line says and by what is usual for the exercise. Links are read with no usual
/// one, so what follows without one means the same for ever.
pub(super) fn basis(said: Said, usual: Option<LoadBasis>, equipment: Equipment) -> LoadBasis {
    match (said, usual) {
        (Said::Basis(basis), _) | (Said::Nothing, Some(basis)) => basis,
        (Said::Nothing, None) if equipment == Equipment::Body => LoadBasis::BodyMassPlus,
        (Said::Load, Some(usual)) if usual.has_load() => usual,
        // How much of the body is moved is a matter of the exercise.
        (Said::Added, Some(LoadBasis::BodyMassShare(share))) => LoadBasis::BodyMassShare(share),
        (Said::Added, _) => LoadBasis::BodyMassPlus,
        (Said::Nothing | Said::Load, _) => LoadBasis::External,
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
