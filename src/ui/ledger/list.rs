//! All sessions by date.

use crate::ledger::Heading;
use crate::ui::away::{bring_sessions_back, nudge};
use crate::ui::coach::doors;
use crate::ui::parts::{Row, button, counted, group, h1, line, page, quiet, rows, text, when};
use crate::ui::place::Place;
use crate::ui::stanchion::{Stanchion, stanchion};
use crate::units::{Unit, day_and_time};
use leptos::prelude::*;

/// The facts of a session in one line.
fn facts(heading: &Heading, unit: Unit) -> String {
    let mut facts = format!(
        "{} min · {} · {}",
        heading.minutes,
        counted(heading.sets_done as usize, "set"),
        heading.volume.shown(unit)
    );
    if let Some(rpe) = heading.rpe {
        facts.push_str(&format!(" · RPE {rpe}"));
    }
    facts
}

fn row(heading: &Heading, unit: Unit) -> Row {
    Row {
        href: Place::Session(heading.session).href(),
        before: day_and_time(heading.began),
        strong: heading.sheet.to_string(),
        after: facts(heading, unit),
    }
}

/// The sessions that were removed last, and the way back.
fn removed(app: Stanchion) -> AnyView {
    let gone = app.of(|model| model.gone.len());
    let some = Signal::derive(move || gone.get() > 0);
    when(some, move || {
        let said = text(move || format!("{} removed.", counted(gone.get(), "session")));
        let back = button("plain", "session-back", "Undo", move || {
            bring_sessions_back(app)
        });
        group(Some("sessions-gone"), vec![quiet(said), back])
    })
}

/// All sessions.
#[component]
pub fn LedgerPlace() -> impl IntoView {
    let app = stanchion();
    let sessions = app.of(|model| {
        let unit = model.unit();
        let headings = model.headings.iter();
        headings
            .map(|heading| row(heading, unit))
            .collect::<Vec<_>>()
    });
    let none = app.of(|model| model.headings.is_empty());
    page(
        "ledger",
        vec![
            h1("Ledger"),
            when(none, || {
                line(
                    "quiet",
                    "ledger-empty",
                    "Nothing yet. What you do on the floor is written here, every set of it.",
                )
            }),
            removed(app),
            nudge(app),
            rows("session", sessions),
            doors(app),
        ],
    )
}
