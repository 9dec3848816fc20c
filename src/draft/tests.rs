//! What a draft promises.

use super::*;
use crate::exercises;
use crate::sheet::{Role, unroll};
use crate::units::Seconds;
use std::num::NonZeroU16;
use uuid::Uuid;

fn when() -> DateTime<FixedOffset> {
    DateTime::parse_from_rfc3339("2026-11-02T18:00:00+01:00").unwrap()
}

fn id(n: u128) -> BlockId {
    BlockId(Uuid::from_u128(n))
}

/// A draft with blocks 1, 2, 3 … of these exercises.
fn draft(names: &[&str]) -> Draft {
    let version = SheetVersion(Uuid::from_u128(101));
    let mut draft = Draft::new(SheetId(Uuid::from_u128(100)), version, when());
    for (name, n) in names.iter().zip(1..) {
        let entry = exercises::entry(name).unwrap();
        let block = new_block(
            id(n),
            entry.exercise(),
            entry.basis(),
            entry.sides(),
            entry.cautions(),
        );
        draft.add(block).unwrap();
    }
    draft
}

/// Its blocks by number, those done together in one list.
fn order(draft: &Draft) -> Vec<Vec<u128>> {
    let groups = draft.sheet().groups.iter();
    groups
        .map(|group| {
            let blocks = group.blocks().iter();
            blocks.map(|block| block.id.0.as_u128()).collect()
        })
        .collect()
}

#[test]
fn a_draft_without_a_block_is_no_sheet_yet() {
    let version = SheetVersion(Uuid::from_u128(7));
    assert!(draft(&[]).kept(version, when()).is_err());
    let sheet = draft(&["front-squat"]).kept(version, when()).unwrap();
    assert_eq!(sheet.version, version);
    assert_eq!(unroll(&sheet).len(), 3);
}

#[test]
fn a_new_block_has_what_is_usual_for_its_role() {
    let draft = draft(&[
        "front-squat",
        "kettlebell-swing",
        "barbell-curl",
        "farmers-carry",
        "plank",
    ]);
    let roles: Vec<Role> = draft.sheet().blocks().map(|block| block.role).collect();
    assert_eq!(
        roles,
        [
            Role::Strength,
            Role::Power,
            Role::Hypertrophy,
            Role::Hypertrophy,
            Role::Hypertrophy
        ]
    );
    let sets: Vec<String> = draft
        .sheet()
        .blocks()
        .map(|block| format!("{} × {}", block.sets[0].count, block.sets[0].target))
        .collect();
    assert_eq!(
        sets,
        ["3 × 4–6", "3 × 3–5", "3 × 8–12", "3 × 20 m", "3 × 0:30"]
    );
}

#[test]
fn another_role_changes_what_was_usual_and_keeps_what_was_written() {
    let mut draft = draft(&["front-squat"]);
    let mut rest = |block: &mut Block| block.rest = Seconds::saturating(200);
    draft.change(id(1), &mut rest).unwrap();
    draft
        .change(id(1), &mut |block| block.set_role(Role::Pump))
        .unwrap();
    let block = draft.sheet().block(id(1)).unwrap();
    assert_eq!(block.sets[0].target.to_string(), "15–20");
    assert_eq!(block.tempo, Role::Pump.usual().tempo);
    assert_eq!((block.rest.get(), block.rest_after.get()), (200, 30));
}

#[test]
fn blocks_move_one_place_and_pairs_move_whole() {
    let mut draft = draft(&["front-squat", "chin-up", "plank", "barbell-curl"]);
    draft.shift(id(3), false).unwrap();
    assert_eq!(order(&draft), [vec![1], vec![3], vec![2], vec![4]]);
    draft.join(id(2)).unwrap();
    assert_eq!(order(&draft), [vec![1], vec![3], vec![2, 4]]);
    draft.shift(id(4), false).unwrap();
    assert_eq!(order(&draft), [vec![1], vec![3], vec![4, 2]]);
    draft.shift(id(4), false).unwrap();
    assert_eq!(order(&draft), [vec![1], vec![4, 2], vec![3]]);
    draft.drag(id(1), id(3)).unwrap();
    assert_eq!(order(&draft), [vec![4, 2], vec![3], vec![1]]);
    draft.shift(id(1), true).unwrap();
    assert_eq!(order(&draft), [vec![4, 2], vec![3], vec![1]]);
}

