//! The sets as CSV, read back by a library that is not ours.

use crate::common;

use common::archives::archive;
use common::built::{block, done, events, key, reps, sets, work};
use common::id;
use proptest::prelude::*;
use rust_decimal::Decimal;
use stanchion::ledger::SessionRecord;
use stanchion::session::{Amount, SessionId};
use stanchion::sheet::{LoadBasis, SetKey, SetKind, SideMode};
use stanchion::store::{Archive, COLUMNS, SessionLog, csv as table};
use stanchion::units::{Load, Share};
use std::collections::BTreeMap;

/// The rows, each by the names of its columns.
fn read(text: &str) -> Vec<BTreeMap<String, String>> {
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let names: Vec<String> = reader
        .headers()
        .unwrap()
        .iter()
        .map(str::to_owned)
        .collect();
    assert_eq!(names, COLUMNS);
    let rows = reader.records().map(|row| {
        let row = row.unwrap();
        let cells = row.iter().map(str::to_owned);
        names.iter().cloned().zip(cells).collect()
    });
    rows.collect()
}

/// The text of a cell as it was before it was guarded.
fn unguarded(cell: &str) -> &str {
    match cell.strip_prefix('\'') {
        Some(text) if text.starts_with(['=', '+', '-', '@', '\t', '\r', '\n', '\'']) => text,
        _ => cell,
    }
}

fn parsed<T: std::str::FromStr>(cell: &str) -> Option<T> {
    (!cell.is_empty()).then(|| cell.parse().ok().expect("the cell reads"))
}

/// Every field that is quoted must be, no line ends but by CR LF, and every row has as many cells.
fn holds_to_rfc_4180(text: &str) {
    assert!(text.ends_with("\r\n"));
    let mut quoted = false;
    let mut before = ' ';
    for c in text.chars() {
        match c {
            '"' => quoted = !quoted,
            '\n' if !quoted => assert_eq!(before, '\r', "a line ends in CR LF"),
            _ => {}
        }
        before = c;
    }
    assert!(!quoted);
}

#[test]
fn a_set_is_one_row_with_its_units() {
    let squat = block(vec![work(2, 5, 8)], LoadBasis::External, SideMode::Both);
    let sets = [
        (key(0, 0), done(Some("45 lb"), Amount::Reps(reps(5)))),
        (key(0, 1), done(Some("62.5 kg"), Amount::Reps(reps(6)))),
    ];
    let mut archive = Archive::default();
    let session = SessionId(id(86_400_000, 1));
    let log = SessionLog::new(session, events(1, &squat, Some("80 kg"), &sets)).unwrap();
    archive.sessions.insert(session, log);
    let text = table(&archive);
    holds_to_rfc_4180(&text);
    let rows = read(&text);
    assert_eq!(rows.len(), 2);
    let first = &rows[0];
    let of = |name: &str| first[name].as_str();
    assert_eq!(of("date"), "2026-01-06T09:01:00+01:00");
    assert_eq!(of("sheet"), "Lower A");
    assert_eq!(of("exercise"), "Front squat");
    assert_eq!((of("block"), of("set"), of("drop")), ("1", "1", "0"));
    assert_eq!(
        (of("load"), of("load unit"), of("load kg")),
        ("45", "lb", "20.41165665")
    );
    assert_eq!(
        (of("load is"), of("kind"), of("sides")),
        ("moved", "work set", "both")
    );
    assert_eq!((of("reps"), of("seconds"), of("metres")), ("5", "", ""));
    assert_eq!((of("followed"), of("corrected")), ("", "no"));
    assert_eq!(of("body mass kg"), "80");
    assert_eq!(rows[1]["load kg"], "62.5");
}

#[test]
fn the_drops_of_a_set_have_its_number() {
    let drop_sets = sets(
        SetKind::Drop {
            drops: 2,
            keep: Share::percent(80),
        },
        3,
        work(1, 5, 8).target,
    );
    let squat = block(
        vec![work(1, 5, 8), drop_sets],
        LoadBasis::External,
        SideMode::Both,
    );
    // The second drop set was passed over, of the third one drop was left out.
    let keys = [
        (0, 0, 0),
        (1, 0, 0),
        (1, 0, 1),
        (1, 0, 2),
        (1, 2, 0),
        (1, 2, 2),
    ];
    let logged = keys.map(|(line, set, drop)| {
        let key = SetKey {
            drop,
            ..key(line, set)
        };
        (key, done(Some("60 kg"), Amount::Reps(reps(5))))
    });
    let mut archive = Archive::default();
    let session = SessionId(id(86_400_000, 1));
    let log = SessionLog::new(session, events(1, &squat, None, &logged)).unwrap();
    archive.sessions.insert(session, log);
    let rows = read(&table(&archive));
    let places: Vec<[&str; 3]> = rows
        .iter()
        .map(|row| ["kind", "set", "drop"].map(|name| row[name].as_str()))
        .collect();
    assert_eq!(
        places,
        [
            ["work set", "1", "0"],
            ["drop set", "2", "0"],
            ["drop set", "2", "1"],
            ["drop set", "2", "2"],
            ["drop set", "3", "0"],
            ["drop set", "3", "2"],
        ]
    );
}

