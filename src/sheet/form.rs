//! The file's form of a sheet, written or removed: read by one piece of code wherever a sheet stands.

use super::group::{Group, Sheet, SheetId, SheetVersion};
use super::text::{Line, Note};
use super::warning::OrderWarning;
use crate::words::t;
use chrono::{DateTime, FixedOffset};
use serde::Deserialize;
use std::num::NonZeroU16;

/// A sheet before it is checked as a whole. One struct and no untagged enum: so an error keeps its place in the file.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct SheetForm {
    pub id: SheetId,
    pub version: SheetVersion,
    pub written: DateTime<FixedOffset>,
    removed: Option<bool>,
    name: Option<Line>,
    warm_up: Option<Vec<Line>>,
    notes: Option<Note>,
    budget_minutes: Option<u16>,
    groups: Option<Vec<Group>>,
    settled: Option<Vec<OrderWarning>>,
    written_for: Option<Line>,
}

impl SheetForm {
    /// True for the note that a sheet was removed.
    pub fn is_removed(&self) -> bool {
        self.removed == Some(true)
    }

    /// True when nothing of a written sheet is in it.
    pub fn is_bare(&self) -> bool {
        self.name.is_none()
            && self.warm_up.is_none()
            && self.notes.is_none()
            && self.budget_minutes.is_none()
            && self.groups.is_none()
            && self.settled.is_none()
            && self.written_for.is_none()
    }
}

impl TryFrom<SheetForm> for Sheet {
    type Error = String;

    fn try_from(form: SheetForm) -> Result<Sheet, String> {
        if form.is_removed() {
            return Err(t("a sheet that was removed cannot stand here").to_owned());
        }
        let sheet = Sheet {
            id: form.id,
            version: form.version,
            written: form.written,
            name: form.name.ok_or(t("the sheet needs a name"))?,
            warm_up: form.warm_up.unwrap_or_default(),
            notes: form.notes.unwrap_or_default(),
            // Sheets of before may say 0 min, which is no budget.
            budget_minutes: form.budget_minutes.and_then(NonZeroU16::new),
            groups: form.groups.ok_or(t("the sheet needs groups of blocks"))?,
            settled: form.settled.unwrap_or_default(),
            written_for: form.written_for,
        };
        sheet.check().map_err(|error| error.to_string())?;
        Ok(sheet)
    }
}
