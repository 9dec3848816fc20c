//! A session in one line: what the list of sessions shows, kept so that the list needs no events.

use super::record::SessionRecord;
use super::volume::{Volume, VolumeLoad};
use crate::order;
use crate::session::SessionId;
use crate::sheet::{Line, SheetId};
use crate::units::Rpe;
use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};
use std::cmp::Reverse;

/// Sorts headings as the list shows them: the newest first.
pub fn newest_first(headings: &mut [Heading]) {
    order::by_key(headings, |heading| {
        Reverse((heading.began, heading.session))
    });
}

/// A session in one line.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Heading {
    /// The session.
    pub session: SessionId,
    /// When it began.
    pub began: DateTime<FixedOffset>,
    /// When it ended; none while it is under way.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ended: Option<DateTime<FixedOffset>>,
    /// The sheet that it followed.
    pub sheet_id: SheetId,
    /// The sheet's name at the time.
    pub sheet: Line,
    /// How many sets were done, ramp-ups among them.
    pub sets_done: u32,
    /// Volume load of its work sets.
    pub volume: VolumeLoad,
    /// Its length in whole minutes.
    pub minutes: u32,
    /// Session RPE, when given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rpe: Option<Rpe>,
}

impl Heading {
    /// The heading of a session.
    #[must_use]
    pub fn of(record: &SessionRecord) -> Heading {
        Heading {
            session: record.session,
            began: record.began,
            ended: record.ended,
            sheet_id: record.sheet,
            sheet: record.sheet_name.clone(),
            sets_done: u32::try_from(record.lines().count()).unwrap_or(u32::MAX),
            volume: Volume::of(record).work,
            minutes: record.minutes(),
            rpe: record.rpe,
        }
    }
}
