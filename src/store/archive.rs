//! All that is kept, in one value.

use super::body::{BodyEntry, BodyRecord, body_entries};
use super::exercise_record::ExerciseRecord;
use super::kept::Kept;
use super::programme_record::ProgrammeRecord;
use super::record::{BodyMassRecord, KitRecord, LifterRecord};
use super::removed_session::RemovedSession;
use super::session_log::SessionLog;
use super::sheet_record::SheetRecord;
use crate::exercises::Catalogue;
use crate::order;
use crate::order::Map;
use crate::programme::{Programme, ProgrammeId};
use crate::session::SessionId;
use crate::sheet::{ExerciseId, Sheet};
use chrono::{DateTime, FixedOffset};

/// All that is kept, or the part of it that a file holds.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Archive {
    /// Settings; the newest counts.
    pub lifter: Kept<LifterRecord>,
    /// Kits; the newest counts.
    pub kit: Kept<KitRecord>,
    /// Body masses.
    pub body_mass: Kept<BodyMassRecord>,
    /// Corrections and removals of them, and measures of one's own; the newest of each entry counts.
    pub body: Kept<BodyRecord>,
    /// Versions of one's own exercises; the newest of each counts.
    pub exercises: Kept<ExerciseRecord>,
    /// Versions of sheets; the newest of each sheet counts.
    pub sheets: Kept<SheetRecord>,
    /// Versions of programmes; the newest of each counts.
    pub programmes: Kept<ProgrammeRecord>,
    /// Sessions.
    pub sessions: Map<SessionId, SessionLog>,
    /// Notes that sessions were removed. None of these is in `sessions`.
    pub removed: Kept<RemovedSession>,
}

impl Archive {
    /// The sheets as they are now: the newest version of each that was not removed, by name and then by id.
    #[must_use]
    pub fn current_sheets(&self) -> Vec<&Sheet> {
        // Records come by rising id and version: the last of each sheet stays.
        let mut newest: Vec<&SheetRecord> = Vec::new();
        for record in self.sheets.iter() {
            match newest.last_mut() {
                Some(last) if last.sheet_id() == record.sheet_id() => *last = record,
                _ => newest.push(record),
            }
        }
        let mut sheets: Vec<&Sheet> = newest
            .into_iter()
            .filter_map(|record| record.sheet())
            .collect();
        order::by(&mut sheets, |a, b| (&a.name, a.id).cmp(&(&b.name, b.id)));
        sheets
    }

    /// The exercises that are known: the list, and over it one's own in the newest version that was not removed.
    #[must_use]
    pub fn catalogue(&self) -> Catalogue {
        let mut newest: Map<&ExerciseId, &ExerciseRecord> = Map::new();
        for record in self.exercises.iter() {
            // By rising version: the last of each id stays.
            newest.insert(record.lasting_id(), record);
        }
        let own = newest.into_values().filter_map(ExerciseRecord::written);
        Catalogue::new(own.cloned())
    }

    /// The programmes as they are now: the newest version of each that was not removed, the one written last at the
    /// end.
    #[must_use]
    pub fn current_programmes(&self) -> Vec<&Programme> {
        let mut newest: Map<ProgrammeId, &ProgrammeRecord> = Map::new();
        for record in self.programmes.iter() {
            newest.insert(*record.lasting_id(), record);
        }
        let current = newest.into_values().filter_map(ProgrammeRecord::written);
        let mut current: Vec<&Programme> = current.collect();
        order::by_key(&mut current, |programme| programme.version);
        current
    }

    /// What was measured of the body, as it counts now.
    #[must_use]
    pub fn body_entries(&self) -> Vec<BodyEntry> {
        body_entries(self.body_mass.iter(), self.body.iter())
    }

    /// Lets every session go that was removed; returns which.
    pub fn settle(&mut self) -> Vec<SessionId> {
        let gone = self.removed.iter().map(|removed| removed.id);
        let gone: Vec<SessionId> = gone.filter(|id| self.sessions.contains_key(id)).collect();
        for id in &gone {
            self.sessions.remove(id);
        }
        gone
    }

    /// Removes a session at `when`: what it held is let go, and a merge does not bring it back.
    pub fn remove_session(&mut self, id: SessionId, when: DateTime<FixedOffset>) {
        self.removed.put(RemovedSession { id, written: when });
        self.sessions.remove(&id);
    }

    /// True when nothing is in it.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        *self == Archive::default()
    }
}
