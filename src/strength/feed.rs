//! What a session says about strength: its best set near failure as one reading with its noise.

use super::curves::Curve;
use super::history::{Performance, SetResult};
use super::system::system_load;
use super::unfed::Unfed;
use crate::units::{Load, Reps, Rir};
use chrono::{DateTime, FixedOffset};
use rust_decimal::prelude::ToPrimitive;

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
        Some(Reading {
            says: if far(&one) && far(&other) {
                Says::AtLeast
            } else {
                Says::About
            },
            ..best
        })
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
pub fn unfed(performance: &Performance, set: &SetResult, curve: Curve) -> Option<Unfed> {
    reading(performance, set, curve).err()
}

/// What a set says, with the logarithm of the maximum by the curve.
type Valued = (Tells, f64);

/// What a session says: its best set, near failure where any of its sets is known to be; none where no set feeds.
///
/// Where one set came near failure, those before it were not far from it, so the best of all counts. Where none is known
/// to, all stopped as planned and strength is at least the best of them. Where no set gave a rep, it is at most the
/// lightest of them. Common practice, no source; tried in `docs/simulation.md`.
pub(super) fn session(performance: &Performance, curve: Curve) -> Option<Reading> {
    let told = performance.sets.iter().filter_map(|set| {
        let told = tells(performance, set).ok()?;
        let value = value_by(&told, curve)?;
        Some((told, value))
    });
    let told: Vec<Valued> = told.collect();
    let by_value = |a: &&Valued, b: &&Valued| a.1.total_cmp(&b.1);
    let done = told.iter().filter(|(set, _)| !set.missed());
    let Some((best, _)) = done.max_by(by_value) else {
        let (least, _) = told.iter().min_by(by_value)?;
        return by_curve(least, curve);
    };
    // A missed set came to failure too.
    let near = told.iter().any(|(set, _)| set.says != Says::AtLeast);
    // Its noise is worked out for the best one alone: a session is looked at before each set.
    Some(Reading {
        says: if near { Says::About } else { Says::AtLeast },
        ..by_curve(best, curve)?
    })
}

fn reading(performance: &Performance, set: &SetResult, curve: Curve) -> Result<Reading, Unfed> {
    let told = tells(performance, set)?;
    // As it was told, also where less of the reserve is counted: the lifter knows these numbers.
    let reserve = set.reserve.map_or(0, Rir::get);
    let reps = Reps::saturating(i64::from(set.reps.get()) + i64::from(reserve));
    by_curve(&told, curve).ok_or(Unfed::OffTheCurve { reps })
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
}

/// The logarithm of the maximum by a curve; none where it does not hold for so many reps.
pub(super) fn value_by(set: &Tells, curve: Curve) -> Option<f64> {
    let holds = curve.holds_for(set.reps);
    holds.then(|| set.log + curve.factor_at(set.count).ln())
}

/// A reading by a curve; none where it does not hold for so many reps.
pub(super) fn by_curve(set: &Tells, curve: Curve) -> Option<Reading> {
    let value = value_by(set, curve)?;
    let guessed = if set.tried { 0.0 } else { RESERVE_SD };
    Some(Reading {
        at: set.at,
        value,
        lean: lean(curve, set.count),
        noise: day_noise(curve, NOISE_REPS) + (guessed * log_per_rep(curve, NOISE_REPS)).powi(2),
        says: set.says,
    })
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
    // Without a word, who stops short of what was asked for is taken to have no more: on the low side.
    let says = match told {
        _ if missed => Says::AtMost,
        Some(_) if !far => Says::About,
        None if set.to_limit || set.reps < set.top => Says::About,
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
        let reps = Reps::new(30).unwrap();
        assert_eq!(
            why(|p| p.sets[0].reps = reps),
            Some(Unfed::OffTheCurve { reps })
        );
        // Ten done and four left are fourteen, though only three of the four are counted.
        let told = |p: &mut Performance| {
            p.sets[0].reps = Reps::saturating(10);
            p.sets[0].reserve = Some(Rir::saturating(4));
        };
        let reps = Reps::saturating(14);
        assert_eq!(why(told), Some(Unfed::OffTheCurve { reps }));
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
        let says = |reps, reserve: Option<i64>, to_limit| {
            let mut performance = one(reps);
            performance.sets[0].reserve = reserve.map(|r| Rir::new(r).unwrap());
            performance.sets[0].to_limit = to_limit;
            session(&performance, Curve::Epley).unwrap().says
        };
        assert_eq!(says(7, None, false), Says::AtLeast);
        assert_eq!(says(7, None, true), Says::About);
        assert_eq!(says(7, Some(3), false), Says::About);
        assert_eq!(says(7, Some(4), false), Says::AtLeast);
        assert_eq!(says(6, None, false), Says::About);
    }

    #[test]
    fn only_a_session_of_misses_is_an_upper_bound() {
        let of = |sets: &[(&str, u16)]| session(&performed(sets, (5, 7)), Curve::Epley).unwrap();
        let missed = of(&[("120 kg", 0), ("110 kg", 0)]);
        assert_eq!(missed.says, Says::AtMost);
        assert!((missed.value - 110_f64.ln()).abs() < 1e-12);
        let mut told = performed(&[("110 kg", 0)], (5, 7));
        told.sets[0].reserve = Some(Rir::MAX);
        assert_eq!(session(&told, Curve::Epley), Some(missed));
        let tried = of(&[("120 kg", 0), ("110 kg", 1)]);
        assert_eq!(tried.says, Says::About);
        // A miss came to failure: what was done before it was near.
        assert_eq!(of(&[("100 kg", 7), ("120 kg", 0)]).says, Says::About);
    }

    #[test]
    fn one_set_near_failure_makes_the_best_count() {
        let both = performed(&[("100 kg", 7), ("100 kg", 6)], (5, 7));
        let reading = session(&both, Curve::Epley).unwrap();
        assert_eq!(reading.says, Says::About);
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

    #[test]
    fn only_a_set_to_the_limit_without_a_word_was_tried_for_certain() {
        let noise = |reps, told: Option<i64>, to_limit| {
            let mut performance = one(reps);
            performance.sets[0].reserve = told.map(Rir::saturating);
            performance.sets[0].to_limit = to_limit;
            session(&performance, Curve::Epley).unwrap().noise
        };
        let tried = noise(5, None, true);
        // Told, or left off short of what was asked: a guess.
        for guessed in [
            noise(5, Some(0), true),
            noise(5, Some(0), false),
            noise(5, None, false),
        ] {
            assert!(guessed > tried);
        }
    }

    #[test]
    fn more_left_than_can_be_told_counts_as_half_a_rep_more() {
        let value = |told| {
            let mut performance = one(5);
            performance.sets[0].reserve = Some(Rir::saturating(told));
            session(&performance, Curve::Epley).unwrap().value
        };
        // 100 kg, 5 reps and 3 left; 4 left and more are felt as three and a half (Epley, worked by hand).
        assert!((value(3) - (100.0 * (1.0 + 8.0 / 30.0_f64)).ln()).abs() < 1e-12);
        for told in [4, 6] {
            assert!((value(told) - (100.0 * (1.0 + 8.5 / 30.0_f64)).ln()).abs() < 1e-12);
        }
    }

    #[test]
    fn a_rep_at_the_maximum_is_worth_what_half_a_rep_above_it_says() {
        // Straight from one rep to two, 1/15 by Epley; half of that over half a rep (worked by hand).
        let per_rep = (1.0 + 1.0 / 30.0_f64).ln() / 0.5;
        assert!((log_per_rep(Curve::Epley, 1.0) - per_rep).abs() < 1e-12);
    }
}
