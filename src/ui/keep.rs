//! Where records are kept: the browser's database, or memory where the browser refuses one. What waits to be written
//! counts as kept for everyone who reads.

mod queue;
mod whole;

use crate::device::db::{Answer, Db, DbError, Part, Parts, Take, Write, newest};
use crate::device::oneshot::OneShot;
use crate::json;
use crate::store::{
    END, Rows, SheetRecord, Shelf, Shelved, Shelves, Unreadable, aside_line, open, seal, shelved,
};
use serde::Serialize;
use serde::de::DeserializeOwned;
use std::cell::RefCell;
use std::collections::VecDeque;
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
    /// True when what waits does not count.
    settled: bool,
    held: Rc<RefCell<Held>>,
}

/// What is in memory and not on disk.
#[derive(Default)]
struct Held {
    /// What goes nowhere else.
    kept: Vec<Write>,
    /// What waits to be written, in order.
    waiting: VecDeque<Waiting>,
    /// True while what waits is being written.
    writing: bool,
    /// Those who wait until nothing is being written.
    turns: Vec<OneShot<()>>,
    /// True since a write failed, until one succeeds.
    failing: bool,
}

/// Writes of one transaction that wait.
struct Waiting {
    asked: Vec<Write>,
    /// What follows from them for the books, as far as that is known.
    more: Vec<Write>,
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

    /// The same without what waits: what the writes that are next come to.
    pub fn settled(&self) -> Keep {
        Keep {
            settled: true,
            ..self.clone()
        }
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

    /// The same of writes that are made part by part.
    pub async fn apply_parts(&self, parts: &mut dyn Parts) -> Result<(), DbError> {
        match &self.disk {
            Some(db) if !self.only_read => db.apply_parts(parts).await,
            _ => {
                for number in 0.. {
                    let Some(part) = parts.piece(number) else {
                        break;
                    };
                    self.held.borrow_mut().kept.extend_from_slice(part);
                }
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
        let held = self.held.borrow();
        Ok(whole::after(on_disk, self.beside_disk(&held), name))
    }

    /// Gives the rows of a shelf with their keys, by rising key, what waits among them.
    pub async fn walk<'a>(&self, shelf: Shelf, take: &'a mut Take<'a>) -> Result<(), DbError> {
        if let Some(db) = self.disk_of(shelf) {
            return db.walk(shelf.name(), take).await;
        }
        let rows = self.rows(shelf).await?;
        rows.into_iter().for_each(|(key, row)| take(key, &row));
        Ok(())
    }

    /// What counts and is not on disk, in order.
    fn beside_disk<'a>(&self, held: &'a Held) -> impl Iterator<Item = &'a Write> {
        let waiting = held.waiting.iter().filter(|_| !self.settled);
        let waiting = waiting.flat_map(|waiting| waiting.asked.iter().chain(&waiting.more));
        held.kept.iter().chain(waiting)
    }

    /// The database, where a shelf is all there.
    fn disk_of(&self, shelf: Shelf) -> Option<&Db> {
        let held = self.held.borrow();
        let mut beside = self.beside_disk(&held);
        let all = !self.only_read && beside.all(|write| write.shelf() != shelf.name());
        self.disk.as_ref().filter(|_| all)
    }

    /// The rows of a span of a shelf, read whole.
    async fn within(&self, shelf: Shelf, (from, to): (&str, &str)) -> Result<Rows, DbError> {
        let mut rows = self.rows(shelf).await?;
        rows.retain(|(key, _)| (from..to).contains(&key.as_str()));
        Ok(rows)
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
        } = shelved(self.rows(shelf).await?);
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

    /// The keys on a shelf, rising.
    pub async fn keys(&self, shelf: Shelf) -> Result<Vec<String>, DbError> {
        if let Some(db) = self.disk_of(shelf) {
            return db.keys(shelf.name()).await;
        }
        let rows = self.rows(shelf).await?;
        Ok(rows.into_iter().map(|(key, _)| key).collect())
    }

    /// How many rows are on a shelf.
    pub async fn count(&self, shelf: Shelf) -> Result<usize, DbError> {
        match self.disk_of(shelf) {
            Some(db) => db.count(shelf.name()).await,
            None => Ok(self.rows(shelf).await?.len()),
        }
    }

    /// Parts of shelves: in one go where all of it is on disk, else one after the other.
    pub async fn several(&self, parts: &[(Shelf, Part<'_>)]) -> Result<Vec<Answer>, DbError> {
        let named: Vec<(&str, Part<'_>)> = parts
            .iter()
            .map(|(shelf, part)| (shelf.name(), *part))
            .collect();
        let all = parts
            .iter()
            .all(|(shelf, _)| self.disk_of(*shelf).is_some());
        if let Some(db) = self.disk.as_ref().filter(|_| all) {
            return db.several(&named).await;
        }
        let mut answers = Vec::new();
        for (shelf, part) in parts {
            answers.push(match part {
                Part::All => Answer::of(self.rows(*shelf).await?),
                Part::From(key) => Answer::of(self.within(*shelf, (key, END)).await?),
                Part::Last(most) => Answer::of(self.last(*shelf, ("", END), *most).await?),
                Part::Newest => {
                    let newest = newest(self.keys(*shelf).await?.into_iter());
                    Answer::of(self.some(*shelf, newest).await?)
                }
                Part::Count => Answer::of_count(self.count(*shelf).await?),
                Part::Any => Answer::of_count(self.count(*shelf).await?.min(1)),
            });
        }
        Ok(answers)
    }

    /// One record; none when there is no such key or its row cannot be read.
    pub async fn get<T: DeserializeOwned>(
        &self,
        shelf: Shelf,
        key: &str,
    ) -> Result<Option<T>, DbError> {
        let rows = self.some(shelf, vec![key.to_owned()]).await?;
        Ok(rows.first().and_then(|(_, row)| read(row)))
    }
}

impl Shelves for Keep {
    type Fault = DbError;

    async fn first(&self, shelf: Shelf, span: (&str, &str), most: u32) -> Result<Rows, DbError> {
        if let Some(db) = self.disk_of(shelf) {
            return db.first(shelf.name(), span, most).await;
        }
        let mut rows = self.within(shelf, span).await?;
        rows.truncate(most as usize);
        Ok(rows)
    }

    async fn last(&self, shelf: Shelf, span: (&str, &str), most: u32) -> Result<Rows, DbError> {
        if let Some(db) = self.disk_of(shelf) {
            return db.last(shelf.name(), span, most).await;
        }
        let mut rows = self.within(shelf, span).await?;
        let surplus = rows.len().saturating_sub(most as usize);
        rows.drain(..surplus);
        Ok(rows)
    }

    async fn some(&self, shelf: Shelf, keys: Vec<String>) -> Result<Rows, DbError> {
        if let Some(db) = self.disk_of(shelf) {
            return db.some(shelf.name(), &keys).await;
        }
        let mut rows = self.rows(shelf).await?;
        rows.retain(|(key, _)| keys.contains(key));
        Ok(rows)
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
