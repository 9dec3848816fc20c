//! What a panel of the ledger offers of a set whose sides go one after the other.

use super::*;
use crate::session::{Began, Event, EventId, Mint, Session, SessionId, Tick};
use crate::sheet::Target;
use crate::strength::Curve;
use crate::units::{Reps, Seconds};
use chrono::TimeDelta;

fn reps(n: i64) -> Reps {
    Reps::saturating(n)
}

/// A session of the demo's first sheet, of which nothing was done.
fn begun() -> Session {
    let sheet = crate::store::demo().current_sheets()[0].clone();
    let began = Began {
        session: SessionId(uuid::Uuid::from_u128(1)),
        sheet,
        body_mass: None,
        proposals: Vec::new(),
        light: false,
        curve: Curve::default(),
        along: None,
    };
    Session::replay(vec![event(0, What::Began(Box::new(began)))]).unwrap()
}

/// What happened in that minute.
fn event(minute: u32, what: What) -> Event {
    let began: chrono::DateTime<chrono::FixedOffset> = "2026-03-02T18:00:00+01:00".parse().unwrap();
    let at = began + TimeDelta::minutes(i64::from(minute));
    let ms = u64::try_from(at.timestamp_millis()).unwrap();
    Event {
        id: EventId(Mint::default().next(ms, [0; 10])),
        at,
        tick: Tick {
            run: 1,
            ms: u64::from(minute) * 60_000,
        },
        what,
    }
}

/// A slot of reps that both sides do together, or one after the other.
fn slot(state: &State, apart: bool) -> &Slot {
    let mut slots = state.slots.iter();
    let found = slots.find(|slot| {
        matches!(slot.planned.target, Target::Reps(_)) && (slot.planned.sides.rounds() > 1) == apart
    });
    found.unwrap()
}

#[test]
fn sides_that_go_one_after_the_other_are_put_right_each_by_itself() {
    let session = begun();
    let state = session.state();
    let sides = Amount::of_sides(reps(5), reps(3));
    let (apart, together) = (slot(state, true), slot(state, false));
    assert!(is_sided(apart, &sides));
    assert!(
        is_sided(apart, &Amount::Reps(reps(5))),
        "there is a way back to unequal sides"
    );
    assert!(!is_sided(apart, &Amount::Timed(Seconds::saturating(30))));
    assert!(!is_sided(together, &Amount::Reps(reps(5))));
    assert!(is_sided(together, &sides), "nothing of it is lost");
}

#[test]
fn a_set_of_sides_that_was_forgotten_is_added_by_side() {
    let mut session = begun();
    let state = session.state();
    let (apart, together) = (
        slot(state, true).planned.key.block,
        slot(state, false).planned.key.block,
    );
    let sided = |session: &Session, block| forgotten(session.state(), block).unwrap().sided;
    assert!(sided(&session, apart));
    assert!(!sided(&session, together));
    // One more than the plan has begins with what was done last.
    let sets: Vec<SetKey> = session
        .state()
        .slots
        .iter()
        .map(|it| it.planned.key)
        .collect();
    for (set, minute) in sets.into_iter().filter(|set| set.block == apart).zip(1..) {
        let done = Done {
            load: None,
            amount: Amount::of_sides(reps(5), reps(3)),
            reserve: None,
        };
        let what = What::SetDone {
            set,
            done,
            proposed: None,
        };
        session.take(event(minute, what)).unwrap();
    }
    let more = forgotten(session.state(), apart).unwrap();
    assert!(more.sided && more.first.is_some());
    assert_eq!(sides_of(&more.done.amount), Some((reps(5), reps(3))));
}

#[test]
fn both_sides_are_kept_as_they_were_typed() {
    let owner = Owner::new();
    owner.set();
    let before = Done {
        load: None,
        amount: Amount::of_sides(reps(5), reps(3)),
        reserve: None,
    };
    let typed = Typed::of(&before, true, Unit::Kg);
    let turn = |second, more| {
        typed.amount.update(|amount| {
            *amount = side_stepped(amount, second, more).unwrap();
        });
    };
    let kept = || typed.done(&before, Unit::Kg, false, None).unwrap().amount;
    turn(true, true);
    turn(true, true);
    assert_eq!(kept(), Amount::Reps(reps(5)));
    turn(true, false);
    assert_eq!(kept(), Amount::of_sides(reps(5), reps(4)));
}
