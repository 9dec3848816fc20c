//! Checks of the loads within a session: every policy and kind, and what follows an overruled load.

use super::*;
use crate::sheet::{BlockId, Group, SetKey, Sheet, unroll};
use crate::strength::propose::tests::block;
use crate::units::{Reps, Unit};
use proptest::prelude::*;
use serde_json::json;
use uuid::Uuid;

pub(in crate::strength) fn planned(block: &Block) -> Vec<PlannedSet> {
    let sheet: Sheet = serde_json::from_value(json!({
        "id": Uuid::from_u128(7),
        "version": Uuid::from_u128(8),
        "written": "2026-01-05T18:00:00+01:00",
        "name": "Lower A",
        "groups": [serde_json::to_value(Group::Straight(Box::new(block.clone()))).unwrap()],
    }))
    .unwrap();
    unroll(&sheet)
}

pub(in crate::strength) fn lines(lines: serde_json::Value) -> Block {
    block(json!({ "sets": lines }))
}

pub(in crate::strength) fn done(line: u8, set: u8, load: Option<&str>, reps: i64) -> DoneSet {
    DoneSet {
        key: SetKey {
            block: BlockId(Uuid::from_u128(1)),
            line,
            set,
            drop: 0,
        },
        load: load.map(|load| load.parse().unwrap()),
        reps: load.map(|_| Reps::new(reps).unwrap()),
        reserve: None,
    }
}

/// The loads of all sets of a block from 80 kg, as figures.
pub(in crate::strength) fn loads(block: &Block, done: &[DoneSet]) -> Vec<String> {
    let base = Some(Load::whole_kg(80));
    let kit = Kit::starter(Unit::Kg);
    planned(block)
        .iter()
        .map(|set| {
            let load = set_load(block, set, base, done, Some(Load::whole_kg(100)), &kit).load;
            load.map_or("none".to_owned(), |load| load.figure(Unit::Kg))
        })
        .collect()
}

pub(in crate::strength) fn said(block: &Block, index: usize, done: &[DoneSet]) -> String {
    let base = Some(Load::whole_kg(80));
    let kit = Kit::starter(Unit::Kg);
    let set = &planned(block)[index];
    set_load(block, set, base, done, None, &kit)
        .because
        .to_string()
}

pub(in crate::strength) fn work(count: u8, load: serde_json::Value) -> serde_json::Value {
    json!({"kind": "work", "count": count, "target": {"reps": {"from": 5, "to": 7}}, "load": load})
}

#[test]
fn every_policy_gives_its_loads() {
    let of = |count, load| loads(&lines(json!([work(count, load)])), &[]);
    assert_eq!(of(3, json!("same")), ["80", "80", "80"]);
    assert_eq!(of(3, json!({"rising": "smallest"})), ["80", "82.5", "85"]);
    assert_eq!(
        of(3, json!({"falling": {"by": "5 kg"}})),
        ["80", "75", "70"]
    );
    assert_eq!(
        of(3, json!({"list": ["60 kg", "71 kg"]})),
        ["60", "70", "70"]
    );
    assert_eq!(
        of(2, json!({"share_of_top": ["90 %", "50 %"]})),
        ["70", "40"]
    );
    assert_eq!(of(2, json!({"share_of_e1rm": "85 %"})), ["85", "85"]);
    let outcome = json!({"rising_by_outcome": {"large": {"by": "10 kg"}}});
    assert_eq!(of(3, outcome), ["80", "82.5", "85"]);
}

#[test]
fn ramp_ups_are_shares_of_the_first_work_set() {
    let block = lines(json!([
        {"kind": {"ramp_up": {"shares": ["10 %", "40 %", "80 %"]}}, "count": 3, "target": {"reps": 5}},
        work(1, json!("same")),
    ]));
    assert_eq!(loads(&block, &[]), ["20", "30", "62.5", "80"]);
    assert_eq!(
        said(&block, 0, &[]),
        "ramp-up: 10 % of 80 kg, the lightest on this bar: 20 kg"
    );
    assert_eq!(
        said(&block, 1, &[]),
        "ramp-up: 40 % of 80 kg, nearest below is 30 kg"
    );
}

