//! What an import changed, kept so that it can be taken back: exactly that, and nothing that came since.

use super::archive::Archive;
use super::kept::{Kept, Record, content};
use super::merge::Counted;
use super::read::{ReadError, read};
use super::session_log::SessionLog;
use super::sheet_record::SheetRecord;
use super::write::write;
use crate::order::{Map, Set};
use crate::session::{EventId, SessionId};
use crate::words::{many, t};
use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// What an import changed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Taken {
    /// Identity, UUIDv7.
    pub id: Uuid,
    /// When it was imported.
    pub at: DateTime<FixedOffset>,
    /// What was imported, in words.
    pub said: String,
    /// Ids of the records that it added.
    added: Added,
    /// Events that it added to sessions that were there.
    events: Vec<(SessionId, Vec<EventId>)>,
    /// What it put others in the place of, or removed: a file of the export format.
    before: String,
}

/// The ids of records, list by list as in a file.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Added {
    lifter: Vec<Uuid>,
    kit: Vec<Uuid>,
    body_mass: Vec<Uuid>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    body: Vec<Uuid>,
    exercises: Vec<Uuid>,
    sheets: Vec<<SheetRecord as Record>::Id>,
    programmes: Vec<Uuid>,
    sessions: Vec<SessionId>,
    removed: Vec<SessionId>,
}

impl Taken {
    /// What has to be known to come back from `after` to `mine`, of which it was made by an import.
    #[must_use]
    pub fn between(
        mine: &Archive,
        after: &Archive,
        (id, at, said): (Uuid, DateTime<FixedOffset>, String),
    ) -> Taken {
        let mut before = Archive::default();
        let added = Added {
            lifter: added(&mine.lifter, &after.lifter, &mut before.lifter),
            kit: added(&mine.kit, &after.kit, &mut before.kit),
            body_mass: added(&mine.body_mass, &after.body_mass, &mut before.body_mass),
            body: added(&mine.body, &after.body, &mut before.body),
            exercises: added(&mine.exercises, &after.exercises, &mut before.exercises),
            sheets: added(&mine.sheets, &after.sheets, &mut before.sheets),
            programmes: added(&mine.programmes, &after.programmes, &mut before.programmes),
            sessions: after
                .sessions
                .keys()
                .filter(|id| !mine.sessions.contains_key(id))
                .copied()
                .collect(),
            removed: added(&mine.removed, &after.removed, &mut before.removed),
        };
        let mut events = Vec::new();
        for (id, log) in &mine.sessions {
            let Some(now) = after.sessions.get(id) else {
                before.sessions.insert(*id, log.clone());
                continue;
            };
            if now == log {
                continue;
            }
            let more: Vec<EventId> = now
                .event_ids()
                .filter(|event| log.event(*event).is_none())
                .collect();
            let replaced = log
                .as_events()
                .iter()
                .any(|event| now.event(event.id) != Some(event));
            if replaced {
                before.sessions.insert(*id, log.clone());
            }
            if !more.is_empty() {
                events.push((*id, more));
            }
        }
        Taken {
            id,
            at,
            said,
            added,
            events,
            before: write(&before, at),
        }
    }

