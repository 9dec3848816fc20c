//! Which sheet comes next: sheets in a rotation or on weekdays, and a planned light week now and then.
//!
//! Rotations, weekdays and light weeks (deloads) are common practice, no source; how much a body needs is for the
//! lifter, a qualified coach or a physician to say.

mod light;
mod lighten;
mod next;
mod plan;
mod record;
mod relief;
mod words;

#[cfg(test)]
mod lighten_tests;
#[cfg(test)]
mod relief_tests;
#[cfg(test)]
mod tests;

pub use light::{
    LIGHT_EVERY_MAX, LIGHT_EVERY_MIN, LIGHT_LOAD_MIN, LIGHT_SETS_MIN, LightWeek, Monday, UnfitLight,
};
pub use lighten::lighten;
pub use next::{DoneSheet, Offer, Why, next};
pub use plan::{Plan, ROTATION_SHEETS_MAX, Rotation, UnfitPlan, Weekdays};
pub(crate) use record::ProgrammeForm;
pub use record::{Programme, ProgrammeId};
pub use relief::{Lately, Relief, relief};
