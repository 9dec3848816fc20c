//! A linear scale from values to tenths of a unit of the drawing.

use super::VALUE_MAX;

/// From values to tenths. It never turns back: a larger value lies never on the other side of a smaller one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Scale {
    low: i64,
    high: i64,
    to: (i64, i64),
}

impl Scale {
    /// `low` lies at `to.0`, `high` at `to.1`, in tenths; where they are one, they lie in the middle.
    #[must_use]
    pub fn new(low: i64, high: i64, to: (i64, i64)) -> Scale {
        let low = low.clamp(-2 * VALUE_MAX, 2 * VALUE_MAX);
        Scale {
            low,
            high: high.clamp(low, 2 * VALUE_MAX),
            to,
        }
    }

    /// Where a value lies, in tenths; what is outside lies at the edge.
    #[must_use]
    pub fn at(&self, value: i64) -> i64 {
        let (from, to) = self.to;
        let length = self.high - self.low;
        if length == 0 {
            return i64::midpoint(from, to);
        }
        let part = value.clamp(self.low, self.high) - self.low;
        // At most 4·10¹² times some thousands: far from the end of the numbers.
        from + (part * (to - from) + length / 2 * (to - from).signum()) / length
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn ends_lie_at_the_ends() {
        let scale = Scale::new(0, 10, (0, 1_000));
        assert_eq!(
            [0, 5, 10, 11, -1].map(|value| scale.at(value)),
            [0, 500, 1_000, 1_000, 0]
        );
        let down = Scale::new(0, 4, (2_000, 0));
        assert_eq!([0, 1, 4].map(|value| down.at(value)), [2_000, 1_500, 0]);
        assert_eq!(Scale::new(7, 7, (0, 100)).at(7), 50);
    }

    proptest! {
        #[test]
        fn it_never_turns_back_nor_leaves_its_box(
            low in -VALUE_MAX..VALUE_MAX,
            length in 0..VALUE_MAX,
            a in -VALUE_MAX..VALUE_MAX,
            b in -VALUE_MAX..VALUE_MAX,
            ends in (-100_000_i64..100_000, -100_000_i64..100_000),
        ) {
            let scale = Scale::new(low, low + length, ends);
            let rising = ends.0 <= ends.1;
            let (less, more) = (a.min(b), a.max(b));
            prop_assert!((scale.at(less) <= scale.at(more)) == rising || scale.at(less) == scale.at(more));
            prop_assert!((ends.0.min(ends.1)..=ends.0.max(ends.1)).contains(&scale.at(a)));
        }
    }
}
