//! What it means: the next load with its because, the load of each set, the estimate, and when to be careful.

mod above;
mod because;
mod because_forms;
mod change;
mod curves;
mod estimate;
mod feed;
mod filter;
mod foretell;
mod from_estimate;
mod goes_on;
mod guided;
mod history;
mod instead;
mod ladder;
mod level;
mod lighten;
mod load_words;
mod maximum;
mod moved;
mod normal;
mod outcome;
mod prescribed;
mod propose;
mod rules;
mod safety;
mod set_because;
mod set_load;
mod set_words;
mod shown;
mod steps;
mod system;
mod trace;
mod turn_words;
mod unfed;
mod words;

pub use above::{Above, above};
pub use because::{Because, Proposal};
pub use change::{
    Change, PLATEAU_DAYS, PLATEAU_SESSIONS, Plateau, Told, change_between, change_since, mdc95,
    plateau, typical_error,
};
pub use curves::{Curve, OffTheCurve};
pub use estimate::{best_e1rm, maximum_said, to_tenth};
pub use feed::{DAY_CV, ESTIMATE_RESERVE_MAX, RESERVE_SD, unfed};
pub use filter::{CURVE_SD, DRIFT_SD};
pub use foretell::{Foretold, Known, plateau_said};
pub use history::{Performance, SetResult, Stretch, moved_alike};
pub use level::{Estimate, RepsAhead, Strength, Support, track};
pub use lighten::{lighten_loads, lighten_proposal};
pub use maximum::{Maximum, WithBody};
pub use moved::{Bound, Missed, Moved, Wish};
pub use prescribed::{Base, DoneSet, Prescribed};
pub use propose::{Today, propose};
pub use rules::{NO_BREAK_DAYS, days_between};
pub use safety::{
    assistance_caution, best_lately, cautions, first_jump_words, jump_caution, jump_words, jumps,
    may_fall,
};
pub use set_because::{GuidedStep, OutcomeStep, SetBecause, ShareOf};
pub use set_load::set_load;
pub use shown::{Shown, shown, shown_by_all};
pub use steps::{MORE_TRAINED_AFTER, Training, usual_step, usual_steps};
pub use system::{body_mass_words, lacks_body_mass, system_load};
pub use trace::{Said, Traced, trace};
pub use unfed::Unfed;
