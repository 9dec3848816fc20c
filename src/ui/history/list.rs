//! The exercises that were done, the one done last first.

use crate::ledger::ExerciseSummary;
use crate::order;
use crate::say;
use crate::ui::ledger::name_of;
use crate::ui::model::Model;
use crate::ui::parts::{Row, h1, line, page, rows, way, when};
use crate::ui::place::Place;
use crate::ui::seen::Seen;
use crate::ui::stanchion::stanchion;
use crate::units::day;
use crate::words::t;
use leptos::prelude::*;
use std::cmp::Reverse;

fn found(model: &Model) -> Vec<Row> {
    let mut done: Vec<&ExerciseSummary> = model.summaries.values().collect();
    order::by_key(&mut done, |summary| Reverse(summary.last_done));
    let row = |summary: &ExerciseSummary| Row {
        href: Place::History(summary.exercise.clone()).href(),
        before: String::new(),
        strong: name_of(model, &summary.exercise),
        after: say!("last on {last}", last = day(summary.last_done)),
    };
    done.into_iter().map(row).collect()
}

/// The exercises that were done.
pub fn histories_place() -> AnyView {
    let app = stanchion();
    let done = app.of(found);
    let none = Seen::new(move || done.with(Vec::is_empty));
    page(
        "histories",
        vec![
            way(Place::Ledger.href(), t("Ledger")),
            h1(t("Exercises done")),
            when(none, || {
                line(
                    "quiet",
                    "histories-empty",
                    t("Nothing yet. An exercise is here from its first session on."),
                )
            }),
            rows("history-row", done),
        ],
    )
}
