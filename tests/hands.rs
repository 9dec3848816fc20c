//! What careless hands do to a session: a set stopped early, sides that differ, taps taken back.

use crate::common;

use common::built::{block, key, reps, sets, sheet as sheet_of, work};
use common::floor::{COUNT_IN_S, Floor, seen};
use proptest::prelude::*;
use stanchion::cues::{Position, position, set_timeline};
use stanchion::ledger::{SessionRecord, Volume, performances_of};
use stanchion::session::{Amount, Phase, StageAmount, What};
use stanchion::sheet::{Group, LoadBasis, RepTarget, SetKind, SideMode, Target, Tempo, unroll};
use stanchion::units::{Load, Seconds};

/// One set of six to eight reps at 2/0/1/0, three seconds each.
fn paced(sides: SideMode) -> Floor {
    let mut block = block(vec![work(2, 6, 8)], LoadBasis::Unloaded, sides);
    block.tempo = Some("2/0/1/0".parse::<Tempo>().unwrap());
    Floor::on(sheet_of(block))
}

#[test]
fn a_set_that_is_stopped_early_offers_the_reps_that_were_heard() {
    let mut floor = paced(SideMode::Both);
    assert_eq!(floor.offer(), Amount::Reps(reps(8)));
    floor.start();
    // In the count-in and in the first rep nothing is done yet.
    floor.wait(3000 + 2999);
    assert_eq!(floor.offer(), Amount::Reps(reps(8)));
    floor.wait(9001);
    assert_eq!(floor.offer(), Amount::Reps(reps(4)));
    floor.stop();
    floor.wait(60_000);
    assert_eq!(floor.offer(), Amount::Reps(reps(4)));
    floor.step(true);
    assert_eq!(floor.offer(), Amount::Reps(reps(5)));
    floor.undo_tap();
    floor.log();
    let logged = floor.state().last_logged().unwrap().logged().unwrap();
    assert_eq!(logged.done.amount, Amount::Reps(reps(4)));
}

#[test]
fn what_the_hand_chose_counts_over_the_cues_and_a_new_start_counts_anew() {
    let mut floor = paced(SideMode::Both);
    floor.start();
    floor.wait(3000 + 3 * 3000);
    floor.step(false);
    assert_eq!(floor.offer(), Amount::Reps(reps(2)));
    floor.wait(3000);
    assert_eq!(floor.offer(), Amount::Reps(reps(2)));
    floor.stop();
    assert_eq!(floor.offer(), Amount::Reps(reps(2)));
    floor.start();
    floor.wait(3000 + 3000);
    assert_eq!(floor.offer(), Amount::Reps(reps(1)));
    // The cues end after the top of the range; what was chosen before the start stands.
    floor.wait(60_000);
    assert_eq!(floor.offer(), Amount::Reps(reps(2)));
}

#[test]
fn a_stop_leaves_nothing_behind_when_the_set_is_begun_again() {
    let mut floor = paced(SideMode::Both);
    floor.start();
    floor.wait(3000 + 2 * 3000);
    floor.stop();
    assert_eq!(floor.offer(), Amount::Reps(reps(2)));
    floor.start();
    floor.wait(60_000);
    assert_eq!(floor.offer(), Amount::Reps(reps(8)));
}

#[test]
fn each_side_is_offered_and_logged_with_its_own_reps() {
    let mut floor = paced(SideMode::EachInTurn);
    let sides = |first, second| Amount::Sides {
        first: reps(first),
        second: reps(second),
    };
    let asked = floor.state().current().unwrap().planned.target.clone();
    assert!(matches!(asked, Target::Reps(_)));
    floor.start();
    floor.wait(3000 + 2 * 3000);
    assert_eq!(floor.offer(), sides(2, 0));
    // All eight of the first side, five seconds to change, three of the other.
    floor.wait(6 * 3000 + 5000 + 3 * 3000);
    floor.stop();
    assert_eq!(floor.offer(), sides(8, 3));
    floor.step(true);
    assert_eq!(floor.offer(), sides(8, 4));
    floor.log();
    floor.tap(vec![What::Ended]);
    let record = SessionRecord::from_events(floor.session.events()).unwrap();
    let line = record.lines().next().unwrap().1;
    assert_eq!(line.amount, sides(8, 4));
    // No rule takes the stronger side for both, and none passes the set over.
    assert_eq!(line.amount.reps(), Some(reps(4)));
    let (_, performance) = performances_of(&record).remove(0);
    let seen: Vec<(bool, u16)> = performance
        .sets
        .iter()
        .map(|set| (set.work, set.reps.get()))
        .collect();
    assert_eq!(seen, [(true, 4)]);
    assert_eq!(performance.left, 1);
}

