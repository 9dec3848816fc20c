//! Buttons, choices and fields.

use super::Text;
use leptos::ev::Event;
use leptos::prelude::*;

/// A button with anything inside. `name` is its accessible name where its text does not say it all.
pub fn tap(
    class: &'static str,
    part: impl Into<String>,
    name: Option<Text>,
    inside: AnyView,
    on_tap: Callback<()>,
) -> AnyView {
    button_of(class, part.into(), name, inside, on_tap)
}

fn button_of(
    class: &'static str,
    part: String,
    name: Option<Text>,
    inside: AnyView,
    on_tap: Callback<()>,
) -> AnyView {
    view! {
        <button
            class=class
            data-part=part
            aria-label=move || name.map(|name| name.get())
            on:click=move |_| on_tap.run(())
        >
            {inside}
        </button>
    }
    .into_any()
}

/// A button with a text.
pub fn button(
    class: &'static str,
    part: impl Into<String>,
    label: impl Into<Text>,
    on_tap: impl Fn() + Send + Sync + 'static,
) -> AnyView {
    let label: Text = label.into();
    let inside = (move || label.get()).into_any();
    button_of(
        class,
        part.into(),
        None,
        inside,
        Callback::new(move |()| on_tap()),
    )
}

/// One of several choices, pressed or not.
pub fn toggle(
    part: impl Into<String>,
    label: impl Into<String>,
    small: &'static str,
    pressed: impl Into<Signal<bool>>,
    on_tap: impl Fn() + Send + Sync + 'static,
) -> AnyView {
    toggle_of(
        part.into(),
        label.into(),
        small,
        pressed.into(),
        Callback::new(move |()| on_tap()),
    )
}

fn toggle_of(
    part: String,
    label: String,
    small: &'static str,
    pressed: Signal<bool>,
    on_tap: Callback<()>,
) -> AnyView {
    let name = (!small.is_empty()).then(|| format!("{label}, {small}"));
    view! {
        <button
            class="choice"
            data-part=part
            aria-label=name
            aria-pressed=move || if pressed.get() { "true" } else { "false" }
            on:click=move |_| on_tap.run(())
        >
            {label}
            <small>{small}</small>
        </button>
    }
    .into_any()
}

/// Choices of which one is pressed, by number.
pub fn toggles_of(
    part: &'static str,
    labels: impl IntoIterator<Item = (String, &'static str)>,
    pressed: Signal<Option<i64>>,
    choose: impl Fn(i64) + Copy + Send + Sync + 'static,
) -> Vec<AnyView> {
    labels
        .into_iter()
        .zip(0..)
        .map(|((label, small), n)| {
            let is_pressed = Signal::derive(move || pressed.get() == Some(n));
            toggle(format!("{part}-{n}"), label, small, is_pressed, move || {
                choose(n)
            })
        })
        .collect()
}

/// Choices that belong together.
pub fn choices(class: &'static str, name: &'static str, inside: Vec<AnyView>) -> AnyView {
    view! { <div class=class role="group" aria-label=name>{inside}</div> }.into_any()
}

/// What a field takes.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Mode {
    /// A number with decimals.
    Decimal,
    /// Any text.
    Text,
}

/// A field with its label. `typed` is told when the person leaves the field, or with each letter where `live`.
pub fn field(
    part: impl Into<String>,
    mode: Mode,
    label: impl Into<Text>,
    value: impl Into<Text>,
    live: bool,
    typed: impl Fn(String) + Send + Sync + 'static,
) -> AnyView {
    field_of(
        part.into(),
        mode,
        label.into(),
        value.into(),
        live,
        Callback::new(typed),
    )
}

fn field_of(
    part: String,
    mode: Mode,
    label: Text,
    value: Text,
    live: bool,
    typed: Callback<String>,
) -> AnyView {
    let take = move |now: bool, event: Event| {
        if now {
            typed.run(event_target_value(&event));
        }
    };
    view! {
        <label class="field">
            <span>{move || label.get()}</span>
            <input
                type="text"
                autocomplete="off"
                inputmode=if mode == Mode::Decimal { "decimal" } else { "text" }
                data-part=part
                prop:value=move || value.get()
                on:input=move |event| take(live, event)
                on:change=move |event: Event| take(!live, event)
            />
        </label>
    }
    .into_any()
}

/// A button that asks for a file.
pub fn file_field(
    part: &'static str,
    label: &'static str,
    chosen: impl Fn(Event) + 'static,
) -> AnyView {
    view! {
        <label class="file wide">
            <span>{label}</span>
            <input
                type="file"
                accept=".json,application/json,text/plain"
                data-part=part
                on:change=chosen
            />
        </label>
    }
    .into_any()
}
