//! The ledger: the ways to its pictures, and the sessions as a list or as a calendar.

use super::calendar::calendar_view;
use super::list::list_view;
use crate::device::clock;
use crate::ui::away::{bring_sessions_back, nudge};
use crate::ui::coach::doors;
use crate::ui::parts::{
    button, choices, dynamic, el, group, h1, line, page, quiet, text, toggles_of, when,
};
use crate::ui::place::Place;
use crate::ui::seen::Seen;
use crate::ui::stanchion::{Stanchion, stanchion};
use crate::words::{many, t};
use chrono::Datelike;
use leptos::prelude::*;

/// The sessions that were removed last, and the way back.
fn removed(app: Stanchion) -> AnyView {
    let gone = app.of(|model| model.gone.len());
    let some = Seen::new(move || gone.get() > 0);
    when(some, move || {
        let said = text(move || many(gone.get(), "{n} session removed.", "{n} sessions removed."));
        let back = button("plain", "session-back", t("Undo"), move || {
            bring_sessions_back(app)
        });
        group(Some("sessions-gone"), vec![quiet(said), back])
    })
}

/// The ways to what is made of the sessions.
fn ways() -> AnyView {
    let links = vec![
        way_of(Place::Weeks, "ledger-weeks", t("Weeks")),
        way_of(Place::Histories, "ledger-exercises", t("Exercises")),
        way_of(Place::Year(clock::wall().year()), "ledger-year", t("Year")),
        way_of(Place::Body, "ledger-body", t("Body")),
        way_of(Place::Report, "ledger-report", t("Report")),
    ];
    el("nav")
        .class("ways")
        .part("ledger-pictures")
        .set("aria-label", t("Of the ledger"))
        .child(links)
        .view()
}

fn way_of(place: Place, part: &'static str, words: &'static str) -> AnyView {
    el("a")
        .class("way")
        .set("href", place.href())
        .part(part)
        .child(words)
        .view()
}

/// All sessions.
pub fn ledger_place() -> AnyView {
    let app = stanchion();
    let none = app.of(|model| model.headings.is_empty());
    let as_calendar = app.of(|model| model.back.calendar);
    let pressed = Seen::new(move || Some(i64::from(as_calendar.get())));
    let kinds = move || {
        let labels = [t("List"), t("Calendar")].map(|label| (label.to_owned(), ""));
        toggles_of("ledger-as", labels, pressed, move |n| {
            app.model.update(|model| model.back.calendar = n == 1);
        })
    };
    let some = Seen::new(move || !none.get());
    page(
        "ledger",
        vec![
            h1(t("Ledger")),
            when(none, || {
                line(
                    "quiet",
                    "ledger-empty",
                    t("Nothing yet. What you do on the floor is written here, every set of it."),
                )
            }),
            removed(app),
            nudge(app),
            // Before the first session too: the body can be weighed.
            ways(),
            when(some, move || {
                let sessions = dynamic(move || {
                    if as_calendar.get() {
                        calendar_view(app)
                    } else {
                        list_view(app)
                    }
                });
                vec![choices("choices two", t("sessions as"), kinds()), sessions].into_any()
            }),
            doors(app),
        ],
    )
}
