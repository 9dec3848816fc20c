//! The state of a session: what its events fold to.

use super::done::Done;
use super::effective::effective;
use super::event::{Began, Event, EventId, Moment, What};
use super::slot::{Changes, InHeat, Logged, Phase, Rest, Slot, Status};
use super::swap::{Swap, Swapped};
use crate::heat::Air;
use crate::order;
use crate::order::Map;
use crate::sheet::{Note, SetKey, unroll_with};
use crate::units::{Load, Rpe};

/// The state of a session.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct State {
    /// Its head.
    pub began: Began,
    /// When it began.
    pub since: Moment,
    /// Milliseconds of its pauses: between an end and going on, and of long silences.
    pub paused_ms: u64,
    /// When something happened last.
    pub last: Moment,
    /// Its sets in the order they are done.
    pub slots: Vec<Slot>,
    /// The blocks that were swapped, as they are done since, in the order of the swaps.
    pub swapped: Vec<Swapped>,
    /// The order of the sheet's groups.
    pub order: Vec<usize>,
    /// What is going on.
    pub phase: Phase,
    /// Session RPE, once given.
    pub rpe: Option<Rpe>,
    /// The air that was noted last.
    pub air: Option<Air>,
    /// The event that noted it.
    pub air_noted: Option<EventId>,
    /// Note on the session.
    pub note: Option<Note>,
    /// The newest event that counts.
    pub newest: EventId,
}

impl State {
    /// Folds events to the state. None when there is no beginning among them.
    ///
    /// Events that fit nothing (a set that the sheet does not have, a rest cut when there is none) change nothing:
    /// merged histories may hold such.
    #[must_use]
    pub fn fold(events: &[Event]) -> Option<State> {
        State::of_counting(&effective(events))
    }

    /// The same of the events that count, in their order.
    #[must_use]
    pub(crate) fn of_counting(counting: &[&Event]) -> Option<State> {
        let mut rest = counting.iter().copied();
        let mut state = rest.find_map(State::begin)?;
        let mut changes = Changes::default();
        for event in rest {
            state.newest = event.id;
            state.take(event, &mut changes);
        }
        Some(state)
    }

    fn begin(event: &Event) -> Option<State> {
        let What::Began(began) = &event.what else {
            return None;
        };
        let mut state = State {
            order: (0..began.sheet.groups.len()).collect(),
            began: (**began).clone(),
            since: event.moment(),
            paused_ms: 0,
            last: event.moment(),
            slots: Vec::new(),
            swapped: Vec::new(),
            phase: Phase::Ready,
            rpe: None,
            air: None,
            air_noted: None,
            note: None,
            newest: event.id,
        };
        state.plan(&Changes::default());
        Some(state)
    }

    /// Lays the slots again from sheet, order and changes; what is known of each set stays.
    fn plan(&mut self, changes: &Changes) {
        let mut slots: Vec<Option<Slot>> = self.slots.drain(..).map(Some).collect();
        let mut known = Map::new();
        for (at, slot) in slots.iter().flatten().enumerate() {
            known.insert(slot.planned.key, at);
        }
        let planned = unroll_with(&self.began.sheet, &self.order, &changes.added);
        let kept = planned
            .into_iter()
            .filter(|set| !changes.dropped.contains(&set.key));
        self.slots = kept
            .map(|planned| {
                let before = known.get(&planned.key).and_then(|at| slots[*at].take());
                let swap = match &before {
                    Some(slot) => slot.swap,
                    None => self.newest_swap(planned.key.block),
                };
                let planned = match swap.and_then(|at| self.swapped.get(at)) {
                    Some(swapped) => swapped.suited(planned),
                    None => planned,
                };
                match before {
                    Some(slot) => Slot { planned, ..slot },
                    None => Slot {
                        planned,
                        status: Status::Pending,
                        swap,
                        load: None,
                        reps: None,
                        amount: None,
                        heard: None,
                        by_hand: false,
                        reserve: None,
                        note: None,
                    },
                }
            })
            .collect();
    }

