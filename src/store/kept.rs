//! A set of immutable records, each with an id.

use crate::json;
use crate::order::Map;
use crate::words::t;
use serde::Serialize;
use std::fmt;
use uuid::Uuid;

/// A record that is written once and never changed.
pub trait Record: Serialize {
    /// What identifies it; UUIDv7 inside, so that the newest is the greatest.
    type Id: Copy + Ord + fmt::Debug;

    /// What a record of this kind is called in a sentence.
    const WHAT: &'static str;

    /// Its id.
    fn id(&self) -> Self::Id;

    /// The part of its id that is shown in messages.
    fn shown_id(&self) -> Uuid;

    /// True when it is to be kept before any other with its id, whatever they hold.
    fn goes_first(&self) -> bool {
        false
    }
}

/// What putting a record into a set did.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Put {
    /// Its id was not there.
    New,
    /// The very same record was there.
    Known,
    /// Another record was there with its id; one of them was kept.
    Conflict {
        /// JSON text of the one that was not kept.
        dropped: String,
        /// True when the record put in is the one that was kept.
        replaced: bool,
    },
}

/// A set of records, by rising id.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Kept<R: Record>(Map<R::Id, R>);

impl<R: Record> Default for Kept<R> {
    fn default() -> Kept<R> {
        Kept(Map::new())
    }
}

impl<R: Record> Kept<R> {
    /// Puts a record in.
    ///
    /// Of two different records with one id the one that goes first is kept, else the one whose JSON text is first
    /// in the order of bytes: the same one whatever the order in which they came.
    pub fn put(&mut self, record: R) -> Put {
        let Some(there) = self.0.get(&record.id()) else {
            self.0.insert(record.id(), record);
            return Put::New;
        };
        let rank = |record: &R| (!record.goes_first(), content(record));
        let (old, new) = (rank(there), rank(&record));
        if old == new {
            return Put::Known;
        }
        let replaced = new < old;
        if replaced {
            self.0.insert(record.id(), record);
        }
        Put::Conflict {
            dropped: if replaced { old.1 } else { new.1 },
            replaced,
        }
    }

    /// Puts a record in, in place of any other with its id.
    pub(super) fn set(&mut self, record: R) {
        self.0.insert(record.id(), record);
    }

    /// Takes out the record of that id.
    pub(super) fn remove(&mut self, id: R::Id) {
        self.0.remove(&id);
    }

    /// Its records by rising id.
    pub fn iter(&self) -> impl DoubleEndedIterator<Item = &R> {
        self.0.values()
    }

    /// The record of that id.
    #[must_use]
    pub fn get(&self, id: R::Id) -> Option<&R> {
        self.0.get(&id)
    }

    /// The record with the greatest id.
    #[must_use]
    pub fn newest(&self) -> Option<&R> {
        self.0.last()
    }

    /// How many there are.
    #[must_use]
    pub fn len(&self) -> usize {
        self.0.len()
    }

    /// True when there are none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// Its records by rising id, taken out.
    pub fn into_records(self) -> impl Iterator<Item = R> {
        self.0.into_values()
    }
}

/// What a kind of record is called: a [`Record::WHAT`] in the language that is spoken.
pub(super) fn called(what: &str) -> &'static str {
    match what {
        "session" => t("session"),
        "removed session" => t("removed session"),
        "event" => t("event"),
        "sheet" => t("sheet"),
        "exercise" => t("exercise"),
        "programme" => t("programme"),
        "kit record" => t("kit record"),
        "lifter record" => t("lifter record"),
        "body mass" => t("body mass"),
        "entry of the body" => t("entry of the body"),
        _ => t("record"),
    }
}

/// The JSON text of a record, in one line.
pub(super) fn content<T: Serialize>(record: &T) -> String {
    json::text(record)
}
