//! The normal distribution: its density, and how much of it lies below a value.

use std::f64::consts::{PI, SQRT_2};

/// Standard deviations on either side of the mean that hold 80 %.
pub(super) const SPAN_80: f64 = 1.281_551_565_545;

/// Density at `z`.
pub(super) fn density(z: f64) -> f64 {
    (-0.5 * z * z).exp() / (2.0 * PI).sqrt()
}

/// Share of the distribution below `z`; to about 1e-7 of itself in either tail.
///
/// Chebyshev fit of the complementary error function: Press et al., Numerical Recipes, section 6.2, coefficients from
/// memory; checked against tabled values in the test.
pub(super) fn below(z: f64) -> f64 {
    const FIT: [f64; 10] = [
        -1.265_512_23,
        1.000_023_68,
        0.374_091_96,
        0.096_784_18,
        -0.186_288_06,
        0.278_868_07,
        -1.135_203_98,
        1.488_515_87,
        -0.822_152_23,
        0.170_872_77,
    ];
    let x = z.abs() / SQRT_2;
    let t = 1.0 / (1.0 + 0.5 * x);
    let fit = FIT.iter().rev().fold(0.0, |sum, c| sum * t + c);
    let tail = 0.5 * t * (fit - x * x).exp();
    if z > 0.0 { 1.0 - tail } else { tail }
}

/// How far the mean of what lies above `z` is from the mean of all, in standard deviations.
pub(super) fn mean_above(z: f64) -> f64 {
    // So far out the tail itself can no longer be divided by; its mean lies just beyond its edge.
    if z > 25.0 {
        z + 1.0 / z
    } else {
        density(z) / below(-z)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Values of the standard normal table, to ten digits as general statistics libraries give them.
    #[test]
    fn the_table_is_met() {
        for (z, share) in [
            (0.0, 0.5),
            (1.0, 0.841_344_746_1),
            (1.281_551_565_545, 0.9),
            (-1.959_963_984_5, 0.025),
            (-4.0, 3.167_124_183e-5),
        ] {
            let off = (below(z) - share).abs() / share;
            assert!(off < 3e-7, "{z}: {off}");
        }
    }

    #[test]
    fn what_lies_above_lies_above() {
        for z in [-9.0, -1.0, 0.0, 1.0, 9.0, 24.9, 25.1, 100.0] {
            assert!(mean_above(z) > z, "{z}");
        }
        // The mean of the upper half: sqrt(2/pi).
        assert!((mean_above(0.0) - 0.797_884_560_8).abs() < 1e-6);
    }
}
