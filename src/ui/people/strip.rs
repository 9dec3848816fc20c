//! Whose turn it is, large, and the way to the other one: who began on the left, the other on the right, each with a mark
//! on their side.

use crate::say;
use crate::ui::floor::{logged_line, saved};
use crate::ui::model::Model;
use crate::ui::parts::{button, el, tap, text};
use crate::ui::seen::Seen;
use crate::ui::stanchion::Stanchion;
use crate::words::{t, t_in};
use leptos::prelude::*;

/// What is seen of one of both.
#[derive(Clone, PartialEq)]
struct Half {
    name: String,
    /// What they logged last, and whether it is on disk.
    logged: String,
    /// True for the one whose board it is.
    on: bool,
}

/// Both, the one who began first.
fn halves(model: &Model, unsaved: usize) -> Option<[Half; 2]> {
    let pair = model.pair.as_ref()?;
    let own = half(model, model, true, unsaved);
    let other = half(model, model.partner()?, false, unsaved);
    Some(if pair.along.first {
        [own, other]
    } else {
        [other, own]
    })
}

fn half(here: &Model, model: &Model, on: bool, unsaved: usize) -> Half {
    let logged = model.session.as_ref().and_then(|session| {
        let state = session.state();
        if state.has_ended() {
            return Some(t_in("session", "done").to_owned());
        }
        let slot = state.last_logged()?;
        let basis = &state.block_of(slot).basis;
        let said = logged_line(&slot.logged()?.done, basis, model.unit());
        // In front: on a narrow phone the end of the line is cut.
        Some(format!("{}: {said}", saved(model.keeps_nothing(), unsaved)))
    });
    let person = here.people.get(model.who.unwrap_or_default());
    Half {
        name: person.map_or_else(String::new, |person| person.name.to_string()),
        logged: logged.unwrap_or_default(),
        on,
    }
}

/// The strip with both.
pub fn strip(app: Stanchion) -> AnyView {
    let both = Seen::new(move || {
        let unsaved = app.unsaved.get();
        app.model.with(|model| halves(model, unsaved))
    });
    let left = move || both.get().is_some_and(|[left, _]| left.on);
    let inside = vec![
        one(app, both, 0, "pair-left"),
        one(app, both, 1, "pair-right"),
    ];
    el("div")
        .follow(
            "class",
            move || if left() { "pair left" } else { "pair right" },
        )
        .set("role", "region")
        .set("aria-label", t("Whose turn"))
        .part("pair")
        .child(inside)
        .view()
}

fn one(app: Stanchion, both: Seen<Option<[Half; 2]>>, at: usize, part: &'static str) -> AnyView {
    let half = Seen::new(move || both.get().map(|both| both[at].clone()));
    let of = move |what: fn(&Half) -> String| half.get().as_ref().map(what).unwrap_or_default();
    let on = move || half.get().is_some_and(|half| half.on);
    let mark = move || match (on(), at) {
        (true, 0) => "◀ ",
        (true, _) => "▶ ",
        _ => "",
    };
    let name = text(move || {
        let said = of(|half| format!("{} {}", half.name, half.logged));
        if on() {
            say!("{said}: on now", said)
        } else {
            say!("{said}: turn the board", said)
        }
    });
    let class = move || if on() { "pair-name on" } else { "pair-name" };
    let face = vec![
        el("span")
            .follow("class", class)
            .child(
                el("span")
                    .set("aria-hidden", "true")
                    .says(move || mark().to_owned()),
            )
            .says(move || of(|half| half.name.clone()))
            .view(),
        " ".into_any(),
        el("span")
            .class("pair-logged")
            .says(move || of(|half| half.logged.clone()))
            .view(),
    ];
    let turn = Callback::new(move |()| {
        if !half.get_untracked().is_some_and(|half| half.on) {
            app.turn();
        }
    });
    tap("pair-half", part, Some(name), face.into_any(), turn)
}

/// The button that lets the board stay with one, or turn by itself again.
pub fn stay(app: Stanchion) -> AnyView {
    let stays = app.of(|model| model.pair.as_ref().is_some_and(|pair| pair.stays));
    let label = text(move || {
        let said = if stays.get() {
            t("turn after each set")
        } else {
            t("stay, do not turn")
        };
        said.to_owned()
    });
    button("", "pair-stay", label, move || {
        app.stay(!stays.get_untracked());
    })
}
