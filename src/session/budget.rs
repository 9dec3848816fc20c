//! The session under way against the time budget of its sheet.

use super::event::Moment;
use super::short::sets_of;
use super::state::State;
use crate::say;
use crate::units::{Seconds, minutes_up};
use crate::words::many_of;
use std::num::NonZeroU16;

/// How a session stands against its time budget.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct AgainstBudget {
    /// The budget in minutes.
    pub minutes: NonZeroU16,
    /// Seconds by which the predicted end lies after it; below zero: seconds to spare.
    pub over: i64,
    /// Sets that would have to be left off to end in time; 0 when it ends in time, none when not even that is enough.
    pub leave_off: Option<usize>,
    /// Sets that are left; one with its drops is one.
    pub sets: usize,
    /// Seconds that they are predicted to take.
    pub seconds: u64,
}

impl State {
    /// Seconds that the time budget of the sheet leaves at `now`, 0 once it has passed; none without a budget.
    #[must_use]
    pub fn budget_left(&self, now: &Moment) -> Option<u64> {
        let budget = u64::from(self.began.sheet.budget_minutes?.get()) * 60;
        Some(budget.saturating_sub(self.gone_ms(now) / 1000))
    }

    /// Seconds by which the end, predicted as [`State::seconds_left`] does it, lies after the budget; below zero: seconds
    /// to spare. None without a budget.
    #[must_use]
    pub fn over_budget(&self, now: &Moment, change_over: Seconds) -> Option<i64> {
        let minutes = self.began.sheet.budget_minutes?;
        let gone = self.gone_ms(now) / 1000;
        let end = gone.saturating_add(self.seconds_left(now, change_over));
        Some(i64::try_from(end).unwrap_or(i64::MAX) - i64::from(minutes.get()) * 60)
    }

    /// How the session stands at `now` against the budget of its sheet; none without a budget. What to leave off is what
    /// [`State::short`] takes off.
    #[must_use]
    pub fn against_budget(&self, now: &Moment, change_over: Seconds) -> Option<AgainstBudget> {
        let minutes = self.began.sheet.budget_minutes?;
        let all = self.over_budget(now, change_over)?;
        let leave_off = if all <= 0 {
            Some(0)
        } else {
            let within = self.budget_left(now)?;
            let short = self.short(now, within, change_over);
            (short.left <= within).then_some(short.drops.len())
        };
        Some(AgainstBudget {
            minutes,
            over: all,
            leave_off,
            sets: sets_of(&self.pending()),
            seconds: self.seconds_left(now, change_over),
        })
    }
}

/// Whole minutes by which an end lies after the budget, from the seconds by which it does; none where it does not.
#[must_use]
pub fn minutes_over(over: i64) -> Option<u64> {
    u64::try_from(over)
        .ok()
        .filter(|over| *over > 0)
        .map(minutes_up)
}

impl AgainstBudget {
    /// What it means, in one sentence.
    #[must_use]
    pub fn said(&self) -> String {
        let budget = self.minutes;
        match (minutes_over(self.over), self.leave_off) {
            (None, _) => say!(
                "In time: {minutes} min to spare of {budget}.",
                minutes = self.over.unsigned_abs() / 60,
                budget
            ),
            (Some(minutes), Some(sets)) => many_of(
                sets,
                "{minutes} min over the {budget} planned: leave off {n} set to end in time.",
                "{minutes} min over the {budget} planned: leave off {n} sets to end in time.",
                &[("minutes", &minutes), ("budget", &budget)],
            ),
            (Some(_), None) => many_of(
                self.sets,
                "Nothing more fits the {budget} min planned: {n} set left, about {minutes} min.",
                "Nothing more fits the {budget} min planned: {n} sets left, about {minutes} min.",
                &[("minutes", &minutes_up(self.seconds)), ("budget", &budget)],
            ),
        }
    }
}
