//! What is refused or comes out right where something was settled, skipped, told twice or longer in the heat.

use super::tests::Gym;
use super::*;
use crate::units::Reps;
use uuid::Uuid;

#[test]
fn what_is_settled_or_not_of_the_sheet_is_refused_while_the_session_goes_on() {
    let mut gym = Gym::open();
    let set = gym.set();
    let done = gym.session.state().slot(set).unwrap().as_prescribed(None);
    let done = |set| What::SetDone {
        set,
        done: done.clone(),
        proposed: None,
    };
    gym.act(What::SetSkipped { set }).unwrap();
    // A set that was passed over is put back by an undo, not logged over it.
    assert_eq!(gym.act(done(set)), Err(Refusal::AlreadySettled));
    assert_eq!(gym.act(What::Resumed), Err(Refusal::NotEnded));
    let allowed = gym.session.allow(&What::Resumed);
    assert_eq!(allowed, Err(Refusal::NotEnded));
    let added = |block, line| What::SetAdded { block, line };
    assert_eq!(gym.act(added(set.block, 9)), Err(Refusal::NoSuchSet));
    let nowhere = crate::sheet::BlockId(Uuid::from_u128(77));
    assert_eq!(gym.act(added(nowhere, 0)), Err(Refusal::NoSuchSet));
    assert_eq!(gym.act(added(set.block, 0)).map(|_| ()), Ok(()));
}

#[test]
fn a_set_that_is_skipped_under_way_is_under_way_no_more() {
    let mut gym = Gym::open();
    let set = gym.set();
    gym.act(What::SetStarted { set }).unwrap();
    gym.act(What::SetSkipped { set }).unwrap();
    assert_eq!(gym.session.state().phase, Phase::Ready);
    assert_ne!(gym.set(), set);
}

#[test]
fn the_beginning_is_never_taken_back() {
    let mut gym = Gym::open();
    assert_eq!(gym.session.newest_undoable(), None);
    assert_eq!(gym.session.undo_last_tap(), []);
    let began = gym.session.events()[0].id;
    let undo = gym.act(What::Undone { event: began });
    assert_eq!(undo, Err(Refusal::CannotUndo));
    let first = gym.log(7);
    assert_eq!(gym.session.undo_last_tap(), [first]);
}

#[test]
fn an_event_that_is_there_twice_counts_once() {
    let mut gym = Gym::open();
    gym.log(7);
    gym.wait(60);
    gym.log(6);
    let once = gym.session.events().to_vec();
    let mut twice = once.clone();
    twice.insert(2, once[1].clone());
    assert_eq!(effective(&twice), effective(&once));
    assert_eq!(State::fold(&twice), State::fold(&once));
}

#[test]
fn a_rest_says_that_the_heat_made_it_longer_and_only_then() {
    let rest = |air: Option<&str>| {
        let mut gym = Gym::open();
        if let Some(humidity) = air {
            let air = crate::heat::Air {
                temperature: crate::heat::Temperature::parse("35", crate::heat::Scale::Celsius)
                    .unwrap(),
                humidity: crate::heat::Humidity::parse(humidity).unwrap(),
            };
            gym.act(What::AirNoted { air }).unwrap();
        }
        gym.log(7);
        match gym.session.state().phase {
            Phase::Resting(rest) => (rest.length_ms / 1000, rest.because()),
            _ => panic!("no rest"),
        }
    };
    assert_eq!(rest(None), (90, None));
    // 95 °F at 60 % are 113 °F: danger, half as long again (common practice, no source).
    let because = "rest 2:15: half as long again in the heat".to_owned();
    assert_eq!(rest(Some("60")), (135, Some(because)));
}

#[test]
fn a_correction_keeps_what_was_logged_first() {
    let mut gym = Gym::open();
    let set = gym.set();
    gym.log(7);
    let logged = |gym: &Gym| {
        gym.session
            .state()
            .slot(set)
            .unwrap()
            .logged()
            .unwrap()
            .clone()
    };
    let earlier = |gym: &Gym| {
        let earlier = logged(gym).earlier;
        let reps = earlier.iter().filter_map(|done| done.amount.reps());
        reps.map(Reps::get).collect::<Vec<_>>()
    };
    let correct = |gym: &mut Gym, reps| {
        let done = logged(gym).done.with_reps(Reps::new(reps).unwrap());
        gym.act(What::SetAmended { set, done }).unwrap();
    };
    // Each tap of a stepper is an event, and all of them are one correction.
    for reps in [6, 5] {
        correct(&mut gym, reps);
        gym.wait(50);
    }
    assert_eq!(logged(&gym).done.amount.reps(), Reps::new(5).ok());
    assert_eq!(earlier(&gym), [7]);
    gym.wait(11);
    correct(&mut gym, 4);
    assert_eq!(earlier(&gym), [7, 5]);
}
