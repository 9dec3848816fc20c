//! The editor's draft under random sheets and random taps: nothing is lost, nothing unsound comes about, all can be
//! taken back; and a sheet unrolled has just the sets that are planned.

use crate::common;

use common::sheets::sheet;
use common::{id, time};
use proptest::prelude::*;
use stanchion::draft::{Draft, new_block};
use stanchion::sheet::{
    Block, BlockId, Group, Line, LoadBasis, SetKind, Sheet, SheetVersion, SideMode, unroll,
};
use stanchion::units::Seconds;

/// A block that shares nothing with `block` but its id and exercise.
fn blank(block: &Block) -> Block {
    new_block(
        block.id,
        block.exercise.clone(),
        LoadBasis::External,
        SideMode::Both,
        Vec::new(),
    )
}

/// Builds `sheet` from an empty draft: block by block, each filled in by changes, then done together.
fn built(sheet: &Sheet) -> Draft {
    let mut draft = Draft::new(sheet.id, sheet.version, sheet.written);
    draft.set_name(sheet.name.clone());
    draft.set_warm_up(sheet.warm_up.clone()).unwrap();
    draft.set_notes(sheet.notes.clone());
    draft.set_budget(sheet.budget_minutes);
    for group in &sheet.groups {
        for (place, block) in group.blocks().iter().enumerate() {
            draft.add(blank(block)).unwrap();
            draft
                .change(block.id, &mut |to| *to = block.clone())
                .unwrap();
            if place > 0 {
                draft.join(group.blocks()[0].id).unwrap();
            }
        }
        let first = group.blocks()[0].id;
        if let Some(between) = group.between() {
            draft.set_between(first, between).unwrap();
        }
        if matches!(group, Group::Circuit { blocks, .. } if blocks.len() == 2) {
            draft.turn_pair(first).unwrap();
        }
    }
    // Warnings are settled last: a change forgets those of blocks that are not there.
    let settled = Sheet {
        settled: sheet.settled.clone(),
        written_for: sheet.written_for.clone(),
        ..draft.sheet().clone()
    };
    draft.replace("the warnings", settled);
    draft
}

/// A tap of the editor: what is done, with which block, and with which other.
fn tap(draft: &mut Draft, (what, one, other): (u8, usize, usize), fresh: u64) {
    let ids: Vec<BlockId> = draft.sheet().blocks().map(|block| block.id).collect();
    let (Some(&one), Some(&other)) = (
        ids.get(one % ids.len().max(1)),
        ids.get(other % ids.len().max(1)),
    ) else {
        return;
    };
    // Refusals are fine: what they leave behind is looked at by the caller.
    let _ = match what {
        0 => draft.shift(one, true),
        1 => draft.shift(one, false),
        2 => draft.drag(one, other),
        3 => draft.join(one),
        4 => draft.part(one),
        5 => draft.turn_pair(one),
        6 => draft.duplicate(one, BlockId(id(9000 + fresh, fresh))),
        7 => draft.remove(one),
        8 => draft.set_between(one, Seconds::saturating(20)),
        9 => draft.change(one, &mut |block| block.sets.clear()),
        10 => draft.change(one, &mut |block| block.sets[0].count = 99),
        11 => {
            draft.undo();
            Ok(())
        }
        _ => {
            draft.set_name(Line::new("Other").unwrap());
            Ok(())
        }
    };
}

/// How many sets are planned, counted without unrolling anything.
fn planned(sheet: &Sheet) -> usize {
    let of_line = |sets: &stanchion::sheet::Sets| {
        let drops = match sets.kind {
            SetKind::Drop { drops, .. } => usize::from(drops),
            _ => 0,
        };
        usize::from(sets.count) * (1 + drops)
    };
    let blocks = sheet.groups.iter().flat_map(Group::blocks);
    blocks.flat_map(|block| &block.sets).map(of_line).sum()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    #[test]
    fn every_sheet_can_be_built_by_changes(sheet in sheet()) {
        let draft = built(&sheet);
        prop_assert_eq!(draft.sheet(), &sheet);
        let kept = draft.kept(SheetVersion(id(1, 1)), time(5)).unwrap();
        let same = Sheet { version: sheet.version, written: sheet.written, ..kept };
        prop_assert_eq!(same, sheet);
    }

    #[test]
    fn no_tap_makes_a_sheet_unsound_and_every_tap_can_be_taken_back(
        sheet in sheet(),
        taps in proptest::collection::vec((0..13_u8, 0..12_usize, 0..12_usize), 0..40),
    ) {
        let mut draft = Draft::of(sheet.clone());
        for (fresh, one) in (0_u64..).zip(taps) {
            let before = draft.sheet().clone();
            let steps = draft.undoable().is_some();
            tap(&mut draft, one, fresh);
            let now = draft.sheet();
            prop_assert!(now.groups.is_empty() || now.check().is_ok());
            prop_assert!(now.blocks().all(|block| block.sets.iter().all(|sets| sets.check().is_ok())));
            if *now != before && one.0 != 11 {
                let mut back = draft.clone();
                back.undo();
                prop_assert_eq!(back.sheet(), &before);
            }
            prop_assert!(steps || one.0 == 11 || *draft.sheet() == before || draft.is_changed());
        }
        while draft.undoable().is_some() {
            draft.undo();
        }
        prop_assert_eq!(draft.sheet(), &sheet);
    }

    #[test]
    fn a_sheet_unrolled_has_just_the_planned_sets(sheet in sheet()) {
        let sets = unroll(&sheet);
        prop_assert_eq!(sets.len(), planned(&sheet));
        let mut keys: Vec<_> = sets.iter().map(|set| set.key).collect();
        keys.sort();
        keys.dedup();
        prop_assert_eq!(keys.len(), sets.len());
    }
}
