//! Another band for what is left of a block: a swap in which the exercise stays.

use super::slot::Slot;
use super::state::State;
use super::swap::Swap;
use crate::kit::Kit;
use crate::sheet::{Block, Line, LoadBasis, is_same_band};
use crate::strength::{Because, Proposal};

fn label(basis: &LoadBasis) -> Option<&Line> {
    match basis {
        LoadBasis::Band(label) => Some(label),
        _ => None,
    }
}

/// Whether two blocks are of one exercise with another band.
pub(super) fn is_other_band(one: &Block, swap: &Swap) -> bool {
    one.exercise.id == swap.exercise.id
        && label(&one.basis)
            .zip(label(&swap.basis))
            .is_some_and(|(one, other)| one != other)
}

impl State {
    /// The band that the exercise of `slot` came with, by the sheet or by a swap, where another one was chosen since.
    #[must_use]
    pub fn band_proposed(&self, slot: &Slot) -> Option<&LoadBasis> {
        let block = self.block_of(slot);
        let written = self.began.sheet.block(block.id).into_iter();
        let swapped = self.swapped.iter().map(|swapped| &swapped.block);
        let mut all = written.chain(swapped.filter(|other| other.id == block.id));
        let first = all.find(|other| other.exercise.id == block.exercise.id)?;
        let bands = label(&first.basis).zip(label(&block.basis));
        bands.filter(|(first, now)| first != now)?;
        Some(&first.basis)
    }

    /// The bands that `slot` may be done with: those of the kit in their order, and before them what was proposed and what is
    /// chosen, where the kit has no band of that name.
    #[must_use]
    pub fn bands(&self, slot: &Slot, kit: &Kit) -> Vec<Line> {
        let kits = &kit.parts().bands;
        let own = self.band_proposed(slot).into_iter();
        let own = own.chain([&self.block_of(slot).basis]).filter_map(label);
        let own = own.filter(|own| !kits.iter().any(|band| is_same_band(band, own)));
        own.chain(kits).cloned().collect()
    }
}

impl Swap {
    /// The same exercise with another band, for all sets of the block of `slot` that are left: nothing else would carry the
    /// choice to the next set, as no load is worked out from a band. None where that band is used, and where none is.
    #[must_use]
    pub fn to_band(state: &State, slot: &Slot, band: &Line) -> Option<Swap> {
        let block = state.block_of(slot);
        if is_same_band(label(&block.basis)?, band) {
            return None;
        }
        // The band that was proposed keeps the name by which it was.
        let proposed = state.band_proposed(slot).and_then(label);
        let band = proposed
            .filter(|label| is_same_band(label, band))
            .unwrap_or(band);
        Some(Swap {
            exercise: block.exercise.clone(),
            basis: LoadBasis::Band(band.clone()),
            sides: block.sides,
            cautions: block.cautions.clone(),
            proposal: state.proposal(slot).cloned().unwrap_or(Proposal {
                block: block.id,
                load: None,
                because: Because::NoLoad {},
            }),
        })
    }
}
