//! A session short of time: what goes, what stays, and that one tap brings it back.

use crate::common;

use common::built::{block, sheet as sheet_of, work};
use common::floor::{Floor, change_over, seen};
use proptest::prelude::*;
use stanchion::session::{Gone, Phase, What};
use stanchion::sheet::{
    BlockId, Group, LoadBasis, Off, Role, SetKind, Sheet, SideMode, cuts, worth,
};
use stanchion::units::Share;

/// A sheet of straight blocks of every role.
fn straight() -> impl Strategy<Value = Sheet> {
    let roles = [Role::Power, Role::Strength, Role::Hypertrophy, Role::Pump];
    let one = (prop::sample::select(roles.to_vec()), 1..6u8, 4..12i64);
    prop::collection::vec(one, 1..6).prop_map(|blocks| {
        let groups = blocks.into_iter().zip(1..).map(|((role, count, reps), n)| {
            let mut block = block(
                vec![work(count, reps, reps + 2)],
                LoadBasis::Unloaded,
                SideMode::Both,
            );
            block.id = BlockId(common::id(n, n));
            block.role = role;
            Group::Straight(Box::new(block))
        });
        let plain = block(vec![work(1, 1, 2)], LoadBasis::Unloaded, SideMode::Both);
        Sheet {
            groups: groups.collect(),
            ..sheet_of(plain)
        }
    })
}

/// A floor on any sheet, some of its sets logged or skipped.
fn floor() -> impl Strategy<Value = Floor> {
    (
        common::sheets::sheet(),
        prop::collection::vec(0..6u8, 0..12),
        0..300_000u64,
        any::<bool>(),
    )
        .prop_map(|(sheet, taps, wait, starts)| {
            let mut floor = Floor::on(sheet);
            for tap in taps {
                let Some(slot) = floor.state().current() else {
                    break;
                };
                let set = slot.planned.key;
                match tap {
                    0 => floor.tap(vec![What::SetSkipped { set }]),
                    1 => floor.tap(vec![What::SetAdded {
                        block: set.block,
                        line: set.line,
                    }]),
                    _ => floor.log(),
                }
            }
            floor.wait(wait);
            if starts && floor.state().current().is_some() {
                floor.start();
            }
            floor
        })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    /// A session short of time fits it, or there is nothing left to take off; it takes no more than that asks for.
    #[test]
    fn short_of_time_takes_off_what_it_must_and_no_more(mut floor in floor(), within in 0..4000u64) {
        let pending = |floor: &Floor| floor.state().slots.iter().filter(|slot| slot.logged().is_none()).count();
        let before = seen(floor.state());
        let left = floor.left();
        let under_way = match floor.state().phase {
            Phase::Working { set, .. } => Some(set),
            _ => None,
        };
        let short = floor.short(within);
        prop_assert_eq!(short.drops.is_empty(), short.gone.is_empty());
        if left <= within {
            prop_assert!(short.drops.is_empty());
        }
        prop_assert_eq!(left - short.left, short.gone.iter().map(|gone| gone.saves).sum::<u64>());
        prop_assert!(short.gone.iter().all(|gone| gone.saves > 0 && gone.sets > 0));
        prop_assert!(under_way.is_none_or(|set| !short.drops.contains(&set)));
        if floor.state().current().is_none() || short.drops.is_empty() {
            return Ok(());
        }
        let many = pending(&floor);
        let said = floor.now();
        floor.tap(short.events());
        // What was said is what there was then: the tap itself takes a moment of a rest.
        prop_assert_eq!(floor.state().seconds_left(&said, change_over()), short.left);
        prop_assert_eq!(pending(&floor), many - short.drops.len());
        prop_assert!(floor.state().current().is_some(), "one set stays");
        prop_assert!(floor.short(within).drops.is_empty(), "a second time finds nothing");
        floor.undo_tap();
        prop_assert_eq!(seen(floor.state()), before);
    }

    /// What is worth more keeps its sets while what is worth less has any to give.
    #[test]
    fn power_and_strength_are_kept_longest(sheet in straight(), within in 0..6000u64) {
        let mut floor = Floor::on(sheet.clone());
        let short = floor.short(within);
        // What is just enough is enough: nothing more goes.
        if short.left <= within {
            prop_assert_eq!(&floor.short(short.left).drops, &short.drops);
        }
        floor.tap(short.events());
        let dearest = short.gone.iter().map(|gone| worth(sheet.block(gone.block).unwrap().role)).max();
        let cheaper = sheet.blocks().filter(|block| dearest.is_some_and(|lost| worth(block.role) < lost));
        for block in cheaper {
            let left = floor.state().slots.iter().filter(|slot| slot.planned.key.block == block.id).count();
            prop_assert_eq!(left, 0, "{} sets of {:?} are left", left, block.role);
        }
        // One set stays, of the first block of what is kept longest.
        if within == 0 {
            let best = sheet.blocks().map(|block| worth(block.role)).max().unwrap();
            let first = sheet.blocks().find(|block| worth(block.role) == best).unwrap().id;
            let kept: Vec<_> = floor.state().slots.iter().map(|slot| slot.planned.key.block).collect();
            prop_assert_eq!(kept, vec![first]);
        }
    }

    /// Before the first set it is the sheet's own cuts.
    #[test]
    fn before_the_first_set_it_is_what_the_sheet_says(sheet in common::sheets::sheet(), minutes in 0..60u16) {
        let floor = Floor::on(sheet.clone());
        let own = cuts(&sheet, minutes, change_over());
        let short = floor.short(u64::from(minutes) * 60);
        let saves = own.iter().map(|cut| cut.saves).sum::<u64>();
        // The sheet's cuts may name a block twice; here it is one line.
        prop_assert_eq!(saves, short.gone.iter().map(|gone| gone.saves).sum::<u64>());
        for cut in own {
            let gone = short.gone.iter().find(|gone| gone.block == cut.block);
            prop_assert!(gone.is_some());
            if cut.off == Off::Whole {
                prop_assert!(gone.unwrap().whole);
            }
        }
    }
}

