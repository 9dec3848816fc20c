//! What sets and sessions say, worked by hand.

use super::*;
use crate::sheet::LoadBasis;
use crate::strength::propose::tests::performed;

fn one(reps: u16) -> Performance {
    performed(&[("100 kg", reps)], (5, 7))
}

fn why(change: impl FnOnce(&mut Performance)) -> Option<Unfed> {
    let mut performance = one(5);
    change(&mut performance);
    unfed(&performance, &performance.sets[0])
}

#[test]
fn a_set_that_says_nothing_says_why() {
    assert_eq!(why(|_| ()), None);
    assert_eq!(
        why(|p| p.sets[0].unfed = Some(Unfed::Staged)),
        Some(Unfed::Staged)
    );
    assert_eq!(why(|p| p.sets[0].work = false), Some(Unfed::NotPlain));
    assert_eq!(why(|p| p.basis = None), Some(Unfed::BasisUnknown));
    assert_eq!(why(|p| p.sets[0].load = None), Some(Unfed::NoLoad));
    assert_eq!(
        why(|p| p.basis = Some(LoadBasis::BodyMassPlus)),
        Some(Unfed::BodyMassUnknown)
    );
}

#[test]
fn on_the_body_the_whole_system_counts() {
    let mut added = one(1);
    added.sets[0].to_limit = true;
    added.basis = Some(LoadBasis::BodyMassPlus);
    added.body_mass = Some(Load::whole_kg(80));
    let reading = session(&added, Curve::Epley).unwrap();
    assert!((reading.value - 180_f64.ln()).abs() < 1e-12);
}

#[test]
fn a_set_that_stopped_as_planned_is_a_bound() {
    let says = |reps, reserve: Option<i64>, to_limit| {
        let mut performance = one(reps);
        performance.sets[0].reserve = reserve.map(|r| Rir::new(r).unwrap());
        performance.sets[0].to_limit = to_limit;
        session(&performance, Curve::Epley).unwrap().says
    };
    assert_eq!(says(7, None, false), Says::AtLeast);
    assert_eq!(says(7, None, true), Says::About);
    assert_eq!(says(7, Some(3), false), Says::About);
    assert_eq!(says(7, Some(4), false), Says::AtLeast);
    assert_eq!(says(6, None, false), Says::About);
}

#[test]
fn only_a_session_of_misses_is_an_upper_bound() {
    let of = |sets: &[(&str, u16)]| session(&performed(sets, (5, 7)), Curve::Epley).unwrap();
    let missed = of(&[("120 kg", 0), ("110 kg", 0)]);
    assert_eq!(missed.says, Says::AtMost);
    assert!((missed.value - 110_f64.ln()).abs() < 1e-12);
    let mut told = performed(&[("110 kg", 0)], (5, 7));
    told.sets[0].reserve = Some(Rir::MAX);
    assert_eq!(session(&told, Curve::Epley), Some(missed));
    let tried = of(&[("120 kg", 0), ("110 kg", 1)]);
    assert_eq!(tried.says, Says::About);
    // A miss came to failure: what was done before it was near.
    assert_eq!(of(&[("100 kg", 7), ("120 kg", 0)]).says, Says::About);
}

#[test]
fn one_set_near_failure_makes_the_best_count() {
    let both = performed(&[("100 kg", 7), ("100 kg", 6)], (5, 7));
    let reading = session(&both, Curve::Epley).unwrap();
    assert_eq!(reading.says, Says::About);
    assert!((reading.value - (100.0 * (1.0 + 7.0 / 30.0_f64)).ln()).abs() < 1e-12);
}

#[test]
fn what_is_told_is_less_sure_than_what_was_tried() {
    let mut told = one(5);
    told.sets[0].reserve = Some(Rir::MIN);
    let mut tried = one(5);
    tried.sets[0].to_limit = true;
    let noise = |performance: &Performance| session(performance, Curve::Epley).unwrap().noise;
    assert!(noise(&told) > noise(&tried));
    assert!(noise(&tried) > DAY_CV.powi(2));
}

#[test]
fn only_a_set_to_the_limit_without_a_word_was_tried_for_certain() {
    let noise = |reps, told: Option<i64>, to_limit| {
        let mut performance = one(reps);
        performance.sets[0].reserve = told.map(Rir::saturating);
        performance.sets[0].to_limit = to_limit;
        session(&performance, Curve::Epley).unwrap().noise
    };
    let tried = noise(5, None, true);
    // Told, or left off short of what was asked: a guess.
    for guessed in [
        noise(5, Some(0), true),
        noise(5, Some(0), false),
        noise(5, None, false),
    ] {
        assert!(guessed > tried);
    }
}

