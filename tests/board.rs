//! What the board says beside the load: the caution beyond what was done, cue, rest, warm-up, bands.

use crate::common;

use common::built::{block, done, reps, sheet, work};
use common::floor::Floor;
use common::swaps::{kit, line, today};
use common::{id, time};
use stanchion::kit::Kit;
use stanchion::session::{Amount, Board, What};
use stanchion::sheet::{Block, LoadBasis, LoadPolicy, SetKind, SideMode, Step};
use stanchion::strength::{Performance, SetResult, Support};
use stanchion::units::{Load, Rir, Seconds, Unit};

fn squat() -> Block {
    block(vec![work(3, 5, 7)], LoadBasis::External, SideMode::Both)
}

fn board_with(floor: &Floor, history: &[Performance]) -> Board {
    let state = floor.session.state();
    state.board(state.current().expect("a set is left"), &kit(), history)
}

/// Six sessions of five reps to failure with 90 kg, a day apart, the last of them on the morning of the session.
fn fives(block: &Block) -> Vec<Performance> {
    let set = SetResult {
        stretch: None,
        stages: Vec::new(),
        load: Some(Load::whole_kg(90)),
        reps: reps(5),
        low: reps(5),
        top: reps(7),
        reserve: Some(Rir::saturating(0)),
        work: true,
        to_limit: true,
        to_spare: false,
        unfed: None,
    };
    let day = |n: i64| Performance {
        session: id(0, n as u64),
        at: time(0) - chrono::TimeDelta::days(n),
        shape: block.shape(),
        basis: Some(block.basis.clone()),
        body_mass: None,
        left: 0,
        sets: vec![set.clone()],
    };
    (0..6).rev().map(day).collect()
}

fn beyond(said: &str) -> bool {
    said.starts_with("Beyond what your last weeks support")
}

#[test]
fn a_load_beyond_the_last_weeks_is_cautioned_on_the_board() {
    let squat = squat();
    let history = fives(&squat);
    let mut floor = Floor::on(sheet(squat));
    let choose = |floor: &mut Floor, kg| {
        floor.choose(Load::whole_kg(kg), None);
        board_with(floor, &history)
    };
    let usual = choose(&mut floor, 90);
    let told = usual.foretold.expect("the history tells");
    assert_eq!(told.support, Support::Supported);
    assert!(
        !usual.cautions.iter().any(|said| beyond(said)),
        "{:?}",
        usual.cautions
    );
    let heavy = choose(&mut floor, 110);
    assert_eq!(heavy.foretold.unwrap().support, Support::Beyond);
    let first = heavy.cautions.first().expect("a caution");
    assert!(beyond(first), "{first}");
    assert!(board_with(&floor, &[]).foretold.is_none());
}

/// What came today needs no doubt, and what was doubted once is not doubted again; of a harder load it is.
#[test]
fn what_is_beyond_the_last_weeks_is_cautioned_until_it_was_tried() {
    let squat = squat();
    let history = fives(&squat);
    let cautioned = |floor: &Floor| {
        let board = board_with(floor, &history);
        board.cautions.iter().any(|said| beyond(said))
    };
    let choose = |floor: &mut Floor, kg| floor.choose(Load::whole_kg(kg), None);
    for came in [3, 5] {
        let mut floor = Floor::on(sheet(squat.clone()));
        choose(&mut floor, 110);
        assert!(cautioned(&floor));
        floor.tap(vec![What::SetDone {
            set: floor.state().current().unwrap().planned.key,
            done: done(Some("110 kg"), Amount::Reps(reps(came))),
            proposed: None,
        }]);
        choose(&mut floor, 110);
        assert!(!cautioned(&floor), "{came} reps came");
        let known = board_with(&floor, &history).cautions_known;
        assert!(known.iter().any(|said| beyond(said)), "it is to be found");
        choose(&mut floor, 120);
        assert!(cautioned(&floor));
    }
}

/// Fewer reps with a load say nothing of more of them.
#[test]
fn more_reps_than_were_done_with_a_load_are_cautioned_all_the_same() {
    let squat = block(
        vec![work(1, 1, 2), work(1, 5, 7)],
        LoadBasis::External,
        SideMode::Both,
    );
    let mut floor = Floor::on(sheet(squat.clone()));
    floor.tap(vec![What::SetDone {
        set: floor.state().current().unwrap().planned.key,
        done: done(Some("110 kg"), Amount::Reps(reps(1))),
        proposed: None,
    }]);
    floor.choose(Load::whole_kg(110), None);
    let board = board_with(&floor, &fives(&squat));
    let first = board.cautions.first().expect("a caution");
    assert!(beyond(first), "{first}");
}

