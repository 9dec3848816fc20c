//! The first start: unit, body mass if one likes, the usual caution once, and two sheets to begin with.

use super::stanchion::stanchion;
use crate::kit::Kit;
use crate::store::demo;
use crate::ui::model::Stage;
use crate::units::{Load, Unit};
use leptos::prelude::*;

/// The first start.
#[component]
pub fn Welcome() -> impl IntoView {
    let app = stanchion();
    let unit = RwSignal::new(Unit::Kg);
    let body = RwSignal::new(String::new());
    let wrong = RwSignal::new(None::<String>);
    let open = move |with_demo: bool| {
        let mass = match body.get_untracked().trim() {
            "" => None,
            typed => match Load::parse_in(typed, unit.get_untracked()) {
                Ok(mass) if !mass.is_zero() => Some(mass),
                Ok(_) => {
                    wrong.set(Some(
                        "a body mass of 0 is none: leave the field empty".to_owned(),
                    ));
                    return;
                }
                Err(error) => {
                    wrong.set(Some(error.to_string()));
                    return;
                }
            },
        };
        app.keep_lifter(unit.get_untracked());
        app.keep_kit(Kit::starter(unit.get_untracked()));
        if let Some(mass) = mass {
            app.keep_body_mass(mass);
        }
        if with_demo {
            for sheet in demo().current_sheets() {
                app.keep_sheet(sheet.clone());
            }
        }
        app.model.update(|model| model.stage = Stage::Open);
    };
    let choice = move |this: Unit, words: &'static str| {
        view! {
            <button
                class="choice"
                data-part=format!("unit-{this}")
                aria-pressed=move || (unit.get() == this).to_string()
                on:click=move |_| unit.set(this)
            >
                {words}
            </button>
        }
    };
    view! {
        <main class="page welcome" data-part="welcome">
            <h1>"Stanchion"</h1>
            <p>"A training log for the phone on your rack. It works without a network, and what you log stays with you."</p>
            <h2 id="unit-title">"Loads in"</h2>
            <div class="choices two" role="group" aria-labelledby="unit-title">
                {choice(Unit::Kg, "kilograms")}
                {choice(Unit::Lb, "pounds")}
            </div>
            <label class="field">
                <span>{move || format!("body mass in {}, if you like", unit.get())}</span>
                <input
                    type="text"
                    inputmode="decimal"
                    autocomplete="off"
                    data-part="body-mass"
                    aria-describedby="welcome-wrong"
                    prop:value=move || body.get()
                    on:input=move |event| body.set(event_target_value(&event))
                />
            </label>
            <p class="wrong-word" id="welcome-wrong" role="alert">{move || wrong.get()}</p>
            <section class="caution-box" data-part="caution">
                <h2>"Before you lift"</h2>
                <p>
                    "Ask a physician first if you have a heart, blood-pressure or joint trouble, are pregnant, were
                    injured or operated on lately, take medicine that bears on effort, or have not trained for long. Learn heavy lifts from a
                    qualified coach. Alone, use safety bars or lift only what you can put down. Stop at pain, dizziness or
                    a tight chest, and get help. Rules of your place and the word of your physician come before
                    anything written here."
                </p>
            </section>
            <button class="wide strong" data-part="welcome-open" on:click=move |_| open(true)>
                "Understood, open with two sheets to try"
            </button>
            <button class="plain" data-part="welcome-skip" on:click=move |_| open(false)>
                "Understood, open without sheets"
            </button>
        </main>
    }
}
