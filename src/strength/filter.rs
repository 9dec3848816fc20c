//! The filter itself: a level that drifts from day to day, and how the lifter differs from the curve, which stays.
//!
//! On the scale of logarithms a reading is level + lean × own + error. The level is a random walk in days (a local level,
//! in Durbin and Koopman's words), `own` is fixed and begins at the spread between people. With readings of one
//! number of reps only, `own` cannot be told from the level, and the doubt about it stays in the interval; with `own` held
//! at zero what remains is the plain local level. Checked against an independent library in the tests below.

use super::feed::{FIRST_BOUND_SD, Reading};
use super::normal::mean_above;

/// How much strength drifts in a day, as a standard deviation of its logarithm; it grows with the root of the days.
/// Chosen on simulated lifters: see `docs/simulation.md`.
pub const DRIFT_SD: f64 = 0.004;

/// How much people differ in the reps that a curve gives them, as a standard deviation of the logarithm.
///
/// A guess from one published spread: 6 to 26 reps at 70 % of a squat maximum in trained lifters (quoted by Nuzzo et al.
/// 2024, Sports Med 54:303–321), taken as five standard deviations: ln(26/6)/5 = 0.293.
pub const CURVE_SD: f64 = 0.29;

/// No session moves the estimate by more than its innovation at this many standard deviations: a slip of the
/// thumb, or a very bad day.
const INNOVATION_MAX: f64 = 3.0;

/// What is known after some readings.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct State {
    /// Mean of the level.
    pub level: f64,
    /// Mean of how the lifter differs from the curve.
    pub own: f64,
    /// Variance of the level.
    pub level_var: f64,
    /// Covariance of the two.
    pub both: f64,
    /// Variance of `own`.
    pub own_var: f64,
}

impl State {
    /// After the first reading, of whose level nothing was known before.
    pub(super) fn first(reading: &Reading, own_var: f64) -> State {
        let more = if reading.at_least {
            FIRST_BOUND_SD.powi(2)
        } else {
            0.0
        };
        State {
            level: reading.value,
            own: 0.0,
            level_var: reading.noise + more + reading.lean.powi(2) * own_var,
            both: -reading.lean * own_var,
            own_var,
        }
    }

    /// So many days later; a clock that was set back is no time.
    pub(super) fn later(self, days: f64, drift_var: f64) -> State {
        State {
            level_var: self.level_var + days.max(0.0) * drift_var,
            ..self
        }
    }

    /// Mean and variance of level + lean × own.
    pub(super) fn seen_at(&self, lean: f64) -> (f64, f64) {
        let mean = self.level + lean * self.own;
        let variance = self.level_var + 2.0 * lean * self.both + lean * lean * self.own_var;
        (mean, variance)
    }

    /// With one reading more.
    pub(super) fn with(self, reading: &Reading) -> State {
        let (mean, variance) = self.seen_at(reading.lean);
        let spread = (variance + reading.noise).sqrt();
        let off = (reading.value - mean) / spread;
        if reading.at_least {
            // The exact mean and variance of a normal that is known to lie above a value.
            let shift = mean_above(off);
            self.moved(
                reading.lean,
                spread,
                shift.min(INNOVATION_MAX),
                shift * (shift - off),
            )
        } else {
            let off = off.clamp(-INNOVATION_MAX, INNOVATION_MAX);
            self.moved(reading.lean, spread, off, 1.0)
        }
    }

    /// Moved along a reading of that spread by so many of its standard deviations, its variance down by a share.
    fn moved(self, lean: f64, spread: f64, by: f64, less: f64) -> State {
        let level_gain = (self.level_var + lean * self.both) / spread;
        let own_gain = (self.both + lean * self.own_var) / spread;
        State {
            level: self.level + level_gain * by,
            own: self.own + own_gain * by,
            level_var: self.level_var - less * level_gain * level_gain,
            both: self.both - less * level_gain * own_gain,
            own_var: self.own_var - less * own_gain * own_gain,
        }
    }

    /// Variance of the level if the lifter's own curve were known: what matters where two levels are compared.
    pub(super) fn apart_from_curve(&self) -> f64 {
        if self.own_var > 0.0 {
            self.level_var - self.both * self.both / self.own_var
        } else {
            self.level_var
        }
    }
}

#[cfg(test)]
#[path = "filter_tests.rs"]
mod tests;
