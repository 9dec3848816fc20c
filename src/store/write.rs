//! Writing a file: the same archive always gives the same text.

use super::archive::Archive;
use super::file::FORMAT;
use super::kept::{Kept, Record, content};
use super::migrate::FormatVersion;
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
    let (mut file, mut around) = Around::begin(archive, written);
    for session in archive.sessions.values() {
        file.push_str(around.before());
        file.push_str(&session.to_json());
    }
    file.push_str(&around.end(archive));
    file
}

/// What stands around the sessions of a file that is written session by session.
#[derive(Debug, Default)]
pub struct Around {
    some: bool,
}

impl Around {
    /// The text before the sessions, and what follows. The sessions of `archive` count for nothing.
    #[must_use]
    pub fn begin(archive: &Archive, written: DateTime<FixedOffset>) -> (String, Around) {
        (head(archive, written), Around::default())
    }

    /// The text right before the next session, which is given as it is to stand there, by rising id.
    pub fn before(&mut self) -> &'static str {
        if std::mem::replace(&mut self.some, true) {
            NEXT
        } else {
            ",\n \"sessions\": [\n  "
        }
    }

    /// The text behind the last.
    #[must_use]
    pub fn end(self, archive: &Archive) -> String {
        let mut end = String::new();
        if self.some {
            end.push_str(END);
        }
        list(&mut end, "removed_sessions", records(&archive.removed));
        end.push_str("\n}\n");
        end
    }
}

/// What stands between two entries of a list.
const NEXT: &str = ",\n  ";
/// What stands behind the last.
const END: &str = "\n ]";

fn head(archive: &Archive, written: DateTime<FixedOffset>) -> String {
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
    file
}

/// Adds a list entry by entry: the log of many years is never there twice.
fn list(file: &mut String, name: &str, entries: impl Iterator<Item = String>) {
    let mut some = false;
    for entry in entries {
        if some {
            file.push_str(NEXT);
        } else {
            file.push_str(",\n \"");
            file.push_str(name);
            file.push_str("\": [\n  ");
        }
        file.push_str(&entry);
        some = true;
    }
    if some {
        file.push_str(END);
    }
}

fn records<R: Record>(kept: &Kept<R>) -> impl Iterator<Item = String> {
    kept.iter().map(|record| pretty(&content(record), INDENT))
}
