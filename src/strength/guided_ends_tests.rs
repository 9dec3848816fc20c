//! Checks of where the search of a guided start ends: not with a ramp-up, at the limit, and without a kit.

use super::guided_tests::{base, done, five_sets, second};
use super::tests::planned;
use crate::kit::{Kit, KitParts};
use crate::strength::{DoneSet, set_load};
use crate::units::{Load, Unit};
use serde_json::json;

/// "5 or more" of a ramp-up does not say that no more were left, and what was worked out for a work set is not what one left.
#[test]
fn a_ramp_up_leads_on_and_ends_no_search() {
    let kit = Kit::starter(Unit::Kg);
    let pull = five_sets(json!({"sets": [
        {"kind": {"ramp_up": {"shares": ["50 %"]}}, "count": 1, "target": {"reps": 5}},
        {"kind": "work", "count": 3, "target": {"reps": 8}, "reserve": [2]},
    ]}));
    let sets = planned(&pull);
    let after = |dones: &[(&str, i64, i64)]| {
        let over = sets.iter().zip(dones);
        let over: Vec<DoneSet> = over
            .map(|(set, (at, reps, left))| done(set, Some(at.parse().unwrap()), *reps, Some(*left)))
            .collect();
        let next = set_load(
            &pull,
            &sets[over.len()],
            base(&pull, &kit),
            &over,
            None,
            &kit,
        );
        next.because.to_string()
    };
    assert_eq!(
        after(&[("20 kg", 5, 5)]),
        "5 at 20 kg with 5 or more left, 2 aimed at: the usual step to 22.5 kg"
    );
    assert_eq!(
        after(&[("20 kg", 5, 5), ("22.5 kg", 8, 5)]),
        "8 at 22.5 kg with 5 or more left, 2 aimed at: a larger step to 25 kg"
    );
    // Three left in a set of five are none in one of eight.
    assert_eq!(
        after(&[("40 kg", 5, 3)]),
        "5 at 40 kg with 3 left is 0 left in a set of 8, 2 aimed at: a step down to 37.5 kg"
    );
    assert_eq!(
        after(&[("40 kg", 5, 3), ("37.5 kg", 8, 4)]),
        "8 at 37.5 kg with 4 left, 2 aimed at: the usual step to 40 kg"
    );
    // Seen in a work set it is found.
    assert_eq!(
        after(&[("40 kg", 5, 5), ("42.5 kg", 8, 2)]),
        "as in the set before: 42.5 kg"
    );
    let six = five_sets(json!({"sets": [
        {"kind": {"ramp_up": {"shares": ["50 %"]}}, "count": 1, "target": {"reps": 6}},
        {"kind": "work", "count": 3, "target": {"reps": 8}, "reserve": [2]},
    ]}));
    assert_eq!(
        second(&six, &kit, "40 kg", 6, Some(4)).because.to_string(),
        "6 at 40 kg with 4 left is 2 left in a set of 8, 2 aimed at: 40 kg again"
    );
}

/// A set to failure, or of so many and more, leaves none, told or not: its load is the one that was looked for.
#[test]
fn to_the_limit_none_left_is_as_aimed_at() {
    let kit = Kit::starter(Unit::Kg);
    for kind in ["work", "to_failure"] {
        let row = five_sets(json!({
            "sets": [{"kind": kind, "count": 3, "target": {"reps": {"least": 8}}}],
        }));
        for reserve in [None, Some(0)] {
            let next = second(&row, &kit, "40 kg", 12, reserve);
            assert_eq!(next.because.to_string(), "as in the set before: 40 kg");
            assert!(!next.guided);
        }
        let more = second(&row, &kit, "40 kg", 12, Some(3)).because.to_string();
        assert_eq!(
            more,
            "12 at 40 kg with 3 left, 0 aimed at: the usual step to 42.5 kg"
        );
    }
}