#[test]
fn volume_counts_the_reps_of_both_sides() {
    let of = |amount: Amount| {
        let block = block(
            vec![work(1, 7, 8)],
            LoadBasis::External,
            SideMode::EachInTurn,
        );
        let dones = [(key(0, 0), common::built::done(Some("20 kg"), amount))];
        Volume::of(&common::built::record(1, &block, None, &dones)).work
    };
    assert_eq!(
        of(Amount::of_sides(reps(8), reps(8))),
        of(Amount::Reps(reps(8)))
    );
    let differ = Amount::Sides {
        first: reps(9),
        second: reps(7),
    };
    assert_eq!(of(differ), of(Amount::Reps(reps(8))));
}

#[test]
fn taps_count_on_from_the_reps_that_the_cues_have_said() {
    let least = RepTarget::at_least(reps(2)).unwrap();
    let line = sets(SetKind::Work, 1, Target::Reps(least));
    let on = |sides| {
        let mut block = block(vec![line.clone()], LoadBasis::Unloaded, sides);
        block.tempo = Some("2/0/1/0".parse::<Tempo>().unwrap());
        Floor::on(sheet_of(block))
    };
    let from = |floor: &Floor| {
        let state = floor.state();
        state.counts_from(state.current().unwrap(), &floor.now(), COUNT_IN_S)
    };
    let mut floor = on(SideMode::Both);
    assert_eq!(from(&floor), None, "not begun");
    floor.start();
    floor.wait(3000 + 5999);
    assert_eq!(from(&floor), None, "the cues count");
    floor.wait(1);
    assert_eq!(from(&floor), Some(reps(2)));
    let mut apart = on(SideMode::EachInTurn);
    apart.start();
    apart.wait(60_000);
    assert_eq!(from(&apart), None, "the sides work apart");
    // Sets that are paced to their end are counted by the cues alone.
    let mut fixed = paced(SideMode::Both);
    fixed.start();
    fixed.wait(60_000);
    assert_eq!(from(&fixed), None);
}

#[test]
fn a_hold_that_is_let_go_offers_its_seconds() {
    let target = Target::Timed(Seconds::new(40).unwrap());
    let line = sets(SetKind::Work, 1, target);
    let mut floor = Floor::on(sheet_of(block(
        vec![line],
        LoadBasis::Unloaded,
        SideMode::Both,
    )));
    floor.start();
    // Before a second is held nothing was done.
    floor.wait(3000 + 900);
    assert_eq!(floor.offer(), Amount::Timed(Seconds::new(40).unwrap()));
    floor.wait(16_500);
    floor.stop();
    assert_eq!(floor.offer(), Amount::Timed(Seconds::new(17).unwrap()));
    floor.step(true);
    assert_eq!(floor.offer(), Amount::Timed(Seconds::new(22).unwrap()));
}

