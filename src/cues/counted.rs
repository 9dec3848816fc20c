//! How much of a set was cued until a time: the reps that were done by ear, and the seconds that were held.

use super::timeline::{Phase, Span, Timeline};

/// What was cued of one stage of one side.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Counted {
    /// Side, from 0.
    pub side: u8,
    /// Stage, from 0.
    pub stage: u8,
    /// Repetitions whose movement had ended, over all portions of a cluster.
    pub reps: u16,
    /// Milliseconds held.
    pub held_ms: u32,
}

/// What was cued of each stage that had begun `at_ms` milliseconds from the start, in the order of time.
///
/// A repetition counts once its last movement is over; the pause after it adds nothing to it.
#[must_use]
pub fn counted(timeline: &Timeline, at_ms: u32) -> Vec<Counted> {
    let mut all: Vec<Counted> = Vec::new();
    let place = |span: &Span| (span.side, span.stage);
    let of_one_rep = |a: &Span, b: &Span| {
        (a.rep, a.portion, a.what == Phase::Hold) == (b.rep, b.portion, b.what == Phase::Hold)
            && place(a) == place(b)
    };
    for spans in timeline.phases.chunk_by(of_one_rep) {
        let Some(first) = spans.first().filter(|span| span.from_ms <= at_ms) else {
            break;
        };
        let holds = first.what == Phase::Hold;
        if first.rep == 0 && !holds {
            continue;
        }
        if all
            .last()
            .is_none_or(|last| (last.side, last.stage) != place(first))
        {
            all.push(Counted {
                side: first.side,
                stage: first.stage,
                reps: 0,
                held_ms: 0,
            });
        }
        let Some(last) = all.last_mut() else { continue };
        if holds {
            last.held_ms += spans
                .iter()
                .map(|span| at_ms.min(span.to_ms).saturating_sub(span.from_ms))
                .sum::<u32>();
        } else if moved_by(spans) <= at_ms {
            last.reps += 1;
        }
    }
    all
}

/// When the last movement of a repetition ends; of one that is nothing but pauses, when it ends.
fn moved_by(spans: &[Span]) -> u32 {
    let moves = |what: Phase| matches!(what, Phase::Eccentric | Phase::Concentric | Phase::Partial);
    let last = spans
        .iter()
        .rev()
        .find(|span| moves(span.what))
        .or(spans.last());
    last.map_or(0, |span| span.to_ms)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cues::plan::tests::planned;
    use crate::cues::set_timeline;
    use proptest::prelude::*;
    use serde_json::{Value, json};

    fn at(set: &Value, ms: u32) -> Vec<(u8, u8, u16, u32)> {
        let timeline = set_timeline(&planned(set), 3);
        let counted = counted(&timeline, ms);
        counted
            .iter()
            .map(|one| (one.side, one.stage, one.reps, one.held_ms))
            .collect()
    }

    #[test]
    fn a_rep_counts_when_it_was_lifted_not_before_and_not_only_after_its_pause() {
        let set = json!({"tempo": "3/1/1/2", "target": {"reps": 2}});
        assert_eq!(at(&set, 2999), []);
        assert_eq!(at(&set, 3000), [(0, 0, 0, 0)]);
        assert_eq!(at(&set, 7999), [(0, 0, 0, 0)]);
        assert_eq!(at(&set, 8000), [(0, 0, 1, 0)]);
        assert_eq!(at(&set, 14_999), [(0, 0, 1, 0)]);
        assert_eq!(at(&set, 15_000), [(0, 0, 2, 0)]);
    }

    #[test]
    fn each_side_has_its_own_count_and_the_change_over_adds_nothing() {
        let set = json!({"tempo": "1/0/1/0", "target": {"reps": 3}, "sides": "each_in_turn"});
        assert_eq!(at(&set, 9000), [(0, 0, 3, 0)]);
        assert_eq!(at(&set, 13_999), [(0, 0, 3, 0)]);
        assert_eq!(at(&set, 16_000), [(0, 0, 3, 0), (1, 0, 1, 0)]);
    }

    #[test]
    fn a_hold_counts_the_time_that_was_held() {
        let set = json!({"target": {"timed": 30}});
        assert_eq!(at(&set, 15_400), [(0, 0, 0, 12_400)]);
        assert_eq!(at(&set, 99_000), [(0, 0, 0, 30_000)]);
    }

    proptest! {
        #[test]
        fn the_count_never_falls_and_ends_at_what_was_asked_for(
            reps in 1..20u16, down in 0..5u8, wait in 0..3u8, up in 1..4u8, squeeze in 0..3u8, a in 0..300_000u32, b in 0..300_000u32,
        ) {
            let set = json!({"tempo": format!("{down}/{wait}/{up}/{squeeze}"), "target": {"reps": reps}});
            let timeline = set_timeline(&planned(&set), 3);
            let sum = |ms| counted(&timeline, ms).iter().map(|one| one.reps).sum::<u16>();
            prop_assert!(sum(a.min(b)) <= sum(a.max(b)));
            prop_assert!(sum(a) <= reps);
            prop_assert_eq!(sum(timeline.length_ms()), reps);
        }
    }
}
