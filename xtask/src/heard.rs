//! Figures of the sound: the tests that render and record the real audio graph say them.

use std::collections::BTreeMap;

use crate::run::tests_output;
use crate::say::{Failure, Outcome};
use crate::setup::{Browser, Tools};
use crate::test::browser_tests;

/// The keys that the tests must say.
const KEYS: [&str; 4] = [
    "cue.offline_error_ms_max",
    "cue.drift_samples_10min",
    "cue.jank_error_ms_max",
    "cue.jank_naive_error_ms_max",
];

const NEXT: &str = "run `cargo xtask test` and look at the tests of the sound";

/// Runs those tests of `tests/browser/` whose names begin with *measured* and gives what they measured.
pub fn figures(tools: &Tools, browser: &Browser) -> Outcome<BTreeMap<&'static str, f64>> {
    let mut command = browser_tests(tools, browser)?;
    command.args(["--", "measured", "--nocapture"]);
    said(&tests_output(&mut command, NEXT)?)
}

/// The figures in what the tests said, lines like `figure cue.drift_samples_10min 0.0`.
fn said(output: &str) -> Outcome<BTreeMap<&'static str, f64>> {
    KEYS.into_iter()
        .map(|key| {
            let value = output.lines().find_map(|line| {
                let (_, rest) = line.split_once("figure ")?;
                let (name, value) = rest.split_once(' ')?;
                (name == key).then(|| value.trim().parse().ok())?
            });
            let missing = || Failure::new(format!("the tests did not say {key}"), NEXT);
            Ok((key, value.ok_or_else(missing)?))
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_are_read_from_among_other_words() {
        let output = "test a ... ok\n    figure cue.offline_error_ms_max 0.0625\n\
                      figure cue.drift_samples_10min 0.0000\nfigure cue.jank_error_ms_max 0.0227\n\
                      figure cue.jank_naive_error_ms_max 288.5\nfigure cue.other 3\n";
        let figures = said(output).unwrap();
        assert_eq!(figures["cue.jank_naive_error_ms_max"], 288.5);
        assert_eq!(figures.len(), KEYS.len());
        let failure = said("figure cue.offline_error_ms_max 0.1").unwrap_err();
        assert!(failure.what.contains("cue.drift_samples_10min"));
    }
}
