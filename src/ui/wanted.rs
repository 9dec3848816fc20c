//! What is read at the start, all in one go, and before there is an app.

use super::keep::Keep;
use super::later::{Lost, NEWEST, records};
use super::layout::opened;
use super::model::{HEADINGS_NEWEST, Keeping};
use crate::device::db::{Answer, DbError, Part};
use crate::device::oneshot::{OneShot, begun};
use crate::device::prefs;
use crate::store::{DATABASE, Shelf};
use serde::de::DeserializeOwned;

/// What is read at the start, all in one go.
const WANTED: [(Shelf, Part<'static>); 15] = [
    (Shelf::Lifters, Part::All),
    (Shelf::Kits, Part::All),
    (Shelf::BodyMass, Part::All),
    (Shelf::Body, Part::All),
    (Shelf::Sheets, Part::Newest),
    (Shelf::Exercises, Part::All),
    (Shelf::Programmes, Part::All),
    (Shelf::Drafts, Part::All),
    (Shelf::Events, Part::All),
    (Shelf::Aside, Part::All),
    (Shelf::Summaries, Part::All),
    (Shelf::Books, Part::All),
    (Shelf::Sessions, Part::Any),
    (Shelf::Headings, Part::Last(HEADINGS_NEWEST as u32)),
    (Shelf::Headings, Part::Count),
];

/// The same, the newest headings from the key `from` on, where it is known: to walk to it takes the browser longer than all
/// the rest.
fn wanted(from: Option<&str>) -> Vec<(Shelf, Part<'_>)> {
    let from = |(shelf, part)| match (part, from) {
        (Part::Last(_), Some(from)) => (shelf, Part::From(from)),
        _ => (shelf, part),
    };
    WANTED.into_iter().map(from).collect()
}

/// What was read of [`WANTED`].
pub struct Wanted(pub Vec<Answer>);

impl Wanted {
    pub async fn read(keep: &Keep, from: Option<&str>) -> Result<Wanted, DbError> {
        let read = keep.several(&wanted(from)).await?;
        Wanted(read).whole(keep).await
    }

    /// With the newest headings, if they begin before the key from which on they were read.
    pub async fn whole(mut self, keep: &Keep) -> Result<Wanted, DbError> {
        let wanted = &mut self;
        let reached = wanted.of(Shelf::Headings).map_or(0, |read| read.count());
        if reached < HEADINGS_NEWEST.min(wanted.sessions()) {
            // Sessions went since.
            return keep.several(&WANTED).await.map(Wanted);
        }
        Ok(self)
    }

    /// What was read of a shelf.
    fn of(&mut self, shelf: Shelf) -> Option<&mut Answer> {
        let at = WANTED.iter().position(|(wanted, _)| *wanted == shelf)?;
        self.0.get_mut(at)
    }

    /// The rows of a shelf, taken out.
    pub fn take(&mut self, shelf: Shelf) -> Answer {
        self.of(shelf).map(std::mem::take).unwrap_or_default()
    }

    /// The records of a shelf.
    pub fn records<T: DeserializeOwned>(&mut self, shelf: Shelf, lost: &mut Lost) -> Vec<T> {
        records(self.take(shelf), shelf, lost)
    }

    /// Whether there are sessions, or were: the last one may have left the ledger, and the page before the books followed.
    /// Then there are headings and no session.
    pub fn has_sessions(&mut self) -> bool {
        self.sessions() > 0 || self.of(Shelf::Sessions).is_some_and(|any| any.count() > 0)
    }

    /// How many headings there are.
    pub fn sessions(&self) -> usize {
        self.0.last().map_or(0, Answer::count)
    }
}

/// What is read before there is an app: the records with the list of those who train with this phone, what becomes of what
/// is written there, and of what was read all that is wanted, then that list. Nothing was read where that failed.
pub type Ahead = OneShot<(Keep, Keeping, Vec<Answer>)>;

/// Begins to read. Who is here is not known yet: where it is not the one whose records these are, theirs are read later.
pub fn read_ahead() -> Ahead {
    begun(async {
        let (keep, keeping) = opened(DATABASE).await;
        let from: Option<String> = prefs::get(NEWEST);
        let mut parts = wanted(from.as_deref());
        parts.push((Shelf::People, Part::All));
        // What fails now is read again later, and reported then.
        let read = keep.several(&parts).await.unwrap_or_default();
        (keep, keeping, read)
    })
}
