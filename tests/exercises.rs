//! The list of exercises against the demo, against the ids it has ever had, and against what a kit can do.

use crate::common::known::named;
use stanchion::exercises::{Catalogue, alike, all, entry, find, of_pattern, order_check};
use stanchion::kit::{Handle, Kit, KitParts, Stack};
use stanchion::quick::{parse_sheet, revise_sheet};
use stanchion::sheet::{Equipment, Line, Pattern};
use stanchion::store::demo;
use stanchion::strength::{Above, above};
use stanchion::units::{Load, Unit};
use uuid::Uuid;

/// Ids that history may go by. Add new ones at the end; take none away.
const IDS: &str = include_str!("golden/exercise_ids.txt");

/// Equipment whose loads a kit lists.
const LOADED: [Equipment; 4] = [
    Equipment::Barbell,
    Equipment::Dumbbell,
    Equipment::Handle,
    Equipment::Stack,
];

fn load(text: &str) -> Load {
    Load::parse_in(text, Unit::Kg).unwrap()
}

/// A kit with the parts whose bit is set: bar, dumbbells, one handle, a second handle, stack, band.
fn kit(bits: u8) -> Kit {
    let has = |bit: u8| bits & (1 << bit) != 0;
    let starter = Kit::starter(Unit::Kg).parts().clone();
    let stack = Stack {
        name: Line::new("stack").unwrap(),
        first: load("5"),
        step: load("5"),
        last: load("50"),
        add_ons: Vec::new(),
    };
    let parts = KitParts {
        bars: if has(0) { starter.bars } else { Vec::new() },
        dumbbells: if has(1) {
            starter.dumbbells
        } else {
            Vec::new()
        },
        handles: has(2).then(|| Handle {
            mass: load("2"),
            count: if has(3) { 2 } else { 1 },
        }),
        stacks: if has(4) { vec![stack] } else { Vec::new() },
        bands: if has(5) { starter.bands } else { Vec::new() },
        ..starter
    };
    Kit::new(parts).unwrap()
}

fn names_alike(id: &str, kit: &Kit) -> Vec<&'static str> {
    alike(id, kit).iter().map(|entry| entry.name()).collect()
}

#[test]
fn ids_are_for_ever() {
    let mut known: Vec<&str> = IDS.lines().collect();
    let mut listed: Vec<String> = all().iter().map(|e| e.id().to_string()).collect();
    known.sort_unstable();
    listed.sort_unstable();
    assert_eq!(listed, known);
}

#[test]
fn the_exercises_of_the_demo_are_in_the_list() {
    let sheets = demo().sheets;
    let mut blocks = 0;
    let written = sheets.iter().filter_map(|record| record.sheet());
    for block in written.flat_map(|sheet| sheet.blocks()) {
        let wanted = &block.exercise;
        assert_eq!(&find(wanted.name.as_str()).unwrap(), wanted);
        let listed = entry(wanted.id.as_str()).unwrap();
        assert_eq!(listed.pattern(), wanted.pattern);
        assert_eq!(listed.equipment(), wanted.equipment);
        assert_eq!(listed.basis(), block.basis, "{}", wanted.id);
        blocks += 1;
    }
    assert_eq!(blocks, 12);
}

#[test]
fn what_is_alike_can_be_done_with_the_kit() {
    for bits in 0..64 {
        let kit = kit(bits);
        let mut can = vec![Equipment::Body, Equipment::Other];
        can.extend((!kit.parts().bands.is_empty()).then_some(Equipment::Band));
        can.extend(LOADED.into_iter().filter(|&it| !kit.loads(it).is_empty()));
        for from in all() {
            for other in alike(from.id().as_str(), &kit) {
                assert_eq!(other.pattern(), from.pattern());
                assert_ne!(other.id(), from.id());
                let exercise = other.exercise_with(&kit).unwrap();
                let can = can.contains(&exercise.equipment);
                assert!(can, "{} with kit {bits:06b}", other.name());
            }
        }
    }
}

#[test]
fn a_bare_garage_leaves_the_body_and_what_no_kit_lists() {
    let bare = kit(0);
    assert!(names_alike("bench-press", &bare).contains(&"Push-up"));
    for from in all() {
        let bodily = |e: Equipment| matches!(e, Equipment::Body | Equipment::Other);
        assert!(
            alike(from.id().as_str(), &bare)
                .iter()
                .all(|other| bodily(other.equipment()))
        );
    }
}

