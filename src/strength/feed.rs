//! What a session says about strength: its best set near failure as one reading with its noise.

use super::curves::Curve;
use super::estimate::ESTIMATE_RESERVE_MAX;
use super::history::{Performance, SetResult};
use super::system::system_load;
use super::unfed::Unfed;
use crate::units::{Load, Reps, Rir};
use chrono::{DateTime, FixedOffset};
use rust_decimal::prelude::ToPrimitive;

/// From day to day a tested maximum differs by so much, as a coefficient of variation: median of 32 studies, which
/// range from 0.5 to 12.1 % (Grgic et al. 2020, Sports Med Open 6:31).
pub const DAY_CV: f64 = 0.042;

/// Error of a reserve that is told or taken to be none, in reps: about one at 0–5 left (Hackett et al. 2017, J Strength
/// Cond Res 31(8):2162–2168).
pub const RESERVE_SD: f64 = 1.0;

/// A first session that only says "at least" is taken at its word, with this error more (a guess).
pub(super) const FIRST_BOUND_SD: f64 = 0.10;

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
    /// True when it is only known that strength is no less.
    pub at_least: bool,
}

/// Why a set of a session does not feed the estimate; none when it does.
#[must_use]
pub fn unfed(performance: &Performance, set: &SetResult, curve: Curve) -> Option<Unfed> {
    reading(performance, set, curve).err()
}

/// What a session says: its best set, near failure where any of its sets is known to be; none where no set feeds.
///
/// Where one set came near failure, those before it were not far from it, so the best of all counts. Where none is known
/// to, all stopped as planned and strength is at least the best of them. Common practice, no source; tried in
/// `docs/simulation.md`.
pub(super) fn session(performance: &Performance, curve: Curve) -> Option<Reading> {
    let readings: Vec<Reading> = performance
        .sets
        .iter()
        .filter_map(|set| reading(performance, set, curve).ok())
        .collect();
    let best = readings
        .iter()
        .copied()
        .reduce(|best, next| if next.value > best.value { next } else { best })?;
    Some(Reading {
        at_least: readings.iter().all(|reading| reading.at_least),
        ..best
    })
}

fn reading(performance: &Performance, set: &SetResult, curve: Curve) -> Result<Reading, Unfed> {
    if let Some(unfed) = set.unfed {
        return Err(unfed);
    }
    if !set.work {
        return Err(Unfed::NotPlain);
    }
    let basis = performance.basis.as_ref().ok_or(Unfed::BasisUnknown)?;
    let load = system_load(basis, set.load, performance.body_mass)?;
    if set.reps.get() == 0 {
        return Err(Unfed::Missed);
    }
    // More than that is not told well enough to be counted: strength is at least what that much would give.
    let far = set.reserve.filter(|told| told.get() > ESTIMATE_RESERVE_MAX);
    let reserve = set.reserve.map_or(0, Rir::get).min(ESTIMATE_RESERVE_MAX);
    let reps = Reps::saturating(i64::from(set.reps.get()) + i64::from(reserve));
    if curve.factor(reps).is_err() {
        return Err(Unfed::OffTheCurve { reps });
    }
    let told = set.reserve.is_some();
    // Without a word, who stops short of what was asked for could do hardly more.
    let short = set.reps < set.top;
    let known = (told && far.is_none()) || (!told && (set.to_limit || short));
    let tried = set.to_limit && !told;
    let guessed = if tried { 0.0 } else { RESERVE_SD };
    let more = match far {
        // Told as four: felt as three and a half or more.
        Some(_) => 0.5,
        None if !told && !set.to_limit && short => UNTOLD_LEFT,
        None => 0.0,
    };
    let count = f64::from(reps.get()) + more;
    let counting = counting_sd(curve, count);
    Ok(Reading {
        at: performance.at,
        value: log_kg(load) + curve.factor_at(count).ln(),
        lean: lean(curve, count),
        noise: DAY_CV.powi(2)
            + (counting.powi(2) + guessed.powi(2)) * log_per_rep(curve, count).powi(2),
        at_least: !known,
    })
}

