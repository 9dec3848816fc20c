//! Bad files: each is refused with a sentence that names the place in the file and what is allowed.

use crate::common;

use common::schema;
use serde_json::Value;
use stanchion::store::{Archive, FILE_BYTES_MAX, ReadError, check_size, import, read};

const DEMO: &str = include_str!("../assets/demo/boathouse.json");
const GOLDEN: &str = include_str!("golden/v1.json");
const OWN: &str = include_str!("golden/v1-own.json");

/// What is said of `text`.
fn said(text: &str) -> String {
    let refused = read(text).unwrap_err();
    // An import of it changes nothing either.
    assert_eq!(import(Archive::default(), text).unwrap_err(), refused);
    refused.to_string()
}

/// What is said of the file with the first `old` replaced by `new`. The schema must refuse it too.
fn said_with(file: &str, old: &str, new: &str) -> String {
    assert!(file.contains(old), "the file has no {old}");
    let broken = file.replacen(old, new, 1);
    let value: Value = serde_json::from_str(&broken).unwrap();
    assert!(!schema().is_valid(&value), "the schema lets {new} pass");
    said(&broken)
}

#[test]
fn what_is_no_json_is_refused_with_its_place() {
    assert_eq!(
        said("{\"format\": \"stanchion\",\n  version: 1}"),
        "the file is not JSON: line 2, column 3: key must be a string"
    );
    assert_eq!(
        said(""),
        "the file is not JSON: choose the export whose name ends in .json; a .csv is for spreadsheets"
    );
    let cut = &DEMO[..DEMO.len() / 2];
    assert!(
        said(cut).starts_with("the file is not JSON: line "),
        "{}",
        said(cut)
    );
}

#[test]
fn what_is_not_ours_is_refused() {
    let ours =
        "this is no file of Stanchion: it must be a JSON object with \"format\": \"stanchion\"";
    for text in [
        "[]",
        "12",
        "null",
        "{}",
        "{\"format\": 1}",
        "{\"format\": \"other\", \"version\": 1}",
    ] {
        assert_eq!(said(text), ours, "{text}");
    }
}

#[test]
fn other_versions_are_refused_and_say_which() {
    assert_eq!(
        said_with(DEMO, "\"version\": 1,", "\"version\": 2,"),
        "version: the file has version 2, this app reads versions up to 1: update the app, then try again"
    );
    for version in ["0", "-1", "1.5", "\"1\"", "null"] {
        let new = format!("\"version\": {version},");
        assert_eq!(
            said_with(DEMO, "\"version\": 1,", &new),
            "version: must be a whole number from 1 to 1"
        );
    }
}

#[test]
fn a_newer_version_is_told_whatever_else_is_new_in_it() {
    let text = "{\"format\": \"stanchion\", \"version\": 9, \"sheets\": {\"new\": [[[[]]]]}}";
    assert!(said(text).contains("has version 9"));
}

#[test]
fn a_file_too_large_is_refused_before_it_is_read() {
    assert_eq!(check_size(FILE_BYTES_MAX), Ok(()));
    let refused = check_size(FILE_BYTES_MAX + 1).unwrap_err();
    assert_eq!(
        refused.to_string(),
        "the file has 536870913 bytes, at most 536870912 (512 MiB) can be read"
    );
    let padded = format!("{DEMO}{}", " ".repeat(512 * 1024 * 1024));
    assert!(matches!(read(&padded), Err(ReadError::TooLarge { .. })));
}

#[test]
fn a_negative_load_is_refused() {
    assert_eq!(
        said_with(DEMO, "\"start\": \"15 kg\"", "\"start\": \"-15 kg\""),
        "sheets[0].groups[0].straight.start (line 43, column 16): -15 kg is below zero: a load is 0 to 2000 kg (4409 lb)"
    );
}

#[test]
fn an_unknown_unit_is_refused() {
    assert_eq!(
        said_with(DEMO, "\"start\": \"15 kg\"", "\"start\": \"2 stone\""),
        "sheets[0].groups[0].straight.start (line 43, column 16): “2 stone” has no known unit: write kg or lb behind the number"
    );
    assert_eq!(
        said_with(GOLDEN, "\"unit\": \"kg\"", "\"unit\": \"st\""),
        "lifter[0].unit (line 9, column 12): unknown variant `st`, expected `kg` or `lb`"
    );
}

