//! The order check on sheets written as lines: what it names, and what it leaves alone.

use super::Catalogue;
use crate::sheet::{OrderWarning, Sheet, WarningKind};

/// What the list of exercises says of the order of `sheet`.
fn order_check(sheet: &Sheet) -> Vec<OrderWarning> {
    super::order_check(sheet, &Catalogue::default())
}

use WarningKind::{Grip, LowerBack, Role, SameMuscle};

/// A sheet of blocks `(exercise, role, "work" or "to_failure")`; a name with `?` is no exercise of the list: its
/// pattern and equipment follow the name, as in `Rack drill?hinge barbell`.
fn sheet(blocks: &[(&str, &str, &str)]) -> Sheet {
    let groups: Vec<serde_json::Value> = blocks
        .iter()
        .zip(1_u128..)
        .map(|(block, n)| serde_json::json!({ "straight": written(block, n) }))
        .collect();
    read(&groups)
}

fn written((name, role, kind): &(&str, &str, &str), n: u128) -> serde_json::Value {
    let exercise = match name.split_once('?') {
        None => serde_json::to_value(super::find(name).expect("on the list")).unwrap(),
        Some((name, means)) => {
            let (pattern, equipment) = means.split_once(' ').unwrap();
            serde_json::json!({
                "id": "own-one", "name": name, "pattern": pattern, "equipment": equipment
            })
        }
    };
    serde_json::json!({
        "id": uuid::Uuid::from_u128(n),
        "exercise": exercise,
        "role": role,
        "sets": [{ "kind": kind, "count": 3, "target": { "reps": 5 } }],
        "basis": "external",
        "rest": 120,
        "rest_after": 120,
    })
}

fn read(groups: &[serde_json::Value]) -> Sheet {
    serde_json::from_value(serde_json::json!({
        "id": uuid::Uuid::from_u128(100),
        "version": uuid::Uuid::from_u128(101),
        "written": "2026-01-05T18:00:00+01:00",
        "name": "Lower A",
        "groups": groups,
    }))
    .unwrap()
}

/// The warnings as kind and places of the blocks from 1.
fn found(sheet: &Sheet) -> Vec<(WarningKind, u128, u128)> {
    order_check(sheet)
        .iter()
        .map(|it: &OrderWarning| (it.kind, it.earlier.0.as_u128(), it.later.0.as_u128()))
        .collect()
}

fn of(blocks: &[(&str, &str, &str)]) -> Vec<(WarningKind, u128, u128)> {
    found(&sheet(blocks))
}

#[test]
fn the_order_by_role_is_power_heavy_lighter_burn_out() {
    // NSCA guidance, from memory: power, other multi-joint, assistance.
    let right = [
        ("Box jump", "power", "work"),
        ("Front squat", "strength", "work"),
        ("Dumbbell bench press", "hypertrophy", "work"),
        ("Calf raise", "pump", "work"),
    ];
    assert_eq!(of(&right), []);
    let late = [right[1], right[3], ("Medicine-ball slam", "power", "work")];
    // The nearest earlier block is named, once for each later one.
    assert_eq!(of(&late), [(Role, 2, 3)]);
    let burn_out_first = [("Push-up", "hypertrophy", "to_failure"), right[1]];
    assert_eq!(of(&burn_out_first), [(Role, 1, 2)]);
}

#[test]
fn a_tired_grip_is_named() {
    let carry = ("Farmer's carry", "hypertrophy", "work");
    let pull = ("Pull-up", "strength", "work");
    let deadlift = ("Deadlift", "strength", "work");
    assert_eq!(of(&[carry, pull]), [(Grip, 1, 2)]);
    assert_eq!(of(&[pull, carry]), []);
    assert_eq!(of(&[deadlift, pull]), [(Grip, 1, 2)]);
    // A lighter pull after a heavy deadlift is the usual order; a carry is another matter.
    assert_eq!(of(&[deadlift, ("Pull-up", "hypertrophy", "work")]), []);
    assert_eq!(
        of(&[
            ("Farmer's carry", "strength", "work"),
            ("Pull-up", "hypertrophy", "work")
        ]),
        [(Grip, 1, 2)]
    );
    // Nothing hangs by the hands in a press.
    assert_eq!(of(&[deadlift, ("Bench press", "strength", "work")]), []);
}

