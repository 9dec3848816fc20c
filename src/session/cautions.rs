//! Cautions: each is due once for its reason, and all that were shown in the session can be read again.

use super::event::EventId;
use super::jump::Without;
use super::slot::{Logged, Slot};
use super::state::State;
use crate::heat::grip_words;
use crate::sheet::{Block, RepTarget, SetKind, Target};
use crate::strength::{
    Base, Foretold, Performance, Prescribed, Strength, assistance_caution, cautions,
};
use crate::units::Load;

/// What asks for care at one set.
pub(super) struct Heed {
    /// What is said of a load that is a jump.
    pub jump: Option<&'static str>,
    /// The lines that are due; of a jump the board says so itself.
    pub due: Vec<String>,
    /// The lines that may be read again.
    pub known: Vec<String>,
}

/// Puts a line below the others unless it stands there.
fn add(lines: &mut Vec<String>, line: &str) {
    if !lines.iter().any(|stands| stands == line) {
        lines.push(line.to_owned());
    }
}

impl State {
    /// What asks for care at `slot` with `load`.
    pub(super) fn heed(
        &self,
        slot: &Slot,
        load: Option<Load>,
        prescribed: &Prescribed,
        history: &[Performance],
        foretold: Option<&Foretold>,
        strength: Option<Strength>,
    ) -> Heed {
        let block = self.block_of(slot);
        let without = Without {
            guided: prescribed.guided,
            prescribed: prescribed.load,
        };
        let jump = self.jump_said(slot, without, history, load, None);
        let beyond = foretold
            .and_then(|foretold| foretold.caution(block))
            .filter(|_| !load.is_some_and(|load| self.was_tried(slot, load, None)));
        let own = block.cautions.iter().map(|caution| caution.said());
        let usual = cautions(block, &slot.planned.kind);
        let of_set: Vec<&str> = own.chain(usual).collect();
        // Of assistance a set with less is no harder trial of the same: only one of which it was said as well.
        let said = |load| assistance_caution(&block.basis, load, self.began.body_mass);
        let helped = said(load).filter(|_| {
            let done = self.done_of(slot, None);
            !done.iter().any(|done| said(done.load).is_some())
        });
        let of_load = helped.into_iter().chain(beyond);
        let mut due: Vec<String> = of_load.map(str::to_owned).collect();
        due.extend(self.heat_cautions(load.is_some()).map(str::to_owned));
        if !self.was_cautioned(slot) {
            due.extend(of_set.iter().map(|line| (*line).to_owned()));
        }
        let mut known = Vec::new();
        for line in of_set.into_iter().chain(jump) {
            add(&mut known, line);
        }
        for line in &due {
            add(&mut known, line);
        }
        self.shown_before(block, history, strength, &mut known);
        Heed { jump, due, known }
    }

    /// Puts the cautions that sets of this session had below `known`: of sets to failure, of the heat as it was noted last,
    /// and of the loads that `block` was done with.
    fn shown_before(
        &self,
        block: &Block,
        history: &[Performance],
        strength: Option<Strength>,
        known: &mut Vec<String>,
    ) {
        for slot in &self.slots {
            let Some(logged) = slot.logged() else {
                continue;
            };
            if self.is_alike(slot, block) {
                for line in self.shown_with(slot, logged, history, strength) {
                    add(known, line);
                }
            }
            // Of others only what went to failure: what was done of them lately is not at hand here.
            if matches!(slot.planned.kind, SetKind::ToFailure) {
                for line in cautions(self.block_of(slot), &slot.planned.kind)
                    .iter()
                    .take(1)
                {
                    add(known, line);
                }
            }
        }
        let brief = self.heat_said();
        let loaded = self.slots.iter().filter_map(Slot::logged);
        let loaded = loaded.filter(|logged| self.is_in_air(logged));
        let grips = loaded.into_iter().any(|logged| logged.done.load.is_some());
        for line in brief.into_iter().chain(brief.and(grips.then(grip_words))) {
            add(known, line);
        }
    }

    /// What was said of the load that a set was logged with.
    fn shown_with(
        &self,
        slot: &Slot,
        logged: &Logged,
        history: &[Performance],
        strength: Option<Strength>,
    ) -> impl Iterator<Item = &'static str> {
        let before = Some(logged.event);
        let base: Base = self.proposal(slot).map_or(None.into(), Base::from);
        let without = Without {
            guided: base.guided,
            prescribed: logged.proposed,
        };
        let block = self.block_of(slot);
        let load = logged.done.load;
        let jump = self.jump_said(slot, without, history, load, before);
        let doubted = load.filter(|load| !self.was_tried(slot, *load, before));
        let beyond = doubted
            .and_then(|load| self.foretell(slot, load, strength))
            .and_then(|foretold| foretold.caution(block));
        let helped = assistance_caution(&block.basis, load, self.began.body_mass);
        jump.into_iter().chain(helped).chain(beyond)
    }

    /// Whether a set that the same cautions are for was done before `slot`: one of its block as the same exercise, and of its
    /// kind where that goes to failure.
    fn was_cautioned(&self, slot: &Slot) -> bool {
        let block = self.block_of(slot);
        let fails = |set: &Slot| matches!(set.planned.kind, SetKind::ToFailure);
        self.slots.iter().any(|other| {
            let same = other.planned.key.block == slot.planned.key.block;
            let logged = other.logged().is_some() && other.planned.key != slot.planned.key;
            same && logged && self.is_alike(other, block) && (!fails(slot) || fails(other))
        })
    }

    /// What is said of the heat. Without air that was noted there is none: nothing of it is asked for.
    fn heat_said(&self) -> Option<&'static str> {
        self.air?;
        self.heat().brief()
    }

    /// Whether a set was logged after the air was noted.
    fn is_in_air(&self, logged: &Logged) -> bool {
        self.air_noted.is_some_and(|noted| logged.event > noted)
    }

    /// What the board says of the heat with the first set after it was noted: what to do, and, with the first that has a load,
    /// that grips slip.
    fn heat_cautions(&self, loaded: bool) -> impl Iterator<Item = &'static str> {
        let since = || {
            let logged = self.slots.iter().filter_map(Slot::logged);
            logged.filter(|logged| self.is_in_air(logged))
        };
        let brief = self.heat_said();
        let untold = since().next().is_none();
        let grips = loaded && !since().any(|logged| logged.done.load.is_some());
        let grip = brief.and(grips.then(grip_words));
        brief.filter(|_| untold).into_iter().chain(grip)
    }

    /// Whether `load` or a harder one was done in this session, or before an event of it, for as many reps as `slot` asks for,
    /// or was tried by a set that asked for as many: what the last weeks say of it was said there, and is known better since.
    fn was_tried(&self, slot: &Slot, load: Load, before: Option<EventId>) -> bool {
        let block = self.block_of(slot);
        let fewest = |target: &Target| target.plain_reps().map(RepTarget::low);
        let Some(asked) = fewest(&slot.planned.target) else {
            return false;
        };
        self.done_of(slot, before).iter().any(|done| {
            let line = block.sets.get(usize::from(done.key.line));
            let tried = line.is_some_and(|sets| {
                sets.kind.is_work() && fewest(&sets.target).is_some_and(|fewest| fewest >= asked)
            });
            let came = done.reps.is_some_and(|reps| reps >= asked);
            let as_hard = done.load.is_some_and(|done| match block.basis.assists() {
                true => done <= load,
                false => done >= load,
            });
            as_hard && (came || tried)
        })
    }
}
