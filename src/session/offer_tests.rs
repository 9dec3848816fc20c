//! What a step offers, and how what was logged differs from the plan.

use super::tests::Gym;
use super::*;
use crate::units::{Load, Metres, Reps, Rir, Seconds, Unit};

fn reps(n: i64) -> Reps {
    Reps::saturating(n)
}

fn done(amount: Amount) -> Done {
    Done {
        load: None,
        amount,
        reserve: None,
    }
}

#[test]
fn a_step_is_one_rep_or_five_seconds_or_metres() {
    let seconds = |n| Amount::Timed(Seconds::saturating(n));
    let metres = |n| Amount::Distance(Metres::saturating(n));
    let stages = |n| {
        Amount::Stages(vec![
            StageAmount::Reps(reps(n)),
            StageAmount::Hold(Seconds::saturating(10)),
        ])
    };
    for (from, more, fewer) in [
        (
            Amount::Reps(reps(8)),
            Amount::Reps(reps(9)),
            Amount::Reps(reps(7)),
        ),
        (seconds(30), seconds(35), seconds(25)),
        (metres(20), metres(25), metres(15)),
        (stages(6), stages(7), stages(5)),
        (
            Amount::Sides {
                first: reps(8),
                second: reps(6),
            },
            Amount::Sides {
                first: reps(8),
                second: reps(7),
            },
            Amount::Sides {
                first: reps(8),
                second: reps(5),
            },
        ),
    ] {
        assert_eq!(done(from.clone()).stepped(true).amount, more);
        assert_eq!(done(from).stepped(false).amount, fewer);
    }
}

#[test]
fn a_step_of_plain_reps_is_kept_as_reps() {
    let gym = Gym::open();
    let slot = gym.session.state().current().unwrap();
    let set = slot.planned.key;
    let step = slot.offer_stepped(Amount::Reps(reps(6)), true);
    assert_eq!(step, What::RepsChosen { set, reps: reps(7) });
    let seconds = |n| Amount::Timed(Seconds::saturating(n));
    let step = slot.offer_stepped(seconds(30), false);
    assert_eq!(
        step,
        What::AmountChosen {
            set,
            amount: seconds(25)
        }
    );
}

#[test]
fn a_set_without_a_tempo_may_be_counted_by_taps_from_none_on() {
    let gym = Gym::open();
    let state = gym.session.state();
    let slot = state.current().unwrap();
    assert_eq!(state.counts_from(slot, &gym.now, 3), Some(Reps::MIN));
}

/// Off plan: fewer or more reps than asked for, another load than proposed, less in reserve than aimed at.
#[test]
fn what_is_off_the_plan_is_said() {
    let said = |n, load: u16, proposed: u16, aim: Option<i64>, reserve: Option<i64>| {
        let mut gym = Gym::open();
        let set = gym.set();
        let done = Done {
            load: Some(Load::whole_kg(load)),
            amount: Amount::Reps(reps(n)),
            reserve: reserve.map(Rir::saturating),
        };
        let proposed = Some(Load::whole_kg(proposed));
        gym.act(What::SetDone {
            set,
            done,
            proposed,
        })
        .unwrap();
        let mut state = gym.session.state().clone();
        let slot = state.slots.iter_mut().find(|slot| slot.planned.key == set);
        slot.unwrap().planned.reserve = aim.map(Rir::saturating);
        state.off_plan(Unit::Kg)
    };
    assert_eq!(said(6, 60, 60, Some(2), Some(2)), None);
    assert_eq!(said(6, 60, 60, Some(2), Some(3)), None);
    for (said, says) in [
        (said(4, 60, 60, None, None), "4 reps where 5–7 were asked"),
        (said(8, 60, 60, None, None), "8 reps where 5–7 were asked"),
        (said(6, 65, 60, None, None), "load above the 60 kg proposed"),
        (said(6, 55, 60, None, None), "load below the 60 kg proposed"),
        (
            said(6, 60, 60, Some(2), Some(1)),
            "1 in reserve where 2 were aimed at",
        ),
    ] {
        assert_eq!(said, Some(format!("Off plan: {says}.")));
    }
}
