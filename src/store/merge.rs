//! Merging: set union of records, with a count of what it did.

use super::archive::Archive;
use super::kept::{Kept, Put, Record};
use super::things::{Things, standing};
use crate::crc::crc32;
use crate::words::{many, t, t_in};
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
    /// True when that is the one that was here: the other takes its place.
    pub replaced: bool,
}

impl Conflict {
    /// The key under which the record that was not kept is set aside: each text of one id has its own.
    #[must_use]
    pub fn key(&self) -> String {
        let sum = crc32(self.dropped.as_bytes());
        format!("{} {} {sum:08x}", self.what, self.id)
    }
}

/// What a merge did.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Summary {
    /// Sessions that were not there.
    pub sessions_new: usize,
    /// Sessions that were there, with all their events.
    pub sessions_known: usize,
    /// Sessions that were there and gain something: a correction, a note, a rating, sets.
    pub sessions_changed: usize,
    /// Sessions that were there and go: they were removed elsewhere.
    pub sessions_removed: usize,
    /// Notes of removed sessions that were not there, of sessions that go and of others: they keep an older file from
    /// bringing the session back.
    pub removals_new: usize,
    /// Sessions that stay away: they were removed before.
    pub sessions_left_out: usize,
    /// Events that were not there, in sessions that were.
    pub events_new: usize,
    /// Sheets.
    pub sheets: Things,
    /// Exercises of one's own.
    pub exercises: Things,
    /// Programmes.
    pub programmes: Things,
    /// Kit records that were not there.
    pub kits_new: usize,
    /// True when one of them counts now.
    pub kit_newest: bool,
    /// True when there was one before.
    pub kit_known: bool,
    /// Lifter records that were not there.
    pub lifters_new: usize,
    /// True when one of them counts now.
    pub lifter_newest: bool,
    /// True when there was one before.
    pub lifter_known: bool,
    /// Body masses that were not there.
    pub body_masses_new: usize,
    /// Measures of one's own, corrections and removals of entries of the body that were not there.
    pub body_new: usize,
    /// Records of which another with the same id was there.
    pub conflicts: Vec<Conflict>,
}

/// The outcome of a merge.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Merged {
    /// Everything.
    pub archive: Archive,
    /// What is to be written to the database: records that were not there, the kept ones of conflicts that were not
    /// there so, whole sessions with an event that was not there, and notes of sessions that go.
    pub news: Archive,
    /// What happened.
    pub summary: Summary,
}

impl Archive {
    /// The union of both. Merging twice changes nothing, and neither order nor grouping matters for the archive.
    ///
    /// Of two different records with one id one is kept by a fixed order and the other listed in
    /// [`Summary::conflicts`]. A session that was removed on either side is not in the union.
    #[must_use]
    pub fn merge(self, other: Archive) -> Merged {
        let mut all = self;
        let mut news = Archive::default();
        let mut summary = Summary::default();
        let conflicts = &mut summary.conflicts;
        let newest = (
            all.lifter.newest().map(Record::id),
            all.kit.newest().map(Record::id),
        );
        summary.lifters_new = unite(&mut all.lifter, &mut news.lifter, other.lifter, conflicts);
        summary.kits_new = unite(&mut all.kit, &mut news.kit, other.kit, conflicts);
        summary.lifter_newest = all.lifter.newest().map(Record::id) != newest.0;
        (summary.lifter_known, summary.kit_known) = (newest.0.is_some(), newest.1.is_some());
        summary.kit_newest = all.kit.newest().map(Record::id) != newest.1;
        summary.body_masses_new = unite(
            &mut all.body_mass,
            &mut news.body_mass,
            other.body_mass,
            conflicts,
        );
        summary.body_new = unite(&mut all.body, &mut news.body, other.body, conflicts);
        summary.exercises = unite_things(
            &mut all.exercises,
            &mut news.exercises,
            other.exercises,
            conflicts,
            |record| (record.lasting_id().to_string(), record.written().is_some()),
        );
        summary.programmes = unite_things(
            &mut all.programmes,
            &mut news.programmes,
            other.programmes,
            conflicts,
            |record| {
                let stands = record.written().is_some();
                (record.lasting_id().0.to_string(), stands)
            },
        );
        summary.sheets = unite_things(
            &mut all.sheets,
            &mut news.sheets,
            other.sheets,
            conflicts,
            |record| (record.sheet_id().0.to_string(), record.sheet().is_some()),
        );
        // Of two notes on one session one is as good as the other.
        summary.removals_new = unite(
            &mut all.removed,
            &mut news.removed,
            other.removed,
            &mut Vec::new(),
        );
        summary.sessions_removed = all.settle().len();
        for (id, session) in other.sessions {
            if all.removed.get(id).is_some() {
                summary.sessions_left_out += 1;
                continue;
            }
            match all.sessions.get_mut(&id) {
                None => {
                    summary.sessions_new += 1;
                    all.sessions.insert(id, session.clone());
                    news.sessions.insert(id, session);
                }
                Some(there) => {
                    let mut changed = false;
                    for (event, put) in there.take(session) {
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
                                    replaced,
                                });
                            }
                        }
                    }
                    if changed {
                        summary.sessions_changed += 1;
                        news.sessions.insert(id, there.clone());
                    } else {
                        summary.sessions_known += 1;
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
                    replaced,
                });
            }
        }
    }
    new
}

