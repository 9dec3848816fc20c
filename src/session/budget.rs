//! The session under way against the time budget of its sheet.

use super::event::Moment;
use super::state::State;
use crate::units::Seconds;

/// How a session stands against its time budget.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct AgainstBudget {
    /// The budget in minutes.
    pub minutes: u16,
    /// Seconds by which the predicted end lies after it; below zero: seconds to spare.
    pub over: i64,
    /// Sets that would have to be left off, the last first, to end in time; 0 when it ends in time, none when not even
    /// that is enough.
    pub leave_off: Option<usize>,
}

impl State {
    /// How the session stands at `now` against the budget of its sheet; none without a budget.
    ///
    /// The end is predicted as [`State::seconds_left`] does it. What to leave off is counted from the end of the sheet,
    /// because what matters most is done first (common practice, no source).
    #[must_use]
    pub fn against_budget(&self, now: &Moment, change_over: Seconds) -> Option<AgainstBudget> {
        let minutes = self.began.sheet.budget_minutes?;
        let gone = i64::try_from(now.since(&self.since) / 1000).unwrap_or(i64::MAX);
        let over = |kept: usize| {
            let left = self.seconds_for(kept, now, change_over);
            gone.saturating_add_unsigned(left) - i64::from(minutes) * 60
        };
        let pending = self.pending().count();
        let all = over(pending);
        let leave_off = if all <= 0 {
            Some(0)
        } else {
            // The set that is next stays: to leave it off is to end the session.
            (1..pending).find(|off| over(pending - off) <= 0)
        };
        Some(AgainstBudget {
            minutes,
            over: all,
            leave_off,
        })
    }
}

impl AgainstBudget {
    /// What it means, in one sentence.
    #[must_use]
    pub fn said(&self) -> String {
        let budget = self.minutes;
        let minutes = self.over.unsigned_abs().div_ceil(60);
        match (self.over > 0, self.leave_off) {
            (false, _) => format!(
                "In time: {} min to spare of {budget}.",
                self.over.unsigned_abs() / 60
            ),
            (true, Some(1)) => format!(
                "{minutes} min over the {budget} planned: leave off the last set to end in time."
            ),
            (true, Some(sets)) => format!(
                "{minutes} min over the {budget} planned: leave off the last {sets} sets to end in time."
            ),
            (true, None) => format!(
                "{minutes} min over the {budget} planned: this set is the last that fits, or more than fits."
            ),
        }
    }
}