#[test]
fn a_tired_lower_back_is_named() {
    let row = ("Bent-over row", "strength", "work");
    let squat = ("Back squat", "strength", "work");
    let supported = ("Chest-supported dumbbell row", "strength", "work");
    assert_eq!(of(&[row, squat]), [(LowerBack, 1, 2)]);
    assert_eq!(of(&[squat, row]), []);
    assert_eq!(of(&[supported, squat]), []);
    assert_eq!(
        of(&[row, ("Rear-foot-elevated split squat", "strength", "work")]),
        []
    );
}

#[test]
fn the_same_muscle_before_heavier_work_is_named() {
    // ACSM 2009, from memory: several joints before one.
    let extension = ("Leg extension", "hypertrophy", "work");
    let squat = ("Front squat", "strength", "work");
    assert_eq!(of(&[extension, squat]), [(SameMuscle, 1, 2)]);
    assert_eq!(of(&[squat, extension]), []);
    let pushdown = ("Triceps pushdown", "hypertrophy", "work");
    let press = ("Bench press", "hypertrophy", "work");
    assert_eq!(of(&[pushdown, press]), [(SameMuscle, 1, 2)]);
    assert_eq!(of(&[press, pushdown]), []);
    // Two heavy presses in a row are no fault; after sets to failure they are.
    let overhead = ("Overhead press", "strength", "work");
    assert_eq!(of(&[("Bench press", "strength", "work"), overhead]), []);
    let said = order_check(&sheet(&[extension, squat]))[0]
        .said(&sheet(&[extension, squat]), &Catalogue::default());
    assert_eq!(
        said,
        "Leg extension tires what Front squat works most (quadriceps): the heavier work would get less."
    );
}

#[test]
fn what_is_not_on_the_list_is_judged_by_role_and_pattern() {
    let hinge = ("Rack drill?hinge barbell", "strength", "work");
    let squat = ("Rack drill?squat barbell", "strength", "work");
    assert_eq!(of(&[hinge, squat]), [(LowerBack, 1, 2)]);
    assert_eq!(of(&[squat, hinge]), []);
    let carry = ("Boat carry?carry other", "hypertrophy", "work");
    let hang = ("Rope climb?pull_downward body", "hypertrophy", "work");
    assert_eq!(of(&[carry, hang]), [(Grip, 1, 2)]);
    let light = ("Light one?squat body", "pump", "work");
    assert_eq!(
        of(&[light, ("Step drill?squat other", "hypertrophy", "work")]),
        [(SameMuscle, 1, 2)]
    );
    let raise = ("Odd raise?single_joint other", "pump", "work");
    assert_eq!(
        of(&[
            raise,
            ("Odd curl?single_joint other", "hypertrophy", "work")
        ]),
        [(Role, 1, 2)]
    );
}

#[test]
fn blocks_done_together_are_not_held_against_each_other() {
    let extension = written(&("Leg extension", "hypertrophy", "work"), 1);
    let squat = written(&("Front squat", "strength", "work"), 2);
    let carry = written(&("Farmer's carry", "hypertrophy", "work"), 3);
    let deadlift = written(&("Deadlift", "strength", "work"), 4);
    let pair = |a: &serde_json::Value, b: &serde_json::Value| {
        read(&[serde_json::json!({ "pair": { "blocks": [a, b], "between": 30 } })])
    };
    assert_eq!(found(&pair(&extension, &squat)), []);
    // Turn by turn the grip is tired in every round.
    assert_eq!(found(&pair(&carry, &deadlift)), [(Grip, 3, 4)]);
}

#[test]
fn every_warning_says_why_and_where_that_is_from() {
    let blocks = [
        ("Farmer's carry", "hypertrophy", "work"),
        ("Bent-over row", "strength", "work"),
        ("Leg extension", "pump", "work"),
        ("Deadlift", "strength", "work"),
        ("Front squat", "strength", "work"),
        ("Box jump", "power", "work"),
    ];
    let sheet = sheet(&blocks);
    let kinds: Vec<WarningKind> = order_check(&sheet).iter().map(|it| it.kind).collect();
    for kind in [Role, Grip, LowerBack, SameMuscle] {
        assert!(kinds.contains(&kind), "{kind:?} of {kinds:?}");
    }
    for warning in order_check(&sheet) {
        let said = warning.said(&sheet, &Catalogue::default());
        for id in [warning.earlier, warning.later] {
            let name = &sheet.block(id).unwrap().exercise.name;
            assert!(said.contains(name.as_str()), "{said}");
        }
        assert!(said.ends_with('.') && !warning.source().is_empty());
    }
}
