//! The pieces of a session's state: a planned set and what became of it, the rest, the phase.

use super::done::{Amount, Done};
use super::event::{EventId, Moment};
use crate::heat::Category;
use crate::sheet::{Added, Note, PlannedSet, SetKey};
use crate::units::{Load, Reps, Rir, Seconds};

/// Corrections of a set that follow each other within so much time are one: each tap of a stepper is an event.
pub const ONE_CORRECTION_MS: u64 = 60_000;

/// A set that was logged.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Logged {
    /// The event that logged it.
    pub event: EventId,
    /// When.
    pub moment: Moment,
    /// What was done, corrections taken in.
    pub done: Done,
    /// What it was said to be before, the first log first; empty when it was never corrected. Of two corrections the
    /// later one counts, wherever it was made, and of some within [`ONE_CORRECTION_MS`] only the last is told.
    pub earlier: Vec<Done>,
    /// When it was corrected last.
    pub corrected: Option<Moment>,
    /// The load that was proposed.
    pub proposed: Option<Load>,
}

impl Logged {
    /// Takes a correction in.
    pub(super) fn correct(&mut self, done: &Done, at: Moment) {
        let before = std::mem::replace(&mut self.done, done.clone());
        let last = self.corrected.replace(at);
        if last.is_none_or(|last| at.since(&last) > ONE_CORRECTION_MS) {
            self.earlier.push(before);
        }
    }
}

/// What became of a planned set.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Status {
    /// Still to be done.
    Pending,
    /// Logged.
    Done(Box<Logged>),
    /// Passed over.
    Skipped,
}

/// A planned set and what became of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Slot {
    /// The set as planned.
    pub planned: PlannedSet,
    /// What became of it.
    pub status: Status,
    /// Which of the state's swaps it is done by; none: as written.
    pub swap: Option<usize>,
    /// Load chosen in place of the proposed one.
    pub load: Option<Load>,
    /// Reps to offer in place of the prescribed ones.
    pub reps: Option<Reps>,
    /// Amount to offer in place of the prescribed one, where reps alone do not say it.
    pub amount: Option<Amount>,
    /// What was cued until it was called off: offered before all else.
    pub heard: Option<Amount>,
    /// True when reps or amount were chosen since it was started: the cues do not count over a hand.
    pub by_hand: bool,
    /// Reserve said before it was logged.
    pub reserve: Option<Rir>,
    /// Note on it.
    pub note: Option<Note>,
}

impl Slot {
    /// What was logged, if it was.
    #[must_use]
    pub fn logged(&self) -> Option<&Logged> {
        match &self.status {
            Status::Done(logged) => Some(logged),
            Status::Pending | Status::Skipped => None,
        }
    }
}

/// What the heat made of a rest.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct InHeat {
    /// The category of the heat when the rest began; never none.
    pub category: Category,
    /// The length that the rest began with.
    pub length: Seconds,
}

/// A rest that was begun.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Rest {
    /// The set it follows.
    pub after: SetKey,
    /// When it began.
    pub since: Moment,
    /// Its length in milliseconds, stretches taken in.
    pub length_ms: u64,
    /// Set when it stays open until the next set is begun: milliseconds that were left of it when it was held, 0 where it
    /// was over.
    pub held: Option<u64>,
    /// What the heat made of it, where it is longer than planned.
    pub heat: Option<InHeat>,
}

impl Rest {
    /// Why it is longer than planned, where the heat made it so.
    #[must_use]
    pub fn because(&self) -> Option<String> {
        let heat = self.heat?;
        heat.category.because(heat.length)
    }

    /// Milliseconds left at `now`: below zero once it is over. None when it is held open.
    #[must_use]
    pub fn left_ms(&self, now: &Moment) -> Option<i64> {
        self.held.is_none().then(|| self.running_ms(now))
    }

    /// Milliseconds that the session counts for it from `now` on: what is left of it, below zero once it is over. Held open
    /// it takes at least what was left, however long that is ago: waiting makes no session shorter.
    #[must_use]
    pub fn to_come_ms(&self, now: &Moment) -> i64 {
        match self.held {
            Some(left) => i64::try_from(left).unwrap_or(i64::MAX),
            None => self.running_ms(now),
        }
    }

    /// Holds it open from that moment on, unless it is held already.
    pub(super) fn hold(&mut self, now: &Moment) {
        let left = u64::try_from(self.running_ms(now)).unwrap_or(0);
        self.held = self.held.or(Some(left));
    }

    fn running_ms(&self, now: &Moment) -> i64 {
        self.length_ms as i64 - now.since(&self.since) as i64
    }
}

/// What is going on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Phase {
    /// The set may be begun or logged.
    Ready,
    /// That set was started at that moment and its cues run.
    Working {
        /// The set.
        set: SetKey,
        /// When it was started.
        since: Moment,
    },
    /// A rest was begun; it may be over.
    Resting(Rest),
    /// Nothing is left to do; the session waits to be ended.
    AllDone,
    /// The session ended at that moment.
    Ended(Moment),
}

/// What was added to the plan and taken off it.
#[derive(Debug, Default)]
pub(super) struct Changes {
    pub added: Added,
    pub dropped: Vec<SetKey>,
}
