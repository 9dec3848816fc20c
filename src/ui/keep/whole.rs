//! Many records as they are at one moment, what waits to be written among them.

use super::Keep;
use crate::device::db::{Answer, DbError, First, Take, Write};
use crate::order::Map;
use crate::store::{Rows, Shelf};
use std::iter::Peekable;

/// The rows of a shelf as those writes leave them.
pub(super) fn after<'a>(rows: Rows, writes: impl Iterator<Item = &'a Write>, shelf: &str) -> Rows {
    let mut rows: Map<String, String> = rows.into_iter().collect();
    for write in writes.filter(|write| write.shelf() == shelf) {
        match write {
            Write::Put { key, text, .. } => _ = rows.insert(key.clone(), text.clone()),
            Write::Delete { key, .. } => _ = rows.remove(key),
            Write::Clear { .. } => rows.clear(),
        }
    }
    rows.into_iter().collect()
}

/// What writes come to on a shelf, laid over its rows while they are walked through.
struct Over<I: Iterator<Item = (String, Option<String>)>> {
    /// Whether nothing counts of what is on disk.
    cleared: bool,
    /// By rising key; none where the row goes.
    rows: Peekable<I>,
}

fn over(writes: &[Write], shelf: &str) -> Over<impl Iterator<Item = (String, Option<String>)>> {
    let (mut cleared, mut rows) = (false, Map::new());
    for write in writes.iter().filter(|write| write.shelf() == shelf) {
        match write {
            Write::Put { key, text, .. } => _ = rows.insert(key.clone(), Some(text.clone())),
            Write::Delete { key, .. } => _ = rows.insert(key.clone(), None),
            Write::Clear { .. } => {
                cleared = true;
                rows.clear();
            }
        }
    }
    let rows = rows.into_iter().peekable();
    Over { cleared, rows }
}

impl<I: Iterator<Item = (String, Option<String>)>> Over<I> {
    /// Gives a row that is on disk as it will be, and before it those that will be before it.
    fn row(&mut self, key: String, row: &str, take: &mut Take<'_>) {
        while let Some((own, text)) = self.rows.next_if(|(own, _)| *own < key) {
            if let Some(text) = text {
                take(own, &text);
            }
        }
        match self.rows.next_if(|(own, _)| *own == key) {
            Some((own, Some(text))) => take(own, &text),
            Some((_, None)) => {}
            None if self.cleared => {}
            None => take(key, row),
        }
    }

    /// Gives the rows behind the last that is on disk.
    fn rest(self, take: &mut Take<'_>) {
        for (key, text) in self.rows {
            if let Some(text) = text {
                take(key, &text);
            }
        }
    }
}

impl Keep {
    /// Gives all rows of the shelves `beside`, then each of `shelf` with its key, by rising key: all of it as it is at one
    /// moment, what waits among it.
    pub async fn walk_after(
        &self,
        beside: &[Shelf],
        first: &mut First<'_>,
        shelf: Shelf,
        take: &mut Take<'_>,
    ) -> Result<(), DbError> {
        let mut there = Vec::new();
        for shelf in beside {
            // A store of another layout may lack a shelf: nothing was ever put there.
            if let Some(db) = &self.disk
                && (!self.only_read || db.has(shelf.name()).await?)
            {
                there.push(*shelf);
            }
        }
        // What waits is noted before the disk is read: what is written meanwhile is in both, and the same.
        let writes: Vec<Write> = self.beside_disk(&self.held.borrow()).cloned().collect();
        let mut first = |answers: Vec<Answer>| {
            let mut answers = there.iter().zip(answers).peekable();
            let all = beside.iter().map(|shelf| {
                let answer = answers.next_if(|(there, _)| **there == *shelf);
                let answer = answer.map(|(_, answer)| answer).unwrap_or_default();
                let untouched = writes.iter().all(|write| write.shelf() != shelf.name());
                match untouched {
                    true => answer,
                    false => Answer::of(after(answer.rows(), writes.iter(), shelf.name())),
                }
            });
            first(all.collect());
        };
        let mut over = over(&writes, shelf.name());
        if let Some(db) = &self.disk {
            let names: Vec<&str> = there.iter().map(|shelf| shelf.name()).collect();
            let mut row = |key, row: &str| over.row(key, row, take);
            db.walk_after(&names, &mut first, shelf.name(), &mut row)
                .await?;
        } else {
            first(Vec::new());
        }
        over.rest(take);
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ui::change::delete;

    fn put(key: &str, text: &str) -> Write {
        Write::Put {
            shelf: Shelf::Sessions.name().to_owned(),
            key: key.to_owned(),
            text: text.to_owned(),
        }
    }

    #[test]
    fn rows_that_are_walked_through_are_those_that_would_be_read() {
        let disk: Rows = ["b", "d", "f"]
            .map(|key| (key.to_owned(), "disk".to_owned()))
            .to_vec();
        let name = Shelf::Sessions.name();
        let clear = Write::Clear {
            shelf: name.to_owned(),
        };
        let gone = |key| delete(Shelf::Sessions, key);
        let elsewhere = delete(Shelf::Events, "d");
        for writes in [
            vec![],
            vec![put("a", "1"), put("c", "1"), put("g", "1"), elsewhere],
            vec![put("d", "1"), gone("b"), put("d", "2")],
            vec![put("d", "1"), gone("d"), gone("x")],
            vec![put("a", "1"), clear.clone(), put("d", "2")],
            vec![clear],
        ] {
            let (mut walked, mut over) = (Rows::new(), over(&writes, name));
            let mut take = |key, row: &str| walked.push((key, row.to_owned()));
            for (key, row) in disk.clone() {
                over.row(key, &row, &mut take);
            }
            over.rest(&mut take);
            assert_eq!(walked, after(disk.clone(), writes.iter(), name));
        }
    }
}