/// What is likely in a fresh set is not said of one after another.
#[test]
fn reps_are_foretold_until_a_work_set_was_done() {
    let squat = squat();
    let history = fives(&squat);
    let proposal = today(&history, &kit()).propose(&squat);
    let mut floor = Floor::with(sheet(squat), vec![proposal]);
    let fresh = board_with(&floor, &history);
    let because = fresh.because(Unit::Kg);
    assert!(because.ends_with(" reps likely"), "{because}");
    floor.tap(vec![What::SetDone {
        set: fresh.key,
        done: done(Some("90 kg"), Amount::Reps(reps(3))),
        proposed: None,
    }]);
    let second = board_with(&floor, &history);
    assert!(second.foretold.is_some());
    let because = second.because(Unit::Kg);
    assert!(!because.contains("likely"), "{because}");
}

#[test]
fn a_chosen_load_is_told_before_the_reason_of_the_one_that_was_proposed() {
    let mut squat = squat();
    squat.start = Some(Load::whole_kg(60));
    let proposal = today(&[], &kit()).propose(&squat);
    let mut floor = Floor::with(sheet(squat), vec![proposal]);
    let proposed = board_with(&floor, &[]);
    let because = proposed.because(Unit::Kg);
    let choose = |floor: &mut Floor, load| {
        floor.choose(load, proposed.load);
        board_with(floor, &[]).because(Unit::Kg)
    };
    let other = choose(&mut floor, Load::whole_kg(75));
    assert_eq!(other, format!("75 kg chosen ({because})"));
    // The proposed one, chosen by hand, is no other one.
    let same = choose(&mut floor, proposed.load.unwrap());
    assert_eq!(same, because);
}

/// Who passes a set over, or takes it off, meets one step with the next, and not two.
#[test]
fn no_step_leads_over_a_set_that_was_passed_over() {
    let mut squat = block(vec![work(4, 5, 7)], LoadBasis::External, SideMode::Both);
    squat.sets[0].load = LoadPolicy::Rising(Step::By(Load::whole_kg(5)));
    squat.start = Some(Load::whole_kg(60));
    let proposal = today(&[], &kit()).propose(&squat);
    let mut floor = Floor::with(sheet(squat), vec![proposal]);
    let load = |floor: &Floor| board_with(floor, &[]).load.unwrap();
    let key = |floor: &Floor| floor.state().current().unwrap().planned.key;
    let set = key(&floor);
    floor.tap(vec![What::SetSkipped { set }]);
    assert_eq!(load(&floor), Load::whole_kg(60));
    let (set, first) = (key(&floor), done(Some("60 kg"), Amount::Reps(reps(6))));
    floor.tap(vec![What::SetDone {
        set,
        done: first,
        proposed: None,
    }]);
    assert_eq!(load(&floor), Load::whole_kg(65));
    let set = key(&floor);
    floor.tap(vec![What::SetDropped { set }]);
    assert_eq!(load(&floor), Load::whole_kg(65));
    // Taken back, the set is there again.
    floor.undo_tap();
    assert_eq!(key(&floor), set);
    assert_eq!(load(&floor), Load::whole_kg(65));
}

/// A reason never ends at another load than the one that stands beside it.
#[test]
fn a_kit_that_was_changed_since_is_told() {
    let mut squat = squat();
    squat.start = Some(Load::whole_kg(60));
    let proposal = today(&[], &kit()).propose(&squat);
    let floor = Floor::with(sheet(squat), vec![proposal]);
    let mut parts = kit().parts().clone();
    parts.plates.retain(|kind| kind.mass > Load::whole_kg(5));
    let smaller = Kit::new(parts).unwrap();
    let state = floor.state();
    let board = state.board(state.current().unwrap(), &smaller, &[]);
    assert_eq!(board.load, Some(Load::whole_kg(60)));
    assert_eq!(board.because(Unit::Kg), "start of the sheet: 60 kg");
    let mut parts = kit().parts().clone();
    parts.plates.retain(|kind| kind.mass < Load::whole_kg(10));
    let smaller = Kit::new(parts).unwrap();
    let board = state.board(state.current().unwrap(), &smaller, &[]);
    assert_eq!(board.load, Some("47.5 kg".parse().unwrap()));
    assert_eq!(
        board.because(Unit::Kg),
        "start of the sheet: 60 kg; the kit as it is now makes 47.5 kg of it"
    );
}

