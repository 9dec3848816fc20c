//! The estimated one-repetition maximum as one number, for the rules.

use super::curves::Curve;
use super::history::Performance;
use super::level::Strength;
use crate::units::{Load, Unit};

/// The best that is known of the maximum after `history`, newest last; none where nothing in it feeds the estimate.
///
/// It is the middle of [`Strength::e1rm`] by that curve. Where the body is moved, it is that of the whole system:
/// see [`super::system_load`].
#[must_use]
pub fn best_e1rm<'a>(
    history: impl IntoIterator<Item = &'a Performance>,
    curve: Curve,
) -> Option<Load> {
    Some(Strength::of(history, curve)?.e1rm().middle)
}

/// An estimated maximum as it is said wherever one is: with one decimal, for a second one would say more than is known, and a
/// whole unit too little of a light load (common practice, no source).
#[must_use]
pub fn maximum_said(load: Load, unit: Unit) -> String {
    to_tenth(load, unit).shown(unit)
}

/// The same as a load.
#[must_use]
pub fn to_tenth(load: Load, unit: Unit) -> Load {
    load.to_unit(unit).round(1)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::strength::propose::tests::performed;
    use crate::units::Rir;

    fn reserved(load: &str, reps: u16, reserve: Option<i64>) -> Performance {
        let mut performance = performed(&[(load, reps)], (5, 7));
        performance.sets[0].reserve = reserve.map(|r| Rir::new(r).unwrap());
        performance
    }

    #[test]
    fn one_set_gives_what_the_curve_gives() {
        let best = |reserve| best_e1rm(&[reserved("90 kg", 5, reserve)], Curve::Epley);
        assert_eq!(best(None), Some("105 kg".parse().unwrap()));
        assert_eq!(best(Some(2)), Some("111 kg".parse().unwrap()));
        // Thirty are at least as good as twelve: 60 kg × 1.4.
        let thirty = best_e1rm(&[reserved("60 kg", 30, None)], Curve::Epley);
        assert_eq!(thirty, Some("84 kg".parse().unwrap()));
    }

    #[test]
    fn a_maximum_is_said_with_one_decimal_of_the_unit_on_display() {
        let said = |kg: &str, unit| maximum_said(kg.parse().unwrap(), unit);
        // 11.5 kg are 25.353 lb.
        assert_eq!(said("11.5 kg", Unit::Lb), "25.4 lb");
        assert_eq!(said("11.54 kg", Unit::Kg), "11.5 kg");
        assert_eq!(said("105 kg", Unit::Kg), "105 kg");
    }

    /// Sets that stop at the top without a word say only that there is at least so much: nine lighter ones take nothing
    /// from what was shown before.
    #[test]
    fn light_sets_that_went_as_planned_take_nothing_off() {
        let mut history = vec![reserved("90 kg", 5, Some(0))];
        history.extend((0..9).map(|_| reserved("60 kg", 7, None)));
        assert_eq!(
            best_e1rm(&history, Curve::Epley),
            Some("105 kg".parse().unwrap())
        );
    }
}
