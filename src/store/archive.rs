//! All that is kept, in one value.

use super::kept::Kept;
use super::record::{BodyMassRecord, KitRecord, LifterRecord};
use super::session_log::SessionLog;
use super::sheet_record::SheetRecord;
use crate::order;
use crate::session::SessionId;
use crate::sheet::Sheet;
use crate::units::Load;
use chrono::{DateTime, FixedOffset};
use std::collections::BTreeMap;

/// All that is kept, or the part of it that a file holds.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Archive {
    /// Settings; the newest counts.
    pub lifter: Kept<LifterRecord>,
    /// Kits; the newest counts.
    pub kit: Kept<KitRecord>,
    /// Body masses.
    pub body_mass: Kept<BodyMassRecord>,
    /// Versions of sheets; the newest of each sheet counts.
    pub sheets: Kept<SheetRecord>,
    /// Sessions.
    pub sessions: BTreeMap<SessionId, SessionLog>,
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

    /// The body mass at `when`: the last one taken until then.
    #[must_use]
    pub fn body_mass_at(&self, when: DateTime<FixedOffset>) -> Option<Load> {
        self.body_mass
            .iter()
            .filter(|record| record.at <= when)
            .max_by_key(|record| (record.at, record.id))
            .map(|record| record.mass)
    }

    /// True when nothing is in it.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        *self == Archive::default()
    }
}
