//! Files that must be read for ever, and what they say.

use crate::common;

use chrono::DateTime;
use common::schema;
use serde_json::{Value, json};
use stanchion::kit::Kit;
use stanchion::ledger::{Heading, SessionRecord, Volume};
use stanchion::session::State;
use stanchion::sheet::{LoadBasis, LoadPolicy, Progression, SetKind, SideMode, Stage, Target};
use stanchion::store::{Archive, BodyEntry, FormatVersion, demo, import, read, write};
use stanchion::strength::Curve;
use stanchion::units::Unit;
use std::collections::BTreeSet;

const GOLDEN: &str = include_str!("golden/v1.json");
/// Exercises of one's own, programmes, and a session of a light week.
const OWN: &str = include_str!("golden/v1-own.json");
/// A set stopped in the middle, sides with reps of their own.
const HANDS: &str = include_str!("golden/v1-hands.json");
/// A body mass that was corrected, one that was removed, a measure of one's own.
const BODY: &str = include_str!("golden/v1-body.json");
const DEMO: &str = include_str!("../assets/demo/boathouse.json");

fn value(text: &str) -> Value {
    serde_json::from_str(text).unwrap()
}

/// The file written again, with the time it was written at first.
fn again(text: &str) -> String {
    let written = value(text)["written"].as_str().unwrap().parse().unwrap();
    write(&read(text).unwrap(), written)
}

fn record() -> SessionRecord {
    let archive = read(GOLDEN).unwrap();
    let log = archive.sessions.values().next().unwrap();
    SessionRecord::from_events(&log.events()).unwrap()
}

#[test]
fn the_files_are_written_as_they_were_read() {
    assert_eq!(again(GOLDEN), GOLDEN);
    assert_eq!(again(OWN), OWN);
    assert_eq!(again(HANDS), HANDS);
    assert_eq!(again(BODY), BODY);
    assert_eq!(again(DEMO), DEMO);
}

/// Files and rows of older versions may say a budget of 0 min. It is none, and a week does not count it.
#[test]
fn a_budget_of_no_time_is_read_as_none() {
    let budget = "\"budget_minutes\": 45";
    assert!(GOLDEN.contains(budget));
    let text = GOLDEN.replace("\"budget_minutes\":45", "\"budget_minutes\":0");
    let text = text.replace(budget, "\"budget_minutes\": 0");
    let archive = read(&text).unwrap();
    for record in archive.sheets.iter() {
        assert!(
            !serde_json::to_string(record)
                .unwrap()
                .contains("budget_minutes")
        );
    }
    let log = archive.sessions.values().next().unwrap();
    let record = SessionRecord::from_events(&log.events()).unwrap();
    assert_eq!(record.budget_minutes, None);

    let mut row = serde_json::to_value(Heading::of(&record, &[])).unwrap();
    row["budget_minutes"] = 0.into();
    let heading: Heading = serde_json::from_value(row).unwrap();
    assert_eq!(heading.budget_minutes, None);
}

#[test]
fn the_files_fit_the_schema() {
    for text in [GOLDEN, OWN, HANDS, BODY, DEMO] {
        let errors: Vec<String> = schema()
            .iter_errors(&value(text))
            .map(|error| format!("{}: {error}", error.instance_path()))
            .collect();
        assert!(errors.is_empty(), "{errors:#?}");
    }
}

#[test]
fn the_schema_is_of_the_draft_it_names_and_describes_every_field() {
    let text = include_str!("../assets/stanchion-1.schema.json");
    assert!(jsonschema::meta::is_valid(&value(text)));
    assert_eq!(
        value(text)["properties"]["version"]["const"],
        FormatVersion::CURRENT.number()
    );
    let mut missing = Vec::new();
    undescribed(&value(text), "", &mut missing);
    assert!(missing.is_empty(), "no description: {missing:#?}");
}

