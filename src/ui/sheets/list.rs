//! All sheets, and the way to open one from a file.

use crate::ui::kit::import_file;
use crate::ui::place::Place;
use crate::ui::stanchion::stanchion;
use leptos::prelude::*;

/// All sheets.
#[component]
pub fn SheetsPlace() -> impl IntoView {
    let app = stanchion();
    let sheets = app.of(|model| model.sheets.clone());
    view! {
        <div class="page" data-part="sheets">
            <h1>"Sheets"</h1>
            <Show when=move || sheets.with(Vec::is_empty)>
                <p class="quiet">"No sheet yet. A sheet comes as a file from whoever writes your sessions."</p>
            </Show>
            <ul class="rows">
                {move || sheets.get().into_iter().map(|sheet| {
                    let blocks = sheet.blocks().count();
                    let sets = crate::sheet::unroll(&sheet).len();
                    view! {
                        <li>
                            <a class="row" href=Place::Sheet(sheet.id).href() data-part="sheet">
                                <strong>{sheet.name.to_string()}</strong>
                                <span class="quiet">{format!("{blocks} blocks, {sets} sets")}</span>
                            </a>
                        </li>
                    }
                }).collect_view()}
            </ul>
            <label class="file wide">
                <span>"Open a sheet from a file"</span>
                <input
                    type="file"
                    accept=".json,application/json,text/plain"
                    data-part="open-sheet"
                    on:change=move |event| import_file(app, &event)
                />
            </label>
        </div>
    }
}
