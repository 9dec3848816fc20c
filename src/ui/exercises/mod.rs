//! Exercises: all that are known, what is known of one, and one of the lifter's own to write.

mod draft;
mod list;
mod look;
mod words;
mod write;

pub use list::exercises_place;
pub use look::exercise_place;
pub use words::PATTERNS;
pub use write::write_exercise_place;
