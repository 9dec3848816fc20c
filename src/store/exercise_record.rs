//! An exercise of one's own as it is kept: a written version, or the note that it was removed.

use super::kept::Record;
use super::removed::Removed;
use crate::exercises::{ExerciseForm, OwnExercise};
use crate::sheet::ExerciseId;
use crate::words::t;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// One version of an exercise of one's own. The newest version of an id counts.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "ExerciseForm", untagged)]
pub enum ExerciseRecord {
    /// As written.
    Written(Box<OwnExercise>),
    /// It was removed; its earlier versions are kept.
    Removed(Removed<ExerciseId>),
}

impl ExerciseRecord {
    /// What was written, unless it was removed.
    #[must_use]
    pub fn written(&self) -> Option<&OwnExercise> {
        match self {
            ExerciseRecord::Written(written) => Some(written),
            ExerciseRecord::Removed(_) => None,
        }
    }

    /// The id through all versions.
    #[must_use]
    pub fn lasting_id(&self) -> &ExerciseId {
        match self {
            ExerciseRecord::Written(written) => &written.id,
            ExerciseRecord::Removed(removed) => &removed.id,
        }
    }

    /// This version.
    #[must_use]
    pub fn version(&self) -> Uuid {
        match self {
            ExerciseRecord::Written(written) => written.version,
            ExerciseRecord::Removed(removed) => removed.version,
        }
    }
}

impl Record for ExerciseRecord {
    type Id = Uuid;
    const WHAT: &'static str = "exercise";

    fn id(&self) -> Uuid {
        self.version()
    }

    fn shown_id(&self) -> Uuid {
        self.version()
    }
}

impl TryFrom<ExerciseForm> for ExerciseRecord {
    type Error = String;

    fn try_from(form: ExerciseForm) -> Result<ExerciseRecord, String> {
        if !form.is_removed() {
            return Ok(ExerciseRecord::Written(Box::new(form.try_into()?)));
        }
        if !form.is_bare() {
            return Err(t("a removed exercise has id, version and written only").to_owned());
        }
        Ok(ExerciseRecord::Removed(Removed::new(
            form.id,
            form.version,
            form.written,
        )))
    }
}
