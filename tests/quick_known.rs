//! Lines that name an exercise of the list: what its load usually means, and what a line says otherwise.

use crate::common;

use common::known::named;
use common::sheets::{basis, sheet};
use proptest::option;
use proptest::prelude::*;
use proptest::sample::select;
use stanchion::exercises::{Catalogue, KnownExercise, Muscles, OwnExercise, all};
use stanchion::kit::{Handle, Kit, KitParts};
use stanchion::quick::{parse_block, print_block};
use stanchion::sheet::{Block, Equipment, ExerciseId, Line, LoadBasis, Named, Pattern, SideMode};
use stanchion::units::Unit;

fn read(line: &str) -> Block {
    let written = parse_block(line, &named).unwrap_or_else(|unread| panic!("{line}\n{unread}"));
    written.look().clone()
}

/// What the load is added to by the line, and the load to start from.
fn loaded(line: &str) -> (LoadBasis, Option<String>) {
    let block = read(line);
    (block.basis, block.start.map(|load| load.plain()))
}

fn share(text: &str) -> LoadBasis {
    LoadBasis::BodyMassShare(text.parse().unwrap())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]

    #[test]
    fn every_block_of_the_list_survives_its_line(
        sheet in sheet(),
        entry in select(all().iter().collect::<Vec<_>>()),
        usual in any::<bool>(),
        other in basis(),
        start in option::of(common::quantities::load()),
    ) {
        let first = sheet.blocks().next().unwrap();
        let basis = if usual { entry.basis() } else { other };
        let block = Block { exercise: entry.exercise(), basis, start, ..first.clone() };
        let line = print_block(&block, &named);
        let again = parse_block(&line, &named).map_err(|unread| TestCaseError::fail(format!("{line}\n{unread}")))?;
        prop_assert_eq!(&again.into_block(block.id), &block, "{}", line);
    }
}

#[test]
fn a_silent_line_takes_what_is_usual_for_its_exercise() {
    for entry in all() {
        let line = format!("{}: 3 × 5", entry.name());
        let usual = KnownExercise::Listed(entry).basis_with(&Kit::starter(Unit::Kg));
        assert_eq!(loaded(&line), (usual, None), "{line}");
        let block = Block {
            exercise: entry.exercise(),
            ..read(&line)
        };
        let printed = format!("{}: 3 × 5", entry.exercise().name);
        assert_eq!(print_block(&block, &named), printed);
    }
}

#[test]
fn a_load_alone_is_of_the_usual_kind() {
    let load = |text: &str| Some(text.to_owned());
    for (line, basis, start) in [
        (
            "Assisted pull-up: 2 × 6; 20 kg",
            LoadBasis::BodyMassMinus,
            "20 kg",
        ),
        (
            "Assisted pull-up: 2 × 6; start 20 kg",
            LoadBasis::BodyMassMinus,
            "20 kg",
        ),
        ("Push-up: 3 × 12; 10 kg", share("64 %"), "10 kg"),
        ("Push-up: 3 × 12; +10 kg", share("64 %"), "10 kg"),
        ("Chin-up: 3 × 5; 10 kg", LoadBasis::BodyMassPlus, "10 kg"),
        ("Front squat: 3 × 5; 60 kg", LoadBasis::External, "60 kg"),
        // No load is usual; that one is given says otherwise.
        ("Plank: 3 × 30 s; 10 kg", LoadBasis::External, "10 kg"),
    ] {
        assert_eq!(loaded(line), (basis, load(start)), "{line}");
    }
}

#[test]
fn what_a_line_says_stays_as_said() {
    for (line, basis) in [
        ("Assisted pull-up: 2 × 6; external", LoadBasis::External),
        (
            "Assisted pull-up: 2 × 6; external; start 20 kg",
            LoadBasis::External,
        ),
        ("Push-up: 3 × 12; body mass", LoadBasis::BodyMassPlus),
        (
            "Push-up: 3 × 12; body mass; start 10 kg",
            LoadBasis::BodyMassPlus,
        ),
        ("Push-up: 3 × 12; 70 % body", share("70 %")),
        ("Push-up: 3 × 12; no load", LoadBasis::Unloaded),
        ("Assisted pull-up: 2 × 6; +5 kg", LoadBasis::BodyMassPlus),
    ] {
        assert_eq!(read(line).basis, basis, "{line}");
        assert_eq!(print_block(&read(line), &named), line);
    }
}

#[test]
fn another_exercise_of_that_name_takes_nothing_from_it() {
    for (line, basis) in [
        (
            "Assisted pull-up (id my-own): 2 × 6; 20 kg",
            LoadBasis::External,
        ),
        ("Assisted pull-up (body): 2 × 6", LoadBasis::BodyMassPlus),
        ("Push-up (band): 3 × 12; 10 kg", LoadBasis::External),
    ] {
        assert_eq!(read(line).basis, basis, "{line}");
        assert_eq!(read(&print_block(&read(line), &named)), read(line));
    }
}

