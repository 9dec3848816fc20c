//! The books beside the sessions: whoever writes a session writes what follows from it in the same transaction, whoever
//! finds the books spoiled or of an older form rebuilds them.

use super::change::{delete, write};
use super::keep::{Keep, put};
use super::model::{HEADINGS_NEWEST, Model};
use crate::device::db::{DbError, Write};
use crate::json;
use crate::ledger::{ExerciseSummary, Heading, SessionRecord, newest_first};
use crate::order::{Map, Set};
use crate::session::SessionId;
use crate::sheet::ExerciseId;
use crate::store::{
    BOOKS_FORM, BookFault, Entry, FORM_KEY, LastOf, Remaking, SessionLog, Shelf, Shelves, Turn,
    UNREAD_KEY, open, seal, turned,
};

/// A record from its row; none when it cannot be read.
fn read<T: serde::de::DeserializeOwned>(row: &str) -> Option<T> {
    json::parse(open(row).ok()?).ok()
}

/// The entry of a session from its row; none when it cannot be read.
fn entry(row: &str) -> Option<Entry> {
    entry_of(&read(row)?)
}

/// The entry of a session.
pub fn entry_of(log: &SessionLog) -> Option<Entry> {
    let record = SessionRecord::from_events(log.as_events()).ok()?;
    Some(Entry::of(&record))
}

/// Makes the writes that are next, then writes what follows from them for the books, and gives it.
///
/// The session is written first, and the books lose their form with it, since the page may be closed at once and what
/// follows needs reading. Whoever finds the books without their form rebuilds them.
pub async fn apply_next(keep: &Keep, mut writes: Vec<Write>) -> Result<Vec<Write>, DbError> {
    let disk = keep.settled();
    let turns = turns(&disk, &mut writes).await?;
    if turns.is_empty() {
        keep.apply(writes).await?;
        return Ok(Vec::new());
    }
    let kept = are_kept(&disk).await?;
    writes.push(delete(Shelf::Books, FORM_KEY));
    keep.apply(writes).await?;
    let mut more = match kept {
        true => of_kept(&disk, turns).await?,
        false => rebuilt(&disk, turns).await?,
    };
    more.push(put(Shelf::Books, FORM_KEY, &BOOKS_FORM));
    keep.note_books(more.clone());
    keep.apply(more.clone()).await?;
    Ok(more)
}

/// What follows from `writes` for the books.
pub async fn following(keep: &Keep, writes: &mut [Write]) -> Result<Vec<Write>, DbError> {
    of_turns(keep, turns(keep, writes).await?).await
}

/// The sessions that `writes` change, as they were and as they will be. A session only gains events: what came into its row
/// since the write was asked for stays there.
async fn turns(keep: &Keep, writes: &mut [Write]) -> Result<Vec<Turn>, DbError> {
    let sessions = Shelf::Sessions.name();
    let key_of = |write: &Write| match write {
        Write::Put { key, .. } | Write::Delete { key, .. } => Some(key.clone()),
        Write::Clear { .. } => None,
    };
    let changed = writes.iter().filter(|write| write.shelf() == sessions);
    let keys: Set<String> = changed.filter_map(key_of).collect();
    if keys.is_empty() {
        return Ok(Vec::new());
    }
    let keys = keys.iter().cloned().collect();
    let known = keep.some(Shelf::Sessions, keys).await?;
    let known: Map<String, String> = known.into_iter().collect();
    let mut turns: Map<String, Turn> = Map::new();
    for write in writes.iter_mut().filter(|write| write.shelf() == sessions) {
        let Some(key) = key_of(write) else { continue };
        let Ok(id) = key.parse() else { continue };
        let before: Option<SessionLog> = known.get(&key).and_then(|row| read(row));
        let mut after = None;
        if let Write::Put { text, .. } = write {
            let mut log: Option<SessionLog> = read(text);
            if let (Some(log), Some(before)) = (&mut log, &before)
                && log.gain(before.clone())
            {
                *text = seal(&log.to_json());
            }
            after = log.as_ref().and_then(entry_of);
        }
        let turn = Turn {
            session: SessionId(id),
            before: before.as_ref().and_then(entry_of),
            after,
        };
        turns.insert(key, turn);
    }
    Ok(turns.into_values().collect())
}

/// What follows from `turns` for the books.
pub async fn of_turns(keep: &Keep, turns: Vec<Turn>) -> Result<Vec<Write>, DbError> {
    if turns.is_empty() {
        return Ok(Vec::new());
    }
    if !are_kept(keep).await? {
        return rebuilt(keep, turns).await;
    }
    of_kept(keep, turns).await
}

/// What follows from `turns` for books that are kept.
async fn of_kept(keep: &Keep, turns: Vec<Turn>) -> Result<Vec<Write>, DbError> {
    match turned(keep, &turns).await {
        Ok(changes) => Ok(changes.into_iter().map(write).collect()),
        Err(BookFault::Unreadable) => rebuilt(keep, turns).await,
        Err(BookFault::Shelves(error)) => Err(error),
    }
}

/// True when the books are there in the form of this version.
pub async fn are_kept(keep: &Keep) -> Result<bool, DbError> {
    Ok(keep.get::<u32>(Shelf::Books, FORM_KEY).await? == Some(BOOKS_FORM))
}

