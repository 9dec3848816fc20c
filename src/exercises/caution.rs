//! Cautions that exercises share: common practice, no source; a qualified coach's word goes before them.

/// What can hurt, and what to do about it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Caution {
    Hinge,
    BentOver,
    SafetyBars,
    BenchAlone,
    DumbbellsDown,
    OverTheFace,
    Overhead,
    Coach,
    MissedBar,
    Landing,
    FirmSupport,
    RearFoot,
    Hanging,
    StepDown,
    Shoulders,
    BandWear,
    ClearPath,
    ThrowRoom,
    Neck,
    SlowStart,
}

impl Caution {
    /// Every caution, in the order in which they are read.
    pub(super) const ALL: [Caution; 20] = [
        Caution::Hinge,
        Caution::BentOver,
        Caution::SafetyBars,
        Caution::BenchAlone,
        Caution::DumbbellsDown,
        Caution::OverTheFace,
        Caution::Overhead,
        Caution::Coach,
        Caution::MissedBar,
        Caution::Landing,
        Caution::FirmSupport,
        Caution::RearFoot,
        Caution::Hanging,
        Caution::StepDown,
        Caution::Shoulders,
        Caution::BandWear,
        Caution::ClearPath,
        Caution::ThrowRoom,
        Caution::Neck,
        Caution::SlowStart,
    ];

    /// The sentence as it is kept, in English; [`Line::said`](crate::sheet::Line::said) says it in the language that is
    /// spoken. `tests/words` finds its texts by the list of exercises.
    pub(super) fn english(self) -> &'static str {
        match self {
            Caution::Hinge => {
                "A hinge: brace, keep the trunk angle; when it drifts, take load off."
            }
            Caution::BentOver => {
                "Bent over: brace, keep the trunk angle; when it drifts, take load off."
            }
            Caution::SafetyBars => {
                "Set the safety bars just below the lowest point before the first set, or have a spotter."
            }
            Caution::BenchAlone => {
                "Heavy or near failure only between safety bars or with a spotter; never alone without."
            }
            Caution::DumbbellsDown => {
                "Alone, keep a rep in reserve: dumbbells are put down, never dropped from above the chest."
            }
            Caution::OverTheFace => {
                "The load is above the face: stop well before failure when alone."
            }
            Caution::Overhead => "Room overhead, and nobody within two metres.",
            Caution::Coach => "Learn it with a qualified coach, light, before load goes on.",
            Caution::MissedBar => {
                "Know how to miss: hands off, step away, let the bar fall on a clear floor."
            }
            Caution::Landing => {
                "Land softly, knees over the feet; when landings get loud, the set is over."
            }
            Caution::FirmSupport => "The box or bench stands firm and cannot slip or tip.",
            Caution::RearFoot => "The rear foot rests on something that cannot slip or tip.",
            Caution::Hanging => {
                "Try what you hang from with your full weight before the first rep."
            }
            Caution::StepDown => "Step down from a box, do not drop off the bar with the load on.",
            Caution::Shoulders => "Only as far as the shoulders go without pain.",
            Caution::BandWear => {
                "Look the band over for cracks, check its anchor, keep it out of line with the eyes."
            }
            Caution::ClearPath => {
                "Clear the path first; put the load down before grip or posture goes."
            }
            Caution::ThrowRoom => "Nobody in line; mind what comes back from the wall or floor.",
            Caution::Neck => {
                "Light and slow; stop at dizziness, tingling or pain. Old neck trouble: ask a physician first."
            }
            Caution::SlowStart => {
                "Begin with few reps and part of the range: it makes muscles very sore, and can strain them."
            }
        }
    }

    /// This caution's bit in a set of cautions.
    pub(super) const fn bit(self) -> u32 {
        1 << self as u32
    }
}
