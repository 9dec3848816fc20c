//! Where records are kept: the browser's database, or memory where the browser refuses one. What waits to be written
//! counts as kept for everyone who reads.

use crate::device::db::{Db, DbError, Write};
use crate::json;
use crate::store::{SheetRecord, Shelf, Shelved, Unreadable, aside_line, open, seal, shelved};
use serde::Serialize;
use serde::de::DeserializeOwned;
use std::cell::RefCell;
use std::collections::{BTreeMap, VecDeque};
use std::rc::Rc;

/// Where records are kept; a clone is the same.
#[derive(Clone, Default)]
pub struct Keep {
    /// Name of the database; empty for one that is in memory alone and nobody's.
    name: Rc<str>,
    /// The database; none where the browser refuses it.
    disk: Option<Db>,
    /// True when the database is only read: its layout is not the one of this version.
    only_read: bool,
    held: Rc<RefCell<Held>>,
}

/// What is in memory and not on disk.
#[derive(Default)]
struct Held {
    /// What goes nowhere else.
    kept: Vec<Write>,
    /// What waits to be written, in order.
    waiting: VecDeque<Vec<Write>>,
    /// True while what waits is being written.
    writing: bool,
    /// True since a write failed, until one succeeds.
    failing: bool,
}

impl Keep {
    /// In memory, in place of the database of that name.
    pub fn in_memory(name: &str) -> Keep {
        Keep {
            name: name.into(),
            ..Keep::default()
        }
    }

    /// On disk.
    pub fn on_disk(db: Db) -> Keep {
        Keep {
            name: db.name().into(),
            disk: Some(db),
            ..Keep::default()
        }
    }

    /// Reads from disk what is there, and keeps what comes in memory: nothing of it outlives the page.
    pub fn beside(db: Db) -> Keep {
        Keep {
            name: db.name().into(),
            disk: Some(db),
            only_read: true,
            ..Keep::default()
        }
    }

    /// Name of the database; empty for one that is nobody's.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Whether it is the same.
    pub fn is(&self, other: &Keep) -> bool {
        Rc::ptr_eq(&self.held, &other.held)
    }

    /// True for the one that writes what waits from now on; false where somebody does already.
    pub fn begin_writing(&self) -> bool {
        !std::mem::replace(&mut self.held.borrow_mut().writing, true)
    }

    /// Nobody writes what waits any more; and whether it failed.
    pub fn end_writing(&self, failed: bool) {
        let mut held = self.held.borrow_mut();
        held.writing = false;
        held.failing = failed;
    }

    /// Whether the last write failed.
    pub fn fails(&self) -> bool {
        self.held.borrow().failing
    }

    /// Puts writes at the end of those that wait.
    pub fn wait(&self, writes: Vec<Write>) {
        self.held.borrow_mut().waiting.push_back(writes);
    }

    /// The writes that are next.
    pub fn next(&self) -> Option<Vec<Write>> {
        self.held.borrow().waiting.front().cloned()
    }

    /// Takes the writes that were next off: they are done.
    pub fn done(&self) {
        self.held.borrow_mut().waiting.pop_front();
    }

    /// How many times something was to be written and is not yet.
    pub fn waiting(&self) -> usize {
        self.held.borrow().waiting.len()
    }

    /// The keys on a shelf that wait to be written.
    pub fn waiting_on(&self, shelf: Shelf) -> Vec<String> {
        let held = self.held.borrow();
        let puts = held
            .waiting
            .iter()
            .flatten()
            .filter_map(|write| match write {
                Write::Put { shelf: on, key, .. } if on == shelf.name() => Some(key.clone()),
                _ => None,
            });
        puts.collect()
    }

    /// Writes all or nothing; done only when it is on disk.
    pub async fn apply(&self, writes: Vec<Write>) -> Result<(), DbError> {
        match &self.disk {
            Some(db) if !self.only_read => db.apply(writes).await,
            _ => {
                self.held.borrow_mut().kept.extend(writes);
                Ok(())
            }
        }
    }

