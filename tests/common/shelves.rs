//! Shelves in memory, and the books kept on them as the app keeps them.

use stanchion::ledger::SessionRecord;
use stanchion::session::{Event, SessionId};
use stanchion::store::{Change, Entry, Remaking, Rows, Shelf, Shelves, Turn, seal, turned};
use std::collections::BTreeMap;
use std::convert::Infallible;
use std::pin::pin;
use std::task::{Context, Poll, Waker};

/// Rows by shelf and key, sealed as on disk.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Memory(pub BTreeMap<(Shelf, String), String>);

/// The value of a future that never has to wait.
pub fn now<F: Future>(future: F) -> F::Output {
    match pin!(future).poll(&mut Context::from_waker(Waker::noop())) {
        Poll::Ready(value) => value,
        Poll::Pending => panic!("memory never waits"),
    }
}

impl Memory {
    fn span(&self, shelf: Shelf, (from, to): (&str, &str)) -> Rows {
        let all = self.0.iter().filter(|((on, _), _)| *on == shelf);
        all.filter(|((_, key), _)| (from..to).contains(&key.as_str()))
            .map(|((_, key), row)| (key.clone(), row.clone()))
            .collect()
    }

    pub fn apply(&mut self, changes: Vec<Change>) {
        for Change { shelf, key, json } in changes {
            match json {
                Some(json) => self.0.insert((shelf, key), seal(&json)),
                None => self.0.remove(&(shelf, key)),
            };
        }
    }

    pub fn turn(&mut self, turns: &[Turn]) {
        let changes = now(turned(self, turns)).unwrap();
        self.apply(changes);
    }
}

impl Shelves for Memory {
    type Fault = Infallible;

    async fn first(&self, shelf: Shelf, span: (&str, &str), most: u32) -> Result<Rows, Infallible> {
        let mut rows = self.span(shelf, span);
        rows.truncate(most as usize);
        Ok(rows)
    }

    async fn last(&self, shelf: Shelf, span: (&str, &str), most: u32) -> Result<Rows, Infallible> {
        let mut rows = self.span(shelf, span);
        let surplus = rows.len().saturating_sub(most as usize);
        rows.drain(..surplus);
        Ok(rows)
    }

    async fn some(&self, shelf: Shelf, keys: Vec<String>) -> Result<Rows, Infallible> {
        let mut rows = self.span(shelf, ("", "\u{ffff}"));
        rows.retain(|(key, _)| keys.contains(key));
        Ok(rows)
    }
}

/// The entry of a session by its events; none where they are none.
pub fn entry(events: Option<&Vec<Event>>) -> Option<Entry> {
    let record = SessionRecord::from_events(events?).ok()?;
    Some(Entry::of(&record))
}

/// From one state of all sessions to another.
pub fn turns(
    from: &BTreeMap<SessionId, Vec<Event>>,
    to: &BTreeMap<SessionId, Vec<Event>>,
) -> Vec<Turn> {
    let mut ids: Vec<&SessionId> = from.keys().chain(to.keys()).collect();
    ids.sort();
    ids.dedup();
    ids.into_iter()
        .filter(|id| from.get(id) != to.get(id))
        .map(|id| Turn {
            session: *id,
            before: entry(from.get(id)),
            after: entry(to.get(id)),
        })
        .collect()
}

/// The books of all sessions, rebuilt.
pub fn rebuilt(sessions: &BTreeMap<SessionId, Vec<Event>>) -> Memory {
    let mut remaking = Remaking::default();
    for events in sessions.values() {
        if let Some(entry) = entry(Some(events)) {
            remaking.take(entry);
        }
    }
    let mut books = Memory::default();
    while let Some(rows) = remaking.next_rows() {
        books.apply(rows);
    }
    books
}
