//! The estimate session by session: what each said, and what was known after it. What a picture of it is drawn from.

use super::change::{Change, change_between};
use super::curves::Curve;
use super::feed::Says;
use super::history::Performance;
use super::level::{Strength, kilograms, steps};
use crate::units::Load;

/// What a performance said, as its best set is read by the curve.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Said {
    /// The maximum was about that.
    About(Load),
    /// It was that or more: every set stopped as planned.
    AtLeast(Load),
    /// It was less than that: not a rep was done.
    Below(Load),
}

impl Said {
    /// The load that it names.
    #[must_use]
    pub fn load(self) -> Load {
        match self {
            Said::About(load) | Said::AtLeast(load) | Said::Below(load) => load,
        }
    }
}

/// A performance that feeds the estimate.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Traced {
    /// Its place in the history.
    pub index: usize,
    /// What it said.
    pub said: Said,
    /// What was known after it.
    pub after: Strength,
    /// The change since the last one that was marked (the first of all to begin with), where it is more than noise.
    ///
    /// Each is the minimal detectable change at 95 % or more from the one before: see [`super::mdc95`].
    pub change: Option<Change>,
}

/// The performances of `history`, newest last, that feed the estimate by `curve`, each with what was known after it. Goes
/// through the history once.
#[must_use]
pub fn trace<'a>(history: impl IntoIterator<Item = &'a Performance>, curve: Curve) -> Vec<Traced> {
    let mut traced: Vec<Traced> = Vec::new();
    let mut marked: Option<Strength> = None;
    for (index, reading, after) in steps(history, curve) {
        let load = kilograms(reading.value.exp());
        let change = marked.map(|then| change_between(&then, &after));
        let change = change.filter(|change| change.is_real());
        if marked.is_none() || change.is_some() {
            marked = Some(after);
        }
        traced.push(Traced {
            index,
            said: match reading.says {
                Says::About => Said::About(load),
                Says::AtLeast => Said::AtLeast(load),
                Says::AtMost => Said::Below(load),
            },
            after,
            change,
        });
    }
    traced
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::strength::level::tests::tried;
    use crate::strength::{Told, change_since};

    fn traced(sets: &[(&str, u16)]) -> (Vec<Performance>, Vec<Traced>) {
        let history = tried(sets, 4);
        let traced = trace(&history, Curve::Epley);
        (history, traced)
    }

    #[test]
    fn each_step_knows_what_the_history_up_to_it_says() {
        let (history, traced) =
            traced(&[("100 kg", 5), ("60 kg", 30), ("100 kg", 6), ("105 kg", 5)]);
        let places: Vec<usize> = traced.iter().map(|step| step.index).collect();
        assert_eq!(places, [0, 2, 3]);
        for step in &traced {
            let until = &history[..=step.index];
            assert_eq!(Strength::of(until, Curve::Epley), Some(step.after));
        }
        assert_eq!(traced[1].said, Said::About("120 kg".parse().unwrap()));
    }

    #[test]
    fn a_step_up_is_marked_and_noise_is_not() {
        let mut sets = [("100 kg", 5), ("100 kg", 6)].repeat(10);
        let (_, steady) = traced(&sets);
        assert!(steady.iter().all(|step| step.change.is_none()));
        sets.extend([("130 kg", 5); 12]);
        let (history, steps) = traced(&sets);
        let marked: Vec<&Traced> = steps.iter().filter(|step| step.change.is_some()).collect();
        assert!(!marked.is_empty() && marked[0].index >= 20);
        assert!(
            marked
                .iter()
                .all(|step| step.change.unwrap().told == Told::Up)
        );
        // The first mark is the first session from which a look back at the first one tells a change.
        let first = marked[0].index;
        let looked = |n: usize| change_since(&history[..=n], Curve::Epley, history[0].at).unwrap();
        assert_eq!(looked(first).told, Told::Up);
        assert_eq!(looked(first - 1).told, Told::Noise);
    }
}
