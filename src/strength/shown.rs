//! What one session alone shows of the maximum: for bests, which are told apart from noise.

use super::change::mdc95;
use super::curves::Curve;
use super::feed::{Reading, Says, Tells, by_curve, by_value, session, tells};
use super::history::Performance;
use super::level::kilograms;
use crate::units::Load;
use rust_decimal::prelude::ToPrimitive;
use serde::{Deserialize, Serialize};

/// What one session alone shows of the maximum.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Shown {
    /// The maximum by the curve, from the best set that feeds the estimate; of the whole system where the body is moved.
    pub e1rm: Load,
    /// Its typical error in hundredths of a percent: 420 is 4.2 %.
    pub error: u16,
}

/// What a session shows of the maximum by `curve`; none where no set that feeds the estimate gave a rep.
#[must_use]
pub fn shown(performance: &Performance, curve: Curve) -> Option<Shown> {
    let reading = session(performance, curve).filter(|reading| reading.says != Says::AtMost)?;
    Some(of_reading(&reading))
}

/// The same by every curve: the sets are weighed once.
#[must_use]
pub fn shown_by_all(performance: &Performance) -> Vec<(Curve, Shown)> {
    let sets = performance.sets.iter();
    let told = sets.filter_map(|set| tells(performance, set).ok());
    let told: Vec<Tells> = told.filter(|set| !set.missed()).collect();
    let of = |curve| {
        let best = told.iter().max_by(|a, b| by_value(a, b, curve))?;
        Some((curve, of_reading(&by_curve(best, curve))))
    };
    Curve::ALL.into_iter().filter_map(of).collect()
}

fn of_reading(reading: &Reading) -> Shown {
    let hundredths = (reading.noise.sqrt() * 10_000.0).round();
    Shown {
        e1rm: kilograms(reading.value.exp()),
        error: hundredths.clamp(0.0, f64::from(u16::MAX)) as u16,
    }
}

impl Shown {
    /// By how much this is above `before`, and from how much on that is more than noise, both as shares (0.05 is 5 %):
    /// the minimal detectable change at 95 % of the typical error of both ([`mdc95`]).
    #[must_use]
    pub fn above(&self, before: &Shown) -> (f64, f64) {
        let kg = |shown: &Shown| shown.e1rm.kg().to_f64().unwrap_or(0.0).max(0.01);
        let error = |shown: &Shown| f64::from(shown.error) / 10_000.0;
        let typical = f64::midpoint(error(self).powi(2), error(before).powi(2)).sqrt();
        (kg(self) / kg(before) - 1.0, mdc95(typical).exp_m1())
    }
}
