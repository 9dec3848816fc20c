//! The small records: the lifter's settings, the kit, body masses.

use super::kept::Record;
use crate::kit::Kit;
use crate::session::Event;
use crate::sheet::Line;
use crate::strength::Curve;
use crate::units::{Load, Unit};
use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// The lifter's settings as written at one time; the newest counts.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LifterRecord {
    /// This version, UUIDv7.
    pub version: Uuid,
    /// When it was written.
    pub written: DateTime<FixedOffset>,
    /// Unit in which loads are shown and typed.
    pub unit: Unit,
    /// What the lifter likes to be called.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub name: Option<Line>,
    /// True once the welcome with its caution was read.
    #[serde(default)]
    pub welcomed: bool,
    /// The curve that the maximum is estimated by, from the next session on.
    #[serde(default, skip_serializing_if = "Curve::is_default")]
    pub curve: Curve,
}

/// The kit as written at one time; the newest counts.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct KitRecord {
    /// This version, UUIDv7.
    pub version: Uuid,
    /// When it was written.
    pub written: DateTime<FixedOffset>,
    /// The kit.
    pub kit: Kit,
}

/// The body mass at one time.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BodyMassRecord {
    /// Identity, UUIDv7.
    pub id: Uuid,
    /// When it was taken.
    pub at: DateTime<FixedOffset>,
    /// The mass.
    pub mass: Load,
}

impl Record for LifterRecord {
    type Id = Uuid;
    const WHAT: &'static str = "lifter record";

    fn id(&self) -> Uuid {
        self.version
    }

    fn shown_id(&self) -> Uuid {
        self.version
    }
}

impl Record for KitRecord {
    type Id = Uuid;
    const WHAT: &'static str = "kit record";

    fn id(&self) -> Uuid {
        self.version
    }

    fn shown_id(&self) -> Uuid {
        self.version
    }
}

impl Record for BodyMassRecord {
    type Id = Uuid;
    const WHAT: &'static str = "body mass";

    fn id(&self) -> Uuid {
        self.id
    }

    fn shown_id(&self) -> Uuid {
        self.id
    }
}

impl Record for Event {
    type Id = crate::session::EventId;
    const WHAT: &'static str = "event";

    fn id(&self) -> Self::Id {
        self.id
    }

    fn shown_id(&self) -> Uuid {
        self.id.0
    }

    /// A session without its beginning cannot be shown, so a beginning is never dropped for something else.
    fn goes_first(&self) -> bool {
        matches!(self.what, crate::session::What::Began(_))
    }
}
