//! What may still happen after the end: a set that was forgotten, one that was wrongly logged, going on.

use super::tests::Gym;
use super::*;
use crate::sheet::SetKey;
use crate::units::{Load, Reps};

fn done(reps: i64) -> Done {
    Done {
        load: Some(Load::whole_kg(60)),
        amount: Amount::Reps(Reps::saturating(reps)),
        reserve: None,
    }
}

/// Two sets of A logged, a minute apart, and the end.
fn ended() -> (Gym, SetKey) {
    let mut gym = Gym::open();
    let first = gym.set();
    gym.log(7);
    gym.wait(60);
    gym.log(6);
    gym.wait(60);
    gym.act(What::Ended).unwrap();
    (gym, first)
}

fn logged(gym: &Gym) -> usize {
    let slots = gym.session.state().slots.iter();
    slots.filter(|slot| slot.logged().is_some()).count()
}

#[test]
fn a_session_goes_on_until_three_hours_after_its_end() {
    let (mut gym, _) = ended();
    gym.wait(3 * 3600);
    gym.act(What::Resumed).unwrap();
    let state = gym.session.state();
    assert!(!state.has_ended());
    assert_eq!(state.phase, Phase::Ready, "the rest is long over");
    assert_eq!(state.paused_ms, 3 * 3_600_000);
    assert_eq!(
        state.gone_ms(&gym.now),
        120_000,
        "a pause is no time trained"
    );
    assert_eq!(gym.act(What::Resumed), Err(Refusal::NotEnded));
    let (mut gym, _) = ended();
    gym.wait(3 * 3600 + 1);
    assert_eq!(gym.act(What::Resumed), Err(Refusal::EndedLongAgo));
    assert!(gym.session.state().has_ended());
}

#[test]
fn what_follows_is_a_session_as_any_other() {
    let (mut gym, first) = ended();
    gym.wait(1800);
    gym.act(What::Resumed).unwrap();
    let last = gym.set();
    gym.log(9);
    assert_eq!(gym.session.state().phase, Phase::AllDone);
    // Step by step back, over the end too, but never to the end itself.
    let targets = gym.session.undo_last_set();
    assert_eq!(targets.len(), 1);
    gym.act(What::Undone { event: targets[0] }).unwrap();
    assert_eq!(gym.set(), last);
    let targets = gym.session.undo_last_set();
    gym.act(What::Undone { event: targets[0] }).unwrap();
    assert_eq!(logged(&gym), 1);
    assert!(gym.session.state().slot(first).unwrap().logged().is_some());
    gym.act(What::Ended).unwrap();
    assert!(gym.session.state().has_ended());
    assert_eq!(gym.session.newest_undoable(), None);
}

#[test]
fn when_nothing_is_left_going_on_waits_for_a_set_more() {
    let (mut gym, first) = ended();
    gym.act(What::Resumed).unwrap();
    gym.log(5);
    gym.act(What::Ended).unwrap();
    gym.act(What::Resumed).unwrap();
    assert_eq!(gym.session.state().phase, Phase::AllDone);
    let block = first.block;
    gym.act(What::SetAdded { block, line: 0 }).unwrap();
    assert_eq!(gym.session.state().phase, Phase::Ready);
}

#[test]
fn a_set_wrongly_logged_is_taken_out_and_put_back() {
    let (mut gym, first) = ended();
    let event = gym
        .session
        .state()
        .slot(first)
        .unwrap()
        .logged()
        .unwrap()
        .event;
    let amended = done(8);
    gym.act(What::SetAmended {
        set: first,
        done: amended.clone(),
    })
    .unwrap();
    let out = gym.act(What::Undone { event }).unwrap();
    assert_eq!(logged(&gym), 1);
    assert!(gym.session.state().has_ended());
    // Twice is refused: it does not count any more.
    assert_eq!(gym.act(What::Undone { event }), Err(Refusal::CannotUndo));
    gym.act(What::Undone { event: out }).unwrap();
    assert_eq!(logged(&gym), 2);
    let back = gym
        .session
        .state()
        .slot(first)
        .unwrap()
        .logged()
        .unwrap()
        .done
        .clone();
    assert_eq!(back, amended, "with its corrections");
    assert_eq!(
        gym.act(What::Undone { event: out }),
        Err(Refusal::CannotUndo)
    );
}

#[test]
fn a_set_forgotten_is_added_and_taken_out_again() {
    let (mut gym, first) = ended();
    let pending = gym.set();
    let event = gym
        .act(What::SetDone {
            set: pending,
            done: done(12),
            proposed: None,
        })
        .unwrap();
    assert_eq!(logged(&gym), 3);
    assert!(gym.session.state().has_ended(), "no rest begins");
    let again = What::SetDone {
        set: pending,
        done: done(12),
        proposed: None,
    };
    assert_eq!(gym.act(again), Err(Refusal::AlreadySettled));
    // One that the sheet does not have.
    let added = gym
        .act(What::SetAdded {
            block: first.block,
            line: 0,
        })
        .unwrap();
    let more = SetKey { set: 2, ..first };
    gym.act(What::SetDone {
        set: more,
        done: done(5),
        proposed: None,
    })
    .unwrap();
    assert_eq!(logged(&gym), 4);
    for event in gym.session.undo_last_tap() {
        gym.act(What::Undone { event }).unwrap();
    }
    gym.act(What::Undone { event }).unwrap_err();
    assert_eq!(
        gym.act(What::Undone { event: added }),
        Err(Refusal::CannotUndo)
    );
    assert!(logged(&gym) <= 3);
}

#[test]
fn before_the_end_an_undo_stays_undone() {
    let mut gym = Gym::open();
    gym.log(7);
    let event = gym.session.undo_last_set()[0];
    let undo = gym.act(What::Undone { event }).unwrap();
    assert_eq!(
        gym.act(What::Undone { event: undo }),
        Err(Refusal::CannotUndo)
    );
}