/// Reps that who stops short of what was asked for, without a word, has left: none or one (a guess).
const UNTOLD_LEFT: f64 = 0.5;

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
    (curve.factor_at(reps.max(1.0) + 0.5) / curve.factor_at((reps - 0.5).max(1.0))).ln()
        / (reps.max(1.0) + 0.5 - (reps - 0.5).max(1.0))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sheet::LoadBasis;
    use crate::strength::propose::tests::performed;

    fn one(reps: u16) -> Performance {
        performed(&[("100 kg", reps)], (5, 7))
    }

    fn why(change: impl FnOnce(&mut Performance)) -> Option<Unfed> {
        let mut performance = one(5);
        change(&mut performance);
        unfed(&performance, &performance.sets[0], Curve::Epley)
    }

    #[test]
    fn a_set_that_says_nothing_says_why() {
        assert_eq!(why(|_| ()), None);
        assert_eq!(
            why(|p| p.sets[0].unfed = Some(Unfed::Staged)),
            Some(Unfed::Staged)
        );
        assert_eq!(why(|p| p.sets[0].work = false), Some(Unfed::NotPlain));
        assert_eq!(why(|p| p.basis = None), Some(Unfed::BasisUnknown));
        assert_eq!(why(|p| p.sets[0].load = None), Some(Unfed::NoLoad));
        assert_eq!(why(|p| p.sets[0].reps = Reps::MIN), Some(Unfed::Missed));
        let reps = Reps::new(30).unwrap();
        assert_eq!(
            why(|p| p.sets[0].reps = reps),
            Some(Unfed::OffTheCurve { reps })
        );
        assert_eq!(
            why(|p| p.basis = Some(LoadBasis::BodyMassPlus)),
            Some(Unfed::BodyMassUnknown)
        );
    }

    #[test]
    fn on_the_body_the_whole_system_counts() {
        let mut added = one(1);
        added.sets[0].to_limit = true;
        added.basis = Some(LoadBasis::BodyMassPlus);
        added.body_mass = Some(Load::whole_kg(80));
        let reading = session(&added, Curve::Epley).unwrap();
        assert!((reading.value - 180_f64.ln()).abs() < 1e-12);
    }

    #[test]
    fn a_set_that_stopped_as_planned_is_a_bound() {
        let at_least = |reps, reserve: Option<i64>, to_limit| {
            let mut performance = one(reps);
            performance.sets[0].reserve = reserve.map(|r| Rir::new(r).unwrap());
            performance.sets[0].to_limit = to_limit;
            session(&performance, Curve::Epley).unwrap().at_least
        };
        assert!(at_least(7, None, false));
        assert!(!at_least(7, None, true));
        assert!(!at_least(7, Some(3), false));
        assert!(at_least(7, Some(4), false));
        assert!(!at_least(6, None, false));
    }

    #[test]
    fn one_set_near_failure_makes_the_best_count() {
        let both = performed(&[("100 kg", 7), ("100 kg", 6)], (5, 7));
        let reading = session(&both, Curve::Epley).unwrap();
        assert!(!reading.at_least);
        assert!((reading.value - (100.0 * (1.0 + 7.0 / 30.0_f64)).ln()).abs() < 1e-12);
    }

    #[test]
    fn what_is_told_is_less_sure_than_what_was_tried() {
        let mut told = one(5);
        told.sets[0].reserve = Some(Rir::MIN);
        let mut tried = one(5);
        tried.sets[0].to_limit = true;
        let noise = |performance: &Performance| session(performance, Curve::Epley).unwrap().noise;
        assert!(noise(&told) > noise(&tried));
        assert!(noise(&tried) > DAY_CV.powi(2));
    }
}
