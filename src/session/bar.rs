//! What lies on the bar, and what to change on it: the plate plan of what is left, followed set by set.
//!
//! The state keeps no plates. What lies on the bar now follows from the sets that were logged: before each of them the
//! plan began anew, from what lay there, over that set and those after it. So the change that is shown is the one from
//! the loading that was shown before, even where the loads took another turn since.

use super::event::EventId;
use super::slot::{Logged, Slot};
use super::state::State;
use crate::kit::{Change, Kit, Loading, Plan};
use crate::order;
use crate::sheet::Equipment;
use crate::strength::{Base, DoneSet, set_load};
use crate::units::Load;

/// What the loads to come are worked out from.
pub(super) struct Means<'a> {
    /// The kit.
    pub kit: &'a Kit,
    /// The block that `e1rm` belongs to.
    pub slot: &'a Slot,
    /// The estimate of its exercise.
    pub e1rm: Option<Load>,
}

impl State {
    fn equipment(&self, slot: &Slot) -> Equipment {
        self.block_of(slot).exercise.equipment
    }

    /// The plates for the means' slot with `load`, and what to change on the bar for them: no change where it is not
    /// known what lies there, as before the first set of a session and after a load that the kit cannot make.
    pub(super) fn on_bar(
        &self,
        means: &Means<'_>,
        load: Load,
    ) -> (Option<Loading>, Option<Change>) {
        let lies = self.lies(means);
        let mut plan = self.plan_from(means, means.slot, load, lies.as_ref(), None);
        let change = plan.changes.swap_remove(0);
        (
            plan.loadings.swap_remove(0),
            change.filter(|_| lies.is_some()),
        )
    }

    /// What lies on the bar after the sets that were logged.
    fn lies(&self, means: &Means<'_>) -> Option<Loading> {
        let equipment = self.equipment(means.slot);
        let mut logged: Vec<(EventId, &Slot, Load)> = self
            .slots
            .iter()
            .filter(|slot| self.equipment(slot) == equipment)
            .filter_map(|slot| {
                let logged = slot.logged()?;
                Some((logged.event, slot, logged.done.load?))
            })
            .collect();
        order::by_key(&mut logged, |(event, ..)| *event);
        let mut lies: Option<Loading> = None;
        for (event, slot, load) in logged {
            // Equal loads are not changed, so nothing need be planned for them.
            if lies.as_ref().is_none_or(|lies| lies.load() != load) {
                let plan = self.plan_from(means, slot, load, lies.as_ref(), Some(event));
                lies = plan.loadings.into_iter().next().flatten();
            }
        }
        lies
    }

    /// The plan from `lies` over `slot` with `load` and the sets after it on the same equipment in its group, as they
    /// are prescribed with what was done before `event`.
    fn plan_from(
        &self,
        means: &Means<'_>,
        slot: &Slot,
        load: Load,
        lies: Option<&Loading>,
        event: Option<EventId>,
    ) -> Plan {
        let equipment = self.equipment(slot);
        let this = DoneSet {
            key: slot.planned.key,
            load: Some(load),
            reps: None,
            reserve: None,
        };
        let was_done = |other: &Slot| {
            let before = |logged: &Logged| event.is_none_or(|event| logged.event < event);
            other.planned.key == slot.planned.key || other.logged().is_some_and(before)
        };
        let after = self
            .slots
            .iter()
            .skip_while(|other| other.planned.key != slot.planned.key)
            .filter(|other| other.planned.group == slot.planned.group)
            .filter(|other| self.equipment(other) == equipment && !was_done(other));
        let mut loads = vec![load];
        loads.extend(after.filter_map(|other| {
            let block = self.block_of(other);
            let base = self.proposal(other).map_or(None.into(), Base::from);
            let own = self.is_alike(other, self.block_of(means.slot));
            let maximum = self.maximum(means.e1rm.filter(|_| own));
            let mut done = self.done_of(other, event);
            if slot.planned.key.block == other.planned.key.block && self.is_alike(slot, block) {
                done.push(this.clone());
            }
            set_load(block, &other.planned, base, &done, maximum, means.kit).load
        }));
        means.kit.plan(equipment, lies, &loads)
    }
}
