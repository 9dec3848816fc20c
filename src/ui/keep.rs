//! Where records are kept: the browser's database, or memory where the browser refuses one.

use crate::device::db::{Db, DbError, Write};
use crate::json;
use crate::store::{SheetRecord, Shelf, open, seal};
use serde::Serialize;
use serde::de::DeserializeOwned;
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::rc::Rc;

/// Where records are kept.
#[derive(Clone)]
pub enum Keep {
    /// On disk.
    Disk(Db),
    /// In memory: nothing outlives the page, and the screen says so.
    Memory(Rc<RefCell<BTreeMap<(String, String), String>>>),
}

impl Default for Keep {
    fn default() -> Keep {
        Keep::Memory(Rc::default())
    }
}

/// The records of a shelf, and the rows of it that could not be read.
pub struct Shelved<T> {
    /// Readable records by ascending key.
    pub records: Vec<T>,
    /// Keys and texts of rows that could not be read.
    pub unreadable: Vec<(String, String)>,
}

impl Keep {
    /// Writes all or nothing; done only when it is on disk.
    pub async fn apply(&self, writes: Vec<Write>) -> Result<(), DbError> {
        match self {
            Keep::Disk(db) => db.apply(writes).await,
            Keep::Memory(rows) => {
                let mut rows = rows.borrow_mut();
                for write in writes {
                    match write {
                        Write::Put { shelf, key, text } => {
                            rows.insert((shelf, key), text);
                        }
                        Write::Delete { shelf, key } => {
                            rows.remove(&(shelf, key));
                        }
                        Write::Clear { shelf } => rows.retain(|(other, _), _| *other != shelf),
                    }
                }
                Ok(())
            }
        }
    }

    async fn rows(&self, shelf: Shelf) -> Result<Vec<(String, String)>, DbError> {
        match self {
            Keep::Disk(db) => db.all(shelf.name()).await,
            Keep::Memory(rows) => {
                let rows = rows.borrow();
                let here = rows.iter().filter(|((other, _), _)| other == shelf.name());
                Ok(here
                    .map(|((_, key), text)| (key.clone(), text.clone()))
                    .collect())
            }
        }
    }

    /// All records of a shelf.
    pub async fn all<T: DeserializeOwned>(&self, shelf: Shelf) -> Result<Shelved<T>, DbError> {
        let mut shelved = Shelved {
            records: Vec::new(),
            unreadable: Vec::new(),
        };
        for (key, text) in self.rows(shelf).await? {
            match read(&text) {
                Some(record) => shelved.records.push(record),
                None => shelved.unreadable.push((key, text)),
            }
        }
        Ok(shelved)
    }

    /// The rows of a shelf as they are, each behind its shelf and key.
    pub async fn raw(&self, shelf: Shelf) -> Result<Vec<String>, DbError> {
        let rows = self.rows(shelf).await?.into_iter();
        Ok(rows
            .map(|(key, row)| format!("{} {key} {row}", shelf.name()))
            .collect())
    }

    /// How many rows are on a shelf.
    pub async fn count(&self, shelf: Shelf) -> Result<usize, DbError> {
        match self {
            Keep::Disk(db) => db.count(shelf.name()).await,
            Keep::Memory(_) => Ok(self.rows(shelf).await?.len()),
        }
    }

    /// One record; none when there is no such key or its row cannot be read.
    pub async fn get<T: DeserializeOwned>(
        &self,
        shelf: Shelf,
        key: &str,
    ) -> Result<Option<T>, DbError> {
        let text = match self {
            Keep::Disk(db) => db.get(shelf.name(), key).await?,
            Keep::Memory(rows) => rows
                .borrow()
                .get(&(shelf.name().to_owned(), key.to_owned()))
                .cloned(),
        };
        Ok(text.as_deref().and_then(read))
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