/// Collects every property of the schema that has no description and refers to none, and every open object.
fn undescribed(schema: &Value, place: &str, missing: &mut Vec<String>) {
    if let Some(properties) = schema["properties"].as_object() {
        if schema["type"] == "object" && schema["additionalProperties"] != false {
            missing.push(format!("{place} is open"));
        }
        for (name, property) in properties {
            let told = property["description"].is_string() || property["$ref"].is_string();
            let condition = place.ends_with("/if") || place.ends_with("/then");
            if !told && !condition {
                missing.push(format!("{place}/{name}"));
            }
        }
    }
    match schema {
        Value::Object(fields) => {
            for (name, field) in fields {
                undescribed(field, &format!("{place}/{name}"), missing);
            }
        }
        Value::Array(entries) => {
            for (index, entry) in entries.iter().enumerate() {
                undescribed(entry, &format!("{place}/{index}"), missing);
            }
        }
        _ => {}
    }
}

#[test]
fn the_golden_files_hold_every_kind_of_event() {
    let files = [value(GOLDEN), value(HANDS)];
    let events = files
        .iter()
        .flat_map(|file| file["sessions"][0]["events"].as_array().unwrap());
    let kinds: BTreeSet<&str> = events
        .map(|event| match &event["what"] {
            Value::String(name) => name.as_str(),
            what => what.as_object().unwrap().keys().next().unwrap(),
        })
        .collect();
    let schema = value(include_str!("../assets/stanchion-1.schema.json"));
    let known = schema["$defs"]["what"]["oneOf"].as_array().unwrap();
    let known: BTreeSet<&str> = known
        .iter()
        .map(|kind| match kind["const"].as_str() {
            Some(name) => name,
            None => kind["required"][0].as_str().unwrap(),
        })
        .collect();
    assert_eq!(kinds, known);
}

#[test]
fn the_golden_session_reads_as_it_went() {
    let record = record();
    let heading = Heading::of(&record, &[]);
    assert_eq!(heading.sheet.as_str(), "Lower A");
    assert_eq!(heading.sets_done, 9);
    assert_eq!(heading.minutes, 12);
    assert_eq!(record.duration_ms, 730_000);
    assert_eq!(heading.rpe.unwrap().get(), 7);
    assert_eq!(record.skipped, 1);
    assert_eq!(record.note.as_ref().unwrap().as_str(), "Cold boathouse.");
    // Front squat 65 × 6 + 67.5 × 6, raise 4 × 6 on two sides, curl 20 × 10 + 15 × 4, push-up 15 × 0.64 × 80.
    let volume = Volume::of(&record);
    assert_eq!(volume.work.to_string(), "1871 kg");
    assert_eq!(volume.ramp_up.to_string(), "125 kg");
    assert_eq!(volume.unknown, 0);
    let lines = &record.blocks[0].lines;
    assert_eq!(lines.len(), 3);
    assert_eq!(lines[1].rest_taken, Some(80));
    assert_eq!(lines[1].proposed, Some("62.5 kg".parse().unwrap()));
    assert_eq!(lines[2].earlier[0].amount.full_reps(), 5);
    assert_eq!(lines[2].amount.full_reps(), 6);
}

/// The body mass at that time: the last one taken until then.
fn mass_at(archive: &Archive, when: &str) -> Option<String> {
    let when = DateTime::parse_from_rfc3339(when).unwrap();
    let entries = archive.body_entries();
    let until = entries.iter().rev().filter(|entry| entry.at <= when);
    Some(until.filter_map(BodyEntry::mass).next()?.to_string())
}

#[test]
fn the_golden_records_are_what_counts_now() {
    let archive = read(GOLDEN).unwrap();
    let sheets = archive.current_sheets();
    assert_eq!(sheets.len(), 1, "the other was removed");
    assert!(archive.lifter.newest().unwrap().welcomed);
    for (when, mass) in [
        ("2026-01-05T10:00:00+01:00", Some("176.4 lb")),
        ("2026-01-05T09:00:07.500+01:00", Some("80 kg")),
        ("2026-01-05T08:00:00+01:00", None),
    ] {
        assert_eq!(mass_at(&archive, when).as_deref(), mass);
    }
}