/// [`unite`] of things that have versions; `of` says what a record is a version of, and whether it stands.
fn unite_things<R: Record + Clone>(
    all: &mut Kept<R>,
    news: &mut Kept<R>,
    more: Kept<R>,
    conflicts: &mut Vec<Conflict>,
    of: fn(&R) -> (String, bool),
) -> Things {
    let (before, came) = (standing(all, of), standing(&more, of));
    unite(all, news, more, conflicts);
    Things::of(&before, &standing(all, of), &came, &standing(news, of))
}

impl Summary {
    /// Forgets the conflicts that an import before has set aside already, by the keys of what is. Those that change what is here
    /// stay: that import was taken back since.
    pub fn leave_out_aside(&mut self, aside: &[String]) {
        let known = |conflict: &Conflict| aside.contains(&conflict.key());
        self.conflicts
            .retain(|conflict| conflict.replaced || !known(conflict));
    }

    /// True when an import changes nothing and sets nothing aside.
    #[must_use]
    pub fn is_nothing(&self) -> bool {
        let changed = [
            self.sessions_new,
            self.sessions_changed,
            self.sessions_removed,
            self.removals_new,
            self.sheets.told(),
            self.exercises.told(),
            self.programmes.told(),
            self.kits_new,
            self.lifters_new,
            self.body_masses_new,
            self.body_new,
        ];
        changed == [0; 11] && self.conflicts.is_empty()
    }
}

/// So many of a kind.
pub(super) type Counted = fn(usize) -> String;

impl fmt::Display for Summary {
    /// One line like `14 sessions new, 3 known, 1 corrected, 1 sheet new`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut parts = Vec::new();
        let left_out = t_in("import", "left out, as removed here before");
        let sessions = [
            (self.sessions_new, t_in("import", "new")),
            (self.sessions_known, t_in("import", "known")),
            (self.sessions_changed, t_in("import", "corrected")),
            (self.sessions_removed, t_in("import", "removed")),
            (self.sessions_left_out, left_out),
        ];
        // Of exercises and programmes that were there with all versions, nobody asks.
        let sheets = self.sheets.counts(self.sheets.known, left_out);
        let exercises = self.exercises.counts(0, left_out);
        let programmes = self.programmes.counts(0, left_out);
        let kinds: [(Counted, &[(usize, &str)]); 4] = [
            (|n| many(n, "{n} session", "{n} sessions"), &sessions),
            (|n| many(n, "{n} sheet", "{n} sheets"), &sheets),
            (|n| many(n, "{n} exercise", "{n} exercises"), &exercises),
            (|n| many(n, "{n} programme", "{n} programmes"), &programmes),
        ];
        for (what, counts) in kinds {
            // The first count names what is counted.
            let mut named = false;
            for (n, word) in counts.iter().filter(|(n, _)| *n > 0) {
                let count = if named { n.to_string() } else { what(*n) };
                parts.push(format!("{count} {word}"));
                named = true;
            }
        }
        // Of these only the newest version counts: how many came, nobody asks.
        let kit = match (self.kit_newest, self.kit_known) {
            (true, false) => t("the kit"),
            (true, true) => t("your kit is replaced by the newer one of the file"),
            (false, _) => t("older versions of the kit, and yours stays as it is"),
        };
        let settings = match (self.lifter_newest, self.lifter_known) {
            (true, false) => t("the settings"),
            (true, true) => t("your settings are replaced by the newer ones of the file"),
            (false, _) => t("older versions of the settings, and yours stay as they are"),
        };
        for (n, said) in [(self.kits_new, kit), (self.lifters_new, settings)] {
            parts.extend((n > 0).then(|| said.to_owned()));
        }
        match self.body_masses_new {
            0 => {}
            n => parts.push(many(n, "{n} body mass new", "{n} body masses new")),
        }
        match self.body_new {
            0 => {}
            n => parts.push(many(
                n,
                "{n} measure or correction of the body new",
                "{n} measures and corrections of the body new",
            )),
        }
        // Of a session that goes it is said above.
        let sessions = self.removals_new.saturating_sub(self.sessions_removed);
        let noted = self.sheets.noted + self.exercises.noted + self.programmes.noted;
        match sessions + noted {
            0 => {}
            n => parts.push(many(n, "{n} removal noted", "{n} removals noted")),
        }
        if !self.conflicts.is_empty() {
            parts.push(many(
                self.conflicts.len(),
                "{n} entry differs here and in the file: one of both stays, the other is in Kit under Save what was set aside",
                "{n} entries differ here and in the file: one of each stays, the others are in Kit under Save what was set aside",
            ));
        }
        if parts.is_empty() {
            f.write_str(t("nothing new"))
        } else {
            f.write_str(&parts.join(", "))
        }
    }
}
