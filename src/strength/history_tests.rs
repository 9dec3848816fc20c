//! Checks that only like is judged by like, and that two blocks of a session are one session.

use super::*;
use crate::sheet::{moved_part, moved_words};
use crate::strength::propose::tests::{block, kit, of_kinds, performed};
use crate::strength::safety::best_lately;
use crate::strength::{Curve, Strength, Today, Unfed, best_e1rm, propose};
use serde_json::{Value, json};

fn on(equipment: &str) -> Value {
    json!({"id": "front-squat", "name": "Front squat", "pattern": "squat", "equipment": equipment})
}

fn work(changes: Value) -> Value {
    let mut sets = json!({"kind": "work", "count": 3, "target": {"reps": 8}});
    for (key, value) in changes.as_object().unwrap() {
        sets[key] = value.clone();
    }
    json!([sets])
}

fn cluster(portions: u8, pause: u16) -> Value {
    work(
        json!({"kind": {"cluster": {"portions": portions, "pause": pause}}, "target": {"reps": 2}}),
    )
}

/// By hand: whether both ask for the same, whether a load of one means what it does in the other, and whether the same is
/// moved.
#[test]
fn which_blocks_are_alike() {
    let slow = "5/1/1/0";
    for (one, other, alike) in [
        (json!({}), json!({"rest": 60}), [true, true, true]),
        (
            json!({}),
            json!({"sets": work(json!({}))}),
            [false, true, true],
        ),
        // Tempo, for the block or for the line.
        (
            json!({"sets": work(json!({}))}),
            json!({"sets": work(json!({"tempo": slow}))}),
            [false, true, true],
        ),
        (
            json!({"sets": work(json!({})), "tempo": slow}),
            json!({"sets": work(json!({"tempo": slow}))}),
            [true, true, true],
        ),
        // Portions; how long the pause between them is does not matter, as a rest does not.
        (
            json!({"sets": cluster(4, 15)}),
            json!({"sets": cluster(10, 15)}),
            [false, true, true],
        ),
        (
            json!({"sets": cluster(4, 15)}),
            json!({"sets": cluster(4, 20)}),
            [true, true, true],
        ),
        // What it is done with.
        (
            json!({"exercise": on("barbell")}),
            json!({"exercise": on("dumbbell")}),
            [false, false, false],
        ),
        (
            json!({"exercise": on("stack")}),
            json!({"exercise": on("dumbbell")}),
            [false, false, false],
        ),
        (
            json!({"exercise": on("handle")}),
            json!({"exercise": on("dumbbell")}),
            [true, true, true],
        ),
        (
            json!({}),
            json!({"sides": "each_in_turn"}),
            [false, false, false],
        ),
        // With the body moved the whole counts, whatever it hangs on.
        (
            json!({"basis": "body_mass_plus", "exercise": on("body")}),
            json!({"basis": "body_mass_minus", "exercise": on("stack")}),
            [false, false, true],
        ),
        (
            json!({"basis": "body_mass_plus", "exercise": on("body")}),
            json!({"basis": "body_mass_plus", "exercise": on("dumbbell")}),
            [true, true, true],
        ),
        (
            json!({"basis": "body_mass_plus", "exercise": on("body")}),
            json!({"exercise": on("body")}),
            [false, false, false],
        ),
    ] {
        let (a, b) = (block(one.clone()), block(other.clone()));
        let found = [
            a.shape() == b.shape(),
            b.shape().starts_with(&a.load_shape()),
            moved_part(&a.shape()) == moved_part(&b.shape()),
        ];
        assert_eq!(found, alike, "{one} and {other}");
        assert_eq!(a.is_loaded_as(&b), alike[1], "{one} and {other}");
        assert_eq!(b.shape().starts_with(&a.moved_shape()), alike[2]);
    }
}

