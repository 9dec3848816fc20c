//! Fields that several reasons share, read by one piece of code each: the derived reader would hold them once a reason.

use super::moved::Moved;
use crate::units::{Load, Reps, Rir};
use serde::{Deserialize, Deserializer};

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct MovedForm {
    moved: Moved,
}

/// `{moved}`.
pub(super) fn moved<'de, D: Deserializer<'de>>(source: D) -> Result<Moved, D::Error> {
    Ok(MovedForm::deserialize(source)?.moved)
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct MadeForm {
    wanted: Load,
    to: Load,
}

/// `{wanted, to}`.
pub(super) fn made<'de, D: Deserializer<'de>>(source: D) -> Result<(Load, Load), D::Error> {
    let form = MadeForm::deserialize(source)?;
    Ok((form.wanted, form.to))
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RangedForm {
    reps: Vec<Reps>,
    low: Reps,
    top: Reps,
    moved: Moved,
}

/// `{reps, low, top, moved}`.
pub(super) fn ranged<'de, D: Deserializer<'de>>(
    source: D,
) -> Result<(Vec<Reps>, Reps, Reps, Moved), D::Error> {
    let form = RangedForm::deserialize(source)?;
    Ok((form.reps, form.low, form.top, form.moved))
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct ReserveForm {
    reserve: Rir,
    aim: Rir,
    moved: Moved,
}

/// `{reserve, aim, moved}`.
pub(super) fn reserve<'de, D: Deserializer<'de>>(source: D) -> Result<(Rir, Rir, Moved), D::Error> {
    let form = ReserveForm::deserialize(source)?;
    Ok((form.reserve, form.aim, form.moved))
}
