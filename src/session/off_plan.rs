//! How the set that was logged last differs from what it asked for, in words.

use super::slot::{Logged, Slot};
use super::state::State;
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
        (!said.is_empty()).then(|| format!("Off plan: {}.", said.join("; ")))
    }
}

fn reps(slot: &Slot, logged: &Logged) -> Option<String> {
    let asked = slot.planned.target.plain_reps()?;
    let done = logged.done.amount.reps()?;
    let above = match asked {
        RepTarget::Fixed(top) | RepTarget::Range(_, top) => done > top,
        RepTarget::AtLeast(_) => false,
    };
    (above || done < asked.low()).then(|| format!("{done} reps where {asked} were asked"))
}

fn load(basis: &LoadBasis, logged: &Logged, unit: Unit) -> Option<String> {
    let (done, proposed): (Load, Load) = (logged.done.load?, logged.proposed?);
    let by = match done.cmp(&proposed) {
        std::cmp::Ordering::Equal => return None,
        std::cmp::Ordering::Less => "below",
        std::cmp::Ordering::Greater => "above",
    };
    let what = if basis.assists() {
        "assistance"
    } else {
        "load"
    };
    Some(format!("{what} {by} the {} proposed", proposed.shown(unit)))
}

fn reserve(slot: &Slot, logged: &Logged) -> Option<String> {
    let (done, aim) = (logged.done.reserve?, slot.planned.reserve?);
    (done < aim).then(|| format!("{done} in reserve where {aim} were aimed at"))
}