#[test]
fn what_was_corrected_counts_and_what_was_removed_is_gone() {
    let archive = read(BODY).unwrap();
    let entries = archive.body_entries();
    assert_eq!(entries.len(), 2);
    let late = "2026-02-01T00:00:00+01:00";
    assert_eq!(mass_at(&archive, late).as_deref(), Some("82.4 kg"));
    // Whichever side has the correction, and in whatever order they come together.
    let mut plain = archive.clone();
    plain.body = stanchion::store::Kept::default();
    for (mine, theirs) in [(plain.clone(), archive.clone()), (archive.clone(), plain)] {
        assert_eq!(mine.merge(theirs).archive.body_entries(), entries);
    }
}

#[test]
fn an_import_says_what_it_did() {
    let said = |mine: Archive, text: &str| import(mine, text).unwrap().summary.to_string();
    let golden = read(GOLDEN).unwrap();
    assert_eq!(
        said(Archive::default(), GOLDEN),
        "1 session new, 1 sheet new, the kit, the settings, 2 body masses new, 1 removal noted"
    );
    assert_eq!(
        said(golden.clone(), GOLDEN),
        "1 session known, 1 sheet known"
    );
    assert_eq!(
        said(golden.clone(), DEMO),
        "1 sheet new, 1 with older versions"
    );
    // Of one sheet in two versions it says one sheet, of one that goes that it goes.
    let mut twice = value(GOLDEN);
    let sheets = twice["sheets"].as_array_mut().unwrap();
    let mut other = sheets[0].clone();
    other["version"] = "019b8d2b-93d5-7fff-8000-000000000000".into();
    let gone = json!({"format": "stanchion", "version": 1, "sheets": [{
        "id": other["id"], "version": other["version"], "written": other["written"], "removed": true,
    }]});
    sheets.push(other);
    let twice = twice.to_string();
    assert_eq!(said(golden.clone(), &gone.to_string()), "1 sheet removed");
    assert!(said(Archive::default(), &twice).starts_with("1 session new, 1 sheet new, the kit"));
    assert_eq!(
        said(golden.clone(), &twice),
        "1 session known, 1 sheet changed"
    );
    assert_eq!(
        said(golden.clone(), "{\"format\":\"stanchion\",\"version\":1}"),
        "nothing new"
    );
    let mut short = value(GOLDEN);
    let events = short["sessions"][0]["events"].as_array_mut().unwrap();
    events.truncate(events.len() - 2);
    let short = read(&short.to_string()).unwrap();
    assert_eq!(said(short, GOLDEN), "1 session corrected, 1 sheet known");
}

#[test]
fn the_golden_exercises_and_programmes_are_what_counts_now() {
    let archive = read(OWN).unwrap();
    let known = archive.catalogue();
    let names: Vec<&str> = known.own().iter().map(|own| own.name.as_str()).collect();
    assert_eq!(names, ["Boat pull", "Deep squat"], "the hold was removed");
    assert_eq!(
        known.find("Back squat").unwrap().name.as_str(),
        "Deep squat"
    );
    assert_eq!(known.find("Plank").unwrap().name.as_str(), "Plank");
    let programmes = archive.current_programmes();
    assert_eq!(programmes.len(), 1, "the other was removed");
    assert_eq!(programmes[0].name.as_str(), "Winter");
    let at = |text: &str| text.parse().unwrap();
    assert!(
        programmes[0]
            .light_now(at("2026-01-28T18:00:00+01:00"))
            .is_some()
    );
    assert!(
        programmes[0]
            .light_now(at("2026-02-02T18:00:00+01:00"))
            .is_none()
    );
    let lifter = archive.lifter.newest().unwrap();
    assert_eq!(lifter.curve, Curve::Wathan);
    let merged = import(Archive::default(), OWN).unwrap();
    assert_eq!(
        merged.summary.to_string(),
        "1 session new, 2 exercises new, 1 programme new, the settings, 2 removals noted"
    );
}

