//! Seeded chance: the same seed gives the same lifters on every machine.

use std::f64::consts::TAU;

/// A stream of random numbers.
pub struct Chance(oorandom::Rand64);

impl Chance {
    /// The stream of a seed.
    pub fn new(seed: u64) -> Chance {
        Chance(oorandom::Rand64::new(u128::from(seed)))
    }

    /// True so often, 0 to 1.
    pub fn happens(&mut self, share: f64) -> bool {
        self.0.rand_float() < share
    }

    /// One of so many.
    pub fn one_of(&mut self, count: u64) -> u64 {
        self.0.rand_range(0..count)
    }

    /// Normal with mean 0 and this standard deviation (Box and Muller).
    pub fn normal(&mut self, sd: f64) -> f64 {
        let radius = (-2.0 * (1.0 - self.0.rand_float()).ln()).sqrt();
        sd * radius * (TAU * self.0.rand_float()).cos()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_seed_gives_its_stream_and_the_normal_its_spread() {
        let draw = || {
            let mut chance = Chance::new(7);
            (0..4000).map(|_| chance.normal(2.0)).collect::<Vec<f64>>()
        };
        let values = draw();
        assert_eq!(values, draw());
        let mean = values.iter().sum::<f64>() / 4000.0;
        let variance = values.iter().map(|v| (v - mean).powi(2)).sum::<f64>() / 3999.0;
        assert!(mean.abs() < 0.15, "{mean}");
        assert!((variance.sqrt() - 2.0).abs() < 0.1, "{variance}");
    }
}
