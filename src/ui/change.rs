//! From one state of what is kept to another: all of it in one write.

use super::books::{entry_of, of_turns};
use super::keep::Keep;
use crate::device::db::{DbError, Write};
use crate::session::SessionId;
use crate::store::{Archive, Change, Shelf, Turn, changes, seal_whole};

/// The write that takes a row away.
pub fn delete(shelf: Shelf, key: &str) -> Write {
    Write::Delete {
        shelf: shelf.name().to_owned(),
        key: key.to_owned(),
    }
}

/// The write of a row that changes.
pub fn write(Change { shelf, key, json }: Change) -> Write {
    match json {
        Some(json) => Write::Put {
            shelf: shelf.name().to_owned(),
            key,
            text: seal_whole(json),
        },
        None => delete(shelf, &key),
    }
}

/// The writes that make `to` of `from`, with what follows for the books where sessions changed.
///
/// The session `running` on the floor stays there: its events are rows of their own.
pub async fn writes(
    keep: &Keep,
    from: &Archive,
    to: &Archive,
    running: Option<SessionId>,
) -> Result<Vec<Write>, DbError> {
    let rows = changes(from, to, running);
    let sessions = rows.iter().filter(|row| row.shelf == Shelf::Sessions);
    let turns = sessions.filter_map(|row| {
        let session = SessionId(row.key.parse().ok()?);
        let entry = |archive: &Archive| archive.sessions.get(&session).and_then(entry_of);
        Some(Turn {
            session,
            before: entry(from),
            after: entry(to),
        })
    });
    let books = of_turns(keep, turns.collect()).await?;
    let mut writes: Vec<Write> = rows.into_iter().map(write).collect();
    writes.extend(books);
    Ok(writes)
}
