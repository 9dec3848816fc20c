//! The lifter's settings, the look, and what this is.

use crate::device::{dom, prefs};
use crate::ui::model::Model;
use crate::ui::stanchion::stanchion;
use crate::units::{Load, Unit};
use leptos::prelude::*;

/// Preference: `dark`, `light`, or none to follow the phone.
const THEME: &str = "theme";

/// The look that was chosen; none follows the phone.
pub fn theme() -> Option<String> {
    prefs::get(THEME).flatten()
}

/// Unit and body mass.
#[component]
pub fn Lifter() -> impl IntoView {
    let app = stanchion();
    let unit = app.of(Model::unit);
    let mass = app.of(Model::newest_body_mass);
    let wrong = RwSignal::new(None::<String>);
    let choice = move |this: Unit, words: &'static str| {
        view! {
            <button
                class="choice"
                data-part=format!("unit-{this}")
                aria-pressed=move || (unit.get() == this).to_string()
                on:click=move |_| app.keep_lifter(this)
            >
                {words}
            </button>
        }
    };
    let typed = move |text: String| match Load::parse_in(&text, unit.get_untracked()) {
        Ok(mass) if !mass.is_zero() => {
            wrong.set(None);
            app.keep_body_mass(mass);
        }
        Ok(_) => wrong.set(Some("a body mass is above 0".to_owned())),
        Err(error) => wrong.set(Some(error.to_string())),
    };
    view! {
        <section class="group">
            <h2 id="kit-unit">"Loads on screen in"</h2>
            <div class="choices two" role="group" aria-labelledby="kit-unit">
                {choice(Unit::Kg, "kilograms")}
                {choice(Unit::Lb, "pounds")}
            </div>
            <p class="quiet">"What is stored keeps the unit it was typed in."</p>
            <label class="field">
                <span>{move || format!("body mass today, {}", unit.get())}</span>
                <input
                    type="text"
                    inputmode="decimal"
                    autocomplete="off"
                    data-part="body-mass"
                    prop:value=move || mass.get().map(|mass| mass.figure(unit.get())).unwrap_or_default()
                    on:change=move |event| typed(event_target_value(&event))
                />
            </label>
            <p class="wrong-word" role="alert">{move || wrong.get()}</p>
        </section>
    }
}

/// Dark, light, or as the phone.
#[component]
pub fn Looks() -> impl IntoView {
    let chosen = RwSignal::new(theme());
    let choose = move |name: Option<&'static str>| {
        let name = name.map(str::to_owned);
        // What a preference cannot hold is chosen again next time; nothing else is lost.
        let _ = prefs::set(THEME, &name);
        dom::set_theme(name.as_deref());
        chosen.set(name);
    };
    let choice = move |name: Option<&'static str>, words: &'static str| {
        view! {
            <button
                class="choice"
                data-part=format!("look-{}", name.unwrap_or("phone"))
                aria-pressed=move || (chosen.get().as_deref() == name).to_string()
                on:click=move |_| choose(name)
            >
                {words}
            </button>
        }
    };
    view! {
        <section class="group">
            <h2 id="kit-look">"Look"</h2>
            <div class="choices three" role="group" aria-labelledby="kit-look">
                {choice(None, "as the phone")}
                {choice(Some("dark"), "dark")}
                {choice(Some("light"), "bright")}
            </div>
        </section>
    }
}

/// What this is, and the caution again.
#[component]
pub fn About() -> impl IntoView {
    view! {
        <section class="group">
            <h2>"Stanchion "{env!("CARGO_PKG_VERSION")}</h2>
            <p class="quiet">
                "No server, no account: all of it is on this phone. The rest timer can only sound while this page is open;
                the screen is kept on for it."
            </p>
            <p class="caution">
                "Proposals come from rules and from what you logged; they cannot see you lift. Physicians, qualified
                coaches and the rules of your place come first. Stop at pain, dizziness or a tight chest."
            </p>
        </section>
    }
}
