//! From a planned set or a rest to its timeline.

use super::build::Builder;
use super::timeline::{Cue, Phase, Timeline};
use crate::sheet::{Digit, PARTIAL_SECONDS, PlannedSet, RepTarget, SetKind, Stage, Target, Tempo};
use crate::units::Seconds;

/// Longest count-in, in seconds.
pub const COUNT_IN_S_MAX: u8 = 30;
/// Pace of partial repetitions, which have no tempo.
pub const PARTIAL_MS: u32 = PARTIAL_SECONDS as u32 * 1000;
/// The mark near the end of a rest, in seconds before it.
pub(super) const REST_SOON_S: u16 = 10;

/// The timeline of a set, from the count-in (at most 30 s) to its end.
///
/// Open ends: reps without a tempo and distances from the go on; as many as possible and sets to failure after the reps
/// that were asked for, where the lifter alone knows the end. A drop is a planned set of its own.
#[must_use]
pub fn set_timeline(set: &PlannedSet, count_in_s: u8) -> Timeline {
    let mut builder = Builder::default();
    builder.count_in(count_in_s.min(COUNT_IN_S_MAX));
    let open = ends_open(set);
    for side in 0..set.sides.rounds() {
        if side > 0 {
            let seconds = set.sides.change_seconds();
            builder.wait(seconds, Phase::ChangeOver, Cue::SideSwitch);
        }
        builder.side = side;
        builder.portion = 0;
        builder.stage = 0;
        let paced = one_side(&mut builder, set, !open);
        if open || !paced {
            return builder.open();
        }
    }
    builder.end(Cue::SetEnd)
}

/// The timeline of a rest: with `half` a mark in the middle, a mark 10 s before its end, the last three seconds, the end.
#[must_use]
pub fn rest_timeline(rest: Seconds, half: bool) -> Timeline {
    let mut builder = Builder::default();
    builder.rest(rest.get(), half, REST_SOON_S);
    builder.end(Cue::RestEnd)
}

/// What is played to show how the cues sound: one beat in, a slow repetition, a fast one, the end of the set.
#[must_use]
pub fn demonstration() -> Timeline {
    let digits = |eccentric, concentric| Tempo {
        eccentric,
        stretch: Digit::Seconds(0),
        concentric,
        squeeze: Digit::Seconds(0),
    };
    let one = Digit::Seconds(1);
    let mut builder = Builder::default();
    builder.count_in(1);
    builder.reps(1, digits(one, one), false);
    builder.reps(1, digits(one, Digit::Fast), true);
    builder.end(Cue::SetEnd)
}

/// True when nobody knows beforehand when the set ends although its start is paced.
fn ends_open(set: &PlannedSet) -> bool {
    let at_least = |reps: &RepTarget| matches!(reps, RepTarget::AtLeast(_));
    let more = match &set.target {
        Target::Reps(reps) => at_least(reps),
        Target::Timed(_) | Target::Distance(_) => false,
        Target::Stages(stages) => match stages.last() {
            Some(Stage::Reps { reps, .. } | Stage::Partials { reps }) => at_least(reps),
            Some(Stage::Hold { .. }) | None => false,
        },
    };
    more || set.kind == SetKind::ToFailure
}

/// The work of one side (or of both together); false when it cannot be paced to its end.
fn one_side(builder: &mut Builder, set: &PlannedSet, mark_last: bool) -> bool {
    match (&set.target, set.tempo) {
        (Target::Reps(_), None) | (Target::Distance(_), _) => {
            builder.go();
            false
        }
        (Target::Reps(reps), Some(tempo)) => {
            let (portions, pause) = match &set.kind {
                SetKind::Cluster { portions, pause } => (*portions, pause.get()),
                _ => (1, 0),
            };
            for portion in 0..portions {
                if portion > 0 {
                    builder.wait(pause, Phase::Pause, Cue::PauseStart);
                }
                builder.portion = portion;
                builder.reps(reps.top().get(), tempo, mark_last);
            }
            true
        }
        (Target::Timed(seconds), _) => {
            builder.hold(seconds.get());
            true
        }
        (Target::Stages(stages), _) => {
            let mut began = builder.now_ms();
            for (index, stage) in stages.iter().enumerate() {
                if index > 0 {
                    builder.stage_mark(began);
                }
                began = builder.now_ms();
                builder.stage = index as u8;
                let mark_last = mark_last || index + 1 < stages.len();
                match stage {
                    Stage::Hold { seconds } => builder.hold(seconds.get()),
                    Stage::Reps { reps, tempo } => {
                        builder.reps(reps.top().get(), *tempo, mark_last);
                    }
                    Stage::Partials { reps } => {
                        builder.partials(reps.top().get(), PARTIAL_MS, mark_last);
                    }
                }
            }
            true
        }
    }
}

#[cfg(test)]
#[path = "plan_tests.rs"]
pub(super) mod tests;

#[cfg(test)]
#[path = "ends_tests.rs"]
mod ends_tests;
