//! A sheet as it is kept: a written version, or the note that it was removed.

use super::kept::Record;
use crate::sheet::{Sheet, SheetForm, SheetId, SheetVersion};
use crate::words::t;
use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize, Serializer};
use uuid::Uuid;

/// One version of a sheet. The newest version of a sheet counts.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(try_from = "SheetForm")]
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

impl TryFrom<SheetForm> for SheetRecord {
    type Error = String;

    fn try_from(form: SheetForm) -> Result<SheetRecord, String> {
        if !form.is_removed() {
            return Ok(SheetRecord::Written(Box::new(form.try_into()?)));
        }
        if !form.is_bare() {
            return Err(t("a removed sheet has id, version and written only").to_owned());
        }
        Ok(SheetRecord::Removed(RemovedSheet {
            id: form.id,
            version: form.version,
            written: form.written,
        }))
    }
}
