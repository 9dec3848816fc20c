//! The note that a session was removed: it outlives what the session held, so that no merge brings it back.

use super::kept::Record;
use crate::session::SessionId;
use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// The note that a session was removed. Nothing of what was done is in it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RemovedSession {
    /// The session.
    pub id: SessionId,
    /// When it was removed.
    pub written: DateTime<FixedOffset>,
}

impl Record for RemovedSession {
    type Id = SessionId;
    const WHAT: &'static str = "removed session";

    fn id(&self) -> SessionId {
        self.id
    }

    fn shown_id(&self) -> Uuid {
        self.id.0
    }
}
