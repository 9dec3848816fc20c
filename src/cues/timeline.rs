//! A set or a rest laid out in time: what is cued when, and which phase runs from when to when.

/// What runs at a time, for painting.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Phase {
    /// Before the start.
    CountIn,
    /// Lowering, lengthening.
    Eccentric,
    /// Pause where the muscle is long.
    Stretch,
    /// Lifting, shortening.
    Concentric,
    /// Pause where the muscle is short.
    Squeeze,
    /// Holding still.
    Hold,
    /// One partial repetition.
    Partial,
    /// Pause inside a cluster.
    Pause,
    /// From one side to the other.
    ChangeOver,
    /// Rest after a set.
    Rest,
}

/// What is heard.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Cue {
    /// A second of the count-in.
    CountIn {
        /// Seconds left to the start.
        left: u8,
    },
    /// Start: of a hold, or of a set that is not paced.
    Go,
    /// A phase of a repetition begins.
    Rep {
        /// Which: eccentric, stretch, concentric or squeeze.
        phase: Phase,
        /// As fast as possible, a single go.
        fast: bool,
        /// The mark of the last repetition, on its first phase.
        last_rep: bool,
    },
    /// A partial repetition begins.
    Partial {
        /// The mark of the last one.
        last_rep: bool,
    },
    /// Half of a hold is done.
    Halfway,
    /// One of the last seconds of a hold, a pause, a change-over or a rest.
    Left {
        /// Seconds left.
        seconds: u8,
    },
    /// The next stage begins in half a second.
    StageChange,
    /// Change to the other side.
    SideSwitch,
    /// A pause inside a cluster begins.
    PauseStart,
    /// The set is done.
    SetEnd,
    /// Half of the rest is over.
    RestHalf,
    /// Ten seconds of rest are left.
    RestSoon,
    /// The rest is over.
    RestEnd,
}

/// A cue with its time.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Cued {
    /// When it is heard, in milliseconds from the start of the timeline.
    pub at_ms: u32,
    /// How long that lasts which it announces, in milliseconds; 0 for a mere mark.
    pub len_ms: u32,
    /// What is heard.
    pub cue: Cue,
}

/// What runs from when to when.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Span {
    /// Start, in milliseconds.
    pub from_ms: u32,
    /// End, in milliseconds, after the start.
    pub to_ms: u32,
    /// What runs.
    pub what: Phase,
    /// Number of the repetition, from 1; 0 outside repetitions.
    pub rep: u16,
    /// Repetitions of this portion or stage; 0 outside repetitions.
    pub rep_total: u16,
    /// Side, from 0; always 0 where both work together.
    pub side: u8,
    /// Portion of a cluster, from 0.
    pub portion: u8,
    /// Stage of a staged set, from 0.
    pub stage: u8,
}

/// Whether a timeline knows its end.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Length {
    /// It ends then, in milliseconds.
    Ends {
        /// When.
        at_ms: u32,
    },
    /// Nothing is paced from then on; the lifter says when the set is done.
    Open {
        /// From when.
        from_ms: u32,
    },
}

/// A set or a rest laid out in time.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Timeline {
    /// Cues, each later than the one before, none after [`Timeline::length_ms`].
    pub cues: Vec<Cued>,
    /// How long it is, or from when on it is open.
    pub length: Length,
    /// What runs when, without gaps from 0 to [`Timeline::length_ms`].
    pub phases: Vec<Span>,
}

impl Timeline {
    /// Milliseconds that are laid out: all of a timeline that ends, or the part before it is open.
    #[must_use]
    pub fn length_ms(&self) -> u32 {
        match self.length {
            Length::Ends { at_ms } => at_ms,
            Length::Open { from_ms } => from_ms,
        }
    }

    /// True when the lifter says when the set is done.
    #[must_use]
    pub fn is_open(&self) -> bool {
        matches!(self.length, Length::Open { .. })
    }
}
