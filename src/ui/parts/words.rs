//! Headings and paragraphs.

use super::Text;
use super::element::el;
use crate::ui::live::Live;
use crate::ui::seen::Seen;
use leptos::prelude::*;

/// The heading of a place.
pub fn h1(text: impl Into<Text>) -> AnyView {
    h1_of(text.into())
}

fn h1_of(text: Text) -> AnyView {
    el("h1").text(text).view()
}

/// A heading within a place.
pub fn h2(text: impl Into<Text>) -> AnyView {
    h2_of(text.into())
}

fn h2_of(text: Text) -> AnyView {
    el("h2").text(text).view()
}

fn paragraph(class: &'static str, part: Option<&'static str>, text: Text) -> AnyView {
    el("p").class(class).part(part).text(text).view()
}

/// A paragraph of that class.
pub fn words(class: &'static str, text: impl Into<Text>) -> AnyView {
    paragraph(class, None, text.into())
}

/// A paragraph of that class with a hook.
pub fn line(class: &'static str, part: &'static str, text: impl Into<Text>) -> AnyView {
    paragraph(class, Some(part), text.into())
}

/// A paragraph that stands back.
pub fn quiet(text: impl Into<Text>) -> AnyView {
    words("quiet", text)
}

/// A quiet paragraph that is read aloud when its text changes. It stands there also while it is empty: what comes with its text
/// is not always read.
pub fn status_line(part: &'static str, text: Text) -> AnyView {
    el("p")
        .class("quiet")
        .set("role", "status")
        .part(part)
        .text(text)
        .view()
}

/// What is wrong with something typed; nothing is shown while nothing is wrong.
pub fn wrong_word(part: impl Into<String>, wrong: Live<Option<String>>) -> AnyView {
    wrong_text_of(
        part.into(),
        Seen::new(move || wrong.get().unwrap_or_default()),
    )
}

/// What is wrong, where that follows from what is on the page; empty while nothing is.
pub fn wrong_text(part: impl Into<String>, wrong: Text) -> AnyView {
    wrong_text_of(part.into(), wrong)
}

fn wrong_text_of(part: String, wrong: Text) -> AnyView {
    el("p")
        .class("wrong-word")
        .set("role", "alert")
        .set("id", part.clone())
        .part(part)
        .text(wrong)
        .view()
}
