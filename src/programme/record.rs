//! A programme as it is written, and its form in a file.

use super::light::LightWeek;
use super::plan::Plan;
use crate::sheet::Line;
use crate::words::t;
use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// What identifies a programme through all its versions.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct ProgrammeId(pub Uuid);

/// Which sheets follow each other, as written at one time.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Programme {
    /// Identity through all versions.
    pub id: ProgrammeId,
    /// This version, UUIDv7; the newest of an id counts.
    pub version: Uuid,
    /// When this version was written.
    pub written: DateTime<FixedOffset>,
    /// Name on screen.
    pub name: Line,
    /// How its sheets follow each other. A sheet may be missing by now: it is passed over.
    pub plan: Plan,
    /// A planned light week.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub light: Option<LightWeek>,
}

impl Programme {
    /// The light week, when the week of `now` is one.
    #[must_use]
    pub fn light_now(&self, now: DateTime<FixedOffset>) -> Option<LightWeek> {
        self.light.filter(|light| light.is_now(now))
    }
}

/// The file's form of a programme, written or removed. One struct: so an error keeps its place in the file.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct ProgrammeForm {
    pub id: ProgrammeId,
    pub version: Uuid,
    pub written: DateTime<FixedOffset>,
    removed: Option<bool>,
    name: Option<Line>,
    plan: Option<Plan>,
    light: Option<LightWeek>,
}

impl ProgrammeForm {
    /// True for the note that it was removed.
    pub fn is_removed(&self) -> bool {
        self.removed == Some(true)
    }

    /// True when nothing of a written programme is in it.
    pub fn is_bare(&self) -> bool {
        self.name.is_none() && self.plan.is_none() && self.light.is_none()
    }
}

impl TryFrom<ProgrammeForm> for Programme {
    type Error = String;

    fn try_from(form: ProgrammeForm) -> Result<Programme, String> {
        Ok(Programme {
            id: form.id,
            version: form.version,
            written: form.written,
            name: form.name.ok_or(t("the programme needs a name"))?,
            plan: form.plan.ok_or(t("the programme needs a plan"))?,
            light: form.light,
        })
    }
}
