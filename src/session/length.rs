//! How long a session still takes: the sheet's own prediction, for what is left of it.

use super::event::Moment;
use super::slot::{Phase, Slot, Status};
use super::state::State;
use crate::sheet::{PlannedSet, gap_seconds, set_seconds};
use crate::units::Seconds;

impl State {
    /// Predicted seconds from `now` to the end of the last set that is still to be done, with `change_over` beyond the
    /// rest between two groups, and rests as long as the heat that was noted makes them.
    #[must_use]
    pub fn seconds_left(&self, now: &Moment, change_over: Seconds) -> u64 {
        self.seconds_for(usize::MAX, now, change_over)
    }

    /// The sets that are still to be done.
    pub(super) fn pending(&self) -> impl Iterator<Item = &PlannedSet> {
        self.slots
            .iter()
            .filter(|slot| slot.status == Status::Pending)
            .map(|slot| &slot.planned)
    }

    /// The same for the first `kept` of the sets that are still to be done.
    pub(super) fn seconds_for(&self, kept: usize, now: &Moment, change_over: Seconds) -> u64 {
        let pending: Vec<&PlannedSet> = self.pending().take(kept).collect();
        let sets: u64 = pending.iter().map(|set| set_seconds(set)).sum();
        let between: u64 = pending
            .windows(2)
            .map(|pair| {
                let rest = pair[0].rest_before(pair[1]);
                let longer = u64::from(self.rest_in_heat(rest).get()) - u64::from(rest.get());
                gap_seconds(pair[0], pair[1], change_over) + longer
            })
            .sum();
        self.seconds_to_next(now, change_over) + sets + between
    }

    /// What is left of the rest under way, and of the change-over that follows it where another group is next.
    fn seconds_to_next(&self, now: &Moment, change_over: Seconds) -> u64 {
        let Phase::Resting(rest) = &self.phase else {
            return 0;
        };
        let group = |slot: &Slot| slot.planned.group;
        let next = self.current().map(group);
        let change_over = if self.slot(rest.after).map(group) == next {
            0
        } else {
            i64::from(change_over.get())
        };
        let seconds = rest.left_ms(now).map_or(0, |ms| ms / 1000 + change_over);
        u64::try_from(seconds).unwrap_or(0)
    }
}
