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
    let rows = rows.into_iter().map(|cells| table_row(&heads, cells));
    let rows: Vec<AnyView> = rows.collect();
    let heads: Vec<AnyView> = heads.into_iter().map(column_head).collect();
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

/// A row; its first cell is its head. Each other one names the head of its column, where there is one, for a page that is
/// too narrow for columns.
pub fn table_row(heads: &[String], cells: Vec<String>) -> AnyView {
    let mut cells = cells.into_iter();
    let first = cells.next().unwrap_or_default();
    let rest = cells.enumerate().map(|(at, cell)| {
        let head = heads.get(at + 1).cloned();
        el("td").set("data-head", head).child(cell).view()
    });
    let rest: Vec<AnyView> = rest.collect();
    el("tr")
        .child(el("th").set("scope", "row").child(first))
        .child(rest)
        .view()
}
