//! Sheets: the written plans, and one plan to look at with the loads it would propose today.

mod list;
mod look;
mod order;
mod time;
mod write;

pub use list::SheetsPlace;
pub use look::SheetPlace;
pub use write::WritePlace;
