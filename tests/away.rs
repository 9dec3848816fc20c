//! In and away: an import that is undone, sessions that are removed, and what stands on disk after each.

use crate::common;

use common::archives::archive;
use common::built::{block, done, events, key, reps, work};
use common::events::{event, session_id};
use common::{id, time};
use proptest::prelude::*;
use stanchion::ledger::SessionRecord;
use stanchion::session::{Amount, Event, SessionId, What};
use stanchion::sheet::{LoadBasis, SideMode};
use stanchion::store::{Archive, Change, SessionLog, Shelf, Taken, changes, import, join, write};
use std::collections::BTreeMap;

fn text(archive: &Archive) -> String {
    write(archive, time(0))
}

fn taken(mine: &Archive, after: &Archive) -> Taken {
    let taken = Taken::between(
        mine,
        after,
        (id(9, 9), time(9), "14 sessions new".to_owned()),
    );
    // As it is kept on disk.
    let kept = stanchion::json::text(&taken);
    assert_eq!(stanchion::json::parse::<Taken>(&kept).unwrap(), taken);
    taken
}

/// The rows of a whole archive, as an empty disk takes them.
fn rows(archive: &Archive) -> BTreeMap<(Shelf, String), String> {
    let mut rows = BTreeMap::new();
    apply(&mut rows, changes(&Archive::default(), archive, None));
    rows
}

fn apply(rows: &mut BTreeMap<(Shelf, String), String>, changes: Vec<Change>) {
    for Change { shelf, key, json } in changes {
        match json {
            Some(json) => rows.insert((shelf, key), json),
            None => rows.remove(&(shelf, key)),
        };
    }
}

/// A session of three sets on one block, and what happened to it after.
fn log(n: u64, more: &[Event]) -> SessionLog {
    let squat = block(vec![work(3, 5, 8)], LoadBasis::External, SideMode::Both);
    let sets = [0, 1, 2].map(|set| (key(0, set), done(Some("60 kg"), Amount::Reps(reps(5)))));
    let mut all = events(n, &squat, None, &sets);
    all.extend(more.iter().cloned());
    SessionLog::new(SessionId(id(n * 86_400_000, n)), all).unwrap()
}

/// The first set of session `n`, corrected.
fn correction(n: u64, minutes: u64, count: i64) -> Event {
    let what = What::SetAmended {
        set: key(0, 0),
        done: done(Some("60 kg"), Amount::Reps(reps(count))),
    };
    event(n, n * 86_400_000 + minutes * 60_000, 1, what)
}

fn of(logs: &[SessionLog]) -> Archive {
    let mut archive = Archive::default();
    for log in logs {
        archive.sessions.insert(log.id(), log.clone());
    }
    archive
}

#[test]
fn two_corrections_of_one_set_are_both_kept_and_the_later_counts() {
    let here = of(&[log(1, &[correction(1, 30, 6)])]);
    let there = of(&[log(1, &[correction(1, 40, 7)])]);
    let merged = here.clone().merge(there.clone());
    assert_eq!(merged.summary.to_string(), "1 session corrected");
    assert_eq!(merged.archive, there.merge(here).archive);
    let log = merged.archive.sessions.values().next().unwrap();
    let record = SessionRecord::from_events(&log.events()).unwrap();
    let set = &record.blocks[0].lines[0];
    assert_eq!(set.amount, Amount::Reps(reps(7)));
    let earlier: Vec<u32> = set
        .earlier
        .iter()
        .map(|done| done.amount.full_reps())
        .collect();
    assert_eq!(earlier, [5, 6], "first logged, then corrected elsewhere");
}

