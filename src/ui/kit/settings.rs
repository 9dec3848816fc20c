//! The lifter's settings, and what this is.

use super::gear::show_kit_in;
use crate::say;
use crate::ui::live::Live;
use crate::ui::model::Model;
use crate::ui::parts::{Mode, checked_field, quiet, section, text, unit_choices, way, words};
use crate::ui::place::Place;
use crate::ui::stanchion::Stanchion;
use crate::units::{Load, Unit};
use crate::words::t;
use leptos::prelude::*;

/// Shows loads in that unit from now on: those of sessions, and those that the kit makes.
pub fn show_in(app: Stanchion, unit: Unit) {
    let known = app.model.with_untracked(|model| {
        let lifter = model.lifter.as_ref();
        lifter.is_some_and(|lifter| lifter.unit == unit)
    });
    if !known {
        app.keep_lifter(unit);
    }
    show_kit_in(app, unit);
}

/// Unit and body mass.
pub fn lifter(app: Stanchion) -> AnyView {
    let unit = app.of(Model::unit);
    let label = move || say!("body mass today, {unit}", unit = unit.get());
    let mass = app.of(|model| {
        let mass = model.newest_body_mass();
        mass.map(|mass| mass.figure(model.unit()))
            .unwrap_or_default()
    });
    let wrong = Live::new(None::<String>);
    let typed = move |text: String| match Load::parse_in(&text, unit.get_untracked()) {
        Ok(mass) if !mass.is_zero() => {
            wrong.set(None);
            app.keep_body_mass(mass);
        }
        Ok(_) => wrong.set(Some(t("a body mass is above 0").to_owned())),
        Err(error) => wrong.set(Some(error.to_string())),
    };
    let title = t("Loads on screen in");
    let choose = Callback::new(move |unit| show_in(app, unit));
    section(
        None,
        title,
        vec![
            unit_choices(title, unit, choose),
            quiet(t("What is stored keeps the unit it was typed in.")),
            checked_field(
                "body-mass",
                Mode::Decimal,
                text(label),
                mass,
                false,
                typed,
                wrong,
            ),
        ],
    )
}

/// The way to those who train with this phone.
pub fn people() -> AnyView {
    section(
        None,
        t("Lifters"),
        vec![
            quiet(t(
                "Several can train with this phone, each with an own ledger and kit.",
            )),
            way(Place::Lifters.href(), t("Add or change lifters")),
        ],
    )
}

/// What this is, and the caution again.
pub fn about() -> AnyView {
    section(
        None,
        concat!("Stanchion ", env!("CARGO_PKG_VERSION")),
        vec![
            quiet(t(
                "No server, no account: all of it is on this phone. The rest timer can only sound while this page is \
                 open; the screen is kept on for it.",
            )),
            way(Place::State.href(), t("State of the app, for a report")),
            // The build writes it (xtask/src/notices.rs). In a page of its own: this one may have a session.
            view! {
                <p>
                    <a href="./licences.txt" target="_blank" rel="noopener" data-part="licences">
                        {t("What it is made of, with the licences (needs the network)")}
                    </a>
                </p>
            }
            .into_any(),
            words(
                "caution",
                t(
                    "Proposals come from rules and from what you logged; they cannot see you lift. Physicians, qualified \
                 coaches and the rules of your place come first. Stop at pain, dizziness or a tight chest.",
                ),
            ),
        ],
    )
}
