//! Strength in one exercise as far as its history tells: the estimate with its doubt, and what follows from it.

use super::curves::{Curve, OffTheCurve};
use super::feed::{Reading, Says, day_noise, lean, log_kg, session};
use super::filter::{DRIFT_SD, State};
use super::history::Performance;
use super::normal::{SPAN_80, below};
use crate::units::{Load, Reps, Unit};
use chrono::{DateTime, FixedOffset, TimeDelta};
use rust_decimal::Decimal;

/// What is known of the one-repetition maximum of one exercise at a time.
///
/// Loads here are system loads: what is moved in all, see [`super::system_load`]. Between two of these the level
/// drifts: ask [`Strength::on`] the day for which an answer is wanted.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Strength {
    at: DateTime<FixedOffset>,
    state: State,
    curve: Curve,
    sessions: usize,
    /// True while every session that fed it stopped as planned.
    bound: bool,
    /// The level that a lower bound of this day may leap from: what stood before the day's first session.
    stood: f64,
}

/// An estimated load with the interval that holds it in 80 of 100 cases. No load for a bar: to a hundredth of a
/// kilogram.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Estimate {
    /// Lower end of the interval.
    pub low: Load,
    /// The estimate.
    pub middle: Load,
    /// Upper end of the interval.
    pub high: Load,
}

/// Reps to failure that are to be expected with a load in one fresh set.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct RepsAhead {
    /// Fewer come out in at most 10 of 100 cases.
    pub low: Reps,
    /// As likely reached as not.
    pub middle: Reps,
    /// More come out in fewer than 10 of 100 cases; none where that is beyond what the curve holds for.
    pub high: Option<Reps>,
}

/// Whether a set is within what the last sessions support.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Support {
    /// As likely done as not, or likelier.
    Supported,
    /// Less likely than not.
    Doubtful,
    /// Less than 10 in 100.
    Beyond,
}

/// What is known after each session that feeds the estimate, in the order of `history`, newest last.
///
/// `history` holds performances of one exercise by which the same is moved ([`super::moved_alike`]). Those of another tempo
/// count alike: where that matters, hand in those of one shape only.
#[must_use]
pub fn track<'a>(
    history: impl IntoIterator<Item = &'a Performance>,
    curve: Curve,
) -> Vec<Strength> {
    let steps = steps(history, curve);
    steps.map(|(_, _, after)| after).collect()
}

/// Each session that feeds the estimate: the place of its last performance in the history, what it said, and what was known
/// after it.
pub(super) fn steps<'a>(
    history: impl IntoIterator<Item = &'a Performance>,
    curve: Curve,
) -> impl Iterator<Item = (usize, Reading, Strength)> {
    let mut known = None;
    let mut history = history.into_iter().enumerate().peekable();
    let sessions = std::iter::from_fn(move || {
        let (mut index, first) = history.next()?;
        let mut says = session(first, curve);
        while let Some((at, more)) = history.next_if(|(_, next)| next.is_of_one_session(first)) {
            index = at;
            says = Reading::of_both(says, session(more, curve));
        }
        Some((index, says))
    });
    sessions.filter_map(move |(index, says)| {
        let reading = says?;
        let far_above = |known: &Strength| known.on(reading.at).state.is_far_above(&reading);
        // A light burn-out says nothing of a known maximum: it is no session of it, and does not make what is old fresh.
        if reading.beyond && known.as_ref().is_some_and(far_above) {
            return None;
        }
        let after = Strength::after(known.as_ref(), &reading, curve)?;
        known = Some(after);
        Some((index, reading, after))
    })
}

/// How many times as much as a lower bound said a session above it may say (common practice, no source).
const LEAP_MAX: f64 = 2.0;

impl Strength {
    /// After one reading more than `before`. None where it is the first one and says too little to begin with.
    ///
    /// A lower bound takes nothing off a reading above it: that is as good as the first of all. Where the bound is near, what
    /// both say together may be more. More than a doubling waits for another day's session that says so again: a load typed with
    /// a figure too many would stay for good, as later sessions that stop as planned take nothing off. Sessions of one day are
    /// no second word: who begins anew after a slip has the wrong load before them again.
    fn after(before: Option<&Strength>, reading: &Reading, curve: Curve) -> Option<Strength> {
        let bound = reading.says == Says::AtLeast;
        let Some(before) = before else {
            let state = State::first(reading)?;
            return Some(Strength {
                at: reading.at,
                state,
                curve,
                sessions: 1,
                bound,
                stood: state.level,
            });
        };
        let then = before.on(reading.at);
        let again = before.at.date_naive() == reading.at.date_naive();
        let stood = if again { before.stood } else { then.level() };
        let both = then.state.with(reading);
        let anew = State::first(reading).filter(|anew| before.bound && anew.level > both.level);
        let mut state = anew.unwrap_or(both);
        if before.bound {
            state.level = state.level.min(then.level().max(stood + LEAP_MAX.ln()));
        }
        Some(Strength {
            state,
            sessions: before.sessions + 1,
            bound: before.bound && bound,
            stood,
            ..then
        })
    }

