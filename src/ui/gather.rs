//! Everything that is kept, in one archive: for an export, an import, and a copy before an update.

use super::books;
use super::keep::Keep;
use super::later::{Lost, records};
use crate::device::db::{Answer, DbError};
use crate::session::{Event, Session, SessionId};
use crate::store::{
    Archive, Around, BodyMassRecord, BodyRecord, ExerciseRecord, KitRecord, LifterRecord,
    ProgrammeRecord, RemovedSession, Rows, SessionLog, SheetRecord, Shelf, entry, shelved,
};
use chrono::{DateTime, FixedOffset};
use std::cell::RefCell;

/// Everything that could be read, and what could not.
pub struct Gathered {
    /// What could be read.
    pub archive: Archive,
    /// What could not.
    pub unreadable: Lost,
}

/// Everything that is kept, the session under way and what waits to be written among it, as it is at one moment.
pub async fn gather(keep: &Keep) -> Result<Gathered, DbError> {
    let mut rest = Vec::new();
    let mut rows = Rows::new();
    let mut first = |read| rest = read;
    let mut take = |key, row: &str| rows.push((key, row.to_owned()));
    keep.walk_after(&REST, &mut first, Shelf::Sessions, &mut take)
        .await?;
    let mut unreadable = Vec::new();
    let Rest {
        mut archive, floor, ..
    } = but_sessions(rest, &mut unreadable);
    let sessions = shelved::<SessionLog>(rows);
    for log in sessions.records {
        archive.sessions.insert(log.id(), log);
    }
    let lost = sessions.unreadable.into_iter();
    unreadable.extend(lost.map(|row| (Shelf::Sessions, row)));
    if let Some(log) = floor {
        archive.sessions.or_insert_with(log.id(), || log);
    }
    archive.settle();
    Ok(Gathered {
        archive,
        unreadable,
    })
}

/// Gives the text of a file with everything that could be read, written at `written`, piece by piece to `out`; and what
/// could not be read.
///
/// It is that of [`write`](crate::store::write). Where the books are kept, every session was read when they were made, and a
/// row whose checksum holds stands in the file as it is: nothing of it is read again.
pub async fn file(
    keep: &Keep,
    written: DateTime<FixedOffset>,
    out: &mut dyn FnMut(&str),
) -> Result<Lost, DbError> {
    let filing = RefCell::new(Filing {
        out,
        written,
        begun: None,
        lost: Vec::new(),
    });
    let mut first = |rest| filing.borrow_mut().begin(rest);
    let mut take = |key, row: &str| filing.borrow_mut().row(key, row);
    keep.walk_after(&REST, &mut first, Shelf::Sessions, &mut take)
        .await?;
    Ok(filing.into_inner().end())
}

/// A file on its way.
struct Filing<'a> {
    out: &'a mut dyn FnMut(&str),
    written: DateTime<FixedOffset>,
    begun: Option<Begun>,
    lost: Lost,
}

/// What is known when the sessions come.
struct Begun {
    archive: Archive,
    around: Around,
    /// The session on the floor, until it has its place.
    floor: Option<SessionLog>,
    /// The sessions that could not be read when the books were made; none where nobody has looked.
    unread: Option<Vec<String>>,
}

impl Begun {
    fn put(&mut self, out: &mut dyn FnMut(&str), id: SessionId, text: &str) {
        if self.archive.removed.get(id).is_none() {
            out(self.around.before());
            out(text);
        }
    }
}

impl Filing<'_> {
    fn begin(&mut self, rest: Vec<Answer>) {
        let Rest {
            archive,
            floor,
            books,
        } = but_sessions(rest, &mut self.lost);
        let unread = match books::are_kept_in(&books) {
            true => books::unread_in(&books),
            false => None,
        };
        let (head, around) = Around::begin(&archive, self.written);
        (self.out)(&head);
        self.begun = Some(Begun {
            archive,
            around,
            floor,
            unread,
        });
    }

    /// The next session, by rising id.
    fn row(&mut self, key: String, row: &str) {
        let Some(begun) = &mut self.begun else { return };
        let out = &mut *self.out;
        let id = key.parse().ok().map(SessionId);
        // What lies there finished is not on the floor any more.
        let on_floor = &mut begun.floor;
        let mut own = on_floor.take_if(|log| id.is_some_and(|id| log.id() <= id));
        if let Some(log) = own.take_if(|log| Some(log.id()) != id) {
            begun.put(out, log.id(), &log.to_json());
        }
        let unread = begun.unread.as_ref();
        let known = unread.is_some_and(|unread| !unread.contains(&key));
        if let Some((id, text)) = id.filter(|_| known).zip(entry(row)) {
            return begun.put(out, id, text);
        }
        let read = shelved::<SessionLog>(vec![(key, row.to_owned())]);
        if let Some(log) = read.records.into_iter().next().or(own) {
            begun.put(out, log.id(), &log.to_json());
        }
        let unreadable = read.unreadable.into_iter();
        self.lost
            .extend(unreadable.map(|row| (Shelf::Sessions, row)));
    }

    fn end(mut self) -> Lost {
        if let Some(mut begun) = self.begun.take() {
            if let Some(log) = begun.floor.take() {
                begun.put(self.out, log.id(), &log.to_json());
            }
            (self.out)(&begun.around.end(&begun.archive));
        }
        self.lost
    }
}

/// What there is beside the finished sessions.
struct Rest {
    /// All of it that a file holds, and no session.
    archive: Archive,
    /// The session on the floor.
    floor: Option<SessionLog>,
    /// The rows of the shelf of that name.
    books: Vec<(String, String)>,
}

/// Everything but the sessions that are finished, from all rows of [`REST`]; those that cannot be read go to `lost`.
fn but_sessions(rest: Vec<Answer>, lost: &mut Lost) -> Rest {
    let mut read = rest.into_iter();
    let mut next = || read.next().unwrap_or_default();
    let mut archive = Archive::default();
    for record in records::<LifterRecord>(next(), Shelf::Lifters, lost) {
        archive.lifter.put(record);
    }
    for record in records::<KitRecord>(next(), Shelf::Kits, lost) {
        archive.kit.put(record);
    }
    for record in records::<BodyMassRecord>(next(), Shelf::BodyMass, lost) {
        archive.body_mass.put(record);
    }
    for record in records::<BodyRecord>(next(), Shelf::Body, lost) {
        archive.body.put(record);
    }
    for record in records::<SheetRecord>(next(), Shelf::Sheets, lost) {
        archive.sheets.put(record);
    }
    for record in records::<ExerciseRecord>(next(), Shelf::Exercises, lost) {
        archive.exercises.put(record);
    }
    for record in records::<ProgrammeRecord>(next(), Shelf::Programmes, lost) {
        archive.programmes.put(record);
    }
    for record in records::<RemovedSession>(next(), Shelf::Removed, lost) {
        archive.removed.put(record);
    }
    let events: Vec<Event> = records(next(), Shelf::Events, lost);
    let floor = Session::replay(events).ok().and_then(|session| {
        let id = session.state().began.session;
        SessionLog::new(id, session.events().iter().cloned()).ok()
    });
    let books = next().rows();
    Rest {
        archive,
        floor,
        books,
    }
}

/// What is read beside the sessions, in the order in which it is looked through.
const REST: [Shelf; 10] = [
    Shelf::Lifters,
    Shelf::Kits,
    Shelf::BodyMass,
    Shelf::Body,
    Shelf::Sheets,
    Shelf::Exercises,
    Shelf::Programmes,
    Shelf::Removed,
    Shelf::Events,
    Shelf::Books,
];
