//! What is kept: the file format, its versions, import, merge, export, and the rows of the database. Pure: text in,
//! values out.
//!
//! Everything kept is a set of immutable records with ids. What changes is written as a new record: a sheet has
//! versions, a session has events. So two collections merge by set union, and an import can be done twice, in any
//! order, without harm.

mod archive;
mod as_written;
mod body;
mod book_keys;
mod books;
mod change;
mod csv;
mod demo;
mod entries;
mod exercise_record;
mod file;
mod import;
mod kept;
mod lasts;
mod limits;
mod merge;
mod migrate;
mod people;
mod programme_record;
mod read;
mod record;
mod remaking;
mod removed;
mod removed_session;
mod row;
mod session_log;
mod sheet_record;
mod shelf;
mod shelved;
mod taken;
mod things;
mod write;

pub use archive::Archive;
pub use body::{BodyEntry, BodyRecord, BodyValue, body_entries};
pub use book_keys::{
    BOOKS_FORM, END, FORM_KEY, LASTS, Rows, Shelves, UNREAD_KEY, heading_key, headings_span,
    history_span, last_key,
};
pub use books::{BookFault, Entry, Turn, turned};
pub use change::{Change, changes, changes_but_sessions, session_row, sessions_that_differ};
pub use csv::{COLUMNS, csv};
pub use demo::demo;
pub use exercise_record::ExerciseRecord;
pub use file::FORMAT;
pub use import::{import, join};
pub use kept::{Kept, Put, Record};
pub use lasts::LastOf;
pub use limits::{
    BODY_MASSES_MAX, BODY_MAX, EXERCISES_MAX, FILE_BYTES_MAX, KITS_MAX, LIFTERS_MAX,
    PROGRAMMES_MAX, SESSIONS_MAX, SHEETS_MAX,
};
pub use merge::{Conflict, Merged, Summary};
pub use migrate::FormatVersion;
pub use people::{People, Person, UnfitName};
pub use programme_record::ProgrammeRecord;
pub use read::{ReadError, check_size, read, read_file};
pub use record::{BodyMassRecord, KitRecord, LifterRecord};
pub use remaking::Remaking;
pub use removed::Removed;
pub use removed_session::RemovedSession;
pub use row::{RowError, open, seal, seal_whole};
pub use session_log::{SessionLog, UnfitSession, entry};
pub use sheet_record::{RemovedSheet, SheetRecord};
pub use shelf::{DATABASE, DATABASE_VERSION, SNAPSHOT_SHELF, Shelf, newest_export, snapshots_of};
pub use shelved::{Shelved, Unreadable, aside_line, shelved};
pub use taken::Taken;
pub use things::Things;
pub use write::{Around, write};
