//! Sessions over midnight, over a change of the clock and across time zones: lengths and rests are what went by.

use crate::common;

use chrono::{DateTime, FixedOffset, TimeDelta};
use common::built::{block, done, key, reps, sheet, work};
use common::id;
use proptest::prelude::*;
use stanchion::ledger::{Heading, SessionRecord};
use stanchion::session::{
    Amount, Began, Event, EventId, Phase, Session, SessionId, State, Tick, What,
};
use stanchion::sheet::{LoadBasis, SideMode};
use stanchion::strength::Curve;

/// A wall time with its offset, as a phone writes it down.
fn wall(text: &str) -> DateTime<FixedOffset> {
    DateTime::parse_from_rfc3339(text).unwrap()
}

/// An event at a wall time and a reading of the monotonic clock of a run of the page.
fn event(n: u64, at: &str, run: u32, ms: u64, what: What) -> Event {
    Event {
        id: EventId(id(n, n)),
        at: wall(at),
        tick: Tick { run, ms },
        what,
    }
}

/// A session of one set that begins, is logged and ends at these times.
fn session(times: [(&str, u32, u64); 3]) -> Vec<Event> {
    let block = block(vec![work(2, 5, 7)], LoadBasis::External, SideMode::Both);
    let began = What::Began(Box::new(Began {
        curve: Curve::default(),
        session: SessionId(id(7, 7)),
        sheet: sheet(block),
        body_mass: None,
        proposals: Vec::new(),
        light: false,
        along: None,
    }));
    let logged = What::SetDone {
        set: key(0, 0),
        done: done(Some("60 kg"), Amount::Reps(reps(6))),
        proposed: None,
    };
    let whats = [began, logged, What::Ended];
    let each = (1..).zip(times.into_iter().zip(whats));
    each.map(|(n, ((at, run, ms), what))| event(n, at, run, ms, what))
        .collect()
}

fn minutes(times: [(&str, u32, u64); 3]) -> u32 {
    SessionRecord::from_events(&session(times))
        .unwrap()
        .minutes()
}

const MINUTE: u64 = 60_000;

/// The phone was put away with the session open: nobody trained that night.
#[test]
fn who_closes_a_session_the_next_morning_trained_in_the_evening() {
    let until = |end| {
        minutes([
            ("2026-03-03T18:00:00+01:00", 1, 0),
            ("2026-03-03T18:40:00+01:00", 1, 40 * MINUTE),
            end,
        ])
    };
    assert_eq!(until(("2026-03-04T08:00:00+01:00", 2, 0)), 40);
    assert_eq!(until(("2026-03-04T08:00:00+01:00", 1, 840 * MINUTE)), 40);
    // Up to three hours somebody may be out on a walk with a load.
    assert_eq!(until(("2026-03-03T21:40:00+01:00", 1, 220 * MINUTE)), 220);
}

/// Gone on with the next day: the floor's clock, the length and the rest before the next set leave the night out.
#[test]
fn who_goes_on_with_an_open_session_the_next_day_did_not_rest_all_night() {
    let mut events = session([
        ("2026-03-03T18:00:00+01:00", 1, 0),
        ("2026-03-03T18:40:00+01:00", 1, 40 * MINUTE),
        ("2026-03-04T08:20:00+01:00", 2, 20 * MINUTE),
    ]);
    events.truncate(2);
    let began = |set| What::SetStarted { set };
    let logged = What::SetDone {
        set: key(0, 1),
        done: done(Some("60 kg"), Amount::Reps(reps(6))),
        proposed: None,
    };
    let morning = "2026-03-04T08:00:00+01:00";
    let open = State::fold(&events).unwrap();
    let opened = event(9, morning, 2, 0, began(key(0, 1))).moment();
    assert_eq!(open.gone_ms(&opened), 40 * MINUTE);
    events.push(event(4, morning, 2, 0, began(key(0, 1))));
    events.push(event(5, "2026-03-04T08:01:00+01:00", 2, MINUTE, logged));
    events.push(event(
        6,
        "2026-03-04T08:05:00+01:00",
        2,
        5 * MINUTE,
        What::Ended,
    ));
    let state = State::fold(&events).unwrap();
    let Phase::Ended(end) = state.phase else {
        panic!("it has ended");
    };
    assert_eq!(state.gone_ms(&end), 45 * MINUTE);
    let record = SessionRecord::from_events(&events).unwrap();
    assert_eq!(record.minutes(), 45);
    let (_, second) = record.lines().nth(1).unwrap();
    assert_eq!((second.rest_taken, second.lasted), (None, Some(60)));
}

