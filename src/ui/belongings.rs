//! What the lifter has, and how it is kept: the kit, the settings, body masses, sheets.

use super::change::delete;
use super::keep::{put, sheet_key};
use super::model::Model;
use super::stanchion::{Stanchion, moment};
use crate::device::clock;
use crate::kit::Kit;
use crate::order;
use crate::sheet::{Sheet, SheetId, SheetVersion};
use crate::store::{
    BodyEntry, BodyMassRecord, BodyRecord, BodyValue, KitRecord, LifterRecord, Person,
    RemovedSheet, SheetRecord, Shelf,
};
use crate::strength::Curve;
use crate::units::{Load, Unit};
use chrono::{DateTime, FixedOffset};
use uuid::Uuid;

/// Changes of the kit that follow each other within this are one version, in milliseconds: each tap in Kit is a change.
const BURST_MS: u64 = 60_000;

impl Stanchion {
    /// Keeps another kit.
    pub fn keep_kit(self, kit: Kit) {
        if !self.may_write() {
            return;
        }
        let record = KitRecord {
            version: self.id(),
            written: clock::wall(),
            kit: kit.clone(),
        };
        let (now, mut before) = (moment(), None);
        self.model.update(|model| {
            model.kit = kit.into();
            before = model.kit_kept.replace((record.version, now));
        });
        let mut writes = vec![put(Shelf::Kits, &record.version.to_string(), &record)];
        // By both clocks: ids run on from the greatest that was seen, and the page's own clock may stand while a phone sleeps.
        let burst = before.filter(|(_, at)| now.since(at) < BURST_MS);
        writes.extend(burst.map(|(before, _)| delete(Shelf::Kits, &before.to_string())));
        self.write(writes);
    }

    /// Shows and takes loads in that unit from now on.
    pub fn keep_lifter(self, unit: Unit) {
        let curve = self.model.with_untracked(Model::curve);
        self.keep_settings(unit, curve);
    }

    /// Estimates maximums by that curve from the next session on.
    pub fn keep_curve(self, curve: Curve) {
        let unit = self.model.with_untracked(Model::unit);
        self.keep_settings(unit, curve);
    }

    /// Writes the name that the lifter has on this phone into their own settings, so that an export says whose it is.
    pub fn keep_name(self) {
        let other = self.model.with_untracked(|model| {
            let own = model.lifter.as_ref()?.name.as_ref();
            let given = model.person().and_then(Person::given);
            let other = given.is_some_and(|given| own != Some(given));
            (other && model.only_looks().is_none()).then(|| (model.unit(), model.curve()))
        });
        if let Some((unit, curve)) = other {
            self.keep_settings(unit, curve);
        }
    }

    fn keep_settings(self, unit: Unit, curve: Curve) {
        if !self.may_write() {
            return;
        }
        let name = self.model.with_untracked(|model| {
            let before = || model.lifter.as_ref()?.name.clone();
            let given = model.person().and_then(Person::given);
            given.cloned().or_else(before)
        });
        let record = LifterRecord {
            version: self.id(),
            written: clock::wall(),
            unit,
            name,
            welcomed: true,
            curve,
        };
        self.model
            .update(|model| model.lifter = Some(record.clone()));
        self.write(vec![put(
            Shelf::Lifters,
            &record.version.to_string(),
            &record,
        )]);
    }

    /// Notes a body mass of today.
    pub fn keep_body_mass(self, mass: Load) {
        if !self.may_write() {
            return;
        }
        let record = BodyMassRecord {
            id: self.id(),
            at: clock::wall(),
            mass,
        };
        let value = BodyValue::Mass(mass);
        self.show_entry(record.id, Some((record.at, value)));
        self.write(vec![put(Shelf::BodyMass, &record.id.to_string(), &record)]);
    }

    /// Keeps a version of an entry of the body; none removes it. What was there stays on disk.
    pub fn keep_body(self, id: Uuid, taken: Option<(DateTime<FixedOffset>, BodyValue)>) {
        if !self.may_write() {
            return;
        }
        let record = BodyRecord {
            entry: id,
            version: self.id(),
            written: clock::wall(),
            taken,
        };
        self.show_entry(id, record.taken.clone());
        self.write(vec![put(Shelf::Body, &record.version.to_string(), &record)]);
    }

    fn show_entry(self, id: Uuid, taken: Option<(DateTime<FixedOffset>, BodyValue)>) {
        self.model.update(|model| {
            model.body.retain(|entry| entry.id != id);
            model
                .body
                .extend(taken.map(|(at, value)| BodyEntry { id, at, value }));
            order::by_key(&mut model.body, |entry| (entry.at, entry.id));
        });
    }

    /// Keeps a changed sheet as a new version of itself.
    pub fn revise_sheet(self, changed: Sheet) {
        self.keep_sheet(Sheet {
            version: SheetVersion(self.id()),
            written: clock::wall(),
            ..changed
        });
    }

    /// Removes a sheet. Its versions stay on disk; [`Stanchion::bring_back`] takes the removal back.
    pub fn remove_sheet(self, id: SheetId) {
        if !self.may_write() {
            return;
        }
        let removed = SheetRecord::Removed(RemovedSheet {
            id,
            version: SheetVersion(self.id()),
            written: clock::wall(),
        });
        self.write(vec![put(Shelf::Sheets, &sheet_key(&removed), &removed)]);
        self.model.update(|model| {
            model.removed = model.sheet(id).cloned();
            model.sheets.retain(|other| other.id != id);
        });
        self.drop_draft(id);
    }

    /// Brings the sheet back that was removed last.
    pub fn bring_back(self) {
        let removed = self.model.with_untracked(|model| model.removed.clone());
        if let Some(sheet) = removed
            && self.may_write()
        {
            self.revise_sheet(sheet);
            self.model.update(|model| model.removed = None);
        }
    }

    /// Keeps a version of a sheet.
    pub fn keep_sheet(self, sheet: Sheet) {
        if !self.may_write_sheet(sheet.id) {
            return;
        }
        let record = SheetRecord::Written(Box::new(sheet.clone()));
        self.write_sheets(vec![put(Shelf::Sheets, &sheet_key(&record), &record)]);
        self.model.update(|model| {
            model.change_sheets(&mut |model| {
                model.sheets.retain(|other| other.id != sheet.id);
                model.sheets.push(sheet.clone());
                order::by(&mut model.sheets, |a, b| a.name.cmp(&b.name));
            });
        });
    }
}