/// The books rebuilt from all sessions, as `turns` leave them.
async fn rebuilt(keep: &Keep, turns: Vec<Turn>) -> Result<Vec<Write>, DbError> {
    let turning: Vec<SessionId> = turns.iter().map(|turn| turn.session).collect();
    let mut rebuild = Rebuild::beside(keep, &turning).await?;
    let after = turns.into_iter().filter_map(|turn| turn.after);
    after.for_each(|entry| rebuild.take(entry));
    let mut writes = Vec::new();
    while let Some(more) = rebuild.next_writes() {
        writes.extend(more);
    }
    Ok(writes)
}

/// The books on their way to be rebuilt.
pub struct Rebuild {
    remaking: Remaking,
    /// What is written before all rows.
    first: Vec<Write>,
}

impl Rebuild {
    /// From all sessions but those that are `turning`.
    pub async fn beside(keep: &Keep, turning: &[SessionId]) -> Result<Rebuild, DbError> {
        let mut remaking = Remaking::default();
        let mut unreadable = Set::new();
        keep.walk(Shelf::Sessions, &mut |key, row| {
            let id = key.parse().ok().map(SessionId);
            if id.is_some_and(|id| turning.contains(&id)) {
                return;
            }
            match entry(row) {
                Some(entry) => remaking.take(entry),
                None => _ = unreadable.insert(key),
            }
        })
        .await?;
        let unread: Vec<&String> = unreadable.iter().collect();
        let told = put(Shelf::Books, UNREAD_KEY, &unread);
        if !unreadable.is_empty() {
            // Of a session that cannot be read its heading stays.
            let headings: Vec<Heading> = keep.records(Shelf::Headings, &mut Vec::new()).await?;
            let stay = headings
                .into_iter()
                .filter(|it| unreadable.contains(&it.session.0.to_string()));
            stay.for_each(|heading| remaking.stay(heading));
        }
        let clear = |shelf: Shelf| Write::Clear {
            shelf: shelf.name().to_owned(),
        };
        let clear = Shelf::OF_BOOKS.into_iter().map(clear);
        let first = clear.chain([told]).collect();
        Ok(Rebuild { remaking, first })
    }

    /// Takes a session in.
    pub fn take(&mut self, entry: Entry) {
        self.remaking.take(entry);
    }

    /// The next writes, once all sessions are in; none when these were all.
    pub fn next_writes(&mut self) -> Option<Vec<Write>> {
        let rows = self.remaking.next_rows()?;
        let mut writes = std::mem::take(&mut self.first);
        writes.extend(rows.into_iter().map(write));
        Some(writes)
    }
}

/// The same, by the rows of their own shelf.
pub fn are_kept_in(rows: &[(String, String)]) -> bool {
    let form = rows.iter().find(|(key, _)| key == FORM_KEY);
    form.and_then(|(_, row)| read::<u32>(row)) == Some(BOOKS_FORM)
}

/// The sessions that could not be read when the books were made, by the rows of their own shelf.
pub fn unread_in(rows: &[(String, String)]) -> Option<Vec<String>> {
    let unread = rows.iter().find(|(key, _)| key == UNREAD_KEY);
    unread.and_then(|(_, row)| read(row))
}

/// Rebuilds the books.
pub async fn make(keep: &Keep) -> Result<(), DbError> {
    keep.apply(rebuilt(keep, Vec::new()).await?).await
}

/// The model with what was written to the books: see [`apply_next`].
pub fn follow(model: &mut Model, books: &[Write]) {
    let mut headings: Map<&str, &str> = Map::new();
    let own = |write: &Write, shelf: Shelf| write.shelf() == shelf.name();
    for write in books {
        match write {
            Write::Clear { .. } if own(write, Shelf::Headings) => model.headings.clear(),
            Write::Clear { .. } if own(write, Shelf::Summaries) => model.summaries.clear(),
            Write::Clear { .. } if own(write, Shelf::Books) => model.lasts.clear(),
            Write::Put { key, text, .. } if own(write, Shelf::Headings) => {
                headings.insert(key, text);
            }
            Write::Delete { key, .. } if own(write, Shelf::Headings) => {
                let gone = key.rsplit_once('/').map_or("", |(_, id)| id);
                model.headings.retain(|it| it.session.0.to_string() != gone);
            }
            Write::Put { text, .. } if own(write, Shelf::Summaries) => {
                if let Some(summary) = read::<ExerciseSummary>(text) {
                    model.summaries.insert(summary.exercise.clone(), summary);
                }
            }
            Write::Delete { key, .. } if own(write, Shelf::Summaries) => {
                model
                    .summaries
                    .retain(|exercise: &ExerciseId, _| exercise.as_str() != key);
            }
            Write::Put { text, .. } if own(write, Shelf::Books) => {
                if let Some(last) = read::<LastOf>(text) {
                    model.lasts.insert(last.sheet, last);
                }
            }
            Write::Delete { key, .. } if own(write, Shelf::Books) => {
                let gone = key.rsplit_once('/').map_or("", |(_, id)| id);
                model.lasts.retain(|sheet, _| sheet.0.to_string() != gone);
            }
            _ => {}
        }
    }
    // Keys stand in the order of time: only the newest can be among those of the model.
    for row in headings.into_values().rev().take(HEADINGS_NEWEST) {
        if let Some(heading) = read::<Heading>(row) {
            model
                .headings
                .retain(|other| other.session != heading.session);
            model.headings.push(heading);
        }
    }
    newest_first(&mut model.headings);
    model.headings.truncate(HEADINGS_NEWEST);
}

/// The writes that empty a session's rows on the floor.
pub fn off_the_floor(session: &crate::session::Session) -> impl Iterator<Item = Write> {
    // Each by its key: a row that could not be read stays where it is.
    let events = session.events().iter();
    events.map(|event| delete(Shelf::Events, &event.id.0.to_string()))
}
