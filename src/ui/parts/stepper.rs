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
    stepper_of(what, part, figure.into(), Callback::new(step))
}

fn stepper_of(
    what: &'static str,
    part: &'static str,
    figure: Text,
    step: Callback<bool>,
) -> AnyView {
    let one = move |more: bool, word: &'static str, sign: &'static str| {
        let name = text(move || {
            if more {
                say!("more {what}", what)
            } else {
                say!("less {what}", what)
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
    el("div")
        .class("stepper")
        .set("role", "group")
        .set("aria-label", what)
        .part(part)
        .child(one(false, "less", "−"))
        .child(
            el("output")
                .class("stepper-figure")
                .part(format!("{part}-figure"))
                .text(figure),
        )
        .child(one(true, "more", "+"))
        .view()
}