#[test]
fn back_offs_and_drops_follow_what_was_done() {
    let block = lines(json!([
        work(2, json!({"rising": "smallest"})),
        {"kind": {"back_off": {"share": "80 %"}}, "count": 1, "target": {"reps": 8}},
        {"kind": {"drop": {"drops": 2, "keep": "80 %"}}, "count": 1, "target": {"reps": 8}},
    ]));
    let sets = [done(0, 0, Some("80 kg"), 6), done(0, 1, Some("90 kg"), 6)];
    assert_eq!(loads(&block, &sets)[2..], ["70", "80", "62.5", "50"]);
    assert_eq!(
        said(&block, 2, &sets),
        "back-off: 80 % of 90 kg, nearest below is 70 kg"
    );
    let mut sets = sets.to_vec();
    let mut full = done(2, 0, Some("60 kg"), 8);
    sets.push(full.clone());
    assert_eq!(
        said(&block, 4, &sets),
        "drop: 80 % of 60 kg, nearest below is 47.5 kg"
    );
    full.key.drop = 1;
    full.load = Some(Load::whole_kg(50));
    sets.push(full);
    assert_eq!(said(&block, 5, &sets), "drop: 80 % of 50 kg is 40 kg");
}

#[test]
fn a_line_goes_on_from_an_overruled_load() {
    let rising = lines(json!([work(3, json!({"rising": "smallest"}))]));
    let overruled = [done(0, 0, Some("70 kg"), 6)];
    assert_eq!(loads(&rising, &overruled)[1..], ["72.5", "75"]);
    let same = lines(json!([work(3, json!("same"))]));
    assert_eq!(loads(&same, &overruled)[1..], ["70", "70"]);
    assert_eq!(said(&same, 1, &overruled), "as in the set before: 70 kg");
}

#[test]
fn a_set_passed_over_is_no_step() {
    let rising = lines(json!([work(3, json!({"rising": "smallest"}))]));
    let sets = [done(0, 0, Some("80 kg"), 6), done(0, 1, None, 0)];
    assert_eq!(loads(&rising, &sets)[2], "82.5");
    assert_eq!(loads(&rising, &[done(0, 0, None, 0)])[1], "80");
}

#[test]
fn where_the_kit_ends_the_load_stays() {
    let rising = lines(json!([work(2, json!({"rising": "smallest"}))]));
    assert_eq!(
        said(&rising, 1, &[done(0, 0, Some("177.5 kg"), 6)]),
        "the kit makes nothing heavier than 177.5 kg"
    );
}

#[test]
fn lighter_sets_of_assisted_work_have_more_assistance() {
    let assisted = block(json!({
        "basis": "body_mass_minus",
        "exercise": {"id": "chin-up", "name": "Chin-up", "pattern": "pull_downward", "equipment": "body"},
        "sets": [
            {"kind": {"ramp_up": {"shares": ["50 %"]}}, "count": 1, "target": {"reps": 5}},
            work(2, json!({"rising": {"by": "5 kg"}})),
        ],
    }));
    assert_eq!(loads(&assisted, &[]), ["81.25", "80", "75"]);
    assert_eq!(said(&assisted, 0, &[]), "easier than at 80 kg: 81.25 kg");
}

#[test]
fn without_a_body_mass_the_work_load_stays() {
    let policy = json!({"share_of_e1rm": "85 %"});
    let belt = block(json!({
        "basis": "body_mass_plus",
        "exercise": {"id": "dip", "name": "Dip", "pattern": "push_upward", "equipment": "body"},
        "sets": [work(1, policy)],
    }));
    assert_eq!(
        said(&belt, 0, &[]),
        "body mass unknown, so no share of the maximum can be taken (give yours in Kit): work load 80 kg"
    );
}

