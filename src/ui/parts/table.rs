//! A table with its heads.

use super::el;
use super::element::Inside;
use leptos::prelude::*;

/// A table in a region that keys can scroll where it is wider than the page; the first cell of each row is its head.
pub fn table_of(
    class: &'static str,
    part: Option<&'static str>,
    name: String,
    caption: String,
    heads: Vec<String>,
    rows: Vec<Vec<String>>,
) -> AnyView {
    let heads: Vec<AnyView> = heads.into_iter().map(column_head).collect();
    let rows: Vec<AnyView> = rows.into_iter().map(table_row).collect();
    el("div")
        .class(class)
        .set("role", "region")
        .set("tabindex", "0")
        .set("aria-label", name)
        .part(part)
        .child(
            el("table")
                .child(el("caption").child(caption))
                .child(el("thead").child(el("tr").child(heads)))
                .child(el("tbody").child(rows)),
        )
        .view()
}

/// The head of a column.
pub fn column_head(name: impl Inside) -> AnyView {
    el("th").set("scope", "col").child(name).view()
}

/// A row; its first cell is its head.
pub fn table_row(cells: Vec<String>) -> AnyView {
    let mut cells = cells.into_iter();
    let first = cells.next().unwrap_or_default();
    let rest: Vec<AnyView> = cells.map(|cell| el("td").child(cell).view()).collect();
    el("tr")
        .child(el("th").set("scope", "row").child(first))
        .child(rest)
        .view()
}
