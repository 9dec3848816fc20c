//! What a step offers, and how what was logged differs from the plan.

use super::tests::Gym;
use super::*;
use crate::sheet::SetKind;
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
    assert_eq!(step, Some(What::RepsChosen { set, reps: reps(7) }));
    let seconds = |n| Amount::Timed(Seconds::saturating(n));
    let step = slot.offer_stepped(seconds(30), false);
    assert_eq!(
        step,
        Some(What::AmountChosen {
            set,
            amount: seconds(25)
        })
    );
}

#[test]
fn of_stages_that_were_left_early_the_one_that_was_begun_is_stepped() {
    let gym = Gym::open();
    let mut slot = gym.session.state().current().unwrap().clone();
    let target = r#"{"stages": [{"hold": {"seconds": 10}}, {"reps": {"reps": 6, "tempo": "4/0/2/0"}}, {"partials": {"reps": 8}}]}"#;
    slot.planned.target = serde_json::from_str(target).unwrap();
    let set = slot.planned.key;
    let heard = |full, partials| {
        Amount::Stages(vec![
            StageAmount::Hold(Seconds::saturating(10)),
            StageAmount::Reps(reps(full)),
            StageAmount::Partials(reps(partials)),
        ])
    };
    let chosen = |amount| Some(What::AmountChosen { set, amount });
    assert_eq!(slot.offer_stepped(heard(3, 0), true), chosen(heard(4, 0)));
    assert_eq!(slot.offer_stepped(heard(3, 0), false), chosen(heard(2, 0)));
    assert_eq!(slot.offer_stepped(heard(5, 2), true), chosen(heard(5, 3)));
    // The others are as prescribed: the last one's reps say it all.
    let reps = |n| Some(What::RepsChosen { set, reps: reps(n) });
    assert_eq!(slot.offer_stepped(heard(6, 8), true), reps(9));
    assert_eq!(slot.offer_stepped(heard(6, 0), true), reps(1));
    assert_eq!(slot.offer_stepped(heard(6, 0), false), None);
}

#[test]
fn a_step_beyond_either_end_is_no_event() {
    let gym = Gym::open();
    let slot = gym.session.state().current().unwrap();
    let none = || {
        [
            Amount::Reps(Reps::MIN),
            Amount::Timed(Seconds::MIN),
            Amount::Distance(Metres::MIN),
        ]
    };
    for amount in none() {
        assert_eq!(slot.offer_stepped(amount, false), None);
    }
    for amount in none() {
        assert!(slot.offer_stepped(amount, true).is_some());
    }
    for amount in [
        Amount::Reps(Reps::MAX),
        Amount::Timed(Seconds::MAX),
        Amount::Distance(Metres::MAX),
    ] {
        assert_eq!(slot.offer_stepped(amount, true), None);
    }
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

/// What is said of a set that asks for `target` and was done as `amount`.
fn told(kind: SetKind, target: &str, amount: Amount) -> Option<String> {
    let mut gym = Gym::open();
    let set = gym.set();
    gym.act(What::SetDone {
        set,
        done: done(amount),
        proposed: None,
    })
    .unwrap();
    let mut state = gym.session.state().clone();
    let mut slots = state.slots.iter_mut();
    let slot = slots.find(|slot| slot.planned.key == set).unwrap();
    slot.planned.kind = kind;
    slot.planned.target = serde_json::from_str(target).unwrap();
    state.off_plan(Unit::Kg)
}

#[test]
fn seconds_metres_and_stages_that_fell_short_are_told() {
    let seconds = |n| Amount::Timed(Seconds::saturating(n));
    let metres = |n| Amount::Distance(Metres::saturating(n));
    let stages = |hold, slow, partials| {
        Amount::Stages(vec![
            StageAmount::Hold(Seconds::saturating(hold)),
            StageAmount::Reps(reps(slow)),
            StageAmount::Partials(reps(partials)),
        ])
    };
    let parts = r#"{"stages":[{"hold":{"seconds":10}},{"reps":{"reps":{"from":4,"to":6},"tempo":"4/0/2/0"}},
        {"partials":{"reps":8}}]}"#;
    for (target, amount, says) in [
        (r#"{"timed":30}"#, seconds(30), None),
        (
            r#"{"timed":30}"#,
            seconds(25),
            Some("held 0:25 where 0:30 were asked"),
        ),
        (
            r#"{"timed":30}"#,
            seconds(35),
            Some("held 0:35 where 0:30 were asked"),
        ),
        (r#"{"distance":20}"#, metres(20), None),
        (
            r#"{"distance":20}"#,
            metres(15),
            Some("15 m where 20 m were asked"),
        ),
        (parts, stages(10, 4, 8), None),
        // The last stage often goes on.
        (parts, stages(12, 6, 11), None),
        (
            parts,
            stages(6, 3, 5),
            Some(
                "6 s in place of hold 10 s; 3 in place of 4–6 at 4/0/2/0; 5 in place of 8 partials",
            ),
        ),
    ] {
        let says = says.map(|says| format!("Off plan: {says}."));
        assert_eq!(told(SetKind::Work, target, amount), says);
    }
}

#[test]
fn a_cluster_is_off_plan_by_all_its_portions_and_a_set_to_failure_never_by_more() {
    let cluster = || SetKind::Cluster {
        portions: 4,
        pause: Seconds::saturating(15),
    };
    let said = |kind, n| told(kind, r#"{"reps":2}"#, Amount::Reps(reps(n)));
    assert_eq!(said(cluster(), 8), None);
    let short = said(cluster(), 7);
    assert_eq!(
        short.as_deref(),
        Some("Off plan: 7 reps where 8 were asked.")
    );
    assert_eq!(said(SetKind::ToFailure, 3), None);
    let early = said(SetKind::ToFailure, 1);
    assert_eq!(
        early.as_deref(),
        Some("Off plan: 1 rep where 2 were asked.")
    );
    let longer = Amount::Timed(Seconds::saturating(45));
    assert_eq!(told(SetKind::ToFailure, r#"{"timed":30}"#, longer), None);
}
