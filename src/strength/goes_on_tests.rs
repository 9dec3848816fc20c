//! Checks of how a line goes on from what was done: shares of the top, less than planned, a kit that makes nothing.

use super::tests::{done, lines, loads, planned, said, work};
use super::*;
use crate::units::Unit;
use serde_json::json;

/// 60 kg, each set a share of it and none of the set before: else it would get less from set to set.
#[test]
fn shares_of_the_top_are_not_shares_of_each_other() {
    let block = lines(json!([
        {"kind": {"ramp_up": {"shares": ["90 %"]}}, "count": 1, "target": {"reps": 3}},
        work(3, json!({"share_of_top": ["80 %", "90 %", "100 %"]})),
    ]));
    let on = |sets: &[DoneSet]| loads(&block, sets);
    // The ramp-up leads to the first work set, not past it.
    assert_eq!(on(&[]), ["55", "62.5", "70", "80"]);
    let two = [done(1, 0, Some("62.5 kg"), 6), done(1, 1, Some("70 kg"), 6)];
    assert_eq!(on(&two), ["55", "62.5", "70", "80"]);
    assert_eq!(
        said(&block, 3, &two),
        "100 % of the work load 80 kg is 80 kg"
    );
    // A top set that did not move is no heaviest: its share was planned.
    let behind = lines(json!([
        work(1, json!("same")),
        work(2, json!({"share_of_top": ["90 %", "80 %"]})),
    ]));
    let missed = [done(0, 0, Some("80 kg"), 0), done(1, 0, Some("70 kg"), 6)];
    assert_eq!(
        said(&behind, 2, &missed),
        "80 % of the work load 80 kg, nearest below is 62.5 kg"
    );
    let lifted = [
        done(0, 0, Some("82.5 kg"), 5),
        done(1, 0, Some("72.5 kg"), 6),
    ];
    assert_eq!(
        said(&behind, 2, &lifted),
        "80 % of the heaviest, 82.5 kg, nearest below is 65 kg"
    );
}

/// Who took less is not sent back to more by the next line; who took more is not sent on to more.
#[test]
fn a_line_of_the_same_load_goes_on_from_less_but_not_from_more() {
    let block = lines(json!([
        work(2, json!("same")),
        {"kind": "to_failure", "count": 1, "target": {"reps": 8}},
    ]));
    let after = |load: &str| {
        let sets = [done(0, 0, Some(load), 5), done(0, 1, Some(load), 5)];
        said(&block, 2, &sets)
    };
    assert_eq!(after("72.5 kg"), "as in the set before: 72.5 kg");
    assert_eq!(after("80 kg"), "work load: 80 kg");
    assert_eq!(after("85 kg"), "work load: 80 kg");
    // Ramp-ups and back-offs are lighter by plan.
    let between = lines(json!([
        {"kind": {"ramp_up": {"shares": ["50 %"]}}, "count": 1, "target": {"reps": 5}},
        {"kind": {"back_off": {"share": "80 %"}}, "count": 1, "target": {"reps": 5}},
        work(1, json!({"rising": "smallest"})),
        work(1, json!("same")),
    ]));
    let lighter = |line| said(&between, 3, &[done(line, 0, Some("40 kg"), 5)]);
    for line in 0..3 {
        assert_eq!(lighter(line), "work load: 80 kg", "{line}");
    }
}

/// A stack that is not in the kit: what a drop, a back-off was done with is there for the next one.
#[test]
fn where_the_kit_makes_nothing_no_drop_is_asked_for_twice() {
    let block = lines(json!([
        {"kind": {"drop": {"drops": 2, "keep": "80 %"}}, "count": 2, "target": {"reps": 8}},
        {"kind": {"back_off": {"share": "50 %"}}, "count": 2, "target": {"reps": 8}},
    ]));
    let nothing: Kit =
        serde_json::from_value(json!({"unit": "kg", "smallest_step": "1 kg"})).unwrap();
    let part = |set, drop, load: &str| {
        let mut part = done(0, set, Some(load), 8);
        part.key.drop = drop;
        part
    };
    let mut sets = vec![
        part(0, 0, "60 kg"),
        part(0, 1, "47 kg"),
        part(0, 2, "36 kg"),
    ];
    let at = |index: usize, sets: &[DoneSet]| {
        let set = &planned(&block)[index];
        set_load(&block, set, None, sets, None, &nothing)
            .load
            .map(|load| load.to_string())
    };
    let kg = |load: &str| Some(load.to_owned());
    assert_eq!(at(3, &sets), kg("60 kg"));
    sets.push(part(1, 0, "60 kg"));
    assert_eq!(at(4, &sets), kg("47 kg"));
    sets.push(part(1, 1, "47 kg"));
    assert_eq!(at(5, &sets), kg("36 kg"));
    // The first back-off has none before it; the second one does.
    assert_eq!(at(6, &sets), None);
    sets.push(done(1, 0, Some("30 kg"), 8));
    assert_eq!(at(7, &sets), kg("30 kg"));
    // Never more than was just done.
    let tired = [
        part(0, 0, "60 kg"),
        part(0, 1, "47 kg"),
        part(1, 0, "40 kg"),
    ];
    assert_eq!(at(4, &tired), None);
}

/// 9 kg of maximum: the empty bar is the first work set, and what leads to it.
#[test]
fn a_ramp_up_to_the_lightest_is_the_lightest() {
    let block = lines(json!([
        {"kind": {"ramp_up": {"shares": ["50 %"]}}, "count": 1, "target": {"reps": 5}},
        work(1, json!({"share_of_e1rm": "70 %"})),
    ]));
    let kit = Kit::starter(Unit::Kg);
    let each = planned(&block)
        .into_iter()
        .map(|set| set_load(&block, &set, None, &[], Some(Load::whole_kg(25)), &kit).load);
    assert_eq!(each.collect::<Vec<_>>(), [Some(Load::whole_kg(20)); 2]);
}
