//! A best in one plain sentence.

use super::bests::Best;
use super::much_words::{brief, sentence};
use crate::say;
use crate::sheet::LoadBasis;
use crate::strength::{Curve, maximum_said};
use crate::units::{Load, Reps, Unit};
use crate::words::{many, many_of};
use std::fmt::Display;

impl Best {
    /// True when it is to be told to a lifter whose curve that is.
    #[must_use]
    pub fn counts(&self, lifters: Curve) -> bool {
        match self {
            Best::E1rm { curve, .. } => *curve == lifters,
            Best::Set { .. } | Best::Much { .. } | Best::Volume { .. } => true,
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
                match load_before {
                    Some(_) if basis.assists() => {
                        say!("{done}, least at {reps}", done = what, reps)
                    }
                    Some(_) if basis.has_load() => {
                        say!("{done}, most at {reps}", done = what, reps)
                    }
                    _ => say!("{done}, most reps", done = what),
                }
            }
            Best::Much {
                basis,
                load,
                much,
                load_before,
                ..
            } => brief(basis, (*load, *much), *load_before, unit),
            Best::E1rm { e1rm, .. } => {
                say!(
                    "estimated maximum {load} by this session alone, beyond noise",
                    load = maximum_said(*e1rm, unit)
                )
            }
            Best::Volume { volume, .. } => {
                say!(
                    "{volume} of volume load, most in a session",
                    volume = volume.shown(unit)
                )
            }
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
            Best::Much {
                basis,
                load,
                much,
                load_before,
                much_before,
            } => sentence(basis, (*load, *much), (*load_before, *much_before), unit),
            Best::E1rm {
                e1rm,
                before,
                detectable,
                ..
            } => say!(
                "estimated maximum {load} by this session alone: above the {before} of an earlier one by more than noise (between two sessions told from {bound} % on)",
                load = maximum_said(*e1rm, unit),
                before = maximum_said(*before, unit),
                bound = (detectable + 50) / 100
            ),
            Best::Volume { volume, before } => say!(
                "{volume} of volume load: the most in a session, {before} before",
                volume = volume.shown(unit),
                before = before.shown(unit)
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
    let at_reps = load_before.filter(|_| basis.has_load()).map(|before| {
        let before = carried(before);
        let places: [(&str, &dyn Display); 1] = [("before", &before)];
        let n = usize::from(reps.get());
        if basis.assists() {
            many_of(
                n,
                "the least at {n} rep, {before} before",
                "the least at {n} reps, {before} before",
                &places,
            )
        } else {
            many_of(
                n,
                "the most at {n} rep, {before} before",
                "the most at {n} reps, {before} before",
                &places,
            )
        }
    });
    let at_load = reps_before.map(|before| {
        if basis.has_load() {
            say!("the most reps at it, {before} before", before)
        } else {
            say!("the most reps, {before} before", before)
        }
    });
    match (at_reps, at_load) {
        (Some(at_reps), Some(at_load)) => format!("{what}: {at_reps}; {at_load}"),
        (Some(only), None) | (None, Some(only)) => format!("{what}: {only}"),
        (None, None) => say!("{done}: harder and longer than any before", done = what),
    }
}

/// A load as its basis says it.
pub(super) fn carried(basis: &LoadBasis, load: Load, unit: Unit) -> String {
    match basis {
        _ if load.is_zero() => basis.shown(load, unit),
        LoadBasis::External => load.shown(unit),
        LoadBasis::BodyMassMinus => say!("{load} of assistance", load = load.shown(unit)),
        _ => format!("+{}", load.shown(unit)),
    }
}

/// Load and reps of a set.
fn done(basis: &LoadBasis, load: Load, reps: Reps, unit: Unit) -> String {
    let alone = || many(usize::from(reps.get()), "{n} rep", "{n} reps");
    match basis.nothing().filter(|_| load.is_zero()) {
        Some(nothing) => format!("{}, {nothing}", alone()),
        None if basis.has_load() => {
            say!("{load} for {reps}", load = carried(basis, load, unit), reps)
        }
        // Only sets with one band compare, so it is named.
        None => match basis.band() {
            Some(band) => format!("{}, {band}", alone()),
            None => alone(),
        },
    }
}
