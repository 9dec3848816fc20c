//! Exercises: all that are known, what is known of one, and one of the lifter's own to write.

mod draft;
mod list;
mod look;
mod words;
mod write;

pub use list::ExercisesPlace;
pub use look::ExercisePlace;
pub use words::PATTERNS;
pub use write::WriteExercisePlace;
