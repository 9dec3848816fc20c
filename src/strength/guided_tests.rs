//! Checks of the guided start: whole first times, set by set, on several kits.

use super::tests::{lines, planned};
use crate::kit::{Kit, KitParts, Stack};
use crate::sheet::{Block, PlannedSet};
use crate::strength::propose::tests::{block, propose};
use crate::strength::{Base, Because, DoneSet, Prescribed, set_load};
use crate::units::{Load, Reps, Rir, Unit};
use proptest::prelude::*;
use serde_json::json;

pub(in crate::strength) fn five_sets(changes: serde_json::Value) -> Block {
    let mut all = json!({
        "start": null,
        "sets": [{"kind": "work", "count": 5, "target": {"reps": {"from": 5, "to": 7}}, "reserve": [2]}],
    });
    let all_fields = all.as_object_mut().unwrap();
    all_fields.extend(changes.as_object().unwrap().clone());
    block(all)
}

pub(in crate::strength) fn base(block: &Block, kit: &Kit) -> Base {
    Base::from(&propose(block, &[], kit))
}

pub(in crate::strength) fn done(
    set: &PlannedSet,
    load: Option<Load>,
    reps: i64,
    reserve: Option<i64>,
) -> DoneSet {
    DoneSet {
        key: set.key,
        load,
        reps: Some(Reps::new(reps).unwrap()),
        reserve: reserve.map(|n| Rir::new(n).unwrap()),
    }
}

/// The first time at `block`: each set is done as prescribed, with that reserve said. Gives the loads.
fn first_time(block: &Block, kit: &Kit, reserves: &[Option<i64>]) -> Vec<String> {
    let base = base(block, kit);
    let mut over = Vec::new();
    let mut loads = Vec::new();
    for (set, reserve) in planned(block).iter().zip(reserves) {
        let next = set_load(block, set, base, &over, None, kit);
        loads.push(next.load.map_or("none".to_owned(), |load| load.to_string()));
        over.push(done(set, next.load, 6, *reserve));
    }
    loads
}

/// What is said of the second set after one done at `at`.
pub(in crate::strength) fn second(
    block: &Block,
    kit: &Kit,
    at: &str,
    reps: i64,
    reserve: Option<i64>,
) -> Prescribed {
    let sets = planned(block);
    let first = done(&sets[0], Some(at.parse().unwrap()), reps, reserve);
    set_load(block, &sets[1], base(block, kit), &[first], None, kit)
}

#[test]
fn a_squat_rises_by_a_fifth_until_few_are_left() {
    let kit = Kit::starter(Unit::Kg);
    let squat = five_sets(json!({}));
    let reserves = [Some(8), Some(5), Some(4), Some(2), Some(1)];
    assert_eq!(
        first_time(&squat, &kit, &reserves),
        ["20 kg", "22.5 kg", "25 kg", "27.5 kg", "27.5 kg"]
    );
    assert_eq!(
        second(&squat, &kit, "60 kg", 6, Some(5))
            .because
            .to_string(),
        "6 at 60 kg with 5 or more left, 2 aimed at: a larger step to 70 kg"
    );
}

#[test]
fn after_a_step_down_the_search_is_over() {
    let kit = Kit::starter(Unit::Kg);
    let squat = five_sets(json!({}));
    let sets = planned(&squat);
    // 60 kg were too heavy: 57.5 kg it is, though a fresh guess would go up again.
    let over = [
        done(&sets[0], Some("60 kg".parse().unwrap()), 6, Some(0)),
        done(&sets[1], Some("57.5 kg".parse().unwrap()), 6, Some(4)),
    ];
    let next = set_load(&squat, &sets[2], base(&squat, &kit), &over, None, &kit);
    assert!(!next.guided);
    assert_eq!(next.load, Some("57.5 kg".parse().unwrap()));
}