#[test]
fn what_is_moved_has_words_where_it_is_not_the_plain_thing() {
    let said = |changed: Value| moved_words(moved_part(&block(changed).shape()));
    let on = |equipment: &str| json!({"id": "front-squat", "name": "Front squat", "pattern": "squat", "equipment": equipment});
    assert_eq!(said(json!({})), "barbell");
    assert_eq!(
        said(json!({"sides": "each_in_turn", "exercise": on("handle")})),
        "dumbbell or kettlebell, each side in turn"
    );
    assert_eq!(
        said(json!({"basis": "body_mass_plus", "sides": "one_holds"})),
        "one side holds while the other works"
    );
    assert_eq!(said(json!({"basis": "body_mass_plus"})), "");
}

fn on_the_eighth(history: &[Performance]) -> Today<'_> {
    static KIT: std::sync::LazyLock<crate::kit::Kit> = std::sync::LazyLock::new(kit);
    Today {
        history,
        kit: &KIT,
        now: "2026-01-08T18:00:00+01:00".parse().unwrap(),
        curve: Curve::default(),
        body_mass: None,
    }
}

fn said(block: &Block, history: &[Performance]) -> String {
    let said = propose(block, &on_the_eighth(history)).because;
    said.to_string()
}

#[test]
fn a_load_is_not_carried_over_to_other_equipment() {
    let first =
        "first time: begin light with 4 kg, say how much you had left, and the next load follows";
    let sets = work(json!({"target": {"reps": {"from": 8, "to": 10}}}));
    for sets in [json!(null), sets] {
        let mut changes = json!({"start": null, "exercise": on("dumbbell")});
        if !sets.is_null() {
            changes["sets"] = sets;
        }
        let bar = [performed(
            &[("60 kg", 7), ("60 kg", 7), ("60 kg", 7)],
            (5, 7),
        )];
        assert_eq!(said(&block(changes.clone()), &bar), first);
        assert_eq!(best_lately(&bar, &block(changes).shape(), false), None);
    }
}

#[test]
fn two_blocks_of_a_session_are_not_two_sessions() {
    let goal = block(
        json!({"progression": {"two_for_two": {}}, "sets": work(json!({"target": {"reps": 5}}))}),
    );
    let done = |sets: &[(&str, u16)], session: u128| Performance {
        session: uuid::Uuid::from_u128(session),
        shape: goal.shape(),
        ..performed(sets, (5, 5))
    };
    let over = [("60 kg", 7), ("60 kg", 7), ("60 kg", 7)];
    let twice = |sessions: [u128; 2]| said(&goal, &sessions.map(|n| done(&over, n)));
    assert!(twice([1, 1]).contains("two over 5, once more for the next step"));
    assert!(twice([1, 2]).contains("two over 5 twice running"));

    let missed = |sessions: [u128; 3]| {
        let of = |n| Performance {
            shape: block(json!({})).shape(),
            ..done(&[("60 kg", 4)], n)
        };
        said(&block(json!({})), &sessions.map(of))
    };
    assert!(!missed([1, 1, 1]).contains("running"));
    assert!(!missed([1, 2, 2]).contains("running"));
    assert!(missed([1, 2, 3]).contains("below 5 three times running"));

    // The hardest of the last six sessions, of each of which there are two blocks.
    let history: Vec<Performance> = (1..=7)
        .flat_map(|n| {
            [
                done(&[(if n == 2 { "90 kg" } else { "60 kg" }, 5)], n),
                done(&over, n),
            ]
        })
        .collect();
    let lately = |from: usize| best_lately(&history[from..], &goal.shape(), false);
    assert_eq!(lately(0), Some("90 kg".parse().unwrap()));
    assert_eq!(lately(4), Some("60 kg".parse().unwrap()));
    assert_eq!(
        best_lately(&history[..], &goal.shape(), true),
        Some("60 kg".parse().unwrap())
    );
}

