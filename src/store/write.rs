//! Writing a file: the same archive always gives the same text.

use super::archive::Archive;
use super::file::FORMAT;
use super::kept::{Kept, Record, content};
use super::migrate::FormatVersion;
use super::session_log::SessionLog;
use crate::json::pretty;
use chrono::{DateTime, FixedOffset};

/// How far the entries of a list are set in.
const INDENT: usize = 2;

/// The text of a file with all of `archive`, written at `written`.
///
/// Records stand by rising id, fields in a fixed order, one space an indent, so that two files can be compared line
/// by line. An event is one line: a history of years stays well below the largest file that is read. Lists with
/// nothing in them are left out.
#[must_use]
pub fn write(archive: &Archive, written: DateTime<FixedOffset>) -> String {
    let mut parts = vec![
        format!(" \"format\": {}", content(&FORMAT)),
        format!(" \"version\": {}", FormatVersion::CURRENT.number()),
        format!(" \"written\": {}", content(&written)),
    ];
    parts.extend(list("lifter", records(&archive.lifter)));
    parts.extend(list("kit", records(&archive.kit)));
    parts.extend(list("body_mass", records(&archive.body_mass)));
    parts.extend(list("exercises", records(&archive.exercises)));
    parts.extend(list("sheets", records(&archive.sheets)));
    parts.extend(list("programmes", records(&archive.programmes)));
    parts.extend(list(
        "sessions",
        archive.sessions.values().map(session).collect(),
    ));
    format!("{{\n{}\n}}\n", parts.join(",\n"))
}

fn list(name: &str, entries: Vec<String>) -> Option<String> {
    (!entries.is_empty()).then(|| format!(" \"{name}\": [\n  {}\n ]", entries.join(",\n  ")))
}

fn records<R: Record>(kept: &Kept<R>) -> Vec<String> {
    kept.iter()
        .map(|record| pretty(&content(record), INDENT))
        .collect()
}

fn session(log: &SessionLog) -> String {
    let events: Vec<String> = log.event_lines().collect();
    format!(
        "{{\n   \"id\": {},\n   \"events\": [\n    {}\n   ]\n  }}",
        content(&log.id()),
        events.join(",\n    ")
    )
}