    /// The rows of a shelf with their keys, what waits among them.
    pub async fn rows(&self, shelf: Shelf) -> Result<Vec<(String, String)>, DbError> {
        let name = shelf.name();
        let on_disk = match &self.disk {
            // A store of another layout may lack a shelf: nothing was ever put there.
            Some(db) if self.only_read && !db.has(name).await? => Vec::new(),
            Some(db) => db.all(name).await?,
            None => Vec::new(),
        };
        let mut rows: BTreeMap<String, String> = on_disk.into_iter().collect();
        let held = self.held.borrow();
        for write in held.kept.iter().chain(held.waiting.iter().flatten()) {
            match write {
                Write::Put {
                    shelf: on,
                    key,
                    text,
                } if on == name => {
                    rows.insert(key.clone(), text.clone());
                }
                Write::Delete { shelf: on, key } if on == name => {
                    rows.remove(key);
                }
                Write::Clear { shelf: on } if on == name => rows.clear(),
                _ => {}
            }
        }
        Ok(rows.into_iter().collect())
    }

    /// All records of a shelf.
    pub async fn all<T: DeserializeOwned>(&self, shelf: Shelf) -> Result<Shelved<T>, DbError> {
        Ok(shelved(self.rows(shelf).await?))
    }

    /// The records of a shelf; the rows that cannot be read go to `lost`.
    pub async fn records<T: DeserializeOwned>(
        &self,
        shelf: Shelf,
        lost: &mut Vec<(Shelf, Unreadable)>,
    ) -> Result<Vec<T>, DbError> {
        let Shelved {
            records,
            unreadable,
        } = self.all(shelf).await?;
        lost.extend(unreadable.into_iter().map(|row| (shelf, row)));
        Ok(records)
    }

    /// The rows of a shelf as they are, each behind its shelf and key.
    pub async fn raw(&self, shelf: Shelf) -> Result<Vec<String>, DbError> {
        let rows = self.rows(shelf).await?.into_iter();
        Ok(rows
            .map(|(key, row)| aside_line(shelf, &key, &row))
            .collect())
    }

    /// How many rows are on a shelf.
    pub async fn count(&self, shelf: Shelf) -> Result<usize, DbError> {
        match &self.disk {
            Some(db) if !self.only_read => db.count(shelf.name()).await,
            _ => Ok(self.rows(shelf).await?.len()),
        }
    }

    /// One record; none when there is no such key or its row cannot be read.
    pub async fn get<T: DeserializeOwned>(
        &self,
        shelf: Shelf,
        key: &str,
    ) -> Result<Option<T>, DbError> {
        let rows = if self.waiting() == 0
            && let Some(db) = self.disk.as_ref().filter(|_| !self.only_read)
        {
            db.get(shelf.name(), key).await?
        } else {
            let rows = self.rows(shelf).await?.into_iter();
            rows.filter(|(other, _)| other == key)
                .map(|(_, row)| row)
                .next()
        };
        Ok(rows.as_deref().and_then(read))
    }
}

fn read<T: DeserializeOwned>(text: &str) -> Option<T> {
    json::parse(open(text).ok()?).ok()
}

/// The key of a version of a sheet.
pub fn sheet_key(record: &SheetRecord) -> String {
    format!("{}/{}", record.sheet_id().0, record.version().0)
}

/// The write that puts a record on a shelf, from its JSON text.
pub fn put_json(shelf: Shelf, key: &str, json: &str) -> Write {
    Write::Put {
        shelf: shelf.name().to_owned(),
        key: key.to_owned(),
        text: seal(json),
    }
}

/// The write that puts a record on a shelf.
pub fn put<T: Serialize>(shelf: Shelf, key: &str, record: &T) -> Write {
    put_json(shelf, key, &json::text(record))
}
