//! Lists of things in the kit: a row that can be taken away, and fields that add one.

use leptos::prelude::*;

/// One thing, with a button that takes it away.
#[component]
pub fn Row(
    /// What it is.
    text: String,
    /// Takes it away.
    remove: impl Fn() + 'static,
) -> impl IntoView {
    view! {
        <li class="kit-row">
            <span>{text.clone()}</span>
            <button class="plain" aria-label=format!("take away {text}") data-part="remove" on:click=move |_| remove()>
                "take away"
            </button>
        </li>
    }
}

/// Fields for a new thing, and the button that adds it.
#[component]
pub fn Adder(
    /// What is added, for names and hooks.
    part: &'static str,
    /// Names of the fields.
    fields: Vec<&'static str>,
    /// Adds it, or says why not; then the fields stay as they are.
    add: impl Fn(Vec<String>) -> Result<(), String> + 'static,
) -> impl IntoView {
    let values: Vec<RwSignal<String>> = fields
        .iter()
        .map(|_| RwSignal::new(String::new()))
        .collect();
    let wrong = RwSignal::new(None::<String>);
    let inputs = fields
        .iter()
        .zip(values.clone())
        .map(|(field, value)| {
            view! {
                <label class="field">
                    <span>{*field}</span>
                    <input
                        type="text"
                        autocomplete="off"
                        inputmode=if matches!(*field, "name" | "label") { "text" } else { "decimal" }
                        data-part=format!("{part}-{}", field.split(' ').next().unwrap_or(field))
                        prop:value=move || value.get()
                        on:input=move |event| value.set(event_target_value(&event))
                    />
                </label>
            }
        })
        .collect_view();
    view! {
        <details class="adder">
            <summary data-part=format!("{part}-new")>{format!("Add a {part}")}</summary>
            <div class="adder-fields">{inputs}</div>
            <p class="wrong-word" role="alert">{move || wrong.get()}</p>
            <button
                class="wide"
                data-part=format!("{part}-add")
                on:click=move |_| match add(values.iter().map(|value| value.get_untracked()).collect()) {
                    Ok(()) => {
                        wrong.set(None);
                        for value in &values {
                            value.set(String::new());
                        }
                    }
                    Err(why) => wrong.set(Some(why)),
                }
            >
                "Add"
            </button>
        </details>
    }
}
