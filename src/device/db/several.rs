//! Several parts of several shelves, read in one transaction, and taken over from the browser only as far as somebody
//! asks: a text that nobody looks at costs next to nothing.

use super::error::{DbError, Fault};
use super::read::{Asked, Found, Texts, ask_last, counted, long, result, text};
use super::transaction::Transaction;
use crate::device::events::{Listener, listen};
use crate::device::js;
use js_sys::Array;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::JsValue;
use web_sys::{IdbDatabase, IdbKeyRange, IdbObjectStore, IdbRequest};

/// A part of a shelf.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part<'a> {
    /// All of it.
    All,
    /// The records from that key on.
    From(&'a str),
    /// The last records, at most so many, 1 or more.
    Last(u32),
    /// Of the keys that begin alike, up to a slash, the last of each.
    Newest,
    /// How many records there are, and none of them: the browser goes through all.
    Count,
    /// Whether there is a record: as many as one, and not that.
    Any,
}

/// A part of a shelf as it was read.
pub struct Answer(Told);

enum Told {
    /// Keys and texts, where the browser has them.
    There(Texts),
    /// Keys and texts.
    Here(Vec<(String, String)>),
    Count(usize),
}

impl Default for Answer {
    /// Nothing.
    fn default() -> Self {
        Self::of(Vec::new())
    }
}

impl Answer {
    /// These, where the browser has them.
    pub(super) fn there(texts: Texts) -> Self {
        Self(Told::There(texts))
    }

    /// These, which are no part of what the browser keeps.
    #[must_use]
    pub fn of(rows: Vec<(String, String)>) -> Self {
        Self(Told::Here(rows))
    }

    /// So many.
    #[must_use]
    pub fn of_count(count: usize) -> Self {
        Self(Told::Count(count))
    }

    /// The records as (key, text), by rising key.
    #[must_use]
    pub fn rows(&self) -> Vec<(String, String)> {
        match &self.0 {
            Told::There(texts) => texts.pairs(),
            Told::Here(rows) => rows.clone(),
            Told::Count(_) => Vec::new(),
        }
    }

    /// How many records there are.
    #[must_use]
    pub fn count(&self) -> usize {
        match &self.0 {
            Told::There(texts) => texts.len(),
            Told::Here(rows) => rows.len(),
            Told::Count(count) => *count,
        }
    }
}

/// Keys, and the requests for the record under each.
type Each = Rc<RefCell<Vec<(String, IdbRequest)>>>;

/// What is under way of a part.
enum Under {
    Asked(Asked),
    /// It is known only when the browser has told something else, which the listener waits for.
    Walk {
        found: Found,
        _walk: Listener,
    },
    Newest {
        found: Each,
        _walk: Listener,
    },
    Count(IdbRequest),
    /// Keys, which are counted here.
    Any(IdbRequest),
}

/// Reads those parts of those shelves.
pub(super) async fn several(
    db: &IdbDatabase,
    parts: &[(&str, Part<'_>)],
) -> Result<Vec<Answer>, Fault> {
    let shelves: Vec<&str> = parts.iter().map(|(shelf, _)| *shelf).collect();
    let transaction = Transaction::read_all(db, &shelves)?;
    let begin =
        |(shelf, part): &(&str, Part<'_>)| ask(&transaction.raw().object_store(shelf)?, *part);
    let under: Result<Vec<Under>, JsValue> = parts.iter().map(begin).collect();
    let under = under.map_err(|error| transaction.give_up(&error))?;
    transaction.finish().await?;
    under.into_iter().map(told).collect()
}

fn ask(store: &IdbObjectStore, part: Part<'_>) -> Result<Under, JsValue> {
    Ok(match part {
        Part::All => Under::Asked(Asked::of(store, &JsValue::UNDEFINED, None)?),
        Part::From(key) => {
            let span = IdbKeyRange::lower_bound(&key.into())?;
            Under::Asked(Asked::of(store, &span, None)?)
        }
        Part::Last(most) => {
            let (found, walk) = ask_last(store, &JsValue::UNDEFINED, most)?;
            Under::Walk { found, _walk: walk }
        }
        Part::Newest => {
            let keys = store.get_all_keys()?;
            let found = Each::default();
            let (asked, told, store) = (Rc::clone(&found), keys.clone(), store.clone());
            let walk = listen(&keys, "success", move |_| {
                let keys = told.result().map(|list| Array::from(&list));
                for key in newest(keys.unwrap_or_default().iter().map(|key| text(&key))) {
                    // It refuses only when the transaction is over, which `finish` tells.
                    if let Ok(request) = store.get(&key.as_str().into()) {
                        asked.borrow_mut().push((key, request));
                    }
                }
            });
            Under::Newest { found, _walk: walk }
        }
        Part::Count => Under::Count(store.count()?),
        Part::Any => Under::Any(store.get_all_keys_with_key_and_limit(&JsValue::UNDEFINED, 1)?),
    })
}

fn told(under: Under) -> Result<Answer, Fault> {
    Ok(Answer(match under {
        Under::Asked(asked) => Told::There(asked.texts()?),
        Under::Walk { found, .. } => match found.borrow().as_ref() {
            Some(asked) => Told::There(asked.texts()?),
            None => Told::Here(Vec::new()),
        },
        Under::Newest { found, .. } => {
            let (mut rows, texts) = (Vec::new(), js::Texts::new());
            for (key, request) in found.take() {
                rows.push((key, long(&texts, &result(&request)?)));
            }
            Told::Here(rows)
        }
        Under::Count(request) => Told::Count(counted(&request)?),
        // One key fits.
        Under::Any(request) => Told::Count(Array::from(&result(&request)?).length() as usize),
    }))
}

/// Of rising keys that begin alike, up to a slash, the last.
pub fn newest(keys: impl Iterator<Item = String>) -> Vec<String> {
    let mut newest: Vec<String> = Vec::new();
    let beginning = |key: &str| key.split('/').next().map(str::len);
    for key in keys {
        match newest.last_mut() {
            Some(last)
                if last[..beginning(last).unwrap_or(0)] == key[..beginning(&key).unwrap_or(0)] =>
            {
                *last = key;
            }
            _ => newest.push(key),
        }
    }
    newest
}

impl super::Db {
    /// Parts of shelves, read in one transaction; in the order in which they are asked for.
    ///
    /// # Errors
    /// [`DbError`].
    pub async fn several(&self, parts: &[(&str, Part<'_>)]) -> Result<Vec<Answer>, DbError> {
        self.persist(async |db| several(db, parts).await).await
    }
}