#[test]
fn an_import_says_what_is_new_known_and_corrected() {
    let mine = of(&[log(1, &[]), log(2, &[]), log(3, &[]), log(4, &[])]);
    let mut theirs = of(&[
        log(1, &[]),
        log(2, &[]),
        log(3, &[]),
        log(4, &[correction(4, 30, 6)]),
    ]);
    let more: Vec<_> = (5..19).map(|n| log(n, &[])).collect();
    for (id, log) in of(&more).sessions {
        theirs.sessions.insert(id, log);
    }
    let merged = import(mine.clone(), &text(&theirs)).unwrap();
    assert_eq!(
        merged.summary.to_string(),
        "14 sessions new, 3 known, 1 corrected"
    );
    // Of what is taken back nothing is new.
    assert_eq!(
        taken(&mine, &merged.archive).undone(&merged.archive, &mine),
        "14 sessions, what was new in 1 session"
    );
    assert!(!merged.summary.is_nothing());
    let again = import(merged.archive, &text(&theirs)).unwrap();
    assert_eq!(again.summary.to_string(), "18 sessions known");
    assert!(again.summary.is_nothing());
}

#[test]
fn a_removed_session_stays_away_and_says_so() {
    let file = text(&of(&[log(1, &[]), log(2, &[])]));
    let mut mine = of(&[log(1, &[]), log(2, &[])]);
    mine.remove_session(log(1, &[]).id(), time(7));
    assert!(!text(&mine).contains("front-squat\", \"day 1"));
    let merged = import(mine.clone(), &file).unwrap();
    assert_eq!(merged.archive, mine);
    assert_eq!(
        merged.summary.to_string(),
        "1 session known, 1 left out, as removed here before"
    );
    // On the other phone it goes when it takes in our file, and comes back when that is undone.
    let other = of(&[log(1, &[]), log(2, &[])]);
    let merged = join(other.clone(), mine).unwrap();
    assert_eq!(merged.summary.to_string(), "1 session known, 1 removed");
    let back = taken(&other, &merged.archive)
        .take_back(merged.archive)
        .unwrap();
    assert_eq!(back, other);
}

#[test]
fn what_came_after_an_import_outlives_its_undo() {
    let mine = of(&[log(1, &[])]);
    let theirs = of(&[log(1, &[correction(1, 30, 6)]), log(2, &[])]);
    let merged = join(mine.clone(), theirs).unwrap();
    let taken = taken(&mine, &merged.archive);
    // Since then: a session, and a correction of the one that was here before.
    let now = join(
        merged.archive,
        of(&[log(1, &[correction(1, 50, 8)]), log(3, &[])]),
    )
    .unwrap();
    let back = taken.take_back(now.archive).unwrap();
    assert_eq!(back, of(&[log(1, &[correction(1, 50, 8)]), log(3, &[])]));
    // A session that was removed since stays so.
    let mut now = merged_again(&mine);
    now.remove_session(log(1, &[]).id(), time(8));
    let back = taken.take_back(now.clone()).unwrap();
    assert!(back.sessions.is_empty());
    assert_eq!(back.removed.len(), 1);
}

fn merged_again(mine: &Archive) -> Archive {
    join(
        mine.clone(),
        of(&[log(1, &[correction(1, 30, 6)]), log(2, &[])]),
    )
    .unwrap()
    .archive
}

#[test]
fn what_was_removed_here_is_left_out_and_counted() {
    let both = of(&[log(1, &[]), log(2, &[])]);
    let mut mine = both.clone();
    for n in [1, 2] {
        mine.remove_session(log(n, &[]).id(), time(8));
    }
    let merged = mine.merge(both.clone());
    assert_eq!(merged.summary.sessions_left_out, 2);
    assert!(merged.archive.sessions.is_empty());
    assert!(merged.news.sessions.is_empty());
    // Put back, it is there and stays in the next merge.
    let mut mine = of(&[log(1, &[])]);
    mine.remove_session(log(2, &[]).id(), time(8));
    assert_eq!((mine.sessions.len(), mine.removed.len()), (1, 1));
    assert_eq!(mine.merge(both).archive.sessions.len(), 1);
}

#[test]
fn a_removal_alone_is_something_new_and_keeps_an_older_file_out() {
    let older = of(&[log(1, &[]), log(2, &[])]);
    let mut theirs = Archive::default();
    theirs.remove_session(log(1, &[]).id(), time(8));
    let merged = import(Archive::default(), &text(&theirs)).unwrap();
    assert!(!merged.summary.is_nothing());
    assert_eq!(merged.summary.to_string(), "1 removal noted");
    let again = import(merged.archive.clone(), &text(&theirs)).unwrap();
    assert!(again.summary.is_nothing());
    assert_eq!(again.summary.to_string(), "nothing new");
    // In whichever order the files come.
    let one = import(merged.archive, &text(&older)).unwrap().archive;
    let both = import(older, &text(&theirs)).unwrap();
    assert_eq!(both.summary.to_string(), "1 session removed");
    assert_eq!(one, both.archive);
    assert_eq!(one.sessions.len(), 1);
}