#[test]
fn each_line_goes_its_own_way() {
    let block = lines(json!([
        work(2, json!("same")),
        work(4, json!({"rising": "smallest"})),
    ]));
    // What was chosen for the first line says nothing of the second, whose sets are counted alone.
    let first = [done(0, 0, Some("70 kg"), 6), done(0, 1, None, 0)];
    assert_eq!(loads(&block, &first)[2..], ["80", "82.5", "85", "87.5"]);
    let passed = [first[0].clone(), done(1, 0, None, 0)];
    assert_eq!(loads(&block, &passed)[3..], ["80", "82.5", "85"]);
}

#[test]
fn a_set_that_is_over_is_told_from_those_before_it_alone() {
    let rising = lines(json!([work(4, json!({"rising": "smallest"}))]));
    let both = [done(0, 0, Some("80 kg"), 6), done(0, 1, Some("82.5 kg"), 6)];
    assert_eq!(loads(&rising, &both), ["80", "82.5", "85", "87.5"]);
    assert_eq!(loads(&rising, &[done(0, 1, None, 0)])[1], "82.5");
    let same = lines(json!([work(2, json!("same"))]));
    assert_eq!(said(&same, 1, &both[..1]), "work load: 80 kg");
}

#[test]
fn a_ramp_up_stays_within_the_work_load_and_a_share_of_the_top_need_not() {
    let block = lines(json!([
        {"kind": {"ramp_up": {"shares": ["120 %"]}}, "count": 1, "target": {"reps": 5}},
        work(1, json!({"share_of_top": ["110 %"]})),
    ]));
    assert_eq!(loads(&block, &[]), ["87.5", "87.5"]);
    assert_eq!(said(&block, 0, &[]), "ramp-up: 100 % of 87.5 kg is 87.5 kg");
}

#[test]
fn a_back_off_is_of_the_hardest_work_set_not_of_a_ramp_up() {
    let block = lines(json!([
        {"kind": {"ramp_up": {"shares": ["50 %"]}}, "count": 1, "target": {"reps": 5}},
        work(1, json!("same")),
        {"kind": {"back_off": {"share": "80 %"}}, "count": 1, "target": {"reps": 8}},
    ]));
    let heavy = [done(0, 0, Some("100 kg"), 5), done(1, 0, Some("80 kg"), 6)];
    assert_eq!(
        said(&block, 2, &heavy),
        "back-off: 80 % of 80 kg, nearest below is 62.5 kg"
    );
}

#[test]
fn a_step_down_smaller_than_the_kit_makes_is_still_a_step_down() {
    let falling = lines(json!([work(3, json!({"falling": {"by": "0.5 kg"}}))]));
    assert_eq!(loads(&falling, &[]), ["80", "77.5", "75"]);
}

#[test]
fn all_of_an_assistance_is_no_easier_set() {
    let assisted = |share| {
        block(json!({
            "basis": "body_mass_minus",
            "exercise": {"id": "chin-up", "name": "Chin-up", "pattern": "pull_downward", "equipment": "body"},
            "sets": [
                work(1, json!("same")),
                {"kind": {"back_off": {"share": share}}, "count": 1, "target": {"reps": 5}},
            ],
        }))
    };
    assert_eq!(loads(&assisted("100 %"), &[]), ["80", "80"]);
    assert_eq!(said(&assisted("100 %"), 1, &[]), "same assistance: 80 kg");
    assert_eq!(loads(&assisted("90 %"), &[]), ["80", "81.25"]);
}

/// A dumbbell beside the body: the kit's lightest, 4 kg, where a share asks for less and the maximum allows for it.
#[test]
fn the_lightest_beside_the_body_is_never_above_the_maximum() {
    let beside = |e1rm| {
        let block = block(json!({
            "basis": "body_mass_plus",
            "exercise": {"id": "dip", "name": "Dip", "pattern": "push_upward", "equipment": "dumbbell"},
            "sets": [work(1, json!({"share_of_e1rm": "98 %"}))],
        }));
        let maximum = Maximum {
            e1rm: Some(Load::whole_kg(e1rm)),
            body_mass: Some(Load::whole_kg(80)),
        };
        let set = &planned(&block)[0];
        set_load(&block, set, None, &[], maximum, &Kit::starter(Unit::Kg)).load
    };
    // 98 % of 84 kg leave 2.32 kg beside 80 kg of body, of 83 kg 1.34: 84 kg in all are within the one alone.
    assert_eq!(beside(84), Some(Load::whole_kg(4)));
    assert_eq!(beside(83), None);
}