#[test]
fn more_left_than_can_be_told_counts_as_half_a_rep_more() {
    let value = |told| {
        let mut performance = one(5);
        performance.sets[0].reserve = Some(Rir::saturating(told));
        session(&performance, Curve::Epley).unwrap().value
    };
    // 100 kg, 5 reps and 3 left; 4 left and more are felt as three and a half (Epley, worked by hand).
    assert!((value(3) - (100.0 * (1.0 + 8.0 / 30.0_f64)).ln()).abs() < 1e-12);
    for told in [4, 6] {
        assert!((value(told) - (100.0 * (1.0 + 8.5 / 30.0_f64)).ln()).abs() < 1e-12);
    }
}

#[test]
fn a_rep_at_the_maximum_is_worth_what_half_a_rep_above_it_says() {
    // Straight from one rep to two, 1/15 by Epley; half of that over half a rep (worked by hand).
    let per_rep = (1.0 + 1.0 / 30.0_f64).ln() / 0.5;
    assert!((log_per_rep(Curve::Epley, 1.0) - per_rep).abs() < 1e-12);
}

/// What a set of 100 kg says by the curve, as a multiple of the load.
fn says(reps: u16, reserve: Option<i64>, curve: Curve) -> (Says, f64) {
    let mut performance = one(reps);
    performance.sets[0].reserve = reserve.map(Rir::saturating);
    let reading = session(&performance, curve).unwrap();
    (reading.says, reading.value.exp() / 100.0)
}

#[test]
fn more_reps_than_the_curve_holds_for_are_at_least_its_last() {
    // Epley of 12 reps is 1.4 (worked by hand).
    for (reps, reserve) in [
        (13, None),
        (30, None),
        (14, Some(0)),
        (10, Some(3)),
        (10, Some(4)),
    ] {
        let (says, factor) = says(reps, reserve, Curve::Epley);
        assert_eq!(says, Says::AtLeast, "{reps}");
        assert!((factor - 1.4).abs() < 1e-12, "{reps}: {factor}");
    }
    assert_eq!(says(12, Some(0), Curve::Epley).0, Says::About);
    assert_eq!(says(14, Some(0), Curve::Wathan).0, Says::About);
    // The chart has no column for 11: at least what 10 say, 100/75.
    let (by_chart, factor) = says(11, Some(0), Curve::NscaHandout);
    assert_eq!(by_chart, Says::AtLeast);
    assert!((factor - 100.0 / 75.0).abs() < 1e-12, "{factor}");
}

#[test]
fn more_reps_never_say_less() {
    for curve in Curve::ALL {
        let values: Vec<f64> = (1..40).map(|reps| says(reps, None, curve).1).collect();
        assert!(
            values.windows(2).all(|pair| pair[0] <= pair[1]),
            "{curve:?}"
        );
    }
}

#[test]
fn a_best_beyond_the_curve_stays_a_bound_beside_a_set_near_failure() {
    let of = |sets: &[(&str, u16)]| session(&performed(sets, (8, 15)), Curve::Epley).unwrap();
    let both = of(&[("100 kg", 14), ("100 kg", 7)]);
    assert_eq!(both.says, Says::AtLeast);
    let apart = [of(&[("100 kg", 14)]), of(&[("100 kg", 7)])].map(Some);
    assert_eq!(Reading::of_both(apart[0], apart[1]), Some(both));
    // A light burn-out does not make heavier sets that went as planned near.
    let mut burnt = performed(&[("100 kg", 15), ("40 kg", 30)], (15, 15));
    burnt.sets[1].to_limit = true;
    assert_eq!(session(&burnt, Curve::Epley).unwrap().says, Says::AtLeast);
    // A heavier set near failure is the best.
    assert_eq!(of(&[("60 kg", 14), ("100 kg", 7)]).says, Says::About);
}

#[test]
fn who_was_to_leave_reps_stops_as_planned_inside_the_range() {
    let says = |reps, told: Option<i64>, to_limit| {
        let mut performance = performed(&[("40 lb", reps)], (8, 12));
        performance.sets[0].to_spare = true;
        performance.sets[0].reserve = told.map(Rir::saturating);
        performance.sets[0].to_limit = to_limit;
        session(&performance, Curve::Epley).unwrap().says
    };
    for reps in [8, 10, 12] {
        assert_eq!(says(reps, None, false), Says::AtLeast, "{reps}");
    }
    // Below the bottom nobody stops as planned; what is told counts as told.
    assert_eq!(says(7, None, false), Says::About);
    assert_eq!(says(10, Some(2), false), Says::About);
    assert_eq!(says(10, None, true), Says::About);
}
