//! What the machine promises, told by small sessions.

use super::*;
use crate::sheet::{SetKey, Sheet};
use crate::strength::Curve;
use crate::units::{Reps, Rpe};
use chrono::TimeDelta;
use uuid::Uuid;

/// Two straight blocks: A with two sets and 90 s of rest, 120 s after it; B with one set.
fn sheet() -> Sheet {
    let block = |id: u128, name: &str, count: u8| {
        format!(
            r#"{{"straight":{{"id":"{}","exercise":{{"id":"{name}","name":"{name}","pattern":"squat","equipment":"barbell"}},
            "role":"strength","sets":[{{"kind":"work","count":{count},"target":{{"reps":{{"from":5,"to":7}}}}}}],
            "basis":"external","start":"60 kg","rest":90,"rest_after":120}}}}"#,
            Uuid::from_u128(id)
        )
    };
    let text = format!(
        r#"{{"id":"{}","version":"{}","written":"2026-03-01T08:00:00+01:00","name":"Lower A","groups":[{},{}]}}"#,
        Uuid::from_u128(1),
        Uuid::from_u128(2),
        block(10, "front-squat", 2),
        block(11, "calf-raise", 1)
    );
    serde_json::from_str(&text).expect("the sheet is well written")
}

/// A session with a clock of its own.
pub(super) struct Gym {
    pub(super) session: Session,
    mint: Mint,
    pub(super) now: Moment,
}

impl Gym {
    pub(super) fn open() -> Gym {
        Gym::of(5, sheet())
    }

    /// With a session of that number, just begun on a sheet.
    pub(super) fn of(session: u128, sheet: Sheet) -> Gym {
        let now = Moment {
            at: "2026-03-02T18:00:00+01:00".parse().unwrap(),
            tick: Tick { run: 1, ms: 1000 },
        };
        let mut mint = Mint::default();
        let began = Began {
            curve: Curve::default(),
            session: SessionId(Uuid::from_u128(session)),
            sheet,
            body_mass: None,
            proposals: vec![],
            light: false,
            along: None,
        };
        let event = stamp(&mut mint, now, What::Began(Box::new(began)));
        Gym {
            session: Session::begin(event).unwrap(),
            mint,
            now,
        }
    }

    pub(super) fn wait(&mut self, seconds: i64) {
        self.now.at += TimeDelta::seconds(seconds);
        self.now.tick.ms += seconds as u64 * 1000;
    }

    pub(super) fn act(&mut self, what: What) -> Result<EventId, Refusal> {
        let event = stamp(&mut self.mint, self.now, what);
        let id = event.id;
        self.session.take(event).map(|()| id)
    }

    pub(super) fn set(&self) -> SetKey {
        self.session
            .state()
            .current()
            .expect("a set is left")
            .planned
            .key
    }

    pub(super) fn log(&mut self, reps: i64) -> EventId {
        let set = self.set();
        let slot = self.session.state().slot(set).unwrap();
        let done = slot
            .as_prescribed(Some("60 kg".parse().unwrap()))
            .with_reps(Reps::new(reps).unwrap());
        self.act(What::SetDone {
            set,
            done,
            proposed: None,
        })
        .unwrap()
    }

    fn rest_left_s(&self) -> Option<i64> {
        match &self.session.state().phase {
            Phase::Resting(rest) => rest.left_ms(&self.now).map(|ms| ms / 1000),
            _ => None,
        }
    }
}

fn stamp(mint: &mut Mint, now: Moment, what: What) -> Event {
    let ms = u64::try_from(now.at.timestamp_millis()).unwrap();
    Event {
        id: EventId(mint.next(ms, [0; 10])),
        at: now.at,
        tick: now.tick,
        what,
    }
}

#[test]
fn a_tap_logs_the_set_and_starts_its_rest() {
    let mut gym = Gym::open();
    gym.log(7);
    assert_eq!(gym.rest_left_s(), Some(90));
    gym.wait(100);
    assert_eq!(gym.rest_left_s(), Some(-10));
    gym.log(6);
    assert_eq!(
        gym.rest_left_s(),
        Some(120),
        "the rest after the last set of a block"
    );
    gym.log(7);
    assert_eq!(gym.session.state().phase, Phase::AllDone);
}