/// A link is read as if no exercise were known: its lines mean what they always did.
#[test]
fn a_line_that_is_read_without_the_list_means_what_it_says_alone() {
    let nobody = |_: &str| None::<Named>;
    for (line, basis) in [
        ("Assisted pull-up: 2 × 6; 20 kg", LoadBasis::External),
        ("Assisted pull-up (body): 2 × 6; 20 kg", LoadBasis::External),
        ("Push-up (body): 3 × 12", LoadBasis::BodyMassPlus),
        ("Push-up (body): 3 × 12; +10 kg", LoadBasis::BodyMassPlus),
    ] {
        let block = parse_block(line, &nobody).unwrap();
        assert_eq!(block.look().basis, basis, "{line}");
    }
}

#[test]
fn ones_own_exercise_brings_its_basis() {
    let own = OwnExercise {
        id: ExerciseId::of_name("Ring row"),
        version: common::id(1, 1),
        written: common::time(0),
        name: Line::new("Ring row").unwrap(),
        pattern: Pattern::PullAcross,
        equipment: Equipment::Body,
        main: Muscles::default(),
        also: Muscles::default(),
        basis: share("50 %"),
        sides: SideMode::Both,
        cautions: Vec::new(),
    };
    let exercises = Catalogue::new([own]);
    let kit = Kit::starter(Unit::Kg);
    let known = |name: &str| exercises.named(name, &kit);
    let block = parse_block("ring row: 3 × 8", &known).unwrap();
    assert_eq!(block.look().basis, share("50 %"));
    assert_eq!(print_block(block.look(), &known), "Ring row: 3 × 8");
}

/// As the editor by taps has it.
#[test]
fn a_line_takes_the_lightest_band_of_the_kit() {
    let kit = |bands: &[&str]| {
        Kit::new(KitParts {
            bands: bands
                .iter()
                .map(|label| Line::new(label).unwrap())
                .collect(),
            ..Kit::starter(Unit::Kg).parts().clone()
        })
        .unwrap()
    };
    let basis = |bands: &[&str]| {
        let (exercises, kit) = (Catalogue::default(), kit(bands));
        let known = |name: &str| exercises.named(name, &kit);
        let block = parse_block("Band pull-apart: 2 × 15", &known).unwrap();
        assert_eq!(print_block(block.look(), &known), "Band pull-apart: 2 × 15");
        block.look().basis.clone()
    };
    let band = |label| LoadBasis::Band(Line::new(label).unwrap());
    assert_eq!(basis(&["green"]), band("green"));
    assert_eq!(basis(&["green", "red"]), band("green"));
    assert_eq!(basis(&[]), band("band"));
}

/// A line resolves its equipment as a tap does, and what it says itself counts before that.
#[test]
fn without_dumbbells_a_line_takes_the_handles_that_will_do() {
    let with = |handles: u8| {
        let mut parts = Kit::starter(Unit::Kg).parts().clone();
        parts.dumbbells.clear();
        let mass = "2.3 kg".parse().unwrap();
        parts.handles = Some(Handle {
            mass,
            count: handles,
        });
        Kit::new(parts).unwrap()
    };
    let on = |kit: &Kit, line: &str| {
        let known = |name: &str| Catalogue::default().named(name, kit);
        let block = parse_block(line, &known).unwrap().look().clone();
        let printed = print_block(&block, &known);
        let again = parse_block(&printed, &known).unwrap().look().clone();
        assert_eq!(again, block, "{printed}");
        block.exercise.equipment
    };
    let (one, two) = (with(1), with(2));
    assert_eq!(on(&one, "Goblet squat: 3 × 10"), Equipment::Handle);
    assert_eq!(
        on(&one, "Dumbbell bench press: 3 × 10"),
        Equipment::Dumbbell
    );
    assert_eq!(on(&two, "Dumbbell bench press: 3 × 10"), Equipment::Handle);
    assert_eq!(on(&two, "Kettlebell swing: 3 × 10"), Equipment::Dumbbell);
    // What Kit says of a block that asks for dumbbells helps.
    let written = on(&one, "Goblet squat (dumbbell): 3 × 10");
    assert_eq!(written, Equipment::Dumbbell);
    assert!(one.lacks(written).unwrap().contains("(handle)"));
    let helped = on(&one, "Goblet squat (handle): 3 × 10");
    assert_eq!((helped, one.lacks(helped)), (Equipment::Handle, None));
    let kit = Kit::starter(Unit::Kg);
    assert_eq!(on(&kit, "Goblet squat: 3 × 10"), Equipment::Dumbbell);
}
