//! Quantities with their units and ranges: loads as exact decimals, seconds, reps, reserve, shares.
//!
//! A quantity out of range cannot be made: every constructor checks, and deserialising goes through it.

mod count;
mod day;
mod load;
mod measure;
mod plain;
mod share;

pub use count::{Metres, Reps, Rir, Rpe, Seconds, clock, minutes_said, minutes_up};
pub use day::{
    WEEK, date, day, day_and_month, day_and_time, iso_date, iso_day, long_date, long_day_and_time,
    month, month_short, parse_date, time, weekday, weekday_short,
};
pub use load::{KG_PER_LB, Load, LoadError, Unit};
pub use measure::{Measure, MeasureUnit, UnfitMeasure};
pub(crate) use plain::plain_decimal;
pub use share::Share;

use crate::say;
use std::fmt;

/// A number outside the range that its quantity allows.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OutOfRange {
    /// The quantity, in words of the language that is spoken ("reps", "seconds").
    pub what: &'static str,
    /// What was given.
    pub given: String,
    /// Smallest allowed value.
    pub least: i64,
    /// Largest allowed value.
    pub most: i64,
}

impl fmt::Display for OutOfRange {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let OutOfRange {
            what,
            given,
            least,
            most,
        } = self;
        f.write_str(&say!(
            "{what} must be a number from {least} to {most}, not {given}",
            what,
            least,
            most,
            given
        ))
    }
}

impl std::error::Error for OutOfRange {}
