//! Books kept up session by session equal what a simple path over the raw events gives: everything folded, nothing kept.
//! Random histories with corrections, removals and merges, in any order.

use crate::common;

use common::built::{block, done, events, key, reps, work};
use common::events::{event, session};
use common::id;
use common::shelves::{Memory, rebuilt, turns};
use common::simple::{
    Sessions, headings_agree, histories_agree, lasts_agree, records, summaries_agree,
};
use proptest::collection::vec;
use proptest::prelude::*;
use stanchion::session::{Amount, Event, EventId, SessionId, What};
use stanchion::sheet::{Block, ExerciseId, LoadBasis, SheetId, SideMode};
use stanchion::store::Turn;

/// Days on which sessions may begin: within a week, over the turn of a year, years apart.
const DAYS: [u64; 8] = [1, 2, 3, 4, 359, 360, 361, 1200];

fn blocks() -> Vec<Block> {
    let other = |mut block: Block| {
        block.exercise.id = ExerciseId::new("chin-up").unwrap();
        block
    };
    vec![
        block(vec![work(4, 5, 7)], LoadBasis::External, SideMode::Both),
        block(vec![work(4, 10, 20)], LoadBasis::External, SideMode::Both),
        other(block(
            vec![work(4, 5, 8)],
            LoadBasis::BodyMassPlus,
            SideMode::Both,
        )),
        other(block(
            vec![work(4, 5, 8)],
            LoadBasis::BodyMassMinus,
            SideMode::Both,
        )),
    ]
}

/// A session built by hand: few loads and reps, so that they meet; light now and then, one of two sheets.
fn built() -> BoxedStrategy<Vec<Event>> {
    let sets = vec((0..6_u16, 1..18_i64), 1..5);
    (
        proptest::sample::select(DAYS.to_vec()),
        proptest::sample::select(blocks()),
        sets,
        0..6_u8,
        any::<bool>(),
    )
        .prop_map(|(day, block, sets, light, other)| {
            let dones: Vec<_> = sets
                .iter()
                .enumerate()
                .map(|(at, (load, count))| {
                    let load = format!("{} kg", 40 + load * 20);
                    let done = done(Some(&load), Amount::Reps(reps(*count)));
                    (key(0, at as u8), done)
                })
                .collect();
            let mut events = events(day, &block, Some("80 kg"), &dones);
            if let What::Began(began) = &mut events[0].what {
                began.light = light == 0;
                if other {
                    began.sheet.id = SheetId(id(77, 77));
                }
            }
            events
        })
        .boxed()
}

/// What happens to the ledger.
#[derive(Debug, Clone)]
enum Step {
    /// Sessions come, by themselves or by one import; where one is there it gains what it lacks.
    Come(Vec<Vec<Event>>),
    /// A set of a session is corrected: which session, which set, so many reps.
    Correct(prop::sample::Index, u8, i64),
    /// The last event of a session is undone.
    Undo(prop::sample::Index),
    /// Sessions go.
    Go(Vec<prop::sample::Index>),
}

fn step() -> BoxedStrategy<Step> {
    let any_session = prop_oneof![6 => built(), 1 => (0..3_u64).prop_flat_map(session)];
    prop_oneof![
        4 => built().prop_map(|one| Step::Come(vec![one])),
        2 => vec(any_session, 1..6).prop_map(Step::Come),
        3 => (any::<prop::sample::Index>(), 0..4_u8, 0..20_i64)
            .prop_map(|(which, set, count)| Step::Correct(which, set, count)),
        1 => any::<prop::sample::Index>().prop_map(Step::Undo),
        2 => vec(any::<prop::sample::Index>(), 1..3).prop_map(Step::Go),
    ]
    .boxed()
}

fn put(sessions: &mut Sessions, events: Vec<Event>) {
    let What::Began(began) = &events[0].what else {
        panic!("a session begins");
    };
    let there = sessions.entry(began.session).or_default();
    for event in events {
        // A union, as a merge makes it: what is there stays.
        if there.iter().all(|known| known.id != event.id) {
            there.push(event);
        }
    }
    there.sort_by_key(|event| event.id);
}

fn nth(sessions: &Sessions, which: &prop::sample::Index) -> Option<SessionId> {
    (!sessions.is_empty()).then(|| *sessions.keys().nth(which.index(sessions.len())).unwrap())
}

