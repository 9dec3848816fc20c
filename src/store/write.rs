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
    let sessions = archive.sessions.values();
    write_with(archive, sessions.map(SessionLog::to_json), written)
}

/// The same with sessions that are given as they are to stand there, by rising id, in place of those of `archive`.
#[must_use]
pub fn write_with(
    archive: &Archive,
    sessions: impl Iterator<Item = String>,
    written: DateTime<FixedOffset>,
) -> String {
    let mut file = format!(
        "{{\n \"format\": {},\n \"version\": {},\n \"written\": {}",
        content(&FORMAT),
        FormatVersion::CURRENT.number(),
        content(&written)
    );
    list(&mut file, "lifter", records(&archive.lifter));
    list(&mut file, "kit", records(&archive.kit));
    list(&mut file, "body_mass", records(&archive.body_mass));
    list(&mut file, "body", records(&archive.body));
    list(&mut file, "exercises", records(&archive.exercises));
    list(&mut file, "sheets", records(&archive.sheets));
    list(&mut file, "programmes", records(&archive.programmes));
    list(&mut file, "sessions", sessions);
    list(&mut file, "removed_sessions", records(&archive.removed));
    file.push_str("\n}\n");
    file
}

/// Adds a list entry by entry: the log of many years is never there twice.
fn list(file: &mut String, name: &str, entries: impl Iterator<Item = String>) {
    let mut some = false;
    for entry in entries {
        if some {
            file.push_str(",\n  ");
        } else {
            file.push_str(",\n \"");
            file.push_str(name);
            file.push_str("\": [\n  ");
        }
        file.push_str(&entry);
        some = true;
    }
    if some {
        file.push_str("\n ]");
    }
}

fn records<R: Record>(kept: &Kept<R>) -> impl Iterator<Item = String> {
    kept.iter().map(|record| pretty(&content(record), INDENT))
}
