//! A session in one line: what the list of sessions shows, kept so that the list needs no events.

use super::pace::Pace;
use super::record::{SessionRecord, predicted_in_minutes};
use super::shares::{ShareOf, shares_of};
use super::volume::{Volume, VolumeLoad};
use crate::order;
use crate::say;
use crate::session::SessionId;
use crate::sheet::{Line, Note, SheetId};
use crate::units::{Rpe, Seconds};
use crate::words::{many, many_of};
use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Deserializer, Serialize};
use std::cmp::Reverse;
use std::num::NonZeroU16;

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
    /// True when it was done light.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub light: bool,
    /// How many sets were done, ramp-ups among them.
    pub sets_done: u32,
    /// Volume load of its work sets.
    pub volume: VolumeLoad,
    /// Its length in whole minutes.
    pub minutes: u32,
    /// The length predicted for its sheet, with the change-over known when it began and the longer rests of the heat.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub predicted_minutes: Option<u32>,
    /// The part of that length that depends on no change-over, in seconds; none in rows of older versions.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bare_seconds: Option<u64>,
    /// How many change-overs its sheet has.
    #[serde(default)]
    pub changes: u32,
    /// Its change-overs, in order: seconds beyond the prescribed rest.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub change_overs: Vec<Seconds>,
    /// Session RPE, when given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rpe: Option<Rpe>,
    /// What was done of each exercise: see [`shares_of`].
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub shares: Vec<ShareOf>,
    /// Note on the session.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub note: Option<Note>,
    /// Time budget of its sheet in minutes, where there was one.
    #[serde(
        default,
        skip_serializing_if = "Option::is_none",
        deserialize_with = "budget"
    )]
    pub budget_minutes: Option<NonZeroU16>,
    /// The notes on its sets, one a line: what a search looks through. Of all together the first
    /// [`SET_NOTES_CHARS_MAX`] characters.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub set_notes: String,
}

/// The budget of a row; rows of older versions may say 0 min, which is none.
fn budget<'de, D: Deserializer<'de>>(source: D) -> Result<Option<NonZeroU16>, D::Error> {
    Ok(Option::<u16>::deserialize(source)?.and_then(NonZeroU16::new))
}

/// Most characters of the notes on sets that a heading holds.
pub const SET_NOTES_CHARS_MAX: usize = 400;

impl Heading {
    /// The heading of a session; `known` are the headings that are known, the newest first.
    #[must_use]
    pub fn of(record: &SessionRecord, known: &[Heading]) -> Heading {
        let pace = Pace::before(known, Some((record.began, record.session)));
        Heading {
            session: record.session,
            began: record.began,
            ended: record.ended,
            sheet_id: record.sheet,
            sheet: record.sheet_name.clone(),
            light: record.light,
            sets_done: u32::try_from(record.lines().count()).unwrap_or(u32::MAX),
            volume: Volume::of(record).work,
            minutes: record.minutes(),
            predicted_minutes: Some(record.predicted_minutes(pace.change_over())),
            bare_seconds: Some(record.predicted.seconds(Seconds::MIN) + record.longer_rests),
            changes: u32::try_from(record.predicted.groups.len().saturating_sub(1))
                .unwrap_or(u32::MAX),
            change_overs: record.change_overs.clone(),
            rpe: record.rpe,
            shares: shares_of(record),
            note: record.note.clone(),
            budget_minutes: record.budget_minutes,
            set_notes: set_notes(record),
        }
    }

    /// True when at least one set was done, were it a ramp-up: a session that was begun and ended is no training yet.
    #[must_use]
    pub fn has_sets(&self) -> bool {
        self.sets_done > 0
    }

    /// How many of its sets were no ramp-ups: what all periods count.
    #[must_use]
    pub fn sets_of_work(&self) -> u32 {
        self.shares.iter().map(|share| share.sets).sum()
    }

    /// How many sets were done, in words, and how many of them were ramp-ups.
    #[must_use]
    pub fn sets_said(&self) -> String {
        sets_said(self.sets_done as usize, self.sets_of_work() as usize)
    }

    /// Predicts its length again with that pace. A row of an older version stays as it is.
    pub fn at_pace(&mut self, pace: Pace) {
        if let Some(bare) = self.bare_seconds {
            let changes = u64::from(self.changes) * u64::from(pace.change_over().get());
            self.predicted_minutes = Some(predicted_in_minutes(bare + changes));
        }
    }

    /// Where it stands among others: the time of its beginning, then the id.
    #[must_use]
    pub fn place(&self) -> (DateTime<FixedOffset>, SessionId) {
        (self.began, self.session)
    }

    /// Predicted and actual length side by side; none where nothing was predicted.
    #[must_use]
    pub fn predicted_and_taken(&self) -> Option<String> {
        let predicted = self.predicted_minutes?;
        Some(say!(
            "predicted {predicted} min, took {minutes} min",
            predicted,
            minutes = self.minutes
        ))
    }
}

/// So many sets in words, and how many of them are ramp-ups: all but those of work.
#[must_use]
pub fn sets_said(all: usize, of_work: usize) -> String {
    match all.saturating_sub(of_work) {
        0 => many(all, "{n} set", "{n} sets"),
        ramp_ups => many_of(
            all,
            "{n} set, to ramp up",
            "{n} sets, {ramp_ups} of them to ramp up",
            &[("ramp_ups", &ramp_ups)],
        ),
    }
}

fn set_notes(record: &SessionRecord) -> String {
    let notes = record.lines().filter_map(|(_, line)| line.note.as_ref());
    let notes: Vec<&str> = notes.map(Note::as_str).collect();
    notes.join("\n").chars().take(SET_NOTES_CHARS_MAX).collect()
}

#[cfg(test)]
mod tests {
    use super::sets_said;

    #[test]
    fn ramp_ups_among_the_sets_are_said() {
        assert_eq!(sets_said(12, 12), "12 sets");
        assert_eq!(sets_said(12, 9), "12 sets, 3 of them to ramp up");
        assert_eq!(sets_said(1, 0), "1 set, to ramp up");
    }
}
