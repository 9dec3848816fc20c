//! Change, noise and plateau on histories made by hand.

use super::*;
use crate::strength::level::tests::tried;

fn since(history: &[Performance], session: usize) -> Change {
    change_since(history, Curve::Epley, history[session].at).unwrap()
}

#[test]
fn a_rep_more_is_noise_and_a_fifth_more_load_is_not() {
    let mut sets = vec![("100 kg", 5); 8];
    sets.push(("100 kg", 6));
    assert_eq!(since(&tried(&sets, 4), 7).told, Told::Noise);

    let mut sets = vec![("100 kg", 5); 8];
    sets.extend([("120 kg", 5); 8]);
    let up = since(&tried(&sets, 4), 7);
    assert_eq!(up.told, Told::Up);
    assert!(up.by > up.detectable);
    assert_eq!(up.days, 8 * 4);
    let sets: Vec<_> = sets.into_iter().rev().collect();
    assert_eq!(since(&tried(&sets, 4), 7).told, Told::Down);
}

#[test]
fn a_change_needs_two_ends() {
    let history = tried(&[("100 kg", 5); 3], 4);
    let asked = |at| change_since(&history, Curve::Epley, at);
    assert_eq!(asked(history[2].at), None);
    assert_eq!(asked(history[0].at - TimeDelta::days(1)), None);
    assert!(asked(history[0].at).is_some());
}

#[test]
fn the_same_for_weeks_is_a_plateau() {
    let flat = plateau(&tried(&[("100 kg", 5); 14], 4), Curve::Epley).unwrap();
    assert_eq!(flat.sessions, 11);
    assert!(flat.typical_error < 1e-9);
}

#[test]
fn a_plateau_is_that_of_its_own_sessions() {
    // Sessions of all sorts, then twelve alike: what lay before it makes no error of theirs. The one just 42 days old
    // is where it begins.
    let mut sets = vec![("130 kg", 5), ("70 kg", 5), ("130 kg", 5), ("120 kg", 5)];
    sets.extend([("100 kg", 5); 14]);
    let history = tried(&sets, 3);
    let flat = plateau(&history, Curve::Epley).unwrap();
    assert_eq!(flat.sessions, 14);
    assert!(flat.typical_error < 1e-9, "{}", flat.typical_error);
    assert_eq!(flat.since, history[3].at);
}

#[test]
fn gains_few_sessions_or_few_days_are_no_plateau() {
    let loads: Vec<String> = (0..14).map(|n| format!("{} kg", 100 + 2 * n)).collect();
    let rising: Vec<_> = loads.iter().map(|load| (load.as_str(), 5)).collect();
    assert_eq!(plateau(&tried(&rising, 4), Curve::Epley), None);
    assert_eq!(plateau(&tried(&[("100 kg", 5); 8], 20), Curve::Epley), None);
    assert_eq!(plateau(&tried(&[("100 kg", 5); 14], 1), Curve::Epley), None);
}

#[test]
fn one_value_has_no_error() {
    assert_eq!(typical_error(&[72.0]), None);
    assert_eq!(typical_error(&[72.0, 72.0]), Some(0.0));
}
