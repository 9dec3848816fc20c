//! The log of a hundred years fits the limits: four sessions a week on the demo sheets, every set started, logged and
//! rested after.

use crate::common;

use common::events::event;
use common::{id, time};
use stanchion::session::{Amount, Began, Done, EVENTS_KEPT_MAX, Event, EventId, SessionId, What};
use stanchion::sheet::{Note, Sheet, SheetId, SheetVersion, unroll};
use stanchion::store::{
    Archive, FILE_BYTES_MAX, ReadError, RemovedSheet, SESSIONS_MAX, SessionLog, SheetRecord,
    check_size, demo, import, read, write,
};
use stanchion::strength::{Curve, Today, propose};
use stanchion::units::{Reps, Unit};

/// Four a week for a hundred years, rounded up.
const SESSIONS: u64 = 20_900;

/// A session of all sets of `sheet`, the `n`th day and a half.
fn session(n: u64, sheet: &Sheet) -> SessionLog {
    let start = n * 151_200_000;
    let session = SessionId(id(start, n));
    let kit = stanchion::kit::Kit::starter(Unit::Kg);
    let today = Today {
        history: &[],
        kit: &kit,
        now: time(start),
        curve: Curve::default(),
        body_mass: "81.4 kg".parse().ok(),
    };
    let mut whats = vec![What::Began(Box::new(Began {
        session,
        sheet: sheet.clone(),
        body_mass: "81.4 kg".parse().ok(),
        proposals: sheet.blocks().map(|block| propose(block, &today)).collect(),
        light: false,
        curve: Curve::default(),
        along: None,
    }))];
    for set in unroll(sheet) {
        let load = "102.5 kg".parse().ok();
        whats.push(What::SetStarted { set: set.key });
        whats.push(What::SetDone {
            set: set.key,
            done: Done {
                load,
                amount: Amount::Reps(Reps::new(8).unwrap()),
                reserve: None,
            },
            proposed: load,
        });
        whats.push(What::RestEnded);
    }
    whats.push(What::Ended);
    let events = whats
        .into_iter()
        .enumerate()
        .map(|(i, what)| event(n, start + i as u64 * 61_000, 7, what));
    SessionLog::new(session, events).unwrap()
}

fn log_of(sessions: u64) -> Archive {
    let mut archive = demo();
    let sheets: Vec<Sheet> = archive.current_sheets().into_iter().cloned().collect();
    for n in 0..sessions {
        let log = session(n, &sheets[(n % 2) as usize]);
        archive.sessions.insert(log.id(), log);
    }
    archive
}

#[test]
fn a_hundredth_of_it_fits_a_hundred_times() {
    let archive = log_of(SESSIONS / 100);
    let text = write(&archive, time(0));
    let whole = text.len() as u64 * 100;
    assert!(SESSIONS < SESSIONS_MAX as u64);
    assert_eq!(
        check_size(whole),
        Ok(()),
        "{} of {FILE_BYTES_MAX} bytes",
        whole
    );
    assert_eq!(import(Archive::default(), &text).unwrap().archive, archive);
}

#[test]
fn more_is_refused_with_the_limit_named() {
    let said = check_size(FILE_BYTES_MAX + 1).unwrap_err().to_string();
    assert!(said.contains("512 MiB"), "{said}");
    let ids: Vec<String> = (0..=SESSIONS_MAX as u64)
        .map(|n| {
            format!(
                "{{\"id\":\"{}\",\"written\":\"2026-01-05T09:00:00Z\"}}",
                id(n, n)
            )
        })
        .collect();
    let file = format!(
        "{{\"format\":\"stanchion\",\"version\":1,\"removed_sessions\":[{}]}}",
        ids.join(",")
    );
    let refused = import(Archive::default(), &file).unwrap_err();
    assert!(matches!(refused, ReadError::Wrong(_)));
    assert!(
        refused.to_string().contains("at most 25000 are allowed"),
        "{refused}"
    );
}

#[test]
fn more_versions_than_decades_of_taps_write_are_read_back() {
    let mut archive = demo();
    let sheet = SheetId(id(1, 1));
    for n in 0..20_000 {
        // A version that says little: it is the number that counts.
        archive.sheets.put(SheetRecord::Removed(RemovedSheet {
            id: sheet,
            version: SheetVersion(id(n, 77)),
            written: time(n),
        }));
    }
    let text = write(&archive, time(0));
    assert_eq!(read(&text).unwrap(), archive);
    // With what is there it can still be imported into.
    assert!(import(archive, &write(&demo(), time(0))).is_ok());
}

#[test]
fn a_session_with_all_events_that_it_may_hold_is_read_back() {
    let log = session(0, demo().current_sheets()[0]);
    let mut events = log.as_events().to_vec();
    let last = events.last().unwrap().clone();
    let more = (1_000_000..).map(|n| Event {
        id: EventId(id(n, n)),
        what: What::Noted {
            set: None,
            text: Note::new("x").unwrap(),
        },
        ..last.clone()
    });
    events.extend(more.take(EVENTS_KEPT_MAX - log.event_count()));
    let mut archive = Archive::default();
    let full = SessionLog::new(log.id(), events).unwrap();
    archive.sessions.insert(log.id(), full);
    let text = write(&archive, time(0));
    assert_eq!(import(Archive::default(), &text).unwrap().archive, archive);
}

/// The whole of it, written and read back: `cargo test --profile bench --test core hundred_years:: -- --ignored --nocapture`.
#[test]
#[ignore = "takes a minute and gigabytes"]
fn all_of_it_is_written_and_read_back() {
    let archive = log_of(SESSIONS);
    let begun = std::time::Instant::now();
    let text = write(&archive, time(0));
    println!("{} bytes written in {:?}", text.len(), begun.elapsed());
    assert_eq!(check_size(text.len() as u64), Ok(()));
    let begun = std::time::Instant::now();
    let merged = import(Archive::default(), &text).unwrap();
    println!("imported in {:?}", begun.elapsed());
    assert!(merged.archive == archive);
}
