//! The books rebuilt, session by session: after a change of their form, or where a row of them is spoiled.

use super::book_keys::{heading_key, history_key, last_key, year_of};
use super::books::{Entry, at_their_pace, form, put};
use super::change::Change;
use super::lasts::LastOf;
use super::shelf::Shelf;
use crate::ledger::{ExerciseSummary, Heading, Past, in_order};
use crate::order;
use crate::order::{Map, Set};
use crate::session::SessionId;
use crate::sheet::{ExerciseId, SheetId};

/// The books as far as they are made.
#[derive(Debug, Default)]
pub struct Remaking {
    headings: Vec<Heading>,
    histories: Map<ExerciseId, Vec<Past>>,
    known: Set<SessionId>,
    /// True when the rows of the sessions were given.
    headed: bool,
}

impl Remaking {
    /// Takes a session in, in any order; one that is in already is passed over.
    pub fn take(&mut self, entry: Entry) {
        let (heading, pasts) = entry.into_parts();
        if !self.known.insert(heading.session) {
            return;
        }
        self.headings.push(heading);
        for (exercise, past) in pasts {
            self.histories.or_default(exercise).push(past);
        }
    }

    /// Takes in the heading of a session that cannot be read: it stays as it is.
    pub fn stay(&mut self, heading: Heading) {
        if self.known.insert(heading.session) {
            self.headings.push(heading);
        }
    }

    /// The next rows of the books, once all sessions are in: first the headings, then exercise by exercise; none when these
    /// were all. Whatever else stands on their shelves is to go.
    pub fn next_rows(&mut self) -> Option<Vec<Change>> {
        if !std::mem::replace(&mut self.headed, true) {
            return Some(self.of_sessions());
        }
        let exercise = self.histories.keys().next()?.clone();
        let history = self.histories.remove(&exercise)?;
        Some(of_exercise(&exercise, history))
    }

    fn of_sessions(&mut self) -> Vec<Change> {
        let mut rows = vec![form()];
        order::by_key(&mut self.headings, Heading::place);
        at_their_pace(&mut self.headings, 0);
        let mut lasts: Map<SheetId, LastOf> = Map::new();
        for heading in &self.headings {
            if let Some(last) = LastOf::of(heading) {
                lasts.insert(last.sheet, last);
            }
            let key = heading_key(heading.began, heading.session);
            rows.push(put(Shelf::Headings, key, heading));
        }
        for last in lasts.values() {
            rows.push(put(Shelf::Books, last_key(last.sheet), last));
        }
        rows
    }
}

fn of_exercise(exercise: &ExerciseId, mut history: Vec<Past>) -> Vec<Change> {
    let mut rows = Vec::new();
    in_order(&mut history);
    let year = |past: &Past| year_of(past.performance.at);
    for pasts in history.chunk_by(|a, b| year(a) == year(b)) {
        if let Some(first) = pasts.first() {
            let key = history_key(exercise, year(first));
            rows.push(put(Shelf::Histories, key, &pasts));
        }
    }
    if let Some(summary) = ExerciseSummary::of(exercise, &history) {
        rows.push(put(Shelf::Summaries, exercise.to_string(), &summary));
    }
    rows
}
