//! The lifter's settings, the look, and what this is.

use super::gear::show_kit_in;
use crate::device::{dom, prefs};
use crate::ui::model::Model;
use crate::ui::parts::{
    Mode, checked_field, choices, quiet, section, text, toggle, unit_choices, way, words,
};
use crate::ui::place::Place;
use crate::ui::stanchion::Stanchion;
use crate::units::{Load, Unit};
use leptos::prelude::*;

/// Preference: `dark`, `light`, or none to follow the phone.
const THEME: &str = "theme";

/// The look that was chosen; none follows the phone.
pub fn theme() -> Option<String> {
    prefs::get(THEME).flatten()
}

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
    let label = move || format!("body mass today, {}", unit.get());
    let mass = app.of(|model| {
        let mass = model.newest_body_mass();
        mass.map(|mass| mass.figure(model.unit()))
            .unwrap_or_default()
    });
    let wrong = RwSignal::new(None::<String>);
    let typed = move |text: String| match Load::parse_in(&text, unit.get_untracked()) {
        Ok(mass) if !mass.is_zero() => {
            wrong.set(None);
            app.keep_body_mass(mass);
        }
        Ok(_) => wrong.set(Some("a body mass is above 0".to_owned())),
        Err(error) => wrong.set(Some(error.to_string())),
    };
    let title = "Loads on screen in";
    let choose = Callback::new(move |unit| show_in(app, unit));
    section(
        None,
        title,
        vec![
            unit_choices(title, unit.into(), choose),
            quiet("What is stored keeps the unit it was typed in."),
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

/// Dark, light, or as the phone.
pub fn looks() -> AnyView {
    let chosen = RwSignal::new(theme());
    let choice = move |name: Option<&'static str>, words: &'static str| {
        let pressed = Signal::derive(move || chosen.get().as_deref() == name);
        let choose = move || {
            let name = name.map(str::to_owned);
            // What a preference cannot hold is chosen again next time; nothing else is lost.
            let _ = prefs::set(THEME, &name);
            dom::set_theme(name.as_deref());
            chosen.set(name);
        };
        let which = name.unwrap_or("phone");
        toggle(format!("look-{which}"), words, "", pressed, choose)
    };
    let inside = vec![
        choice(None, "as the phone"),
        choice(Some("dark"), "dark"),
        choice(Some("light"), "bright"),
    ];
    section(None, "Look", vec![choices("choices three", "Look", inside)])
}

/// What this is, and the caution again.
pub fn about() -> AnyView {
    section(
        None,
        concat!("Stanchion ", env!("CARGO_PKG_VERSION")),
        vec![
            quiet(
                "No server, no account: all of it is on this phone. The rest timer can only sound while this page is \
                 open; the screen is kept on for it.",
            ),
            way(Place::State.href(), "State of the app, for a report"),
            words(
                "caution",
                "Proposals come from rules and from what you logged; they cannot see you lift. Physicians, qualified \
                 coaches and the rules of your place come first. Stop at pain, dizziness or a tight chest.",
            ),
        ],
    )
}
