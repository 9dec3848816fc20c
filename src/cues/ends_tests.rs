//! Checks of how long cues are, and of marks near the end of a set, a stage or a rest.

use super::tests::{heard, planned, rep};
use super::*;
use crate::units::Seconds;
use serde_json::json;

#[test]
fn each_cue_has_the_length_of_what_it_begins() {
    let lengths = |timeline: Timeline| -> Vec<(u32, u32)> {
        let cues = timeline.cues.iter();
        cues.map(|cued| (cued.at_ms, cued.len_ms)).collect()
    };
    // A hold and its middle, three seconds, the end.
    let hold = set_timeline(&planned(&json!({"target": {"timed": 15}})), 0);
    let last = [(12_000, 1000), (13_000, 1000), (14_000, 1000), (15_000, 0)];
    assert_eq!(
        lengths(hold),
        [&[(0, 15_000), (7500, 0)], &last[..]].concat()
    );
    // A rest from its middle on, from 10 s before its end on.
    let rest = rest_timeline(Seconds::new(60).unwrap(), true);
    assert_eq!(lengths(rest)[..2], [(30_000, 30_000), (50_000, 10_000)]);
    // A wait between two sides.
    let sides = json!({"target": {"timed": 2}, "sides": "each_in_turn"});
    let timeline = set_timeline(&planned(&sides), 0);
    let switch = timeline.cues.iter().find(|c| c.cue == Cue::SideSwitch);
    assert_eq!(switch.map(|c| (c.at_ms, c.len_ms)), Some((2000, 5000)));
}

#[test]
fn a_rest_of_ten_seconds_does_not_begin_with_the_mark_of_its_end() {
    let soon = |seconds| {
        let rest = rest_timeline(Seconds::new(seconds).unwrap(), true);
        let marks = rest.cues.iter().filter(|c| c.cue == Cue::RestSoon);
        marks.map(|c| c.at_ms).collect::<Vec<_>>()
    };
    assert_eq!(soon(10), [0_u32; 0]);
    assert_eq!(soon(11), [1000]);
}

#[test]
fn as_many_as_possible_and_to_failure_each_have_no_known_end() {
    let fixed = json!({"target": {"reps": 3}, "tempo": "1/0/1/0"});
    assert!(!set_timeline(&planned(&fixed), 0).is_open());
    for open in [
        json!({"target": {"reps": {"least": 3}}, "tempo": "1/0/1/0"}),
        json!({"kind": "to_failure", "target": {"reps": 3}, "tempo": "1/0/1/0"}),
        json!({"target": {"stages": [{"hold": {"seconds": 2}}, {"partials": {"reps": {"least": 3}}}]}}),
    ] {
        let timeline = set_timeline(&planned(&open), 0);
        assert!(timeline.is_open(), "{open}");
        // Nobody knows which rep is the last, and no end is sounded.
        let last = |cue: &Cue| {
            matches!(
                cue,
                Cue::Rep { last_rep: true, .. } | Cue::Partial { last_rep: true } | Cue::SetEnd
            )
        };
        assert!(!timeline.cues.iter().any(|c| last(&c.cue)), "{open}");
    }
}

#[test]
fn in_an_open_set_the_last_rep_of_the_stages_before_the_last_is_marked() {
    let stages = json!({"target": {"stages": [
        {"reps": {"reps": 2, "tempo": "1/0/1/0"}},
        {"partials": {"reps": {"least": 2}}},
    ]}});
    let heard = heard(&stages);
    assert!(heard.contains(&(2000, rep(Phase::Eccentric, true))));
    assert!(heard.contains(&(5000, Cue::Partial { last_rep: false })));
}

#[test]
fn a_stage_that_took_no_time_has_no_mark_behind_it() {
    let stages = json!({"target": {"stages": [
        {"hold": {"seconds": 4}},
        {"hold": {"seconds": 0}},
        {"partials": {"reps": 1}},
    ]}});
    let marks = heard(&stages);
    let marks: Vec<u32> = marks
        .iter()
        .filter(|(_, cue)| *cue == Cue::StageChange)
        .map(|(at, _)| *at)
        .collect();
    assert_eq!(marks, [3500]);
}
