//! The rule that a block's work load follows from one session to the next.

use super::loads::Step;
use crate::units::{Rir, Share};
use crate::words::t;
use serde::{Deserialize, Serialize};

/// Which work sets must reach the top before load is added.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Reach {
    /// Every work set.
    #[default]
    AllSets,
    /// The last work set.
    LastSet,
}

/// A progression rule with its settings.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Progression {
    /// Reps rise inside the range, then the load rises and reps start low again (common practice, no source).
    Double {
        /// Which sets must reach the top.
        #[serde(default)]
        reach: Reach,
        /// Step up when the top is reached.
        #[serde(default)]
        up: Step,
        /// Step down when a set falls below the bottom.
        #[serde(default)]
        down: Step,
    },
    /// Two reps over the goal in the last set, in two sessions running at one load (Baechle & Earle).
    TwoForTwo {
        /// Step up.
        #[serde(default)]
        up: Step,
    },
    /// Load rises by a fixed step whenever every rep was done (common practice, no source).
    Fixed {
        /// Step up.
        #[serde(default)]
        up: Step,
    },
    /// A share of the current estimate of the one-repetition maximum.
    ShareOfE1rm {
        /// The share.
        share: Share,
    },
    /// More reps left than aimed at: up; fewer: down (common practice, no source).
    ByReserve {
        /// Reps in reserve aimed at in the last work set.
        aim: Rir,
        /// Step either way.
        #[serde(default)]
        step: Step,
    },
    /// The load stays as written.
    AsWritten,
}

impl Default for Progression {
    fn default() -> Progression {
        Progression::Double {
            reach: Reach::AllSets,
            up: Step::Smallest,
            down: Step::Smallest,
        }
    }
}

impl Progression {
    /// Its name.
    #[must_use]
    pub fn name(&self) -> &'static str {
        t(match self {
            Progression::Double { .. } => "double progression",
            Progression::TwoForTwo { .. } => "2-for-2",
            Progression::Fixed { .. } => "fixed step",
            Progression::ShareOfE1rm { .. } => "share of the estimated maximum",
            Progression::ByReserve { .. } => "by reserve",
            Progression::AsWritten => "as written",
        })
    }

    /// The step up and the step down of a rule that has them.
    #[must_use]
    pub fn steps(&self) -> [Option<Step>; 2] {
        match *self {
            Progression::Double { up, down, .. } => [Some(up), Some(down)],
            Progression::TwoForTwo { up } | Progression::Fixed { up } => [Some(up), None],
            Progression::ByReserve { step, .. } => [Some(step); 2],
            Progression::ShareOfE1rm { .. } | Progression::AsWritten => [None; 2],
        }
    }
}
