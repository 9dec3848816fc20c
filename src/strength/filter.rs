//! The filter itself: a level that drifts from day to day (a local level, in Durbin and Koopman's words), and how much of
//! the lifter's own deviation from the curve is in it.
//!
//! On the scale of logarithms a reading is level + lean × own + error. The level is a random walk in days. `own` is how the
//! lifter differs from the curve; it is fixed and never estimated: from readings of one range of reps it cannot be told
//! from the level, and errors in the reps would be taken for it. What is kept is the mean lean of what is known. So the
//! doubt about the maximum holds the spread between people, and the doubt about reps near those that were trained does
//! not. The level is the plain Kalman filter, checked against an independent library in the tests below.

use super::feed::{FIRST_BOUND_SD, Reading, Says};
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
    /// Its variance if the lifter's own curve were the published one.
    pub variance: f64,
    /// Mean lean of the readings, weighted as they are in the level.
    pub lean: f64,
}

impl State {
    /// After the first reading, of whose level nothing was known before; none where it only says what is too much.
    pub(super) fn first(reading: &Reading) -> Option<State> {
        let more = match reading.says {
            Says::About => 0.0,
            Says::AtLeast => FIRST_BOUND_SD.powi(2),
            Says::AtMost => return None,
        };
        Some(State {
            level: reading.value,
            variance: reading.noise + more,
            lean: reading.lean,
        })
    }

    /// So many days later; a clock that was set back is no time.
    pub(super) fn later(self, days: f64, drift_var: f64) -> State {
        State {
            variance: self.variance + days.max(0.0) * drift_var,
            ..self
        }
    }

    /// With one reading more.
    pub(super) fn with(self, reading: &Reading) -> State {
        let spread = (self.variance + reading.noise).sqrt();
        let off = (reading.value - self.level) / spread;
        // The exact mean and variance of a normal that is known to lie above a value, or below.
        let above = |off: f64| {
            let shift = mean_above(off);
            (shift, shift * (shift - off))
        };
        let (by, less) = match reading.says {
            Says::About => (off, 1.0),
            Says::AtLeast => above(off),
            Says::AtMost => {
                let (shift, less) = above(-off);
                (-shift, less)
            }
        };
        let by = by.clamp(-INNOVATION_MAX, INNOVATION_MAX);
        let gain = self.variance / spread;
        State {
            level: self.level + gain * by,
            variance: self.variance - less * gain * gain,
            lean: self.lean + less * gain / spread * (reading.lean - self.lean),
        }
    }

    /// True where a reading lies so far below that, were it a bound, it would say nothing.
    pub(super) fn is_far_above(&self, reading: &Reading) -> bool {
        let spread = (self.variance + reading.noise).sqrt();
        self.level - reading.value > INNOVATION_MAX * spread
    }

    /// Variance of what the level says for sets of that lean: 0 is the maximum itself.
    pub(super) fn variance_at(&self, lean: f64) -> f64 {
        self.variance + ((lean - self.lean) * CURVE_SD).powi(2)
    }
}

#[cfg(test)]
#[path = "filter_tests.rs"]
mod tests;
