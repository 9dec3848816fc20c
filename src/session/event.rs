//! The events of a session: the only truth there is about it.

use super::done::{Amount, Done};
use super::swap::Swap;
use crate::heat::Air;
use crate::sheet::{BlockId, Note, SetKey, Sheet};
use crate::strength::{Curve, Proposal};
use crate::units::{Load, Reps, Rir, Rpe};
use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Deserializer, Serialize};
use uuid::Uuid;

/// What identifies a session.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct SessionId(pub Uuid);

/// What identifies an event; UUIDv7, rising within a device, so that the order of ids is the order of events.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct EventId(pub Uuid);

/// A reading of the monotonic clock: comparable only within one run of the program.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Tick {
    /// The run of the program, a random number.
    pub run: u32,
    /// Milliseconds since that run began.
    pub ms: u64,
}

/// A point in time on both clocks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Moment {
    /// Wall time with offset.
    pub at: DateTime<FixedOffset>,
    /// Monotonic clock.
    pub tick: Tick,
}

impl Moment {
    /// Milliseconds from `earlier` to `self`, never negative.
    ///
    /// Within one run of the program the larger of both clocks' answers counts: the monotonic clock stands still
    /// while some devices sleep, and the wall clock may be set back. Across runs there is the wall clock only.
    #[must_use]
    pub fn since(&self, earlier: &Moment) -> u64 {
        let wall = u64::try_from((self.at - earlier.at).num_milliseconds()).unwrap_or(0);
        if self.tick.run == earlier.tick.run {
            wall.max(self.tick.ms.saturating_sub(earlier.tick.ms))
        } else {
            wall
        }
    }
}

/// One event.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Event {
    /// Identity.
    pub id: EventId,
    /// Wall time with offset.
    pub at: DateTime<FixedOffset>,
    /// Monotonic clock.
    pub tick: Tick,
    /// What happened.
    pub what: What,
}

impl Event {
    /// When it happened, on both clocks.
    #[must_use]
    pub fn moment(&self) -> Moment {
        Moment {
            at: self.at,
            tick: self.tick,
        }
    }
}

/// The head of a session: everything that its floor needs, whatever is changed elsewhere meanwhile.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Began {
    /// The session.
    pub session: SessionId,
    /// The sheet as it was.
    pub sheet: Sheet,
    /// Body mass on the day, when known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub body_mass: Option<Load>,
    /// What was proposed for each block, with its because.
    pub proposals: Vec<Proposal>,
    /// True in a light week: sheet and proposals are the lightened ones, and what is done says nothing of the next
    /// load.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub light: bool,
    /// The curve that the maximum is estimated by in this session, whatever is chosen later.
    #[serde(default, skip_serializing_if = "Curve::is_default")]
    pub curve: Curve,
    /// Who trains along at the same rack; none for one who trains alone.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub along: Option<Along>,
}

/// Who trains along at the same rack, each in a session of their own.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Along {
    /// The other lifter, by the list of the phone on which both were.
    pub lifter: Uuid,
    /// Their session.
    pub session: SessionId,
    /// True for the session of the one who began: whose kit both use, and who stands on the left.
    pub first: bool,
}

/// What can happen in a session.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum What {
    /// The session began.
    Began(Box<Began>),
    /// A set was started: count-in, then its cues.
    #[serde(deserialize_with = "set_alone")]
    SetStarted {
        /// The set.
        set: SetKey,
    },
    /// A started set was called off before anything was logged.
    SetStopped {
        /// The set.
        set: SetKey,
        /// How much of it had been cued by then, which the next tap on the pad logs; none where nothing was counted, or
        /// where all of it was.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        heard: Option<Amount>,
    },
    /// A set was logged; its rest begins.
    SetDone {
        /// The set.
        set: SetKey,
        /// What was done.
        done: Done,
        /// The load that was proposed, when there was one.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        proposed: Option<Load>,
    },
    /// A logged set was corrected; the log of before is kept.
    SetAmended {
        /// The set.
        set: SetKey,
        /// What was done instead.
        done: Done,
    },
    /// A set was passed over.
    #[serde(deserialize_with = "set_alone")]
    SetSkipped {
        /// The set.
        set: SetKey,
    },
    /// A set more in a line of a block.
    SetAdded {
        /// The block.
        block: BlockId,
        /// Line of its prescription.
        line: u8,
    },
    /// A set taken off the plan.
    #[serde(deserialize_with = "set_alone")]
    SetDropped {
        /// The set.
        set: SetKey,
    },
    /// What is left of a block is done as another exercise. Sets that were logged stay what they were.
    BlockSwapped(Box<Swap>),
    /// The groups are done in another order.
    OrderChanged {
        /// Indices of the sheet's groups, each once.
        groups: Vec<u8>,
    },
    /// Another load was chosen for a set than proposed.
    LoadChosen {
        /// The set.
        set: SetKey,
        /// The load.
        load: Load,
        /// What was proposed.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        proposed: Option<Load>,
    },
    /// Another number of reps than prescribed is offered at the tap.
    RepsChosen {
        /// The set.
        set: SetKey,
        /// The number.
        reps: Reps,
    },
    /// Another amount than prescribed is offered at the tap: where reps alone do not say it, as of sides that differ.
    AmountChosen {
        /// The set.
        set: SetKey,
        /// How much.
        amount: Amount,
    },
    /// Reps in reserve said before the set is logged.
    ReserveChosen {
        /// The set.
        set: SetKey,
        /// What is left in reserve.
        reserve: Rir,
    },
    /// The rest under way was stretched (or shortened, below zero).
    RestChanged {
        /// By so many seconds.
        by_seconds: i32,
    },
    /// The rest under way stays open until the next set is begun.
    RestHeld,
    /// The rest under way was cut.
    RestEnded,
    /// Temperature and humidity were typed in; rests begun from now on follow them. The newest counts.
    AirNoted {
        /// The air.
        air: Air,
    },
    /// A note on the session or on one set; it replaces an earlier note there.
    Noted {
        /// The set, or none for the whole session.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        set: Option<SetKey>,
        /// The text; empty takes the note away.
        text: Note,
    },
    /// The session was rated.
    Rated {
        /// Session RPE.
        rpe: Rpe,
    },
    /// The session ended.
    Ended,
    /// It went on after its end: at most three hours later.
    Resumed,
    /// An earlier event does not count any more. An undo can itself be undone.
    Undone {
        /// That event.
        event: EventId,
    },
}

/// `{set}`, which three events share: the derived reader would hold it once an event.
fn set_alone<'de, D: Deserializer<'de>>(source: D) -> Result<SetKey, D::Error> {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Form {
        set: SetKey,
    }
    Ok(Form::deserialize(source)?.set)
}
