//! What the estimate says, on histories made by hand.

use super::*;
use crate::sheet::LoadBasis;
use crate::strength::propose::tests::performed;
use chrono::TimeDelta;
use proptest::prelude::*;

fn kg(text: &str) -> Load {
    text.parse().unwrap()
}

/// Sessions of one set to the limit each, so many days apart.
pub(in crate::strength) fn tried(sets: &[(&str, u16)], days_apart: i64) -> Vec<Performance> {
    let sessions = sets.iter().enumerate();
    sessions
        .map(|(n, set)| {
            let mut performance = performed(&[*set], (5, 7));
            performance.at += TimeDelta::days(days_apart * n as i64);
            performance.sets[0].to_limit = true;
            performance
        })
        .collect()
}

fn steady() -> Strength {
    Strength::of(&tried(&[("100 kg", 5); 12], 4), Curve::Epley).unwrap()
}

#[test]
fn without_a_set_that_feeds_there_is_no_estimate() {
    assert_eq!(Strength::of(&[], Curve::Epley), None);
    let mut history = tried(&[("20 kg", 8)], 4);
    history[0].basis = Some(LoadBasis::BodyMassPlus);
    assert_eq!(Strength::of(&history, Curve::Epley), None);
    history[0].body_mass = Some(kg("80 kg"));
    assert!(Strength::of(&history, Curve::Epley).is_some());
}

#[test]
fn a_steady_lifter_is_known_by_the_curve() {
    let strength = steady();
    assert_eq!(strength.sessions(), 12);
    let estimate = strength.e1rm();
    assert_eq!(estimate.middle, kg("116.67 kg"));
    assert!(estimate.low > kg("105 kg") && estimate.high < kg("130 kg"));
    let ahead = strength.reps_at(kg("100 kg")).unwrap();
    assert_eq!(ahead.middle, reps(5));
    assert!(ahead.low < reps(5) && ahead.high > Some(reps(5)));
}

#[test]
fn the_maximum_is_less_sure_from_many_reps_than_from_few() {
    let known = |set| Strength::of(&tried(&[set; 12], 4), Curve::Epley).unwrap();
    let (many, few) = (known(("80 kg", 10)), known(("100 kg", 2)));
    assert!(many.variance() > 2.0 * few.variance());
    // Reps near those that were trained are as sure from either.
    let ahead = many.reps_at(kg("80 kg")).unwrap();
    assert!(ahead.low >= reps(7) && ahead.high.is_none_or(|high| high <= reps(13)));
}

#[test]
fn days_without_a_session_add_doubt_and_a_clock_set_back_adds_none() {
    let strength = steady();
    let later = strength.on(strength.at() + TimeDelta::days(90));
    assert!(later.variance() > strength.variance());
    assert_eq!(later.level().to_bits(), strength.level().to_bits());
    assert_eq!(strength.on(strength.at() - TimeDelta::days(90)), strength);

    let mut history = tried(&[("100 kg", 5), ("100 kg", 6)], 4);
    history[1].at = history[0].at - TimeDelta::days(400);
    let back = Strength::of(&history, Curve::Epley).unwrap();
    assert_eq!(back.at(), history[0].at);
}

#[test]
fn what_was_often_done_is_supported_and_far_more_is_beyond() {
    let strength = steady();
    let asked = |load, n| strength.supported(kg(load), reps(n));
    assert_eq!(asked("100 kg", 4), Support::Supported);
    assert_eq!(asked("102.5 kg", 5), Support::Doubtful);
    assert_eq!(asked("120 kg", 5), Support::Beyond);
}

#[test]
fn reps_beyond_the_curve_are_no_number() {
    let strength = steady();
    let error = strength.reps_at(kg("60 kg")).unwrap_err();
    assert_eq!(error.reps, reps(13));
    // Near the end of the curve the upper end is open.
    let open = strength.reps_at(kg("85 kg")).unwrap();
    assert_eq!(open.high, None);
}

#[test]
fn loads_in_two_units_are_one_history() {
    let kilograms = tried(&[("100 kg", 5), ("102.05828325 kg", 5)], 4);
    let mixed = tried(&[("100 kg", 5), ("225 lb", 5)], 4);
    assert_eq!(
        Strength::of(&kilograms, Curve::Epley),
        Strength::of(&mixed, Curve::Epley)
    );
}

/// Worked by hand: by Epley 8 reps are 76 of 60. A lower bound gives way to what is above it, by no more than a doubling at once.
#[test]
fn a_slip_of_the_thumb_does_not_ruin_a_lower_bound() {
    let planned = |loads: &[&str]| {
        let sets: Vec<(&str, u16)> = loads.iter().map(|load| (*load, 8)).collect();
        let mut history = tried(&sets, 4);
        for done in &mut history {
            done.sets[0].top = reps(8);
            done.sets[0].to_limit = false;
        }
        let known = Strength::of(&history, Curve::Epley).unwrap();
        assert!(known.is_bound());
        known.e1rm().middle
    };
    assert_eq!(planned(&["60 kg"]), kg("76 kg"));
    assert_eq!(planned(&["60 kg", "110 kg"]), kg("139.33 kg"));
    assert_eq!(planned(&["60 kg", "600 kg"]), kg("152 kg"));
    // Who began far too light is known a session later.
    assert_eq!(planned(&["20 kg", "60 kg"]), kg("50.67 kg"));
    assert_eq!(planned(&["20 kg", "60 kg", "60 kg"]), kg("76 kg"));
}

