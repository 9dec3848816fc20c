//! A programme as it is kept: a written version, or the note that it was removed.

use super::kept::Record;
use super::removed::Removed;
use crate::programme::{Programme, ProgrammeForm, ProgrammeId};
use crate::words::t;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// One version of a programme. The newest version of an id counts.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "ProgrammeForm", untagged)]
pub enum ProgrammeRecord {
    /// As written.
    Written(Box<Programme>),
    /// It was removed; its earlier versions are kept.
    Removed(Removed<ProgrammeId>),
}

impl ProgrammeRecord {
    /// What was written, unless it was removed.
    #[must_use]
    pub fn written(&self) -> Option<&Programme> {
        match self {
            ProgrammeRecord::Written(written) => Some(written),
            ProgrammeRecord::Removed(_) => None,
        }
    }

    /// The id through all versions.
    #[must_use]
    pub fn lasting_id(&self) -> &ProgrammeId {
        match self {
            ProgrammeRecord::Written(written) => &written.id,
            ProgrammeRecord::Removed(removed) => &removed.id,
        }
    }

    /// This version.
    #[must_use]
    pub fn version(&self) -> Uuid {
        match self {
            ProgrammeRecord::Written(written) => written.version,
            ProgrammeRecord::Removed(removed) => removed.version,
        }
    }
}

impl Record for ProgrammeRecord {
    type Id = Uuid;
    const WHAT: &'static str = "programme";

    fn id(&self) -> Uuid {
        self.version()
    }

    fn shown_id(&self) -> Uuid {
        self.version()
    }
}

impl TryFrom<ProgrammeForm> for ProgrammeRecord {
    type Error = String;

    fn try_from(form: ProgrammeForm) -> Result<ProgrammeRecord, String> {
        if !form.is_removed() {
            return Ok(ProgrammeRecord::Written(Box::new(form.try_into()?)));
        }
        if !form.is_bare() {
            return Err(t("a removed programme has id, version and written only").to_owned());
        }
        Ok(ProgrammeRecord::Removed(Removed::new(
            form.id,
            form.version,
            form.written,
        )))
    }
}