#[test]
fn handles_stand_in_for_dumbbells_but_not_for_kettlebells() {
    let one = kit(0b00_0100);
    let two = kit(0b00_1100);
    let with = |id: &str, kit: &Kit| {
        let exercise = entry(id).unwrap().exercise_with(kit);
        exercise.map(|exercise| exercise.equipment)
    };
    assert_eq!(with("goblet-squat", &one), Some(Equipment::Handle));
    assert_eq!(with("split-squat", &one), None);
    assert_eq!(with("split-squat", &two), Some(Equipment::Handle));
    assert_eq!(with("kettlebell-swing", &two), None);
    assert_eq!(
        with("split-squat", &kit(0b00_1110)),
        Some(Equipment::Dumbbell)
    );
}

#[test]
fn the_nearest_comes_first_and_unlisted_things_last() {
    let full = kit(0b11_1111);
    assert_eq!(names_alike("back-squat", &full)[0], "Front squat");
    assert_eq!(
        names_alike("romanian-deadlift", &full)[0],
        "Dumbbell Romanian deadlift"
    );
    assert_eq!(names_alike("barbell-curl", &full)[0], "Dumbbell curl");
    assert_eq!(names_alike("farmers-carry", &full)[0], "Suitcase carry");
    for from in all() {
        let found = alike(from.id().as_str(), &full);
        let unlisted = |at: usize| found[at].equipment() == Equipment::Other;
        let first = (0..found.len()).find(|&at| unlisted(at));
        assert!((first.unwrap_or(found.len())..found.len()).all(unlisted));
    }
}

#[test]
fn an_exercise_that_is_not_in_the_list_can_go_by_its_pattern() {
    let full = kit(0b11_1111);
    assert!(alike("my-own-lift", &full).is_empty());
    assert!(of_pattern(Pattern::Hinge, &full).any(|entry| entry.name() == "Deadlift"));
    let hinges = of_pattern(Pattern::Hinge, &full).count();
    assert_eq!(alike("deadlift", &full).len() + 1, hinges);
}

#[test]
fn the_demo_sheets_are_in_order() {
    for sheet in demo().current_sheets() {
        let warnings = order_check(sheet, &Catalogue::default());
        let said: Vec<String> = warnings
            .iter()
            .map(|it| it.said(sheet, &Catalogue::default()))
            .collect();
        assert!(said.is_empty(), "{}: {said:?}", sheet.name.as_str());
    }
}

#[test]
fn a_changed_sheet_keeps_the_settled_warnings_of_blocks_that_stay() {
    let mut n = 0;
    let mut ids = || {
        n += 1;
        Uuid::from_u128(n)
    };
    let at = "2026-01-05T18:00:00+01:00".parse().unwrap();
    let text = "# Lower A\nBent-over row: 3 × 5\nDeadlift: 3 × 5\nBack squat: 3 × 5";
    let mut old = parse_sheet(text, &named, &mut ids, at).unwrap();
    let warnings = order_check(&old, &Catalogue::default());
    assert_eq!(warnings.len(), 2, "{warnings:?}");
    for warning in &warnings {
        old.settle(*warning, true);
    }
    let text = "# Lower A\nBent-over row: 3 × 5\nDeadlift: 5 × 3";
    let new = revise_sheet(text, &old, &named, &mut ids, at).unwrap();
    assert_eq!(new.settled, warnings[..1]);
    assert_eq!(order_check(&new, &Catalogue::default()), new.settled);
    old.settle(warnings[0], false);
    assert_eq!(old.settled, warnings[1..]);
}

/// What the list cautions of a bar or weights above goes with what a set to failure asks for.
#[test]
fn what_the_list_says_is_above_is_above() {
    let kit = Kit::starter(Unit::Kg);
    let usual = |name: &str| {
        let mut ids = || Uuid::from_u128(1);
        let written = "2026-03-01T08:00:00+01:00".parse().unwrap();
        let text = format!("# A\n{name}: 3 × 8");
        let named = |name: &str| Catalogue::default().named(name, &kit);
        let sheet = parse_sheet(&text, &named, &mut ids, written).unwrap();
        sheet.blocks().next().unwrap().clone()
    };
    for entry in all() {
        let lines = entry.cautions();
        let says = |words: &str| lines.iter().any(|line| line.as_str().contains(words));
        let is = above(&usual(entry.name()));
        let name = entry.name();
        if says("safety bars") {
            assert_eq!(is, Some(Above::Bar), "{name}");
        } else if says("above the chest") {
            assert_eq!(is, Some(Above::Weights), "{name}");
        } else if says("above the face") {
            assert!(is.is_some(), "{name}");
        }
        if matches!(entry.pattern(), Pattern::PullAcross | Pattern::Carry) {
            assert_eq!(is, None, "{name}");
        }
    }
}
