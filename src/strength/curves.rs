//! Curves from reps to the one-repetition maximum. Each holds in its range of reps only and gives no number outside.

use crate::units::{Load, Reps};
use rust_decimal::Decimal;
use std::fmt;

/// Most reps from which [`epley`] estimates: above about 12 the curves part and none is valid (common practice).
pub const EPLEY_REPS_MAX: u16 = 12;

/// Reps for which a curve is not valid.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct OffTheCurve {
    /// Those reps.
    pub reps: Reps,
}

impl fmt::Display for OffTheCurve {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "no valid estimate from {} reps: 1 to {EPLEY_REPS_MAX} are needed",
            self.reps
        )
    }
}

impl std::error::Error for OffTheCurve {}

/// The one-repetition maximum after Epley (1985, Boyd Epley Workout): load × (1 + reps/30), reps to failure.
///
/// One rep is the maximum itself, which the formula alone would not give.
///
/// # Errors
/// [`OffTheCurve`] outside 1 to 12 reps.
pub fn epley(load: Load, reps: Reps) -> Result<Load, OffTheCurve> {
    match reps.get() {
        1 => Ok(load),
        r @ 2..=EPLEY_REPS_MAX => {
            let thirty = Decimal::from(30);
            Ok(load.times((thirty + Decimal::from(r)) / thirty))
        }
        _ => Err(OffTheCurve { reps }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn reps(n: u16) -> Reps {
        Reps::new(i64::from(n)).unwrap()
    }

    #[test]
    fn outside_its_range_there_is_no_number() {
        let load = Load::whole_kg(100);
        assert!(epley(load, reps(0)).is_err());
        let error = epley(load, reps(13)).unwrap_err();
        assert!(error.to_string().contains("from 13 reps"), "{error}");
        assert_eq!(epley(load, reps(1)), Ok(load));
    }

    proptest! {
        #[test]
        fn more_reps_or_more_load_never_give_less(load in 1..300_u16, r in 1..12_u16) {
            let of = |load, r| epley(Load::whole_kg(load), reps(r)).unwrap();
            prop_assert!(of(load, r) < of(load, r + 1));
            prop_assert!(of(load, r) < of(load + 1, r));
        }
    }
}
