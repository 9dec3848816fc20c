//! Whether sets took the time that their tempo asks for.

use crate::order::Map;
use crate::session::{COUNT_IN_SECONDS, Event, Logged, Moment, Slot, State, What};
use crate::sheet::{SetKey, SetKind, Target};
use serde::{Deserialize, Serialize};

/// How many sets by tempo were timed, and how many of them took the time.
///
/// A set by tempo counts when it has a tempo, asks for plain reps without pauses between them, and was started by ear. From
/// its start, less the count-in, to the tap that stopped or logged it, it must have taken its reps times the digits of the
/// tempo (X as a second), and between two sides the change. A longer time is no fault: when a set was over before the tap
/// cannot be told. So what is counted is sets that were hurried, not how even the reps were (common practice, no source).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TempoKept {
    /// Sets by tempo that were timed.
    pub sets: u32,
    /// Those of them that took the time.
    pub kept: u32,
}

impl TempoKept {
    /// Whether nothing was timed.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.sets == 0
    }

    /// With one set more.
    #[must_use]
    pub fn and(self, kept: bool) -> TempoKept {
        TempoKept {
            sets: self.sets.saturating_add(1),
            kept: self.kept.saturating_add(u32::from(kept)),
        }
    }

    /// Both together.
    #[must_use]
    pub fn plus(self, other: TempoKept) -> TempoKept {
        TempoKept {
            sets: self.sets.saturating_add(other.sets),
            kept: self.kept.saturating_add(other.kept),
        }
    }
}

/// Milliseconds from the start of each set by ear to the tap that stopped or logged it, the count-in among them.
pub(super) fn under_way(counting: &[&Event], state: &State) -> Map<SetKey, u64> {
    let mut times = Map::new();
    let mut started: Option<(SetKey, Moment)> = None;
    let mut stopped: Option<(SetKey, u64)> = None;
    for event in counting {
        match &event.what {
            What::SetStarted { set } => {
                started = Some((*set, event.moment()));
                stopped = None;
            }
            What::SetStopped { set, .. } => {
                let begun = started.take().filter(|(key, _)| key == set);
                stopped = begun.map(|(key, since)| (key, event.moment().since(&since)));
            }
            What::SetDone { set, .. } => {
                let logged = state.slot(*set).and_then(Slot::logged);
                // Merged histories may log a set twice; one of the two counts.
                let counts = logged.is_some_and(|logged| logged.event == event.id);
                let begun = started.take().filter(|(key, _)| key == set);
                let took = begun.map(|(_, since)| event.moment().since(&since));
                let before = stopped.take().filter(|(key, _)| key == set);
                if let Some(ms) = took.or(before.map(|(_, ms)| ms)).filter(|_| counts) {
                    times.insert(*set, ms);
                }
            }
            _ => {}
        }
    }
    times
}

/// Whether a set that was so long under way kept its tempo; none where it has none that is counted.
pub(super) fn kept(slot: &Slot, logged: &Logged, ms: u64) -> Option<bool> {
    let planned = &slot.planned;
    let tempo = planned.tempo?;
    let plain = matches!(planned.target, Target::Reps(_));
    if !plain || matches!(planned.kind, SetKind::Cluster { .. }) {
        return None;
    }
    let rounds = planned.sides.rounds();
    let reps = u64::from(logged.done.amount.reps_of_sides(rounds));
    if reps == 0 {
        return None;
    }
    let changes = u64::from(rounds - 1) * u64::from(planned.sides.change_seconds());
    let asked = reps * u64::from(tempo.rep_seconds()) + changes;
    Some(ms >= (asked + u64::from(COUNT_IN_SECONDS)) * 1000)
}
