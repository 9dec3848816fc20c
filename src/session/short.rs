//! Short of time: which of the sets still to be done go, so that the rest of the session fits the time there is.
//!
//! The order is that of a sheet's cuts (`sheet/cuts.rs`): pump goes first, then muscle-building, strength and power
//! last; of one role the last block first. What was done already stays, and so does the set under way: the one whose cues
//! run, or that waits on the board once something was done and its rest is over.

use super::event::{Moment, What};
use super::slot::{Phase, Slot, Status};
use super::state::State;
use crate::order;
use crate::say;
use crate::sheet::{BlockId, SetKey, worth};
use crate::units::Seconds;
use crate::words::{many, t};
use std::cmp::Reverse;

/// What goes of one block.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Gone {
    /// The block.
    pub block: BlockId,
    /// The exercise that it is done as.
    pub exercise: String,
    /// How many sets go; a set with its drops is one.
    pub sets: usize,
    /// True when nothing of it is left to do.
    pub whole: bool,
    /// Seconds that it saves, what goes before it gone already.
    pub saves: u64,
}

impl Gone {
    /// What goes, in words.
    #[must_use]
    pub fn said(&self) -> String {
        let exercise = &self.exercise;
        let sets = match (self.sets, self.whole) {
            (n, false) => many(n, "{n} set", "{n} sets"),
            (1, true) => t("the last set").to_owned(),
            (2, true) => t("both sets left").to_owned(),
            (n, true) => say!("all {n} sets left", n),
        };
        match (self.saves + 30) / 60 {
            0 => say!(
                "{sets} of {exercise}, saves less than a minute",
                sets,
                exercise
            ),
            minutes => say!(
                "{sets} of {exercise}, saves {minutes} min",
                sets,
                exercise,
                minutes
            ),
        }
    }
}

/// What goes of a session that is short of time.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Short {
    /// What goes, block by block, in the order in which it goes.
    pub gone: Vec<Gone>,
    /// The sets that go.
    pub drops: Vec<SetKey>,
    /// Predicted seconds from now to the end without them.
    pub left: u64,
}

impl Short {
    /// The events that take them off the plan; of one tap, so that one undo brings all of them back.
    #[must_use]
    pub fn events(&self) -> Vec<What> {
        let off = |&set: &SetKey| What::SetDropped { set };
        self.drops.iter().map(off).collect()
    }
}

impl State {
    /// What goes so that no more than `within_s` seconds are left from `now` on; nothing when that is so already.
    ///
    /// One set stays always, the foremost of what is kept longest: `left` may be longer than `within_s` then, and to
    /// stop altogether is the lifter's own word.
    #[must_use]
    pub fn short(&self, now: &Moment, within_s: u64, change_over: Seconds) -> Short {
        let mut plan = Plan {
            state: self,
            kept: self.pending(),
            now,
            change_over,
        };
        let mut short = Short::default();
        loop {
            let before = short.drops.len();
            for block in plan.least_first() {
                if plan.seconds() <= within_s {
                    break;
                }
                plan.cut(block, within_s, &mut short);
            }
            if short.drops.len() == before || plan.seconds() <= within_s {
                break;
            }
        }
        short.left = plan.seconds();
        short
    }
}

/// How many sets they are, by their turns: a set with its drops is one, and so are the drops of one that was passed over.
pub(super) fn sets_of(slots: &[&Slot]) -> usize {
    let turn = |slot: &Slot| SetKey {
        drop: 0,
        ..slot.planned.key
    };
    let first = |(at, slot): &(usize, &&Slot)| {
        let mut before = slots[..*at].iter();
        before.all(|before| turn(before) != turn(slot))
    };
    slots.iter().enumerate().filter(first).count()
}

/// What is kept so far.
struct Plan<'a> {
    state: &'a State,
    kept: Vec<&'a Slot>,
    now: &'a Moment,
    change_over: Seconds,
}

impl<'a> Plan<'a> {
    fn seconds(&self) -> u64 {
        self.seconds_of(&self.kept)
    }

    fn seconds_of(&self, kept: &[&Slot]) -> u64 {
        self.state.seconds_of(kept, self.now, self.change_over)
    }

    /// The blocks that have sets to do, in the order in which they lose them.
    fn least_first(&self) -> Vec<BlockId> {
        let mut blocks: Vec<(u8, usize, BlockId)> = Vec::new();
        for (place, slot) in self.kept.iter().enumerate() {
            let id = slot.planned.key.block;
            if blocks.iter().all(|(_, _, other)| *other != id) {
                blocks.push((worth(self.state.block_of(slot).role), place, id));
            }
        }
        order::by_key(&mut blocks, |(worth, place, _)| (*worth, Reverse(*place)));
        blocks.into_iter().map(|(_, _, id)| id).collect()
    }

