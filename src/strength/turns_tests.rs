//! Checks of what turns a rule aside: the tenth, breaks, deloads, bad histories.

use super::tests::{block, performed, propose};
use super::*;
use crate::kit::KitParts;
use crate::units::{Rir, Unit};
use chrono::TimeDelta;
use serde_json::json;

fn kit() -> Kit {
    Kit::starter(Unit::Kg)
}

fn load(text: &str) -> Load {
    text.parse().unwrap()
}

fn plain() -> Block {
    block(json!({}))
}

/// What is said so many days after one session.
fn after(block: &Block, sets: &[(&str, u16)], days: i64) -> Because {
    let mut last = performed(sets, (5, 7));
    last.shape = block.shape();
    let now = last.at + TimeDelta::days(days);
    super::propose(
        block,
        &Today {
            history: &[last],
            kit: &kit(),
            now,
            curve: Curve::default(),
            body_mass: None,
        },
    )
    .because
}

/// What is said after sessions of one set each, a few days after the last.
fn said_after(block: &Block, sessions: &[(&str, u16)]) -> String {
    let history: Vec<Performance> = sessions
        .iter()
        .map(|set| {
            let mut one = performed(&[*set], (5, 7));
            one.shape = block.shape();
            one
        })
        .collect();
    propose(block, &history, &kit()).because.to_string()
}

#[test]
fn a_step_up_is_cut_to_a_tenth() {
    let bold = block(json!({"progression": {"fixed": {"up": {"by": "20 kg"}}}}));
    assert_eq!(
        said_after(&bold, &[("80 kg", 5)]),
        "every rep done at 80 kg: next step on this bar is 87.5 kg, no more than 10 % up"
    );
    assert_eq!(
        said_after(&plain(), &[("20 kg", 10)]),
        "10 at 20 kg: top of 5–7 reached, next step on this bar is 22.5 kg, more than 10 % up but the kit has nothing \
         smaller"
    );
}

#[test]
fn what_is_added_to_the_body_is_not_cut() {
    let belt = block(json!({
        "basis": "body_mass_plus",
        "exercise": {"id": "dip", "name": "Dip", "pattern": "push_upward", "equipment": "body"},
    }));
    assert_eq!(
        said_after(&belt, &[("5 kg", 7)]),
        "7 at 5 kg: top of 5–7 reached, next step in this kit is 6.25 kg"
    );
}

#[test]
fn a_break_makes_the_first_time_lighter() {
    let said = |days| after(&plain(), &[("80 kg", 7)], days).to_string();
    let up = "7 at 80 kg: top of 5–7 reached, next step on this bar is 82.5 kg";
    assert_eq!(said(14), up);
    assert_eq!(
        said(15),
        "last done like this 15 days ago: a step lighter to come back, 77.5 kg"
    );
    assert_eq!(
        said(31),
        "last done like this 31 days ago: 10 % lighter to come back, nearest below is 70 kg"
    );
    assert_eq!(
        said(57),
        "last done like this 57 days ago: 20 % lighter to come back, nearest below is 62.5 kg"
    );
    // The clock was set back, or that of another phone was ahead: no step up, and no break.
    assert_eq!(
        said(-400),
        "the last time lies 400 days ahead by this clock, which may be wrong: same load again"
    );
    assert_eq!(
        after(&plain(), &[("80 kg", 4)], -400).to_string(),
        "4 at 80 kg: below 5–7, a step down to 77.5 kg"
    );
}

#[test]
fn a_break_never_makes_it_heavier_than_the_rule() {
    let steered = block(json!({"progression": {"double": {"down": {"by": "40 kg"}}}}));
    assert_eq!(
        after(&steered, &[("80 kg", 3)], 31).to_string(),
        "3 at 80 kg: below 5–7, by the sheet 40 kg less, 40 kg"
    );
    assert_eq!(
        after(&plain(), &[("20 kg", 10)], 100).to_string(),
        "last done like this 100 days ago: nothing lighter on this bar, 20 kg again"
    );
    let written = block(json!({"progression": "as_written"}));
    assert_eq!(
        after(&written, &[("80 kg", 7)], 100).to_string(),
        "as written: 60 kg"
    );
}

