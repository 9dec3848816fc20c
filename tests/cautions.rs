//! Cautions come with the first set that they are for, and stay where they can be found.

use crate::common;

use common::built::{sets, work};
use common::floor::Floor;
use common::swaps::{kit, line, squat};
use stanchion::session::{Board, What};
use stanchion::sheet::{Equipment, RepTarget, SetKind, Sets, Target};
use stanchion::strength::jump_words;
use stanchion::units::{Load, Reps};

fn board(floor: &Floor) -> Board {
    let state = floor.session.state();
    state.board(state.current().expect("a set is left"), &kit(), &[])
}

fn to_failure(count: u8) -> Sets {
    let reps = Target::Reps(RepTarget::AtLeast(Reps::saturating(8)));
    sets(SetKind::ToFailure, count, reps)
}

const FAILURE: &str = "To technical failure";

#[test]
fn what_a_sheet_cautions_is_due_with_the_first_set_and_known_after_it() {
    let mut block = squat(vec![work(3, 5, 7)]);
    block.cautions = vec![line("Look at the pins.")];
    let mut floor = Floor::on(common::built::sheet(block));
    assert_eq!(board(&floor).cautions, ["Look at the pins."]);
    floor.log();
    assert!(board(&floor).cautions.is_empty());
    assert_eq!(board(&floor).cautions_known, ["Look at the pins."]);
}

#[test]
fn failure_is_cautioned_with_its_first_set_also_behind_others() {
    let block = squat(vec![work(1, 5, 7), to_failure(2)]);
    let mut floor = Floor::on(common::built::sheet(block));
    assert_eq!(board(&floor).falls, None);
    floor.log();
    let first = board(&floor);
    assert!(first.falls.is_some(), "{:?} {:?}", first.kind, first.load);
    assert!(first.cautions.iter().any(|said| said.starts_with(FAILURE)));
    floor.log();
    let second = board(&floor);
    assert!(second.cautions.is_empty());
    assert!(
        second
            .cautions_known
            .iter()
            .any(|said| said.starts_with(FAILURE))
    );
}

#[test]
fn what_a_set_to_failure_asked_for_is_found_at_the_next_exercise() {
    let mut blocks = [squat(vec![to_failure(1)]), squat(vec![work(1, 5, 7)])];
    blocks[1].id = stanchion::sheet::BlockId(common::id(9, 9));
    let mut sheet = common::built::sheet(blocks[0].clone());
    let mut second = common::built::sheet(blocks[1].clone());
    sheet.groups.append(&mut second.groups);
    let mut floor = Floor::on(sheet);
    floor.log();
    let next = board(&floor);
    let fails = |lines: &[String]| lines.iter().any(|said| said.starts_with(FAILURE));
    assert_eq!(next.kind, SetKind::Work.name());
    assert!(!fails(&next.cautions) && fails(&next.cautions_known));
}

#[test]
fn what_cannot_fall_asks_for_no_safety_bars() {
    for equipment in [Equipment::Stack, Equipment::Band, Equipment::Body] {
        let mut block = squat(vec![to_failure(1)]);
        block.exercise.equipment = equipment;
        let floor = Floor::on(common::built::sheet(block));
        assert_eq!(board(&floor).falls, None, "{equipment:?}");
    }
}

fn noted(floor: &mut Floor, temperature: &str) {
    let air = format!(r#"{{"temperature":"{temperature}","humidity":60}}"#);
    let air = serde_json::from_str(&air).expect("air");
    floor.tap(vec![What::AirNoted { air }]);
}

const HEAT: &str = "Heat, extreme danger: stop, and cool down.";
const GRIP: &str = "Hands sweat: chalk or straps; put the load down when the grip goes.";

#[test]
fn the_heat_is_cautioned_with_the_first_set_after_it_was_noted_and_known_after_it() {
    let mut block = squat(vec![work(4, 5, 7)]);
    block.cautions = vec![line("Look at the pins.")];
    let mut floor = Floor::on(common::built::sheet(block));
    floor.log();
    floor.choose(Load::whole_kg(60), None);
    noted(&mut floor, "40 °C");
    assert_eq!(board(&floor).cautions, [HEAT, GRIP]);
    floor.log();
    floor.choose(Load::whole_kg(60), None);
    let after = board(&floor);
    assert!(after.cautions.is_empty(), "{:?}", after.cautions);
    assert_eq!(after.cautions_known, ["Look at the pins.", HEAT, GRIP]);
    // Noted again it is told again, as it is then; where it went nothing of it stays.
    noted(&mut floor, "33 °C");
    let again = board(&floor).cautions;
    assert!(again[0].starts_with("Heat, danger") && again[1] == GRIP);
    assert_eq!(board(&floor).cautions_known.len(), 3);
    noted(&mut floor, "15 °C");
    assert_eq!(board(&floor).cautions_known, ["Look at the pins."]);
}

#[test]
fn grips_slip_with_the_first_set_that_has_a_load() {
    let mut floor = Floor::on(common::built::sheet(squat(vec![work(3, 5, 7)])));
    noted(&mut floor, "40 °C");
    assert!(board(&floor).cautions.contains(&HEAT.to_owned()));
    assert!(board(&floor).load.is_none());
    floor.log();
    floor.choose(Load::whole_kg(60), None);
    assert_eq!(board(&floor).cautions, [GRIP]);
}

#[test]
fn what_was_said_of_a_load_stays_to_be_read() {
    let mut floor = Floor::on(common::built::sheet(squat(vec![work(4, 5, 7)])));
    let known = |floor: &Floor| {
        let known = board(floor).cautions_known;
        known
            .iter()
            .any(|said| said == jump_words(&squat(Vec::new())))
    };
    for (load, jumped, was) in [(60, false, false), (80, true, true), (80, false, true)] {
        floor.choose(Load::whole_kg(load), None);
        assert_eq!(
            (board(&floor).jump.is_some(), known(&floor)),
            (jumped, was),
            "{load}"
        );
        floor.log();
    }
    assert!(board(&floor).jump.is_none() && known(&floor));
}
