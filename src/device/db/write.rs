//! Writing: any number of changes, all of them or none.

use super::error::Fault;
use super::transaction::Transaction;
use crate::device::events::Listener;
use crate::order;
use std::cell::RefCell;
use wasm_bindgen::JsValue;
use web_sys::{IdbDatabase, IdbObjectStore, IdbRequest, IdbTransaction};

/// One change to what is kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Write {
    /// Keeps a text under a key, in place of what was there.
    Put {
        /// The shelf, one of those named at opening.
        shelf: String,
        /// The key, unique on its shelf; shelves are ordered by it.
        key: String,
        /// What is kept.
        text: String,
    },
    /// Removes what is under a key, if anything.
    Delete {
        /// The shelf.
        shelf: String,
        /// The key.
        key: String,
    },
    /// Empties a shelf.
    Clear {
        /// The shelf.
        shelf: String,
    },
}

impl Write {
    /// The shelf that it changes.
    #[must_use]
    pub fn shelf(&self) -> &str {
        match self {
            Self::Put { shelf, .. } | Self::Delete { shelf, .. } | Self::Clear { shelf } => shelf,
        }
    }

    fn ask(&self, store: &IdbObjectStore) -> Result<IdbRequest, JsValue> {
        match self {
            Self::Put { key, text, .. } => store.put_with_key(&text.into(), &key.into()),
            Self::Delete { key, .. } => store.delete(&key.into()),
            Self::Clear { .. } => store.clear(),
        }
    }
}

/// Asks for writes; gives the first request.
fn ask_all(transaction: &IdbTransaction, part: &[Write]) -> Result<Option<IdbRequest>, JsValue> {
    let mut first = None;
    // Writes of one shelf follow each other.
    for run in part.chunk_by(|a, b| a.shelf() == b.shelf()) {
        let Some(shelf) = run.first().map(Write::shelf) else {
            continue;
        };
        let store = transaction.object_store(shelf)?;
        for write in run {
            let request = write.ask(&store)?;
            first.get_or_insert(request);
        }
    }
    Ok(first)
}

/// Writes that belong together and are made part by part, while the browser writes those of before.
pub trait Parts {
    /// The shelves that any of them changes.
    fn shelves(&self) -> Vec<&str>;

    /// The part of that number, from 0 and not empty; none behind the last. Where the connection is lost, all are asked for
    /// once more.
    fn piece(&mut self, number: usize) -> Option<&[Write]>;
}

impl Parts for &[Write] {
    fn shelves(&self) -> Vec<&str> {
        self.iter().map(Write::shelf).collect()
    }

    fn piece(&mut self, number: usize) -> Option<&[Write]> {
        (number == 0 && !self.is_empty()).then_some(*self)
    }
}

/// All the writes in one transaction, synced; nothing of it if any of them fails.
pub(super) async fn apply(db: &IdbDatabase, parts: &RefCell<&mut dyn Parts>) -> Result<(), Fault> {
    let transaction = {
        let parts = parts.borrow();
        let mut shelves = parts.shelves();
        order::by_key(&mut shelves, |shelf| *shelf);
        shelves.dedup();
        if shelves.is_empty() {
            return Ok(());
        }
        Transaction::write(db, &shelves)?
    };
    let (mut number, mut writes) = (0, 0);
    let mut before: Option<Listener> = None;
    loop {
        let first = match parts.borrow_mut().piece(number) {
            Some(part) => {
                writes += part.len();
                ask_all(transaction.raw(), part).map_err(|error| transaction.give_up(&error))?
            }
            None => break,
        };
        let answer = first.map(|first| transaction.answers(&first));
        if before.is_some() {
            // The part of before is under way; the browser has this one to go on with.
            transaction.ended(writes).await?;
        }
        before = answer;
        number += 1;
    }
    drop(before);
    transaction.ended(writes).await
}
