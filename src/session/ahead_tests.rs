//! What the floor thinks ahead: the time budget, and a set that went off plan.

use super::tests::Gym;
use super::*;
use crate::sheet::{Group, Progression, Step};
use crate::strength::{Because, Proposal};
use crate::units::{Reps, Rir, Seconds, Unit, minutes_up};
use std::num::NonZeroU16;

fn change_over() -> Seconds {
    Seconds::saturating(60)
}

/// The gym's session with another time budget on its sheet.
fn with_budget(gym: &Gym, minutes: u16) -> State {
    let mut state = gym.session.state().clone();
    state.began.sheet.budget_minutes = NonZeroU16::new(minutes);
    state
}

#[test]
fn without_a_budget_nothing_is_said() {
    let gym = Gym::open();
    assert_eq!(
        gym.session.state().against_budget(&gym.now, change_over()),
        None
    );
}

#[test]
fn in_time_it_says_what_is_to_spare_and_late_what_to_leave_off() {
    let mut gym = Gym::open();
    let whole = gym.session.state().seconds_left(&gym.now, change_over());
    let minutes = u16::try_from(whole / 60).unwrap();
    let at = |state: &State, now: &Moment| state.against_budget(now, change_over()).unwrap();

    let ahead = at(&with_budget(&gym, minutes + 5), &gym.now);
    assert_eq!(ahead.leave_off, Some(0));
    assert!(ahead.said().starts_with("In time: "), "{}", ahead.said());

    // Two minutes later with nothing done, the end lies two minutes later too.
    let before = at(&with_budget(&gym, minutes + 1), &gym.now);
    gym.wait(120);
    let late = at(&with_budget(&gym, minutes + 1), &gym.now);
    assert_eq!(late.over, before.over + 120);
    assert_eq!(late.leave_off, Some(1));
    assert!(late.said().contains("leave off 1 set"), "{}", late.said());
    let minutes = minutes_over(late.over).unwrap();
    let said = format!("{minutes} min over the");
    assert!(late.said().starts_with(&said), "{}", late.said());
    assert_eq!(
        [0, 1, 60, 61].map(minutes_over),
        [None, Some(1), Some(1), Some(2)]
    );

    // Nothing that is left off brings a session back within a minute that is long over.
    gym.wait(3600);
    let lost = at(&with_budget(&gym, 1), &gym.now);
    assert_eq!(lost.leave_off, None);
    let sets = gym.session.state().pending().len();
    let whole = minutes_up(lost.seconds);
    assert_eq!(
        lost.said(),
        format!("Nothing more fits the 1 min planned: {sets} sets left, about {whole} min.")
    );
    let last = AgainstBudget { sets: 1, ..lost };
    let said = last.said();
    assert!(said.contains("1 set left, about"), "{said}");
}

#[test]
fn what_is_left_off_is_what_the_tap_takes_off_and_is_enough() {
    let mut gym = Gym::open();
    for minutes in 1..8 {
        let state = with_budget(&gym, minutes);
        let against = state.against_budget(&gym.now, change_over()).unwrap();
        if let Some(off) = against.leave_off.filter(|off| *off > 0) {
            let gone = gym.now.since(&state.since) / 1000;
            let within = u64::from(minutes) * 60 - gone;
            let short = state.short(&gym.now, within, change_over());
            assert_eq!(short.drops.len(), off);
            assert!(short.left <= within);
        }
        gym.wait(20);
    }
}

#[test]
fn a_set_as_planned_says_nothing() {
    let mut gym = Gym::open();
    assert_eq!(gym.session.state().off_plan(Unit::Kg), None);
    gym.log(6);
    assert_eq!(gym.session.state().off_plan(Unit::Kg), None);
}

#[test]
fn reps_load_and_reserve_off_the_plan_are_told() {
    let told = |reps: i64, load: &str, reserve: Option<Rir>| {
        let mut gym = Gym::open();
        let set = gym.set();
        let slot = gym.session.state().slot(set).unwrap();
        let mut done = slot
            .as_prescribed(Some(load.parse().unwrap()))
            .with_reps(Reps::new(reps).unwrap());
        done.reserve = reserve;
        let proposed = Some("60 kg".parse().unwrap());
        gym.act(What::SetDone {
            set,
            done,
            proposed,
        })
        .unwrap();
        gym.session.state().off_plan(Unit::Kg)
    };
    assert_eq!(told(5, "60 kg", None), None);
    assert_eq!(
        told(4, "60 kg", None).unwrap(),
        "Off plan: 4 reps where 5–7 were asked."
    );
    assert_eq!(
        told(8, "57.5 kg", None).unwrap(),
        "Off plan: 8 reps where 5–7 were asked; load below the 60 kg proposed."
    );
    // The set aims at no reserve: what was left is no news.
    assert_eq!(told(7, "60 kg", Some(Rir::new(0).unwrap())), None);
}

/// Eight reps of 5–7 in the first set, under a rule and with a reason for its load.
fn one_more_than_asked(rule: Progression, because: Option<Because>, light: bool) -> Option<String> {
    let mut gym = Gym::open();
    gym.log(8);
    let mut state = gym.session.state().clone();
    let slot = state.last_logged().unwrap().clone();
    let at = slot.planned.key.block;
    let groups = state.began.sheet.groups.iter_mut();
    let mut blocks = groups.flat_map(Group::blocks_mut);
    blocks.find(|block| block.id == at).unwrap().progression = rule;
    state.began.light = light;
    state.began.proposals = because
        .map(|because| Proposal {
            block: at,
            load: because.load(),
            because,
        })
        .into_iter()
        .collect();
    state.off_plan(Unit::Kg)
}

#[test]
fn more_reps_than_asked_are_on_plan_where_the_rule_wants_them() {
    let told = Some("Off plan: 8 reps where 5–7 were asked.".to_owned());
    let double = Progression::default;
    assert_eq!(one_more_than_asked(double(), None, false), told);
    let twice = || Progression::TwoForTwo { up: Step::Smallest };
    assert_eq!(one_more_than_asked(twice(), None, false), None);
    // A light week asks for no more than it says.
    assert_eq!(one_more_than_asked(twice(), None, true), told);
    let waits: Because = serde_json::from_value(serde_json::json!({"step_waits": {
        "reps": [7, 7, 7], "low": 5, "aim": 12, "next": "75 kg",
        "moved": {"at": "60 kg", "to": "60 kg", "wish": "same", "on": "barbell"},
    }}))
    .unwrap();
    assert_eq!(one_more_than_asked(double(), Some(waits), false), None);
}
