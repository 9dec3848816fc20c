//! Books: what follows from the sessions and is kept so that nobody has to read them all. Headings, histories, summaries,
//! and which session of a sheet was the newest. A session that changes is taken out as it was and put in as it is; only
//! the rows that this touches are read and written.

use super::book_keys::{
    BOOKS_FORM, END, FORM_KEY, Shelves, heading_key, history_key, history_span, year_of,
};
use super::change::Change;
use super::lasts::lasts;
use super::row::open;
use super::shelf::Shelf;
use crate::json::{parse, text};
use crate::ledger::{
    ExerciseSummary, Heading, PACE_SESSIONS, Pace, Past, SessionRecord, in_order, pasts_of,
};
use crate::order;
use crate::order::{Map, Set};
use crate::session::SessionId;
use crate::sheet::ExerciseId;
use serde::Serialize;
use serde::de::DeserializeOwned;

/// What the books say of one session.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Entry {
    pub(super) heading: Heading,
    pasts: Vec<(ExerciseId, Past)>,
}

impl Entry {
    /// The entry of a session.
    #[must_use]
    pub fn of(record: &SessionRecord) -> Entry {
        Entry {
            heading: Heading::of(record, &[]),
            pasts: pasts_of(record),
        }
    }

    pub(super) fn into_parts(self) -> (Heading, Vec<(ExerciseId, Past)>) {
        (self.heading, self.pasts)
    }

    fn of_exercise(&self, exercise: &ExerciseId) -> Vec<&Past> {
        let own = self.pasts.iter().filter(|(id, _)| id == exercise);
        own.map(|(_, past)| past).collect()
    }
}

/// One session as the books have it and as they shall have it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Turn {
    /// The session.
    pub session: SessionId,
    /// As it was; none where it is new or could not be read.
    pub before: Option<Entry>,
    /// As it is; none where it was removed or cannot be read.
    pub after: Option<Entry>,
}

impl Turn {
    pub(super) fn entries(&self) -> impl Iterator<Item = &Entry> {
        self.before.iter().chain(&self.after)
    }

    /// The exercises of which it changes what was done.
    fn exercises(&self) -> Set<&ExerciseId> {
        let ids = self.entries().flat_map(|entry| &entry.pasts);
        let of = |entry: &Option<Entry>, id| {
            let entry = entry.as_ref();
            entry.map_or_else(Vec::new, |entry| {
                entry.of_exercise(id).into_iter().cloned().collect()
            })
        };
        ids.map(|(id, _)| id)
            .filter(|id| of(&self.before, id) != of(&self.after, id))
            .collect()
    }
}

/// Why books could not be kept up: then they are to be rebuilt.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum BookFault<F> {
    /// A row of them cannot be read.
    Unreadable,
    /// The shelves cannot be read.
    Shelves(F),
}

impl<F> From<F> for BookFault<F> {
    fn from(fault: F) -> BookFault<F> {
        BookFault::Shelves(fault)
    }
}

pub(super) fn read<T: DeserializeOwned, F>(row: &str) -> Result<T, BookFault<F>> {
    let json = open(row).map_err(|_| BookFault::Unreadable)?;
    parse(json).map_err(|_| BookFault::Unreadable)
}

/// The rows of the books that change with `turns`, each session at most once.
///
/// # Errors
/// [`BookFault`].
pub async fn turned<S: Shelves>(
    shelves: &S,
    turns: &[Turn],
) -> Result<Vec<Change>, BookFault<S::Fault>> {
    let mut changes = Vec::new();
    headings(shelves, turns, &mut changes).await?;
    exercises(shelves, turns, &mut changes).await?;
    lasts(shelves, turns, &mut changes).await?;
    if !changes.is_empty() {
        changes.push(form());
    }
    Ok(changes)
}

/// The row that says in which form the books are.
pub(super) fn form() -> Change {
    put(Shelf::Books, FORM_KEY.to_owned(), &BOOKS_FORM)
}

pub(super) fn put<T: Serialize>(shelf: Shelf, key: String, record: &T) -> Change {
    Change {
        shelf,
        key,
        json: Some(text(record)),
    }
}

fn key_of(heading: &Heading) -> String {
    heading_key(heading.began, heading.session)
}

/// Predicts the lengths of headings, the oldest first, from the one at `from` on.
pub(super) fn at_their_pace(headings: &mut [Heading], from: usize) {
    for at in from..headings.len() {
        let (before, rest) = headings.split_at_mut(at);
        let newest = &before[at.saturating_sub(PACE_SESSIONS)..];
        rest[0].at_pace(Pace::of_newest_last(newest));
    }
}

