//! A rest under clocks that sleep, jump, step back or change their zone: never negative, endless or lost.

use super::*;
use crate::sheet::SetKey;
use chrono::{DateTime, FixedOffset, TimeDelta};
use proptest::prelude::*;
use uuid::Uuid;

const LENGTH_MS: u64 = 90_000;

fn at(text: &str, run: u32, ms: u64) -> Moment {
    Moment {
        at: text.parse().expect("a time"),
        tick: Tick { run, ms },
    }
}

fn rest(since: Moment) -> Rest {
    Rest {
        after: SetKey {
            block: crate::sheet::BlockId(Uuid::from_u128(1)),
            line: 0,
            set: 0,
            drop: 0,
        },
        since,
        length_ms: LENGTH_MS,
        held: None,
        heat: None,
    }
}

#[test]
fn the_offset_of_a_time_zone_is_no_time() {
    // The night in which clocks are put forward: 01:59:30 at +01:00, 60 s later it is 03:00:30 at +02:00.
    let since = at("2026-03-29T01:59:30+01:00", 1, 5_000);
    let spring = at("2026-03-29T03:00:30+02:00", 1, 65_000);
    assert_eq!(rest(since).left_ms(&spring), Some(30_000));
    // The night in which they are put back, and a reload in between.
    let since = at("2026-10-25T02:59:30+02:00", 1, 5_000);
    let autumn = at("2026-10-25T02:00:30+01:00", 2, 900);
    assert_eq!(rest(since).left_ms(&autumn), Some(30_000));
    // A flight: another zone, the same instant.
    let east = at("2026-10-25T10:00:30+09:00", 1, 65_000);
    assert_eq!(rest(since).left_ms(&east), Some(30_000));
}

#[test]
fn a_laptop_that_slept_finds_its_rest_over_and_by_how_much() {
    let since = at("2026-11-25T18:00:00+01:00", 1, 5_000);
    // The steady clock stood still meanwhile, as some do.
    let woken = at("2026-11-25T18:02:50+01:00", 1, 6_000);
    assert_eq!(rest(since).left_ms(&woken), Some(-80_000));
}

#[test]
fn a_clock_that_was_set_back_does_not_stop_a_rest() {
    let since = at("2026-11-25T18:00:00+01:00", 1, 5_000);
    let later = at("2026-11-25T17:01:00+01:00", 1, 65_000);
    assert_eq!(rest(since).left_ms(&later), Some(30_000));
    // After a reload the steady clock says nothing; the shell lets the time of the session run on instead.
    let reloaded = at("2026-11-25T17:01:00+01:00", 2, 500);
    assert_eq!(rest(since).left_ms(&reloaded), Some(LENGTH_MS as i64));
}

/// What may happen to the clocks of a device.
#[derive(Debug, Clone, Copy)]
enum Turn {
    Passes(u32),
    Sleeps(u32),
    SetBack(u32),
    Zone(i8),
}

fn some_turn() -> impl Strategy<Value = Turn> {
    prop_oneof![
        (0..60_000_u32).prop_map(Turn::Passes),
        (0..60_000_u32).prop_map(Turn::Sleeps),
        (0..90_000_000_u32).prop_map(Turn::SetBack),
        (-12..=14_i8).prop_map(Turn::Zone),
    ]
}

fn turned(now: Moment, turn: Turn) -> Moment {
    let ms = |ms: u32| TimeDelta::milliseconds(i64::from(ms));
    let zone = |hours: i8| FixedOffset::east_opt(i32::from(hours) * 3600).expect("an offset");
    let (at, passed): (DateTime<FixedOffset>, u32) = match turn {
        Turn::Passes(by) => (now.at + ms(by), by),
        Turn::Sleeps(by) => (now.at + ms(by), 0),
        Turn::SetBack(by) => (now.at - ms(by), 0),
        Turn::Zone(hours) => (now.at.with_timezone(&zone(hours)), 0),
    };
    let tick = Tick {
        ms: now.tick.ms + u64::from(passed),
        ..now.tick
    };
    Moment { at, tick }
}

proptest! {
    #[test]
    fn a_rest_is_never_longer_than_it_is_and_always_ends(turns in prop::collection::vec(some_turn(), 0..40)) {
        let begun = at("2026-11-25T18:00:00+01:00", 7, 1_000);
        let rest = rest(begun);
        let mut now = begun;
        let mut passed = 0;
        for turn in turns {
            now = turned(now, turn);
            if let Turn::Passes(ms) = turn {
                passed += u64::from(ms);
            }
            let left = rest.left_ms(&now).expect("it is not held");
            prop_assert!(left <= LENGTH_MS as i64);
            // What the page lived through is gone for good, whatever the clock on the wall says.
            prop_assert!(left <= LENGTH_MS as i64 - passed as i64);
        }
        let end = turned(now, Turn::Passes(LENGTH_MS as u32));
        prop_assert!(rest.left_ms(&end).is_some_and(|left| left <= 0));
    }
}
