//! Checks of shares of a maximum that nothing tells yet, and of what a rule makes of them.

use crate::kit::Kit;
use crate::strength::maximum::Maximum;
use crate::strength::propose::tests::{block, kit, performed, propose};
use crate::strength::set_load::tests::{done, lines, planned, said, work};
use crate::strength::{DoneSet, set_load};
use crate::units::{Load, Reps, Unit};
use serde_json::{Value, json};

/// So many sets of exactly so many reps.
fn of(count: u8, reps: u8, load: Value) -> Value {
    json!({"kind": "work", "count": count, "target": {"reps": reps}, "load": load})
}

fn triple_and_eights() -> Value {
    json!([
        of(1, 3, json!("same")),
        of(2, 5, json!({"share_of_top": ["90 %", "80 %"]})),
        of(1, 8, json!({"share_of_e1rm": "70 %"})),
    ])
}

#[test]
fn without_an_estimate_the_share_is_one_of_the_work_load() {
    let block = lines(triple_and_eights());
    let instead =
        "no estimate of the maximum yet: 70 % of the work load 80 kg, nearest below is 55 kg";
    assert_eq!(said(&block, 3, &[]), instead);
    // Shares of the top are none to take a share of, and what was done counts.
    let less = [done(0, 0, Some("70 kg"), 3), done(1, 0, Some("75 kg"), 5)];
    assert_eq!(
        said(&block, 3, &less),
        "no estimate of the maximum yet: 70 % of the heaviest, 70 kg, nearest below is 47.5 kg"
    );
    // Never more than what was done.
    let above = lines(json!([
        of(1, 3, json!("same")),
        of(1, 8, json!({"share_of_e1rm": "110 %"}))
    ]));
    assert_eq!(
        said(&above, 1, &[]),
        "no estimate of the maximum yet: 100 % of the work load 80 kg is 80 kg"
    );
}

#[test]
fn the_line_that_the_work_load_is_meant_for_keeps_it() {
    let block = lines(json!([work(2, json!({"share_of_e1rm": "70 %"}))]));
    let whole = "no estimate of the maximum yet: work load 80 kg";
    assert_eq!(said(&block, 0, &[]), whole);
    assert_eq!(said(&block, 1, &[done(0, 0, Some("80 kg"), 6)]), whole);
}

/// The body, and a load on it or what assists it, for three; then eight of a share.
fn on_the_body(basis: &str, load: &str, body_mass: Option<&str>) -> String {
    behind(basis, load, body_mass, &[])
}

/// The same behind sets that were done.
fn behind(basis: &str, load: &str, body_mass: Option<&str>, over: &[DoneSet]) -> String {
    let block = block(json!({
        "basis": basis,
        "exercise": {"id": "dip", "name": "Dip", "pattern": "push_upward", "equipment": "body"},
        "sets": [of(1, 3, json!("same")), of(1, 8, json!({"share_of_e1rm": "90 %"}))],
    }));
    let maximum = Maximum {
        e1rm: None,
        body_mass: body_mass.map(|mass| mass.parse().unwrap()),
    };
    let base: Load = load.parse().unwrap();
    let kit = Kit::starter(Unit::Kg);
    let set = &planned(&block)[1];
    let next = set_load(&block, set, Some(base), over, maximum, &kit);
    next.because.said(Unit::Kg, &block.basis)
}

#[test]
fn with_the_body_the_share_is_one_of_the_whole() {
    let mass = Some("80 kg");
    // 90 % of 100 kg are 90 kg, of 60 kg 54 kg.
    assert_eq!(
        on_the_body("body_mass_plus", "20 kg", mass),
        "no estimate of the maximum yet: 90 % of the body with 20 kg added: 10 kg"
    );
    assert_eq!(
        on_the_body("body_mass_minus", "20 kg", mass),
        "no estimate of the maximum yet: 90 % of the body with 20 kg assistance: 26.25 kg"
    );
    assert_eq!(
        on_the_body("body_mass_plus", "0 kg", mass),
        "no estimate of the maximum yet: work load nothing added"
    );
    // Of a body whose mass is not known, the load alone.
    assert_eq!(
        on_the_body("body_mass_plus", "20 kg", None),
        "90 % of the work load 20 kg, nearest below is 17.5 kg"
    );
    assert_eq!(
        on_the_body("body_mass_minus", "20 kg", None),
        "easier than with 20 kg assistance: 21.25 kg"
    );
}