#[test]
fn a_break_from_assisted_work_gives_more_assistance() {
    let assisted = block(json!({
        "basis": "body_mass_minus",
        "exercise": {"id": "chin-up", "name": "Chin-up", "pattern": "pull_downward", "equipment": "body"},
    }));
    let load = |days| {
        after(&assisted, &[("20 kg", 7)], days)
            .load()
            .unwrap()
            .to_string()
    };
    assert_eq!(
        [load(3), load(15), load(31), load(57)],
        ["18.75 kg", "21.25 kg", "22.5 kg", "23.75 kg"]
    );
    assert_eq!(
        after(&assisted, &[("20 kg", 7)], 31).to_string(),
        "last done like this 31 days ago: more assistance to come back, 22.5 kg"
    );
}

#[test]
fn three_misses_running_call_for_a_deload_and_then_the_rule_goes_on() {
    let missed = [("82.5 kg", 4), ("80 kg", 4), ("77.5 kg", 3)];
    assert_eq!(
        said_after(&plain(), &missed),
        "4 at 82.5 kg, 4 at 80 kg, 3 at 77.5 kg: below 5 three times running, 10 % lighter to come back, nearest below \
         is 67.5 kg"
    );
    assert_eq!(
        said_after(&plain(), &missed[1..]),
        "3 at 77.5 kg: below 5–7, a step down to 75 kg"
    );
    let mut on = missed.to_vec();
    on.push(("67.5 kg", 4));
    assert_eq!(
        said_after(&plain(), &on),
        "4 at 67.5 kg: below 5–7, a step down to 65 kg"
    );
    on.extend([("65 kg", 4), ("62.5 kg", 4)]);
    assert!(said_after(&plain(), &on).contains("below 5 three times running"));
    // A session between that went well, or that was heavier, breaks the run.
    assert!(!said_after(&plain(), &[("80 kg", 4), ("80 kg", 5), ("80 kg", 4)]).contains("running"));
    assert!(
        !said_after(&plain(), &[("80 kg", 4), ("82.5 kg", 4), ("80 kg", 4)]).contains("running")
    );
}

#[test]
fn a_deload_is_never_heavier_than_the_rule() {
    let steep = block(json!({"progression": {"double": {"down": {"by": "30 kg"}}}}));
    assert_eq!(
        said_after(&steep, &[("100 kg", 4), ("100 kg", 4), ("100 kg", 4)]),
        "4 at 100 kg: below 5–7, by the sheet 30 kg less, 70 kg"
    );
    // The estimate knows of next to nothing: a rep more, which ends the misses, must not give less.
    let share = block(json!({"progression": {"share_of_e1rm": {"share": "77.5 %"}}}));
    let next = |last: u16| {
        let sets = [
            ("0.25 kg", 1),
            ("115 kg", 0),
            ("105 kg", 0),
            ("95 kg", last),
        ];
        said_after(&share, &sets)
    };
    assert_eq!(next(4), next(5));
}

#[test]
fn every_rule_deloads_but_the_written_load() {
    for rule in [
        json!({"two_for_two": {}}),
        json!({"fixed": {}}),
        json!({"share_of_e1rm": {"share": "95 %"}}),
        json!({"by_reserve": {"aim": 2}}),
    ] {
        let block = block(json!({ "progression": rule }));
        let said = said_after(&block, &[("80 kg", 4), ("80 kg", 4), ("80 kg", 4)]);
        assert!(
            said.ends_with("10 % lighter to come back, nearest below is 70 kg"),
            "{said}"
        );
    }
    let written = block(json!({"progression": "as_written", "start": null}));
    assert_eq!(
        said_after(&written, &[("80 kg", 4), ("80 kg", 4), ("80 kg", 4)]),
        "80 kg last time: same load again"
    );
}

