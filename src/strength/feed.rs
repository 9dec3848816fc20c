//! What a session says about strength: its best set near failure as one reading with its noise.

use super::curves::Curve;
use super::history::{Performance, SetResult};
use super::system::system_load;
use super::unfed::Unfed;
use crate::units::{Load, Reps, Rir};
use chrono::{DateTime, FixedOffset};
use rust_decimal::prelude::ToPrimitive;
use std::cmp::Ordering;

/// From day to day a tested maximum differs by so much, as a coefficient of variation: median of 32 studies, which
/// range from 0.5 to 12.1 % (Grgic et al. 2020, Sports Med Open 6:31).
pub const DAY_CV: f64 = 0.042;

/// Most reps in reserve that are counted as told; of more it is known only that there are more.
///
/// Reserve is told about a rep off at 0–5 left (Hackett et al. 2017, J Strength Cond Res 31(8):2162–2168); 3 keeps a
/// margin (common practice, no source).
pub const ESTIMATE_RESERVE_MAX: u8 = 3;

/// Error of a reserve that is told or taken to be none, in reps: about one at 0–5 left (Hackett et al. 2017, J Strength
/// Cond Res 31(8):2162–2168).
pub const RESERVE_SD: f64 = 1.0;

/// A first session that only says "at least" is taken at its word, with this error more (a guess).
pub(super) const FIRST_BOUND_SD: f64 = 0.10;

/// The noise of a reading is taken at so many reps, whatever was done: what it would be at 1 to 12 differs by a twentieth
/// only, and so more reps never count for less.
const NOISE_REPS: f64 = 5.0;

/// What a session says, on the scale of the natural logarithm of kilograms.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Reading {
    /// When.
    pub at: DateTime<FixedOffset>,
    /// Logarithm of the maximum by the curve.
    pub value: f64,
    /// How much of a lifter's own deviation from the curve is in it: 0 at the maximum, 1 far below. See
    /// [`super::filter`].
    pub lean: f64,
    /// Variance of its error.
    pub noise: f64,
    /// How it is meant.
    pub says: Says,
    /// True where its set had more reps than the curve holds for: whatever else is known, there was no less.
    pub beyond: bool,
}

impl Reading {
    /// What two blocks of one session say together, as if their sets were those of one: see [`session`].
    pub(super) fn of_both(one: Option<Reading>, other: Option<Reading>) -> Option<Reading> {
        let (Some(one), Some(other)) = (one, other) else {
            return one.or(other);
        };
        let missed = |reading: &Reading| reading.says == Says::AtMost;
        let least = if one.value <= other.value { one } else { other };
        let best = match (missed(&one), missed(&other)) {
            (true, true) => return Some(least),
            (true, false) => other,
            (false, true) => one,
            (false, false) if one.value > other.value => one,
            (false, false) => other,
        };
        let far = |reading: &Reading| reading.says == Says::AtLeast;
        let near = !(far(&one) && far(&other));
        Some(best.as_best(near))
    }

    /// As the best of a session of which a set came near failure, or none.
    fn as_best(self, near: bool) -> Reading {
        let about = near && !self.beyond;
        Reading {
            says: if about { Says::About } else { Says::AtLeast },
            ..self
        }
    }
}

/// How a reading is meant.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Says {
    /// Strength was that, give or take its noise.
    About,
    /// It was no less: the set stopped as planned.
    AtLeast,
    /// It was no more: not a single rep was done.
    AtMost,
}

/// Why a set of a session does not feed the estimate; none when it does.
#[must_use]
pub fn unfed(performance: &Performance, set: &SetResult) -> Option<Unfed> {
    tells(performance, set).err()
}

/// What a session says: its best set, near failure where any of its sets is known to be; none where no set feeds.
///
/// Where one set came near failure, those before it were not far from it, so the best of all counts. Where none is known
/// to, all stopped as planned and strength is at least the best of them. Where no set gave a rep, it is at most the
/// lightest of them. Common practice, no source; tried in `docs/simulation.md`.
pub(super) fn session(performance: &Performance, curve: Curve) -> Option<Reading> {
    let sets = performance.sets.iter();
    let told: Vec<Tells> = sets
        .filter_map(|set| tells(performance, set).ok())
        .collect();
    let done = told.iter().filter(|set| !set.missed());
    let Some(best) = done.max_by(|a, b| by_value(a, b, curve)) else {
        let least = told.iter().min_by(|a, b| by_value(a, b, curve))?;
        return Some(by_curve(least, curve));
    };
    // A missed set came to failure too.
    let near = told.iter().any(|set| set.says_by(curve) != Says::AtLeast);
    // Its noise is worked out for the best one alone: a session is looked at before each set.
    Some(by_curve(best, curve).as_best(near))
}

/// What a set says before a curve is laid to it.
pub(super) struct Tells {
    at: DateTime<FixedOffset>,
    /// Logarithm of what was moved.
    log: f64,
    /// Reps with the reserve.
    reps: Reps,
    /// The same, more than can be told counted as half a rep more.
    count: f64,
    says: Says,
    /// True where no rep was left for certain.
    tried: bool,
}

