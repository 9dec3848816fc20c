//! A session as the ledger shows it: what was done of each block, with its corrections.

use super::heading::sets_said;
use super::pace::{change_overs, longer_rests};
use super::tempo::kept;
use super::times::{SetTimes, duration_ms, set_times};
use crate::order::Map;
use crate::session::{Amount, Done, Event, EventId, Phase, SessionId, Slot, State, effective};
use crate::sheet::{
    Block, Line, LoadBasis, Note, Prediction, SetKey, SetKind, SheetId, SheetVersion, Target,
    Tempo, set_seconds,
};
use crate::strength::Proposal;
use crate::units::{Load, Rir, Rpe, Seconds, minutes_up};
use crate::words::t;
use chrono::{DateTime, FixedOffset};
use std::fmt;
use std::num::NonZeroU16;

/// One set that was done.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DoneLine {
    /// Which set of the sheet.
    pub key: SetKey,
    /// Kind of set.
    pub kind: SetKind,
    /// What was asked for.
    pub target: Target,
    /// Load as written on the block's basis, correction taken in.
    pub load: Option<Load>,
    /// How much was done, correction taken in.
    pub amount: Amount,
    /// Reps in reserve, when said.
    pub reserve: Option<Rir>,
    /// When it was logged.
    pub at: DateTime<FixedOffset>,
    /// Rest before it in whole seconds: from the log of the set before to the start of this one. None for the first
    /// set and where no start was recorded, as the set's own time would be in it.
    pub rest_taken: Option<u32>,
    /// The rest before it as prescribed, longer where the heat made it so; none for the first set, and for one that was
    /// added after the end.
    pub rest_asked: Option<u32>,
    /// Whole seconds from its start to the tap that stopped its cues or logged it, the count-in among them; none where no
    /// start was recorded.
    pub lasted: Option<u32>,
    /// Seconds under way as planned, by its tempo.
    pub planned_seconds: u64,
    /// The tempo of its reps, where one is prescribed.
    pub tempo: Option<Tempo>,
    /// Reps in reserve that it was to leave, where that is prescribed.
    pub reserve_asked: Option<Rir>,
    /// The event that logged it.
    pub event: EventId,
    /// The load that was proposed.
    pub proposed: Option<Load>,
    /// What it was said to be before, the first log first; empty when it was never corrected.
    pub earlier: Vec<Done>,
    /// Note on the set.
    pub note: Option<Note>,
    /// Whether it took the time of its tempo: see [`super::TempoKept`]. None where that was not timed.
    pub tempo_kept: Option<bool>,
}

/// What was done of one block.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BlockRecord {
    /// The block as it was written at the time; after a swap with the exercise that it was done as.
    pub block: Block,
    /// Its sets that were done as this exercise, in the order of the sheet.
    pub lines: Vec<DoneLine>,
    /// What was proposed for it when the session began, or when it was swapped.
    pub proposal: Option<Proposal>,
    /// What that was proposed on: the basis of the block, or the band in whose place another one was chosen.
    pub proposed_on: LoadBasis,
}

/// A session as it went.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SessionRecord {
    /// The session.
    pub session: SessionId,
    /// The sheet that it followed.
    pub sheet: SheetId,
    /// The version of that sheet.
    pub version: SheetVersion,
    /// The sheet's name at the time.
    pub sheet_name: Line,
    /// When it began.
    pub began: DateTime<FixedOffset>,
    /// When it ended; none while it is under way.
    pub ended: Option<DateTime<FixedOffset>>,
    /// From beginning to end, or to the last event while it is under way, in milliseconds. Within one run of the
    /// program by its monotonic clock where that says more, across runs by the wall clock; never negative.
    pub duration_ms: u64,
    /// True when it was done light, in a light week.
    pub light: bool,
    /// Body mass on the day, when known.
    pub body_mass: Option<Load>,
    /// Every block of the sheet in its order, also those of which nothing was done. A block that was done as two
    /// exercises is here twice, in the order in which they came.
    pub blocks: Vec<BlockRecord>,
    /// How long the sheet takes as it was written.
    pub predicted: Prediction,
    /// Seconds by which its rests were longer than written for the heat that was noted.
    pub longer_rests: u64,
    /// Change-overs from group to group, in the order they were made: what each took beyond the prescribed rest.
    pub change_overs: Vec<Seconds>,
    /// How many sets were passed over.
    pub skipped: usize,
    /// Session RPE, when given.
    pub rpe: Option<Rpe>,
    /// Note on the session.
    pub note: Option<Note>,
    /// Time budget of the sheet in minutes.
    pub budget_minutes: Option<NonZeroU16>,
}

/// Why events are no session.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unreadable {
    /// There are none.
    NoEvents,
    /// None that counts says which sheet was begun.
    NoBeginning,
}

impl fmt::Display for Unreadable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(t(match self {
            Unreadable::NoEvents => "the session has no events; there is nothing to show",
            Unreadable::NoBeginning => {
                "the session has no beginning, so its sheet is not known; keep its events and import a file that has it"
            }
        }))
    }
}

impl std::error::Error for Unreadable {}

