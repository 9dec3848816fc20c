//! A session that went on after its end, or was added to: what the ledger says of its length, rests and change-overs.

use crate::common;

use common::built::{block, done, events, key, reps, work};
use common::events::event;
use stanchion::ledger::SessionRecord;
use stanchion::session::{Amount, Event, What};
use stanchion::sheet::{LoadBasis, SideMode};

/// Two sets, the end, forty minutes of pause, one set more and the end.
fn gone_on() -> Vec<Event> {
    let block = block(vec![work(3, 5, 7)], LoadBasis::External, SideMode::Both);
    let one = || done(Some("60 kg"), Amount::Reps(reps(5)));
    let mut all = events(0, &block, None, &[(key(0, 0), one()), (key(0, 1), one())]);
    let pause = 40 * 60_000;
    for (after, what) in [
        (0, What::Resumed),
        (30_000, What::SetStarted { set: key(0, 2) }),
        (
            60_000,
            What::SetDone {
                set: key(0, 2),
                done: one(),
                proposed: None,
            },
        ),
        (120_000, What::Ended),
    ] {
        all.push(event(7, 3 * 60_000 + pause + after, 1, what));
    }
    all
}

#[test]
fn a_pause_before_going_on_is_no_time_trained_and_no_rest() {
    let record = SessionRecord::from_events(&gone_on()).unwrap();
    assert_eq!(record.duration_ms, 3 * 60_000 + 120_000);
    let lines: Vec<_> = record.lines().map(|(_, line)| line).collect();
    assert_eq!(lines.len(), 3);
    assert_eq!((lines[2].rest_taken, lines[2].rest_asked), (None, None));
    assert_eq!(lines[2].lasted, Some(30));
    assert_eq!(lines[1].rest_asked, Some(150));
    assert!(record.change_overs.is_empty());
    assert!(record.ended.is_some());
}

#[test]
fn what_is_added_after_the_end_changes_no_length() {
    let mut all = gone_on();
    all.truncate(4);
    let before = SessionRecord::from_events(&all).unwrap();
    let forgotten = What::SetDone {
        set: key(0, 2),
        done: done(Some("60 kg"), Amount::Reps(reps(5))),
        proposed: None,
    };
    all.push(event(8, 10 * 60_000, 1, forgotten));
    let after = SessionRecord::from_events(&all).unwrap();
    assert_eq!(after.duration_ms, before.duration_ms);
    assert_eq!(after.ended, before.ended);
    assert_eq!(after.lines().count(), 3);
    assert_eq!(after.change_overs, before.change_overs);
}
