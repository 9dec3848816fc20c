//! From one state of what is kept to another: all of it in one write.

use super::books::{Rebuild, are_kept, entry_of, of_turns};
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
    let mut rebuild = None;
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
        rebuild = Some(Rebuild::beside(keep, &sessions).await?);
    }
    let mut made = Made {
        to,
        sessions,
        rebuild,
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
    /// The books, where they are rebuilt.
    rebuild: Option<Rebuild>,
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
            if let Some((rebuild, entry)) = self.rebuild.as_mut().zip(entry) {
                rebuild.take(entry);
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

    fn piece(&mut self, number: usize) -> Option<&[Write]> {
        let Some(number) = number.checked_sub(self.sessions.len().div_ceil(SESSIONS_AT_ONCE))
        else {
            return self.some_sessions(number);
        };
        if number == self.behind.len() {
            let books = self.rebuild.as_mut().and_then(Rebuild::next_writes);
            let next = books.unwrap_or_else(|| std::mem::take(&mut self.rest));
            self.behind.push(next);
        }
        let part = self.behind.get(number)?;
        (!part.is_empty()).then_some(part)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::session::{Began, Event, EventId, Tick, What};
    use crate::sheet::Note;
    use crate::store::{SessionLog, demo};
    use crate::strength::Curve;
    use crate::ui::books::apply_next;
    use crate::ui::gather::gather;
    use crate::ui::keep::put_json;
    use std::pin::pin;
    use std::task::{Context, Poll, Waker};
    use uuid::Uuid;

    /// The value of a future that never has to wait, as none does in memory.
    fn now<F: Future>(future: F) -> F::Output {
        match pin!(future).poll(&mut Context::from_waker(Waker::noop())) {
            Poll::Ready(value) => value,
            Poll::Pending => panic!("it waits"),
        }
    }

    /// The demo with so many sessions in which nothing was done.
    fn archive(sessions: u16) -> Archive {
        let mut archive = demo();
        let sheet = archive.current_sheets()[0].clone();
        for number in 1..=u128::from(sessions) {
            let session = SessionId(Uuid::from_u128(number << 8));
            let began = Began {
                session,
                sheet: sheet.clone(),
                body_mass: None,
                proposals: Vec::new(),
                light: false,
                curve: Curve::default(),
                along: None,
            };
            let event = |n: u128, what| Event {
                id: EventId(Uuid::from_u128((number << 8) + n)),
                at: "2026-03-02T18:00:00+01:00".parse().unwrap(),
                tick: Tick { run: 1, ms: 0 },
                what,
            };
            let events = [
                event(1, What::Began(Box::new(began))),
                event(2, What::Ended),
            ];
            let log = SessionLog::new(session, events).unwrap();
            archive.sessions.insert(session, log);
        }
        archive
    }

    fn kept(keep: &Keep) -> (Archive, usize) {
        let gathered = now(gather(keep)).unwrap();
        assert!(gathered.unreadable.is_empty());
        let headings = now(keep.count(Shelf::Headings)).unwrap();
        (gathered.archive, headings)
    }

    #[test]
    fn whatever_the_number_of_parts_one_state_becomes_the_other() {
        for sessions in [0, 1, 63, 64, 65, 150] {
            let (keep, nothing, all) = (Keep::in_memory(""), Archive::default(), archive(sessions));
            let aside = vec![delete(Shelf::Aside, "nowhere")];
            now(apply(&keep, &nothing, &all, None, aside)).unwrap();
            let headings = usize::from(sessions);
            assert_eq!(kept(&keep), (all.clone(), headings));
            // Again from there, now that there are books.
            let half = archive(sessions / 2);
            now(apply(&keep, &all, &half, None, Vec::new())).unwrap();
            assert_eq!(kept(&keep), (half, headings / 2));
        }
    }

    #[test]
    fn a_session_written_late_keeps_what_came_into_its_row_meanwhile() {
        let (keep, all) = (Keep::in_memory(""), archive(1));
        now(apply(&keep, &Archive::default(), &all, None, Vec::new())).unwrap();
        let log = all.sessions.values().next().unwrap();
        let noted = |n: u128| {
            let last = log.as_events().last().unwrap();
            let note = Event {
                id: EventId(Uuid::from_u128((1 << 8) + n)),
                what: What::Noted {
                    set: None,
                    text: Note::new("x").unwrap(),
                },
                ..last.clone()
            };
            let events = log.as_events().iter().cloned().chain([note]);
            SessionLog::new(log.id(), events).unwrap()
        };
        // A note of this phone is asked for before an import has brought another one, and written after.
        let late = put_json(
            Shelf::Sessions,
            &log.id().0.to_string(),
            &noted(3).to_json(),
        );
        let mut imported = all.clone();
        imported.sessions.insert(log.id(), noted(4));
        now(apply(&keep, &all, &imported, None, Vec::new())).unwrap();
        now(apply_next(&keep, vec![late])).unwrap();
        let (kept, headings) = kept(&keep);
        let kept = kept.sessions.get(&log.id()).unwrap();
        let ids: Vec<u128> = kept.event_ids().map(|id| id.0.as_u128()).collect();
        assert_eq!(ids, [257, 258, 259, 260]);
        assert_eq!(headings, 1);
    }

    #[test]
    fn a_piece_that_is_asked_for_again_is_the_same() {
        let (keep, all) = (Keep::in_memory(""), archive(130));
        let sessions = sessions_that_differ(&Archive::default(), &all, None);
        let mut made = Made {
            to: &all,
            rebuild: Some(now(Rebuild::beside(&keep, &sessions)).unwrap()),
            sessions,
            rest: vec![delete(Shelf::Aside, "nowhere")],
            part: Vec::new(),
            behind: Vec::new(),
        };
        let pieces = |made: &mut Made<'_>| -> Vec<Vec<Write>> {
            let pieces = (0..).map_while(|number| made.piece(number).map(<[Write]>::to_vec));
            pieces.collect()
        };
        let shelves: Vec<String> = made.shelves().into_iter().map(str::to_owned).collect();
        let first = pieces(&mut made);
        assert_eq!(first, pieces(&mut made));
        assert!(first.len() > 4, "sessions in three, books, the rest");
        let touched = first.iter().flatten();
        for write in touched {
            assert!(shelves.iter().any(|shelf| shelf == write.shelf()));
        }
    }
}
