//! Spoiled rows and files: what can be read is read, the rest comes out as it is, and nothing ever panics.

use crate::common;

use common::archives::archive;
use common::events::session;
use common::time;
use proptest::prelude::*;
use proptest::sample::Index;
use stanchion::json::text;
use stanchion::session::{Event, Session};
use stanchion::store::{Archive, Shelf, Shelved, import, read, seal, shelved, write};

/// Changes one byte of a text; none where it is no text any more, which no database gives back as one.
fn flipped(text: &str, place: Index, flip: u8) -> Option<String> {
    let mut bytes = text.as_bytes().to_vec();
    let place = place.index(bytes.len());
    bytes[place] ^= flip;
    String::from_utf8(bytes).ok()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn a_spoiled_row_costs_no_other_row(
        events in session(0),
        spoils in proptest::collection::vec((any::<Index>(), any::<Index>(), 1..=255_u8), 0..6),
    ) {
        let mut rows: Vec<(String, String)> = events
            .iter()
            .map(|event| (event.id.0.to_string(), seal(&text(event))))
            .collect();
        let whole = rows.clone();
        for (which, place, flip) in spoils {
            let row = &mut rows[which.index(whole.len())].1;
            if let Some(spoiled) = flipped(row, place, flip) {
                *row = spoiled;
            }
        }
        // Two flips of the same bit are none.
        let (good, bad): (Vec<_>, Vec<_>) = rows.iter().zip(&whole).partition(|(now, then)| now == then);
        let found: Shelved<Event> = shelved(rows.clone());
        let kept: Vec<String> = found.records.iter().map(|event| event.id.0.to_string()).collect();
        let wanted: Vec<String> = good.iter().map(|(row, _)| row.0.clone()).collect();
        prop_assert_eq!(kept, wanted);
        for ((now, _), unreadable) in bad.iter().zip(&found.unreadable) {
            prop_assert_eq!(&now.0, &unreadable.key);
            prop_assert_eq!(&now.1, &unreadable.row);
            // The line of the file holds the row to its last byte.
            let line = unreadable.line(Shelf::Events);
            prop_assert!(line.ends_with(&format!(" {}", now.1)), "{}", line);
        }
        prop_assert_eq!(found.unreadable.len(), bad.len());
        // What is left can be looked at, with or without its beginning.
        let _ = Session::replay(found.records);
    }

    #[test]
    fn a_spoiled_file_is_refused_in_words_or_read_and_never_half(
        mine in archive(), file in archive(), place in any::<Index>(), flip in 1..=255_u8
    ) {
        let before = write(&mine, time(0));
        let Some(spoiled) = flipped(&write(&file, time(0)), place, flip) else {
            return Ok(());
        };
        match import(mine.clone(), &spoiled) {
            Err(why) => {
                prop_assert!(!why.to_string().is_empty());
                prop_assert_eq!(read(&spoiled).is_ok(), false);
            }
            // A digit may have become another digit. Nothing that was there is changed by it, but for a session that the
            // file now says was removed.
            Ok(merged) => {
                for (id, log) in &mine.sessions {
                    if merged.archive.removed.get(*id).is_some() {
                        continue;
                    }
                    let kept = merged.archive.sessions.get(id).unwrap().events();
                    prop_assert!(log.events().iter().all(|event| kept.iter().any(|other| other.id == event.id)));
                }
            }
        }
        prop_assert_eq!(write(&mine, time(0)), before);
    }

    #[test]
    fn any_bytes_at_all_are_refused_and_never_panic(bytes in proptest::collection::vec(any::<u8>(), 0..200)) {
        let noise = String::from_utf8_lossy(&bytes).into_owned();
        prop_assert!(import(Archive::default(), &noise).is_err());
        let found: Shelved<Event> = shelved(vec![("key".to_owned(), noise.clone())]);
        prop_assert_eq!(found.records.len(), 0);
        prop_assert_eq!(&found.unreadable[0].row, &noise);
    }
}

#[test]
fn what_a_newer_version_wrote_is_told_apart_from_what_is_spoiled() {
    let rows = [
        ("form", "2 00000000 {}".to_owned()),
        ("content", seal(r#"{"a field": "of tomorrow"}"#)),
        ("spoiled", "1 00000000 {}".to_owned()),
        ("nothing", String::new()),
    ];
    let rows = rows.map(|(key, row)| (key.to_owned(), row)).to_vec();
    let found: Shelved<Event> = shelved(rows);
    let newer: Vec<bool> = found.unreadable.iter().map(|row| row.newer).collect();
    assert_eq!(newer, [true, true, false, false]);
}
