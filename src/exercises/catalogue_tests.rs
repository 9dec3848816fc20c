//! The lifter's own exercises beside the list, and over it.

use super::*;
use crate::kit::{Kit, KitParts};
use crate::sheet::{Equipment, ExerciseId, Line, LoadBasis, Pattern, SideMode};
use crate::units::Unit;
use chrono::DateTime;
use uuid::Uuid;

fn own(id: &str, version: u128, name: &str) -> OwnExercise {
    OwnExercise {
        id: ExerciseId::new(id).unwrap(),
        version: Uuid::from_u128(version),
        written: DateTime::parse_from_rfc3339("2026-01-05T09:00:00+01:00").unwrap(),
        name: Line::new(name).unwrap(),
        pattern: Pattern::PullAcross,
        equipment: Equipment::Dumbbell,
        main: Muscles::default().with(Muscle::Lats),
        also: Muscles::default().with(Muscle::Biceps),
        basis: LoadBasis::External,
        sides: SideMode::EachInTurn,
        cautions: Vec::new(),
    }
}

fn names(found: &[KnownExercise]) -> Vec<String> {
    found
        .iter()
        .map(|exercise| exercise.name().to_owned())
        .collect()
}

#[test]
fn one_of_ones_own_is_found_by_name_muscle_and_equipment() {
    let known = Catalogue::new([own("boat-pull", 1, "Boat pull")]);
    assert_eq!(known.find(" boat PULL ").unwrap().id.as_str(), "boat-pull");
    assert_eq!(known.find("boat-pull").unwrap().name.as_str(), "Boat pull");
    for text in ["boat", "pull lats dumbbell", "biceps horizontal boat"] {
        assert_eq!(names(&known.search(text, 3))[0], "Boat pull", "{text}");
    }
    assert_eq!(known.all().count(), all().len() + 1);
    assert!(known.of("boat-pull").unwrap().is_own());
    assert!(known.of("no-such").is_none());
}

#[test]
fn a_listed_exercise_that_was_renamed_comes_under_its_new_name_by_any_of_its_names() {
    let known = Catalogue::new([own("back-squat", 1, "Deep squat")]);
    for name in ["Deep squat", "back squat", "barbell squat", "back-squat"] {
        let found = known.find(name).unwrap();
        assert_eq!(found.id.as_str(), "back-squat", "{name}");
        assert_eq!(found.name.as_str(), "Deep squat", "{name}");
    }
    assert_eq!(known.all().count(), all().len());
    assert_eq!(names(&known.search("back squat", 1)), ["Deep squat"]);
    let again = known.without(&ExerciseId::new("back-squat").unwrap());
    assert_eq!(
        again.find("back squat").unwrap().name.as_str(),
        "Back squat"
    );
    assert!(again.find("Deep squat").is_none());
}

#[test]
fn an_exercise_is_called_as_one_called_it_then_as_it_was_done_then_as_the_list_has_it() {
    let listed = Catalogue::default();
    let id = listed.find("Farmer's carry").unwrap().id;
    let walk = Line::new("Farmer's walk").unwrap();
    assert_eq!(listed.called(&id, None), "Farmer's carry");
    assert_eq!(listed.called(&id, Some(&walk)), "Farmer's walk");
    let renamed = Catalogue::new([own(id.as_str(), 1, "Boat carry")]);
    assert_eq!(renamed.called(&id, Some(&walk)), "Boat carry");
    let unknown = ExerciseId::new("no-such").unwrap();
    assert_eq!(listed.called(&unknown, Some(&walk)), "Farmer's walk");
}

#[test]
fn the_newest_version_of_an_id_counts_whatever_the_order() {
    let (old, new) = (own("x", 1, "Old"), own("x", 2, "New"));
    for both in [[old.clone(), new.clone()], [new, old]] {
        let known = Catalogue::new(both);
        assert_eq!(known.own().len(), 1);
        assert_eq!(known.own()[0].name.as_str(), "New");
    }
}

#[test]
fn without_anything_of_ones_own_it_is_the_list() {
    let known = Catalogue::default();
    for entry in all() {
        assert_eq!(
            known.of(entry.id().as_str()).unwrap().exercise(),
            entry.exercise()
        );
    }
    for text in ["squat", "lats", "kettlebell", "", "unilateral row"] {
        let of_list: Vec<_> = search(text, 200).iter().map(|e| e.name()).collect();
        assert_eq!(names(&known.search(text, 200)), of_list, "{text}");
    }
}

#[test]
fn what_can_be_done_instead_is_that_of_the_list_and_ones_own() {
    let kit = Kit::starter(Unit::Kg);
    let plain = Catalogue::default();
    for entry in all() {
        let of_list: Vec<_> = alike(entry.id().as_str(), &kit)
            .iter()
            .map(|e| e.name())
            .collect();
        assert_eq!(names(&plain.alike(&entry.exercise(), &kit)), of_list);
    }
    let mut boat = own("boat-pull", 1, "Boat pull");
    boat.equipment = Equipment::Body;
    let row = plain.find("Bent-over row").unwrap();
    let known = plain.with(boat.clone());
    let instead = names(&known.alike(&row, &kit));
    assert!(instead.contains(&"Boat pull".to_owned()));
    assert!(!instead.contains(&"Bent-over row".to_owned()));
    // Of an exercise that nobody knows by its pattern alone.
    let nobody = crate::sheet::Exercise {
        id: ExerciseId::new("nobody-knows").unwrap(),
        ..boat.exercise()
    };
    assert_eq!(
        known.alike(&nobody, &kit).len(),
        of_pattern(Pattern::PullAcross, &kit).count() + 1
    );
}

