//! Checks of the timelines: each kind of set, and the laws that hold for all.

use super::*;
use crate::cues::{Cued, Length, SoundSet, tones};
use crate::sheet::{Sheet, unroll};
use proptest::prelude::*;
use serde_json::json;
use uuid::Uuid;

/// The first planned set of a block with one line; `sides`, `tempo` are the block's, the rest the line's.
pub(in crate::cues) fn planned(changes: &serde_json::Value) -> PlannedSet {
    let mut line = json!({"kind": "work", "count": 1, "target": {"reps": 5}});
    for (key, value) in changes.as_object().expect("changes are an object") {
        if key != "sides" {
            line[key] = value.clone();
        }
    }
    let sheet: Sheet = serde_json::from_value(json!({
        "id": Uuid::from_u128(7),
        "version": Uuid::from_u128(8),
        "written": "2026-01-05T18:00:00+01:00",
        "name": "Upper B",
        "groups": [{"straight": {
            "id": Uuid::from_u128(1),
            "exercise": {"id": "row", "name": "Row", "pattern": "pull_across", "equipment": "dumbbell"},
            "role": "hypertrophy",
            "sets": [line],
            "basis": "external",
            "sides": changes.get("sides").unwrap_or(&json!("both")),
            "rest": 60,
            "rest_after": 90,
        }}],
    }))
    .unwrap();
    unroll(&sheet).remove(0)
}

pub(super) fn heard(set: &serde_json::Value) -> Vec<(u32, Cue)> {
    let timeline = set_timeline(&planned(set), 0);
    timeline.cues.iter().map(|c| (c.at_ms, c.cue)).collect()
}

pub(super) fn rep(phase: Phase, last_rep: bool) -> Cue {
    Cue::Rep {
        phase,
        fast: false,
        last_rep,
    }
}

#[test]
fn each_phase_of_each_rep_is_heard() {
    let go = Cue::Rep {
        phase: Phase::Concentric,
        fast: true,
        last_rep: false,
    };
    assert_eq!(
        heard(&json!({"target": {"reps": 2}, "tempo": "3/1/X/0"})),
        [
            (0, rep(Phase::Eccentric, false)),
            (3000, rep(Phase::Stretch, false)),
            (4000, go),
            (5000, rep(Phase::Eccentric, true)),
            (8000, rep(Phase::Stretch, false)),
            (9000, go),
            (10_000, Cue::SetEnd),
        ]
    );
}

#[test]
fn reps_without_a_tempo_and_distances_are_open() {
    for target in [json!({"reps": 5}), json!({"distance": 20})] {
        let timeline = set_timeline(&planned(&json!({"target": target})), 3);
        let cues: Vec<Cue> = timeline.cues.iter().map(|c| c.cue).collect();
        let count = |left| Cue::CountIn { left };
        assert_eq!(cues, [count(3), count(2), count(1), Cue::Go]);
        assert_eq!(timeline.length, Length::Open { from_ms: 3000 });
    }
}

#[test]
fn a_hold_is_counted_down() {
    assert_eq!(
        heard(&json!({"target": {"timed": 15}})),
        [
            (0, Cue::Go),
            (7500, Cue::Halfway),
            (12_000, Cue::Left { seconds: 3 }),
            (13_000, Cue::Left { seconds: 2 }),
            (14_000, Cue::Left { seconds: 1 }),
            (15_000, Cue::SetEnd),
        ]
    );
}

#[test]
fn stages_follow_each_other_without_rest() {
    let stages = json!({"target": {"stages": [
        {"hold": {"seconds": 4}},
        {"reps": {"reps": 1, "tempo": "4/0/2/0"}},
        {"partials": {"reps": 2}},
    ]}});
    let heard = heard(&stages);
    assert_eq!(
        heard[4..],
        [
            (3500, Cue::StageChange),
            (4000, rep(Phase::Eccentric, true)),
            (8000, rep(Phase::Concentric, false)),
            (9500, Cue::StageChange),
            (10_000, Cue::Partial { last_rep: false }),
            (11_000, Cue::Partial { last_rep: true }),
            (12_000, Cue::SetEnd),
        ]
    );
}