impl Tells {
    /// True for a set of which not a single rep was done.
    pub(super) fn missed(&self) -> bool {
        self.says == Says::AtMost
    }

    /// True for more reps than the curve holds for.
    fn beyond(&self, curve: Curve) -> bool {
        curve.held_up_to(self.reps) < self.reps
    }

    /// How many reps the curve is asked for. Beyond its end none holds, to failure or not: there was at least what the last
    /// reps give that it holds for (common practice, no source).
    fn count_by(&self, curve: Curve) -> f64 {
        let most = curve.held_up_to(self.reps);
        if most < self.reps {
            return f64::from(most.get());
        }
        self.count.min(f64::from(curve.reps_max()))
    }

    fn says_by(&self, curve: Curve) -> Says {
        if self.beyond(curve) {
            Says::AtLeast
        } else {
            self.says
        }
    }
}

/// The logarithm of the maximum by a curve.
fn value_by(set: &Tells, curve: Curve) -> f64 {
    set.log + curve.factor_at(set.count_by(curve)).ln()
}

/// Which of two sets says less.
pub(super) fn by_value(a: &Tells, b: &Tells, curve: Curve) -> Ordering {
    value_by(a, curve).total_cmp(&value_by(b, curve))
}

/// A reading by a curve.
pub(super) fn by_curve(set: &Tells, curve: Curve) -> Reading {
    let guessed = if set.tried { 0.0 } else { RESERVE_SD };
    Reading {
        at: set.at,
        value: value_by(set, curve),
        lean: lean(curve, set.count_by(curve)),
        noise: day_noise(curve, NOISE_REPS) + (guessed * log_per_rep(curve, NOISE_REPS)).powi(2),
        says: set.says_by(curve),
        beyond: set.beyond(curve),
    }
}

pub(super) fn tells(performance: &Performance, set: &SetResult) -> Result<Tells, Unfed> {
    if let Some(unfed) = set.unfed {
        return Err(unfed);
    }
    if !set.work {
        return Err(Unfed::NotPlain);
    }
    let basis = performance.basis.as_ref().ok_or(Unfed::BasisUnknown)?;
    let load = system_load(basis, set.load, performance.body_mass)?;
    let missed = set.reps.get() == 0;
    // A miss is judged at one rep: that much there was not, whatever was told.
    let told = set.reserve.filter(|_| !missed);
    // More than that is not told well enough to be counted: strength is at least what that much would give.
    let far = told.is_some_and(|told| told.get() > ESTIMATE_RESERVE_MAX);
    let reserve = told.map_or(0, Rir::get).min(ESTIMATE_RESERVE_MAX);
    let reps = Reps::saturating(i64::from(set.reps.get().max(1)) + i64::from(reserve));
    // Without a word, who stops short of what was asked for is taken to have no more: on the low side. Who was to leave reps
    // in reserve stops as planned anywhere in the range (common practice, no source).
    let planned = if set.to_spare { set.low } else { set.top };
    let says = match told {
        _ if missed => Says::AtMost,
        Some(_) if !far => Says::About,
        None if set.to_limit || set.reps < planned => Says::About,
        _ => Says::AtLeast,
    };
    let tried = set.to_limit && told.is_none();
    // Told as more than three is felt as three and a half or more.
    let more = if far { 0.5 } else { 0.0 };
    let count = f64::from(reps.get()) + more;
    Ok(Tells {
        at: performance.at,
        log: log_kg(load),
        reps,
        count,
        says,
        tried,
    })
}

/// The natural logarithm of a load in kilograms.
pub(super) fn log_kg(load: Load) -> f64 {
    load.kg().to_f64().unwrap_or(0.0).ln()
}

/// How much of a lifter's own deviation from the curve is in an estimate from so many reps: one less the share of the
/// maximum, since a curve stretched over more reps differs the more the further the load is from the maximum.
pub(super) fn lean(curve: Curve, reps: f64) -> f64 {
    1.0 - 1.0 / curve.factor_at(reps)
}

/// Variance of how many reps come out on a day, on the scale of the logarithm of the load.
pub(super) fn day_noise(curve: Curve, reps: f64) -> f64 {
    DAY_CV.powi(2) + (counting_sd(curve, reps) * log_per_rep(curve, reps)).powi(2)
}

/// By how much the same load gives other reps: 1.1 at 70 %, 0.7 at 90 % of the maximum (Mitter et al. 2022, PLOS ONE
/// 17(5):e0268074), straight between them and on to 0.5 at the maximum.
fn counting_sd(curve: Curve, reps: f64) -> f64 {
    let share = 1.0 / curve.factor_at(reps);
    (1.1 - 2.0 * (share - 0.7)).clamp(0.5, 1.5)
}

/// What one rep is worth, on the scale of the logarithm of the load.
fn log_per_rep(curve: Curve, reps: f64) -> f64 {
    let (low, high) = ((reps - 0.5).max(1.0), reps + 0.5);
    (curve.factor_at(high) / curve.factor_at(low)).ln() / (high - low)
}

#[cfg(test)]
#[path = "feed_tests.rs"]
mod tests;
