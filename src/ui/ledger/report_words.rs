//! What stands in the tables of a report, in words.

use crate::say;
use crate::strength::{Change, Estimate, Told};
use crate::units::{Load, Reps, Unit};
use crate::words::t;
use leptos::prelude::*;

/// A table with its heads.
pub fn report_table(
    name: &'static str,
    part: &'static str,
    heads: &[&'static str],
    rows: Vec<Vec<String>>,
) -> AnyView {
    let heads: Vec<AnyView> = heads
        .iter()
        .map(|head| view! { <th scope="col">{*head}</th> }.into_any())
        .collect();
    let row = |cells: Vec<String>| {
        let mut cells = cells.into_iter();
        let first = cells.next();
        let rest: Vec<AnyView> = cells
            .map(|cell| view! { <td>{cell}</td> }.into_any())
            .collect();
        view! { <tr><th scope="row">{first}</th>{rest}</tr> }.into_any()
    };
    let rows: Vec<AnyView> = rows.into_iter().map(row).collect();
    view! {
        <div class="report-table" role="region" tabindex="0" aria-label=name data-part=part>
            <table>
                <caption>{name}</caption>
                <thead><tr>{heads}</tr></thead>
                <tbody>{rows}</tbody>
            </table>
        </div>
    }
    .into_any()
}

/// The best set of a period, empty where there is none.
pub fn best(best: Option<(Option<Load>, Reps)>, unit: Unit) -> String {
    match best {
        Some((Some(load), reps)) if !load.is_zero() => format!("{} × {reps}", load.shown(unit)),
        Some((_, reps)) => say!("{reps} reps", reps),
        None => String::new(),
    }
}

/// The estimate at the begin and at the end.
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
                "within noise (told from {percent} % on)",
                percent = percent(detectable)
            )
        }
    }
}
