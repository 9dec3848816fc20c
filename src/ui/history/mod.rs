//! What was done of each exercise, in pictures.

mod bests;
mod list;
mod page;

pub use bests::{best_lines, bests};
pub use list::histories_place;
pub use page::history_place;
