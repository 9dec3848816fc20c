//! What stands in the tables of a report, in words.

use crate::say;
use crate::strength::{Change, Estimate, Told, maximum_said};
use crate::units::{Load, Unit};
use crate::words::t;

/// The estimate at the start and at the end.
pub fn estimates(ends: Option<&(Estimate, Estimate)>, unit: Unit) -> String {
    let said = |load: Load| maximum_said(load, unit);
    match ends {
        Some((begin, end)) => say!(
            "{first} to {last}",
            first = said(begin.middle),
            last = said(end.middle)
        ),
        None => t("too little known").to_owned(),
    }
}

/// A change, told apart from noise; empty where there is none to tell.
pub fn told(change: Option<Change>) -> String {
    let percent = |share: f64| (share.abs() * 100.0).round() as i64;
    let Some(change) = change else {
        return String::new();
    };
    let span = change.span_said();
    match change.told {
        Told::Up => say!(
            "{percent} % stronger over {span}, more than noise",
            percent = percent(change.by),
            span
        ),
        Told::Down => say!(
            "{percent} % weaker over {span}, more than noise",
            percent = percent(change.by),
            span
        ),
        Told::Noise => say!(
            "within noise over {span} (told from {percent}\u{a0}% on)",
            span,
            percent = percent(change.detectable)
        ),
    }
}