fn some_policy() -> impl Strategy<Value = serde_json::Value> {
    prop::sample::select(vec![
        json!("same"),
        json!({"rising": {"by": "7 kg"}}),
        json!({"falling": "smallest"}),
        json!({"list": ["41 kg", "333 kg"]}),
        json!({"share_of_top": ["90 %", "110 %"]}),
        json!({"share_of_e1rm": "62.5 %"}),
        json!({"rising_by_outcome": {"large": {"by": "11 kg"}}}),
    ])
}

proptest! {
    #[test]
    fn every_set_can_be_loaded_and_no_ramp_up_is_above_the_work_load(
        policy in some_policy(),
        base in 8..70_i64,
        first in prop::option::of((20..180_u16, 1..12_i64)),
        share in 1..=100_u8,
    ) {
        let block = lines(json!([
            {"kind": {"ramp_up": {"shares": [format!("{share} %")]}}, "count": 2, "target": {"reps": 5}},
            work(3, policy),
            {"kind": {"back_off": {"share": "80 %"}}, "count": 1, "target": {"reps": 8}},
            {"kind": {"drop": {"drops": 2, "keep": "70 %"}}, "count": 1, "target": {"reps": 8}},
        ]));
        let kit = Kit::starter(Unit::Kg);
        let base = Load::parse_in(&(base as f64 * 2.5).to_string(), Unit::Kg).unwrap();
        let done: Vec<DoneSet> = first
            .map(|(load, reps)| done(1, 0, Some(&format!("{load} kg")), reps))
            .into_iter()
            .collect();
        let first_work = match &block.sets[1].load {
            LoadPolicy::List(loads) => loads[0],
            LoadPolicy::ShareOfE1rm(share) => Load::whole_kg(150).times(share.factor()),
            // Nothing so light: the empty bar.
            LoadPolicy::ShareOfTop(shares) => base.times(shares[0].factor()).max(Load::whole_kg(20)),
            _ => base,
        };
        for set in planned(&block) {
            let got = set_load(&block, &set, Some(base), &done, Some(Load::whole_kg(150)), &kit);
            let load = got.load.expect("the kit makes something for each of these");
            prop_assert!(kit.choices(block.exercise.equipment).contains(load), "{} {}", load, got.because);
            if !set.kind.is_work() {
                prop_assert!(load <= first_work, "{} above {}", load, first_work);
            }
        }
    }
}

#[test]
fn a_back_off_follows_what_was_lifted_and_not_what_did_not_move() {
    let block = lines(json!([
        work(2, json!("same")),
        {"kind": {"back_off": {"share": "80 %"}}, "count": 1, "target": {"reps": 8}},
    ]));
    let tried = [done(0, 0, Some("80 kg"), 6), done(0, 1, Some("100 kg"), 0)];
    assert_eq!(
        said(&block, 2, &tried),
        "back-off: 80 % of 80 kg, nearest below is 62.5 kg"
    );
    let lifted = [done(0, 0, Some("80 kg"), 6), done(0, 1, Some("100 kg"), 1)];
    assert_eq!(
        said(&block, 2, &lifted),
        "back-off: 80 % of 100 kg is 80 kg"
    );
}

#[test]
fn where_the_kit_makes_nothing_the_next_set_follows_what_was_lifted() {
    // The starter kit has no stack: the sheet's load was typed all the same.
    let block = block(json!({
        "sets": [work(2, json!("same"))],
        "exercise": {"id": "leg-curl", "name": "Leg curl", "pattern": "single_joint", "equipment": "stack"},
    }));
    assert_eq!(said(&block, 0, &[]), "the kit makes nothing for 80 kg");
    assert_eq!(
        said(&block, 1, &[done(0, 0, Some("80 kg"), 6)]),
        "as in the set before: 80 kg"
    );
    assert_eq!(
        said(&block, 1, &[done(0, 0, Some("30 kg"), 6)]),
        "as in the set before: 30 kg"
    );
}
