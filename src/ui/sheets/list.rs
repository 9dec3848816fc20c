//! All sheets, and the way to open one from a file.

use super::time::about;
use crate::draft::Draft;
use crate::ledger::Pace;
use crate::say;
use crate::sheet::{Sheet, unroll};
use crate::ui::away::open_sheet_file;
use crate::ui::parts::{Row, button, dynamic, file_field, h1, page, quiet, rows, when};
use crate::ui::place::Place;
use crate::ui::programme::programme_section;
use crate::ui::stanchion::{Stanchion, stanchion};
use crate::words::{many, t};
use leptos::prelude::*;

fn row(sheet: &Sheet, pace: Pace) -> Row {
    let blocks = blocks(sheet);
    let sets = many(unroll(sheet).len(), "{n} set", "{n} sets");
    Row {
        href: Place::Sheet(sheet.id).href(),
        before: whose(sheet),
        strong: sheet.name.to_string(),
        after: format!("{blocks}, {sets}, {}", about(sheet, pace)),
    }
}

/// How many blocks are on it.
fn blocks(sheet: &Sheet) -> String {
    many(sheet.blocks().count(), "{n} block", "{n} blocks")
}

/// For whom it is, where that is somebody else.
fn whose(sheet: &Sheet) -> String {
    let whom = sheet.written_for.as_ref();
    whom.map_or_else(String::new, |whom| say!("for {whom}", whom))
}

/// A sheet that was begun and not yet kept.
fn draft_row(draft: &Draft) -> Row {
    let sheet = draft.sheet();
    Row {
        href: Place::Draft(sheet.id).href(),
        before: say!("being written {whose}", whose = whose(sheet)),
        strong: sheet.name.to_string(),
        after: blocks(sheet),
    }
}

/// The sheet that was removed last, and the way to bring it back.
fn removed(app: Stanchion) -> AnyView {
    let name = app.of(|model| model.removed.as_ref().map(|sheet| sheet.name.to_string()));
    dynamic(move || match name.get() {
        None => ().into_any(),
        Some(name) => button(
            "wide",
            "bring-back",
            say!("Undo: bring {name} back", name),
            move || app.bring_back(),
        ),
    })
}

/// All sheets.
pub fn sheets_place() -> AnyView {
    let app = stanchion();
    let begun = app.of(|model| {
        let drafts = model.drafts.values().filter(|draft| draft.is_changed());
        drafts.map(draft_row).collect::<Vec<_>>()
    });
    let sheets = app.of(|model| {
        let pace = model.pace();
        let sheets = model.sheets.iter();
        sheets.map(|sheet| row(sheet, pace)).collect::<Vec<_>>()
    });
    let none = app.of(|model| model.sheets.is_empty());
    page(
        "sheets",
        vec![
            h1(t("Sheets")),
            when(none, || {
                quiet(t(
                    "No sheet yet. Write one, or open the file of whoever writes your sessions.",
                ))
            }),
            rows("sheet", sheets),
            removed(app),
            rows("draft-begun", begun),
            button(
                "wide strong",
                "write-sheet",
                t("Write a sheet"),
                move || {
                    app.begin_draft();
                },
            ),
            button("wide", "write-lines", t("Write one as lines"), move || {
                app.go(Place::Write(None))
            }),
            button("wide", "exercises-open", t("Exercises"), move || {
                app.go(Place::Exercises)
            }),
            programme_section(app),
            file_field("open-sheet", t("Open a sheet from a file"), move |event| {
                open_sheet_file(app, &event);
            }),
        ],
    )
}