#[test]
fn a_load_too_heavy_is_refused() {
    assert!(
        said_with(DEMO, "\"start\": \"15 kg\"", "\"start\": \"2001 kg\"")
            .ends_with("2001 kg is too heavy: a load is 0 to 2000 kg (4409 lb)")
    );
}

#[test]
fn a_tempo_of_minutes_is_refused() {
    assert_eq!(
        said_with(DEMO, "\"tempo\": \"3/1/1/0\"", "\"tempo\": \"900/1/1/0\""),
        "sheets[0].groups[1].straight.tempo (line 113, column 16): “900/1/1/0” is no tempo: write four parts like 3/1/X/0, each 0 to 20 seconds or X, not all 0"
    );
}

#[test]
fn ten_thousand_sets_are_refused() {
    assert_eq!(
        said_with(DEMO, "\"count\": 3", "\"count\": 10000"),
        "sheets[0].groups[0].straight.sets[0] (line 30, column 8): the count of sets must be 1 to 20, not 10000"
    );
}

#[test]
fn a_rest_of_a_day_and_ten_thousand_reps_are_refused() {
    assert_eq!(
        said_with(DEMO, "\"rest\": 45", "\"rest\": 86400"),
        "sheets[0].groups[0].straight.rest (line 45, column 15): seconds must be a number from 0 to 3600, not 86400"
    );
    assert!(
        said_with(
            GOLDEN,
            "\"amount\":{\"reps\":5}",
            "\"amount\":{\"reps\":10000}"
        )
        .contains("reps must be a number from 0 to 500, not 10000")
    );
}

#[test]
fn air_that_cannot_be_is_refused() {
    for temperature in ["61 °C", "31 °F", "31.55 °C", "31.5", "031 °C"] {
        let said = said_with(GOLDEN, "31.5 °C", temperature);
        assert!(said.contains("from 0 to 60 °C or 32 to 140 °F"), "{said}");
    }
    let said = said_with(GOLDEN, "\"humidity\":60", "\"humidity\":101");
    assert!(said.contains("from 0 to 100 percent, not 101"), "{said}");
}

#[test]
fn a_field_that_is_not_known_is_refused_with_those_that_are() {
    let refused = said_with(DEMO, "\"rest\": 45", "\"rest\": 45, \"colour\": \"red\"");
    assert!(
        refused.starts_with("sheets[0].groups[0].straight.colour (line 45, column "),
        "{refused}"
    );
    assert!(
        refused.contains("unknown field `colour`, expected one of `id`"),
        "{refused}"
    );
}

#[test]
fn a_curve_that_nobody_knows_is_refused() {
    let refused = said_with(
        GOLDEN,
        "\"unit\": \"kg\"",
        "\"unit\": \"kg\", \"curve\": \"straight\"",
    );
    assert!(
        refused.starts_with("lifter[0].curve (line 9, column ")
            && refused.contains("unknown variant `straight`, expected one of `epley`"),
        "{refused}"
    );
}

#[test]
fn a_settled_warning_of_an_unknown_kind_is_refused() {
    let refused = said_with(GOLDEN, "\"kind\": \"lower_back\"", "\"kind\": \"mood\"");
    assert!(
        refused.starts_with("sheets[0].settled[0].kind (")
            && refused.contains("unknown variant `mood`, expected one of `role`"),
        "{refused}"
    );
}

#[test]
fn what_is_missing_is_named() {
    let refused = said_with(DEMO, "\"name\": \"Lower A\",", "");
    assert!(refused.contains("the sheet needs a name"), "{refused}");
    let refused = said_with(DEMO, "\"role\": \"power\",", "");
    assert!(
        refused.starts_with("sheets[0].groups[0].straight (")
            && refused.contains("missing field `role`"),
        "{refused}"
    );
}

#[test]
fn a_kit_that_cannot_be_is_refused() {
    let refused = said_with(GOLDEN, "\"pairs\": 2", "\"pairs\": 21");
    assert!(
        refused.starts_with("kit[0].kit (") && refused.contains("it must have 1 to 20"),
        "{refused}"
    );
}

