//! The table behind the picture: the same, to be read and heard.

use super::Shown;
use crate::charts::{Chart, Grain};
use crate::say;
use crate::ui::live::Live;
use crate::ui::parts::{button, dynamic, el, when};
use crate::ui::seen::Seen;
use crate::words::t;
use leptos::prelude::*;

/// Rows that are shown at first, and that each further tap adds.
const ROWS: usize = 60;

/// The table, while it is open.
pub fn table(shown: Shown, open: Live<bool>) -> AnyView {
    let most = Live::new(ROWS);
    let rows = when(open, move || {
        dynamic(move || {
            let most = most.get();
            shown.chart.with(|chart| whole(chart, most))
        })
    });
    let more = Seen::new(move || open.get() && shown.rows() > most.get());
    let more = when(more, move || {
        button(
            "plain",
            format!("{}-rows", shown.part),
            t("Show more rows"),
            move || {
                most.update(|most| *most += ROWS);
            },
        )
    });
    vec![rows, more].into_any()
}

/// The table with at most so many rows; days stand newest first.
fn whole(chart: &Chart, most: usize) -> AnyView {
    let head: Vec<AnyView> = chart
        .columns
        .iter()
        .map(|column| head(&column.name))
        .collect();
    let newest_first = matches!(chart.x.grain, Grain::Days);
    let count = chart.rows.len();
    let place = |n: usize| if newest_first { count - 1 - n } else { n };
    let rows: Vec<AnyView> = (0..count.min(most))
        .map(|n| {
            let row = &chart.rows[place(n)];
            let cells =
                (0..chart.columns.len()).map(|column| cell(column, chart.cell(row, column)));
            let cells: Vec<AnyView> = cells.collect();
            el("tr").child(cells).view()
        })
        .collect();
    let title = chart.title.clone();
    let name = say!("{title}, table", title);
    el("div")
        .class("chart-table")
        .set("role", "region")
        .set("tabindex", "0")
        .set("aria-label", name)
        .child(
            el("table")
                .child(el("caption").child(title))
                .child(el("thead").child(el("tr").child(head)))
                .child(el("tbody").child(rows)),
        )
        .view()
}

fn head(name: &str) -> AnyView {
    el("th").set("scope", "col").child(name.to_owned()).view()
}

fn cell(column: usize, words: String) -> AnyView {
    if column == 0 {
        el("th").set("scope", "row").child(words).view()
    } else {
        el("td").child(words).view()
    }
}
