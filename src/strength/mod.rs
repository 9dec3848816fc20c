//! What it means: the next load with its because.

mod because;
mod history;

pub use because::{Because, Proposal};
pub use history::{Performance, SetResult};
mod stub;
pub use stub::*;