#[test]
fn what_goes_is_said_with_what_it_saves() {
    let mut squat = block(vec![work(3, 4, 5)], LoadBasis::Unloaded, SideMode::Both);
    squat.tempo = Some("2/0/1/0".parse().unwrap());
    let mut floor = Floor::on(sheet_of(squat));
    floor.log();
    // 150 s of rest, 15 s of work, 150 s, 15 s.
    assert_eq!(floor.left(), 330);
    let short = floor.short(170);
    assert_eq!(short.left, 165);
    let said: Vec<String> = short.gone.iter().map(|gone| gone.said()).collect();
    assert_eq!(said, ["1 set of Front squat, saves 3 min"]);
}

/// A set whose first part was passed over has its drops left: they are one set all the same.
#[test]
fn drops_whose_set_was_passed_over_go_as_one_set() {
    let mut drops = work(1, 4, 5);
    drops.kind = SetKind::Drop {
        drops: 2,
        keep: Share::percent(70),
    };
    let mut curl = block(
        vec![work(1, 4, 5), drops],
        LoadBasis::Unloaded,
        SideMode::Both,
    );
    curl.id = BlockId(common::id(2, 2));
    curl.role = Role::Pump;
    let squat = block(vec![work(1, 4, 5)], LoadBasis::Unloaded, SideMode::Both);
    let sheet = Sheet {
        groups: vec![
            Group::Straight(Box::new(curl)),
            Group::Straight(Box::new(squat.clone())),
        ],
        ..sheet_of(squat)
    };
    let mut floor = Floor::on(sheet);
    floor.log();
    let set = floor.state().current().unwrap().planned.key;
    floor.tap(vec![What::SetSkipped { set }]);
    let gone = floor.short(0).gone;
    assert_eq!(gone.len(), 1);
    assert_eq!(gone[0].sets, 1);
}

#[test]
fn what_goes_is_called_by_how_much_of_it_is_left() {
    let said = |sets, whole, saves| {
        Gone {
            block: BlockId(common::id(1, 1)),
            exercise: "Row".to_owned(),
            sets,
            whole,
            saves,
        }
        .said()
    };
    assert_eq!(said(1, false, 30), "1 set of Row, saves 1 min");
    assert_eq!(said(2, false, 89), "2 sets of Row, saves 1 min");
    assert_eq!(said(1, true, 90), "the last set of Row, saves 2 min");
    assert_eq!(said(2, true, 300), "both sets left of Row, saves 5 min");
    assert_eq!(said(3, true, 600), "all 3 sets left of Row, saves 10 min");
    assert_eq!(said(1, false, 29), "1 set of Row, saves less than a minute");
}

/// The load of the set that waits is on the bar: it stays, and what else there is goes before it.
#[test]
fn the_set_that_waits_on_the_board_stays() {
    let straight = |at: u64, role: Role| {
        let mut block = block(vec![work(3, 4, 5)], LoadBasis::Unloaded, SideMode::Both);
        block.id = BlockId(common::id(at, at));
        block.role = role;
        Group::Straight(Box::new(block))
    };
    let plain = block(vec![work(1, 4, 5)], LoadBasis::Unloaded, SideMode::Both);
    let sheet = Sheet {
        groups: vec![straight(2, Role::Pump), straight(3, Role::Strength)],
        ..sheet_of(plain)
    };
    let mut floor = Floor::on(sheet);
    let first = floor.state().current().unwrap().planned.key;
    // Before anything was done it is the sheet that is cut.
    assert!(floor.short(0).drops.contains(&first));
    floor.log();
    let next = floor.state().current().unwrap().planned.key;
    // While the rest runs nothing waits.
    assert!(floor.short(0).drops.contains(&next));
    floor.wait(600_000);
    let short = floor.short(0);
    assert!(!short.drops.contains(&next));
    assert_eq!(short.drops.len(), 4, "one set stays");
    floor.tap(short.events());
    assert_eq!(floor.state().current().unwrap().planned.key, next);
    assert!(floor.short(0).drops.is_empty());
}