#[test]
fn not_one_rep_says_that_the_maximum_lies_below() {
    let rule = block(json!({"progression": {"share_of_e1rm": {"share": "80 %"}}}));
    assert_eq!(
        said_after(&rule, &[("80 kg", 0)]),
        "no estimate of the maximum yet: a step down to 62.5 kg"
    );
    // The empty bar did not move.
    assert_eq!(
        said_after(&rule, &[("20 kg", 0)]),
        "the kit makes nothing as light as 16 kg, its lightest is 20 kg: take that only if it is light for you"
    );
    // What did not move is far above what did: no reason to take less than that, and none to take more.
    let chin_up = block(json!({
        "basis": "body_mass_plus",
        "exercise": {"id": "chin-up", "name": "Chin-up", "pattern": "pull_downward", "equipment": "body"},
        "progression": {"share_of_e1rm": {"share": "80 %"}},
    }));
    let next = after(&chin_up, &[("10 kg", 5), ("40 kg", 0)], 3);
    assert_eq!(next.load(), Some(load("10 kg")));
    assert!(next.asks_body_mass());
}

#[test]
fn who_went_up_within_the_sets_goes_on_from_there() {
    let sets = [("20 kg", 7), ("25 kg", 7), ("30 kg", 6)];
    let mut last = performed(&sets, (5, 7));
    last.shape = plain().shape();
    assert_eq!(
        propose(&plain(), &[last], &kit()).because.to_string(),
        "6 at 30 kg: inside 5–7, same load again"
    );
    // A load that was only tried does not count.
    let mut tried = performed(&[("80 kg", 7), ("100 kg", 1)], (5, 7));
    tried.shape = plain().shape();
    assert_eq!(
        propose(&plain(), &[tried], &kit()).because.to_string(),
        "7, 1 at 80–100 kg: below 5–7, a step down to 77.5 kg"
    );
}

#[test]
fn bad_histories_get_a_sentence_and_a_safe_load() {
    // Two units in one history.
    assert_eq!(
        said_after(&plain(), &[("80 kg", 6), ("176.4 lb", 6)]),
        "6 at 176.4 lb: inside 5–7, same load again, nearest below is 80 kg"
    );
    // Reps that were missed with reps left.
    let steered = block(json!({"progression": {"by_reserve": {"aim": 2}}}));
    let mut odd = performed(&[("80 kg", 3)], (5, 7));
    odd.shape = steered.shape();
    odd.sets[0].reserve = Some(Rir::new(4).unwrap());
    assert_eq!(
        propose(&steered, &[odd], &kit()).because.to_string(),
        "3 of 5 reps at 80 kg and 4 left do not fit together: same load again"
    );
    // No load at all on a bar.
    assert_eq!(
        said_after(&plain(), &[("0 kg", 4)]),
        "the kit makes nothing as light as 0 kg, its lightest is 20 kg: take that only if it is light for you"
    );
    assert_eq!(
        after(&plain(), &[("0 kg", 7)], 90).load(),
        Some(load("20 kg"))
    );
    // A range upside down.
    let mut odd = performed(&[("80 kg", 6)], (9, 3));
    odd.shape = plain().shape();
    assert_eq!(
        propose(&plain(), &[odd], &kit()).load,
        Some(load("77.5 kg"))
    );
}