    /// The work sets of a block that may go, last first, each a line and a number: the one under way stays, and of a
    /// block that has none behind it one more.
    fn loose(&self, id: BlockId) -> Vec<(u8, u8)> {
        let of_block = |slot: &&Slot| slot.planned.key.block == id && slot.planned.kind.is_work();
        let turn = |slot: &Slot| (slot.planned.key.line, slot.planned.key.set);
        let mut turns: Vec<(u8, u8)> = Vec::new();
        for slot in self.kept.iter().copied().filter(of_block).rev() {
            if !turns.contains(&turn(slot)) {
                turns.push(turn(slot));
            }
        }
        // A set whose first part is done is finished: its drops follow at once.
        let mut slots = self.state.slots.iter().filter(of_block);
        let begun = |slot: &Slot| self.is_begun(slot);
        turns.retain(|turn_of| {
            let mut own = self.state.slots.iter().filter(of_block);
            !own.any(|slot| turn(slot) == *turn_of && begun(slot))
        });
        let behind = slots.any(begun);
        let alone = self.kept.iter().all(|slot| slot.planned.key.block == id);
        if !behind || (alone && !self.kept.iter().any(|slot| self.waits(slot))) {
            turns.pop();
        }
        turns
    }

    /// True for the set that waits on the board: its load is on the bar. Before the first set of a session it is the sheet
    /// that is cut, and nothing is in the hands yet.
    fn waits(&self, slot: &Slot) -> bool {
        let ready = match &self.state.phase {
            Phase::Ready => true,
            Phase::Resting(rest) => rest.left_ms(self.now).is_some_and(|left| left <= 0),
            _ => false,
        };
        let mut slots = self.state.slots.iter();
        let touched = slots.any(|slot| slot.status != Status::Pending);
        let current = self.state.current().map(|slot| slot.planned.key);
        ready && touched && current == Some(slot.planned.key)
    }

    fn is_begun(&self, slot: &Slot) -> bool {
        let works = self.state.works_on(slot.planned.key);
        works || self.waits(slot) || matches!(slot.status, Status::Done(_))
    }

    /// What is kept without so many of the loose sets of a block.
    fn without(&self, id: BlockId, turns: &[(u8, u8)]) -> Vec<&'a Slot> {
        let goes = |slot: &Slot| {
            let key = slot.planned.key;
            key.block == id && turns.contains(&(key.line, key.set))
        };
        let kept = self.kept.iter().copied();
        kept.filter(|slot| !goes(slot)).collect()
    }

    /// What is kept without a block; none where it cannot go: it is begun, or the last one.
    fn without_block(&self, id: BlockId) -> Option<Vec<&'a Slot>> {
        let of_block = |slot: &Slot| slot.planned.key.block == id;
        let mut slots = self.state.slots.iter();
        let begun = slots.any(|slot| of_block(slot) && self.is_begun(slot));
        let kept = self.kept.iter().copied();
        let kept: Vec<&Slot> = kept.filter(|slot| !of_block(slot)).collect();
        (!begun && !kept.is_empty()).then_some(kept)
    }

    /// Takes of one block what the time asks for, if it saves anything.
    fn cut(&mut self, id: BlockId, within_s: u64, short: &mut Short) {
        let now = self.seconds();
        let loose = self.loose(id);
        let fewest = (1..=loose.len())
            .map(|n| self.without(id, &loose[..n]))
            .find(|kept| self.seconds_of(kept) <= within_s);
        let saves = |kept: &Vec<&Slot>| self.seconds_of(kept) < now;
        let kept = fewest
            .or_else(|| self.without_block(id).filter(saves))
            .or_else(|| Some(self.without(id, &loose)).filter(saves));
        let Some(kept) = kept else { return };
        let goes = |slot: &&&Slot| {
            kept.iter()
                .all(|other| other.planned.key != slot.planned.key)
        };
        let gone: Vec<&Slot> = self.kept.iter().filter(goes).copied().collect();
        let saves = now - self.seconds_of(&kept);
        let whole = kept.iter().all(|slot| slot.planned.key.block != id);
        let sets = sets_of(&gone);
        short.drops.extend(gone.iter().map(|slot| slot.planned.key));
        match short.gone.iter_mut().find(|gone| gone.block == id) {
            Some(before) => {
                before.sets += sets;
                before.saves += saves;
                before.whole = whole;
            }
            None => short.gone.extend(gone.first().map(|slot| Gone {
                block: id,
                exercise: self.state.block_of(slot).exercise.said(),
                sets,
                whole,
                saves,
            })),
        }
        self.kept = kept;
    }
}
