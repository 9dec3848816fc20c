//! Fields to type into, and the field that takes a file.

use super::Text;
use super::element::{Element, el};
use super::words::wrong_word;
use crate::ui::live::Live;
use leptos::ev::Event;
use leptos::prelude::*;

/// What a field takes.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Mode {
    /// A number with decimals.
    Decimal,
    /// A whole number.
    Whole,
    /// Any text.
    Text,
    /// A day, in the browser's own way; its value is in the form of ISO 8601, or empty.
    Day,
}

impl Mode {
    /// The keyboard that the phone shows.
    fn keyboard(self) -> &'static str {
        match self {
            Mode::Decimal => "decimal",
            Mode::Whole => "numeric",
            Mode::Text => "text",
            Mode::Day => "none",
        }
    }

    /// The kind of field.
    fn kind(self) -> &'static str {
        match self {
            Mode::Decimal | Mode::Whole | Mode::Text => "text",
            Mode::Day => "date",
        }
    }
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
        None,
    )
}

/// A field, and under it what is wrong with what was typed (its hook ends in `-wrong`).
pub fn checked_field(
    part: impl Into<String>,
    mode: Mode,
    label: impl Into<Text>,
    value: impl Into<Text>,
    live: bool,
    typed: impl Fn(String) + Send + Sync + 'static,
    wrong: Live<Option<String>>,
) -> AnyView {
    let part = part.into();
    let field = field_of(
        part.clone(),
        mode,
        label.into(),
        value.into(),
        live,
        Callback::new(typed),
        Some(format!("{part}-wrong")),
    );
    vec![field, wrong_word(format!("{part}-wrong"), wrong)].into_any()
}

fn field_of(
    part: String,
    mode: Mode,
    label: Text,
    value: Text,
    live: bool,
    typed: Callback<String>,
    described_by: Option<String>,
) -> AnyView {
    let input = el("input")
        .set("type", mode.kind())
        .set("autocomplete", "off")
        .set("inputmode", mode.keyboard())
        .part(part)
        .set("aria-describedby", described_by);
    labelled(input, label, value, live, typed)
}

/// A field of many lines with its label. `typed` is told when the person leaves it, or with each letter where `live`.
pub fn area(
    part: &'static str,
    label: &'static str,
    value: Text,
    live: bool,
    typed: Callback<String>,
) -> AnyView {
    let area = el("textarea").class("note").set("rows", "3").part(part);
    labelled(area, label.into(), value, live, typed)
}

/// What is typed into, with its label before it.
fn labelled(
    into: Element,
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
    let into = into
        .value(move || value.get())
        .on("input", move |event| take(live, event))
        .on_change(move |event| take(!live, event));
    el("label")
        .class("field")
        .child(el("span").text(label))
        .child(into)
        .view()
}

/// A button that asks for a file.
pub fn file_field(
    part: &'static str,
    label: &'static str,
    chosen: impl Fn(Event) + Send + Sync + 'static,
) -> AnyView {
    file_field_of(part, label, Callback::new(chosen))
}

fn file_field_of(part: &'static str, label: &'static str, chosen: Callback<Event>) -> AnyView {
    el("label")
        .class("file wide")
        .child(el("span").child(label))
        .child(
            el("input")
                .set("type", "file")
                .set("accept", ".json,application/json,text/plain")
                .part(part)
                .on_change(move |event| chosen.run(event)),
        )
        .view()
}