#[test]
fn a_rest_is_stretched_cut_and_held() {
    let mut gym = Gym::open();
    gym.log(7);
    gym.act(What::RestChanged { by_seconds: 15 }).unwrap();
    assert_eq!(gym.rest_left_s(), Some(105));
    gym.act(What::RestChanged { by_seconds: -3600 }).unwrap();
    assert_eq!(
        gym.rest_left_s(),
        Some(0),
        "a rest is never shorter than nothing"
    );
    gym.act(What::RestHeld).unwrap();
    gym.wait(5000);
    assert_eq!(gym.rest_left_s(), None);
    gym.act(What::RestEnded).unwrap();
    assert_eq!(gym.session.state().phase, Phase::Ready);
    assert_eq!(gym.act(What::RestEnded), Err(Refusal::NotResting));
}

#[test]
fn only_rests_begun_after_the_heat_was_noted_are_longer() {
    let mut gym = Gym::open();
    gym.log(7);
    let air = serde_json::from_str(r#"{"temperature":"84 °F","humidity":60}"#).unwrap();
    let noted = gym.act(What::AirNoted { air }).unwrap();
    assert_eq!(gym.rest_left_s(), Some(90), "it was under way");
    gym.act(What::RestEnded).unwrap();
    // Caution at 88 °F: a tenth of the 120 s, up to the next 5 s.
    gym.log(7);
    assert_eq!(gym.rest_left_s(), Some(135));
    gym.act(What::Undone { event: noted }).unwrap();
    assert_eq!(gym.rest_left_s(), Some(120));
}

#[test]
fn undo_takes_the_state_back_and_can_itself_be_undone() {
    let mut gym = Gym::open();
    let before = gym.session.state().clone();
    let logged = gym.log(7);
    let after = gym.session.state().clone();
    let undo = gym.act(What::Undone { event: logged }).unwrap();
    assert_eq!(gym.session.state().slots, before.slots);
    assert_eq!(gym.session.state().phase, before.phase);
    // The undo no longer stands among what can be undone by a tap, but a redo is an event like any other.
    let redo = stamp(&mut gym.mint, gym.now, What::Undone { event: undo });
    let mut events = gym.session.events().to_vec();
    events.push(redo);
    assert_eq!(State::fold(&events).unwrap().slots, after.slots);
}

#[test]
fn undoing_the_last_set_takes_back_what_followed_it() {
    let mut gym = Gym::open();
    let before = gym.session.state().clone();
    gym.log(7);
    gym.act(What::RestChanged { by_seconds: 15 }).unwrap();
    let set = gym.set();
    gym.act(What::SetStarted { set }).unwrap();
    let targets = gym.session.undo_last_set();
    assert_eq!(targets.len(), 3);
    for event in targets {
        gym.act(What::Undone { event }).unwrap();
    }
    assert_eq!(gym.session.state().slots, before.slots);
    assert_eq!(gym.session.state().phase, Phase::Ready);
    assert!(gym.session.undo_last_set().is_empty());
}

#[test]
fn what_makes_no_sense_is_refused_and_changes_nothing() {
    let mut gym = Gym::open();
    let set = gym.set();
    gym.log(7);
    let before = gym.session.clone();
    let done = Done {
        load: None,
        amount: Amount::Reps(Reps::MIN),
        reserve: None,
    };
    let nowhere = SetKey { line: 9, ..set };
    let refusals = [
        (
            What::SetDone {
                set,
                done: done.clone(),
                proposed: None,
            },
            Refusal::AlreadySettled,
        ),
        (What::SetSkipped { set }, Refusal::AlreadySettled),
        (
            What::SetDone {
                set: nowhere,
                done: done.clone(),
                proposed: None,
            },
            Refusal::NoSuchSet,
        ),
        (
            What::SetAmended {
                set: gym.set(),
                done,
            },
            Refusal::NotLogged,
        ),
        (What::OrderChanged { groups: vec![0] }, Refusal::NoSuchSet),
        (
            What::Undone {
                event: EventId(Uuid::from_u128(99)),
            },
            Refusal::CannotUndo,
        ),
    ];
    for (what, refusal) in refusals {
        assert_eq!(gym.act(what), Err(refusal));
        assert_eq!(gym.session, before);
    }
    let old = Event {
        id: EventId(Uuid::nil()),
        ..before.events()[0].clone()
    };
    assert_eq!(gym.session.take(old), Err(Refusal::OutOfOrder));
}

#[test]
fn sets_are_added_dropped_skipped_and_reordered() {
    let mut gym = Gym::open();
    let first = gym.set();
    gym.act(What::SetAdded {
        block: first.block,
        line: 0,
    })
    .unwrap();
    assert_eq!(gym.session.state().slots.len(), 4);
    gym.act(What::SetDropped { set: first }).unwrap();
    assert_eq!(gym.session.state().slots.len(), 3);
    gym.act(What::OrderChanged { groups: vec![1, 0] }).unwrap();
    let block = gym.set().block;
    assert_ne!(block, first.block, "the other block comes first now");
    let set = gym.set();
    gym.act(What::SetSkipped { set }).unwrap();
    assert_eq!(gym.set().block, first.block);
}

#[test]
fn after_the_end_there_are_corrections_and_the_rating() {
    let mut gym = Gym::open();
    let set = gym.set();
    gym.log(7);
    gym.act(What::Ended).unwrap();
    assert!(gym.session.state().has_ended());
    let done = gym
        .session
        .state()
        .slot(set)
        .unwrap()
        .logged()
        .unwrap()
        .done
        .clone();
    gym.act(What::SetAmended { set, done }).unwrap();
    gym.act(What::Rated {
        rpe: Rpe::new(7).unwrap(),
    })
    .unwrap();
    assert!(
        gym.session.state().has_ended(),
        "a correction does not open the session again"
    );
    assert_eq!(gym.act(What::RestHeld), Err(Refusal::Ended));
    let next = gym.set();
    assert_eq!(gym.act(What::SetSkipped { set: next }), Err(Refusal::Ended));
}

#[test]
fn replay_equals_live_in_any_order_of_the_events() {
    let mut gym = Gym::open();
    gym.log(7);
    gym.wait(30);
    gym.act(What::RestChanged { by_seconds: 15 }).unwrap();
    gym.wait(70);
    gym.log(6);
    let mut events = gym.session.events().to_vec();
    events.reverse();
    events.push(events[0].clone());
    assert_eq!(Session::replay(events).unwrap(), gym.session);
}

#[test]
fn a_rest_goes_on_by_wall_time_in_another_run_of_the_program() {
    let mut gym = Gym::open();
    gym.log(7);
    gym.wait(30);
    gym.now.tick = Tick { run: 2, ms: 5 };
    assert_eq!(gym.rest_left_s(), Some(60));
}

#[test]
fn a_clock_set_back_does_not_stretch_a_rest_within_a_run() {
    let mut gym = Gym::open();
    gym.log(7);
    gym.wait(30);
    gym.now.at -= TimeDelta::hours(2);
    assert_eq!(gym.rest_left_s(), Some(60));
}

#[test]
fn a_device_that_slept_has_rested() {
    let mut gym = Gym::open();
    gym.log(7);
    gym.now.at += TimeDelta::seconds(80);
    assert_eq!(
        gym.rest_left_s(),
        Some(10),
        "the monotonic clock stood still meanwhile"
    );
}

#[test]
fn a_started_set_shows_as_under_way_until_it_is_logged_or_stopped() {
    let mut gym = Gym::open();
    let set = gym.set();
    gym.act(What::SetStarted { set }).unwrap();
    assert_eq!(
        gym.session.state().phase,
        Phase::Working {
            set,
            since: gym.now
        }
    );
    gym.act(What::SetStopped { set, heard: None }).unwrap();
    assert_eq!(gym.session.state().phase, Phase::Ready);
    gym.act(What::SetStarted { set }).unwrap();
    gym.log(7);
    assert_eq!(gym.rest_left_s(), Some(90));
}
