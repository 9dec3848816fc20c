//! What stands in the tables of a report, in words.

use crate::say;
use crate::strength::{Change, Estimate, Told};
use crate::units::{Load, Unit};
use crate::words::t;

/// The estimate at the start and at the end.
pub fn estimates(ends: Option<&(Estimate, Estimate)>, unit: Unit) -> String {
    let whole = |load: Load| {
        let load = load.to_unit(unit);
        format!("{} {unit}", load.amount().round())
    };
    match ends {
        Some((begin, end)) => say!(
            "{first} to {last}",
            first = whole(begin.middle),
            last = whole(end.middle)
        ),
        None => t("too little known").to_owned(),
    }
}

/// A change, told apart from noise; empty where there is none to tell.
pub fn told(change: Option<Change>) -> String {
    let percent = |share: f64| (share.abs() * 100.0).round() as i64;
    match change {
        None => String::new(),
        Some(Change {
            by, told: Told::Up, ..
        }) => say!(
            "{percent} % stronger, more than noise",
            percent = percent(by)
        ),
        Some(Change {
            by,
            told: Told::Down,
            ..
        }) => say!("{percent} % weaker, more than noise", percent = percent(by)),
        Some(Change { detectable, .. }) => {
            say!(
                "within noise (told from {percent}\u{a0}% on)",
                percent = percent(detectable)
            )
        }
    }
}
