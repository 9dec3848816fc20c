//! The table behind the picture: the same, to be read and heard.

use super::Shown;
use crate::charts::{Chart, Grain};
use crate::say;
use crate::ui::live::Live;
use crate::ui::parts::{self, button, dynamic, when};
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
    let heads = chart
        .columns
        .iter()
        .map(|column| column.name.clone())
        .collect();
    let newest_first = matches!(chart.x.grain, Grain::Days | Grain::Weeks);
    let count = chart.rows.len();
    let place = |n: usize| if newest_first { count - 1 - n } else { n };
    let rows = (0..count.min(most)).map(|n| {
        let row = &chart.rows[place(n)];
        let cells = (0..chart.columns.len()).map(|column| chart.cell(row, column));
        cells.collect()
    });
    let title = chart.title.clone();
    let name = say!("{title}, table", title);
    parts::table_of("chart-table", None, name, title, heads, rows.collect())
}
