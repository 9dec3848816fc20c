//! A first time at this way of doing an exercise that is known.

use crate::sheet::Block;
use crate::strength::propose::tests::{block, kit, performed, propose};
use crate::strength::{Because, Performance};
use crate::units::Load;
use chrono::TimeDelta;
use serde_json::json;

/// Eight to ten with two left, where 5–7 was done until two days before: 5 at 90 kg to the limit is 105 kg by Epley.
fn other(changes: serde_json::Value) -> Block {
    let mut all = json!({
        "start": null,
        "sets": [{"kind": "work", "count": 3, "target": {"reps": {"from": 8, "to": 10}}, "reserve": [2]}],
    });
    for (key, value) in changes.as_object().expect("an object") {
        all[key] = value.clone();
    }
    block(all)
}

fn done(days_ago: i64) -> Performance {
    let mut done = performed(&[("90 kg", 5)], (5, 7));
    // `propose` asks on 8 January 2026.
    done.at = "2026-01-08T18:00:00+01:00".parse().unwrap();
    done.at -= TimeDelta::days(days_ago);
    done
}

fn said(block: &Block, history: &[Performance]) -> String {
    propose(block, history, &kit()).because.to_string()
}

/// 12 reps to the limit are 1 / (1 + 12/30) of the maximum, 71.4 % (Epley 1985, as the curves have it): 74.97 kg of 105 kg.
#[test]
fn other_reps_begin_by_the_estimate() {
    let because =
        "not done like this yet: 10 reps with 2 left are 71.4 % of the estimated maximum 105 kg";
    assert_eq!(
        said(&other(json!({})), &[done(2)]),
        format!("{because}, nearest below is 72.5 kg")
    );
    // Another tempo of the same reps: 7 and 2 left are 1 / (1 + 9/30), 76.9 %: 80.7 kg.
    let slow = block(json!({"start": null, "tempo": "5/1/1/0"}));
    assert_eq!(
        propose(&slow, &[done(2)], &kit()).load,
        Some(Load::whole_kg(80))
    );
}

#[test]
fn rising_loads_end_there() {
    let rising = |count: u8| {
        other(json!({"sets": [
            {"kind": "work", "count": count, "target": {"reps": {"from": 8, "to": 10}}, "reserve": [2],
             "load": {"rising": {"by": "5 kg"}}},
        ]}))
    };
    let because =
        "not done like this yet: 10 reps with 2 left are 71.4 % of the estimated maximum 105 kg";
    assert_eq!(
        said(&rising(3), &[done(2)]),
        format!("{because}, 2 steps below it to begin with: 62.5 kg")
    );
    assert_eq!(
        said(&rising(2), &[done(2)]),
        format!("{because}, a step below it to begin with: 67.5 kg")
    );
}

#[test]
fn a_rule_that_is_a_share_begins_with_its_share() {
    let share = other(json!({"progression": {"share_of_e1rm": {"share": "80 %"}}}));
    assert_eq!(
        said(&share, &[done(2)]),
        "80 % of the estimated maximum 105 kg, nearest below is 82.5 kg"
    );
}

#[test]
fn what_says_nothing_of_it_leaves_a_first_time_light() {
    let begins_light = |block: &Block, history: &[Performance]| {
        let because = propose(block, history, &kit()).because;
        matches!(
            because,
            Because::GuidedStart { .. } | Because::NothingKnown {}
        )
    };
    let ten = other(json!({}));
    assert!(!begins_light(&ten, &[done(14)]));
    // After a break, or where the clock was set back.
    assert!(begins_light(&ten, &[done(15)]));
    assert!(begins_light(&ten, &[done(-2)]));
    // One side at a time: half of the load, or another balance.
    assert!(begins_light(
        &other(json!({"sides": "each_in_turn"})),
        &[done(2)]
    ));
    // Nothing that feeds an estimate.
    let mut light = done(2);
    light.sets[0].work = false;
    light.sets[0].unfed = Some(crate::strength::Unfed::RampUp);
    assert!(begins_light(&ten, &[light]));
    // More reps than the curve holds for, and sets without plain reps.
    let many = json!({"sets": [{"kind": "work", "count": 1, "target": {"reps": 40}}]});
    assert!(begins_light(&other(many), &[done(2)]));
    let timed = json!({"sets": [{"kind": "work", "count": 1, "target": {"timed": 30}}]});
    assert!(begins_light(&other(timed), &[done(2)]));
}

#[test]
fn the_load_on_the_sheet_comes_first() {
    let started = other(json!({"start": "60 kg"}));
    assert_eq!(said(&started, &[done(2)]), "start of the sheet: 60 kg");
}
