//! The coach's view: another lifter's export is looked at, two periods of a ledger are compared, the next sheet is
//! written. Nothing of theirs is kept here.

mod compare;
mod sheets;
mod view;

pub use compare::compare_place;
pub use view::{doors, floor, look_at, looking};
