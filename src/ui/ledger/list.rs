//! All sessions by date.

use crate::ledger::Heading;
use crate::ui::model::Model;
use crate::ui::place::Place;
use crate::ui::stanchion::stanchion;
use crate::units::Unit;
use leptos::prelude::*;

/// The facts of a session in one line.
fn facts(heading: &Heading, unit: Unit) -> String {
    let mut facts = format!(
        "{} min · {} sets · {}",
        heading.minutes,
        heading.sets_done,
        heading.volume.shown(unit)
    );
    if let Some(rpe) = heading.rpe {
        facts.push_str(&format!(" · RPE {rpe}"));
    }
    facts
}

/// All sessions.
#[component]
pub fn LedgerPlace() -> impl IntoView {
    let app = stanchion();
    let headings = app.of(|model| model.headings.clone());
    let unit = app.of(Model::unit);
    view! {
        <div class="page" data-part="ledger">
            <h1>"Ledger"</h1>
            <Show when=move || headings.with(Vec::is_empty)>
                <p class="quiet" data-part="ledger-empty">
                    "Nothing yet. What you do on the floor is written here, every set of it."
                </p>
            </Show>
            <ul class="rows">
                {move || headings.get().into_iter().map(|heading| view! {
                    <li>
                        <a class="row" href=Place::Session(heading.session).href() data-part="session">
                            <span class="row-date">{heading.began.format("%a %-d %b %Y, %H:%M").to_string()}</span>
                            <strong>{heading.sheet.to_string()}</strong>
                            <span class="quiet">{facts(&heading, unit.get())}</span>
                        </a>
                    </li>
                }).collect_view()}
            </ul>
        </div>
    }
}
