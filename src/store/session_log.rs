//! The events of one session as they are kept: never without a beginning.

use super::file::at_most;
use super::kept::{Kept, Put, content};
use super::row::{HEAD as HEAD_OF_ROW, open};
use crate::order::Set;
use crate::say;
use crate::session::{EVENTS_KEPT_MAX, Event, EventId, SessionId, What};
use crate::words::t;
use serde::Deserialize;
use std::fmt;
use std::ops::Range;
use std::sync::Arc;

/// The events of one session, by rising id. At least one of them begins it, and none begins another.
#[derive(Debug, Clone, Deserialize)]
#[serde(try_from = "SessionForm")]
pub struct SessionLog {
    id: SessionId,
    /// By strictly rising id. Shared: a log is copied whenever histories are compared or joined.
    events: Arc<Vec<Event>>,
    /// The entry of the file that it was read from, where it is to be written so.
    source: Option<Source>,
}

/// A part of the text of a file, which is kept as long as anything was read from it: a copy of the part would be one of
/// most of the file.
#[derive(Debug, Clone)]
pub(super) struct Source {
    /// The whole file.
    pub file: Arc<String>,
    /// The bytes of the part.
    pub part: Range<usize>,
}

impl Source {
    fn text(&self) -> &str {
        self.file.get(self.part.clone()).unwrap_or_default()
    }
}

impl PartialEq for SessionLog {
    fn eq(&self, other: &SessionLog) -> bool {
        self.id == other.id && self.events == other.events
    }
}

impl Eq for SessionLog {}

/// What an entry of a file begins with, before the id of the session.
pub(super) const HEAD: &str = "{\n   \"id\": ";
/// What follows on the id.
pub(super) const HEAD_END: &str = ",\n   \"events\": [";
/// What stands before the first event.
const EVENT_FIRST: &str = "\n    ";
/// What stands between two events.
const EVENT_NEXT: &str = ",\n    ";
/// What the entry ends with.
const TAIL: &str = "\n   ]\n  }";
/// What of that stands behind the list of events.
pub(super) const TAIL_END: &str = "\n  }";

/// The entry of a file, from the row of a session whose checksum holds; none where it has to be written again, as rows of
/// before are in one line. That it can be read is not looked at.
#[must_use]
pub fn entry(row: &str) -> Option<&str> {
    let json = open(row).ok()?;
    is_laid_out(json).then_some(json)
}

/// True for the text of an entry as it is written here.
fn is_laid_out(json: &str) -> bool {
    json.starts_with(HEAD) && json.ends_with(TAIL)
}

/// True for events by strictly rising id.
fn rise(events: &[Event]) -> bool {
    events.windows(2).all(|two| two[0].id < two[1].id)
}

/// Why events are no session.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum UnfitSession {
    /// None of them begins it.
    NoBeginning,
    /// One of them begins another session.
    OtherSession(SessionId),
    /// Two of them have one id and differ.
    Twins(EventId),
}

impl fmt::Display for UnfitSession {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            UnfitSession::NoBeginning => {
                f.write_str(t("the session has no beginning: one of its events must be “began”"))
            }
            UnfitSession::OtherSession(id) => f.write_str(&say!("an event begins the session {id}: every “began” must name the session it stands in", id = id.0)),
            UnfitSession::Twins(id) => {
                f.write_str(&say!("two events have the id {id} and differ: give each its own", id = id.0))
            }
        }
    }
}

impl std::error::Error for UnfitSession {}

/// The file's form of a session.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct SessionForm {
    id: SessionId,
    #[serde(deserialize_with = "at_most::<_, _, EVENTS_KEPT_MAX>")]
    events: Vec<Event>,
}

impl TryFrom<SessionForm> for SessionLog {
    type Error = UnfitSession;
    fn try_from(form: SessionForm) -> Result<SessionLog, UnfitSession> {
        SessionLog::new(form.id, form.events)
    }
}

impl SessionLog {
    /// The log of a session from its events, in any order; the very same event twice is one.
    ///
    /// # Errors
    /// [`UnfitSession`].
    pub fn new(
        id: SessionId,
        events: impl IntoIterator<Item = Event>,
    ) -> Result<SessionLog, UnfitSession> {
        let events: Vec<Event> = events.into_iter().collect();
        let mut begins = false;
        for event in &events {
            if let What::Began(began) = &event.what {
                if began.session != id {
                    return Err(UnfitSession::OtherSession(began.session));
                }
                begins = true;
            }
        }
        if !begins {
            return Err(UnfitSession::NoBeginning);
        }
        // As they are written.
        let events = if rise(&events) {
            events
        } else {
            ordered(events)?
        };
        Ok(SessionLog {
            id,
            events: Arc::new(events),
            source: None,
        })
    }

