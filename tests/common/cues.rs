//! Every cue there is, made so that none can be forgotten. Whoever includes this file has `Cue` and `Phase` in scope.

use super::{Cue, Phase};

/// From one list two things: the cues in it, and a match on their patterns, which does not compile while a cue or a phase
/// of a repetition is in none of them.
macro_rules! cues {
    ($($pattern:pat => [$($cue:expr),*],)+) => {
        /// Each cue that sounds in its own way, with the mark of the last repetition and without.
        pub fn every_cue() -> Vec<Cue> {
            let _each_is_listed = |cue: Cue| match cue {
                $($pattern => (),)+
            };
            [$(&[$($cue),*] as &[Cue]),+].concat()
        }
    };
}

fn rep(phase: Phase, fast: bool, last_rep: bool) -> Cue {
    Cue::Rep {
        phase,
        fast,
        last_rep,
    }
}

cues! {
    Cue::CountIn { .. } => [Cue::CountIn { left: 1 }],
    Cue::Go => [Cue::Go],
    // A fast phase sounds the same whichever it is.
    Cue::Rep { fast: true, .. } => [rep(Phase::Concentric, true, false), rep(Phase::Concentric, true, true)],
    Cue::Rep { phase: Phase::Eccentric, .. } => [rep(Phase::Eccentric, false, false), rep(Phase::Eccentric, false, true)],
    Cue::Rep { phase: Phase::Stretch, .. } => [rep(Phase::Stretch, false, false), rep(Phase::Stretch, false, true)],
    Cue::Rep { phase: Phase::Concentric, .. } => [rep(Phase::Concentric, false, false), rep(Phase::Concentric, false, true)],
    Cue::Rep { phase: Phase::Squeeze, .. } => [rep(Phase::Squeeze, false, false), rep(Phase::Squeeze, false, true)],
    // Phases that are no part of a repetition.
    Cue::Rep {
        phase: Phase::CountIn | Phase::Hold | Phase::Partial | Phase::Pause | Phase::ChangeOver | Phase::Rest, ..
    } => [],
    Cue::Partial { .. } => [Cue::Partial { last_rep: false }, Cue::Partial { last_rep: true }],
    Cue::Halfway => [Cue::Halfway],
    Cue::Left { .. } => [Cue::Left { seconds: 1 }],
    Cue::StageChange => [Cue::StageChange],
    Cue::SideSwitch => [Cue::SideSwitch],
    Cue::PauseStart => [Cue::PauseStart],
    Cue::SetEnd => [Cue::SetEnd],
    Cue::RestHalf => [Cue::RestHalf],
    Cue::RestSoon => [Cue::RestSoon],
    Cue::RestEnd => [Cue::RestEnd],
}
