//! Checks that a reason names what was lifted and what decided, and goes on from it.

use super::tests::{block, of_kinds, performed, propose};
use super::*;
use crate::strength::moved::{Moved, Wish};
use crate::units::{Reps, Unit};
use serde_json::json;

fn kit() -> Kit {
    Kit::starter(Unit::Kg)
}

fn load(text: &str) -> Load {
    text.parse().unwrap()
}

/// A block of 5 and of 8–10 reps: the reason names the range that decided, and the sets that ask for it.
#[test]
fn of_two_ranges_the_one_that_decided_is_named() {
    let said = |reach: &str, sets: &[(&str, u16)]| {
        let block = block(json!({
            "sets": [
                {"kind": "work", "count": 1, "target": {"reps": 5}},
                {"kind": "work", "count": 2, "target": {"reps": {"from": 8, "to": 10}}},
            ],
            "progression": {"double": {"reach": reach}},
        }));
        let mut last = performed(sets, (8, 10));
        last.shape = block.shape();
        let five = Reps::new(5).unwrap();
        (last.sets[0].low, last.sets[0].top) = (five, five);
        propose(&block, &[last], &kit()).because.to_string()
    };
    let sets = |reps: [u16; 3]| reps.map(|n| ("60 kg", n));
    assert_eq!(
        said("all_sets", &sets([5, 9, 7])),
        "9, 7 at 60 kg: below 8–10, a step down to 57.5 kg"
    );
    assert_eq!(
        said("all_sets", &sets([4, 9, 8])),
        "4 at 60 kg: below 5, a step down to 57.5 kg"
    );
    assert_eq!(
        said("all_sets", &sets([5, 10, 9])),
        "10, 9 at 60 kg: inside 8–10, same load again"
    );
    assert_eq!(
        said("last_set", &sets([5, 8, 10])),
        "8, 10 at 60 kg: top of 8–10 reached, next step on this bar is 62.5 kg"
    );
    assert_eq!(
        said("all_sets", &sets([5, 10, 10])),
        "5 at 60 kg: as many as asked for, next step on this bar is 62.5 kg"
    );
}

/// 55, 60, 65 kg rising, the last of them missed three times: those were the loads that did not go.
#[test]
fn a_deload_names_the_loads_that_were_missed() {
    let block = block(json!({
        "sets": [{"kind": "work", "count": 2, "target": {"reps": {"from": 5, "to": 7}}, "load": {"rising": {"by": "5 kg"}}}],
    }));
    let day = |first: &str, second: &str| {
        let mut one = performed(&[(first, 7), (second, 3)], (5, 7));
        one.shape = block.shape();
        one
    };
    let mut history = [
        day("60 kg", "65 kg"),
        day("57.5 kg", "62.5 kg"),
        day("55 kg", "60 kg"),
    ];
    let said = |history: &[Performance]| propose(&block, history, &kit()).because.to_string();
    assert_eq!(
        said(&history),
        "3 at 65 kg, 3 at 62.5 kg, 3 at 60 kg: below 5 three times running, work load 55 kg: 10 % lighter to come \
         back, nearest below is 47.5 kg"
    );
    // Sets of which other reps were asked.
    history[0].sets[1].low = Reps::new(4).unwrap();
    assert!(said(&history).contains(": below what was asked three times running, "));
}