    /// From now on the block's pending sets are done as another exercise. What was chosen for them was chosen for the
    /// exercise of before, and a set of it under way is called off.
    fn swap(&mut self, swap: &Swap, changes: &Changes) {
        let Some(written) = self.began.sheet.block(swap.block()) else {
            return;
        };
        let swapped = Swapped {
            block: swap.applied(written),
            proposal: swap.proposal.clone(),
        };
        self.swapped.push(swapped);
        let newest = self.swapped.len() - 1;
        for slot in &mut self.slots {
            if slot.planned.key.block == swap.block() && slot.status == Status::Pending {
                slot.swap = Some(newest);
                slot.load = None;
                slot.offer_as_planned();
                slot.reserve = None;
            }
        }
        self.plan(changes);
        if matches!(self.phase, Phase::Working { set, .. } if set.block == swap.block()) {
            self.phase = Phase::Ready;
        }
    }

    fn take(&mut self, event: &Event, changes: &mut Changes) {
        let moment = event.moment();
        self.hear(moment);
        match &event.what {
            What::Began(_) | What::Undone { .. } => {}
            What::SetStarted { set } => {
                if self.current().is_some_and(|slot| slot.planned.key == *set) {
                    self.phase = Phase::Working {
                        set: *set,
                        since: moment,
                    };
                    if let Some(slot) = self.slot_mut(*set) {
                        slot.heard = None;
                        slot.by_hand = false;
                    }
                }
            }
            What::SetStopped { set, heard } => {
                if matches!(self.phase, Phase::Working { .. }) {
                    self.phase = Phase::Ready;
                    if let Some(slot) = self.slot_mut(*set) {
                        slot.heard.clone_from(heard);
                    }
                }
            }
            What::SetDone {
                set,
                done,
                proposed,
            } => self.log(event.id, moment, *set, done, *proposed),
            What::SetAmended { set, done } => {
                if let Some(Slot {
                    status: Status::Done(logged),
                    ..
                }) = self.slot_mut(*set)
                {
                    logged.correct(done, moment);
                }
            }
            What::SetSkipped { set } => {
                if let Some(slot) = self.slot_mut(*set)
                    && slot.status == Status::Pending
                {
                    slot.status = Status::Skipped;
                    self.settle();
                }
            }
            What::SetAdded { block, line } => {
                let added = changes.added.or_default((*block, *line));
                *added = added.saturating_add(1);
                self.plan(changes);
                self.settle();
            }
            What::SetDropped { set } => {
                if self
                    .slot(*set)
                    .is_some_and(|slot| slot.status == Status::Pending)
                {
                    changes.dropped.push(*set);
                    self.plan(changes);
                    self.settle();
                }
            }
            What::BlockSwapped(swap) => self.swap(swap, changes),
            What::OrderChanged { groups } => self.reorder(groups, changes),
            What::LoadChosen { set, load, .. } => {
                if let Some(slot) = self.slot_mut(*set) {
                    slot.load = Some(*load);
                }
            }
            What::RepsChosen { set, reps } => {
                let works = self.works_on(*set);
                if let Some(slot) = self.slot_mut(*set) {
                    slot.offer_as_planned();
                    slot.reps = Some(*reps);
                    slot.by_hand = works;
                }
            }
            What::AmountChosen { set, amount } => {
                let works = self.works_on(*set);
                if let Some(slot) = self.slot_mut(*set) {
                    slot.offer_as_planned();
                    slot.amount = Some(amount.clone());
                    slot.by_hand = works;
                }
            }
            What::ReserveChosen { set, reserve } => {
                if let Some(slot) = self.slot_mut(*set) {
                    slot.reserve = Some(*reserve);
                }
            }
            What::RestChanged { by_seconds } => {
                if let Phase::Resting(rest) = &mut self.phase {
                    rest.length_ms = rest
                        .length_ms
                        .saturating_add_signed(i64::from(*by_seconds) * 1000);
                }
            }
            What::RestHeld => {
                if let Phase::Resting(rest) = &mut self.phase {
                    rest.hold(&moment);
                }
            }
            What::RestEnded => {
                if matches!(self.phase, Phase::Resting(_)) {
                    self.phase = Phase::Ready;
                    self.settle();
                }
            }
            What::AirNoted { air } => {
                self.air = Some(*air);
                self.air_noted = Some(event.id);
            }
            What::Noted { set: None, text } => {
                self.note = Some(text.clone()).filter(|text| !text.is_empty())
            }
            What::Noted {
                set: Some(set),
                text,
            } => {
                if let Some(slot) = self.slot_mut(*set) {
                    slot.note = Some(text.clone()).filter(|text| !text.is_empty());
                }
            }
            What::Rated { rpe } => self.rpe = Some(*rpe),
            What::Ended => self.phase = Phase::Ended(moment),
            What::Resumed => self.resume(moment),
        }
    }

