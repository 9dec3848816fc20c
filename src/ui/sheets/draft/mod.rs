//! A sheet written by taps: the list of its blocks, the choice of an exercise, and everything that a block prescribes.

mod block;
mod exercise;
mod hand;
mod lines;
mod load;
mod next;
mod own;
mod policy;
mod reps;
mod reserve;
mod rows;
mod sets;
mod sheet;
mod stages;
mod target;

pub use block::draft_block_place;
pub use exercise::{draft_exercise_place, more_button};
pub use sheet::draft_place;