#[test]
fn kits_that_cannot_make_it_say_so() {
    let mut bare: KitParts = kit().parts().clone();
    bare.plates.clear();
    let bar_alone = Kit::new(bare.clone()).unwrap();
    let said = |kit: &Kit, at: &str| {
        let last = performed(&[(at, 14)], (5, 7));
        propose(&plain(), &[last], kit).because.to_string()
    };
    assert_eq!(
        said(&bar_alone, "80 kg"),
        "14 at 80 kg: top of 5–7 reached, nothing as hard on this bar, 20 kg"
    );
    bare.plates = vec![crate::kit::PlatePairs {
        mass: load("10 kg"),
        pairs: 1,
    }];
    let one_pair = Kit::new(bare.clone()).unwrap();
    assert_eq!(
        said(&one_pair, "20 kg"),
        "14 at 20 kg: top of 5–7 reached, next step on this bar is 40 kg, more than 10 % up but the kit has nothing \
         smaller"
    );
    bare.bars[0].mass = load("100 kg");
    let heavy = Kit::new(bare.clone()).unwrap();
    assert_eq!(
        propose(&plain(), &[], &heavy).because.to_string(),
        "the kit makes nothing as light as 60 kg, its lightest is 100 kg: take that only if it is light for you"
    );
    bare.bars.clear();
    let none = Kit::new(bare).unwrap();
    assert_eq!(
        propose(&plain(), &[], &none).because.to_string(),
        "the kit makes nothing for 60 kg: add what you have in Kit"
    );
    let unknown = block(json!({"start": null}));
    assert_eq!(
        propose(&unknown, &[], &none).because,
        Because::NothingKnown {}
    );
}

#[test]
fn two_over_twice_must_be_at_one_load_to_the_last_set() {
    let rule = block(json!({"progression": {"two_for_two": {}}}));
    let session = |sets: &[(&str, u16)]| {
        let mut one = performed(sets, (10, 10));
        one.shape = rule.shape();
        one
    };
    let eased = session(&[("60 kg", 10), ("50 kg", 12)]);
    let full = session(&[("60 kg", 10), ("60 kg", 12)]);
    let next = |history: &[Performance]| propose(&rule, history, &kit()).load;
    assert_eq!(next(&[eased, full.clone()]), Some(load("60 kg")));
    assert_eq!(next(&[full.clone(), full]), Some(load("62.5 kg")));
}

#[test]
fn a_reason_names_the_loads_that_were_lifted() {
    let said = |rule: serde_json::Value, sets: &[(&str, u16)], left: Option<u8>| {
        let block = block(serde_json::json!({
            "sets": [{"kind": "work", "count": 3, "target": {"reps": {"from": 5, "to": 7}},
                "load": {"rising": "smallest"}}],
            "progression": rule,
        }));
        let mut last = performed(sets, (5, 7));
        last.shape = block.shape();
        if let (Some(left), Some(set)) = (left, last.sets.last_mut()) {
            set.reserve = Some(Rir::saturating(i64::from(left)));
        }
        propose(&block, &[last], &kit()).because.to_string()
    };
    let rising = [("60 kg", 7), ("62.5 kg", 4), ("67.5 kg", 6)];
    let double = serde_json::json!({"double": {}});
    assert_eq!(
        said(double, &rising, None),
        "7, 4, 6 at 60–67.5 kg: below 5–7, a step down to 57.5 kg"
    );
    let fixed = serde_json::json!({"fixed": {"up": "smallest"}});
    assert_eq!(
        said(fixed, &rising, None),
        "not every rep done at 60–67.5 kg: same load again"
    );
    // What one set tells stands beside the load of that set.
    let twice = serde_json::json!({"two_for_two": {"up": "smallest"}});
    assert_eq!(
        said(twice, &rising, None),
        "6 at 67.5 kg in the last set: 9 or more twice running for the next step, same load again"
    );
    let reserve = |aim: u8| serde_json::json!({"by_reserve": {"aim": aim, "step": "smallest"}});
    assert_eq!(
        said(reserve(1), &rising, Some(1)),
        "1 left at 67.5 kg, as aimed at: same load again"
    );
    assert_eq!(
        said(reserve(1), &rising, Some(3)),
        "4 of 5 reps at 62.5 kg and 3 left do not fit together: same load again"
    );
}
