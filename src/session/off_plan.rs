//! How the set that was logged last differs from what it asked for, in words.

use super::slot::{Logged, Slot};
use super::state::State;
use crate::say;
use crate::sheet::{LoadBasis, RepTarget};
use crate::units::{Load, Unit};

impl State {
    /// How the set that was logged last differs from its plan; none where it does not. What follows from it is the
    /// because of the next set.
    ///
    /// Another number of reps than was asked for, another load than was proposed, or a reserve below the one aimed at.
    /// More in reserve than aimed at is no fault and is not told.
    #[must_use]
    pub fn off_plan(&self, unit: Unit) -> Option<String> {
        let slot = self.last_logged()?;
        let logged = slot.logged()?;
        let basis = &self.block_of(slot).basis;
        let said: Vec<String> = [
            reps(slot, logged),
            load(basis, logged, unit),
            reserve(slot, logged),
        ]
        .into_iter()
        .flatten()
        .collect();
        (!said.is_empty()).then(|| say!("Off plan: {what}.", what = said.join("; ")))
    }
}

fn reps(slot: &Slot, logged: &Logged) -> Option<String> {
    let asked = slot.planned.target.plain_reps()?;
    let done = logged.done.amount.reps()?;
    let above = match asked {
        RepTarget::Fixed(top) | RepTarget::Range(_, top) => done > top,
        RepTarget::AtLeast(_) => false,
    };
    (above || done < asked.low()).then(|| say!("{done} reps where {asked} were asked", done, asked))
}

fn load(basis: &LoadBasis, logged: &Logged, unit: Unit) -> Option<String> {
    let (done, proposed): (Load, Load) = (logged.done.load?, logged.proposed?);
    if done == proposed {
        return None;
    }
    let load = proposed.shown(unit);
    Some(match (basis.assists(), done < proposed) {
        (true, true) => say!("assistance below the {load} proposed", load),
        (true, false) => say!("assistance above the {load} proposed", load),
        (false, true) => say!("load below the {load} proposed", load),
        (false, false) => say!("load above the {load} proposed", load),
    })
}

fn reserve(slot: &Slot, logged: &Logged) -> Option<String> {
    let (done, aim) = (logged.done.reserve?, slot.planned.reserve?);
    (done < aim).then(|| say!("{done} in reserve where {aim} were aimed at", done, aim))
}