    /// The log of an entry of a file, with the text of the entry; where that is laid out as it is written here, with its
    /// events in order, it is written as it stands. None where it is no session.
    pub(super) fn of_entry(
        id: SessionId,
        events: Vec<Event>,
        source: Source,
    ) -> Option<SessionLog> {
        let as_written = is_laid_out(source.text()) && rise(&events);
        let log = SessionLog::new(id, events).ok()?;
        let source = as_written.then_some(source);
        Some(SessionLog { source, ..log })
    }

    /// The session.
    #[must_use]
    pub fn id(&self) -> SessionId {
        self.id
    }

    /// Its events by rising id.
    #[must_use]
    pub fn events(&self) -> Vec<Event> {
        self.events.to_vec()
    }

    /// The same where they lie.
    #[must_use]
    pub fn as_events(&self) -> &[Event] {
        &self.events
    }

    /// How many events it has; never 0.
    #[must_use]
    pub fn event_count(&self) -> usize {
        self.events.len()
    }

    /// The text of the session in a row and, to the same byte, as an entry of a file: an event is one line.
    #[must_use]
    pub fn to_json(&self) -> String {
        if let Some(source) = &self.source {
            // With room to be made a row.
            let mut text = String::with_capacity(HEAD_OF_ROW + source.part.len());
            text.push_str(source.text());
            return text;
        }
        let mut text = format!("{}{}{HEAD_END}", HEAD, content(&self.id));
        for (at, event) in self.events.iter().enumerate() {
            text.push_str(if at > 0 { EVENT_NEXT } else { EVENT_FIRST });
            text.push_str(&content(event));
        }
        text.push_str(TAIL);
        text
    }

    /// The event of that id.
    #[must_use]
    pub fn event(&self, id: EventId) -> Option<&Event> {
        let place = self.events.binary_search_by_key(&id, |event| event.id);
        place.ok().and_then(|place| self.events.get(place))
    }

    /// The ids of its events, rising.
    pub fn event_ids(&self) -> impl Iterator<Item = EventId> {
        self.events.iter().map(|event| event.id)
    }

    /// The log without the events `added`, and with those that `before` has in another form as they are there. Nothing
    /// when that leaves no beginning.
    pub(super) fn taken_back(
        &self,
        added: &Set<EventId>,
        before: Option<&SessionLog>,
    ) -> Option<SessionLog> {
        let left = self
            .events
            .iter()
            .filter(|event| !added.contains(&event.id));
        let as_before =
            left.map(|event| before.and_then(|log| log.event(event.id)).unwrap_or(event));
        SessionLog::new(self.id, as_before.cloned()).ok()
    }

    /// Takes the events of the same session that only `other` has; says whether there was one.
    pub fn gain(&mut self, other: SessionLog) -> bool {
        let taken = self.take(other);
        taken.iter().any(|(_, put)| *put != Put::Known)
    }

    /// Takes the events of the same session from `other`; says what each did. Of two that differ under one id one stays
    /// by the rule of [`Kept::put`].
    pub(super) fn take(&mut self, other: SessionLog) -> Vec<(EventId, Put)> {
        let mut done = Vec::new();
        for event in other.events.iter() {
            let place = self
                .events
                .binary_search_by_key(&event.id, |event| event.id);
            let put = match place {
                Ok(place) if self.events[place] == *event => Put::Known,
                Ok(place) => {
                    let mut one = Kept::default();
                    one.put(self.events[place].clone());
                    let put = one.put(event.clone());
                    let stays = one.into_records().next();
                    Arc::make_mut(&mut self.events).splice(place..=place, stays);
                    put
                }
                Err(place) => {
                    Arc::make_mut(&mut self.events).insert(place, event.clone());
                    Put::New
                }
            };
            done.push((event.id, put));
        }
        if done.iter().any(|(_, put)| *put != Put::Known) {
            self.source = None;
        }
        done
    }
}

/// Events by rising id, each once.
fn ordered(events: Vec<Event>) -> Result<Vec<Event>, UnfitSession> {
    let mut kept = Kept::default();
    for event in events {
        let id = event.id;
        if let Put::Conflict { .. } = kept.put(event) {
            return Err(UnfitSession::Twins(id));
        }
    }
    Ok(kept.into_records().collect())
}
