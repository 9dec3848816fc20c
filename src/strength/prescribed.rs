//! What the load of a set is worked out from, and what comes out.

use super::because::{Because, Proposal};
use super::set_because::SetBecause;
use crate::sheet::SetKey;
use crate::units::{Load, Reps, Rir, Share};

/// A set of this session that is over: done, or passed over (then without load and reps).
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DoneSet {
    /// Its key.
    pub key: SetKey,
    /// The load, as written on the block's basis.
    pub load: Option<Load>,
    /// The reps that were counted.
    pub reps: Option<Reps>,
    /// Reps in reserve, when said.
    pub reserve: Option<Rir>,
}

/// What the loads of a block start from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Base {
    /// The work load as proposed; none where there is none.
    pub load: Option<Load>,
    /// True for the first time at an exercise, when the reserve said leads from set to set.
    pub guided: bool,
    /// What a light week left of the usual work load, where that was made light.
    pub light: Option<Share>,
}

impl From<Option<Load>> for Base {
    fn from(load: Option<Load>) -> Base {
        Base {
            load,
            guided: false,
            light: None,
        }
    }
}

impl From<&Proposal> for Base {
    fn from(proposal: &Proposal) -> Base {
        Base {
            load: proposal.load,
            guided: matches!(
                proposal.because,
                Because::GuidedStart { .. } | Because::NothingKnown {}
            ),
            light: match proposal.because {
                Because::LightWeek { share, .. } => Some(share),
                _ => None,
            },
        }
    }
}

/// The load of a set with its because.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Prescribed {
    /// The load, one that the kit can make; none where there is no load or nothing is known.
    pub load: Option<Load>,
    /// Where it comes from.
    pub because: SetBecause,
    /// True while a guided start looks for the work load and needs to be told the reps in reserve.
    pub guided: bool,
}
