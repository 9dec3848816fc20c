//! All sheets, and the way to open one from a file.

use crate::sheet::{Sheet, unroll};
use crate::ui::kit::import_file;
use crate::ui::parts::{Row, button, counted, file_field, h1, page, quiet, rows, when};
use crate::ui::place::Place;
use crate::ui::programme::programme_section;
use crate::ui::stanchion::stanchion;
use leptos::prelude::*;

fn row(sheet: &Sheet) -> Row {
    let blocks = counted(sheet.blocks().count(), "block");
    let sets = counted(unroll(sheet).len(), "set");
    Row {
        href: Place::Sheet(sheet.id).href(),
        before: String::new(),
        strong: sheet.name.to_string(),
        after: format!("{blocks}, {sets}"),
    }
}

/// All sheets.
#[component]
pub fn SheetsPlace() -> impl IntoView {
    let app = stanchion();
    let sheets = app.of(|model| model.sheets.iter().map(row).collect::<Vec<_>>());
    let none = app.of(|model| model.sheets.is_empty());
    page(
        "sheets",
        vec![
            h1("Sheets"),
            when(none, || {
                quiet("No sheet yet. Write one, or open the file of whoever writes your sessions.")
            }),
            rows("sheet", sheets),
            button("wide", "write-sheet", "Write a sheet", move || {
                app.go(Place::Write(None))
            }),
            button("wide", "exercises-open", "Exercises", move || {
                app.go(Place::Exercises)
            }),
            programme_section(app),
            file_field("open-sheet", "Open a sheet from a file", move |event| {
                import_file(app, &event);
            }),
        ],
    )
}
