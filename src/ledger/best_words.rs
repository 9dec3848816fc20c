//! A best in one plain sentence.

use super::bests::Best;
use crate::sheet::LoadBasis;
use crate::strength::Curve;
use crate::units::{Load, Reps, Unit};

impl Best {
    /// True when it is to be told to a lifter whose curve that is.
    #[must_use]
    pub fn counts(&self, lifters: Curve) -> bool {
        match self {
            Best::E1rm { curve, .. } => *curve == lifters,
            Best::Set { .. } | Best::Volume { .. } => true,
        }
    }

    /// The same in a few words, for a line on the floor.
    #[must_use]
    pub fn brief(&self, unit: Unit) -> String {
        match self {
            Best::Set {
                basis,
                load,
                reps,
                load_before,
                ..
            } => {
                let what = done(basis, *load, *reps, unit);
                let how = match load_before {
                    Some(_) if basis.assists() => format!("least at {reps}"),
                    Some(_) if basis.has_load() => format!("most at {reps}"),
                    _ => "most reps".to_owned(),
                };
                format!("{what}, {how}")
            }
            Best::E1rm { e1rm, .. } => {
                format!("e1RM {}, beyond noise", e1rm.round(1).shown(unit))
            }
            Best::Volume { volume, .. } => format!("{}, most in a session", volume.shown(unit)),
        }
    }

    /// The sentence, loads in `unit`.
    #[must_use]
    pub fn sentence(&self, unit: Unit) -> String {
        match self {
            Best::Set {
                basis,
                load,
                reps,
                load_before,
                reps_before,
            } => set(basis, (*load, *reps), (*load_before, *reps_before), unit),
            Best::E1rm {
                e1rm,
                before,
                detectable,
                ..
            } => format!(
                "e1RM {}: above {} by more than noise (from {} % on it can be told)",
                e1rm.round(1).shown(unit),
                before.round(1).shown(unit),
                (detectable + 50) / 100
            ),
            Best::Volume { volume, before } => format!(
                "{} of volume load: the most in a session, {} before",
                volume.shown(unit),
                before.shown(unit)
            ),
        }
    }
}

fn set(
    basis: &LoadBasis,
    (load, reps): (Load, Reps),
    (load_before, reps_before): (Option<Load>, Option<Reps>),
    unit: Unit,
) -> String {
    let carried = |load| carried(basis, load, unit);
    let what = done(basis, load, reps, unit);
    let hardest = if basis.assists() { "least" } else { "most" };
    let at_reps = load_before.filter(|_| basis.has_load()).map(|before| {
        let before = carried(before);
        format!("the {hardest} at {reps} {}, {before} before", rep(reps))
    });
    let at_load = reps_before.map(|before| {
        let at = if basis.has_load() { " at it" } else { "" };
        format!("the most reps{at}, {before} before")
    });
    match (at_reps, at_load) {
        (Some(at_reps), Some(at_load)) => format!("{what}: {at_reps}; {at_load}"),
        (Some(only), None) | (None, Some(only)) => format!("{what}: {only}"),
        (None, None) => format!("{what}: harder and longer than any before"),
    }
}

/// A load as its basis says it.
fn carried(basis: &LoadBasis, load: Load, unit: Unit) -> String {
    match basis {
        LoadBasis::External => load.shown(unit),
        LoadBasis::BodyMassMinus => format!("{} of assistance", load.shown(unit)),
        _ => format!("+{}", load.shown(unit)),
    }
}

/// Load and reps of a set.
fn done(basis: &LoadBasis, load: Load, reps: Reps, unit: Unit) -> String {
    if basis.has_load() {
        format!("{} for {reps}", carried(basis, load, unit))
    } else {
        format!("{reps} {}", rep(reps))
    }
}

fn rep(count: Reps) -> &'static str {
    if count.get() == 1 { "rep" } else { "reps" }
}