impl SessionRecord {
    /// The record of a session from its events, in any order.
    ///
    /// # Errors
    /// [`Unreadable`] when they hold no beginning.
    pub fn from_events(events: &[Event]) -> Result<SessionRecord, Unreadable> {
        if events.is_empty() {
            return Err(Unreadable::NoEvents);
        }
        let counting = effective(events);
        let state = State::of_counting(&counting).ok_or(Unreadable::NoBeginning)?;
        let times = set_times(&counting, &state);
        let ended = match state.phase {
            Phase::Ended(moment) => Some(moment.at),
            _ => None,
        };
        let written = state.began.sheet.blocks();
        let blocks = written
            .flat_map(|block| block_records(&state, block, &times))
            .collect();
        Ok(SessionRecord {
            session: state.began.session,
            sheet: state.began.sheet.id,
            version: state.began.sheet.version,
            sheet_name: state.began.sheet.name.clone(),
            began: state.since.at,
            ended,
            duration_ms: duration_ms(&counting),
            light: state.began.light,
            body_mass: state.began.body_mass,
            blocks,
            predicted: Prediction::of(&state.began.sheet),
            longer_rests: longer_rests(&counting, &state),
            change_overs: change_overs(&counting, &state),
            skipped: state
                .slots
                .iter()
                .filter(|slot| slot.status == crate::session::Status::Skipped)
                .count(),
            rpe: state.rpe,
            note: state.note,
            budget_minutes: state.began.sheet.budget_minutes,
        })
    }

    /// The length predicted for it in whole minutes, rounded up as that of a sheet is: that of its sheet, with the longer
    /// rests that the heat made of the written ones.
    #[must_use]
    pub fn predicted_minutes(&self, change_over: Seconds) -> u32 {
        let seconds = self.predicted.seconds(change_over) + self.longer_rests;
        predicted_in_minutes(seconds)
    }

    /// Every set that was done, with its block.
    pub fn lines(&self) -> impl Iterator<Item = (&Block, &DoneLine)> {
        self.blocks
            .iter()
            .flat_map(|record| record.lines.iter().map(|line| (&record.block, line)))
    }

    /// How many sets were done, in words, and how many of them were ramp-ups.
    #[must_use]
    pub fn sets_said(&self) -> String {
        let of_work = self.lines().filter(|(_, line)| line.kind.is_work());
        sets_said(self.lines().count(), of_work.count())
    }

    /// The duration in whole minutes, rounded to the nearest.
    #[must_use]
    pub fn minutes(&self) -> u32 {
        u32::try_from((self.duration_ms + 30_000) / 60_000).unwrap_or(u32::MAX)
    }
}

/// A predicted length in whole minutes: see [`minutes_up`].
pub(super) fn predicted_in_minutes(seconds: u64) -> u32 {
    u32::try_from(minutes_up(seconds)).unwrap_or(u32::MAX)
}

/// What was done of a block, by the exercise that it was done as.
fn block_records(
    state: &State,
    written: &Block,
    times: &Map<SetKey, SetTimes>,
) -> Vec<BlockRecord> {
    let mut records: Vec<BlockRecord> = Vec::new();
    // Where the block of each lies: most sets are of the very same.
    let mut lie: Vec<&Block> = Vec::new();
    for slot in &state.slots {
        if slot.planned.key.block != written.id {
            continue;
        }
        let Some(line) = done_line(slot, times) else {
            continue;
        };
        let block = state.block_of(slot);
        let same = |known: &&Block| std::ptr::eq(*known, block) || **known == *block;
        match lie.iter().position(same) {
            Some(at) => records[at].lines.push(line),
            None => {
                lie.push(block);
                records.push(BlockRecord {
                    block: block.clone(),
                    lines: vec![line],
                    proposal: state.proposal(slot).cloned(),
                    proposed_on: state.band_proposed(slot).unwrap_or(&block.basis).clone(),
                });
            }
        }
    }
    if records.is_empty() {
        records.push(BlockRecord {
            block: written.clone(),
            lines: Vec::new(),
            proposal: None,
            proposed_on: written.basis.clone(),
        });
    }
    records
}

fn done_line(slot: &Slot, times: &Map<SetKey, SetTimes>) -> Option<DoneLine> {
    let logged = slot.logged()?;
    let times = times.get(&slot.planned.key).copied().unwrap_or_default();
    Some(DoneLine {
        key: slot.planned.key,
        kind: slot.planned.kind.clone(),
        target: slot.planned.target.clone(),
        load: logged.done.load,
        amount: logged.done.amount.clone(),
        reserve: logged.done.reserve,
        at: logged.moment.at,
        rest_taken: times.rest_taken,
        rest_asked: times.rest_asked,
        lasted: times
            .lasted_ms
            .map(|ms| u32::try_from(ms / 1000).unwrap_or(u32::MAX)),
        planned_seconds: set_seconds(&slot.planned),
        tempo: slot.planned.tempo,
        reserve_asked: slot.planned.reserve,
        event: logged.event,
        proposed: logged.proposed,
        earlier: logged.earlier.clone(),
        note: slot.note.clone(),
        tempo_kept: times.lasted_ms.and_then(|ms| kept(slot, logged, ms)),
    })
}
