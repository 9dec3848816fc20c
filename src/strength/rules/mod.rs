//! The progression rules, each a pure function from what was seen last time to a because.

mod coarse;
mod comeback;
mod deload;
mod double;
mod fixed;
mod reserve;
mod seen;
mod share;
mod two_for_two;
mod written;

pub(super) use coarse::Worth;
pub(super) use comeback::after_break;
pub use comeback::{NO_BREAK_DAYS, days_between};
pub(super) use deload::unless_deload;
pub(super) use double::double;
pub(super) use fixed::fixed;
pub(super) use reserve::by_reserve;
pub(super) use seen::{Seen, goes_by_maximum, unless_cut_short, unless_lightened};
pub(super) use share::share_of_e1rm;
pub(super) use two_for_two::two_for_two;
pub(super) use written::as_written;
