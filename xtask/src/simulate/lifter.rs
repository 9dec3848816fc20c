//! An invented lifter whose strength is known: how it grows, differs from day to day, and shows in reps.
//!
//! What is published is named. The rest is a guess, listed in docs/simulation.md. Nothing here is shared with the filter
//! that is tried on it: curves and noise are written out again.

use super::chance::Chance;

/// Day-to-day spread of a maximum: median of 32 studies (Grgic et al. 2020, Sports Med Open 6:31).
const DAY_CV: f64 = 0.042;

/// Spread between people of the reps that their curve gives, as a standard deviation of the logarithm: with the three
/// shapes below, 6 to 26 reps at 70 % (quoted by Nuzzo et al. 2024, Sports Med 54:303–321) is about five of it.
const OWN_CURVE_SD: f64 = 0.27;

/// Error of a told reserve, in reps (Hackett et al. 2017, J Strength Cond Res 31(8):2162–2168).
const RESERVE_SD: f64 = 1.0;

/// Beyond this nobody counts.
const REPS_MAX: f64 = 40.0;

/// The shape of a lifter's curve from load to reps.
#[derive(Clone, Copy)]
enum Shape {
    Linear,
    Hyperbolic,
    Exponential,
}

/// One lifter.
pub struct Lifter {
    chance: Chance,
    /// Logarithm of the maximum in kilograms, rested, on an average day.
    level: f64,
    shape: Shape,
    /// What the reps of the shape are stretched by.
    own: f64,
    /// Growth of the level in a week of full training, at the start.
    growth: f64,
    /// What hard sets have left behind, on the scale of the level; fades in days.
    fatigue: f64,
    /// Whether the lifter tells a reserve.
    pub tells: bool,
    /// By how many reps a told reserve is too low on average.
    modesty: f64,
}

/// What one set comes to.
pub struct Effort {
    /// Reps done.
    pub reps: u16,
    /// Reps that could still have been done.
    pub left: u16,
    /// The reserve as told, where the lifter tells one.
    pub told: Option<u8>,
}

/// One training day.
pub struct Day {
    /// Logarithm of the maximum today, before the next set.
    level: f64,
}

impl Lifter {
    /// The lifter of a seed. `modesty`: by how many reps told reserves are too low on average.
    pub fn new(seed: u64, modesty: f64) -> Lifter {
        let mut chance = Chance::new(seed);
        let level = 100_f64.ln() + chance.normal(0.25);
        let shape = match chance.one_of(3) {
            0 => Shape::Linear,
            1 => Shape::Hyperbolic,
            _ => Shape::Exponential,
        };
        Lifter {
            level,
            shape,
            own: chance.normal(OWN_CURVE_SD).exp(),
            growth: 0.006 * chance.normal(0.5).exp(),
            fatigue: 0.0,
            tells: chance.happens(0.7),
            modesty,
            chance,
        }
    }

    /// Logarithm of the maximum, rested, on an average day.
    pub fn level(&self) -> f64 {
        self.level
    }

    /// A load to begin with, in kilograms: about what three sets of six leave three reps of, known to 5 %.
    pub fn first_load(&mut self) -> f64 {
        (self.level + 0.74_f64.ln() + self.chance.normal(0.05)).exp()
    }

    /// True in a week without training: illness, work, travel.
    pub fn misses_week(&mut self) -> bool {
        self.chance.happens(0.04)
    }

    /// The next training day, so many days after the last.
    pub fn day(&mut self, days_since: f64) -> Day {
        self.fatigue *= (-days_since / 5.0).exp();
        Day {
            level: self.level - self.fatigue + self.chance.normal(DAY_CV),
        }
    }

    /// Reps to failure today, with this set's own luck.
    pub fn capacity(&mut self, day: &Day, load: f64) -> u16 {
        let share = load / day.level.exp();
        if share > 1.0 {
            return 0;
        }
        let reps = self.own * self.shape.reps(share);
        // Repeat error of reps: 1.1 at 70 %, 0.7 at 90 % (Mitter et al. 2022, PLOS ONE 17(5):e0268074).
        let luck = (1.1 - 2.0 * (share - 0.7)).clamp(0.5, 1.5);
        let reps = (reps + self.chance.normal(luck)).round();
        reps.clamp(1.0, REPS_MAX) as u16
    }

    /// One set: `wish` says from the capacity how many reps the lifter does. It tires for the sets after it.
    pub fn set(&mut self, day: &mut Day, load: f64, wish: impl FnOnce(u16) -> u16) -> Effort {
        let capacity = self.capacity(day, load);
        let reps = wish(capacity).min(capacity);
        let left = capacity - reps;
        let told = self.tells.then(|| {
            let error = self.chance.normal(RESERVE_SD) - self.modesty;
            // At failure there is nothing to guess.
            let felt = if left == 0 {
                0.0
            } else {
                f64::from(left) + error
            };
            felt.round().clamp(0.0, 10.0) as u8
        });
        day.level -= 0.005 + 0.02 * stimulus(left);
        if left == 0 {
            self.fatigue += 0.002;
        }
        Effort { reps, left, told }
    }

    /// A week ends in which training was worth so much, 0 to 1: the level grows, less from week to week, and drifts.
    pub fn week_ends(&mut self, week: u32, worth: f64) {
        let growth = self.growth * (-f64::from(week) / 40.0).exp();
        let lost = 0.003 * (1.0 - worth);
        self.level += growth * worth - lost + self.chance.normal(0.005);
    }
}

/// What a set is worth by the reps that were left, 0 to 1: three or fewer, all; six or more, nothing.
pub fn stimulus(left: u16) -> f64 {
    ((6.0 - f64::from(left)) / 3.0).clamp(0.0, 1.0)
}

impl Shape {
    /// Reps at a share of the maximum, 0 to 1.
    fn reps(self, share: f64) -> f64 {
        let reps = match self {
            Shape::Linear => 30.0 * (1.0 / share - 1.0),
            Shape::Hyperbolic => 37.0 - 36.0 * share,
            Shape::Exponential => {
                let rest = (100.0 * share - 48.8) / 53.8;
                -rest.max(1e-9).ln() / 0.075
            }
        };
        reps.clamp(0.0, REPS_MAX)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reps_at_70_percent_spread_as_published() {
        let mut reps: Vec<u16> = (0..100)
            .map(|seed| {
                let mut lifter = Lifter::new(seed, 0.0);
                let day = Day {
                    level: lifter.level,
                };
                let load = 0.7 * lifter.level.exp();
                lifter.capacity(&day, load)
            })
            .collect();
        reps.sort_unstable();
        // Of a hundred lifters the extremes, published as 6 and 26.
        assert!((4..=8).contains(&reps[0]), "{}", reps[0]);
        assert!((22..=32).contains(&reps[99]), "{}", reps[99]);
    }

    #[test]
    fn a_heavier_load_gives_fewer_reps_and_one_above_the_maximum_none() {
        let mut lifter = Lifter::new(3, 0.0);
        let day = Day {
            level: lifter.level,
        };
        let at = |share: f64| share * day.level.exp();
        assert_eq!(lifter.capacity(&day, at(1.01)), 0);
        assert!(lifter.capacity(&day, at(0.6)) > lifter.capacity(&day, at(0.95)));
    }
}
