//! Rows of text that lead somewhere, or open something.

use super::frames::{dynamic, list};
use crate::ui::seen::Seen;
use leptos::prelude::*;

/// A row that leads somewhere.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    /// Address it leads to.
    pub href: String,
    /// Quiet words before the name; empty for none.
    pub before: String,
    /// The name.
    pub strong: String,
    /// Quiet words after the name.
    pub after: String,
}

/// A list of rows that follows what it is made of.
pub fn rows(part: &'static str, rows: impl Into<Seen<Vec<Row>>>) -> AnyView {
    rows_of(part, rows.into())
}

fn rows_of(part: &'static str, rows: Seen<Vec<Row>>) -> AnyView {
    dynamic(move || {
        let items = rows.get().into_iter().map(|row| row_link(part, row));
        list("rows", None, items.collect())
    })
}

fn row_link(part: &'static str, row: Row) -> AnyView {
    let before = (!row.before.is_empty())
        .then(|| view! { <span class="row-date">{row.before}</span> }.into_any());
    view! {
        <a class="row" href=row.href data-part=part>
            {before}
            <strong>{row.strong}</strong>
            <span class="quiet">{row.after}</span>
        </a>
    }
    .into_any()
}

/// A row that opens a panel.
pub fn row_opener(
    part: &'static str,
    strong: String,
    after: String,
    open: Callback<()>,
) -> AnyView {
    view! {
        <button class="row" data-part=part aria-haspopup="dialog" on:click=move |_| open.run(())>
            <strong>{strong}</strong>
            <span class="quiet">{after}</span>
        </button>
    }
    .into_any()
}

/// A line that leads somewhere.
pub fn way(href: String, words: &'static str) -> AnyView {
    view! { <p><a href=href>{words}</a></p> }.into_any()
}
