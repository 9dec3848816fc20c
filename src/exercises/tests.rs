//! What holds for the whole list, and what its search finds.

use super::caution::Caution;
use super::means::Means;
use super::*;
use crate::sheet::{LoadBasis, Pattern, SideMode};
use crate::units::Share;
use std::collections::HashSet;

const PATTERNS: [Pattern; 10] = [
    Pattern::Squat,
    Pattern::Hinge,
    Pattern::PushAcross,
    Pattern::PushUpward,
    Pattern::PullAcross,
    Pattern::PullDownward,
    Pattern::Carry,
    Pattern::Explosive,
    Pattern::Trunk,
    Pattern::SingleJoint,
];

fn names(found: &[&Entry]) -> Vec<&'static str> {
    found.iter().map(|entry| entry.name()).collect()
}

fn cautions(id: &str) -> String {
    let lines = entry(id).unwrap().cautions();
    let texts: Vec<&str> = lines.iter().map(|line| line.as_str()).collect();
    texts.join(" ")
}

#[test]
fn every_id_and_every_name_is_there_once() {
    let ids: HashSet<_> = all().iter().map(Entry::id).collect();
    assert_eq!(ids.len(), all().len());
    let mut known = HashSet::new();
    for name in all().iter().flat_map(Entry::names) {
        assert!(known.insert(name.to_ascii_lowercase()), "{name} twice");
    }
}

#[test]
fn an_other_name_is_not_the_id_of_another_entry() {
    for one in all() {
        for name in one.names() {
            assert_eq!(find(name).unwrap().id, one.id(), "{name}");
        }
        assert_eq!(find(one.id().as_str()).unwrap(), one.exercise());
    }
}

#[test]
fn every_pattern_and_every_muscle_has_entries() {
    for pattern in PATTERNS {
        assert!(all().iter().any(|e| e.pattern() == pattern), "{pattern:?}");
    }
    for muscle in Muscle::ALL {
        let mut mains = all().iter().flat_map(Entry::main);
        assert!(mains.any(|main| main == muscle), "{muscle:?}");
    }
}

#[test]
fn no_muscle_is_main_and_also_at_once() {
    for entry in all() {
        assert!(entry.main & entry.also == 0, "{}", entry.name());
        assert!(entry.main().next().is_some(), "{}", entry.name());
    }
}

#[test]
fn lists_of_muscles_and_cautions_are_in_step_with_their_bits() {
    for (at, muscle) in Muscle::ALL.into_iter().enumerate() {
        assert_eq!(muscle.bit(), 1 << at);
        assert!(!muscle.name().is_empty());
    }
    for (at, caution) in Caution::ALL.into_iter().enumerate() {
        assert_eq!(caution.bit(), 1 << at);
        let used = all()
            .iter()
            .any(|entry| entry.cautions & caution.bit() != 0);
        assert!(used, "{caution:?}");
    }
}

#[test]
fn hinges_bent_rows_and_what_is_lifted_overhead_carry_their_caution() {
    for held in ["deadlift", "romanian-deadlift", "kettlebell-swing"] {
        assert!(cautions(held).contains("keep the trunk angle"), "{held}");
    }
    for held in ["bent-over-row", "bent-over-row-one-holds", "t-bar-row"] {
        assert!(cautions(held).contains("when it drifts, take load off"));
    }
    for held in ["overhead-press", "push-press", "turkish-get-up"] {
        assert!(cautions(held).contains("Room overhead"), "{held}");
    }
    for entry in all().iter().filter(|e| e.means == Means::Barbell) {
        let said = cautions(entry.id().as_str());
        let name = entry.name();
        match entry.pattern() {
            Pattern::Squat if name != "Overhead squat" => assert!(said.contains("safety bars")),
            Pattern::PushAcross => assert!(said.contains("spotter"), "{name}"),
            _ => {}
        }
    }
}

#[test]
fn bands_go_with_bands_and_a_weight_with_a_load() {
    for entry in all() {
        let is_band = matches!(entry.basis(), LoadBasis::Band(_));
        assert_eq!(is_band, entry.means == Means::Band, "{}", entry.name());
        if !matches!(entry.means, Means::Body | Means::Band) {
            assert!(entry.basis().has_load(), "{}", entry.name());
        }
    }
}