/// 60 kg, of which the sets were 80, 90, 100 %: it is 60 kg that the next step is from.
#[test]
fn shares_of_the_top_go_on_from_the_top() {
    let next = |shares: &[&str], sets: &[(&str, u16)], left: u8| {
        let block = block(json!({
            "sets": [{"kind": "work", "count": 3, "target": {"reps": {"from": 5, "to": 7}}, "load": {"share_of_top": shares}}],
        }));
        let mut last = performed(sets, (5, 7));
        last.left = left;
        last.shape = block.shape();
        propose(&block, &[last], &kit()).because.to_string()
    };
    let rising = ["80 %", "90 %", "100 %"];
    let sets = [("47.5 kg", 7), ("52.5 kg", 7), ("60 kg", 7)];
    assert_eq!(
        next(&rising, &sets, 0),
        "7, 7, 7 at 47.5–60 kg: top of 5–7 reached, next step on this bar is 62.5 kg"
    );
    // Passed over or left off, it is not known which share a set had: no more than was done, and no step up.
    for done in [&sets[..2], &sets[1..]] {
        let said = next(&rising, done, 1);
        assert!(said.ends_with(": same load again"), "{said}");
    }
    let kept = |shares: &[&str], sets: &[(&str, u16)], assists: bool, left: u8| {
        let mut block = block(json!({
            "sets": [{"kind": "work", "count": 3, "target": {"reps": {"from": 5, "to": 7}}, "load": {"share_of_top": shares}}],
        }));
        if assists {
            block.basis = crate::sheet::LoadBasis::BodyMassMinus;
            block.exercise.equipment = crate::sheet::Equipment::Body;
        }
        let mut last = performed(sets, (5, 7));
        last.left = left;
        last.shape = block.shape();
        propose(&block, &[last], &kit()).load
    };
    let (two, last) = (&sets[..2], &sets[1..]);
    assert_eq!(kept(&rising, two, false, 1), Some(load("52.5 kg")));
    assert_eq!(kept(&rising, last, false, 1), Some(load("60 kg")));
    let alike = &["90 %"];
    assert_eq!(
        kept(alike, &[("52.5 kg", 6)], false, 1),
        Some(load("60 kg"))
    );
    // A step more assistance than the 20 kg stood for.
    assert_eq!(
        kept(alike, &[("21.25 kg", 6)], true, 0),
        Some(load("20 kg"))
    );
    assert_eq!(
        kept(&["100 %"], &[("20 kg", 6)], true, 0),
        Some(load("20 kg"))
    );
    let assisted = [("21.25 kg", 6), ("20 kg", 6)];
    assert_eq!(kept(&rising, &assisted, true, 1), Some(load("20 kg")));
}

/// Two drop sets of two drops: the second one began harder, as in a first time.
#[test]
fn a_drop_set_goes_on_from_the_hardest_that_was_done() {
    let block = block(serde_json::json!({"sets": [
        {"kind": {"drop": {"drops": 2, "keep": "80 %"}}, "count": 2, "target": {"reps": 8}},
    ]}));
    let next = |second: u16| {
        let sets = [
            ("40 kg", 8),
            ("30 kg", 8),
            ("22.5 kg", 8),
            ("45 kg", second),
            ("35 kg", 8),
            ("27.5 kg", 8),
        ];
        let mut last = performed(&sets, (8, 8));
        of_kinds(&mut last, &[Unfed::Drop; 6]);
        last.shape = block.shape();
        propose(&block, &[last], &kit()).because.to_string()
    };
    assert_eq!(next(8), "45 kg last time: same load again");
    assert_eq!(next(6), "40 kg last time: same load again");
}

/// 100 kg done whole, the bar making every 2.5 kg: a step that the sheet names is told as the sheet's, one of the bar not.
#[test]
fn a_step_that_the_sheet_names_is_told_as_the_sheets() {
    let next = |rule: serde_json::Value, reps: u16| {
        let block = block(json!({
            "sets": [{"kind": "work", "count": 1, "target": {"reps": 5}}],
            "progression": rule,
        }));
        let mut last = performed(&[("100 kg", reps)], (5, 5));
        last.shape = block.shape();
        propose(&block, &[last], &kit()).because.to_string()
    };
    let fixed = |up: serde_json::Value| next(json!({"fixed": {"up": up}}), 5);
    assert_eq!(
        fixed(json!({"by": "5 kg"})),
        "every rep done at 100 kg: by the sheet 5 kg more, 105 kg"
    );
    assert_eq!(
        fixed(json!({"by": "4 kg"})),
        "every rep done at 100 kg: by the sheet 4 kg more, nearest above is 105 kg"
    );
    assert_eq!(
        fixed(json!("smallest")),
        "every rep done at 100 kg: next step on this bar is 102.5 kg"
    );
    // A named step that is too large is not the one that was taken.
    assert_eq!(
        fixed(json!({"by": "20 kg"})),
        "every rep done at 100 kg: next step on this bar is 110 kg, no more than 10 % up"
    );
    assert_eq!(
        next(json!({"double": {"down": {"by": "5 kg"}}}), 4),
        "4 at 100 kg: below 5, by the sheet 5 kg less, 95 kg"
    );
}