#[test]
fn sides_change_in_the_middle() {
    let switch = |sides: &str| {
        let set = json!({"target": {"reps": 1}, "tempo": "2/0/2/0", "sides": sides});
        heard(&set)
            .into_iter()
            .filter(|(_, cue)| !matches!(cue, Cue::Rep { .. }))
            .collect::<Vec<_>>()
    };
    assert_eq!(
        switch("each_in_turn"),
        [
            (4000, Cue::SideSwitch),
            (6000, Cue::Left { seconds: 3 }),
            (7000, Cue::Left { seconds: 2 }),
            (8000, Cue::Left { seconds: 1 }),
            (13_000, Cue::SetEnd),
        ]
    );
    assert_eq!(
        switch("one_holds"),
        [
            (4000, Cue::SideSwitch),
            (5000, Cue::Left { seconds: 1 }),
            (10_000, Cue::SetEnd),
        ]
    );
}

#[test]
fn a_cluster_pauses_between_its_portions() {
    let set = json!({
        "kind": {"cluster": {"portions": 2, "pause": 15}},
        "target": {"reps": 1},
        "tempo": "1/0/1/0",
    });
    let heard = heard(&set);
    assert_eq!(heard[2], (2000, Cue::PauseStart));
    assert_eq!(heard[5], (16_000, Cue::Left { seconds: 1 }));
    assert_eq!(heard[6], (17_000, rep(Phase::Eccentric, true)));
}

#[test]
fn to_failure_is_open_after_the_reps_asked_for() {
    let set = json!({"kind": "to_failure", "target": {"reps": {"least": 2}}, "tempo": "1/0/1/0"});
    let timeline = set_timeline(&planned(&set), 0);
    assert_eq!(timeline.length, Length::Open { from_ms: 4000 });
    assert_eq!(timeline.cues.len(), 4);
    assert!(timeline.cues.iter().all(|c| match c.cue {
        Cue::Rep { last_rep, .. } => !last_rep,
        _ => false,
    }));
}

#[test]
fn a_rest_says_when_it_nears_its_end() {
    let at = |seconds| -> Vec<(u32, Cue)> {
        let timeline = rest_timeline(Seconds::new(seconds).unwrap(), false);
        timeline.cues.iter().map(|c| (c.at_ms, c.cue)).collect()
    };
    assert_eq!(
        at(150),
        [
            (140_000, Cue::RestSoon),
            (147_000, Cue::Left { seconds: 3 }),
            (148_000, Cue::Left { seconds: 2 }),
            (149_000, Cue::Left { seconds: 1 }),
            (150_000, Cue::RestEnd),
        ]
    );
    assert_eq!(at(0), [(0, Cue::RestEnd)]);
    assert_eq!(at(1), [(1000, Cue::RestEnd)]);
}

#[test]
fn the_middle_of_a_rest_is_marked_where_that_is_wished() {
    let marks = |seconds| -> Vec<u32> {
        let timeline = rest_timeline(Seconds::new(seconds).unwrap(), true);
        let half = timeline.cues.iter().filter(|c| c.cue == Cue::RestHalf);
        half.map(|c| c.at_ms).collect()
    };
    assert_eq!(marks(150), [75_000]);
    assert_eq!(marks(45), [22_500]);
    // The mark of the last ten seconds is there already.
    assert_eq!(marks(20), [0; 0]);
    assert_eq!(marks(0), [0; 0]);
}

fn some_tempo() -> impl Strategy<Value = String> {
    prop::collection::vec(prop::option::of(0..6_u8), 4)
        .prop_filter("a tempo takes time", |digits| {
            digits.iter().any(|d| *d != Some(0))
        })
        .prop_map(|digits| {
            let digits: Vec<String> = digits
                .iter()
                .map(|d| d.map_or("X".to_owned(), |d| d.to_string()))
                .collect();
            digits.join("/")
        })
}

fn some_reps() -> impl Strategy<Value = serde_json::Value> {
    prop_oneof![
        (1..30_u16).prop_map(|n| json!(n)),
        (1..15_u16, 1..15_u16).prop_map(|(from, more)| json!({"from": from, "to": from + more})),
        (1..30_u16).prop_map(|n| json!({"least": n})),
    ]
}