#[test]
fn a_drop_takes_load_off_in_the_search_too() {
    let kit = Kit::starter(Unit::Kg);
    let squat = five_sets(json!({
        "sets": [{"kind": {"drop": {"drops": 1, "keep": "80 %"}}, "count": 2, "target": {"reps": 6}}],
    }));
    let sets = planned(&squat);
    let mut first = done(&sets[0], Some("60 kg".parse().unwrap()), 6, Some(6));
    let drop = set_load(
        &squat,
        &sets[1],
        base(&squat, &kit),
        &[first.clone()],
        None,
        &kit,
    );
    assert_eq!(
        (drop.guided, drop.load),
        (false, Some("47.5 kg".parse().unwrap())),
        "{}",
        drop.because
    );
    first.reserve = Some(Rir::new(5).unwrap());
    let next = set_load(&squat, &sets[2], base(&squat, &kit), &[first], None, &kit);
    assert!(
        next.guided && next.load > Some(Load::whole_kg(60)),
        "{}",
        next.because
    );
}

#[test]
fn a_press_rises_by_a_tenth() {
    let kit = Kit::starter(Unit::Kg);
    let press = five_sets(json!({
        "exercise": {"id": "overhead-press", "name": "Overhead press", "pattern": "push_upward", "equipment": "barbell"},
    }));
    let said = |at, reserve| {
        second(&press, &kit, at, 6, Some(reserve))
            .because
            .to_string()
    };
    assert_eq!(
        said("60 kg", 5),
        "6 at 60 kg with 5 or more left, 2 aimed at: a larger step to 65 kg"
    );
    assert_eq!(
        said("60 kg", 3),
        "6 at 60 kg with 3 left, 2 aimed at: the usual step to 62.5 kg"
    );
    assert_eq!(said("60 kg", 2), "as in the set before: 60 kg");
    assert_eq!(
        said("60 kg", 1),
        "6 at 60 kg with 1 left, 2 aimed at: a step down to 57.5 kg"
    );
    assert_eq!(
        second(&press, &kit, "60 kg", 6, None).because.to_string(),
        "what you had left was not said: 60 kg again; say it, and the next load follows"
    );
}

#[test]
fn once_found_the_line_goes_on_from_there() {
    let kit = Kit::starter(Unit::Kg);
    let squat = five_sets(json!({
        "sets": [{"kind": "work", "count": 5, "target": {"reps": 6}, "load": {"rising": {"by": "5 kg"}}}],
    }));
    // The usual reserve of 2 is aimed at: found in the second set, then the line rises by its own step.
    let reserves = [Some(5), Some(2), Some(0), Some(0), Some(0)];
    assert_eq!(
        first_time(&squat, &kit, &reserves),
        ["20 kg", "22.5 kg", "27.5 kg", "32.5 kg", "37.5 kg"]
    );
    // Too heavy at once, and nothing lighter: it stays.
    let reserves = [Some(0), Some(0), Some(0), Some(0), Some(0)];
    assert_eq!(
        first_time(&five_sets(json!({})), &kit, &reserves)[4],
        "20 kg"
    );
}

#[test]
fn ramp_ups_are_part_of_the_search_and_reps_are_weighed() {
    let kit = Kit::starter(Unit::Kg);
    let squat = lines(json!([
        {"kind": {"ramp_up": {"shares": ["40 %", "80 %"]}}, "count": 2, "target": {"reps": 3}},
        {"kind": "work", "count": 1, "target": {"reps": 6}},
        {"kind": {"back_off": {"share": "80 %"}}, "count": 1, "target": {"reps": 6}},
    ]));
    let mut squat = squat;
    squat.start = None;
    let sets = planned(&squat);
    let base = base(&squat, &kit);
    let next = |done: &[DoneSet], n: usize| set_load(&squat, &sets[n], base, done, None, &kit);
    assert_eq!(next(&[], 0).load, Some(Load::whole_kg(20)));
    // Three done with nine left is six with six left.
    let mut over = vec![done(&sets[0], Some(Load::whole_kg(60)), 3, Some(9))];
    assert_eq!(
        next(&over, 1).load,
        Some(Load::whole_kg(72).minus("2 kg".parse().unwrap()))
    );
    // Three done with four left is six with one left.
    over.push(done(&sets[1], Some("72.5 kg".parse().unwrap()), 3, Some(4)));
    let work = next(&over, 2);
    assert_eq!((work.load, work.guided), (Some(Load::whole_kg(70)), true));
    over.push(done(&sets[2], Some(Load::whole_kg(70)), 6, Some(1)));
    assert_eq!(next(&over, 3).load, Some("55 kg".parse().unwrap()));
}

