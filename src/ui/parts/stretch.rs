//! A stretch of time by its name, and the ways to those before and after it.

use super::controls::{button, tap};
use super::element::el;
use super::frames::when;
use super::{Text, text};
use crate::ui::seen::Seen;
use leptos::prelude::*;

/// Where a person turns to.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Turn {
    /// The stretch before the one that is shown.
    Before,
    /// The one that today is in.
    Now,
    /// The one after.
    After,
}

/// One of the ways.
#[derive(Clone, Copy)]
pub struct Leads {
    part: &'static str,
    words: &'static str,
}

/// A way by its name.
pub fn leads(part: &'static str, words: &'static str) -> Leads {
    Leads { part, words }
}

/// The ways from what is shown.
pub struct Ways {
    /// To the stretch before.
    pub before: Leads,
    /// To the one that today is in.
    pub now: Leads,
    /// To the stretch after.
    pub after: Leads,
}

/// The name of what is shown, with its hook, and the ways: `away` says whether today is elsewhere, and there is a way to it.
pub fn stretch_head(
    part: &'static str,
    name: Text,
    away: Seen<bool>,
    ways: Ways,
    turn: impl Fn(Turn) + Send + Sync + 'static,
) -> AnyView {
    stretch_of(part, name, away, ways, Callback::new(turn))
}

fn stretch_of(
    part: &'static str,
    name: Text,
    away: Seen<bool>,
    ways: Ways,
    turn: Callback<Turn>,
) -> AnyView {
    let one = move |to: Turn, Leads { part, words }: Leads, sign: &'static str| {
        tap(
            "step",
            part,
            Some(text(move || words.to_owned())),
            sign.into_any(),
            Callback::new(move |()| turn.run(to)),
        )
    };
    let steps = vec![
        when(away, move || {
            let Leads { part, words } = ways.now;
            button("plain", part, words, move || turn.run(Turn::Now))
        }),
        one(Turn::Before, ways.before, "‹"),
        one(Turn::After, ways.after, "›"),
    ];
    el("div")
        .class("turns")
        .child(el("h2").set("aria-live", "polite").part(part).text(name))
        .child(el("div").class("turns-ways").child(steps))
        .view()
}