/// Whatever the sets, the estimate does not know how they were parted into blocks.
#[test]
fn what_two_blocks_of_a_session_say_is_what_one_would() {
    let sets = [
        ("100 kg", 0),
        ("90 kg", 5),
        ("80 kg", 7),
        ("110 kg", 0),
        ("85 kg", 4),
    ];
    for at in 0..=sets.len() {
        for end in at..=sets.len() {
            let whole = performed(&sets[..end], (5, 7));
            let parts = [&sets[..at], &sets[at..end]].map(|sets| performed(sets, (5, 7)));
            let of = |history: &[Performance]| Strength::of(history, Curve::Epley);
            let (one, two) = (of(&[whole]), of(&parts));
            assert_eq!(one, two, "{at} of {end}");
            assert!(two.is_none_or(|known| known.sessions() == 1));
        }
    }
}

/// Strength that is two years old is not made fresh by a set of yesterday that says nothing of it.
#[test]
fn what_was_known_long_ago_is_no_start() {
    let mut sets = json!({"kind": "work", "count": 3, "target": {"reps": {"from": 8, "to": 10}}});
    sets["reserve"] = json!([2]);
    let other = block(json!({"start": null, "sets": [sets]}));
    let mut old = performed(&[("90 kg", 5)], (5, 7));
    old.at = "2024-01-08T18:00:00+01:00".parse().unwrap();
    let mut yesterday = performed(&[("20 kg", 30)], (30, 30));
    yesterday.session = uuid::Uuid::from_u128(3);
    yesterday.at = "2026-01-07T18:00:00+01:00".parse().unwrap();
    // Thirty are at least as good as twelve; that says nothing of 105 kg.
    assert_eq!(
        best_e1rm([&yesterday], Curve::Epley),
        Some("28 kg".parse().unwrap())
    );
    assert!(said(&other, &[old.clone(), yesterday]).starts_with("first time"));
    old.at = "2026-01-07T18:00:00+01:00".parse().unwrap();
    assert!(said(&other, &[old]).starts_with("not done like this yet"));
}

/// A break is told by the calendar: 14 days and a half are the fifteenth day.
#[test]
fn days_are_those_of_the_calendar() {
    let plain = block(json!({}));
    let at = |at: &str| {
        let mut last = performed(&[("60 kg", 7), ("60 kg", 7), ("60 kg", 7)], (5, 7));
        last.at = at.parse().unwrap();
        said(&plain, &[last])
    };
    assert!(at("2025-12-25T23:00:00+01:00").contains("top of 5–7 reached"));
    assert!(at("2025-12-24T06:00:00+01:00").starts_with("last done like this 15 days ago"));
    assert!(at("2025-12-24T23:00:00+01:00").starts_with("last done like this 15 days ago"));
}

/// Who ended a session among the ramp-ups lifts next time what was lifted before it, and else begins as the sheet says.
#[test]
fn ramp_ups_alone_leave_the_work_load_where_it_was() {
    let ramped = block(json!({"sets": [
        {"kind": {"ramp_up": {"shares": ["40 %", "80 %"]}}, "count": 2, "target": {"reps": 5}},
        {"kind": "work", "count": 3, "target": {"reps": {"from": 5, "to": 7}}},
    ]}));
    let of = |sets: &[(&str, u16)], kinds: &[Unfed], session| {
        let mut one = performed(sets, (5, 7));
        one.session = uuid::Uuid::from_u128(session);
        one.shape = ramped.shape();
        of_kinds(&mut one, kinds);
        one
    };
    let before = of(&[("30 kg", 5), ("80 kg", 6)], &[Unfed::RampUp], 1);
    let ended = of(&[("32.5 kg", 4)], &[Unfed::RampUp], 2);
    let inside = said(&ramped, std::slice::from_ref(&before));
    assert!(inside.starts_with("6 at 80 kg: inside"), "{inside}");
    assert_eq!(said(&ramped, &[before, ended.clone()]), inside);
    assert_eq!(said(&ramped, &[ended]), "start of the sheet: 60 kg");
}
