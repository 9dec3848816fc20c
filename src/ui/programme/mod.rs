//! The programme: what it says among the sheets, and the place where it is written.

mod draft;
mod section;
mod words;
mod write;

pub use section::programme_section;
pub use write::programme_place;
