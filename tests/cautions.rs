//! Cautions come with the first set that they are for, and stay where they can be found.

use crate::common;

use common::built::{sets, work};
use common::floor::Floor;
use common::swaps::{kit, line, squat};
use stanchion::session::Board;
use stanchion::sheet::{Equipment, RepTarget, SetKind, Sets, Target};
use stanchion::units::Reps;

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
    assert!(!board(&floor).falls);
    floor.log();
    let first = board(&floor);
    assert!(first.falls, "{:?} {:?}", first.kind, first.load);
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
fn what_cannot_fall_asks_for_no_safety_bars() {
    for equipment in [Equipment::Stack, Equipment::Band, Equipment::Body] {
        let mut block = squat(vec![to_failure(1)]);
        block.exercise.equipment = equipment;
        assert!(
            !board(&Floor::on(common::built::sheet(block))).falls,
            "{equipment:?}"
        );
    }
}
