//! Whether sets took the time that their tempo asks for.

use crate::session::{COUNT_IN_SECONDS, Logged, Slot};
use crate::sheet::{SetKind, Target};
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

#[cfg(test)]
mod tests {
    use super::super::times::set_times;
    use super::*;
    use crate::session::{
        Amount, Began, Done, Event, EventId, Mint, Session, SessionId, Tick, What,
    };
    use crate::sheet::{SetKey, Sheet};
    use crate::strength::Curve;
    use crate::units::Reps;
    use chrono::{DateTime, FixedOffset, TimeDelta};
    use uuid::Uuid;

    /// A session of one set of two reps at 3/0/1/0 on that many sides; what is done comes so many ms after its start.
    fn timed(sides: &str, kind: &str, done: &[(u64, What)]) -> Vec<Event> {
        let text = format!(
            r#"{{"id":"{id}","version":"{id}","written":"2026-03-01T08:00:00+01:00","name":"Lower A","groups":[
            {{"straight":{{"id":"{id}","exercise":{{"id":"front-squat","name":"Front squat","pattern":"squat","equipment":"barbell"}},
            "role":"strength","sets":[{{"kind":{kind},"count":2,"target":{{"reps":2}},"tempo":"3/0/1/0"}}],
            "basis":"external","sides":"{sides}","rest":90,"rest_after":120}}}}]}}"#,
            id = Uuid::from_u128(1)
        );
        let sheet: Sheet = serde_json::from_str(&text).unwrap();
        let began = What::Began(Box::new(Began {
            curve: Curve::default(),
            session: SessionId(Uuid::from_u128(5)),
            sheet,
            body_mass: None,
            proposals: vec![],
            light: false,
            along: None,
        }));
        let at: DateTime<FixedOffset> = "2026-03-02T18:00:00+01:00".parse().unwrap();
        let mut mint = Mint::default();
        let all = std::iter::once((0, began)).chain(done.iter().cloned());
        all.map(|(ms, what)| Event {
            id: EventId(mint.next(1_772_470_800_000 + ms, [0; 10])),
            at: at + TimeDelta::milliseconds(ms as i64),
            tick: Tick { run: 1, ms },
            what,
        })
        .collect()
    }

    fn key(set: u8) -> SetKey {
        SetKey {
            block: crate::sheet::BlockId(Uuid::from_u128(1)),
            line: 0,
            set,
            drop: 0,
        }
    }

    fn logged(set: u8, reps: i64) -> What {
        let done = Done {
            load: None,
            amount: Amount::Reps(Reps::saturating(reps)),
            reserve: None,
        };
        What::SetDone {
            set: key(set),
            done,
            proposed: None,
        }
    }

    /// Whether the first set kept its tempo, begun at once and logged after so long.
    fn kept_after(ms: u64, sides: &str, kind: &str, reps: i64) -> Option<bool> {
        let set = key(0);
        let events = timed(
            sides,
            kind,
            &[(0, What::SetStarted { set }), (ms, logged(0, reps))],
        );
        let session = Session::replay(events.clone()).unwrap();
        let counting: Vec<&Event> = events.iter().collect();
        let times = set_times(&counting, session.state());
        let slot = session.state().slot(set).unwrap();
        kept(slot, slot.logged().unwrap(), times.get(&set)?.lasted_ms?)
    }

    /// Two reps of 4 s behind the count-in; between two sides the change besides (worked by hand).
    #[test]
    fn a_set_keeps_its_tempo_from_the_time_on_that_it_asks_for() {
        let count_in = u64::from(COUNT_IN_SECONDS) * 1000;
        let work = "\"work\"";
        assert_eq!(kept_after(count_in + 8000, "both", work, 2), Some(true));
        assert_eq!(kept_after(count_in + 7999, "both", work, 2), Some(false));
        assert_eq!(kept_after(count_in + 4000, "both", work, 1), Some(true));
        assert_eq!(
            kept_after(count_in + 21_000, "each_in_turn", work, 2),
            Some(true)
        );
        assert_eq!(
            kept_after(count_in + 20_999, "each_in_turn", work, 2),
            Some(false)
        );
        assert_eq!(kept_after(60_000, "both", work, 0), None);
        let cluster = r#"{"cluster":{"portions":2,"pause":15}}"#;
        assert_eq!(kept_after(60_000, "both", cluster, 4), None);
    }

    #[test]
    fn a_set_that_was_stopped_took_the_time_to_its_stop() {
        let (first, second) = (key(0), key(1));
        let stop = |set| What::SetStopped { set, heard: None };
        let took = |done: &[(u64, What)]| {
            let events = timed("both", "\"work\"", done);
            let session = Session::replay(events.clone()).unwrap();
            let counting: Vec<&Event> = events.iter().collect();
            let times = set_times(&counting, session.state());
            let lasted = |key| times.get(&key).and_then(|times| times.lasted_ms);
            (lasted(first), lasted(second))
        };
        let start = |set| What::SetStarted { set };
        let stopped = [
            (1000, start(first)),
            (9000, stop(first)),
            (60_000, logged(0, 2)),
        ];
        assert_eq!(took(&stopped), (Some(8000), None));
        // Logged without a start of its own: the time of the set before is not its.
        let other = [
            (1000, start(first)),
            (9000, logged(0, 2)),
            (60_000, logged(1, 2)),
        ];
        assert_eq!(took(&other), (Some(8000), None));
        // Not even counted in: that was no set.
        let slip = [
            (1000, start(first)),
            (3000, stop(first)),
            (60_000, logged(0, 2)),
        ];
        assert_eq!(took(&slip), (None, None));
        // Begun anew: the last start counts.
        let twice = [
            (1000, start(first)),
            (9000, stop(first)),
            (20_000, start(first)),
            (30_000, stop(first)),
            (60_000, logged(0, 2)),
        ];
        assert_eq!(took(&twice), (Some(10_000), None));
        let wrong = [(1000, start(first)), (9000, logged(1, 2))];
        assert_eq!(took(&wrong), (None, None));
    }
}
