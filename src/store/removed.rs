//! The note that something was removed; its earlier versions are kept.

use chrono::{DateTime, FixedOffset};
use serde::Serialize;
use uuid::Uuid;

/// The note that what has the id `id` was removed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Removed<I> {
    /// What was removed.
    pub id: I,
    /// This version, newer than all that it removes.
    pub version: Uuid,
    /// When it was removed.
    pub written: DateTime<FixedOffset>,
    /// How the file tells it from a written version.
    removed: bool,
}

impl<I> Removed<I> {
    /// The note.
    pub fn new(id: I, version: Uuid, written: DateTime<FixedOffset>) -> Removed<I> {
        Removed {
            id,
            version,
            written,
            removed: true,
        }
    }
}
