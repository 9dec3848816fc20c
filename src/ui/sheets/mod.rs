//! Sheets: the written plans, and one plan to look at with the loads it would propose today.

mod doubts;
mod draft;
mod list;
mod look;
mod meanings;
mod order;
mod paper;
mod share;
mod shared;
mod time;
mod unkept;
mod words;
mod write;

pub use draft::{draft_block_place, draft_exercise_place, draft_place};
pub use list::sheets_place;
pub use look::sheet_place;
pub use shared::{look_at_file, open_link, shared_place};
pub use write::write_place;
