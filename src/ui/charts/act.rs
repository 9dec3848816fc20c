//! What can be done with a picture: read it as a table, keep or send it as SVG or as PNG.

use super::Shown;
use super::table::table;
use crate::charts::{file_stem, size_of, to_svg};
use crate::device::clock;
use crate::device::files::save_as;
use crate::device::picture::{NoPicture, save_png};
use crate::say;
use crate::ui::live::Live;
use crate::ui::parts::{button, el, text, when};
use crate::ui::stanchion::{Stanchion, stanchion};
use crate::units::iso_day;
use crate::words::t;
use leptos::prelude::*;
use leptos::task::spawn_local;

/// A saved picture has so many pixels a unit.
const PIXELS: i64 = 2;

/// The buttons under the picture, and what they open: the table, and the kinds of file.
pub fn acts(shown: Shown) -> AnyView {
    let app = stanchion();
    let part = shown.part;
    let table_open = Live::new(false);
    let kinds_open = Live::new(false);
    let label = text(move || {
        let open = table_open.get();
        let label = if open {
            t("Hide the table")
        } else {
            t("Show as a table")
        };
        label.to_owned()
    });
    let row = vec![
        button("plain", format!("{part}-table"), label, move || {
            table_open.update(|open| *open = !*open);
        }),
        button(
            "plain",
            format!("{part}-save"),
            t("Save the picture"),
            move || {
                kinds_open.update(|open| *open = !*open);
            },
        ),
        when(kinds_open, move || {
            let svg = button("plain", format!("{part}-svg"), t("as SVG"), move || {
                save(app, shown, false);
            });
            let png = button("plain", format!("{part}-png"), t("as PNG"), move || {
                save(app, shown, true);
            });
            vec![svg, png].into_any()
        }),
    ];
    vec![
        el("div").class("chart-acts").child(row).view(),
        table(shown, table_open),
    ]
    .into_any()
}

fn save(app: Stanchion, shown: Shown, pixels: bool) {
    let (svg, size, title) = shown
        .chart
        .with_untracked(|chart| (to_svg(chart), size_of(chart), chart.title.clone()));
    let stem = file_stem(&title, &iso_day(clock::wall()));
    spawn_local(async move {
        let (name, done) = if pixels {
            let name = format!("{stem}.png");
            let done = save_png(&name, &svg, size, PIXELS).await;
            (name, done)
        } else {
            let name = format!("{stem}.svg");
            let taken = save_as(&name, "image/svg+xml", &svg);
            (name, taken.then_some(()).ok_or(NoPicture::NotTaken))
        };
        match done {
            Ok(()) => app.say(say!("{name} is in your downloads.", name)),
            Err(why) => app.complain(why.to_string()),
        }
    });
}