/// What was done today is no work load, whatever that is.
#[test]
fn of_what_was_done_it_is_said_that_it_was() {
    let after = |basis, load, mass, did| behind(basis, load, mass, &[done(0, 0, Some(did), 3)]);
    assert_eq!(
        after("body_mass_plus", "20 kg", None, "10 kg"),
        "90 % of the heaviest, 10 kg, nearest below is 8.75 kg"
    );
    assert_eq!(
        after("body_mass_plus", "20 kg", Some("80 kg"), "0 kg"),
        "no estimate of the maximum yet: nothing added again"
    );
    assert_eq!(
        after("body_mass_minus", "20 kg", None, "0 kg"),
        "easier than with no assistance: 1.25 kg"
    );
}

/// What the rule says after so many reps of the eight that the last set asked for.
fn next(lines: Value, last: u16) -> String {
    let block = lines_of(lines);
    let mut then = performed(
        &[
            ("70 kg", 3),
            ("62.5 kg", 5),
            ("55 kg", 5),
            ("47.5 kg", last),
        ],
        (5, 5),
    );
    then.shape = block.shape();
    for (set, asked) in [(0, 3), (3, 8)] {
        let asked = Reps::saturating(asked);
        (then.sets[set].low, then.sets[set].top) = (asked, asked);
    }
    propose(&block, &[then], &kit()).because.to_string()
}

/// What is proposed after sessions of which only these sets were done, each at its load with that many reps of as many.
fn after(lines: Value, sessions: &[&[(&str, u16)]]) -> String {
    let block = lines_of(lines);
    let history = sessions.iter().map(|sets| {
        let mut then = performed(sets, (0, 0));
        then.shape = block.shape();
        for set in &mut then.sets {
            (set.low, set.top) = (set.reps, set.reps);
        }
        then.left = 4 - sets.len() as u8;
        then
    });
    let history: Vec<_> = history.collect();
    propose(&block, &history, &kit()).because.to_string()
}

/// Worked by hand: 55 kg are a share of the 80 kg that were done before, and no load of the triple.
#[test]
fn sessions_of_shares_alone_leave_the_work_load_where_it_was() {
    let whole: &[_] = &[("80 kg", 3), ("70 kg", 5), ("62.5 kg", 5), ("55 kg", 8)];
    let eights: &[_] = &[("55 kg", 8)];
    let up = "3 at 80 kg: as many as asked for, next step on this bar is 82.5 kg";
    assert_eq!(after(triple_and_eights(), &[whole]), up);
    assert_eq!(after(triple_and_eights(), &[whole, eights]), up);
    // While nothing else was ever done it is all there is to go by.
    assert_eq!(
        after(triple_and_eights(), &[eights]),
        "55 kg last time: same load again"
    );
}

/// Staged sets are judged by no rule, but their load is the work load; the share behind them is none.
#[test]
fn a_share_behind_staged_sets_does_not_become_their_load() {
    let staged = json!({"kind": "work", "count": 1, "load": "same",
        "target": {"stages": [{"hold": {"seconds": 10}}, {"partials": {"reps": 8}}]}});
    let block = lines_of(json!([staged, of(1, 8, json!({"share_of_e1rm": "70 %"}))]));
    let mut then = performed(&[("80 kg", 5), ("55 kg", 8)], (8, 8));
    then.shape = block.shape();
    then.sets[0].work = false;
    let next = propose(&block, &[then], &kit());
    assert_eq!(next.because.to_string(), "80 kg last time: same load again");
}

fn lines_of(lines: Value) -> crate::sheet::Block {
    block(json!({
        "sets": lines,
        "progression": {"double": {"reach": "all_sets", "up": "smallest", "down": "smallest"}},
    }))
}

#[test]
fn a_set_whose_load_is_not_the_work_loads_does_not_lower_it() {
    let up = "3 at 70 kg: as many as asked for, next step on this bar is 72.5 kg";
    assert_eq!(next(triple_and_eights(), 5), up);
    assert_eq!(next(triple_and_eights(), 8), up);
    // Of a line whose load is the work load's a miss is one.
    let same = json!([
        of(1, 3, json!("same")),
        of(2, 5, json!({"share_of_top": ["90 %", "80 %"]})),
        of(1, 8, json!({"share_of_top": ["70 %"]})),
    ]);
    assert_eq!(
        next(same, 5),
        "5 at 47.5 kg: below 8, a step down to 67.5 kg"
    );
}