fn some_stage() -> impl Strategy<Value = serde_json::Value> {
    prop_oneof![
        (0..40_u16).prop_map(|s| json!({"hold": {"seconds": s}})),
        (some_reps(), some_tempo()).prop_map(|(r, t)| json!({"reps": {"reps": r, "tempo": t}})),
        some_reps().prop_map(|r| json!({"partials": {"reps": r}})),
    ]
}

pub(in crate::cues) fn some_set() -> impl Strategy<Value = PlannedSet> {
    let target = prop_oneof![
        some_reps().prop_map(|r| json!({"reps": r})),
        (0..200_u16).prop_map(|s| json!({"timed": s})),
        (1..50_u16).prop_map(|m| json!({"distance": m})),
        prop::collection::vec(some_stage(), 1..5).prop_map(|s| json!({"stages": s})),
    ];
    let kind = prop_oneof![
        Just(json!("work")),
        Just(json!("to_failure")),
        (2..5_u8, 0..30_u16).prop_map(|(n, s)| json!({"cluster": {"portions": n, "pause": s}})),
    ];
    let sides = prop::sample::select(vec!["both", "each_in_turn", "one_holds"]);
    (target, kind, sides, prop::option::of(some_tempo())).prop_map(
        |(target, kind, sides, tempo)| {
            // A cluster is counted in reps.
            let kind = if target.get("reps").is_some() {
                kind
            } else {
                json!("work")
            };
            let mut set = json!({"target": target, "kind": kind, "sides": sides});
            if let Some(tempo) = tempo {
                set["tempo"] = json!(tempo);
            }
            planned(&set)
        },
    )
}

fn lawful(timeline: &Timeline) -> Result<(), TestCaseError> {
    let rising = |a: &Cued, b: &Cued| a.at_ms < b.at_ms;
    prop_assert!(timeline.cues.is_sorted_by(rising), "{:?}", timeline.cues);
    let end = timeline.length_ms();
    prop_assert!(timeline.cues.iter().all(|c| c.at_ms <= end));
    let mut at = 0;
    for span in &timeline.phases {
        prop_assert_eq!(span.from_ms, at);
        prop_assert!(span.to_ms > at);
        at = span.to_ms;
    }
    prop_assert_eq!(at, end);
    for set in SoundSet::ALL {
        let tones = tones(timeline, set);
        prop_assert!(tones.is_sorted_by_key(|tone| tone.at_ms));
        for tone in &tones {
            let sounding = tones
                .iter()
                .filter(|t| t.at_ms <= tone.at_ms && tone.at_ms < t.at_ms + t.len_ms);
            prop_assert!(sounding.count() <= 2);
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    #[test]
    fn the_laws_of_time_hold_for_every_set(set in some_set(), count_in in 0..12_u8) {
        lawful(&set_timeline(&set, count_in))?;
    }

    #[test]
    fn the_laws_of_time_hold_for_every_rest(seconds in 0..=3600_i64, half: bool) {
        let rest = Seconds::new(seconds).unwrap();
        let timeline = rest_timeline(rest, half);
        lawful(&timeline)?;
        prop_assert_eq!(timeline.length_ms(), rest.millis());
    }

    #[test]
    fn a_set_takes_reps_times_digits(
        reps in 1..40_u16,
        tempo in some_tempo(),
        count_in in 0..12_u8,
        sides in prop::sample::select(vec![("both", 1, 0), ("each_in_turn", 2, 5), ("one_holds", 2, 2)]),
    ) {
        let (name, rounds, switch) = sides;
        let set = planned(&json!({"target": {"reps": reps}, "tempo": tempo, "sides": name}));
        let timeline = set_timeline(&set, count_in);
        let one = set.tempo.unwrap().rep_seconds();
        let seconds = u32::from(count_in) + rounds * u32::from(reps) * one + switch;
        prop_assert_eq!(timeline.length, Length::Ends { at_ms: seconds * 1000 });
        let phase_sum: u32 = timeline
            .phases
            .iter()
            .filter(|span| span.rep == 1 && span.side == 0)
            .map(|span| span.to_ms - span.from_ms)
            .sum();
        prop_assert_eq!(phase_sum, one * 1000);
    }
}
