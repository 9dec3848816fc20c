//! The programme among the sheets: what it says, and the way to write it.

use super::words::{light_said, plan_said};
use crate::device::clock;
use crate::ui::model::Model;
use crate::ui::parts::{button, dynamic, line, quiet, section, sure_button, words};
use crate::ui::place::Place;
use crate::ui::stanchion::Stanchion;
use crate::words::t;
use leptos::prelude::*;

/// Name, plan and light week of the programme that is followed.
fn said(model: &Model) -> Option<(String, String, Option<String>)> {
    let programme = model.programme()?;
    let light = programme.light.as_ref();
    Some((
        programme.name.to_string(),
        plan_said(model, &programme.plan),
        light.map(|light| light_said(light, clock::wall())),
    ))
}

/// The programme, or that there is none.
pub fn programme_section(app: Stanchion) -> AnyView {
    let programme = app.of(said);
    let write = move |label: &'static str| {
        button("wide", "programme-open", label, move || {
            app.go(Place::Programme)
        })
    };
    let inside = dynamic(move || match programme.get() {
        None => vec![
            quiet(t(
                "None. With one the floor offers the sheet that comes next.",
            )),
            write(t("Write a programme")),
        ]
        .into_any(),
        Some((name, plan, light)) => {
            let mut inside = vec![words("lines", name), line("", "programme-plan", plan)];
            inside.extend(light.map(quiet));
            inside.push(write(t("Change the programme")));
            inside.push(sure_button(
                "programme-remove",
                t("Remove the programme"),
                t("Yes, remove it; its sheets stay"),
                Callback::new(move |()| app.remove_programme()),
            ));
            inside.into_any()
        }
    });
    section(Some("programme"), t("Programme"), vec![inside])
}
