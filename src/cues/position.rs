//! What is under way at a time, for the board.

use super::timeline::{Length, Span, Timeline};

/// What is under way.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Position {
    /// A phase is running.
    Running {
        /// That phase, with its repetition.
        span: Span,
        /// Seconds left of it, begun ones counted, so never 0.
        seconds_left: u32,
    },
    /// Nothing is paced any more; the lifter says when the set is done.
    Open {
        /// Whole seconds since then.
        seconds: u32,
    },
    /// The end is reached.
    Over,
}

/// What is under way at `at_ms` milliseconds from the start.
#[must_use]
pub fn position(timeline: &Timeline, at_ms: u32) -> Position {
    let next = timeline.phases.partition_point(|span| span.to_ms <= at_ms);
    match (timeline.phases.get(next), timeline.length) {
        (Some(&span), _) => Position::Running {
            span,
            seconds_left: (span.to_ms - at_ms).div_ceil(1000),
        },
        (None, Length::Open { from_ms }) => Position::Open {
            seconds: at_ms.saturating_sub(from_ms) / 1000,
        },
        (None, Length::Ends { .. }) => Position::Over,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cues::plan::tests::planned;
    use crate::cues::{Phase, set_timeline};
    use serde_json::json;

    #[test]
    fn the_board_knows_phase_rep_and_seconds_left() {
        let set = planned(&json!({"tempo": "3/1/1/0", "target": {"reps": 2}}));
        let timeline = set_timeline(&set, 3);
        let at = |ms| match position(&timeline, ms) {
            Position::Running { span, seconds_left } => {
                Some((span.what, span.rep, span.rep_total, seconds_left))
            }
            Position::Open { .. } | Position::Over => None,
        };
        assert_eq!(at(0), Some((Phase::CountIn, 0, 0, 3)));
        assert_eq!(at(3000), Some((Phase::Eccentric, 1, 2, 3)));
        assert_eq!(at(5999), Some((Phase::Eccentric, 1, 2, 1)));
        assert_eq!(at(6000), Some((Phase::Stretch, 1, 2, 1)));
        assert_eq!(at(12_500), Some((Phase::Concentric, 2, 2, 1)));
        assert_eq!(position(&timeline, 13_000), Position::Over);
    }

    #[test]
    fn an_unpaced_set_counts_up() {
        let timeline = set_timeline(&planned(&json!({"target": {"distance": 20}})), 3);
        assert_eq!(position(&timeline, 5500), Position::Open { seconds: 2 });
    }
}
