//! The schema and the reader agree on what a file may hold: every field of the golden file is broken in turn.

use crate::common;

use common::schema;
use serde_json::{Value, json};
use stanchion::store::read;

const GOLDEN: &str = include_str!("golden/v1.json");
const OWN: &str = include_str!("golden/v1-own.json");
const BODY: &str = include_str!("golden/v1-body.json");

/// The pointers to every value of the file, the outermost first.
fn places(value: &Value, place: &str, all: &mut Vec<String>) {
    all.push(place.to_owned());
    match value {
        Value::Object(fields) => {
            for (name, field) in fields {
                places(field, &format!("{place}/{name}"), all);
            }
        }
        Value::Array(entries) => {
            for (index, entry) in entries.iter().enumerate() {
                places(entry, &format!("{place}/{index}"), all);
            }
        }
        _ => {}
    }
}

/// The file with the value at `place` changed.
fn changed(file: &Value, place: &str, change: impl FnOnce(&mut Value)) -> Value {
    let mut file = file.clone();
    change(file.pointer_mut(place).unwrap());
    file
}

/// Files that differ from `file` in one value each, with what differs.
fn broken(file: &Value, place: &str) -> Vec<(String, Value)> {
    let mut files = Vec::new();
    if let Some(fields) = file.pointer(place).unwrap().as_object() {
        let more = changed(file, place, |value| value["colour"] = json!("red"));
        files.push((format!("{place} with a field more"), more));
        for name in fields.keys() {
            let less = changed(file, place, |value| {
                value.as_object_mut().unwrap().remove(name);
            });
            files.push((format!("{place} without {name}"), less));
        }
    }
    for other in [
        json!(true),
        json!(-1),
        json!(1.5),
        json!("?"),
        json!(100_000),
    ] {
        let file = changed(file, place, |value| *value = other.clone());
        files.push((format!("{place} being {other}"), file));
    }
    files
}

/// The golden file with one of its lists only, the sheet inside its session as short as can be.
fn part(list: &str) -> Value {
    let of_own = matches!(list, "exercises" | "programmes");
    let text = match list {
        "body" => BODY,
        _ if of_own => OWN,
        _ => GOLDEN,
    };
    let golden: Value = serde_json::from_str(text).unwrap();
    let head = ["format", "version", "written"];
    let fields = golden.as_object().unwrap().iter();
    let kept = fields.filter(|(name, _)| head.contains(&name.as_str()) || *name == list);
    let mut part = Value::Object(
        kept.map(|(name, value)| (name.clone(), value.clone()))
            .collect(),
    );
    if list == "sessions" {
        // The sheet was broken as part of the sheets; here it would only be read a thousand times.
        let groups = &mut part["sessions"][0]["events"][0]["what"]["began"]["sheet"]["groups"];
        groups.as_array_mut().unwrap().truncate(1);
    }
    part
}

#[test]
fn schema_and_reader_agree_on_every_field() {
    let mut refused = 0;
    let mut differences = Vec::new();
    for list in [
        "lifter",
        "kit",
        "body_mass",
        "body",
        "exercises",
        "sheets",
        "programmes",
        "sessions",
    ] {
        let file = part(list);
        let mut all = Vec::new();
        places(&file, "", &mut all);
        all.retain(|place| !place.starts_with("/sessions/0/events/0/what/began/sheet/"));
        for (what, broken) in all.iter().flat_map(|place| broken(&file, place)) {
            let fits = schema().is_valid(&broken);
            let error = read(&broken.to_string()).err();
            refused += usize::from(error.is_some());
            if fits == error.is_some() {
                differences.push(format!("{what}: schema says {fits}, reader says {error:?}"));
            }
        }
    }
    assert!(differences.is_empty(), "{differences:#?}");
    assert!(refused > 2000, "only {refused} files were refused");
}

#[test]
fn an_optional_field_may_be_null_for_the_reader_but_is_never_written_so() {
    let file = changed(&part("lifter"), "/lifter/0/name", |name| {
        *name = Value::Null
    });
    assert!(!schema().is_valid(&file));
    let archive = read(&file.to_string()).unwrap();
    assert_eq!(archive.lifter.newest().unwrap().name, None);
}