/// An event after all others of its session.
fn next(events: &[Event], what: What) -> Event {
    let last = events.last().unwrap();
    let mut new = event(9, 0, 1, what);
    new.id = EventId(uuid::Uuid::from_u128(last.id.0.as_u128() + 1));
    new.at = last.at;
    new.tick = last.tick;
    new
}

fn take(sessions: &mut Sessions, step: &Step) {
    match step {
        Step::Come(all) => all.iter().for_each(|one| put(sessions, one.clone())),
        Step::Correct(which, set, count) => {
            if let Some(id) = nth(sessions, which) {
                let events = sessions.get_mut(&id).unwrap();
                let done = done(Some("60 kg"), Amount::Reps(reps(*count)));
                let set = key(0, *set);
                events.push(next(events, What::SetAmended { set, done }));
            }
        }
        Step::Undo(which) => {
            if let Some(id) = nth(sessions, which) {
                let events = sessions.get_mut(&id).unwrap();
                let event = events.last().unwrap().id;
                events.push(next(events, What::Undone { event }));
            }
        }
        Step::Go(which) => {
            for which in which {
                if let Some(id) = nth(sessions, which) {
                    sessions.remove(&id);
                }
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 160, ..ProptestConfig::default() })]

    #[test]
    fn books_kept_up_equal_what_the_raw_events_say(steps in vec(step(), 1..14)) {
        let (mut sessions, mut books) = (Sessions::new(), Memory::default());
        for step in &steps {
            let mut after = sessions.clone();
            take(&mut after, step);
            books.turn(&turns(&sessions, &after));
            sessions = after;
        }
        let records = records(&sessions);
        headings_agree(&books, &records);
        histories_agree(&books, &records);
        summaries_agree(&books, &records);
        lasts_agree(&books, &records);
        // And rebuilt they are the same rows to the last byte.
        books.0.retain(|(_, key), _| key != "form");
        let mut fresh = rebuilt(&sessions);
        fresh.0.retain(|(_, key), _| key != "form");
        prop_assert_eq!(books, fresh);
    }

    #[test]
    fn the_same_turn_twice_is_one_turn(
        all in vec(built(), 1..6),
        again in any::<prop::sample::Index>(),
    ) {
        let mut sessions = Sessions::new();
        all.into_iter().for_each(|one| put(&mut sessions, one));
        let mut books = Memory::default();
        books.turn(&turns(&Sessions::new(), &sessions));
        let once = books.clone();
        let id = nth(&sessions, &again).unwrap();
        let after = common::shelves::entry(sessions.get(&id));
        // Written by a tab that did not know that it was written.
        books.turn(&[Turn { session: id, before: None, after }]);
        prop_assert_eq!(books, once);
    }
}

/// A sheet that was begun and ended without a set is still as long ago as its last set.
#[test]
fn a_session_without_a_set_is_no_turn_of_its_sheet() {
    let on = |day, sets: &[_]| events(day, &blocks()[0], None, sets);
    let done = done(Some("60 kg"), Amount::Reps(reps(5)));
    let (mut sessions, mut books) = (Sessions::new(), Memory::default());
    for events in [on(1, &[(key(0, 0), done)]), on(2, &[])] {
        let mut after = sessions.clone();
        put(&mut after, events);
        books.turn(&turns(&sessions, &after));
        sessions = after;
    }
    let first = *sessions.keys().next().unwrap();
    for books in [books, rebuilt(&sessions)] {
        lasts_agree(&books, &records(&sessions));
        let mut rows = books.0.iter();
        let last = rows.find(|((_, key), _)| key.starts_with("sheet/"));
        assert!(last.is_some_and(|(_, row)| row.contains(&first.0.to_string())));
    }
}

#[test]
fn a_spoiled_row_is_told_and_nothing_is_guessed() {
    let mut sessions = Sessions::new();
    let squat = &blocks()[0];
    let sets = [(key(0, 0), done(Some("60 kg"), Amount::Reps(reps(5))))];
    put(&mut sessions, events(1, squat, None, &sets));
    let mut books = rebuilt(&sessions);
    for row in books.0.values_mut() {
        row.push('x');
    }
    let mut after = sessions.clone();
    put(&mut after, events(2, squat, None, &sets));
    let turns = turns(&sessions, &after);
    let fault = common::shelves::now(stanchion::store::turned(&books, &turns));
    assert!(matches!(
        fault,
        Err(stanchion::store::BookFault::Unreadable)
    ));
}