#[test]
fn of_two_events_with_one_id_one_is_kept_everywhere_and_its_session_is_news() {
    let here = of(&[log(1, &[correction(1, 30, 6)])]);
    let there = of(&[log(1, &[correction(1, 30, 7)])]);
    let one = here.clone().merge(there.clone());
    let other = there.merge(here);
    assert_eq!(text(&one.archive), text(&other.archive));
    for merged in [&one, &other] {
        assert_eq!(merged.summary.conflicts.len(), 1);
        // Whoever gives up an event has a row to write.
        assert_eq!(merged.news.sessions.len(), merged.summary.sessions_changed);
    }
    let changed = [&one, &other].map(|merged| merged.summary.sessions_changed);
    assert_eq!(changed.iter().sum::<usize>(), 1, "{changed:?}");
}

#[test]
fn what_was_read_from_a_file_is_written_with_what_it_gained_since() {
    let both = of(&[log(1, &[]), log(2, &[])]);
    let corrected = of(&[log(1, &[correction(1, 30, 6)]), log(2, &[])]);
    let read = |archive: &Archive| import(Archive::default(), &text(archive)).unwrap().archive;
    assert_eq!(text(&read(&both)), text(&both));
    assert_eq!(
        text(&read(&both).merge(corrected.clone()).archive),
        text(&corrected)
    );
    assert_eq!(
        text(&both.clone().merge(read(&corrected)).archive),
        text(&corrected)
    );
    assert_eq!(
        text(&read(&corrected).merge(both).archive),
        text(&corrected)
    );
}

#[test]
fn events_out_of_order_in_a_file_are_written_in_order() {
    let whole = text(&of(&[log(1, &[])]));
    let mut lines: Vec<&str> = whole.lines().collect();
    let first = lines
        .iter()
        .position(|line| line.starts_with("    {\"id\""));
    let first = first.expect("an event is a line");
    lines.swap(first + 1, first + 2);
    let turned = lines.join("\n") + "\n";
    assert_ne!(turned, whole);
    let read = import(Archive::default(), &turned).unwrap().archive;
    assert_eq!(text(&read), whole);
    let mut events = log(1, &[]).events();
    assert_eq!(log(1, &[]).event_count(), events.len());
    events.reverse();
    assert_eq!(SessionLog::new(log(1, &[]).id(), events), Ok(log(1, &[])));
}

/// A beginning is never given up for another event with its id: a session without one cannot be shown.
#[test]
fn a_beginning_stays_whatever_bears_its_id() {
    let mine = log(1, &[]);
    let mut events = mine.events();
    let began = events[0].clone();
    // Theirs begins a little earlier, and has an end with the id of our beginning.
    events[0].id = stanchion::session::EventId(uuid::Uuid::from_u128(began.id.0.as_u128() - 1));
    events.truncate(1);
    events.push(Event {
        what: What::Ended,
        ..began.clone()
    });
    let theirs = SessionLog::new(mine.id(), events).unwrap();
    for (a, b) in [(&mine, &theirs), (&theirs, &mine)] {
        let merged = of(std::slice::from_ref(a))
            .merge(of(std::slice::from_ref(b)))
            .archive;
        let log = merged.sessions.values().next().unwrap();
        assert_eq!(log.event(began.id), Some(&began));
    }
}

#[test]
fn as_many_as_may_be_kept_can_be_imported_and_no_more() {
    let full = |removed: usize| {
        let mut archive = Archive::default();
        for n in 0..removed as u64 {
            archive.remove_session(SessionId(id(n, n)), time(0));
        }
        archive
    };
    let most = stanchion::store::SESSIONS_MAX;
    assert!(join(Archive::default(), full(most)).is_ok());
    let error = join(full(1), full(most + 1)).unwrap_err();
    assert!(error.to_string().contains("removed sessions"), "{error}");
}

