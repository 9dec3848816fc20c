//! A year at a glance.

use crate::device::clock;
use crate::ledger::Heading;
use crate::pictures::{self, Peg};
use crate::ui::charts::chart;
use crate::ui::live::Live;
use crate::ui::model::Model;
use crate::ui::parts::{
    Turn, Ways, button, choices, dynamic, group, h1, leads, line, page, stretch_head, text,
    toggles_of, way,
};
use crate::ui::place::Place;
use crate::ui::reading::headings_between;
use crate::ui::seen::Seen;
use crate::ui::stanchion::stanchion;
use crate::words::t;
use chrono::{Datelike, NaiveDate};
use leptos::prelude::*;
use leptos::task::spawn_local;

/// A year.
pub fn year_place(year: i32) -> AnyView {
    let app = stanchion();
    let read = Live::new(None::<Result<Vec<Heading>, ()>>);
    let reading = move || {
        let keep = app.keep();
        let first = NaiveDate::from_ymd_opt(year, 1, 1).unwrap_or(NaiveDate::MIN);
        let last = NaiveDate::from_ymd_opt(year, 12, 31).unwrap_or(NaiveDate::MAX);
        spawn_local(async move {
            let found = headings_between(&keep, first, last).await;
            let found = found.map_err(|error| app.complain(error.to_string()));
            // Whoever has left the page by now gets no notice.
            read.set(Some(found));
        });
    };
    reading();
    let peg = Live::new(Peg::Minutes);
    let unit = app.of(Model::unit);
    let picture = Seen::new(move || {
        read.with(|read| match read {
            Some(Ok(headings)) => pictures::year(headings, year, peg.get(), unit.get()),
            _ => Default::default(),
        })
    });
    let state = Seen::new(move || read.with(|read| read.as_ref().map(Result::is_ok)));
    let at = Seen::new(move || {
        let found = (0..).zip(Peg::ALL).find(|(_, one)| *one == peg.get());
        found.map(|(n, _)| n)
    });
    let labels = Peg::ALL.map(|peg| (peg.name().to_owned(), ""));
    let pegs = toggles_of("year-peg", labels, at, move |n| {
        let found = usize::try_from(n).ok().and_then(|n| Peg::ALL.get(n));
        if let Some(found) = found {
            peg.set(*found);
        }
    });
    let this = clock::wall().year();
    let ways = Ways {
        before: leads("year-before", t("year before")),
        now: leads("year-now", t("This year")),
        after: leads("year-after", t("year after")),
    };
    let turned = stretch_head(
        "year-name",
        text(move || year.to_string()),
        Seen::new(move || year != this),
        ways,
        move |to| {
            app.go(Place::Year(match to {
                Turn::Before => (year - 1).max(1),
                Turn::Now => this,
                // What is to come is not written yet.
                Turn::After => (year + 1).min(this.max(year)),
            }))
        },
    );
    page(
        "year",
        vec![
            way(Place::Ledger.href(), t("Ledger")),
            h1(t("Year")),
            turned,
            choices("choices three", t("length of a peg"), pegs),
            dynamic(move || match state.get() {
                None => line("quiet", "year-reading", t("Reading the year.")),
                Some(false) => {
                    let words =
                        t("The year could not be read. Nothing is lost by that: try once more.");
                    let said = line("wrong-word", "year-failed", words);
                    group(
                        None,
                        vec![said, button("wide", "year-again", t("Read again"), reading)],
                    )
                }
                Some(true) => chart("year-chart", picture),
            }),
        ],
    )
}
