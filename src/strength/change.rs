//! A change told from noise, and a plateau.

use super::curves::Curve;
use super::history::Performance;
use super::level::{Strength, steps, track};
use crate::words::many;
use chrono::{DateTime, FixedOffset, TimeDelta};

/// Fewest sessions that feed the estimate over which a plateau is called (common practice, no source).
pub const PLATEAU_SESSIONS: usize = 8;

/// Fewest days over which a plateau is called (common practice, no source).
pub const PLATEAU_DAYS: i64 = 42;

/// A gain of less than this share over the whole of that time is none: what rounding could give. A lower bar calls more
/// plateaus, and more of them wrongly.
const PLATEAU_GAIN: f64 = 0.000_1;

/// What a change is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Told {
    /// More than noise alone would give: stronger.
    Up,
    /// More than noise alone would give: weaker.
    Down,
    /// Not to be told from noise.
    Noise,
}

/// How strength changed between two times.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Change {
    /// The estimated change as a share: 0.05 is 5 % up.
    pub by: f64,
    /// The smallest change that could be told from noise, as a share: the minimal detectable change at 95 %.
    pub detectable: f64,
    /// What it is.
    pub told: Told,
    /// How many days of the calendar lie between the two.
    pub days: i64,
}

impl Change {
    /// Whether it is more than noise.
    #[must_use]
    pub fn is_real(&self) -> bool {
        self.told != Told::Noise
    }

    /// The days between the two in words.
    #[must_use]
    pub fn span_said(&self) -> String {
        let days = usize::try_from(self.days).unwrap_or(0);
        many(days, "{n} day", "{n} days")
    }
}

/// No gain at all for weeks.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Plateau {
    /// Since when.
    pub since: DateTime<FixedOffset>,
    /// How many sessions fed the estimate since.
    pub sessions: usize,
    /// Typical error of those sessions as a share: how far they lie apart where nothing changed.
    pub typical_error: f64,
}

/// The minimal detectable change at 95 %: 1.96 × √2 = 2.772 × the typical error, in the same unit.
///
/// Hopkins 2000, Sports Med 30(1):1–15. Of a test with a typical error of 4.2 % it is 11.64 %.
#[must_use]
pub fn mdc95(typical_error: f64) -> f64 {
    1.96 * std::f64::consts::SQRT_2 * typical_error
}

/// The typical error of values measured again and again while nothing changed: their standard deviation (n − 1).
///
/// Hopkins 2000, Sports Med 30(1):1–15. None of fewer than two values.
#[must_use]
pub fn typical_error(values: &[f64]) -> Option<f64> {
    if values.len() < 2 {
        return None;
    }
    let count = values.len() as f64;
    let mean = values.iter().sum::<f64>() / count;
    let squares: f64 = values.iter().map(|value| (value - mean).powi(2)).sum();
    Some((squares / (count - 1.0)).sqrt())
}

/// The change from what was known at `since` to what is known now; none where either is not known.
///
/// The typical error of the comparison is the root of the mean variance of the two estimates, without the doubt about
/// the lifter's own curve, which is the same in both. They share readings, so that this is on the careful side.
#[must_use]
pub fn change_since<'a>(
    history: impl IntoIterator<Item = &'a Performance>,
    curve: Curve,
    since: DateTime<FixedOffset>,
) -> Option<Change> {
    let track = track(history, curve);
    let then = track.iter().rfind(|strength| strength.at() <= since)?;
    let now = track.last().filter(|now| now.at() > since)?;
    Some(change_between(then, now))
}

/// The change from one to the other, told apart from noise as [`change_since`] does.
#[must_use]
pub fn change_between(then: &Strength, now: &Strength) -> Change {
    let variance = f64::midpoint(then.state().variance, now.state().variance);
    let log = now.level() - then.level();
    let detectable = mdc95(variance.sqrt());
    Change {
        by: log.exp_m1(),
        detectable: detectable.exp_m1(),
        told: if log.abs() <= detectable {
            Told::Noise
        } else if log > 0.0 {
            Told::Up
        } else {
            Told::Down
        },
        days: (now.at().date_naive() - then.at().date_naive()).num_days(),
    }
}

/// No gain over the newest sessions: at least [`PLATEAU_SESSIONS`] that feed the estimate, over at least
/// [`PLATEAU_DAYS`]; none otherwise.
///
/// Says that nothing is to be seen, not that there is nothing: how often it is wrong stands in `docs/simulation.md`.
#[must_use]
pub fn plateau<'a>(
    history: impl IntoIterator<Item = &'a Performance> + Clone,
    curve: Curve,
) -> Option<Plateau> {
    let track = track(history.clone(), curve);
    let now = track.last()?;
    let begin = now.at() - TimeDelta::days(PLATEAU_DAYS);
    let within = track.iter().filter(|strength| strength.at() > begin);
    let sessions = within.count().max(PLATEAU_SESSIONS);
    let then = track.get(track.len().checked_sub(sessions + 1)?)?;
    let change = change_between(then, now);
    // All that is younger than those days was counted: `then` is older.
    if change.by >= PLATEAU_GAIN {
        return None;
    }
    let readings: Vec<f64> = steps(history, curve)
        .map(|(_, reading, _)| reading.value)
        .collect();
    let newest = &readings[readings.len() - sessions..];
    Some(Plateau {
        since: then.at(),
        sessions,
        typical_error: typical_error(newest)?.exp_m1(),
    })
}

#[cfg(test)]
#[path = "change_tests.rs"]
mod tests;
