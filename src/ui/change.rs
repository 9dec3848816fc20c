//! From one state of what is kept to another: all of it in one write.

use super::books::{Anew, are_kept, entry_of, of_turns};
use super::keep::Keep;
use crate::device::db::{DbError, Parts, Write};
use crate::session::SessionId;
use crate::store::{
    Archive, Change, Shelf, Turn, changes_but_sessions, seal_whole, session_row,
    sessions_that_differ,
};

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
    let sessions = sessions_that_differ(from, to, running);
    let rows = changes_but_sessions(from, to, running);
    let mut rest: Vec<Write> = rows.into_iter().map(write).collect();
    rest.extend(more);
    let entry = |archive: &Archive, id| archive.sessions.get(&id).and_then(entry_of);
    let mut anew = None;
    if sessions.is_empty() {
        // Nothing follows.
    } else if are_kept(keep).await? {
        let turn = |session: &SessionId| Turn {
            session: *session,
            before: entry(from, *session),
            after: entry(to, *session),
        };
        rest.extend(of_turns(keep, sessions.iter().map(turn).collect()).await?);
    } else {
        anew = Some(Anew::beside(keep, &sessions).await?);
    }
    let mut made = Made {
        to,
        sessions,
        anew,
        rest,
        part: Vec::new(),
        behind: Vec::new(),
    };
    keep.apply_parts(&mut made).await
}

/// The writes of a change, made as they are asked for: some sessions at a time, then what the books say of them, then the
/// rest.
struct Made<'a> {
    to: &'a Archive,
    sessions: Vec<SessionId>,
    /// The books, where they are made anew.
    anew: Option<Anew>,
    rest: Vec<Write>,
    /// The part with sessions that was made last: all of them together are as long as the file.
    part: Vec<Write>,
    /// The parts behind the sessions, as far as they were made.
    behind: Vec<Vec<Write>>,
}

impl Made<'_> {
    fn some_sessions(&mut self, number: usize) -> Option<&[Write]> {
        let sessions = self.sessions.chunks(SESSIONS_AT_ONCE).nth(number)?;
        self.part.clear();
        for id in sessions {
            let entry = self.to.sessions.get(id).and_then(entry_of);
            if let Some((anew, entry)) = self.anew.as_mut().zip(entry) {
                anew.take(entry);
            }
            self.part.push(write(session_row(self.to, *id)));
        }
        Some(&self.part)
    }
}

impl Parts for Made<'_> {
    fn shelves(&self) -> Vec<&str> {
        let mut shelves = Vec::new();
        if !self.sessions.is_empty() {
            shelves.push(Shelf::Sessions.name());
            shelves.extend(Shelf::OF_BOOKS.map(Shelf::name));
        }
        for part in self.behind.iter().chain([&self.rest]) {
            shelves.extend(part.iter().map(Write::shelf));
        }
        shelves
    }

    fn part(&mut self, number: usize) -> Option<&[Write]> {
        let Some(number) = number.checked_sub(self.sessions.len().div_ceil(SESSIONS_AT_ONCE))
        else {
            return self.some_sessions(number);
        };
        if number == self.behind.len() {
            let books = self.anew.as_mut().and_then(Anew::next_writes);
            let next = books.unwrap_or_else(|| std::mem::take(&mut self.rest));
            self.behind.push(next);
        }
        let part = self.behind.get(number)?;
        (!part.is_empty()).then_some(part)
    }
}
