//! Who it is, on top of every place, and the way to another one in two taps. Only there where there are several.

use super::seat::change_over;
use super::strip::strip;
use crate::say;
use crate::ui::live::Live;
use crate::ui::model::Model;
use crate::ui::parts::{button, dynamic, el, panel, tap, text, way, when};
use crate::ui::place::Place;
use crate::ui::stanchion::Stanchion;
use crate::words::t;
use leptos::prelude::*;

/// Who it is, and the panel with the others.
pub fn bar(app: Stanchion) -> AnyView {
    let paired = app.of(|model| model.partner().is_some());
    let several = app.of(|model| {
        let alone = model.partner().is_none() && model.looks_at.is_none();
        model.people.are_several() && alone
    });
    let open = Live::new(false);
    let inside = vec![
        when(paired, move || strip(app)),
        when(several, move || who(app, open)),
        when(open, move || others(app, open)),
    ];
    inside.into_any()
}

fn who(app: Stanchion, open: Live<bool>) -> AnyView {
    let name = app.of(called);
    let label = text(move || say!("{name}, change", name = name.get()));
    let face = el("span").class("who-name").text(name);
    let show = Callback::new(move |()| open.set(true));
    let button = tap("who", "who", Some(label), face.into_any(), show);
    el("nav")
        .class("who-bar")
        .set("aria-label", t("Lifter"))
        .child(button)
        .view()
}

/// What the lifter is called.
fn called(model: &Model) -> String {
    let person = model.person();
    person.map_or_else(String::new, |person| person.name.to_string())
}

fn others(app: Stanchion, open: Live<bool>) -> AnyView {
    let close = Callback::new(move |()| open.set(false));
    let here = app.of(|model| {
        let people = model.people.here().cloned().collect::<Vec<_>>();
        (people, model.who)
    });
    let choices = dynamic(move || {
        let (people, who) = here.get();
        let choice = |(n, person): (usize, crate::store::Person)| {
            let own = who == Some(person.id);
            let label = if own {
                say!("{name}, here now", name = person.name)
            } else {
                person.name.to_string()
            };
            let class = if own { "wide" } else { "wide strong" };
            button(class, format!("who-{n}"), label, move || {
                open.set(false);
                change_over(app, person.id);
            })
        };
        let all: Vec<AnyView> = people.into_iter().enumerate().map(choice).collect();
        all.into_any()
    });
    let inside = vec![
        choices,
        way(Place::Lifters.href(), t("Add, rename or remove a lifter")),
    ];
    panel("who-panel", t("Who trains?"), close, inside)
}