#[test]
fn of_a_sheet_the_newest_version_is_current() {
    let squat = block(vec![work(3, 5, 8)], LoadBasis::External, SideMode::Both);
    let mut archive = Archive::default();
    assert!(archive.is_empty());
    for (version, name) in [(3000, "Lower A"), (3001, "Lower B")] {
        let mut sheet = common::built::sheet(squat.clone());
        sheet.version = stanchion::sheet::SheetVersion(id(version, 3));
        sheet.name = stanchion::sheet::Line::new(name).unwrap();
        archive
            .sheets
            .put(stanchion::store::SheetRecord::Written(Box::new(sheet)));
    }
    assert!(!archive.is_empty());
    let current: Vec<&str> = archive
        .current_sheets()
        .iter()
        .map(|sheet| sheet.name.as_str())
        .collect();
    assert_eq!(current, ["Lower B"]);
}

#[test]
fn the_session_on_the_floor_is_changed_event_by_event() {
    let mine = of(&[log(1, &[])]);
    let after = merged_again(&mine);
    let running = Some(log(1, &[]).id());
    let rows = changes(&mine, &after, running);
    let shelves: Vec<Shelf> = rows.iter().map(|change| change.shelf).collect();
    assert_eq!(shelves, [Shelf::Events, Shelf::Sessions]);
    let back = changes(&after, &mine, running);
    assert!(back.iter().all(|change| change.json.is_none()));
    assert_eq!(back.len(), 2);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn an_import_undone_is_as_if_it_had_not_been(a in archive(), b in archive()) {
        let merged = a.clone().merge(b);
        let back = taken(&a, &merged.archive).take_back(merged.archive).unwrap();
        prop_assert_eq!(text(&back), text(&a));
    }

    #[test]
    fn the_changed_rows_make_one_of_the_other(a in archive(), b in archive()) {
        let merged = a.clone().merge(b).archive;
        let mut disk = rows(&a);
        apply(&mut disk, changes(&a, &merged, None));
        prop_assert_eq!(&disk, &rows(&merged));
        apply(&mut disk, changes(&merged, &a, None));
        prop_assert_eq!(&disk, &rows(&a));
        prop_assert!(changes(&a, &a, None).is_empty());
    }

    /// Counted in the archive, not by the rows themselves: each record that is kept has a row of its own.
    #[test]
    fn every_record_has_its_row(a in archive()) {
        let rows = rows(&a);
        let of = |shelf| rows.keys().filter(|(on, _)| *on == shelf).count();
        prop_assert_eq!(of(Shelf::Lifters), a.lifter.len());
        prop_assert_eq!(of(Shelf::Kits), a.kit.len());
        prop_assert_eq!(of(Shelf::BodyMass), a.body_mass.len());
        prop_assert_eq!(of(Shelf::Body), a.body.len());
        prop_assert_eq!(of(Shelf::Exercises), a.exercises.len());
        prop_assert_eq!(of(Shelf::Programmes), a.programmes.len());
        prop_assert_eq!(of(Shelf::Sheets), a.sheets.len());
        prop_assert_eq!(of(Shelf::Removed), a.removed.len());
        prop_assert_eq!(of(Shelf::Sessions), a.sessions.len());
        for kit in a.kit.iter() {
            let row = &rows[&(Shelf::Kits, kit.version.to_string())];
            prop_assert!(row.contains(&kit.version.to_string()));
        }
        for lifter in a.lifter.iter() {
            let key = (Shelf::Lifters, lifter.version.to_string());
            prop_assert!(rows.contains_key(&key));
        }
    }

    #[test]
    fn a_removed_session_is_removed_in_every_order(a in archive(), b in archive(), n in 0..3_u64) {
        let mut without = a.clone();
        without.remove_session(session_id(n), time(1));
        let one = without.clone().merge(b.clone()).archive;
        let other = b.merge(without).archive;
        prop_assert_eq!(text(&one), text(&other));
        prop_assert!(!one.sessions.contains_key(&session_id(n)));
    }
}
