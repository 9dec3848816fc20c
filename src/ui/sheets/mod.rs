//! Sheets: the written plans, and one plan to look at with the loads it would propose today.

mod draft;
mod list;
mod look;
mod order;
mod paper;
mod share;
mod shared;
mod time;
mod words;
mod write;

pub use draft::{DraftBlockPlace, DraftExercisePlace, DraftPlace};
pub use list::SheetsPlace;
pub use look::SheetPlace;
pub use shared::{SharedPlace, look_at_file, open_link};
pub use write::WritePlace;
