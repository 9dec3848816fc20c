//! A best of a hold, a carry or a set in stages in words.

use super::best_words::carried;
use super::much::Much;
use crate::say;
use crate::sheet::LoadBasis;
use crate::units::{Load, Unit};

impl Much {
    /// The same with its load: “45 s at 10 kg”, “20 m, band: light”.
    #[must_use]
    pub fn said_at(self, basis: &LoadBasis, load: Load, unit: Unit) -> String {
        let amount = self.said();
        let shown = || load.shown(unit);
        match (basis, basis.nothing().filter(|_| load.is_zero())) {
            (_, Some(nothing)) => format!("{amount}, {nothing}"),
            (LoadBasis::External, None) => say!("{amount} at {load}", amount, load = shown()),
            (LoadBasis::BodyMassMinus, None) => {
                say!("{amount} with {load} of assistance", amount, load = shown())
            }
            (LoadBasis::BodyMassPlus | LoadBasis::BodyMassShare(_), None) => {
                format!("{amount}, +{}", shown())
            }
            (LoadBasis::Band(_) | LoadBasis::Unloaded, None) => match basis.band() {
                Some(band) => format!("{amount}, {band}"),
                None => amount,
            },
        }
    }
}

/// The best in a few words, for a line on the floor.
pub(super) fn brief(
    basis: &LoadBasis,
    (load, much): (Load, Much),
    load_before: Option<Load>,
    unit: Unit,
) -> String {
    let done = much.said_at(basis, load, unit);
    let reps = much.said();
    match (load_before, much) {
        (Some(_), _) if basis.assists() => say!("{done}, least at {reps}", done, reps),
        (Some(_), _) => say!("{done}, most at {reps}", done, reps),
        (None, Much::Held(_)) => say!("{done}, longest", done),
        (None, Much::Carried(_)) => say!("{done}, farthest", done),
        (None, Much::Reps(_) | Much::Staged(_)) => say!("{done}, most reps", done),
    }
}

/// The best in one sentence, with what was best before.
pub(super) fn sentence(
    basis: &LoadBasis,
    (load, much): (Load, Much),
    (load_before, much_before): (Option<Load>, Option<Much>),
    unit: Unit,
) -> String {
    let done = much.said_at(basis, load, unit);
    let heaviest = load_before.map(|before| {
        let (amount, before) = (much.said(), carried(basis, before, unit));
        if basis.assists() {
            say!("the least at {amount}, {before} before", amount, before)
        } else {
            say!("the heaviest at {amount}, {before} before", amount, before)
        }
    });
    let most = much_before.map(|before| most_at(basis, before));
    match (heaviest, most) {
        (Some(heaviest), Some(most)) => format!("{done}: {heaviest}; {most}"),
        (Some(only), None) | (None, Some(only)) => format!("{done}: {only}"),
        (None, None) if matches!(much, Much::Carried(_)) => {
            say!("{done}: harder and farther than any before", done)
        }
        (None, None) => say!("{done}: harder and longer than any before", done),
    }
}

/// That it is the most at its load, and what was that before.
fn most_at(basis: &LoadBasis, most: Much) -> String {
    let before = most.said();
    match (most, basis.has_load()) {
        (Much::Held(_), true) => say!("the longest at it, {before} before", before),
        (Much::Held(_), false) => say!("the longest, {before} before", before),
        (Much::Carried(_), true) => say!("the farthest at it, {before} before", before),
        (Much::Carried(_), false) => say!("the farthest, {before} before", before),
        (Much::Reps(_) | Much::Staged(_), loaded) => {
            let before = most.get();
            if loaded {
                say!("the most reps at it, {before} before", before)
            } else {
                say!("the most reps, {before} before", before)
            }
        }
    }
}