#[test]
fn what_is_done_together_comes_apart_again() {
    let mut draft = draft(&["front-squat", "chin-up", "plank"]);
    draft.join(id(1)).unwrap();
    draft.join(id(2)).unwrap();
    assert_eq!(order(&draft), [vec![1, 2, 3]]);
    assert!(matches!(draft.sheet().groups[0], Group::Circuit { .. }));
    draft.set_between(id(1), Seconds::saturating(20)).unwrap();
    draft.part(id(1)).unwrap();
    assert_eq!(order(&draft), [vec![2, 3], vec![1]]);
    assert!(matches!(draft.sheet().groups[0], Group::Pair { between, .. } if between.get() == 20));
    draft.turn_pair(id(2)).unwrap();
    assert!(matches!(draft.sheet().groups[0], Group::Circuit { .. }));
    draft.remove(id(2)).unwrap();
    assert_eq!(order(&draft), [vec![3], vec![1]]);
    assert!(matches!(draft.sheet().groups[0], Group::Straight(_)));
}

#[test]
fn a_pair_of_one_is_refused_and_changes_nothing() {
    let mut draft = draft(&["front-squat"]);
    let before = draft.clone();
    assert_eq!(draft.join(id(1)), Err(Unfit::Alone));
    assert_eq!(draft.remove(id(9)), Err(Unfit::NoSuchBlock));
    let mut none = |block: &mut Block| block.sets[0].count = 0;
    let error = draft.change(id(1), &mut none).unwrap_err().to_string();
    assert!(error.contains("must be 1 to 20, not 0"), "{error}");
    let mut empty = |block: &mut Block| block.sets.clear();
    assert!(draft.change(id(1), &mut empty).is_err());
    assert_eq!(draft, before);
}

#[test]
fn every_change_can_be_taken_back_to_the_beginning() {
    let mut draft = draft(&["front-squat", "chin-up"]);
    draft.duplicate(id(1), id(5)).unwrap();
    assert_eq!(order(&draft), [vec![1], vec![5], vec![2]]);
    draft.remove(id(1)).unwrap();
    assert_eq!(draft.undoable(), Some("removing Front squat"));
    draft.undo();
    assert_eq!(order(&draft), [vec![1], vec![5], vec![2]]);
    draft.set_budget(NonZeroU16::new(40));
    draft.set_budget(NonZeroU16::new(40));
    draft.undo();
    assert_eq!(draft.undoable(), Some("doubling Front squat"));
    while draft.undoable().is_some() {
        draft.undo();
    }
    assert_eq!(order(&draft), [[0_u128; 0]; 0]);
    assert!(!draft.is_changed());
}

#[test]
fn a_copy_is_another_sheet_with_blocks_of_its_own() {
    let sheet = draft(&["front-squat", "chin-up"]).sheet().clone();
    let mut next = 500;
    let mut ids = || {
        next += 1;
        Uuid::from_u128(next)
    };
    let copy = Draft::copy(&sheet, SheetId(Uuid::from_u128(200)), &mut ids, when());
    assert_eq!(copy.sheet().name.as_str(), "New sheet, copy");
    assert!(copy.is_changed());
    assert_ne!(copy.sheet().version, sheet.version);
    let shared = |block: &Block| sheet.block(block.id).is_some();
    assert!(!copy.sheet().blocks().any(shared));
    assert_eq!(unroll(copy.sheet()).len(), unroll(&sheet).len());
    let long = Sheet {
        name: Line::new(&"x".repeat(200)).unwrap(),
        ..sheet
    };
    let copy = Draft::copy(&long, long.id, &mut ids, when());
    assert!(copy.sheet().name.as_str().ends_with("x, copy"));
}

/// What stays over a reload, what Kit counts and what an export names: one rule.
#[test]
fn a_draft_is_unkept_while_it_differs_and_could_be_kept() {
    let empty = draft(&[]);
    assert!(!empty.is_unkept());
    let sheet = draft(&["front-squat"]).sheet().clone();
    let mut changed = Draft::of(sheet.clone());
    assert!(!changed.is_unkept(), "only opened");
    changed.set_budget(NonZeroU16::new(45));
    assert!(changed.is_unkept());
    changed.undo();
    assert!(!changed.is_unkept(), "as it was again");
    assert!(Draft::resumed(sheet.clone()).is_unkept());
    // A name, and nothing to do.
    let nothing = Sheet {
        groups: Vec::new(),
        ..sheet
    };
    assert!(!Draft::resumed(nothing).is_unkept());
}

#[test]
fn only_what_is_held_begins_as_a_hold() {
    for (name, holds) in [
        ("plank", true),
        ("side-plank", true),
        ("crunch", false),
        ("sit-up", false),
        ("hanging-knee-raise", false),
        ("band-anti-rotation-press", false),
    ] {
        let draft = draft(&[name]);
        let block = draft.sheet().blocks().next().unwrap();
        let timed = matches!(block.sets[0].target, crate::sheet::Target::Timed(_));
        assert_eq!(timed, holds, "{name}");
        assert_eq!(block.sets[0].reserve.is_empty(), holds, "{name}");
    }
}
