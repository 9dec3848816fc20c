//! The store of record: texts by key on named shelves, in the browser's IndexedDB.
//!
//! A write is reported as done only when its transaction has completed with strict durability, so a
//! killed browser loses nothing that was shown as saved. Phones drop the connection of a page in
//! the background; a lost connection is opened again and the operation tried once more, which is
//! safe because every write names its key.

mod connection;
mod error;
mod read;
mod several;
mod transaction;
mod write;

pub use error::DbError;
pub use read::{First, Take};
pub use several::{Answer, Part, newest};
pub use write::{Parts, Write};

use connection::Connection;
use error::Fault;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::JsValue;
use web_sys::IdbDatabase;

/// An open store; a clone is the same store.
#[derive(Clone)]
pub struct Db {
    inner: Rc<Inner>,
}

struct Inner {
    name: String,
    /// None: whichever version is on this device.
    version: Option<u32>,
    shelves: Vec<String>,
    connection: RefCell<Option<Rc<Connection>>>,
}

impl Db {
    /// Opens the store and creates the shelves that are missing; nothing is ever removed.
    ///
    /// `version` is a whole number from 1; shelves are added only when it is higher than what
    /// is on this device. All of them are added in one transaction, or none.
    ///
    /// # Errors
    /// [`DbError`], after ten seconds at the latest.
    pub async fn open(name: &str, version: u32, shelves: &[&str]) -> Result<Self, DbError> {
        let db = Self::of(name, Some(version), shelves);
        db.connection().await?;
        Ok(db)
    }

    /// Opens the store as it is on this device, whatever its version, and changes nothing in it;
    /// `None` where there is none.
    ///
    /// # Errors
    /// [`DbError`], after ten seconds at the latest.
    pub async fn as_it_is(name: &str) -> Result<Option<Self>, DbError> {
        let db = Self::of(name, None, &[]);
        match db.connection().await {
            Ok(_) => Ok(Some(db)),
            Err(DbError::Absent) => Ok(None),
            Err(error) => Err(error),
        }
    }

    fn of(name: &str, version: Option<u32>, shelves: &[&str]) -> Self {
        Self {
            inner: Rc::new(Inner {
                name: name.to_owned(),
                version,
                shelves: shelves.iter().map(|&shelf| shelf.to_owned()).collect(),
                connection: RefCell::new(None),
            }),
        }
    }

