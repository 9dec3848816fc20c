//! How long a session still takes: from tempo, reps, rests and change-overs.

use super::event::Moment;
use super::slot::{Phase, Status};
use super::state::State;
use crate::sheet::{PlannedSet, Stage, Target};

/// Seconds of one repetition whose tempo is not prescribed. Common practice, no source.
const REP_SECONDS: u64 = 3;
/// Seconds from one exercise to the next beyond the rest, until the lifter's own are known. Common practice, no source.
const CHANGE_OVER_SECONDS: u64 = 60;
/// Seconds of a metre carried, at an easy walk. Common practice, no source.
const METRE_SECONDS: u64 = 1;

/// Predicted seconds under way in one set.
#[must_use]
pub fn set_seconds(set: &PlannedSet) -> u64 {
    let rep = |tempo: Option<crate::sheet::Tempo>| {
        tempo.map_or(REP_SECONDS, |tempo| u64::from(tempo.rep_seconds()))
    };
    let one = match &set.target {
        Target::Reps(_) => set.offered.map_or(0, |reps| u64::from(reps.get())) * rep(set.tempo),
        Target::Timed(seconds) => u64::from(seconds.get()),
        Target::Distance(metres) => u64::from(metres.get()) * METRE_SECONDS,
        Target::Stages(stages) => stages
            .iter()
            .map(|stage| match stage {
                Stage::Hold { seconds } => u64::from(seconds.get()),
                Stage::Reps { reps, tempo } => {
                    u64::from(reps.top().get()) * u64::from(tempo.rep_seconds())
                }
                Stage::Partials { reps } => u64::from(reps.top().get()) * REP_SECONDS,
            })
            .sum(),
    };
    one * u64::from(set.sides.rounds())
}

impl State {
    /// Predicted seconds from `now` to the end of the last set that is still to be done.
    #[must_use]
    pub fn seconds_left(&self, now: &Moment) -> u64 {
        let pending: Vec<&PlannedSet> = self
            .slots
            .iter()
            .filter(|slot| slot.status == Status::Pending)
            .map(|slot| &slot.planned)
            .collect();
        let sets: u64 = pending.iter().map(|set| set_seconds(set)).sum();
        let between: u64 = pending
            .windows(2)
            .map(|pair| {
                let change_over = if pair[0].group == pair[1].group {
                    0
                } else {
                    CHANGE_OVER_SECONDS
                };
                u64::from(pair[0].rest_before(pair[1]).get()) + change_over
            })
            .sum();
        let rest = match &self.phase {
            Phase::Resting(rest) => rest
                .left_ms(now)
                .map_or(0, |ms| u64::try_from(ms).unwrap_or(0) / 1000),
            _ => 0,
        };
        rest + sets + between
    }
}
