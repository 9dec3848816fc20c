//! The one chart of the screen: a picture, a line that says one place of it, and the table that says all.

mod act;
mod face;
mod table;

use crate::charts::Chart;
use crate::ui::parts::{h2, text, when};
use crate::ui::seen::Seen;
use leptos::prelude::*;

/// What a chart on the screen hangs on.
#[derive(Clone, Copy)]
struct Shown {
    part: &'static str,
    chart: Seen<Chart>,
    /// The row whose place is said.
    at: RwSignal<usize>,
}

impl Shown {
    /// How many rows there are.
    fn rows(self) -> usize {
        self.chart.with(|chart| chart.rows.len())
    }
}

/// A chart under its title. `part` is its hook; those of what stands in it begin with the same.
///
/// With nothing to draw, title and what it is about are all that is shown.
pub fn chart(part: &'static str, chart: impl Into<Signal<Chart>>) -> AnyView {
    chart_of(part, chart.into())
}

fn chart_of(part: &'static str, chart: Signal<Chart>) -> AnyView {
    let chart = Seen::new(move || chart.get());
    let shown = Shown {
        part,
        chart,
        at: RwSignal::new(0),
    };
    // Whatever is drawn anew, its newest place is said first.
    Effect::new(move |_| shown.at.set(shown.rows().saturating_sub(1)));
    let some = Signal::derive(move || chart.with(|chart| !chart.is_empty()));
    let title = text(move || chart.with(|chart| chart.title.clone()));
    let about = text(move || chart.with(|chart| chart.about.clone()));
    let inside = vec![
        h2(title),
        view! { <p class="quiet" id=format!("{part}-about")>{move || about.get()}</p> }.into_any(),
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
    view! { <section class="chart" aria-label=title data-part=part>{inside}</section> }.into_any()
}
