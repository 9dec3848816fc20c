//! A sheet as it is kept: a written version, or the note that it was removed.

use super::kept::Record;
use crate::sheet::{Group, Line, Note, Sheet, SheetId, SheetVersion};
use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize, Serializer};
use uuid::Uuid;

/// One version of a sheet. The newest version of a sheet counts.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(try_from = "SheetRecordForm")]
pub enum SheetRecord {
    /// The sheet as written.
    Written(Box<Sheet>),
    /// The sheet was removed; its earlier versions are kept.
    Removed(RemovedSheet),
}

/// The note that a sheet was removed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RemovedSheet {
    /// The sheet.
    pub id: SheetId,
    /// This version.
    pub version: SheetVersion,
    /// When it was removed.
    pub written: DateTime<FixedOffset>,
}

impl SheetRecord {
    /// The sheet, unless it was removed.
    #[must_use]
    pub fn sheet(&self) -> Option<&Sheet> {
        match self {
            SheetRecord::Written(sheet) => Some(sheet),
            SheetRecord::Removed(_) => None,
        }
    }

    /// The sheet's id.
    #[must_use]
    pub fn sheet_id(&self) -> SheetId {
        match self {
            SheetRecord::Written(sheet) => sheet.id,
            SheetRecord::Removed(removed) => removed.id,
        }
    }

    /// This version.
    #[must_use]
    pub fn version(&self) -> SheetVersion {
        match self {
            SheetRecord::Written(sheet) => sheet.version,
            SheetRecord::Removed(removed) => removed.version,
        }
    }
}

impl Record for SheetRecord {
    type Id = (SheetId, SheetVersion);
    const WHAT: &'static str = "sheet";

    fn id(&self) -> Self::Id {
        (self.sheet_id(), self.version())
    }

    fn shown_id(&self) -> Uuid {
        self.version().0
    }
}

/// The file's form of a removed sheet.
#[derive(Serialize)]
struct RemovedForm<'a> {
    id: &'a SheetId,
    version: &'a SheetVersion,
    written: &'a DateTime<FixedOffset>,
    removed: bool,
}

impl Serialize for SheetRecord {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        match self {
            SheetRecord::Written(sheet) => sheet.serialize(to),
            SheetRecord::Removed(removed) => RemovedForm {
                id: &removed.id,
                version: &removed.version,
                written: &removed.written,
                removed: true,
            }
            .serialize(to),
        }
    }
}

/// The file's form of both. One struct and no untagged enum: so an error keeps its place in the file.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct SheetRecordForm {
    id: SheetId,
    version: SheetVersion,
    written: DateTime<FixedOffset>,
    removed: Option<bool>,
    name: Option<Line>,
    warm_up: Option<Vec<Line>>,
    notes: Option<Note>,
    budget_minutes: Option<u16>,
    groups: Option<Vec<Group>>,
}

impl TryFrom<SheetRecordForm> for SheetRecord {
    type Error = String;

    fn try_from(form: SheetRecordForm) -> Result<SheetRecord, String> {
        let SheetRecordForm {
            id,
            version,
            written,
            ..
        } = form;
        if form.removed == Some(true) {
            let bare = form.name.is_none()
                && form.warm_up.is_none()
                && form.notes.is_none()
                && form.budget_minutes.is_none()
                && form.groups.is_none();
            return if bare {
                Ok(SheetRecord::Removed(RemovedSheet {
                    id,
                    version,
                    written,
                }))
            } else {
                Err("a removed sheet has id, version and written only".to_owned())
            };
        }
        let sheet = Sheet {
            id,
            version,
            written,
            name: form.name.ok_or("the sheet needs a name")?,
            warm_up: form.warm_up.unwrap_or_default(),
            notes: form.notes.unwrap_or_default(),
            budget_minutes: form.budget_minutes,
            groups: form.groups.ok_or("the sheet needs groups of blocks")?,
        };
        sheet.check().map_err(|error| error.to_string())?;
        Ok(SheetRecord::Written(Box::new(sheet)))
    }
}
