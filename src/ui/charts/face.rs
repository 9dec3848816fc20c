//! The picture itself, its key, and the way from place to place.

use super::Shown;
use crate::charts::{Drawing, Mark, Shape, class_of, key_path, keyed, lay_out, tenths_text};
use crate::device::{dom, events};
use crate::ui::live::Live;
use crate::ui::parts::{dynamic, el, svg, text};
use crate::ui::seen::{Seen, whenever};
use crate::words::t;
use leptos::ev::Event;
use leptos::prelude::*;

/// The picture, as wide as there is room. A tap on it leads to the nearest place.
pub fn face(shown: Shown) -> AnyView {
    // Nothing is drawn before the width is known.
    let width = Live::new(0);
    let measure = move || {
        if let Some(found) = dom::width_in_units(&shown.face_id()) {
            width.set(found);
        }
    };
    // Soon: then it stands in the page.
    whenever(measure);
    let resized = StoredValue::new_local(Some(events::on_resize(measure)));
    on_cleanup(move || resized.set_value(None));
    let drawing = Seen::new(move || shown.chart.with(|chart| lay_out(chart, width.get())));
    let tapped = move |event: Event| {
        let near = drawing.with_untracked(|drawing| {
            let place = dom::tenths_in(&event, drawing.width)?;
            let chart = shown.chart;
            chart.with_untracked(|chart| drawing.nearest(chart, place))
        });
        if let Some(near) = near {
            shown.at.set(near);
        }
    };
    let here = Seen::new(move || {
        let at = shown.at.get();
        let found = shown.chart.with(|chart| {
            let row = chart.rows.get(at)?;
            Some(drawing.with(|drawing| drawing.here(row)))
        });
        found.unwrap_or_default()
    });
    let picture = dynamic(move || {
        if width.get() == 0 {
            ().into_any()
        } else {
            drawing.with(|drawing| picture(shown, drawing, here))
        }
    });
    el("div")
        .class("chart-face")
        .set("id", shown.face_id())
        .on("click", tapped)
        .child(picture)
        .view()
}

fn picture(shown: Shown, drawing: &Drawing, here: Seen<String>) -> AnyView {
    let strokes = drawing.strokes.iter();
    let strokes: Vec<AnyView> = strokes
        .map(|stroke| stroke_of(stroke.class.clone(), stroke.path.clone()))
        .collect();
    let words = drawing.words.iter().map(|words| {
        svg("text")
            .set("x", tenths_text(words.x))
            .set("y", tenths_text(words.y))
            .set("text-anchor", words.anchor)
            .child(words.words.clone())
            .view()
    });
    let words: Vec<AnyView> = words.collect();
    let title = shown.chart.with_untracked(|chart| chart.title.clone());
    svg("svg")
        .class("chart-picture")
        .set("role", "img")
        .set("aria-label", title)
        .set("aria-describedby", shown.about_id())
        .set(
            "viewBox",
            format!("0 0 {} {}", drawing.width, drawing.height),
        )
        .child(strokes)
        .child(
            svg("path")
                .class("chart-here")
                .follow("d", move || here.get()),
        )
        .child(words)
        .view()
}

fn stroke_of(class: String, path: String) -> AnyView {
    svg("path").class(class).set("d", path).view()
}

/// What each mark is, where the title does not say it.
pub fn key(shown: Shown) -> AnyView {
    dynamic(move || {
        let entries = shown
            .chart
            .with(|chart| keyed(chart).into_iter().map(entry).collect::<Vec<_>>());
        el("ul").class("chart-key").child(entries).view()
    })
}

fn entry(mark: &Mark) -> AnyView {
    let path = key_path(mark, (80, 80));
    let mut piece = vec![stroke_of(class_of(mark), path.clone())];
    if mark.shape == Shape::Rings {
        piece.push(stroke_of("mark-hole".to_owned(), path));
    }
    el("li")
        .child(
            svg("svg")
                .class("chart-picture")
                .set("aria-hidden", "true")
                .set("viewBox", "0 0 20 16")
                .child(piece),
        )
        .child(mark.name.clone())
        .view()
}

/// A slider through the places, and the line that says the one that is chosen.
pub fn stepping(shown: Shown) -> AnyView {
    let said = text(move || {
        let at = shown.at.get();
        let said = shown.chart.with(|chart| {
            let row = chart.rows.get(at)?;
            Some(chart.line(row))
        });
        said.unwrap_or_default()
    });
    let first = move || {
        let at = shown.at.get();
        let said = shown.chart.with(|chart| {
            let row = chart.rows.get(at)?;
            Some(chart.cell(row, 0))
        });
        said.unwrap_or_default()
    };
    let moved = move |event: Event| {
        if let Ok(at) = event_target_value(&event).parse() {
            shown.at.set(at);
        }
    };
    let last = move || shown.rows().saturating_sub(1).to_string();
    let slider = el("input")
        .class("chart-slider")
        .set("type", "range")
        .set("min", "0")
        .follow("max", last)
        .set("step", "1")
        .set("aria-label", t("place in the picture"))
        .follow("aria-valuetext", first)
        .part(format!("{}-step", shown.part))
        .value(move || shown.at.get().to_string())
        .on("input", moved);
    vec![
        slider.into_any(),
        el("p")
            .class("chart-says")
            .set("role", "status")
            .part(format!("{}-says", shown.part))
            .text(said)
            .view(),
    ]
    .into_any()
}
