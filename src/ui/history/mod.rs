//! What was done of each exercise, in pictures.

mod list;
mod page;

pub use list::HistoriesPlace;
pub use page::HistoryPlace;