/// Stopped after its first rep or later, then logged: the start and the stop are known. A slip of a tap is no start.
#[test]
fn a_set_whose_cues_were_stopped_keeps_its_rest_and_its_length() {
    let second = |stops: &[(u64, u64)], heard: Option<i64>| {
        let mut events = session([
            ("2026-03-03T18:00:00+01:00", 1, 0),
            ("2026-03-03T18:02:00+01:00", 1, 2 * MINUTE),
            ("2026-03-03T18:09:00+01:00", 1, 9 * MINUTE),
        ]);
        let end = events.pop().unwrap();
        let set = key(0, 1);
        let heard = heard.map(|n| Amount::Reps(reps(n)));
        let logged = What::SetDone {
            set,
            done: done(Some("60 kg"), Amount::Reps(reps(6))),
            proposed: None,
        };
        let mut told: Vec<(u64, What)> = Vec::new();
        for (begun, stopped) in stops {
            let heard = heard.clone();
            told.push((*begun, What::SetStarted { set }));
            told.push((*stopped, What::SetStopped { set, heard }));
        }
        told.push((400, logged));
        for (n, (seconds, what)) in (4..).zip(told) {
            let at = wall("2026-03-03T18:00:00+01:00") + TimeDelta::seconds(seconds as i64);
            events.push(event(n, &at.to_rfc3339(), 1, seconds * 1000, what));
        }
        events.push(Event {
            id: EventId(id(99, 99)),
            ..end
        });
        let record = SessionRecord::from_events(&events).unwrap();
        let (_, line) = record.lines().nth(1).unwrap();
        (line.rest_taken, line.lasted)
    };
    assert_eq!(second(&[(300, 340)], Some(5)), (Some(180), Some(40)));
    assert_eq!(second(&[(300, 340)], None), (Some(180), Some(40)));
    let twice = [(200, 210), (300, 340)];
    assert_eq!(second(&twice, Some(2)), (Some(180), Some(40)));
    // Within the count-in nobody lifts.
    assert_eq!(second(&[(300, 302)], None), (None, None));
}

#[test]
fn over_midnight_a_session_is_as_long_as_it_was_and_belongs_to_the_day_it_began() {
    let times = [
        ("2026-03-03T23:40:00+01:00", 1, 0),
        ("2026-03-04T00:05:00+01:00", 1, 25 * MINUTE),
        ("2026-03-04T00:30:00+01:00", 1, 50 * MINUTE),
    ];
    assert_eq!(minutes(times), 50);
    let record = SessionRecord::from_events(&session(times)).unwrap();
    let heading = Heading::of(&record, &[]);
    assert_eq!(heading.session, record.session);
    assert_eq!(record.began.date_naive().to_string(), "2026-03-03");
}

#[test]
fn when_clocks_are_put_forward_or_back_a_session_is_as_long_as_it_was() {
    // Central European time, 29 March 2026: 02:00 becomes 03:00 (Directive 2000/84/EC: last Sunday of March, 01:00 UTC).
    assert_eq!(
        minutes([
            ("2026-03-29T01:45:00+01:00", 1, 0),
            ("2026-03-29T03:05:00+02:00", 1, 20 * MINUTE),
            ("2026-03-29T03:15:00+02:00", 1, 30 * MINUTE),
        ]),
        30
    );
    // 25 October 2026: 03:00 becomes 02:00, so the wall shows an earlier time at the end than at the beginning.
    assert_eq!(
        minutes([
            ("2026-10-25T02:50:00+02:00", 1, 0),
            ("2026-10-25T02:10:00+01:00", 1, 20 * MINUTE),
            ("2026-10-25T02:20:00+01:00", 1, 30 * MINUTE),
        ]),
        30
    );
    // The same across a reload, where there is no monotonic clock to compare.
    assert_eq!(
        minutes([
            ("2026-10-25T02:50:00+02:00", 1, 90 * MINUTE),
            ("2026-10-25T02:10:00+01:00", 2, MINUTE),
            ("2026-10-25T02:20:00+01:00", 2, 11 * MINUTE),
        ]),
        30
    );
}