/// So many and more with two to be left is no set to the limit, and only its own line says whether a set goes there.
#[test]
fn a_reserve_that_is_written_is_aimed_at_and_each_set_goes_by_its_own_line() {
    let kit = Kit::starter(Unit::Kg);
    let spared = five_sets(json!({
        "sets": [{"kind": "work", "count": 3, "target": {"reps": {"least": 8}}, "reserve": [2]}],
    }));
    assert_eq!(
        second(&spared, &kit, "40 kg", 12, Some(3))
            .because
            .to_string(),
        "12 at 40 kg with 3 left, 2 aimed at: the usual step to 42.5 kg"
    );
    assert!(second(&spared, &kit, "40 kg", 12, None).guided);

    let mixed = five_sets(json!({"sets": [
        {"kind": "work", "count": 1, "target": {"reps": 5}, "reserve": [2]},
        {"kind": "work", "count": 2, "target": {"reps": {"least": 5}}, "reserve": [0]},
    ]}));
    let sets = planned(&mixed);
    let over = [
        done(&sets[0], Some(Load::whole_kg(24)), 5, Some(4)),
        done(&sets[1], Some(Load::whole_kg(25)), 9, None),
    ];
    let next = set_load(&mixed, &sets[2], base(&mixed, &kit), &over, None, &kit);
    // Nine to the limit are five with four to spare, and the first line leaves two.
    assert_eq!(
        next.because.to_string(),
        "9 at 25 kg with 0 left is 4 left in a set of 5, 2 aimed at: the usual step to 27.5 kg"
    );
}

/// A rule that goes by reserve asks each set for it: so many and more is no set to the limit then, and what was not told is not
/// known.
#[test]
fn what_the_rule_aims_at_is_asked_of_sets_that_name_no_reserve() {
    let kit = Kit::starter(Unit::Kg);
    let by_reserve = |kind: &str, reserve: &[i64]| {
        five_sets(json!({
            "sets": [{"kind": kind, "count": 3, "target": {"reps": {"least": 8}}, "reserve": reserve}],
            "progression": {"by_reserve": {"aim": 2, "step": "smallest"}},
        }))
    };
    let said = |block, left| second(&block, &kit, "40 kg", 12, left);
    let untold = said(by_reserve("work", &[]), None);
    assert_eq!(untold.load, Some(Load::whole_kg(40)), "{}", untold.because);
    assert!(untold.guided);
    assert_eq!(
        said(by_reserve("work", &[]), Some(3)).because.to_string(),
        "12 at 40 kg with 3 left, 2 aimed at: the usual step to 42.5 kg"
    );
    // To failure, and where the set itself says that none is to be left, none was.
    let down = "12 at 40 kg with 0 left, 2 aimed at: a step down to 37.5 kg";
    for block in [by_reserve("to_failure", &[]), by_reserve("work", &[0])] {
        assert_eq!(said(block, None).because.to_string(), down);
    }
}

/// The load that is looked for is the first work set's, so its line says what is aimed at.
#[test]
fn a_later_line_does_not_say_what_is_aimed_at() {
    let kit = Kit::starter(Unit::Kg);
    let open = json!({"kind": "work", "count": 1, "target": {"reps": {"least": 5}}});
    let eights =
        |reserve| json!({"kind": "work", "count": 3, "target": {"reps": 8}, "reserve": reserve});
    let found = five_sets(json!({"sets": [open, eights(json!([2]))]}));
    assert_eq!(
        second(&found, &kit, "40 kg", 9, None).because.to_string(),
        "as in the set before: 40 kg"
    );
    let none =
        json!({"kind": "work", "count": 1, "target": {"reps": {"least": 5}}, "reserve": [0]});
    let spared = five_sets(json!({"sets": [eights(json!([])), none]}));
    assert_eq!(
        second(&spared, &kit, "40 kg", 8, Some(2))
            .because
            .to_string(),
        "as in the set before: 40 kg"
    );
}

/// Where the kit makes nothing for the exercise, the load that was chosen is the one to go on with.
#[test]
fn without_a_kit_the_load_that_was_chosen_stays() {
    let kit = Kit::new(KitParts {
        stacks: Vec::new(),
        ..Kit::starter(Unit::Kg).parts().clone()
    })
    .unwrap();
    let squat = five_sets(json!({"exercise":
        {"id": "leg-press", "name": "Leg press", "pattern": "squat", "equipment": "stack"}}));
    for reserve in [None, Some(2), Some(4), Some(0)] {
        let next = second(&squat, &kit, "30 kg", 6, reserve);
        assert_eq!(next.load, Some(Load::whole_kg(30)), "{}", next.because);
    }
}