    /// What goes again when it is taken back, in words: `now` is what is kept, `back` what [`Taken::take_back`] makes of it.
    #[must_use]
    pub fn undone(&self, now: &Archive, back: &Archive) -> String {
        let added = &self.added;
        let sheets: Set<_> = added.sheets.iter().map(|(sheet, _)| *sheet).collect();
        let left: Set<_> = back.sheets.iter().map(SheetRecord::sheet_id).collect();
        let stay = sheets.iter().filter(|sheet| left.contains(*sheet)).count();
        let counted: [(usize, Counted); 6] = [
            (added.sessions.len(), |n| {
                many(n, "{n} session", "{n} sessions")
            }),
            (self.events.len(), |n| {
                many(
                    n,
                    "what was new in {n} session",
                    "what was new in {n} sessions",
                )
            }),
            (sheets.len() - stay, |n| many(n, "{n} sheet", "{n} sheets")),
            (stay, |n| {
                many(n, "what was new in {n} sheet", "what was new in {n} sheets")
            }),
            (added.body_mass.len(), |n| {
                many(n, "{n} body mass", "{n} body masses")
            }),
            (added.removed.len(), |n| {
                many(n, "{n} removal", "{n} removals")
            }),
        ];
        let counted = counted.into_iter().filter(|(n, _)| *n > 0);
        let mut parts: Vec<String> = counted.map(|(n, said)| said(n)).collect();
        // How many versions of them came, nobody asks.
        let rest = [
            (added.exercises.is_empty(), t("exercises of your own")),
            (added.programmes.is_empty(), t("programmes")),
            (
                added.body.is_empty(),
                t("measures and corrections of the body"),
            ),
        ];
        let came = rest.into_iter().filter(|(is_empty, _)| !is_empty);
        // What was changed since is newer than what came, and stays.
        let kit = (now.kit.newest() != back.kit.newest())
            .then(|| t("the kit is as it was before"))
            .or((!added.kit.is_empty()).then(|| t("older versions of the kit")));
        let lifter = (now.lifter.newest() != back.lifter.newest())
            .then(|| t("the settings are as they were before"))
            .or((!added.lifter.is_empty()).then(|| t("older versions of the settings")));
        let came = came.map(|(_, said)| said).chain(kit).chain(lifter);
        parts.extend(came.map(str::to_owned));
        match parts.is_empty() {
            true => t("what stood in the place of yours").to_owned(),
            false => parts.join(", "),
        }
    }

    /// What is kept without what the import added, and with what it replaced or removed as it was. What came since
    /// stays: a version written, a session done, a correction of a session that was here before the import.
    ///
    /// # Errors
    /// [`ReadError`] when what was before cannot be read.
    pub fn take_back(&self, mut now: Archive) -> Result<Archive, ReadError> {
        let before = read(&self.before)?;
        take_out(&mut now.lifter, &self.added.lifter, before.lifter);
        take_out(&mut now.kit, &self.added.kit, before.kit);
        take_out(&mut now.body_mass, &self.added.body_mass, before.body_mass);
        take_out(&mut now.body, &self.added.body, before.body);
        take_out(&mut now.exercises, &self.added.exercises, before.exercises);
        take_out(&mut now.sheets, &self.added.sheets, before.sheets);
        take_out(
            &mut now.programmes,
            &self.added.programmes,
            before.programmes,
        );
        take_out(&mut now.removed, &self.added.removed, before.removed);
        for id in &self.added.sessions {
            now.sessions.remove(id);
        }
        let events: Map<SessionId, Set<EventId>> = self
            .events
            .iter()
            .map(|(id, events)| (*id, events.iter().copied().collect()))
            .collect();
        let none = Set::new();
        let touched: Set<SessionId> = events
            .keys()
            .chain(before.sessions.keys())
            .copied()
            .collect();
        for id in touched {
            let old: Option<&SessionLog> = before.sessions.get(&id);
            let back = match now.sessions.get(&id) {
                Some(log) => log.taken_back(events.get(&id).unwrap_or(&none), old),
                // Removed by the import, or since: what was removed since stays so.
                None => old.filter(|_| now.removed.get(id).is_none()).cloned(),
            };
            if let Some(log) = back {
                now.sessions.insert(id, log);
            }
        }
        Ok(now)
    }
}

/// The ids of what is in `after` only. What is in both and differs goes into `before` as it was.
fn added<R: Record + Clone>(mine: &Kept<R>, after: &Kept<R>, before: &mut Kept<R>) -> Vec<R::Id> {
    let mut ids = Vec::new();
    for record in after.iter() {
        match mine.get(record.id()) {
            None => ids.push(record.id()),
            Some(old) if content(old) != content(record) => before.set(old.clone()),
            Some(_) => {}
        }
    }
    ids
}

fn take_out<R: Record>(now: &mut Kept<R>, added: &[R::Id], before: Kept<R>) {
    for id in added {
        now.remove(*id);
    }
    for record in before.into_records() {
        now.set(record);
    }
}