/// Headings, and the predicted lengths of those after them: a change-over counts for so many sessions.
async fn headings<S: Shelves>(
    shelves: &S,
    turns: &[Turn],
    changes: &mut Vec<Change>,
) -> Result<(), BookFault<S::Fault>> {
    let touched: Set<String> = turns
        .iter()
        .flat_map(Turn::entries)
        .map(|entry| key_of(&entry.heading))
        .collect();
    let (Some(low), Some(high)) = (touched.iter().next(), touched.iter().next_back()) else {
        return Ok(());
    };
    let shelf = Shelf::Headings;
    let behind = format!("{high}{END}");
    let most = PACE_SESSIONS as u32;
    let mut rows = shelves.last(shelf, ("", low), most).await?;
    rows.extend(shelves.first(shelf, (low, &behind), u32::MAX).await?);
    rows.extend(shelves.first(shelf, (&behind, END), most).await?);
    let mut known: Map<String, Heading> = Map::new();
    for (key, row) in rows {
        known.insert(key, read(&row)?);
    }
    let turning: Set<SessionId> = turns.iter().map(|turn| turn.session).collect();
    let stay = known.values().filter(|it| !turning.contains(&it.session));
    let mut all: Vec<Heading> = stay.cloned().collect();
    let new = turns.iter().filter_map(|turn| turn.after.as_ref());
    all.extend(new.map(|entry| entry.heading.clone()));
    order::by_key(&mut all, Heading::place);
    let from = all.partition_point(|heading| key_of(heading) < *low);
    at_their_pace(&mut all, from);
    for heading in &all[from..] {
        let key = key_of(heading);
        if known.remove(&key).as_ref() != Some(heading) {
            changes.push(put(shelf, key, heading));
        }
    }
    let gone = known
        .into_iter()
        .filter(|(key, it)| key >= low && turning.contains(&it.session));
    changes.extend(gone.map(|(key, _)| Change {
        shelf,
        key,
        json: None,
    }));
    Ok(())
}

/// Histories and summaries.
async fn exercises<S: Shelves>(
    shelves: &S,
    turns: &[Turn],
    changes: &mut Vec<Change>,
) -> Result<(), BookFault<S::Fault>> {
    let mut touched: Map<&ExerciseId, Vec<&Turn>> = Map::new();
    for turn in turns {
        for exercise in turn.exercises() {
            touched.or_default(exercise).push(turn);
        }
    }
    for (exercise, turns) in touched {
        let years = years(shelves, exercise, &turns).await?;
        let stored = shelves
            .some(Shelf::Summaries, vec![exercise.to_string()])
            .await?;
        let stored: Option<ExerciseSummary> = match stored.first() {
            Some((_, row)) => Some(read(row)?),
            None => None,
        };
        let summary = match followed(stored.as_ref(), exercise, &turns) {
            Some(summary) => Some(summary),
            None => rebuilt(shelves, exercise, &years).await?,
        };
        let shelf = Shelf::Histories;
        changes.extend(years.into_iter().map(|(key, pasts)| Change {
            shelf,
            key,
            json: (!pasts.is_empty()).then(|| text(&pasts)),
        }));
        if summary != stored {
            changes.push(Change {
                shelf: Shelf::Summaries,
                key: exercise.to_string(),
                json: summary.as_ref().map(text),
            });
        }
    }
    Ok(())
}

/// The touched years of an exercise, with the sessions out as they were and in as they are.
async fn years<S: Shelves>(
    shelves: &S,
    exercise: &ExerciseId,
    turns: &[&Turn],
) -> Result<Map<String, Vec<Past>>, BookFault<S::Fault>> {
    let key = |past: &Past| history_key(exercise, year_of(past.performance.at));
    let pasts = || {
        let entries = turns.iter().flat_map(|turn| turn.entries());
        entries.flat_map(|entry| entry.of_exercise(exercise))
    };
    let keys: Set<String> = pasts().map(key).collect();
    let mut years: Map<String, Vec<Past>> = keys.into_iter().map(|key| (key, Vec::new())).collect();
    let wanted = years.keys().cloned().collect();
    for (key, row) in shelves.some(Shelf::Histories, wanted).await? {
        let mut kept: Vec<Past> = read(&row)?;
        kept.retain(|past| turns.iter().all(|turn| turn.session != past.session()));
        years.insert(key, kept);
    }
    for entry in turns.iter().filter_map(|turn| turn.after.as_ref()) {
        for past in entry.of_exercise(exercise) {
            years.or_default(key(past)).push(past.clone());
        }
    }
    for kept in years.values_mut() {
        in_order(kept);
    }
    Ok(years)
}

/// The summary with these sessions after all that it knows; none where they are not all new and later.
fn followed(
    stored: Option<&ExerciseSummary>,
    exercise: &ExerciseId,
    turns: &[&Turn],
) -> Option<ExerciseSummary> {
    if turns.iter().any(|turn| turn.before.is_some()) {
        return None;
    }
    let mut new: Vec<Past> = turns
        .iter()
        .filter_map(|turn| turn.after.as_ref())
        .flat_map(|entry| entry.of_exercise(exercise))
        .cloned()
        .collect();
    in_order(&mut new);
    let Some(stored) = stored else {
        // Nothing was done of it before.
        return ExerciseSummary::of(exercise, &new);
    };
    let mut summary = stored.clone();
    let mut sessions = new.chunk_by(|a, b| a.session() == b.session());
    sessions
        .all(|session| summary.take(session))
        .then_some(summary)
}

/// The summary of all that is kept of an exercise, with those years as they are now.
async fn rebuilt<S: Shelves>(
    shelves: &S,
    exercise: &ExerciseId,
    years: &Map<String, Vec<Past>>,
) -> Result<Option<ExerciseSummary>, BookFault<S::Fault>> {
    let (from, to) = history_span(exercise);
    let mut history: Vec<Past> = years.values().flatten().cloned().collect();
    let rows = shelves
        .first(Shelf::Histories, (&from, &to), u32::MAX)
        .await?;
    for (_, row) in rows.iter().filter(|(key, _)| !years.contains_key(key)) {
        history.extend(read::<Vec<Past>, _>(row)?);
    }
    in_order(&mut history);
    Ok(ExerciseSummary::of(exercise, &history))
}
