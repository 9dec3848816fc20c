//! What is said, and that it keeps to the timeline.

use super::*;
use crate::cues::plan::tests::{planned, some_set};
use crate::cues::set_timeline;
use proptest::prelude::*;
use serde_json::json;

fn said(set: &serde_json::Value, count_in: u8, aloud: Aloud) -> Vec<(u32, String)> {
    let timeline = set_timeline(&planned(set), count_in);
    let sayings = sayings(&timeline, aloud).into_iter();
    sayings.map(|saying| (saying.at_ms, saying.words)).collect()
}

fn words(said: &[(u32, String)]) -> Vec<(u32, &str)> {
    said.iter()
        .map(|(at, words)| (*at, words.as_str()))
        .collect()
}

#[test]
fn reps_are_numbered_as_they_begin_and_the_last_is_called() {
    let set = json!({"target": {"reps": 3}, "tempo": "3/0/1/0"});
    assert_eq!(
        words(&said(&set, 2, Aloud::Reps)),
        [
            (0, "2"),
            (1000, "1"),
            (2000, "1"),
            (6000, "2"),
            (10_000, "3, last")
        ]
    );
    assert!(said(&set, 2, Aloud::Nothing).is_empty());
}

#[test]
fn the_seconds_of_each_phase_are_counted_and_x_is_one_go() {
    let set = json!({"target": {"reps": 1}, "tempo": "3/0/X/0"});
    assert_eq!(
        words(&said(&set, 0, Aloud::Seconds)),
        [(0, "1"), (1000, "2"), (2000, "3"), (3000, "go")]
    );
}

#[test]
fn a_hold_is_counted_by_tens_and_down_at_its_end() {
    let set = json!({"target": {"timed": 25}, "sides": "each_in_turn"});
    let said = said(&set, 0, Aloud::Reps);
    let one = [
        (10_000, "10"),
        (20_000, "20"),
        (22_000, "3"),
        (23_000, "2"),
        (24_000, "1"),
    ];
    assert_eq!(words(&said[..5]), one);
    assert_eq!(words(&said[5..6]), [(25_000, "other side")]);
}

#[test]
fn by_seconds_a_hold_is_counted_through() {
    let set = json!({"target": {"timed": 4}});
    assert_eq!(
        words(&said(&set, 0, Aloud::Seconds)),
        [(1000, "1"), (2000, "2"), (3000, "3")]
    );
}

#[test]
fn nothing_is_said_in_the_pause_of_a_cluster() {
    let set = json!({
        "kind": {"cluster": {"portions": 2, "pause": 15}}, "target": {"reps": 1}, "tempo": "1/0/1/0",
    });
    for aloud in [Aloud::Reps, Aloud::Seconds] {
        let said = said(&set, 0, aloud);
        assert!(said.iter().any(|(at, _)| *at >= 17_000), "{said:?}");
        let pause = 2000..17_000;
        assert!(said.iter().all(|(at, _)| !pause.contains(at)), "{said:?}");
    }
}

#[test]
fn what_comes_next_is_said_at_the_start_and_near_the_end_of_a_rest() {
    let at = |seconds| -> Vec<u32> {
        let rest = Seconds::new(seconds).unwrap();
        announcements(rest, "next: 5 reps")
            .iter()
            .map(|s| s.at_ms)
            .collect()
    };
    assert_eq!(at(150), [0, 140_700]);
    assert_eq!(at(30), [0, 20_700]);
    assert_eq!(at(29), [0]);
}

#[test]
fn loads_and_targets_are_said_in_full_words() {
    let target = |value| serde_json::from_value::<Target>(value).unwrap();
    let load = |text: &str| Some(text.parse::<Load>().unwrap());
    let next = |load, basis: &LoadBasis, unit, value| {
        next_words(None, load, basis, unit, &target(value), SideMode::Both)
    };
    let outside = &LoadBasis::External;
    assert_eq!(
        next(
            load("62.5 kg"),
            outside,
            Unit::Kg,
            json!({"reps": {"from": 5, "to": 7}})
        ),
        "next: 62.5 kilograms, 5 to 7 reps"
    );
    assert_eq!(
        next(
            load("45 lb"),
            outside,
            Unit::Lb,
            json!({"reps": {"least": 8}})
        ),
        "next: 45 pounds, at least 8 reps"
    );
    assert_eq!(
        next(
            load("10 kg"),
            &LoadBasis::BodyMassPlus,
            Unit::Kg,
            json!({"reps": 1})
        ),
        "next: 10 kilograms added, 1 rep"
    );
    assert_eq!(
        next(
            load("0 kg"),
            &LoadBasis::BodyMassPlus,
            Unit::Kg,
            json!({"reps": 8})
        ),
        "next: body mass, 8 reps"
    );
    assert_eq!(
        next(
            load("20 kg"),
            &LoadBasis::BodyMassMinus,
            Unit::Kg,
            json!({"reps": 8})
        ),
        "next: 20 kilograms assistance, 8 reps"
    );
    assert_eq!(
        next(None, &LoadBasis::Unloaded, Unit::Kg, json!({"timed": 90})),
        "next: hold 1 minute 30 seconds"
    );
    assert_eq!(
        next(None, outside, Unit::Kg, json!({"distance": 20})),
        "next: 20 metres"
    );
    let staged = target(json!({"stages": [
        {"hold": {"seconds": 10}},
        {"reps": {"reps": 8, "tempo": "4/0/2/0"}},
        {"partials": {"reps": 1}},
    ]}));
    assert_eq!(
        next_words(
            Some("Split squat"),
            load("15 kg"),
            outside,
            Unit::Kg,
            &staged,
            SideMode::EachInTurn
        ),
        "next: Split squat, 15 kilograms, hold 10 seconds, then 8 reps, then 1 partial a side"
    );
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    #[test]
    fn what_is_said_rises_in_time_and_ends_before_the_set(
        set in some_set(),
        count_in in 0..12_u8,
        aloud in prop::sample::select(vec![Aloud::Reps, Aloud::Seconds]),
    ) {
        let timeline = set_timeline(&set, count_in);
        let sayings = sayings(&timeline, aloud);
        prop_assert!(sayings.is_sorted_by(|a, b| a.at_ms < b.at_ms), "{:?}", sayings);
        prop_assert!(sayings.iter().all(|saying| saying.at_ms < timeline.length_ms()));
        prop_assert!(sayings.iter().all(|saying| !saying.words.is_empty()));
    }
}