#[test]
fn the_golden_light_session_says_nothing_of_the_next_load() {
    let archive = read(OWN).unwrap();
    let log = archive.sessions.values().next().unwrap();
    let record = SessionRecord::from_events(&log.events()).unwrap();
    assert!(record.light);
    let state = State::fold(&log.events()).unwrap();
    assert_eq!(state.began.curve, Curve::Wathan);
    assert_eq!(Heading::of(&record, &[]).sets_done, 1);
    let summaries = stanchion::ledger::summaries_of([&record]);
    assert!(
        summaries
            .values()
            .all(|known| known.performances.is_empty())
    );
}

#[test]
fn a_conflict_is_told_and_either_side_keeps_the_same() {
    let golden = read(GOLDEN).unwrap();
    let other = GOLDEN.replacen("\"mass\": \"80 kg\"", "\"mass\": \"79 kg\"", 1);
    let one = import(golden, &other).unwrap();
    let two = import(read(&other).unwrap(), GOLDEN).unwrap();
    assert_eq!(one.archive, two.archive);
    for merged in [&one, &two] {
        let conflict = &merged.summary.conflicts[0];
        assert_eq!(conflict.what, "body mass");
        assert!(conflict.dropped.contains("80 kg"));
        let said = merged.summary.to_string();
        assert!(said.contains("1 entry differs here and in the file: one of both stays"));
    }
    assert_eq!((one.news.body_mass.len(), two.news.body_mass.len()), (1, 0));
}

#[test]
fn the_demo_holds_the_two_sheets_with_all_that_they_promise() {
    let archive = demo();
    let sheets = archive.current_sheets();
    let names: Vec<&str> = sheets.iter().map(|sheet| sheet.name.as_str()).collect();
    assert_eq!(names, ["Lower A", "Upper B"]);
    let blocks: Vec<_> = sheets.iter().flat_map(|sheet| sheet.blocks()).collect();
    let lines = || {
        blocks
            .iter()
            .flat_map(|block| block.sets.iter().map(move |sets| (block, sets)))
    };
    assert!(lines().any(|(_, sets)| matches!(sets.kind, SetKind::RampUp { .. })));
    assert!(lines().any(|(_, sets)| sets.kind == SetKind::ToFailure));
    assert!(lines().any(|(block, sets)| {
        matches!(sets.load, LoadPolicy::RisingByOutcome { .. })
            && matches!(block.progression, Progression::Double { .. })
    }));
    assert!(lines().any(|(_, sets)| match &sets.target {
        Target::Stages(stages) => matches!(
            stages[..],
            [
                Stage::Hold { .. },
                Stage::Reps { .. },
                Stage::Partials { .. }
            ]
        ),
        _ => false,
    }));
    assert!(blocks.iter().any(|block| block.sides == SideMode::OneHolds));
    assert!(blocks.iter().any(|block| {
        block.basis == LoadBasis::BodyMassPlus
            && block
                .tempo
                .is_some_and(|tempo| tempo.eccentric.seconds() >= 4)
    }));
    assert!(
        sheets
            .iter()
            .any(|sheet| sheet.groups.iter().any(|group| group.blocks().len() == 2))
    );
    for sheet in sheets {
        assert!((5..=6).contains(&sheet.blocks().count()));
    }
}

#[test]
fn every_load_to_start_from_can_be_made_of_the_starter_kit() {
    let kit = Kit::starter(Unit::Kg);
    for sheet in demo().current_sheets() {
        for block in sheet.blocks() {
            if let Some(start) = block.start {
                assert!(
                    kit.choices(block.exercise.equipment).contains(start),
                    "{}: {start}",
                    block.exercise.name.as_str()
                );
            }
        }
    }
}

#[test]
fn the_demo_has_its_ids_from_the_clock_and_each_once() {
    let mut seen = BTreeSet::new();
    for sheet in demo().current_sheets() {
        let blocks = sheet.blocks().map(|block| block.id.0);
        for id in blocks.chain([sheet.id.0, sheet.version.0]) {
            assert_eq!(id.get_version_num(), 7);
            assert_eq!(id.get_variant(), uuid::Variant::RFC4122);
            assert!(seen.insert(id), "{id} twice");
        }
    }
}
