//! The figures of a simulation: a table to read, and one flat object of key and number.

use std::collections::BTreeMap;

use serde_json::{Value, json};

use super::Results;
use super::tally::Tally;

/// The table of the rules, line by line, as it stands in docs/simulation.md.
pub fn table(results: &Results) -> Vec<String> {
    let mut lines = vec![
        "| rule | gain | missed sets | sets to the limit | wasted weeks | interval holds |"
            .to_owned(),
        "| --- | --- | --- | --- | --- | --- |".to_owned(),
    ];
    lines.extend(results.rules.iter().map(|(rule, tally)| {
        let figures = [
            tally.gain.get(),
            tally.missed.share(),
            tally.ground.share(),
            tally.wasted_weeks.share(),
            tally.level_inside.share(),
        ];
        let cells = figures.map(|figure| percent(figure) + " %");
        format!("| {} | {} |", rule.name, cells.join(" | "))
    }));
    lines
}

/// Every figure with its key, in percent unless the key says otherwise.
pub fn flat(honest: &Results, modest: &Results, quiet: &Results) -> BTreeMap<String, Value> {
    let mut figures = BTreeMap::new();
    for (rule, tally) in &honest.rules {
        let mut put = |name: &str, figure| {
            figures.insert(format!("{}.{name}", rule.key), rounded(figure));
        };
        put("gain", tally.gain.get());
        put("missed", tally.missed.share());
        put("ground", tally.ground.share());
        put("wasted_weeks", tally.wasted_weeks.share());
        put("interval_holds", tally.level_inside.share());
        put("reps_interval_holds", tally.reps_inside.share());
        put("bias", tally.level_error.get());
    }
    for (name, tally) in [("all", honest.together()), ("modest", modest.together())] {
        for (key, figure) in estimate(&tally) {
            figures.insert(format!("{name}.{key}"), rounded(figure));
        }
        for (chance, came) in &tally.foretold {
            if let (Some(chance), Some(came)) = (chance.get(), came.share()) {
                let key = format!("{name}.foretold_{:02.0}", chance * 100.0);
                figures.insert(key, rounded(Some(came)));
            }
        }
    }
    for (rule, tally) in &quiet.rules {
        let mut put = |name: &str, figure| {
            figures.insert(format!("{}.{name}", rule.key), rounded(figure));
        };
        put("interval_holds", tally.level_inside.share());
        put("truth_above_interval", tally.level_above.share());
        put("bias", tally.level_error.get());
        put("reps_interval_holds", tally.reps_inside.share());
        put("beyond_yet_done", tally.beyond_done.share());
        put("missed", tally.missed.share());
    }
    figures.insert(
        "beat_the_default".to_owned(),
        json!(honest.beat_the_default()),
    );
    figures
}

/// What is said of the estimate.
fn estimate(tally: &Tally) -> [(&'static str, Option<f64>); 11] {
    [
        ("interval_holds", tally.level_inside.share()),
        ("interval_holds_told", tally.level_inside_told.share()),
        ("interval_holds_untold", tally.level_inside_untold.share()),
        ("truth_above_interval", tally.level_above.share()),
        ("bias", tally.level_error.get()),
        ("claimed_sd", tally.level_spread.get()),
        ("reps_interval_holds", tally.reps_inside.share()),
        ("beyond_yet_done", tally.beyond_done.share()),
        ("told_up_right", tally.told_up_right.share()),
        ("plateau_while_gaining", tally.plateau_while_gaining.share()),
        ("plateau_while_flat", tally.plateau_while_flat.share()),
    ]
}

fn percent(figure: Option<f64>) -> String {
    figure.map_or("–".to_owned(), |figure| format!("{:.1}", figure * 100.0))
}

/// In percent, to a tenth; null of no case.
fn rounded(figure: Option<f64>) -> Value {
    figure.map_or(Value::Null, |figure| {
        json!((figure * 1000.0).round() / 10.0)
    })
}
