//! Sheets: the written plans, and one plan to look at with the loads it would propose today.

mod list;
mod look;

pub use list::SheetsPlace;
pub use look::SheetPlace;
