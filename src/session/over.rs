//! What is over of a block when one of its sets comes: done, passed over, taken off.

use super::event::EventId;
use super::slot::{Slot, Status};
use super::state::State;
use crate::sheet::{Block, SetKey};
use crate::strength::DoneSet;

impl State {
    /// Whether `slot` is done as the exercise of `block`, its load meaning the same.
    pub(super) fn is_alike(&self, slot: &Slot, block: &Block) -> bool {
        let own = self.block_of(slot);
        own.exercise.id == block.exercise.id && own.is_loaded_as(block)
    }

    /// The sets of the block of `slot` that were done in this session: all, or those logged before an event.
    pub(super) fn done_of(&self, slot: &Slot, before: Option<EventId>) -> Vec<DoneSet> {
        let block = self.block_of(slot);
        self.slots
            .iter()
            .filter(|other| other.planned.key.block == block.id)
            .filter_map(|other| {
                let logged = other.logged()?;
                if before.is_some_and(|before| logged.event >= before) {
                    return None;
                }
                // A set of another exercise says nothing of this one: it is as if it had been passed over.
                let same = self.is_alike(other, block);
                Some(DoneSet {
                    key: other.planned.key,
                    load: logged.done.load.filter(|_| same),
                    reps: logged.done.amount.reps().filter(|_| same),
                    reserve: logged.done.reserve.filter(|_| same),
                })
            })
            .collect()
    }

    /// The sets of its block that are over when `slot` comes: done, passed over, taken off.
    pub(super) fn over_before(&self, slot: &Slot) -> Vec<DoneSet> {
        let mut over = self.done_of(slot, None);
        over.extend(self.passed_over(slot));
        over
    }

    /// The sets before `slot` in its line that were passed over or taken off: no step leads over them.
    fn passed_over(&self, slot: &Slot) -> impl Iterator<Item = DoneSet> {
        let own = slot.planned.key;
        let before = (0..own.set).map(move |set| SetKey {
            set,
            drop: 0,
            ..own
        });
        let over = before.filter(|key| match self.slot(*key) {
            Some(slot) => slot.status == Status::Skipped,
            None => true,
        });
        over.map(|key| DoneSet {
            key,
            load: None,
            reps: None,
            reserve: None,
        })
    }
}