#[test]
fn a_phone_that_crosses_time_zones_counts_what_went_by() {
    // West over two zones, the phone follows: the wall shows an hour and a half less than went by.
    assert_eq!(
        minutes([
            ("2026-06-01T10:00:00+02:00", 1, 0),
            ("2026-06-01T09:20:00+01:00", 1, 20 * MINUTE),
            ("2026-06-01T08:40:00+00:00", 2, 5),
        ]),
        40
    );
    // Over the date line, eastwards: a day earlier on the wall.
    assert_eq!(
        minutes([
            ("2026-06-02T00:10:00+12:00", 1, 0),
            ("2026-06-01T01:30:00-11:00", 1, 20 * MINUTE),
            ("2026-06-01T01:40:00-11:00", 1, 30 * MINUTE),
        ]),
        30
    );
}

#[test]
fn a_clock_set_wrong_in_mid_session_costs_at_most_what_no_clock_saw() {
    // Set back by a year while the page runs: the monotonic clock counts.
    assert_eq!(
        minutes([
            ("2026-06-01T10:00:00+02:00", 1, 0),
            ("2025-06-01T10:20:00+02:00", 1, 20 * MINUTE),
            ("2025-06-01T10:30:00+02:00", 1, 30 * MINUTE),
        ]),
        30
    );
}

#[test]
fn a_clock_set_forward_is_taken_for_sleep() {
    // By an hour, half a minute after the set; the steady clock saw half an hour in all.
    let times = [
        ("2026-06-01T10:00:00+02:00", 1, 0),
        ("2026-06-01T10:20:00+02:00", 1, 20 * MINUTE),
        ("2026-06-01T11:30:00+02:00", 1, 30 * MINUTE),
    ];
    assert_eq!(minutes(times), 90);
    // Of 150 s of rest 120 s would be left; it is over instead, and says by how much.
    let session = Session::replay(session(times)[..2].to_vec()).unwrap();
    let Phase::Resting(rest) = session.state().phase else {
        panic!("it rests");
    };
    let now = |at| event(9, at, 1, 20 * MINUTE + 30_000, What::RestEnded).moment();
    assert_eq!(
        rest.left_ms(&now("2026-06-01T10:20:30+02:00")),
        Some(120_000)
    );
    assert_eq!(
        rest.left_ms(&now("2026-06-01T11:20:30+02:00")),
        Some(120_000 - 60 * MINUTE as i64)
    );
}

#[test]
fn a_rest_over_a_change_of_the_clock_is_as_long_as_it_was_meant() {
    let times = [
        ("2026-03-29T01:50:00+01:00", 1, 0),
        ("2026-03-29T01:59:00+01:00", 1, 9 * MINUTE),
        ("2026-03-29T03:01:00+02:00", 1, 11 * MINUTE),
    ];
    let events = session(times);
    let session = Session::replay(events[..2].to_vec()).unwrap();
    let Phase::Resting(rest) = session.state().phase else {
        panic!("it rests");
    };
    // 150 s of rest; two minutes by any clock leave 30 s, in this run and after a reload.
    for (run, ms) in [(1, 11 * MINUTE), (2, 3)] {
        let now = event(9, "2026-03-29T03:01:00+02:00", run, ms, What::RestEnded).moment();
        assert_eq!(rest.left_ms(&now), Some(30_000));
    }
}

proptest! {
    #[test]
    fn offsets_never_change_a_length(
        begin in 1_700_000_000_i64..1_900_000_000,
        first in 0..14_400_i64,
        second in 0..14_400_i64,
        offsets in proptest::array::uniform3(-50_400..=50_400),
        runs in proptest::array::uniform3(1..=2_u32),
    ) {
        let times = [begin, begin + first, begin + first + second];
        let mut events = session([("2026-01-01T00:00:00+00:00", 1, 0); 3]);
        let each = events.iter_mut().zip(times).zip(offsets.into_iter().zip(runs));
        for ((event, at), (offset, run)) in each {
            let zone = FixedOffset::east_opt(offset).unwrap();
            event.at = DateTime::from_timestamp(at, 0).unwrap().with_timezone(&zone);
            event.tick = Tick { run, ms: u64::try_from(at - begin).unwrap() * 1000 };
        }
        let record = SessionRecord::from_events(&events).unwrap();
        let trained: i64 = [first, second].iter().filter(|silence| **silence <= 10_800).sum();
        prop_assert_eq!(record.duration_ms, u64::try_from(trained).unwrap() * 1000);
        let end = events.last().unwrap().moment();
        prop_assert_eq!(State::fold(&events).unwrap().gone_ms(&end), record.duration_ms);
    }
}
