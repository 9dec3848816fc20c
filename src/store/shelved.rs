//! The rows of a shelf, read as far as they can be: what cannot be read costs no other record.

use super::row::{RowError, open};
use super::shelf::Shelf;
use crate::json::parse;
use serde::de::DeserializeOwned;

/// The records of a shelf, and the rows of it that could not be read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Shelved<T> {
    /// Readable records by ascending key.
    pub records: Vec<T>,
    /// Rows that could not be read, as they are.
    pub unreadable: Vec<Unreadable>,
}

/// A row that could not be read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unreadable {
    /// Its key.
    pub key: String,
    /// What stands there.
    pub row: String,
    /// True when a newer version of the program wrote it, which can read it: by what it says of itself, or because its
    /// checksum holds and its content is not known here.
    pub newer: bool,
}

impl Unreadable {
    /// The line of a file with what was set aside: shelf, key, and the row to its last byte.
    #[must_use]
    pub fn line(&self, shelf: Shelf) -> String {
        aside_line(shelf, &self.key, &self.row)
    }
}

/// The line of a file with what was set aside.
#[must_use]
pub fn aside_line(shelf: Shelf, key: &str, row: &str) -> String {
    format!("{} {key} {row}", shelf.name())
}

/// Reads the rows of a shelf, given with their keys.
#[must_use]
pub fn shelved<T: DeserializeOwned>(rows: Vec<(String, String)>) -> Shelved<T> {
    let mut records = Vec::new();
    let unreadable = sorted_out(rows, &mut |json| match parse(json) {
        Ok(record) => {
            records.push(record);
            true
        }
        Err(_) => false,
    });
    Shelved {
        records,
        unreadable,
    }
}

/// The rows that cannot be opened, or of which `read` says that it cannot be read: compiled once, whatever they hold.
#[inline(never)]
fn sorted_out(rows: Vec<(String, String)>, read: &mut dyn FnMut(&str) -> bool) -> Vec<Unreadable> {
    let mut unreadable = Vec::new();
    for (key, row) in rows {
        let newer = match open(&row) {
            Ok(json) if read(json) => continue,
            Ok(_) | Err(RowError::Newer { .. }) => true,
            Err(RowError::NotARow | RowError::Damaged { .. }) => false,
        };
        unreadable.push(Unreadable { key, row, newer });
    }
    unreadable
}
