//! A figure between two large buttons: less and more.

use super::controls::tap;
use super::element::el;
use super::{Text, text};
use crate::say;
use leptos::prelude::*;

/// A figure that is stepped down and up: `step` is given false for less, true for more.
pub fn stepper(
    what: &'static str,
    part: &'static str,
    figure: impl Into<Text>,
    step: impl Fn(bool) + Send + Sync + 'static,
) -> AnyView {
    stepper_of(
        what.to_owned(),
        part.to_owned(),
        figure.into(),
        Callback::new(step),
    )
}

/// A [`stepper`] whose name is put together.
pub fn stepper_of(what: String, part: String, figure: Text, step: Callback<bool>) -> AnyView {
    let one = |more: bool, word: &'static str, sign: &'static str| {
        let what = what.clone();
        let name = text(move || {
            if more {
                say!("more {what}", what = &what)
            } else {
                say!("less {what}", what = &what)
            }
        });
        tap(
            "step",
            format!("{part}-{word}"),
            Some(name),
            sign.into_any(),
            Callback::new(move |()| step.run(more)),
        )
    };
    let (less, more) = (one(false, "less", "−"), one(true, "more", "+"));
    let figure = el("output")
        .class("stepper-figure")
        .part(format!("{part}-figure"))
        .text(figure);
    el("div")
        .class("stepper")
        .set("role", "group")
        .set("aria-label", what)
        .part(part)
        .child(less)
        .child(figure)
        .child(more)
        .view()
}
