//! Which session of a sheet was the newest in which a set was done: what the choice of a sheet and the programme ask for, among the books.

use super::book_keys::{END, Shelves, last_key};
use super::books::{BookFault, Turn, read};
use super::change::Change;
use super::shelf::Shelf;
use crate::json::text;
use crate::ledger::{Heading, newest_first};
use crate::order::Set;
use crate::session::SessionId;
use crate::sheet::SheetId;
use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};

/// How many headings are looked at in one go for the newest of a sheet.
const LOOK_BACK: u32 = 120;

/// The newest session of a sheet in which a set was done: one that was begun and ended without any is no turn of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LastOf {
    /// The sheet.
    pub sheet: SheetId,
    /// Its newest session.
    pub session: SessionId,
    /// When that began.
    pub began: DateTime<FixedOffset>,
}

impl LastOf {
    /// Of a session, where it counts.
    pub(super) fn of(heading: &Heading) -> Option<LastOf> {
        heading.has_sets().then_some(LastOf {
            sheet: heading.sheet_id,
            session: heading.session,
            began: heading.began,
        })
    }

    fn place(&self) -> (DateTime<FixedOffset>, SessionId) {
        (self.began, self.session)
    }
}

/// The newest session of each sheet.
pub(super) async fn lasts<S: Shelves>(
    shelves: &S,
    turns: &[Turn],
    changes: &mut Vec<Change>,
) -> Result<(), BookFault<S::Fault>> {
    let entries = turns.iter().flat_map(Turn::entries);
    let sheets: Set<SheetId> = entries.map(|entry| entry.heading.sheet_id).collect();
    for sheet in sheets {
        let row = shelves.some(Shelf::Books, vec![last_key(sheet)]).await?;
        let stored: Option<LastOf> = match row.first() {
            Some((_, row)) => Some(read(row)?),
            None => None,
        };
        let stays = |session| turns.iter().all(|turn| turn.session != session);
        let new = turns.iter().filter_map(|turn| turn.after.as_ref());
        let new = new.filter(|entry| entry.heading.sheet_id == sheet);
        let newest = new
            .filter_map(|entry| LastOf::of(&entry.heading))
            .max_by_key(LastOf::place);
        let last = match stored {
            Some(stored) if !stays(stored.session) => {
                let left = newest_left(shelves, sheet, &stays).await?;
                left.into_iter().chain(newest).max_by_key(LastOf::place)
            }
            _ => stored.into_iter().chain(newest).max_by_key(LastOf::place),
        };
        if last != stored {
            changes.push(Change {
                shelf: Shelf::Books,
                key: last_key(sheet),
                json: last.as_ref().map(text),
            });
        }
    }
    Ok(())
}

/// The newest session of a sheet among those that stay.
async fn newest_left<S: Shelves>(
    shelves: &S,
    sheet: SheetId,
    stays: &impl Fn(SessionId) -> bool,
) -> Result<Option<LastOf>, BookFault<S::Fault>> {
    let mut end = END.to_owned();
    loop {
        let rows = shelves.last(Shelf::Headings, ("", &end), LOOK_BACK).await?;
        let Some((first, _)) = rows.first() else {
            return Ok(None);
        };
        end.clone_from(first);
        let mut headings: Vec<Heading> = Vec::new();
        for (_, row) in &rows {
            headings.push(read(row)?);
        }
        newest_first(&mut headings);
        let mut left = headings.iter().filter_map(LastOf::of);
        let found = left.find(|it| it.sheet == sheet && stays(it.session));
        if found.is_some() {
            return Ok(found);
        }
    }
}
