//! What lies on the bar, and what to change on it: the plate plan of what is left, followed set by set.
//!
//! The state keeps no plates. What lies on the bar now follows from the sets that were logged: before each of them the
//! plan began again, from what lay there, over that set and those after it. So the change that is shown is the one from
//! the loading that was shown before, even where the loads took another turn since. Where two lifters take turns at one
//! rack, the sets of both are followed, and the plan goes over those to come in turn.

use super::event::EventId;
use super::pair::{goes, in_turn};
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
    /// The set that is to be loaded for.
    pub slot: &'a Slot,
    /// The estimate of the exercise that a set of a state is done as, where it is known.
    pub e1rm: &'a dyn Fn(&State, &Slot) -> Option<Load>,
    /// The session of the other lifter at the rack.
    pub other: Option<&'a State>,
}

/// A set of one of both, with its load.
struct Loaded<'a> {
    event: EventId,
    /// Whose it is, and who the other is.
    state: &'a State,
    other: Option<&'a State>,
    slot: &'a Slot,
    load: Load,
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
        let mut plan = self.plan_from(means, means.other, (means.slot, load), lies.as_ref(), None);
        let change = plan.changes.swap_remove(0);
        (
            plan.loadings.swap_remove(0),
            change.filter(|_| lies.is_some()),
        )
    }

    /// The sets of this session that were logged on that equipment.
    fn loaded<'a>(
        &'a self,
        other: Option<&'a State>,
        equipment: Equipment,
    ) -> impl Iterator<Item = Loaded<'a>> {
        let slots = self.slots.iter();
        let on_it = slots.filter(move |slot| self.equipment(slot) == equipment);
        on_it.filter_map(move |slot| {
            let logged = slot.logged()?;
            Some(Loaded {
                event: logged.event,
                state: self,
                other,
                slot,
                load: logged.done.load?,
            })
        })
    }

    /// What lies on the bar after the sets that were logged.
    fn lies(&self, means: &Means<'_>) -> Option<Loading> {
        let equipment = self.equipment(means.slot);
        let mut logged: Vec<Loaded<'_>> = self.loaded(means.other, equipment).collect();
        if let Some(other) = means.other {
            logged.extend(other.loaded(Some(self), equipment));
        }
        order::by_key(&mut logged, |set| set.event);
        let mut lies: Option<Loading> = None;
        for set in logged {
            // Equal loads are not changed, so nothing need be planned for them.
            if lies.as_ref().is_none_or(|lies| lies.load() != set.load) {
                let this = (set.slot, set.load);
                let event = Some(set.event);
                let plan = set
                    .state
                    .plan_from(means, set.other, this, lies.as_ref(), event);
                lies = plan.loadings.into_iter().next().flatten();
            }
        }
        lies
    }

    /// The plan from `lies` over `slot` with `load` and the sets after it on the same equipment in its group, as they
    /// are prescribed with what was done before `event`; those of the other lifter in turn between them.
    fn plan_from(
        &self,
        means: &Means<'_>,
        other: Option<&State>,
        (slot, load): (&Slot, Load),
        lies: Option<&Loading>,
        event: Option<EventId>,
    ) -> Plan {
        let equipment = self.equipment(slot);
        let own = self.to_come(equipment, slot, event);
        let this = Some((slot, load));
        let loads = self.loads(means, &own, this, event);
        let loads = match other {
            None => loads.concat(),
            Some(other) => {
                let theirs = other.next_of(event).map_or_else(Vec::new, |next| {
                    let slots = other.to_come(equipment, next, event);
                    other.loads(means, &slots, None, event)
                });
                in_turn(loads, theirs)
            }
        };
        means.kit.plan(equipment, lies, &loads)
    }

    /// The set that was next before `event`: the one after the last that was done. Sets that were skipped are as if they
    /// still came: when they were skipped is not known any more.
    fn next_of(&self, event: Option<EventId>) -> Option<&Slot> {
        let last = self.slots.iter().rposition(|slot| was_done(slot, event));
        let after = last.map_or(0, |last| last + 1);
        self.slots.get(after)
    }

    /// `from` and the sets after it on that equipment in its group that were not done before `event`, parted into what is
    /// done without a rest between.
    fn to_come(
        &self,
        equipment: Equipment,
        from: &Slot,
        event: Option<EventId>,
    ) -> Vec<Vec<&Slot>> {
        let key = from.planned.key;
        let after = self
            .slots
            .iter()
            .skip_while(|other| other.planned.key != key)
            .filter(|other| other.planned.group == from.planned.group)
            .filter(|other| self.equipment(other) == equipment)
            .filter(|other| other.planned.key == key || !was_done(other, event));
        goes(after.collect())
    }

    /// The loads of sets to come, as they are prescribed with what was done before `event` and, of `this` one, the load
    /// that it has; sets without a load are left out.
    fn loads(
        &self,
        means: &Means<'_>,
        slots: &[Vec<&Slot>],
        this: Option<(&Slot, Load)>,
        event: Option<EventId>,
    ) -> Vec<Vec<Load>> {
        let load_of = |other: &Slot| {
            let block = self.block_of(other);
            let base = self.proposal(other).map_or(None.into(), Base::from);
            let maximum = self.maximum((means.e1rm)(self, other));
            let mut done = self.done_of(other, event);
            if let Some((slot, load)) = this {
                if slot.planned.key == other.planned.key {
                    return Some(load);
                }
                if slot.planned.key.block == other.planned.key.block && self.is_alike(slot, block) {
                    done.push(DoneSet {
                        key: slot.planned.key,
                        load: Some(load),
                        reps: None,
                        reserve: None,
                    });
                }
            }
            set_load(block, &other.planned, base, &done, maximum, means.kit).load
        };
        let goes = slots.iter();
        goes.map(|go| go.iter().copied().filter_map(load_of).collect())
            .collect()
    }
}

/// Whether a set was logged before `event`, or at all.
fn was_done(slot: &Slot, event: Option<EventId>) -> bool {
    let before = |logged: &Logged| event.is_none_or(|event| logged.event < event);
    slot.logged().is_some_and(before)
}
