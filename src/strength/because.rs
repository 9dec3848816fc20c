//! Where a proposed work load comes from, as data; its words are in `words`.

use super::because_forms as forms;
use super::maximum::WithBody;
use super::moved::{Missed, Moved};
use crate::sheet::BlockId;
use crate::units::{Load, Reps, Rir, Share};
use serde::{Deserialize, Serialize};

/// Why a work load is what it is.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Because {
    /// Nothing is known yet; the sheet names a load to start from.
    #[serde(deserialize_with = "forms::made")]
    StartOfSheet {
        /// The sheet's load.
        wanted: Load,
        /// What the kit makes of it.
        to: Load,
    },
    /// Nothing is known, the sheet names no load and the kit has none to begin with: choose one that feels light.
    NothingKnown {},
    /// Nothing is known and the sheet names no load: the lightest there is, and the reserve said leads from set to set.
    GuidedStart {
        /// The lightest load of the kit.
        to: Load,
    },
    /// The block has no load.
    NoLoad {},
    /// The kit makes nothing as light as that.
    OutOfKit {
        /// What was wanted.
        wanted: Load,
        /// The easiest load that the kit makes, if it makes any.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        easiest: Option<Load>,
    },
    /// The sheet's own load, never changed by a rule.
    #[serde(deserialize_with = "forms::made")]
    AsWritten {
        /// The sheet's load.
        wanted: Load,
        /// What the kit makes of it.
        to: Load,
    },
    /// There is nothing to judge by in the sets of last time: the same load.
    #[serde(deserialize_with = "forms::moved")]
    SameAsLast {
        /// From which load to which.
        moved: Moved,
    },
    /// The load was made easier in the middle of last time's work sets: the same load to begin with, no step up.
    Lightened {
        /// The load that was tried and left, where it is harder than the one to go on from.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        tried: Option<Load>,
        /// The easiest load of last time's work sets.
        down_to: Load,
        /// From which load to which.
        moved: Moved,
    },
    /// Double progression: top of the range reached, a step up.
    #[serde(deserialize_with = "forms::ranged")]
    TopReached {
        /// Reps of last time's work sets in order.
        reps: Vec<Reps>,
        /// Bottom of the range.
        low: Reps,
        /// Top of the range.
        top: Reps,
        /// From which load to which.
        moved: Moved,
    },
    /// Double progression: inside the range, same load, more reps.
    #[serde(deserialize_with = "forms::ranged")]
    InRange {
        /// Reps of last time's work sets in order.
        reps: Vec<Reps>,
        /// Bottom of the range.
        low: Reps,
        /// Top of the range.
        top: Reps,
        /// From which load to which.
        moved: Moved,
    },
    /// Double progression: top of the range reached, but the next load is more than 10 % up: same load, more reps first.
    StepWaits {
        /// Reps of last time's work sets in order.
        reps: Vec<Reps>,
        /// Bottom of the range, which is to come with the next load.
        low: Reps,
        /// Reps that come first at this load.
        aim: Reps,
        /// True where the last set alone must have them.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        last: bool,
        /// The next load that the kit makes.
        next: Load,
        /// From which load to which.
        moved: Moved,
    },
    /// Double progression: below the range, a step down.
    #[serde(deserialize_with = "forms::ranged")]
    BelowRange {
        /// Reps of last time's work sets in order.
        reps: Vec<Reps>,
        /// Bottom of the range.
        low: Reps,
        /// Top of the range.
        top: Reps,
        /// From which load to which.
        moved: Moved,
    },
    /// Two or more over the goal in the last set, twice running: a step up.
    TwoOverTwice {
        /// Reps of the last set, the time before last and last time.
        reps: [Reps; 2],
        /// Reps asked for.
        goal: Reps,
        /// From which load to which.
        moved: Moved,
    },
    /// Not two over the goal twice running at this load: same load.
    NotTwiceYet {
        /// Reps of the last set last time.
        reps: Reps,
        /// Reps asked for.
        goal: Reps,
        /// From which load to which.
        moved: Moved,
    },
    /// Every rep was done: the fixed step.
    #[serde(deserialize_with = "forms::moved")]
    AllDone {
        /// From which load to which.
        moved: Moved,
    },
    /// Not every rep was done: same load.
    #[serde(deserialize_with = "forms::moved")]
    NotAllDone {
        /// From which load to which.
        moved: Moved,
    },
    /// Not every work set was done, of those that were each is enough for a step up: same load.
    CutShort {
        /// Work sets that were done.
        done: u8,
        /// Work sets of the block, more than that.
        planned: u8,
        /// From which load to which.
        moved: Moved,
    },
    /// A share of the estimate.
    ShareOfE1rm {
        /// The share.
        share: Share,
        /// The estimated one-repetition maximum.
        e1rm: Load,
        /// What the kit makes of it, nearest below.
        to: Load,
    },
    /// Never done like this, but otherwise: the share of the estimate with which the most reps asked for can be done with
    /// the reserve left, nearest below.
    FromEstimate {
        /// The most reps that a work set asks for.
        reps: Reps,
        /// Reps in reserve aimed at.
        reserve: Rir,
        /// The share that goes with both.
        share: Share,
        /// The estimated one-repetition maximum.
        e1rm: Load,
        /// So many steps below that, since the loads rise from set to set.
        below: u8,
        /// The load, one that the kit can make.
        to: Load,
    },
    /// A share of the estimate, the body being part of what is moved.
    ShareWithBody(WithBody),
    /// A light week: a share of what would have been proposed, or more assistance.
    LightWeek {
        /// The share.
        share: Share,
        /// What would have been proposed.
        usual: Load,
        /// What the kit makes of it, never harder than usual.
        to: Load,
    },
    /// A share of the estimate is asked for and there is none: same load.
    #[serde(deserialize_with = "forms::moved")]
    NoEstimate {
        /// From which load to which.
        moved: Moved,
    },
    /// A share of the estimate is asked for, the body is moved and its mass is not known: same load.
    #[serde(deserialize_with = "forms::moved")]
    BodyMassUnknown {
        /// From which load to which.
        moved: Moved,
    },
    /// More left than aimed at: a step up.
    #[serde(deserialize_with = "forms::reserve")]
    MoreInReserve {
        /// Reps in reserve in the last work set.
        reserve: Rir,
        /// Reps in reserve aimed at.
        aim: Rir,
        /// From which load to which.
        moved: Moved,
    },
    /// As much left as aimed at: same load.
    AsAimed {
        /// Reps in reserve in the last work set.
        reserve: Rir,
        /// From which load to which.
        moved: Moved,
    },
    /// Less left than aimed at: a step down.
    #[serde(deserialize_with = "forms::reserve")]
    LessInReserve {
        /// Reps in reserve in the last work set.
        reserve: Rir,
        /// Reps in reserve aimed at.
        aim: Rir,
        /// From which load to which.
        moved: Moved,
    },
    /// No reserve was said: same load.
    #[serde(deserialize_with = "forms::moved")]
    NoReserveSaid {
        /// From which load to which.
        moved: Moved,
    },
    /// Reps were missed and yet there were more left than aimed at: same load.
    Disagrees {
        /// Repetitions of the set that missed.
        reps: Reps,
        /// How many were asked for at least.
        low: Reps,
        /// Reps in reserve in the last work set.
        reserve: Rir,
        /// From which load to which.
        moved: Moved,
    },
    /// The last time is long ago: less to come back.
    AfterBreak {
        /// Whole days since the last time.
        days: u32,
        /// How much lighter; none for one step.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        less: Option<Share>,
        /// From which load to which.
        moved: Moved,
    },
    /// The last time lies ahead by this clock, which may have been set back: no step up until it is right.
    LiesAhead {
        /// Whole days that it lies ahead.
        days: u32,
        /// From which load to which.
        moved: Moved,
    },
    /// The bottom was missed in three sessions running: less, to go on from there.
    Deload {
        /// Those sessions, the newest last.
        missed: [Missed; 3],
        /// How much lighter.
        less: Share,
        /// From which load to which.
        moved: Moved,
    },
}