/// 60 kg for 8 are a bound of 76 kg by Epley; each session stops as planned.
#[test]
fn slips_of_one_day_say_no_more_than_one() {
    let known = |sessions: &[(&str, i64)]| {
        let sets: Vec<(&str, u16)> = sessions.iter().map(|(load, _)| (*load, 8)).collect();
        let mut history = tried(&sets, 0);
        for (done, (_, hours)) in history.iter_mut().zip(sessions) {
            done.at += TimeDelta::hours(*hours);
            done.session = uuid::Uuid::from_u128(*hours as u128);
            done.sets[0].top = reps(8);
            done.sets[0].to_limit = false;
        }
        Strength::of(&history, Curve::Epley).unwrap().e1rm().middle
    };
    assert_eq!(known(&[("60 kg", 0), ("600 kg", 96)]), kg("152 kg"));
    assert_eq!(
        known(&[("60 kg", 0), ("600 kg", 96), ("600 kg", 97), ("650 kg", 98)]),
        kg("152 kg")
    );
    // Who begins with an easy set rises the same day, and by what another day says again.
    assert_eq!(known(&[("20 kg", 0), ("40 kg", 1)]), kg("50.67 kg"));
    assert_eq!(
        known(&[("20 kg", 0), ("60 kg", 1), ("60 kg", 2)]),
        kg("50.67 kg")
    );
    assert_eq!(
        known(&[("20 kg", 0), ("60 kg", 1), ("60 kg", 97)]),
        kg("76 kg")
    );
    // A novice who gains a tenth a week is followed from week to week.
    let novice = [
        "40 kg", "44 kg", "48 kg", "53 kg", "58 kg", "64 kg", "70 kg", "77 kg", "85 kg",
    ];
    let weeks: Vec<(&str, i64)> = novice
        .into_iter()
        .zip((0..).map(|week| 168 * week))
        .collect();
    assert!(known(&weeks) >= kg("107.67 kg"), "85 kg for 8 by Epley");
}

proptest! {
    /// However many sessions of a day stop as planned, all they say is at most twice what stood before it.
    #[test]
    fn a_day_of_lower_bounds_says_at_most_twice_what_stood(
        before in 10..200_u16,
        day in prop::collection::vec(5..900_u16, 1..6),
    ) {
        let loads: Vec<String> = std::iter::once(before).chain(day).map(|load| format!("{load} kg")).collect();
        let sets: Vec<(&str, u16)> = loads.iter().map(|load| (load.as_str(), 5)).collect();
        let mut history = tried(&sets, 0);
        for (done, n) in history.iter_mut().zip(0_i64..) {
            let at = if n == 0 { TimeDelta::zero() } else { TimeDelta::days(4) + TimeDelta::minutes(n) };
            done.at += at;
            done.sets[0].top = reps(5);
            done.sets[0].to_limit = false;
        }
        let level = |history: &[Performance]| Strength::of(history, Curve::Epley).unwrap().level();
        prop_assert!(level(&history) <= level(&history[..1]) + LEAP_MAX.ln() + 1e-9);
    }

    #[test]
    fn more_load_or_more_reps_are_never_likelier(load in 40..180_u16, n in 1..12_u16, more in 1..20_u16) {
        let strength = steady();
        let at = |load, n| strength.probability_at_least(Load::whole_kg(load), reps(n));
        prop_assert!(at(load + more, n) <= at(load, n));
        prop_assert!(at(load, n + 1) <= at(load, n) + 1e-9);
    }

    #[test]
    fn all_numbers_of_reps_together_are_certain(load in 40..180_u16) {
        let strength = steady();
        let load = Load::whole_kg(load);
        let single: f64 = (0..=20).map(|n| strength.probability_in_range(load, reps(n), reps(n))).sum();
        let beyond = strength.probability_at_least(load, reps(21));
        prop_assert!((single + beyond - 1.0).abs() < 1e-6, "{}", single + beyond);
    }

    /// Within the range of the curve: above it more reps can take a set out of the estimate.
    #[test]
    fn more_reps_never_give_less(
        before in prop::collection::vec((40..140_u16, 1..12_u16), 0..6),
        last in prop::collection::vec((40..140_u16, 0..12_u16, 0..3_u16), 1..4),
    ) {
        let session = |sets: Vec<(u16, u16)>, n: i64| {
            let loads: Vec<String> = sets.iter().map(|(load, _)| format!("{load} kg")).collect();
            let sets: Vec<(&str, u16)> = loads.iter().map(String::as_str).zip(sets.iter().map(|set| set.1)).collect();
            let mut performance = performed(&sets, (5, 7));
            performance.at += TimeDelta::days(4 * n);
            performance
        };
        let mut history: Vec<Performance> = before.iter().zip(0..).map(|(set, n)| session(vec![*set], n)).collect();
        let level = |history: &[Performance]| Strength::of(history, Curve::Epley).map(|s| s.level());
        history.push(session(last.iter().map(|(load, n, _)| (*load, *n)).collect(), 7));
        let less = level(&history);
        history.pop();
        history.push(session(last.iter().map(|(load, n, more)| (*load, (n + more).min(12))).collect(), 7));
        let more = level(&history);
        prop_assert!(more >= less.map(|less| less - 1e-9), "{less:?} then {more:?}");
    }

    #[test]
    fn any_history_gives_a_finite_answer(
        sets in prop::collection::vec((1..400_i64, 0..40_u16, -5..90_i64), 0..40),
    ) {
        let mut history = Vec::new();
        for (load, n, days) in sets {
            let mut performance = performed(&[(format!("{load} kg").as_str(), n)], (5, 7));
            performance.at += TimeDelta::days(days);
            history.push(performance);
        }
        if let Some(strength) = Strength::of(&history, Curve::Epley) {
            let estimate = strength.e1rm();
            prop_assert!(estimate.low <= estimate.middle && estimate.middle <= estimate.high);
            prop_assert!(strength.variance() > 0.0);
        }
    }
}
