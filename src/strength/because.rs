//! Where a prescribed number comes from, as data; one sentence on screen.

use crate::sheet::BlockId;
use crate::units::{Load, Reps, Rir, Share};
use serde::{Deserialize, Serialize};
use std::fmt;

/// Why a work load is what it is.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Because {
    /// Nothing is known yet; the sheet names a load to start from.
    StartOfSheet {},
    /// Nothing is known and the sheet names no load: choose one that feels light.
    NothingKnown {},
    /// The block has no load.
    NoLoad {},
    /// The sheet's own load, never changed by a rule.
    AsWritten {},
    /// Top of the range reached: a step up.
    TopReached {
        reps: Vec<Reps>,
        at: Load,
        top: Reps,
    },
    /// Inside the range: same load, more reps.
    InRange {
        reps: Vec<Reps>,
        at: Load,
        top: Reps,
    },
    /// Below the range: a step down.
    BelowRange {
        reps: Vec<Reps>,
        at: Load,
        low: Reps,
    },
    /// Two over the goal, twice running: a step up.
    TwoOverTwice {
        reps: [Reps; 2],
        at: Load,
        goal: Reps,
    },
    /// Not yet two over the goal, twice running: same load.
    NotTwiceYet {
        reps: Option<Reps>,
        at: Load,
        goal: Reps,
    },
    /// Every rep was done: the fixed step.
    AllDone { at: Load },
    /// Not every rep was done: same load.
    NotAllDone { at: Load },
    /// A share of the estimate.
    ShareOfE1rm { share: Share, e1rm: Load },
    /// More left than aimed at: a step up.
    MoreInReserve { reserve: Rir, aim: Rir, at: Load },
    /// As much left as aimed at: same load.
    AsAimed { reserve: Rir, at: Load },
    /// Less left than aimed at: a step down.
    LessInReserve { reserve: Rir, aim: Rir, at: Load },
    /// No reserve was said: same load.
    NoReserveSaid { at: Load },
    /// There was nothing further that this kit can make.
    KitEnds { at: Load, up: bool },
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

impl fmt::Display for Because {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{self:?}")
    }
}