/// Ebben et al. 2011, J Strength Cond Res 25(10):2891–2894: 0.64, on knees 0.49, hands on 61 cm 0.41. Feet on 61 cm,
/// 0.74: from memory.
#[test]
fn a_push_up_moves_its_published_share_of_the_body() {
    for (id, percent) in [
        ("push-up", 64),
        ("push-up-on-knees", 49),
        ("push-up-with-hands-on-a-box", 41),
        ("push-up-with-feet-on-a-box", 74),
    ] {
        let share = LoadBasis::BodyMassShare(Share::percent(percent));
        assert_eq!(entry(id).unwrap().basis(), share, "{id}");
    }
}

/// Johnson et al. 2009, J Strength Cond Res 23(3):1022–1028: the whole body, with what is added or taken off.
#[test]
fn pull_ups_and_dips_move_the_whole_body() {
    for id in ["pull-up", "chin-up", "dip"] {
        assert_eq!(entry(id).unwrap().basis(), LoadBasis::BodyMassPlus);
    }
    let assisted = entry("assisted-pull-up").unwrap();
    assert_eq!(assisted.basis(), LoadBasis::BodyMassMinus);
}

#[test]
fn a_name_is_found_whatever_its_case_and_only_whole() {
    assert_eq!(find(" FRONT squat ").unwrap().id.as_str(), "front-squat");
    assert_eq!(
        find("Front-Squat").unwrap(),
        entry("front-squat").unwrap().exercise()
    );
    let other = find("bulgarian SPLIT squat").unwrap();
    assert_eq!(other.id.as_str(), "rear-foot-elevated-split-squat");
    assert_eq!(other.name.as_str(), "Bulgarian split squat");
    for unknown in ["", "front", "ü", "Front squat 🏋"] {
        assert_eq!(find(unknown), None, "{unknown}");
    }
}

#[test]
fn search_puts_names_that_begin_with_the_text_first() {
    let found = names(&search("dead", 50));
    assert_eq!(found[..2], ["Deadlift", "Dead bug"]);
    assert!(found[2..].contains(&"Romanian deadlift"));
    assert_eq!(
        names(&search("front sq", 2)),
        ["Front squat", "Dumbbell front squat"]
    );
    assert_eq!(names(&search("pushup", 1)), ["Push-up"]);
    assert_eq!(names(&search("Push Up", 1)), ["Push-up"]);
    assert_eq!(names(&search("farmers", 1)), ["Farmer's carry"]);
}

#[test]
fn search_finds_other_names_muscles_equipment_and_patterns() {
    assert_eq!(names(&search("rdl", 1)), ["Romanian deadlift"]);
    for (text, one) in [
        ("biceps band", "Band curl"),
        ("hamstrings cable", "Leg curl"),
        ("vertical pull", "Chin-up"),
        ("unilateral hinge", "Single-leg Romanian deadlift"),
        ("grip carry", "Suitcase carry"),
    ] {
        assert!(names(&search(text, 99)).contains(&one), "{text}: {one}");
    }
    assert!(names(&search("curl, biceps", 99)).contains(&"Barbell curl"));
}

#[test]
fn search_is_bounded_and_never_surprised() {
    assert_eq!(search("", 5).len(), 5);
    assert_eq!(search("", usize::MAX).len(), all().len());
    assert!(search("squat", 0).is_empty());
    for text in ["squat zzz", "موازنة", "ü", "🏋zz", &"a".repeat(100_000)] {
        assert!(search(text, 9).is_empty());
    }
}

#[test]
fn sides_tell_one_side_from_both() {
    assert_eq!(entry("front-squat").unwrap().sides(), SideMode::Both);
    assert_ne!(entry("step-up").unwrap().sides(), SideMode::Both);
    let holds = entry("bent-over-row-one-holds").unwrap();
    assert_eq!(holds.sides(), SideMode::OneHolds);
}

#[test]
fn what_is_held_is_told_from_what_is_repeated() {
    let held: Vec<&str> = all()
        .iter()
        .filter(|entry| is_hold(&entry.exercise()))
        .map(Entry::name)
        .collect();
    assert_eq!(held, ["Plank", "Side plank", "Adductor side plank"]);
    for (name, holds) in [
        ("hollow-hold", true),
        ("dead-hang", true),
        ("wall-sit", true),
        ("sit-up", false),
        ("bent-over-row-one-holds", false),
    ] {
        let mut exercise = entry("crunch").unwrap().exercise();
        exercise.id = crate::sheet::ExerciseId::new(name).unwrap();
        assert_eq!(is_hold(&exercise), holds, "{name}");
    }
}

#[test]
fn what_assists_is_no_load_to_step_down_with() {
    for entry in all().iter().filter(|entry| entry.basis().assists()) {
        let said = cautions(entry.id().as_str());
        assert!(!said.contains("with the load on"), "{}", entry.name());
    }
}