#[test]
fn each_set_has_the_next_of_the_cues_and_after_the_last_the_first_again() {
    let mut squat = block(vec![work(4, 5, 7)], LoadBasis::External, SideMode::Both);
    squat.cues = vec![line("Elbows high"), line("Knees out"), line("Big breath")];
    let mut floor = Floor::on(sheet(squat));
    for cue in ["Elbows high", "Knees out", "Big breath", "Elbows high"] {
        let shown = board_with(&floor, &[]).cue.expect("a cue");
        assert_eq!(shown.as_str(), cue);
        floor.log();
    }
}

#[test]
fn the_rest_after_the_set_is_told_and_none_after_the_last() {
    let mut floor = Floor::on(sheet(squat()));
    for rest in [Some(150), Some(150), None] {
        let shown = board_with(&floor, &[]).then_rest;
        assert_eq!(shown.map(|rest| rest.get()), rest);
        floor.log();
    }
    // Of sets without a rest between nothing is told.
    let mut squat = squat();
    squat.rest = stanchion::units::Seconds::MIN;
    assert_eq!(board_with(&Floor::on(sheet(squat)), &[]).then_rest, None);
}

#[test]
fn the_warm_up_is_shown_until_something_is_done() {
    let mut sheet = sheet(squat());
    sheet.warm_up = vec![line("Hips")];
    let mut floor = Floor::on(sheet);
    assert_eq!(board_with(&floor, &[]).warm_up.len(), 1);
    floor.log();
    assert!(board_with(&floor, &[]).warm_up.is_empty());
}

#[test]
fn a_load_is_overruled_where_another_was_chosen() {
    let mut squat = squat();
    squat.start = Some(Load::whole_kg(60));
    let mut floor = Floor::on(sheet(squat));
    let set = floor.state().current().unwrap().planned.key;
    let first = done(Some("60 kg"), Amount::Reps(reps(6)));
    floor.tap(vec![What::SetDone {
        set,
        done: first,
        proposed: None,
    }]);
    let mut chosen = |kg| {
        floor.choose(Load::whole_kg(kg), None);
        let board = board_with(&floor, &[]);
        (board.prescribed, board.load, board.overruled)
    };
    let sixty = Some(Load::whole_kg(60));
    assert_eq!(chosen(65), (sixty, Some(Load::whole_kg(65)), true));
    assert_eq!(chosen(60), (sixty, sixty, false));
}

#[test]
fn of_a_band_the_lighter_and_the_heavier_one_are_named() {
    let band = |label: &str| {
        let basis = LoadBasis::Band(line(label));
        let block = block(vec![work(1, 5, 7)], basis, SideMode::Both);
        let bands = board_with(&Floor::on(sheet(block)), &[]).bands;
        bands.map(|band| band.map(|band| band.as_str().to_owned()))
    };
    let named = |band: &str| Some(band.to_owned());
    assert_eq!(
        band("middle band"),
        [named("light band"), named("strong band")]
    );
    assert_eq!(band("light band"), [None, named("middle band")]);
    assert_eq!(band("strong band"), [named("middle band"), None]);
    let squat = squat();
    assert_eq!(
        board_with(&Floor::on(sheet(squat)), &[]).bands,
        [None, None]
    );
}

#[test]
fn a_cluster_says_its_portions_and_a_band_is_no_missing_load() {
    let mut cluster = squat();
    cluster.sets[0].kind = SetKind::Cluster {
        portions: 4,
        pause: Seconds::new(15).unwrap(),
    };
    let shown = board_with(&Floor::on(sheet(cluster)), &[]);
    assert_eq!(shown.portions, Some((4, Seconds::new(15).unwrap())));
    assert_eq!(board_with(&Floor::on(sheet(squat())), &[]).portions, None);

    let mut row = squat();
    row.basis = LoadBasis::Band(line("light"));
    let shown = board_with(&Floor::on(sheet(row)), &[]);
    assert_eq!(shown.because(Unit::Kg), "as the sheet says");
}
