//! Properties that hold for random sheets, sessions and archives.

use crate::common;

use common::archives::archive;
use common::events::{event, session};
use common::{schema, time};
use proptest::prelude::*;
use stanchion::json::parse;
use stanchion::ledger::SessionRecord;
use stanchion::session::{Event, What, effective};
use stanchion::store::{Archive, Kept, Record, SessionLog, import, open, read, seal, write};

/// The text of an archive, its time of writing fixed: equal texts are equal to the last digit.
fn text(archive: &Archive) -> String {
    write(archive, time(0))
}

fn merged(a: &Archive, b: &Archive) -> Archive {
    a.clone().merge(b.clone()).archive
}

fn owned(events: Vec<&Event>) -> Vec<Event> {
    events.into_iter().cloned().collect()
}

/// Puts into `news` what is in `old` under ids that are not there.
fn fill<R: Record + Clone>(news: &mut Kept<R>, old: &Kept<R>) {
    for record in old.iter() {
        if news.get(record.id()).is_none() {
            news.put(record.clone());
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn what_is_exported_is_imported_the_same(archive in archive()) {
        let again = read(&text(&archive)).unwrap();
        prop_assert_eq!(text(&again), text(&archive));
        prop_assert_eq!(&again, &archive);
        for log in archive.sessions.values() {
            prop_assert_eq!(&parse::<SessionLog>(&log.to_json()).unwrap(), log);
        }
    }

    #[test]
    fn what_is_exported_fits_the_schema(archive in archive()) {
        let value = serde_json::from_str(&text(&archive)).unwrap();
        if let Err(error) = schema().validate(&value) {
            prop_assert!(false, "{}: {}", error.instance_path(), error);
        }
    }

    #[test]
    fn merging_is_idempotent(a in archive(), b in archive()) {
        let once = merged(&a, &b);
        prop_assert_eq!(text(&merged(&once, &b)), text(&once));
        prop_assert_eq!(text(&merged(&a, &a)), text(&a));
    }

    #[test]
    fn merging_is_commutative(a in archive(), b in archive()) {
        prop_assert_eq!(text(&merged(&a, &b)), text(&merged(&b, &a)));
    }

    #[test]
    fn merging_is_associative(a in archive(), b in archive(), c in archive()) {
        let left = merged(&merged(&a, &b), &c);
        let right = merged(&a, &merged(&b, &c));
        prop_assert_eq!(text(&left), text(&right));
    }

    #[test]
    fn importing_twice_is_importing_once(a in archive(), b in archive()) {
        let file = text(&b);
        let once = import(a, &file).unwrap();
        let twice = import(once.archive.clone(), &file).unwrap();
        prop_assert_eq!(text(&twice.archive), text(&once.archive));
        prop_assert!(twice.news.is_empty());
        prop_assert_eq!(twice.summary.sessions_new, 0);
        prop_assert_eq!(twice.summary.events_new, 0);
    }

    #[test]
    fn the_news_are_all_that_an_import_changes(a in archive(), b in archive()) {
        let outcome = a.clone().merge(b);
        // Writing the news over what was there, id by id, gives the whole.
        let mut written = outcome.news.clone();
        fill(&mut written.lifter, &a.lifter);
        fill(&mut written.kit, &a.kit);
        fill(&mut written.body_mass, &a.body_mass);
        fill(&mut written.body, &a.body);
        fill(&mut written.exercises, &a.exercises);
        fill(&mut written.sheets, &a.sheets);
        fill(&mut written.programmes, &a.programmes);
        fill(&mut written.removed, &a.removed);
        for (id, log) in a.sessions {
            written.sessions.or_insert_with(id, || log);
        }
        written.settle();
        prop_assert_eq!(text(&written), text(&outcome.archive));
    }

    #[test]
    fn a_record_dropped_for_another_is_told(a in archive(), b in archive()) {
        let outcome = a.clone().merge(b.clone());
        let whole = text(&outcome.archive);
        for record in a.sheets.iter().chain(b.sheets.iter()) {
            let json = serde_json::to_string(record).unwrap();
            let kept = outcome.archive.sheets.get((record.sheet_id(), record.version())).unwrap();
            let told = outcome.summary.conflicts.iter().any(|conflict| conflict.dropped == json);
            prop_assert!(told || serde_json::to_string(kept).unwrap() == json, "{}", whole);
        }
    }

    #[test]
    fn undo_after_do_is_as_if_nothing_had_been_done(events in session(0), rpe in 0..=10_i64) {
        let after = 40 * 300_001;
        let what = What::Rated { rpe: stanchion::units::Rpe::new(rpe).unwrap() };
        let done = event(1, after, 99, what);
        let undone = event(1, after + 1, 99, What::Undone { event: done.id });
        let redone = event(1, after + 2, 99, What::Undone { event: undone.id });
        let before = owned(effective(&events));
        let mut more = events;
        more.push(done);
        let with = owned(effective(&more));
        more.push(undone);
        prop_assert_eq!(owned(effective(&more)), before);
        more.push(redone);
        prop_assert_eq!(owned(effective(&more)), with);
    }

    #[test]
    fn the_order_in_which_events_come_does_not_matter(
        (events, shuffled) in session(0).prop_flat_map(|events| (Just(events.clone()), Just(events).prop_shuffle()))
    ) {
        prop_assert_eq!(owned(effective(&events)), owned(effective(&shuffled)));
        prop_assert_eq!(SessionRecord::from_events(&events), SessionRecord::from_events(&shuffled));
    }

    #[test]
    fn a_row_survives_and_no_changed_byte_goes_unseen(
        text in "\\PC{0,60}", place in any::<proptest::sample::Index>(), flip in 1..=255_u8
    ) {
        let row = seal(&text);
        prop_assert_eq!(open(&row), Ok(text.as_str()));
        let mut bytes = row.into_bytes();
        let place = place.index(bytes.len());
        bytes[place] ^= flip;
        // Bytes that are no text are refused before they come here.
        if let Ok(changed) = String::from_utf8(bytes) {
            prop_assert!(open(&changed).is_err(), "{}", changed);
        }
    }
}
