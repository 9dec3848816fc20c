//! The estimated one-repetition maximum as one number, for the rules.

use super::curves::Curve;
use super::history::Performance;
use super::level::Strength;
use crate::units::Load;

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
        assert_eq!(
            best_e1rm(&[reserved("60 kg", 30, None)], Curve::Epley),
            None
        );
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