#[test]
fn a_named_step_of_assistance_says_which_way_the_assistance_goes() {
    let said = |wish, to: &str| {
        let moved = Moved {
            at: load("20 kg"),
            to: load(to),
            wish,
            on: crate::sheet::Equipment::Stack,
            assists: true,
            named: Some(load("5 kg")),
            bound: None,
            span: None,
        };
        Because::AllDone { moved }.to_string()
    };
    assert_eq!(
        said(Wish::Harder, "15 kg"),
        "every rep done at 20 kg: by the sheet 5 kg less assistance, 15 kg"
    );
    assert_eq!(
        said(Wish::Easier, "25 kg"),
        "every rep done at 20 kg: by the sheet 5 kg more assistance, 25 kg"
    );
}

/// Of a case or a stone nobody knows what it can be made to weigh.
#[test]
fn the_load_of_equipment_that_nobody_knows_stays_as_it_was_written() {
    let case = json!({"id": "case", "name": "Case", "pattern": "carry", "equipment": "other"});
    let carried = |changes: serde_json::Value| {
        let mut all = json!({"exercise": case, "start": "24 kg"});
        let all_of = all.as_object_mut().unwrap();
        all_of.extend(changes.as_object().unwrap().clone());
        block(all)
    };
    let said = |block: &Block, history: &[Performance]| {
        propose(block, history, &kit()).because.to_string()
    };
    let plain = carried(json!({}));
    assert_eq!(said(&plain, &[]), "start of the sheet: 24 kg");
    let as_written = carried(json!({"progression": "as_written"}));
    assert_eq!(said(&as_written, &[]), "as written: 24 kg");
    let after = |reps: u16| {
        let mut last = performed(&[("24 kg", reps); 3], (5, 7));
        last.shape = plain.shape();
        said(&plain, &[last])
    };
    assert_eq!(after(6), "6, 6, 6 at 24 kg: inside 5–7, same load again");
    assert_eq!(
        after(7),
        "7, 7, 7 at 24 kg: top of 5–7 reached, next step in this kit is 25 kg"
    );
}

/// Of a stone or a sled that begins at 24 kg the loads that are looked for are multiples of 10 kg: what is taken for last time's
/// load is what gives the loads that were done, no heavier one.
#[test]
fn shares_of_a_start_between_two_steps_go_on_from_it() {
    let mut parts = kit().parts().clone();
    parts.smallest_step = load("10 kg");
    let kit = Kit::new(parts).unwrap();
    let next = |sets: &[(&str, u16)]| {
        let block = block(json!({
            "exercise": {"id": "stone", "name": "Stone", "pattern": "hinge", "equipment": "other"},
            "sets": [{"kind": "work", "count": 2, "target": {"reps": {"from": 5, "to": 7}}, "load": {"share_of_top": ["80 %", "90 %"]}}],
            "start": "24 kg",
        }));
        let mut last = performed(sets, (5, 7));
        last.shape = block.shape();
        propose(&block, &[last], &kit).load
    };
    assert_eq!(next(&[("10 kg", 6), ("20 kg", 6)]), Some(load("24 kg")));
    assert_eq!(next(&[("10 kg", 14), ("20 kg", 14)]), Some(load("30 kg")));
    // With 30 kg both sets were done with 20 kg: the next step is from there.
    assert_eq!(next(&[("20 kg", 14), ("20 kg", 14)]), Some(load("40 kg")));

    let mut assisted = block(json!({"basis": "body_mass_minus"}));
    assisted.exercise.equipment = crate::sheet::Equipment::Other;
    let ladder = Ladder::new(&assisted, &kit, None);
    let less = crate::units::Share::percent(10);
    assert_eq!(ladder.lightened(load("24 kg"), less), Some(load("40 kg")));
}