    /// What is known after the newest of `history`; none where nothing in it feeds the estimate. See [`track`].
    #[must_use]
    pub fn of<'a>(
        history: impl IntoIterator<Item = &'a Performance>,
        curve: Curve,
    ) -> Option<Strength> {
        let (_, _, known) = steps(history, curve).last()?;
        Some(known)
    }

    /// The same on a later day, with the doubt that the days between add. An earlier day changes nothing.
    #[must_use]
    pub fn on(&self, day: DateTime<FixedOffset>) -> Strength {
        let days = days(day - self.at);
        Strength {
            at: self.at.max(day),
            state: self.state.later(days, DRIFT_SD.powi(2)),
            ..*self
        }
    }

    /// When: the newest session that fed it, or the day that was asked for.
    #[must_use]
    pub fn at(&self) -> DateTime<FixedOffset> {
        self.at
    }

    /// The curve that it is built on.
    #[must_use]
    pub fn curve(&self) -> Curve {
        self.curve
    }

    /// How many sessions fed it, at least one.
    #[must_use]
    pub fn sessions(&self) -> usize {
        self.sessions
    }

    /// True where all that is known is a lower bound: every session stopped as planned, and none told how near the end was.
    #[must_use]
    pub fn is_bound(&self) -> bool {
        self.bound
    }

    /// The natural logarithm of the maximum in kilograms.
    #[must_use]
    pub fn level(&self) -> f64 {
        self.state.level
    }

    /// Variance of [`Strength::level`], the doubt about the lifter's own curve included.
    #[must_use]
    pub fn variance(&self) -> f64 {
        self.state.variance_at(0.0)
    }

    pub(super) fn state(&self) -> &State {
        &self.state
    }

    /// The one-repetition maximum with its 80 % interval: of the lifter on an average day, not of one day.
    #[must_use]
    pub fn e1rm(&self) -> Estimate {
        let span = SPAN_80 * self.variance().sqrt();
        let at = |log: f64| kilograms(log.exp());
        Estimate {
            low: at(self.level() - span),
            middle: at(self.level()),
            high: at(self.level() + span),
        }
    }

    /// Reps to failure to be expected with `load` in one fresh set, with their 80 % interval.
    ///
    /// Reps are whole, so that the interval holds 80 of 100 cases or more.
    ///
    /// # Errors
    /// [`OffTheCurve`] where the load is so light that the curve does not hold for what is to be expected.
    pub fn reps_at(&self, load: Load) -> Result<RepsAhead, OffTheCurve> {
        let most = self.curve.reps_max();
        let reached = |share: f64| {
            let counts = (1..=most).map(reps);
            let within = counts.take_while(|&n| self.probability_at_least(load, n) >= share);
            within.last().unwrap_or(Reps::MIN)
        };
        let beyond = reps(most + 1);
        let past = |share: f64| self.probability_at_least(load, beyond) >= share;
        if past(0.5) {
            return Err(OffTheCurve {
                curve: self.curve,
                reps: beyond,
            });
        }
        Ok(RepsAhead {
            low: reached(0.9),
            middle: reached(0.5),
            high: (!past(0.1)).then(|| reached(0.1)),
        })
    }

    /// How likely it is that one fresh set with `load` to failure gives at least `reps`, 0 to 1.
    ///
    /// Beyond the range of the curve it is carried on by its formula, which says too much rather than too little there.
    #[must_use]
    pub fn probability_at_least(&self, load: Load, reps: Reps) -> f64 {
        if reps.get() == 0 || load.is_zero() {
            return 1.0;
        }
        // Who can do more can do fewer, and what is nearest to what was trained is known best.
        let from = reps.get().min(LAST_COUNTED);
        let counts = from..=from.max(self.curve.reps_max());
        counts
            .map(|n| self.alone_at_least(load, n))
            .fold(0.0, f64::max)
    }

    /// The same judged from that number of reps alone.
    fn alone_at_least(&self, load: Load, reps: u16) -> f64 {
        // Curves are fitted to whole reps: from half a rep below on it is that many.
        let count = f64::from(reps);
        let edge = if reps == 1 { 1.0 } else { count - 0.5 };
        let variance = self.state.variance_at(lean(self.curve, edge));
        let spread = (variance + day_noise(self.curve, count)).sqrt();
        let needed = log_kg(load) + self.curve.factor_at(edge).ln();
        below((self.level() - needed) / spread)
    }

    /// How likely it is that one fresh set with `load` to failure gives `low` to `high` reps, 0 to 1.
    #[must_use]
    pub fn probability_in_range(&self, load: Load, low: Reps, high: Reps) -> f64 {
        let above = Reps::saturating(i64::from(high.get()) + 1);
        let inside = self.probability_at_least(load, low) - self.probability_at_least(load, above);
        inside.max(0.0)
    }

    /// Whether `reps` with `load` are within what the history supports.
    #[must_use]
    pub fn supported(&self, load: Load, reps: Reps) -> Support {
        let probability = self.probability_at_least(load, reps);
        if probability >= 0.5 {
            Support::Supported
        } else if probability >= 0.1 {
            Support::Doubtful
        } else {
            Support::Beyond
        }
    }
}

/// Beyond this the formulas run towards their poles; whoever asks for more reps gets the answer for these.
const LAST_COUNTED: u16 = 30;

fn reps(n: u16) -> Reps {
    Reps::saturating(i64::from(n))
}

/// Days of a time span, also in parts.
pub(super) fn days(span: TimeDelta) -> f64 {
    span.num_seconds() as f64 / 86_400.0
}

/// The estimate of so many kilograms, to a hundredth, at most 2,000.
pub(super) fn kilograms(kg: f64) -> Load {
    let hundredths = (kg * 100.0).round().clamp(0.0, 200_000.0);
    Load::new(Decimal::new(hundredths as i64, 2), Unit::Kg).unwrap_or(Load::ZERO)
}

#[cfg(test)]
#[path = "level_tests.rs"]
pub(super) mod tests;
