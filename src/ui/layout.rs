//! The database in the form of this version: a copy of everything is put away before the form changes, and where that
//! or the change fails, the old data stays as it is and can be looked at and exported.

use super::gather::file;
use super::keep::Keep;
use super::model::Keeping;
use crate::device::clock;
use crate::device::db::{Db, DbError, Write};
use crate::say;
use crate::store::{DATABASE_VERSION, SNAPSHOT_SHELF, Shelf, newest_export, snapshots_of};
use std::cmp::Ordering;

/// Where the records of that database are kept from now on, and what becomes of them.
pub async fn opened(database: &str) -> (Keep, Keeping) {
    match settled(database).await {
        Ok(keep) => (keep, Keeping::Safe),
        Err((keep, why)) => (keep, Keeping::Nothing(why)),
    }
}

async fn settled(database: &str) -> Result<Keep, (Keep, String)> {
    let nowhere = |error: DbError| (Keep::in_memory(database), error.to_string());
    let Some(db) = Db::as_it_is(database).await.map_err(nowhere)? else {
        let made = changed(database).await;
        return made.map(Keep::on_disk).map_err(nowhere);
    };
    match db.version().cmp(&DATABASE_VERSION) {
        Ordering::Equal => Ok(Keep::on_disk(db.pinned())),
        Ordering::Greater => Err((Keep::beside(db), DbError::Newer.to_string())),
        Ordering::Less => {
            let copied = copy(&db).await;
            db.close();
            let changed = match copied {
                Ok(()) => changed(database).await,
                Err(error) => Err(error),
            };
            changed.map(Keep::on_disk).map_err(|error| {
                let why = say!(
                    "What is stored here could not be brought into the form of this version; it is all there, as it was. {error}",
                    error,
                );
                (Keep::beside(db), why)
            })
        }
    }
}

/// The database with the shelves of this version; what is missing is added in one transaction, or nothing.
async fn changed(database: &str) -> Result<Db, DbError> {
    let shelves: Vec<&str> = Shelf::ALL.iter().map(|shelf| shelf.name()).collect();
    Db::open(database, DATABASE_VERSION, &shelves).await
}

/// Puts a copy of everything away: as an export, which any version can read again, and row by row.
async fn copy(db: &Db) -> Result<(), DbError> {
    let keep = Keep::beside(db.clone());
    let mut export = String::new();
    file(&keep, clock::wall(), &mut |text| export.push_str(text)).await?;
    let mut rows = Vec::new();
    for shelf in Shelf::ALL {
        rows.extend(keep.raw(shelf).await?);
    }
    let put = |kind: &str, text: String| Write::Put {
        shelf: SNAPSHOT_SHELF.to_owned(),
        key: format!("{}.{kind}", db.version()),
        text,
    };
    let writes = vec![put("json", export), put("txt", rows.join("\n"))];
    let copies = Db::open(&snapshots_of(db.name()), 1, &[SNAPSHOT_SHELF]).await?;
    copies.apply(writes).await
}

/// The newest copy from before a change of the form, as an export; none where there never was a change.
pub async fn newest_copy(database: &str) -> Result<Option<String>, DbError> {
    let Some(copies) = Db::as_it_is(&snapshots_of(database)).await? else {
        return Ok(None);
    };
    let keys = copies.keys(SNAPSHOT_SHELF).await?;
    match newest_export(&keys) {
        Some(key) => copies.get(SNAPSHOT_SHELF, key).await,
        None => Ok(None),
    }
}