#[test]
fn whether_a_proposal_was_followed_is_told() {
    let squat = block(vec![work(2, 5, 8)], LoadBasis::External, SideMode::Both);
    let sets = [
        (key(0, 0), done(Some("60 kg"), Amount::Reps(reps(5)))),
        (key(0, 1), done(Some("62.5 kg"), Amount::Reps(reps(5)))),
    ];
    let mut events = events(1, &squat, None, &sets);
    for event in &mut events {
        if let stanchion::session::What::SetDone { proposed, .. } = &mut event.what {
            *proposed = Some("60 kg".parse().unwrap());
        }
    }
    let mut archive = Archive::default();
    let session = SessionId(id(86_400_000, 1));
    archive
        .sessions
        .insert(session, SessionLog::new(session, events).unwrap());
    let rows = read(&table(&archive));
    let followed: Vec<&str> = rows.iter().map(|row| row["followed"].as_str()).collect();
    assert_eq!(followed, ["yes", "no"]);
    assert_eq!(rows[1]["proposed"], "60");
    // An apostrophe that guards nothing is the text's own.
    assert_eq!(unguarded("'s Gravenhage"), "'s Gravenhage");
}

#[test]
fn an_empty_log_is_the_row_of_names() {
    let text = table(&Archive::default());
    assert_eq!(text, format!("{}\r\n", COLUMNS.join(",")));
}

#[test]
fn no_text_begins_a_formula() {
    for bad in ["=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", "'=1", "''"] {
        let mut squat = block(vec![work(1, 5, 8)], LoadBasis::External, SideMode::Both);
        // A band's label is text of the lifter's own.
        let label = stanchion::sheet::Line::new(bad.trim());
        let Ok(label) = label else { continue };
        squat.basis = LoadBasis::Band(label.clone());
        let sets = [(key(0, 0), done(None, Amount::Reps(reps(5))))];
        let mut archive = Archive::default();
        let session = SessionId(id(86_400_000, 1));
        let log = SessionLog::new(session, events(1, &squat, None, &sets)).unwrap();
        archive.sessions.insert(session, log);
        let rows = read(&table(&archive));
        assert!(rows[0]["band"].starts_with('\''), "{bad}");
        assert_eq!(unguarded(&rows[0]["band"]), label.as_str());
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn there_are_as_many_rows_as_sets_and_they_read_back_equal(archive in archive()) {
        let text = table(&archive);
        holds_to_rfc_4180(&text);
        let rows = read(&text);
        let mut records: Vec<SessionRecord> = archive
            .sessions
            .values()
            .map(|log| SessionRecord::from_events(&log.events()).unwrap())
            .collect();
        records.sort_by_key(|record| (record.began, record.session));
        let sets: Vec<_> = records
            .iter()
            .flat_map(|record| record.lines().map(move |(block, line)| (record, block, line)))
            .collect();
        prop_assert_eq!(rows.len(), sets.len());
        for (row, (record, block, line)) in rows.iter().zip(sets) {
            let of = |name: &str| row[name].as_str();
            let load = |amount: &str, unit: &str| -> Option<Load> {
                (!of(amount).is_empty()).then(|| format!("{} {}", of(amount), of(unit)).parse().unwrap())
            };
            prop_assert_eq!(chrono::DateTime::parse_from_rfc3339(of("date")).unwrap(), line.at);
            prop_assert_eq!(unguarded(of("sheet")), record.sheet_name.as_str());
            prop_assert_eq!(unguarded(of("exercise")), block.exercise.name.as_str());
            prop_assert_eq!(of("kind"), line.kind.name());
            prop_assert_eq!(load("load", "load unit"), line.load);
            prop_assert_eq!(parsed::<Decimal>(of("load kg")), line.load.map(Load::kg));
            prop_assert_eq!(load("proposed", "proposed unit"), line.proposed);
            prop_assert_eq!(parsed::<u32>(of("rest taken s")), line.rest_taken);
            let (reps, other_side) = (parsed::<u32>(of("reps")), parsed::<u32>(of("other side reps")));
            if let Amount::Sides { first, second } = line.amount {
                prop_assert_eq!((reps, other_side), (Some(first.get().into()), Some(second.get().into())));
            } else {
                prop_assert_eq!((reps.unwrap_or(0), other_side), (line.amount.full_reps(), None));
            }
            prop_assert_eq!(of("corrected") == "yes", !line.earlier.is_empty());
            let note = line.note.as_ref().map_or("", |note| note.as_str());
            prop_assert_eq!(unguarded(of("note")), note);
            prop_assert_eq!(of("session id"), record.session.0.to_string());
            for cell in row.values() {
                prop_assert!(!cell.starts_with(['=', '+', '-', '@', '\t', '\r']), "{}", cell);
            }
        }
    }
}

/// The table that `tests/reference/sets.py` reads: three sessions of every kind of amount and both units.
#[test]
#[ignore = "writes a file for the script"]
fn writes_a_table_for_the_script() {
    let mut archive = Archive::default();
    for n in 1..=3_u64 {
        let mut squat = block(
            vec![work(4, 5, 8)],
            LoadBasis::External,
            SideMode::EachInTurn,
        );
        squat.exercise.name = stanchion::sheet::Line::new("=Squat, \"front\"").unwrap();
        let sets = [
            (key(0, 0), done(Some("45 lb"), Amount::Reps(reps(5)))),
            (key(0, 1), done(Some("62.5 kg"), Amount::Reps(reps(6)))),
            (
                key(0, 2),
                done(
                    Some("24 kg"),
                    Amount::Distance(stanchion::units::Metres::new(40).unwrap()),
                ),
            ),
            (
                key(0, 3),
                done(
                    None,
                    Amount::Timed(stanchion::units::Seconds::new(45).unwrap()),
                ),
            ),
        ];
        let session = SessionId(id(n * 86_400_000, n));
        let log = SessionLog::new(session, events(n, &squat, Some("80 kg"), &sets)).unwrap();
        archive.sessions.insert(session, log);
    }
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("target");
    std::fs::write(folder.join("sets.csv"), table(&archive)).unwrap();
}