#[test]
fn a_list_that_is_too_long_is_refused_before_all_of_it_is_read() {
    let mass = "{\"id\":\"019b8d2b-8c00-7001-80b0-a7b005e00001\",\"at\":\"2026-01-05T09:00:00Z\",\"mass\":\"80 kg\"}";
    let list = vec![mass; 40_001].join(",");
    let text = format!("{{\"format\":\"stanchion\",\"version\":1,\"body_mass\":[{list}]}}");
    assert!(!schema().is_valid(&serde_json::from_str(&text).unwrap()));
    let refused = said(&text);
    assert!(
        refused.starts_with("body_mass") && refused.ends_with("at most 40000 are allowed"),
        "{refused}"
    );
}

#[test]
fn a_session_without_its_beginning_is_refused() {
    let value: Value = serde_json::from_str(GOLDEN).unwrap();
    let broken = |change: &dyn Fn(&mut Value)| {
        let mut value = value.clone();
        change(&mut value["sessions"][0]);
        said(&value.to_string())
    };
    let refused = broken(&|session| {
        session["events"].as_array_mut().unwrap().remove(0);
    });
    assert!(
        refused.starts_with("sessions[0] (") && refused.contains("the session has no beginning"),
        "{refused}"
    );
    let refused = broken(&|session| {
        session["events"][0]["what"]["began"]["session"] =
            "019b8d2b-0000-7001-80b0-a7b005e00001".into();
    });
    assert!(
        refused.contains("must name the session it stands in"),
        "{refused}"
    );
    let refused = broken(&|session| {
        let id = session["events"][1]["id"].clone();
        session["events"][2]["id"] = id;
    });
    assert!(
        refused.contains("two events have the id 019b8d2c-9d70-700e-80b0-a7b005e0000e and differ"),
        "{refused}"
    );
}

#[test]
fn two_records_with_one_id_in_one_file_are_refused() {
    let mut value: Value = serde_json::from_str(GOLDEN).unwrap();
    let mut twin = value["body_mass"][0].clone();
    twin["mass"] = "81 kg".into();
    value["body_mass"].as_array_mut().unwrap().push(twin);
    assert_eq!(
        said(&value.to_string()),
        "body_mass[2]: a second body mass has the id 019b8d2b-8c07-702e-80b0-a7b005e0002e and differs from the first: give each its own"
    );
}

#[test]
fn a_tower_of_brackets_is_refused_and_nothing_else_happens() {
    for depth in [200, 200_000] {
        let tower = format!("{}{}", "[".repeat(depth), "]".repeat(depth));
        let text = format!("{{\"format\":\"stanchion\",\"version\":1,\"sheets\":{tower}}}");
        assert!(said(&text).starts_with("sheets[0]"), "{}", said(&text));
        let head = format!("{{\"format\":{tower}}}");
        assert!(
            said(&head).starts_with("this is no file of Stanchion"),
            "{}",
            said(&head)
        );
        let open = "[".repeat(depth);
        assert!(
            said(&open).starts_with("the file is not JSON"),
            "{}",
            said(&open)
        );
    }
}

#[test]
fn exercises_and_programmes_that_do_not_hold_together_are_refused() {
    let twice = said_with(OWN, "\"glutes\"", "\"quadriceps\"");
    assert!(
        twice.starts_with("exercises[0].main") && twice.ends_with("name each once"),
        "{twice}"
    );
    let removed = said_with(
        OWN,
        "\"removed\": true",
        "\"removed\": true, \"name\": \"Plank\"",
    );
    assert!(
        removed.contains("a removed exercise has id, version and written only"),
        "{removed}"
    );
    let weeks = said_with(OWN, "\"every\": 4", "\"every\": 1");
    assert!(weeks.contains("every 2 to 12 weeks, not 1"), "{weeks}");
    // What the schema cannot say, the reader does.
    for (old, new, told) in [
        (
            "\"also\": [\n    \"adductors\"",
            "\"also\": [\n    \"glutes\"",
            "glutes cannot be both",
        ),
        (
            "\"from\": \"2026-01-05\"",
            "\"from\": \"2026-01-06\"",
            "2026-01-06 is no Monday",
        ),
        ("\"load\": \"90 %\"", "\"load\": \"20 %\"", "40 % to 100 %"),
    ] {
        let broken = OWN.replacen(old, new, 1);
        assert_ne!(broken, OWN, "the file has no {old}");
        assert!(said(&broken).contains(told), "{}", said(&broken));
    }
}
