//! What it means: the next load with its because, the load of each set, the estimate, and when to be careful.

mod because;
mod because_forms;
mod curves;
mod estimate;
mod guided;
mod history;
mod ladder;
mod lighten;
mod prescribed;
mod propose;
mod rules;
mod safety;
mod set_because;
mod set_load;
mod steps;
mod turn_words;
mod words;

pub use because::{Because, Bound, Missed, Moved, Proposal, Wish};
pub use curves::{EPLEY_REPS_MAX, OffTheCurve, epley};
pub use estimate::{ESTIMATE_RESERVE_MAX, ESTIMATE_SESSIONS, best_e1rm};
pub use history::{Performance, SetResult};
pub use lighten::{lighten_loads, lighten_proposal};
pub use prescribed::{Base, DoneSet, Prescribed};
pub use propose::{Today, propose};
pub use safety::{JUMP_WORDS, best_lately, cautions, jump_caution, jumps};
pub use set_because::{GuidedStep, OutcomeStep, SetBecause, ShareOf};
pub use set_load::set_load;
pub use steps::{MORE_TRAINED_AFTER, Training, usual_step, usual_steps};
