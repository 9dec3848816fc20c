//! What a line means where it is silent.

use crate::sheet::{Equipment, Exercise, ExerciseId, Line, LoadBasis, Pattern, Role, Sets};
use crate::units::Seconds;

/// Most characters of an id made from a name, before its number.
const SLUG_CHARS_MAX: usize = 50;
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

/// An exercise that nobody knows, by its name: an id made from its name, one joint and any load, until the line says more. That
/// is the cautious side: one joint gets the smaller steps.
pub fn named_exercise(name: Line) -> Exercise {
    Exercise {
        id: slug(name.as_str()),
        name,
        pattern: Pattern::SingleJoint,
        equipment: Equipment::Other,
    }
}

/// Small letters, digits and hyphens; with a number made from the whole name where letters were lost, so that names
/// in other scripts stay apart.
fn slug(name: &str) -> ExerciseId {
    let lower = name.to_lowercase();
    let mut id = String::new();
    let mut lost = false;
    for c in lower.chars() {
        if c.is_ascii_alphanumeric() {
            if id.len() < SLUG_CHARS_MAX {
                id.push(c);
            } else {
                lost = true;
            }
        } else {
            lost |= !c.is_ascii();
            if !id.is_empty() && !id.ends_with('-') && id.len() < SLUG_CHARS_MAX {
                id.push('-');
            }
        }
    }
    let mut id = id.trim_end_matches('-').to_owned();
    if lost || id.is_empty() {
        // FNV-1a, 32 bits (Fowler, Noll, Vo): short and the same on every machine.
        let hash = lower.bytes().fold(0x811c_9dc5_u32, |hash, byte| {
            (hash ^ u32::from(byte)).wrapping_mul(0x0100_0193)
        });
        id = format!("{id}-{hash:08x}")
            .trim_start_matches('-')
            .to_owned();
    }
    ExerciseId::new(&id).expect("letters, digits and hyphens, at most 59")
}
