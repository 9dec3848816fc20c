//! Buttons and choices.

use super::Text;
use super::element::{el, yes_or_no};
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
    el("button")
        .class(class)
        .part(part)
        .follow("aria-label", move || name.map(|name| name.get()))
        .on_tap(on_tap)
        .child(inside)
        .view()
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
    el("button")
        .class(class)
        .part(part)
        .on_tap(on_tap)
        .text(label)
        .view()
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
    el("button")
        .class("choice")
        .part(part)
        .set("aria-label", name)
        .follow("aria-pressed", move || yes_or_no(pressed.get()))
        .on_tap(on_tap)
        .child(label)
        .child(" ")
        .child((!small.is_empty()).then(|| el("small").child(small).view()))
        .view()
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
    el("div")
        .class(class)
        .set("role", "group")
        .set("aria-label", name)
        .child(inside)
        .view()
}
