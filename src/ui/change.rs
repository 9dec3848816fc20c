//! From one state of what is kept to another: all of it in one write.

use super::books::{Anew, are_kept, entry_of, of_turns};
use super::keep::Keep;
use crate::device::db::{DbError, Parts, Write};
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

/// Sessions whose rows are made in one go.
const SESSIONS_AT_ONCE: usize = 64;

/// Makes `to` of `from` in one write, with what follows for the books where sessions changed, and `more`.
///
/// The session `running` on the floor stays there: its events are rows of their own.
pub async fn apply(
    keep: &Keep,
    from: &Archive,
    to: &Archive,
    running: Option<SessionId>,
    more: Vec<Write>,
) -> Result<(), DbError> {
    let rows = changes(from, to, running);
    let sessions = || {
        let rows = rows.iter().filter(|row| row.shelf == Shelf::Sessions);
        rows.filter_map(session_of)
    };
    let entry = |archive: &Archive, id| archive.sessions.get(&id).and_then(entry_of);
    let mut last = more;
    let mut anew = None;
    if sessions().next().is_none() {
    } else if are_kept(keep).await? {
        let turn = |session| Turn {
            session,
            before: entry(from, session),
            after: entry(to, session),
        };
        last.extend(of_turns(keep, sessions().map(turn).collect()).await?);
    } else {
        anew = Some(Anew::beside(keep, &sessions().collect()).await?);
    }
    let mut made = Made {
        to,
        rows: rows.into_iter(),
        anew,
        last,
        writes: Vec::new(),
        ends: vec![0],
    };
    keep.apply_parts(&mut made).await
}

/// The session of a row of that shelf.
fn session_of(row: &Change) -> Option<SessionId> {
    row.key.parse().ok().map(SessionId)
}

/// The writes of a change as far as they were made.
struct Made<'a> {
    to: &'a Archive,
    /// Rows that are to be made.
    rows: std::vec::IntoIter<Change>,
    /// The books, where they are made anew.
    anew: Option<Anew>,
    /// What else is to be written.
    last: Vec<Write>,
    writes: Vec<Write>,
    /// Where each part ends in them, the first being empty.
    ends: Vec<usize>,
}

impl Made<'_> {
    /// Makes the next part: some rows while there are any, and what the books say of them; then the books.
    fn make(&mut self) {
        for row in self.rows.by_ref().take(SESSIONS_AT_ONCE) {
            if row.shelf == Shelf::Sessions
                && let Some(anew) = &mut self.anew
                && let Some(log) = session_of(&row).and_then(|id| self.to.sessions.get(&id))
                && let Some(entry) = entry_of(log)
            {
                anew.take(entry);
            }
            self.writes.push(write(row));
        }
        if self.ends.last() == Some(&self.writes.len()) {
            let books = self.anew.as_mut().and_then(Anew::next_writes);
            let more = books.unwrap_or_else(|| std::mem::take(&mut self.last));
            self.writes.extend(more);
        }
    }
}

impl Parts for Made<'_> {
    fn shelves(&self) -> Vec<&str> {
        let rows = self.rows.as_slice().iter().map(|row| row.shelf.name());
        let books = Shelf::OF_BOOKS.iter().filter(|_| self.anew.is_some());
        let made = self.writes.iter().chain(&self.last).map(Write::shelf);
        rows.chain(books.map(|shelf| shelf.name()))
            .chain(made)
            .collect()
    }

    fn part(&mut self, number: usize) -> Option<&[Write]> {
        if number + 1 == self.ends.len() {
            self.make();
            self.ends.push(self.writes.len());
        }
        let (from, to) = (*self.ends.get(number)?, *self.ends.get(number + 1)?);
        self.writes.get(from..to).filter(|part| !part.is_empty())
    }
}