impl Because {
    /// True when it asks for the body mass.
    #[must_use]
    pub fn asks_body_mass(&self) -> bool {
        matches!(self, Because::BodyMassUnknown { .. })
    }

    /// From which load to which, where a rule looked at last time.
    #[must_use]
    pub fn moved(&self) -> Option<&Moved> {
        match self {
            Because::SameAsLast { moved }
            | Because::Lightened { moved, .. }
            | Because::TopReached { moved, .. }
            | Because::InRange { moved, .. }
            | Because::StepWaits { moved, .. }
            | Because::BelowRange { moved, .. }
            | Because::TwoOverTwice { moved, .. }
            | Because::NotTwiceYet { moved, .. }
            | Because::AllDone { moved }
            | Because::NotAllDone { moved }
            | Because::CutShort { moved, .. }
            | Because::NoEstimate { moved }
            | Because::BodyMassUnknown { moved }
            | Because::MoreInReserve { moved, .. }
            | Because::AsAimed { moved, .. }
            | Because::LessInReserve { moved, .. }
            | Because::NoReserveSaid { moved }
            | Because::Disagrees { moved, .. }
            | Because::AfterBreak { moved, .. }
            | Because::LiesAhead { moved, .. }
            | Because::Deload { moved, .. } => Some(moved),
            Because::StartOfSheet { .. }
            | Because::NothingKnown {}
            | Because::GuidedStart { .. }
            | Because::NoLoad {}
            | Because::OutOfKit { .. }
            | Because::AsWritten { .. }
            | Because::ShareOfE1rm { .. }
            | Because::FromEstimate { .. }
            | Because::ShareWithBody(_)
            | Because::LightWeek { .. } => None,
        }
    }

    /// The load that it gives reasons for; none where there is none.
    #[must_use]
    pub fn load(&self) -> Option<Load> {
        match self {
            Because::StartOfSheet { to, .. }
            | Because::GuidedStart { to }
            | Because::AsWritten { to, .. }
            | Because::ShareOfE1rm { to, .. }
            | Because::FromEstimate { to, .. }
            | Because::ShareWithBody(WithBody { to, .. })
            | Because::LightWeek { to, .. } => Some(*to),
            _ => self.moved().map(|moved| moved.to),
        }
    }
}

/// What is proposed for a block, with its because.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Proposal {
    /// The block.
    pub block: BlockId,
    /// The work load, always one that the kit can make; none where there is no load or nothing is known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub load: Option<Load>,
    /// Where it comes from.
    pub because: Because,
}
