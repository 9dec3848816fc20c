//! Everything that is kept, in one archive: for an export, an import, and a copy before an update.

use super::books;
use super::keep::Keep;
use super::later::{Lost, records};
use crate::device::db::{DbError, Part};
use crate::session::{Event, Session, SessionId};
use crate::store::{
    Archive, Around, BodyMassRecord, BodyRecord, ExerciseRecord, KitRecord, LifterRecord,
    ProgrammeRecord, RemovedSession, SessionLog, SheetRecord, Shelf, entry, shelved,
};
use chrono::{DateTime, FixedOffset};

/// Everything that could be read, and what could not.
pub struct Gathered {
    /// What could be read.
    pub archive: Archive,
    /// What could not.
    pub unreadable: Lost,
}

/// Everything that is kept, the session under way and what waits to be written among it.
pub async fn gather(keep: &Keep) -> Result<Gathered, DbError> {
    let mut unreadable = Vec::new();
    let lost = &mut unreadable;
    let Rest {
        mut archive, floor, ..
    } = but_sessions(keep, lost).await?;
    for log in keep.records::<SessionLog>(Shelf::Sessions, lost).await? {
        archive.sessions.insert(log.id(), log);
    }
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
    let mut lost = Vec::new();
    let Rest {
        archive,
        floor,
        books,
    } = but_sessions(keep, &mut lost).await?;
    let unread = match books::are_kept_in(&books) {
        true => books::unread_in(&books),
        false => None,
    };
    let known = |key: &String| unread.as_ref().is_some_and(|unread| !unread.contains(key));
    let (head, mut around) = Around::begin(&archive, written);
    out(&head);
    let mut put = |id: SessionId, text: &str| {
        if archive.removed.get(id).is_none() {
            out(around.before());
            out(text);
        }
    };
    let mut floor = floor;
    keep.walk(Shelf::Sessions, &mut |key, row| {
        let id = key.parse().ok().map(SessionId);
        // By rising id; what lies there finished is not on the floor any more.
        let mut own = floor.take_if(|log| id.is_some_and(|id| log.id() <= id));
        if let Some(log) = own.take_if(|log| Some(log.id()) != id) {
            put(log.id(), &log.to_json());
        }
        if let Some((id, text)) = id.filter(|_| known(&key)).zip(entry(row)) {
            return put(id, text);
        }
        let read = shelved::<SessionLog>(vec![(key, row.to_owned())]);
        if let Some(log) = read.records.into_iter().next().or(own) {
            put(log.id(), &log.to_json());
        }
        let unreadable = read.unreadable.into_iter();
        lost.extend(unreadable.map(|row| (Shelf::Sessions, row)));
    })
    .await?;
    if let Some(log) = floor {
        put(log.id(), &log.to_json());
    }
    out(&around.end(&archive));
    Ok(lost)
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

/// Everything but the sessions that are finished, read in one go; the rows that cannot be read go to `lost`.
async fn but_sessions(keep: &Keep, lost: &mut Lost) -> Result<Rest, DbError> {
    let mut read = keep.several(&REST).await?.into_iter();
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
    Ok(Rest {
        archive,
        floor,
        books,
    })
}

/// What is read in one go, in the order in which it is looked through.
const REST: [(Shelf, Part<'static>); 10] = [
    (Shelf::Lifters, Part::All),
    (Shelf::Kits, Part::All),
    (Shelf::BodyMass, Part::All),
    (Shelf::Body, Part::All),
    (Shelf::Sheets, Part::All),
    (Shelf::Exercises, Part::All),
    (Shelf::Programmes, Part::All),
    (Shelf::Removed, Part::All),
    (Shelf::Events, Part::All),
    (Shelf::Books, Part::All),
];