#[test]
fn a_dumbbell_of_ones_own_is_done_with_a_handle_where_there_is_none() {
    let mut parts = Kit::starter(Unit::Kg).parts().clone();
    let known = Catalogue::new([own("boat-pull", 1, "Boat pull")]);
    let with = |parts| {
        let kit = Kit::new(parts).unwrap();
        known.of("boat-pull").unwrap().exercise_with(&kit)
    };
    parts.dumbbells = vec!["10 kg".parse().unwrap()];
    assert_eq!(with(parts.clone()).unwrap().equipment, Equipment::Dumbbell);
    parts.dumbbells.clear();
    parts.handles = Some(crate::kit::Handle {
        mass: "2 kg".parse().unwrap(),
        count: 1,
    });
    assert_eq!(with(parts.clone()).unwrap().equipment, Equipment::Handle);
    parts.handles = None;
    assert_eq!(with(parts), None);
}

#[test]
fn what_does_not_hold_together_is_told() {
    let mut both = own("x", 1, "X");
    both.also = both.also.with(Muscle::Lats);
    let said = both.check().unwrap_err().to_string();
    assert!(said.starts_with("lats cannot be both"), "{said}");
    let mut many = own("x", 1, "X");
    many.cautions = vec![Line::new("mind it").unwrap(); 21];
    assert_eq!(many.check(), Err(UnfitExercise::Cautions(21)));
}

#[test]
fn a_band_is_one_of_the_kit_the_strongest_where_it_helps_and_else_the_lightest() {
    let catalogue = Catalogue::default();
    let with = |id: &str, bands: &[&str]| {
        let bands = bands.iter().map(|band| Line::new(band).unwrap()).collect();
        let parts = KitParts {
            bands,
            ..Kit::starter(Unit::Kg).parts().clone()
        };
        let kit = Kit::new(parts).unwrap();
        catalogue.of(id).unwrap().basis_with(&kit).band().unwrap()
    };
    for id in ["band-assisted-pull-up", "band-row"] {
        assert_eq!(with(id, &[]), "a band", "{id}");
        assert_eq!(with(id, &["green"]), "band: green", "{id}");
    }
    let both = ["green", "red"];
    assert_eq!(with("band-assisted-pull-up", &both), "band: red");
    assert_eq!(with("band-row", &both), "band: green");
}

/// Dumbbells, bands, and no bar, stack or handle.
fn without_a_bar() -> Kit {
    let parts = KitParts {
        bars: Vec::new(),
        handles: None,
        dumbbells: vec!["10 kg".parse().unwrap()],
        ..Kit::starter(Unit::Kg).parts().clone()
    };
    Kit::new(parts).unwrap()
}

#[test]
fn what_the_kit_can_do_is_found_first_and_nothing_is_left_out() {
    let (known, kit) = (Catalogue::default(), without_a_bar());
    let found = known.search_with("biceps", &kit);
    let fits: Vec<bool> = found
        .iter()
        .map(|known| known.exercise_with(&kit).is_some())
        .collect();
    assert!(fits.is_sorted_by(|a, b| a >= b), "{fits:?}");
    assert_eq!(found.len(), known.search("biceps", usize::MAX).len());
    let names = names(&found);
    let place = |name: &str| names.iter().position(|found| found == name);
    assert!(place("Dumbbell curl").unwrap() < place("Barbell curl").unwrap());
    let hinges = known.of_pattern_with(Pattern::Hinge, &kit);
    assert_eq!(hinges[0].name(), "Dumbbell Romanian deadlift");
    assert!(hinges.iter().any(|known| known.name() == "Deadlift"));
    // What is one's own is known well, whatever the kit has.
    let mine = own("boat-pull", 1, "Boat curl");
    let mine = OwnExercise {
        equipment: Equipment::Stack,
        ..mine
    };
    let known = Catalogue::new([mine]);
    assert_eq!(known.search_with("curl", &kit)[0].name(), "Boat curl");
}

#[test]
fn words_of_whatever_it_can_be_done_with_find_an_exercise() {
    let known = Catalogue::default();
    let found = |text: &str| names(&known.search(text, usize::MAX));
    for (text, all) in [
        (
            "kettlebell",
            ["Goblet squat", "Farmer's carry", "Suitcase carry"],
        ),
        (
            "dumbbell",
            ["One-arm dumbbell row", "Lateral raise", "Kettlebell swing"],
        ),
        ("handle", ["Goblet squat", "Dumbbell curl", "Lateral raise"]),
        ("own body", ["Push-up", "Plank", "Pull-up"]),
        ("weight stack", ["Lat pulldown", "Leg curl", "Face pull"]),
    ] {
        let found = found(text);
        for name in all {
            assert!(found.contains(&name.to_owned()), "{text}: {name}");
        }
    }
    assert!(!found("own body").contains(&"Back squat".to_owned()));
    assert!(!found("handle").contains(&"Kettlebell swing".to_owned()));
}
