//! Writing: any number of changes, all of them or none.

use super::error::Fault;
use super::transaction::Transaction;
use crate::order;
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

/// Asks for writes of one shelf.
fn ask_all(transaction: &IdbTransaction, run: &[Write]) -> Result<(), JsValue> {
    let Some(first) = run.first() else {
        return Ok(());
    };
    let store = transaction.object_store(first.shelf())?;
    for write in run {
        write.ask(&store)?;
    }
    Ok(())
}

/// All the writes in one transaction, synced; nothing of it if any of them fails.
pub(super) async fn apply(db: &IdbDatabase, writes: &[Write]) -> Result<(), Fault> {
    let mut shelves: Vec<&str> = writes.iter().map(Write::shelf).collect();
    order::by_key(&mut shelves, |shelf| *shelf);
    shelves.dedup();
    if shelves.is_empty() {
        return Ok(());
    }
    let transaction = Transaction::write(db, &shelves)?;
    // Writes of one shelf follow each other.
    for run in writes.chunk_by(|a, b| a.shelf() == b.shelf()) {
        ask_all(transaction.raw(), run).map_err(|error| transaction.give_up(&error))?;
    }
    transaction.finish_all(writes.len()).await
}
