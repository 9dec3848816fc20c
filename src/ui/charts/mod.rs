//! The one chart of the screen: a picture, a line that says one place of it, and the table that says all.

mod act;
mod face;
mod period;
mod table;

pub use period::periods;

use crate::charts::Chart;
use crate::ui::live::Live;
use crate::ui::parts::{el, h2, text, when};
use crate::ui::seen::{Seen, whenever};
use leptos::prelude::*;
use std::sync::atomic::AtomicUsize;
use std::sync::atomic::Ordering::Relaxed;

/// What a chart on the screen depends on.
#[derive(Clone, Copy)]
struct Shown {
    part: &'static str,
    /// Tells the ids of this chart from those of others: several may have one hook.
    number: usize,
    chart: Seen<Chart>,
    /// The row whose place is said.
    at: Live<usize>,
}

/// How many charts were shown since the page was opened.
static CHARTS: AtomicUsize = AtomicUsize::new(0);

impl Shown {
    /// The id of the words that say what is to be seen.
    fn about_id(self) -> String {
        format!("chart-{}-about", self.number)
    }

    /// The id of the picture's place.
    fn face_id(self) -> String {
        format!("chart-{}-face", self.number)
    }

    /// How many rows there are.
    fn rows(self) -> usize {
        self.chart.with(|chart| chart.rows.len())
    }
}

/// A chart under its title. `part` is its hook; those of what stands in it begin with the same.
///
/// With nothing to draw, title and what it is about are all that is shown.
pub fn chart(part: &'static str, chart: impl Into<Seen<Chart>>) -> AnyView {
    chart_of(part, chart.into())
}

fn chart_of(part: &'static str, chart: Seen<Chart>) -> AnyView {
    let chart = Seen::new(move || chart.get());
    let shown = Shown {
        part,
        number: CHARTS.fetch_add(1, Relaxed),
        chart,
        at: Live::new(chart.with_untracked(last)),
    };
    // Whatever is redrawn, its newest place is said first.
    whenever(move || shown.at.set(chart.with(last)));
    let some = Seen::new(move || chart.with(|chart| !chart.is_empty()));
    let title = text(move || chart.with(|chart| chart.title.clone()));
    let about = text(move || chart.with(|chart| chart.about.clone()));
    let inside = vec![
        h2(title),
        el("p")
            .class("quiet")
            .set("id", shown.about_id())
            .text(about)
            .view(),
        when(some, move || {
            vec![
                face::face(shown),
                face::key(shown),
                face::stepping(shown),
                act::acts(shown),
            ]
            .into_any()
        }),
    ];
    el("section")
        .class("chart")
        .follow("aria-label", move || title.get())
        .part(part)
        .child(inside)
        .view()
}

/// The place of the last row.
fn last(chart: &Chart) -> usize {
    chart.rows.len().saturating_sub(1)
}
