//! Ticks of a scale of numbers: steps of 1, 2 or 5 times a power of ten, in the unit that is shown.

use super::VALUE_MAX;
use super::figure::figure;

/// A tick: where, and what stands beside it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Tick {
    /// Its value on the scale, in parts of the unit.
    pub at: i64,
    /// What stands beside it.
    pub label: String,
}

/// The first and last tick and the step between, so that they cover `low` to `high` with at most `most` ticks and the
/// smallest step of 1, 2 or 5 times a power of ten that does. `most` below 3 is taken as 3, as zero between the two takes
/// three.
#[must_use]
pub fn covering(low: i64, high: i64, most: usize) -> (i64, i64, i64) {
    let low = low.clamp(-VALUE_MAX, VALUE_MAX);
    let high = high.clamp(low, VALUE_MAX);
    let most = i64::try_from(most.max(3)).unwrap_or(i64::MAX);
    let mut power = 1;
    loop {
        for step in [power, 2 * power, 5 * power] {
            let first = low.div_euclid(step);
            let last = -(-high).div_euclid(step);
            if last - first < most {
                return (first * step, last * step, step);
            }
        }
        power *= 10;
    }
}

/// The ticks of [`covering`], labelled as figures of so many decimals.
#[must_use]
pub fn number_ticks(low: i64, high: i64, most: usize, decimals: u8) -> Vec<Tick> {
    let (first, last, step) = covering(low, high, most);
    let count = (last - first) / step;
    (0..=count)
        .map(|n| first + n * step)
        .map(|at| Tick {
            at,
            label: figure(at, decimals),
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn labels(low: i64, high: i64, most: usize, decimals: u8) -> Vec<String> {
        let ticks = number_ticks(low, high, most, decimals);
        ticks.into_iter().map(|tick| tick.label).collect()
    }

    #[test]
    fn steps_are_those_that_people_count_by() {
        assert_eq!(
            labels(10_250, 11_875, 5, 2),
            ["100", "105", "110", "115", "120"]
        );
        assert_eq!(labels(0, 37, 5, 0), ["0", "10", "20", "30", "40"]);
        assert_eq!(labels(8_140, 8_260, 4, 2), ["81", "82", "83"]);
        assert_eq!(labels(8_140, 8_260, 5, 2)[1], "81.5");
        assert_eq!(labels(-3, 4, 3, 0), ["−5", "0", "5"]);
        assert_eq!(labels(7, 7, 5, 0), ["7"]);
    }

    proptest! {
        #[test]
        fn ticks_cover_the_range_and_are_not_too_many(
            low in -VALUE_MAX..VALUE_MAX,
            length in 0..VALUE_MAX,
            most in 0_usize..20,
        ) {
            let high = low.saturating_add(length).min(VALUE_MAX);
            let ticks = number_ticks(low, high, most, 2);
            prop_assert!(ticks.len() <= most.max(3));
            prop_assert!(ticks[0].at <= low && ticks[ticks.len() - 1].at >= high);
            let steps: Vec<i64> = ticks.windows(2).map(|two| two[1].at - two[0].at).collect();
            prop_assert!(steps.iter().all(|step| *step == steps[0] && *step > 0));
            // A smaller step of the same kind would need more of them.
            if let Some(step) = steps.first() {
                let digit = step.to_string();
                prop_assert!(["1", "2", "5"].contains(&digit.trim_end_matches('0')));
            }
        }
    }
}
