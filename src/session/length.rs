//! How long a session still takes: the sheet's own prediction, for what is left of it.

use super::event::Moment;
use super::slot::{Phase, Slot, Status};
use super::state::State;
use crate::sheet::{gap_seconds, set_seconds};
use crate::units::Seconds;

impl State {
    /// Predicted seconds from `now` to the end of the last set that is still to be done, with `change_over` beyond the
    /// rest between two groups, and rests as long as the heat that was noted makes them.
    #[must_use]
    pub fn seconds_left(&self, now: &Moment, change_over: Seconds) -> u64 {
        self.seconds_of(&self.pending(), now, change_over)
    }

    /// The sets that are still to be done, in order.
    pub(super) fn pending(&self) -> Vec<&Slot> {
        let pending = |slot: &&Slot| slot.status == Status::Pending;
        self.slots.iter().filter(pending).collect()
    }

    /// The same, where of what is still to be done only `kept` is done.
    pub(super) fn seconds_of(&self, kept: &[&Slot], now: &Moment, change_over: Seconds) -> u64 {
        let sets: u64 = kept.iter().map(|slot| set_seconds(&slot.planned)).sum();
        let between: u64 = kept
            .windows(2)
            .map(|pair| {
                let (before, after) = (&pair[0].planned, &pair[1].planned);
                let rest = before.rest_before(after);
                let longer = u64::from(self.rest_in_heat(rest).get()) - u64::from(rest.get());
                gap_seconds(before, after, change_over) + longer
            })
            .sum();
        self.seconds_to_next(kept.first().copied(), now, change_over) + sets + between
    }

    /// What is left of the rest under way, and of the change-over that follows it where another group is next.
    fn seconds_to_next(&self, next: Option<&Slot>, now: &Moment, change_over: Seconds) -> u64 {
        let Phase::Resting(rest) = &self.phase else {
            return 0;
        };
        let group = |slot: &Slot| slot.planned.group;
        let change_over = if self.slot(rest.after).map(group) == next.map(group) {
            0
        } else {
            i64::from(change_over.get())
        };
        let seconds = rest.to_come_ms(now) / 1000 + change_over;
        u64::try_from(seconds).unwrap_or(0)
    }
}
