//! What the ledger's pictures show: from what was done to charts, each with its table.

mod asked;
mod best;
mod body;
mod estimate;
mod moved;
mod stretch;
mod sums;
mod year;

pub use asked::{Asked, Period, chosen, drawn, hidden, hundredths, load_grain};
pub use best::{best_at_reps, loads_done, reps_at_load};
pub use body::{DAY_KEEPS, body_mass, own_measure, own_measures, smoothed};
pub use estimate::estimate;
pub use moved::both_loads;
pub use stretch::{Counted, heaviest, longest, no_estimate};
pub use sums::{tempo_kept, volume};
pub use year::{Peg, year};
