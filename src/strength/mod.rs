//! What it means: the next load with its because, the load of each set, the estimate, and when to be careful.

mod because;
mod because_forms;
mod curves;
mod estimate;
mod history;
mod ladder;
mod propose;
mod rules;
mod safety;
mod set_because;
mod set_load;
mod words;

pub use because::{Because, Moved, Proposal, Wish};
pub use curves::{Curve, OffTheCurve, epley};
pub use estimate::{ESTIMATE_RESERVE_MAX, ESTIMATE_SESSIONS, best_e1rm};
pub use history::{Performance, SetResult};
pub use propose::propose;
pub use safety::{cautions, jump_caution};
pub use set_because::{OutcomeStep, SetBecause, ShareOf};
pub use set_load::{DoneSet, Prescribed, set_load};