    fn log(
        &mut self,
        event: EventId,
        moment: Moment,
        set: SetKey,
        done: &Done,
        proposed: Option<Load>,
    ) {
        let ended = matches!(self.phase, Phase::Ended(_));
        let Some(slot) = self.slot_mut(set) else {
            return;
        };
        if slot.logged().is_some() {
            return;
        }
        let logged = Logged {
            event,
            moment,
            done: done.clone(),
            earlier: Vec::new(),
            corrected: None,
            proposed,
        };
        slot.status = Status::Done(Box::new(logged));
        if ended {
            return;
        }
        let after = slot.planned.clone();
        self.phase = match self.current() {
            None => Phase::AllDone,
            Some(next) => {
                let planned = after.rest_before(&next.planned);
                let length = self.rest_in_heat(planned);
                if length.get() == 0 {
                    Phase::Ready
                } else {
                    Phase::Resting(Rest {
                        after: set,
                        since: moment,
                        length_ms: u64::from(length.millis()),
                        held: None,
                        heat: (length > planned).then(|| InHeat {
                            category: self.heat(),
                            length,
                        }),
                    })
                }
            }
        };
    }

    /// Brings the phase in line with what is left to do.
    pub(super) fn settle(&mut self) {
        let current = self.current().map(|slot| slot.planned.key);
        self.phase = match (self.phase, current) {
            (Phase::Ended(at), _) => Phase::Ended(at),
            (_, None) => Phase::AllDone,
            (Phase::AllDone, Some(_)) => Phase::Ready,
            // A set under way was skipped or dropped: the next one is ready.
            (Phase::Working { set, .. }, Some(current)) if set != current => Phase::Ready,
            (phase, Some(_)) => phase,
        };
    }

    fn reorder(&mut self, groups: &[u8], changes: &Changes) {
        let wanted: Vec<usize> = groups.iter().map(|&index| usize::from(index)).collect();
        let mut sorted = wanted.clone();
        order::by_key(&mut sorted, |index| *index);
        if sorted.iter().copied().eq(0..self.began.sheet.groups.len()) {
            self.order = wanted;
            self.plan(changes);
            self.settle();
        }
    }

    /// The slot of that key.
    #[must_use]
    pub fn slot(&self, key: SetKey) -> Option<&Slot> {
        self.slots.iter().find(|slot| slot.planned.key == key)
    }

    fn slot_mut(&mut self, key: SetKey) -> Option<&mut Slot> {
        self.slots.iter_mut().find(|slot| slot.planned.key == key)
    }

    /// The set that is to be done now or next: the first that is pending.
    #[must_use]
    pub fn current(&self) -> Option<&Slot> {
        self.slots
            .iter()
            .find(|slot| slot.status == Status::Pending)
    }

    /// The set that was logged last.
    #[must_use]
    pub fn last_logged(&self) -> Option<&Slot> {
        self.slots
            .iter()
            .filter(|slot| slot.logged().is_some())
            .max_by_key(|slot| slot.logged().map(|logged| logged.event))
    }

    /// True once the session has ended.
    #[must_use]
    pub fn has_ended(&self) -> bool {
        matches!(self.phase, Phase::Ended(_))
    }
}
