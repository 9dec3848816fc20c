//! The filter against an independent library, and the laws that it keeps.

use super::*;
use proptest::prelude::*;
use serde_json::Value;

/// Written by tests/reference/local_level.py.
const GOLDEN: &str = include_str!("../../tests/golden/local_level.json");

/// Agreement that is asked for.
const WITHIN: f64 = 1e-6;

fn reading(value: f64, lean: f64, noise: f64) -> Reading {
    Reading {
        at: "2026-01-05T18:00:00+01:00".parse().unwrap(),
        value,
        lean,
        noise,
        says: Says::About,
        beyond: false,
    }
}

fn list(series: &Value, name: &str) -> Vec<f64> {
    let list = series[name].as_array().unwrap();
    list.iter().map(|value| value.as_f64().unwrap()).collect()
}

/// The states after each reading, and the log-likelihood of all but the first.
fn run(series: &Value) -> (Vec<State>, f64) {
    let [days, values, leans, noises] =
        ["days", "values", "leans", "noises"].map(|name| list(series, name));
    let drift_var = series["drift_var"].as_f64().unwrap();
    let mut states: Vec<State> = Vec::new();
    let mut loglik = 0.0;
    for at in 0..values.len() {
        let reading = reading(values[at], leans[at], noises[at]);
        let state = match states.last() {
            None => State::first(&reading).unwrap(),
            Some(before) => {
                let before = before.later(days[at] - days[at - 1], drift_var);
                let spread = before.variance + reading.noise;
                let off = reading.value - before.level;
                loglik -= 0.5 * ((std::f64::consts::TAU * spread).ln() + off * off / spread);
                before.with(&reading)
            }
        };
        states.push(state);
    }
    (states, loglik)
}

fn agree(series: &Value, name: &str, ours: impl Iterator<Item = f64>) {
    let theirs = list(series, name);
    let ours: Vec<f64> = ours.collect();
    assert_eq!(ours.len(), theirs.len());
    for (at, (a, b)) in ours.iter().zip(&theirs).enumerate() {
        assert!((a - b).abs() < WITHIN, "{name} {at}: {a}, not {b}");
    }
}

#[test]
fn the_filter_agrees_with_an_independent_library() {
    let golden: Value = serde_json::from_str(GOLDEN).unwrap();
    let (states, loglik) = run(&golden);
    assert_eq!(states.len(), 60);
    agree(&golden, "level", states.iter().map(|s| s.level));
    agree(&golden, "variance", states.iter().map(|s| s.variance));
    // The mean lean is what the library makes of the leans with the same noises.
    agree(&golden, "mean_lean", states.iter().map(|s| s.lean));
    assert!((loglik - golden["loglik"].as_f64().unwrap()).abs() < WITHIN);
}

#[test]
fn a_bound_far_off_says_nothing_and_one_on_this_side_moves() {
    let state = State::first(&reading(4.6, 0.0, 0.003)).unwrap();
    let with = |value, says| {
        state.with(&Reading {
            says,
            ..reading(value, 0.0, 0.003)
        })
    };
    let same = |other: State| {
        assert!((other.level - state.level).abs() < 1e-9);
        assert!((other.variance - state.variance).abs() < 1e-9);
    };
    same(with(3.0, Says::AtLeast));
    same(with(6.0, Says::AtMost));
    assert!(with(4.7, Says::AtLeast).level > state.level);
    assert!(with(4.5, Says::AtMost).level < state.level);
    // Known to be above is less than known to be there.
    assert!(with(4.7, Says::AtLeast).variance > with(4.7, Says::About).variance);
}

#[test]
fn a_miss_alone_is_no_beginning() {
    let missed = Reading {
        says: Says::AtMost,
        ..reading(4.6, 0.0, 0.003)
    };
    assert_eq!(State::first(&missed), None);
}

#[test]
fn a_slip_of_the_thumb_moves_the_level_only_so_far() {
    let state = State::first(&reading(4.6, 0.0, 0.003)).unwrap();
    let ten_times = state.with(&reading(4.6 + 10_f64.ln(), 0.0, 0.003));
    let bound = INNOVATION_MAX * (state.variance + 0.003).sqrt();
    assert!(ten_times.level - state.level <= bound);
}

fn some_says() -> impl Strategy<Value = Says> {
    prop::sample::select(vec![Says::About, Says::AtLeast, Says::AtMost])
}

proptest! {
    #[test]
    fn variances_stay_variances(
        steps in prop::collection::vec((4.0..5.5_f64, 0.0..0.4_f64, some_says(), -3.0..60.0_f64), 1..60),
    ) {
        let mut state = State::first(&reading(4.6, 0.2, 0.003)).unwrap();
        for (value, lean, says, days) in steps {
            state = state.later(days, 1.6e-5);
            state = state.with(&Reading { says, ..reading(value, lean, 0.003) });
            prop_assert!(state.variance > 0.0, "{state:?}");
            prop_assert!(state.level.is_finite() && (0.0..=0.4).contains(&state.lean));
        }
    }

    /// Higher, or the same meant higher, never gives less: nothing is proposed less for more that was done.
    #[test]
    fn a_higher_reading_never_gives_a_lower_level(a in 4.0..5.5_f64, b in 4.0..5.5_f64, says in some_says()) {
        let state = State::first(&reading(4.6, 0.2, 0.003)).unwrap().later(4.0, 1.6e-5);
        let with = |value, says| state.with(&Reading { says, ..reading(value, 0.15, 0.003) }).level;
        prop_assert!(with(a.max(b), says) >= with(a.min(b), says) - 1e-9);
        prop_assert!(with(a, Says::AtMost) <= with(a, Says::About) + 1e-9);
        prop_assert!(with(a, Says::About) <= with(a, Says::AtLeast) + 1e-9);
    }
}
