//! Buttons and choices.

use super::Text;
use crate::ui::seen::Seen;
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
    button_with(
        class,
        part.into(),
        label.into(),
        Callback::new(move |()| on_tap()),
    )
}

// A closure in a generic function is compiled for each of its uses: what follows the label must not be in one.
fn button_with(class: &'static str, part: String, label: Text, on_tap: Callback<()>) -> AnyView {
    button_of(class, part, None, (move || label.get()).into_any(), on_tap)
}

/// One of several choices, pressed or not.
pub fn toggle(
    part: impl Into<String>,
    label: impl Into<String>,
    small: &'static str,
    pressed: impl Into<Seen<bool>>,
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
    pressed: Seen<bool>,
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
            " "
            {(!small.is_empty()).then(|| view! { <small>{small}</small> })}
        </button>
    }
    .into_any()
}

/// Choices of which one is pressed, by number.
pub fn toggles_of(
    part: &'static str,
    labels: impl IntoIterator<Item = (String, &'static str)>,
    pressed: Seen<Option<i64>>,
    choose: impl Fn(i64) + Copy + Send + Sync + 'static,
) -> Vec<AnyView> {
    toggles_with(
        part,
        labels.into_iter().collect(),
        pressed,
        Callback::new(choose),
    )
}

fn toggles_with(
    part: &'static str,
    labels: Vec<(String, &'static str)>,
    pressed: Seen<Option<i64>>,
    choose: Callback<i64>,
) -> Vec<AnyView> {
    labels
        .into_iter()
        .zip(0..)
        .map(|((label, small), n)| {
            let is_pressed = Seen::new(move || pressed.get() == Some(n));
            toggle(format!("{part}-{n}"), label, small, is_pressed, move || {
                choose.run(n)
            })
        })
        .collect()
}

/// Choices that belong together.
pub fn choices(class: &'static str, name: &'static str, inside: Vec<AnyView>) -> AnyView {
    view! { <div class=class role="group" aria-label=name>{inside}</div> }.into_any()
}
