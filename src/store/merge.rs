//! Merging: set union of records, with a count of what it did.

use super::archive::Archive;
use super::kept::{Kept, Put, Record};
use std::collections::btree_map::Entry;
use std::fmt;
use uuid::Uuid;

/// Two records with one id and different content.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Conflict {
    /// Kind of record.
    pub what: &'static str,
    /// The id.
    pub id: Uuid,
    /// JSON text of the record that was not kept: set it aside, never throw it away.
    pub dropped: String,
}

/// What a merge did.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Summary {
    /// Sessions that were not there.
    pub sessions_new: usize,
    /// Sessions that were there.
    pub sessions_known: usize,
    /// Events that were not there, in sessions that were.
    pub events_new: usize,
    /// Versions of sheets that were not there.
    pub sheets_new: usize,
    /// Versions of sheets that were there.
    pub sheets_known: usize,
    /// Versions of one's own exercises that were not there.
    pub exercises_new: usize,
    /// Versions of programmes that were not there.
    pub programmes_new: usize,
    /// Kit records that were not there.
    pub kits_new: usize,
    /// Lifter records that were not there.
    pub lifters_new: usize,
    /// Body masses that were not there.
    pub body_masses_new: usize,
    /// Records of which another with the same id was there.
    pub conflicts: Vec<Conflict>,
}

/// The outcome of a merge.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Merged {
    /// Everything.
    pub archive: Archive,
    /// What is to be written to the database: records that were not there, the kept ones of conflicts that were not
    /// there so, and whole sessions with an event that was not there.
    pub news: Archive,
    /// What happened.
    pub summary: Summary,
}

impl Archive {
    /// The union of both. Merging twice changes nothing, and neither order nor grouping matters for the archive.
    ///
    /// Of two different records with one id one is kept by a fixed order and the other listed in
    /// [`Summary::conflicts`].
    #[must_use]
    pub fn merge(self, other: Archive) -> Merged {
        let mut all = self;
        let mut news = Archive::default();
        let mut summary = Summary::default();
        let conflicts = &mut summary.conflicts;
        let sheets = other.sheets.len();
        summary.lifters_new = unite(&mut all.lifter, &mut news.lifter, other.lifter, conflicts);
        summary.kits_new = unite(&mut all.kit, &mut news.kit, other.kit, conflicts);
        summary.body_masses_new = unite(
            &mut all.body_mass,
            &mut news.body_mass,
            other.body_mass,
            conflicts,
        );
        summary.exercises_new = unite(
            &mut all.exercises,
            &mut news.exercises,
            other.exercises,
            conflicts,
        );
        summary.programmes_new = unite(
            &mut all.programmes,
            &mut news.programmes,
            other.programmes,
            conflicts,
        );
        summary.sheets_new = unite(&mut all.sheets, &mut news.sheets, other.sheets, conflicts);
        summary.sheets_known = sheets - summary.sheets_new;
        for (id, session) in other.sessions {
            match all.sessions.entry(id) {
                Entry::Vacant(place) => {
                    summary.sessions_new += 1;
                    news.sessions.insert(id, place.insert(session).clone());
                }
                Entry::Occupied(mut there) => {
                    summary.sessions_known += 1;
                    let mut changed = false;
                    for (event, put) in there.get_mut().take(session) {
                        match put {
                            Put::New => {
                                summary.events_new += 1;
                                changed = true;
                            }
                            Put::Known => {}
                            Put::Conflict { dropped, replaced } => {
                                changed |= replaced;
                                summary.conflicts.push(Conflict {
                                    what: "event",
                                    id: event.0,
                                    dropped,
                                });
                            }
                        }
                    }
                    if changed {
                        news.sessions.insert(id, there.get().clone());
                    }
                }
            }
        }
        Merged {
            archive: all,
            news,
            summary,
        }
    }
}

/// Puts all of `more` into `all`; returns how many were new.
fn unite<R: Record + Clone>(
    all: &mut Kept<R>,
    news: &mut Kept<R>,
    more: Kept<R>,
    conflicts: &mut Vec<Conflict>,
) -> usize {
    let mut new = 0;
    for record in more.into_records() {
        let id = record.shown_id();
        match all.put(record.clone()) {
            Put::New => {
                new += 1;
                news.put(record);
            }
            Put::Known => {}
            Put::Conflict { dropped, replaced } => {
                if replaced {
                    news.put(record);
                }
                conflicts.push(Conflict {
                    what: R::WHAT,
                    id,
                    dropped,
                });
            }
        }
    }
    new
}

impl fmt::Display for Summary {
    /// One line like `2 sessions new, 1 known, 1 sheet new`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut parts = Vec::new();
        let kinds = [
            (self.sessions_new, self.sessions_known, "session"),
            (self.sheets_new, self.sheets_known, "sheet"),
            (self.exercises_new, 0, "exercise"),
            (self.programmes_new, 0, "programme"),
            (self.kits_new, 0, "kit"),
            (self.lifters_new, 0, "setting"),
        ];
        let counted = |n: usize, what: &str| match n {
            1 => format!("1 {what}"),
            n => format!("{n} {what}s"),
        };
        for (new, known, what) in kinds {
            match (new, known) {
                (0, 0) => {}
                (0, known) => parts.push(format!("{} known", counted(known, what))),
                (new, 0) => parts.push(format!("{} new", counted(new, what))),
                (new, known) => parts.push(format!("{} new, {known} known", counted(new, what))),
            }
        }
        match self.body_masses_new {
            0 => {}
            1 => parts.push("1 body mass new".to_owned()),
            n => parts.push(format!("{n} body masses new")),
        }
        if self.events_new > 0 {
            parts.push(format!(
                "{} added to known sessions",
                counted(self.events_new, "event")
            ));
        }
        if !self.conflicts.is_empty() {
            parts.push(format!(
                "{} with the id of another and not kept",
                counted(self.conflicts.len(), "record")
            ));
        }
        if parts.is_empty() {
            f.write_str("nothing new")
        } else {
            f.write_str(&parts.join(", "))
        }
    }
}
