//! Where the load of one set comes from, as data; its words are in `words`.

use super::maximum::WithBody;
use crate::sheet::Equipment;
use crate::units::{Load, Reps, Rir, Share};

/// What a share is taken of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ShareOf {
    /// A ramp-up: of the first work set's load.
    WorkLoad,
    /// A back-off set: of the heaviest load done.
    BackOff,
    /// A drop: of the load before.
    Drop,
    /// Of the heaviest load done so far.
    Top,
    /// Of the work load, while nothing was done that is no share of it.
    Base,
    /// Of the estimated one-repetition maximum.
    E1rm,
    /// Of the work load, in place of a maximum that nothing tells yet.
    InsteadOfE1rm,
    /// Of the heaviest load done so far, in place of a maximum that nothing tells yet.
    InsteadOfE1rmTop,
}

/// What the outcome of a set gives for the next one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OutcomeStep {
    /// Top of the range reached: the large step.
    Large,
    /// Inside the range: the planned step.
    Planned,
    /// Below the range: the same again.
    Stay,
    /// More than two below the range: the planned step down.
    Down,
}

/// What the reserve said gives for the next set of a guided start.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GuidedStep {
    /// Five or more left: a larger step.
    Larger,
    /// More left than aimed at: the usual step.
    Usual,
    /// As many as aimed at in a work set, after a ramp-up: the same once more.
    Same,
    /// Fewer left than aimed at: a step down.
    Down,
}

/// Why a set's load is what it is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum SetBecause {
    /// The block has no load.
    NoLoad,
    /// There is nothing to go by: choose a load that feels light.
    NothingKnown,
    /// The kit makes nothing as light as that.
    OutOfKit {
        /// What was wanted.
        wanted: Load,
    },
    /// The block's work load.
    WorkLoad {
        /// That load.
        to: Load,
    },
    /// As in the set before.
    AsDone {
        /// Its load.
        at: Load,
        /// What the kit makes of it.
        to: Load,
    },
    /// A share of another load.
    Shared {
        /// Which other load.
        of: ShareOf,
        /// The share.
        share: Share,
        /// The other load.
        whole: Load,
        /// The load, nearest below the share where there is one.
        to: Load,
        /// What it is made of.
        on: Equipment,
    },
    /// A share of the estimated one-repetition maximum, the body being part of what is moved.
    ShareWithBody(WithBody),
    /// A share of an assistance says nothing about how hard the set is; a step more assistance instead.
    MoreAssistance {
        /// The assistance that it starts from.
        from: Load,
        /// The load.
        to: Load,
    },
    /// So many planned steps.
    Stepped {
        /// The load that they start from.
        from: Load,
        /// How many, at least 1.
        steps: u8,
        /// True for harder.
        harder: bool,
        /// The load.
        to: Load,
    },
    /// The kit makes nothing beyond, so the same again.
    KitEnds {
        /// That load.
        at: Load,
        /// True where something heavier would have followed.
        heavier: bool,
    },
    /// From the sheet's list.
    Listed {
        /// Number in the list, from 1.
        number: usize,
        /// The listed load.
        wanted: Load,
        /// What the kit makes of it.
        to: Load,
    },
    /// By the outcome of the set before.
    Outcome {
        /// Its reps.
        reps: Reps,
        /// Bottom of its range.
        low: Reps,
        /// Top of its range.
        top: Reps,
        /// What that gives.
        step: OutcomeStep,
        /// The load.
        to: Load,
    },
    /// A guided start: by the reserve said of the set before.
    Guided {
        /// Load of the set before.
        from: Load,
        /// Its reps, where they were counted.
        reps: Option<Reps>,
        /// Reps in reserve said of it.
        reserve: Rir,
        /// The reps that a work set asks for and what would be left in it, where that differs.
        weighed: Option<(Reps, Rir)>,
        /// Reps in reserve aimed at.
        aim: Rir,
        /// What that gives.
        step: GuidedStep,
        /// The load.
        to: Load,
    },
    /// A guided start, and no reserve was said of the set before: the same again.
    GuideUnsaid {
        /// That load.
        to: Load,
    },
    /// A share of the estimate is asked for and there is none: the work load.
    NoEstimate {
        /// That load.
        to: Load,
    },
    /// The same where a share of what another line was done with comes to no less than that: that load once more.
    NoEstimateAgain {
        /// That load.
        to: Load,
    },
    /// A share of the estimate is asked for and there is none: the same share of what another line moves, the body in it.
    InsteadWithBody {
        /// The share.
        share: Share,
        /// What the other line is done with.
        whole: Load,
        /// The load.
        to: Load,
    },
    /// A share of the estimate is asked for, the body is moved and its mass is not known: the work load.
    BodyMassUnknown {
        /// That load.
        to: Load,
    },
}

impl SetBecause {
    /// The load that it gives reasons for; none where there is none.
    #[must_use]
    pub fn load(&self) -> Option<Load> {
        match self {
            SetBecause::NoLoad | SetBecause::NothingKnown | SetBecause::OutOfKit { .. } => None,
            SetBecause::WorkLoad { to }
            | SetBecause::AsDone { to, .. }
            | SetBecause::Shared { to, .. }
            | SetBecause::MoreAssistance { to, .. }
            | SetBecause::Stepped { to, .. }
            | SetBecause::KitEnds { at: to, .. }
            | SetBecause::Listed { to, .. }
            | SetBecause::Outcome { to, .. }
            | SetBecause::Guided { to, .. }
            | SetBecause::GuideUnsaid { to }
            | SetBecause::NoEstimate { to }
            | SetBecause::NoEstimateAgain { to }
            | SetBecause::InsteadWithBody { to, .. }
            | SetBecause::BodyMassUnknown { to }
            | SetBecause::ShareWithBody(WithBody { to, .. }) => Some(*to),
        }
    }
}