#[test]
fn stages_that_were_not_reached_count_nothing() {
    let target: Target = serde_json::from_str(
        r#"{"stages":[{"hold":{"seconds":10}},{"reps":{"reps":4,"tempo":"2/0/2/0"}},{"partials":{"reps":6}}]}"#,
    )
    .unwrap();
    let line = sets(SetKind::Work, 1, target);
    let mut floor = Floor::on(sheet_of(block(
        vec![line],
        LoadBasis::Unloaded,
        SideMode::Both,
    )));
    let prescribed = floor.offer();
    floor.start();
    floor.wait(3000 + 900);
    assert_eq!(
        floor.offer(),
        prescribed,
        "before a second is held nothing was done"
    );
    floor.wait(100);
    assert_ne!(floor.offer(), prescribed);
    floor.wait(9000 + 2 * 4000);
    floor.stop();
    let stages = vec![
        StageAmount::Hold(Seconds::new(10).unwrap()),
        StageAmount::Reps(reps(2)),
        StageAmount::Partials(reps(0)),
    ];
    assert_eq!(floor.offer(), Amount::Stages(stages));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    /// Stopping and then logging is logging; what is offered is never more than the cues have said, and what is
    /// prescribed once they have ended.
    #[test]
    fn the_offer_follows_the_cues(sheet in common::sheets::sheet(), at in 0..400_000u64) {
        let mut floor = Floor::on(sheet);
        let prescribed = floor.offer();
        floor.start();
        floor.wait(at);
        let offered = floor.offer();
        let state = floor.state();
        let slot = state.current().unwrap();
        let timeline = set_timeline(&slot.planned, COUNT_IN_S);
        let now = floor.now().since(&match state.phase {
            Phase::Working { since, .. } => since,
            _ => unreachable!("it was started"),
        });
        match position(&timeline, now as u32) {
            Position::Over | Position::Open { .. } => prop_assert_eq!(&offered, &prescribed),
            Position::Running { .. } => {
                let top = unroll(&state.began.sheet)[0].offered;
                let asked = slot.planned.target.plain_reps().map(|asked| asked.top());
                if let (Amount::Reps(heard), Some(asked)) = (&offered, asked) {
                    prop_assert!(*heard <= asked.max(top.unwrap_or(asked)) || slot.planned.kind.name() == "cluster");
                }
            }
        }
        floor.stop();
        let after = floor.offer();
        prop_assert_eq!(&after, &offered);
        floor.log();
        let logged = floor.state().last_logged().unwrap().logged().unwrap().done.amount.clone();
        prop_assert_eq!(logged, offered);
    }
}

#[test]
fn a_pair_says_who_is_next_and_after_which_rest() {
    let demo = stanchion::store::demo();
    let sheets = demo.current_sheets();
    let sheet = sheets
        .iter()
        .find(|sheet| {
            sheet
                .groups
                .iter()
                .any(|group| matches!(group, Group::Pair { .. }))
        })
        .expect("the demo holds a pair");
    let floor = Floor::on((*sheet).clone());
    let state = floor.state();
    let mut said = Vec::new();
    for slot in &state.slots {
        if let Some(turn) = state.turn(slot.planned.key) {
            assert_eq!(turn.of, 2);
            said.push(turn.said());
        } else {
            assert_eq!(
                state.began.sheet.groups[slot.planned.group].blocks().len(),
                1
            );
        }
    }
    assert!(said[0].starts_with("pair 1 of 2 · then "), "{}", said[0]);
    assert!(said[1].starts_with("pair 2 of 2 · then "), "{}", said[1]);
    assert!(said.last().unwrap().ends_with("its last set"));
}

#[test]
fn taps_of_one_moment_are_taken_back_together_and_others_alone() {
    let mut floor = paced(SideMode::Both);
    let set = key(0, 0);
    let load = What::LoadChosen {
        set,
        load: Load::whole_kg(20),
        proposed: None,
    };
    floor.tap(vec![load]);
    let before = seen(floor.state());
    let two = [7, 9].map(|n| What::RepsChosen { set, reps: reps(n) });
    floor.tap(two.to_vec());
    assert_eq!(floor.offer(), Amount::Reps(reps(9)));
    floor.undo_tap();
    assert_eq!(seen(floor.state()), before);
    floor.undo_tap();
    assert_eq!(floor.state().slot(set).unwrap().load, None);
    assert_eq!(floor.session.undo_last_tap(), []);
}
