//! Sheets: the written plans, and one plan to look at with the loads it would propose today.

mod draft;
mod list;
mod look;
mod order;
mod time;
mod words;
mod write;

pub use draft::{DraftBlockPlace, DraftExercisePlace, DraftPlace};
pub use list::SheetsPlace;
pub use look::SheetPlace;
pub use write::WritePlace;
