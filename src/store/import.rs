//! Import: read a file, merge it with what is there, and check that the whole can still be kept and exported.

use super::archive::Archive;
use super::limits::{
    BODY_MASSES_MAX, BODY_MAX, EXERCISES_MAX, KITS_MAX, LIFTERS_MAX, PROGRAMMES_MAX, SESSIONS_MAX,
    SHEETS_MAX,
};
use super::merge::Merged;
use super::read::{ReadError, read};
use super::session_log::SessionLog;
use crate::session::EVENTS_KEPT_MAX;
use crate::words::t;

/// Merges the file `text` into `mine`.
///
/// # Errors
/// [`ReadError`]: the file cannot be read, or there would be more than an export may hold. Nothing is changed then.
pub fn import(mine: Archive, text: &str) -> Result<Merged, ReadError> {
    join(mine, read(text)?)
}

/// Merges `theirs`, which was read before, into `mine`.
///
/// # Errors
/// [`ReadError::TooMany`]: there would be more than an export may hold.
pub fn join(mine: Archive, theirs: Archive) -> Result<Merged, ReadError> {
    let merged = mine.merge(theirs);
    let all = &merged.archive;
    let events = all.sessions.values().map(SessionLog::event_count).max();
    let limits = [
        (t("sessions"), all.sessions.len(), SESSIONS_MAX),
        (t("removed sessions"), all.removed.len(), SESSIONS_MAX),
        (
            t("events in one session"),
            events.unwrap_or(0),
            EVENTS_KEPT_MAX,
        ),
        (t("versions of sheets"), all.sheets.len(), SHEETS_MAX),
        (
            t("versions of exercises"),
            all.exercises.len(),
            EXERCISES_MAX,
        ),
        (
            t("versions of programmes"),
            all.programmes.len(),
            PROGRAMMES_MAX,
        ),
        (t("kit records"), all.kit.len(), KITS_MAX),
        (t("lifter records"), all.lifter.len(), LIFTERS_MAX),
        (t("body masses"), all.body_mass.len(), BODY_MASSES_MAX),
        (t("entries of the body"), all.body.len(), BODY_MAX),
    ];
    match limits.into_iter().find(|(_, given, most)| given > most) {
        Some((what, given, most)) => Err(ReadError::TooMany { what, given, most }),
        None => Ok(merged),
    }
}