#[test]
fn every_kit_begins_with_its_lightest() {
    let mut parts: KitParts = Kit::starter(Unit::Kg).parts().clone();
    parts.stacks = vec![Stack {
        name: crate::sheet::Line::new("tower").unwrap(),
        first: Load::whole_kg(5),
        step: Load::whole_kg(5),
        last: Load::whole_kg(60),
        add_ons: Vec::new(),
    }];
    let kit = Kit::new(parts).unwrap();
    let on = |equipment: &str, basis: &str| {
        let block = five_sets(json!({
            "basis": basis,
            "exercise": {"id": "raise", "name": "Raise", "pattern": "single_joint", "equipment": equipment},
        }));
        let reserves = [Some(5), Some(5), Some(3), Some(2), Some(2)];
        first_time(&block, &kit, &reserves).join(", ")
    };
    assert_eq!(
        on("barbell", "external"),
        "20 kg, 22.5 kg, 25 kg, 27.5 kg, 27.5 kg"
    );
    assert_eq!(on("dumbbell", "external"), "4 kg, 6 kg, 8 kg, 10 kg, 10 kg");
    assert_eq!(on("stack", "external"), "5 kg, 10 kg, 15 kg, 20 kg, 20 kg");
    assert_eq!(
        on("other", "external"),
        "1.25 kg, 2.5 kg, 3.75 kg, 5 kg, 5 kg"
    );
    assert_eq!(
        on("body", "body_mass_plus"),
        "0 kg, 1.25 kg, 2.5 kg, 3.75 kg, 3.75 kg"
    );
    // Of an assistance there is no lightest: the lifter chooses the first one.
    assert_eq!(
        on("body", "body_mass_minus"),
        "none, none, none, none, none"
    );
    let pounds = Kit::starter(Unit::Lb);
    let reserves = [Some(5), Some(3), Some(2)];
    let loads = first_time(&five_sets(json!({})), &pounds, &reserves);
    assert_eq!(loads, ["45 lb", "50 lb", "55 lb"]);
}

#[test]
fn a_chosen_assistance_is_guided_too() {
    let kit = Kit::starter(Unit::Kg);
    let chin_up = five_sets(json!({
        "basis": "body_mass_minus",
        "exercise": {"id": "chin-up", "name": "Chin-up", "pattern": "pull_downward", "equipment": "body"},
    }));
    assert_eq!(
        propose(&chin_up, &[], &kit).because,
        Because::NothingKnown {}
    );
    let load = |reserve| {
        let next = second(&chin_up, &kit, "30 kg", 6, Some(reserve)).load;
        next.unwrap().to_string()
    };
    assert_eq!(
        [load(6), load(3), load(2), load(0)],
        ["27.5 kg", "28.75 kg", "30 kg", "31.25 kg"]
    );
}

#[test]
fn the_first_board_says_what_to_do() {
    let kit = Kit::starter(Unit::Kg);
    let said = propose(&five_sets(json!({})), &[], &kit)
        .because
        .to_string();
    assert_eq!(
        said,
        "first time: begin light with 20 kg, say how much you had left, and the next load follows"
    );
}