    /// Its name.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.inner.name
    }

    /// The version of the layout that is on this device; 0 while there is no connection.
    #[must_use]
    pub fn version(&self) -> u32 {
        // Versions are whole numbers far below 2^32.
        self.live()
            .map_or(0, |connection| connection.db().version() as u32)
    }

    /// Whether the store has such a shelf; a store of another version may lack one.
    ///
    /// # Errors
    /// [`DbError`].
    pub async fn has(&self, shelf: &str) -> Result<bool, DbError> {
        let connection = self.connection().await?;
        Ok(connection.db().object_store_names().contains(shelf))
    }

    /// The same store by the same connection, from now on in the version that it has: a newer
    /// one, made by another tab, is not written into, and one that was erased is not made again.
    #[must_use]
    pub fn pinned(self) -> Self {
        let held = self.inner.connection.borrow_mut().take();
        let version = held.as_ref().map(|held| held.db().version() as u32);
        let pinned = Self::of(&self.inner.name, version, &[]);
        *pinned.inner.connection.borrow_mut() = held;
        pinned
    }

    /// Ends the connection, so that another one may change the layout.
    pub fn close(&self) {
        self.inner.connection.borrow_mut().take();
    }

    /// Makes all the changes, in order, in one transaction; `Ok` once they are on disk.
    ///
    /// # Errors
    /// [`DbError`]; then none of the changes was made.
    pub async fn apply(&self, writes: Vec<Write>) -> Result<(), DbError> {
        self.apply_parts(&mut writes.as_slice()).await
    }

    /// The same of changes that are made part by part.
    ///
    /// # Errors
    /// [`DbError`]; then none of the changes was made.
    pub async fn apply_parts(&self, parts: &mut dyn Parts) -> Result<(), DbError> {
        let parts = RefCell::new(parts);
        self.persist(async |db| write::apply(db, &parts).await)
            .await
    }

    /// The text under a key, if there is one.
    ///
    /// # Errors
    /// [`DbError`].
    pub async fn get(&self, shelf: &str, key: &str) -> Result<Option<String>, DbError> {
        self.persist(async |db| read::get(db, shelf, key).await)
            .await
    }

    /// Everything on a shelf as (key, text), by ascending key.
    ///
    /// # Errors
    /// [`DbError`].
    pub async fn all(&self, shelf: &str) -> Result<Vec<(String, String)>, DbError> {
        let mut all = Vec::new();
        self.walk(shelf, &mut |key, text| all.push((key, text.to_owned())))
            .await?;
        Ok(all)
    }

    /// Gives everything on a shelf as key and text, by ascending key: as it was at one time, and never all at once.
    ///
    /// # Errors
    /// [`DbError`]; some may have been given then.
    pub async fn walk<'a>(&self, shelf: &str, take: &'a mut Take<'a>) -> Result<(), DbError> {
        self.walk_after(&[], &mut |_| {}, shelf, take).await
    }

    /// As [`Self::walk`], and before it gives everything on the shelves `beside`: all as it was at one time, unless the
    /// browser closes the database meanwhile: then it goes on with the rest as it is by then.
    ///
    /// # Errors
    /// [`DbError`]; some may have been given then.
    pub async fn walk_after<'a>(
        &self,
        beside: &[&str],
        first: &'a mut First<'a>,
        shelf: &str,
        take: &'a mut Take<'a>,
    ) -> Result<(), DbError> {
        // On another connection it goes on where it was.
        let walk = read::Walk {
            first: Some(first).into(),
            behind: JsValue::UNDEFINED.into(),
            take: take.into(),
        };
        self.persist(async |db| read::walk(db, beside, shelf, &walk).await)
            .await
    }

    /// The keys on a shelf, rising.
    ///
    /// # Errors
    /// [`DbError`].
    pub async fn keys(&self, shelf: &str) -> Result<Vec<String>, DbError> {
        self.persist(async |db| read::keys(db, shelf).await).await
    }

    /// The records with those keys that there are, as (key, text).
    ///
    /// # Errors
    /// [`DbError`].
    pub async fn some(
        &self,
        shelf: &str,
        keys: &[String],
    ) -> Result<Vec<(String, String)>, DbError> {
        self.persist(async |db| read::some(db, shelf, keys).await)
            .await
    }

    /// The first records of a span, at most `most`, as (key, text) by rising key: keys from the
    /// first of `span` on, before the second. `u32::MAX` is all of them.
    ///
    /// # Errors
    /// [`DbError`].
    pub async fn first(
        &self,
        shelf: &str,
        span: (&str, &str),
        most: u32,
    ) -> Result<Vec<(String, String)>, DbError> {
        self.persist(async |db| read::first(db, shelf, span, most).await)
            .await
    }

    /// The last records of a span, at most `most`, by rising key as well.
    ///
    /// # Errors
    /// [`DbError`].
    pub async fn last(
        &self,
        shelf: &str,
        span: (&str, &str),
        most: u32,
    ) -> Result<Vec<(String, String)>, DbError> {
        self.persist(async |db| read::last(db, shelf, span, most).await)
            .await
    }

    /// How many records are on a shelf.
    ///
    /// # Errors
    /// [`DbError`].
    pub async fn count(&self, shelf: &str) -> Result<usize, DbError> {
        self.persist(async |db| read::count(db, shelf).await).await
    }

    /// Does it, and once more on a fresh connection if the first was lost on the way.
    async fn persist<T>(
        &self,
        work: impl AsyncFn(&IdbDatabase) -> Result<T, Fault>,
    ) -> Result<T, DbError> {
        let first = self.connection().await?;
        match work(first.db()).await {
            Err(Fault::Connection(_)) => {
                self.let_go(&first);
                let second = self.connection().await?;
                work(second.db()).await.map_err(Fault::into_error)
            }
            done => done.map_err(Fault::into_error),
        }
    }

    /// The connection there is, or a new one. Opening is tried twice as well: after a sleep some
    /// phones refuse the first try, or never answer it.
    async fn connection(&self) -> Result<Rc<Connection>, DbError> {
        if let Some(connection) = self.live() {
            return Ok(connection);
        }
        let inner = &self.inner;
        let open = || connection::open(&inner.name, inner.version, &inner.shelves);
        let fresh = match open().await {
            Err(Fault::Connection(_)) => open().await,
            answer => answer,
        };
        let fresh = fresh.map_err(Fault::into_error)?;
        // Another operation may have opened one meanwhile; then ours is closed again.
        if let Some(connection) = self.live() {
            return Ok(connection);
        }
        let fresh = Rc::new(fresh);
        *inner.connection.borrow_mut() = Some(Rc::clone(&fresh));
        Ok(fresh)
    }

    fn live(&self) -> Option<Rc<Connection>> {
        self.inner
            .connection
            .borrow()
            .as_ref()
            .filter(|connection| !connection.is_gone())
            .cloned()
    }

    /// Forgets a connection that failed, unless it has been replaced already.
    fn let_go(&self, failed: &Rc<Connection>) {
        let mut held = self.inner.connection.borrow_mut();
        if held.as_ref().is_some_and(|held| Rc::ptr_eq(held, failed)) {
            *held = None;
        }
    }
}
