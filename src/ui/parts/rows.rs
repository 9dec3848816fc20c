//! Rows of text that lead somewhere, or open something.

use super::element::el;
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
    let before =
        (!row.before.is_empty()).then(|| el("span").class("row-date").child(row.before).view());
    el("a")
        .class("row")
        .set("href", row.href)
        .part(part)
        .child(before)
        .child(el("strong").child(row.strong))
        .child(el("span").class("quiet").child(row.after))
        .view()
}

/// A row that opens a panel.
pub fn row_opener(
    part: &'static str,
    strong: String,
    after: String,
    open: Callback<()>,
) -> AnyView {
    el("button")
        .class("row")
        .part(part)
        .set("aria-haspopup", "dialog")
        .on_tap(open)
        .child(el("strong").child(strong))
        .child(el("span").class("quiet").child(after))
        .view()
}

/// A line that leads somewhere.
pub fn way(href: String, words: &'static str) -> AnyView {
    el("p").child(el("a").set("href", href).child(words)).view()
}