proptest! {
    /// Whatever was typed in place of the proposal: the next set can be loaded, or it is said why not.
    #[test]
    fn any_typed_load_leads_to_one_of_the_kit(
        basis in prop::sample::select(vec!["external", "body_mass_plus", "body_mass_minus"]),
        equipment in prop::sample::select(vec!["barbell", "dumbbell", "stack", "other"]),
        quarters in 0..800_i64,
        reps in 0..12_i64,
        reserve in prop::option::of(0..9_i64),
    ) {
        let kit = Kit::starter(Unit::Kg);
        let block = five_sets(json!({
            "basis": basis,
            "exercise": {"id": "any", "name": "Any", "pattern": "squat", "equipment": equipment},
        }));
        let at = format!("{}.{} kg", quarters / 4, quarters % 4 * 25);
        let next = second(&block, &kit, &at, reps, reserve);
        match next.load {
            // Where the kit makes nothing at all, what was lifted is taken to be there.
            Some(load) if kit.at_or_above(block.exercise.equipment, Load::ZERO).is_none() => {
                prop_assert_eq!(load, at.parse().unwrap());
            }
            Some(load) => prop_assert!(kit.choices(block.exercise.equipment).contains(load), "{}", next.because),
            None => prop_assert!(next.because.to_string().contains("the kit makes nothing"), "{}", next.because),
        }
    }

    /// Whatever is said, each set can be loaded; and more left never gives a lighter next set.
    #[test]
    fn more_left_never_gives_less(
        equipment in prop::sample::select(vec!["barbell", "dumbbell", "other"]),
        pattern in prop::sample::select(vec!["squat", "push_across"]),
        at in 0..80_usize,
        reps in 0..12_i64,
        reserve in 0..9_i64,
    ) {
        let kit = Kit::starter(Unit::Kg);
        let block = five_sets(json!({
            "exercise": {"id": "any", "name": "Any", "pattern": pattern, "equipment": equipment},
        }));
        let loads = kit.loads(block.exercise.equipment);
        let at = match loads.len() {
            0 => Load::whole_kg(at as u16),
            n => loads[at % n],
        };
        let next = |reps, reserve| second(&block, &kit, &at.to_string(), reps, Some(reserve)).load.unwrap();
        for load in [next(reps, reserve), next(reps, reserve + 1), next(reps + 1, reserve)] {
            prop_assert!(kit.choices(block.exercise.equipment).contains(load));
            prop_assert!(load >= next(reps, reserve));
        }
    }
}

/// Four portions of two are eight reps: with two left as aimed at the load is found.
#[test]
fn all_portions_of_a_cluster_were_asked() {
    let kit = Kit::starter(Unit::Kg);
    let cluster = |kind: serde_json::Value| {
        five_sets(json!({"sets": [
            {"kind": kind, "count": 1, "target": {"reps": 2}, "reserve": [2]},
            {"kind": {"cluster": {"portions": 4, "pause": 15}}, "count": 3, "target": {"reps": 2}, "reserve": [2]},
        ]}))
    };
    let of = json!({"cluster": {"portions": 4, "pause": 15}});
    let said = |block: &Block, reps, reserve| {
        let next = second(block, &kit, "60 kg", reps, Some(reserve));
        next.because.to_string()
    };
    let all = cluster(of);
    assert_eq!(said(&all, 8, 2), "as in the set before: 60 kg");
    assert_eq!(
        said(&all, 8, 3),
        "8 at 60 kg with 3 left, 2 aimed at: the usual step to 62.5 kg"
    );
    // A portion too few, and two left: one left of what was asked.
    assert_eq!(
        said(&all, 7, 2),
        "7 at 60 kg with 2 left is 1 left in a set of 8, 2 aimed at: a step down to 57.5 kg"
    );
    // A ramp-up goes on to portions, not to all of them in one go.
    let ramp = cluster(json!({"ramp_up": {"shares": ["80 %"]}}));
    assert_eq!(
        said(&ramp, 5, 0),
        "5 at 60 kg with 0 left is 3 left in a set of 2, 2 aimed at: the usual step to 62.5 kg"
    );
}
