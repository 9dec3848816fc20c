//! A figure between two large buttons: less and more.

use leptos::prelude::*;

/// A figure that is stepped down and up.
#[component]
pub fn Stepper(
    /// What is stepped, for the names of the buttons ("rep", "load").
    #[prop(into)]
    what: String,
    /// Hook for tests and styles.
    part: &'static str,
    /// The figure.
    #[prop(into)]
    figure: Signal<String>,
    /// One step down; the button is off while this gives none.
    less: impl Fn() + 'static,
    /// One step up.
    more: impl Fn() + 'static,
) -> impl IntoView {
    view! {
        <div class="stepper" role="group" aria-label=what.clone() data-part=part>
            <button class="step" aria-label=format!("less {what}") data-part=format!("{part}-less") on:click=move |_| less()>
                "−"
            </button>
            <output class="stepper-figure" data-part=format!("{part}-figure")>{figure}</output>
            <button class="step" aria-label=format!("more {what}") data-part=format!("{part}-more") on:click=move |_| more()>
                "+"
            </button>
        </div>
    }
}
