//! Lists of things in the kit: rows that can be taken away, and fields that add one.

use super::things::Field;
use crate::say;
use crate::ui::live::Live;
use crate::ui::model::Model;
use crate::ui::parts::{Mode, button, el, field, tap, text, wrong_word};
use crate::ui::stanchion::Stanchion;
use crate::words::t;
use leptos::prelude::*;

/// One thing, with buttons that take it away and, where its place means something, move it.
pub fn kit_row(
    what: String,
    take_away: Callback<()>,
    up: Option<Callback<()>>,
    down: Option<Callback<()>>,
) -> AnyView {
    let buttons = [
        up.map(|up| at_row("thing-up", t("up"), say!("move up {what}", what), up)),
        down.map(|down| {
            at_row(
                "thing-down",
                t("down"),
                say!("move down {what}", what),
                down,
            )
        }),
        Some(at_row(
            "remove",
            t("remove"),
            say!("remove {what}", what),
            take_away,
        )),
    ];
    el("li")
        .class("kit-row")
        .child(el("span").child(what))
        .child(el("span").child(buttons.into_iter().flatten().collect::<Vec<_>>()))
        .view()
}

/// A button of a row; its name says what it does to which thing.
fn at_row(part: &'static str, word: &'static str, name: String, on_tap: Callback<()>) -> AnyView {
    let name = text(move || name.clone());
    tap("plain", part, Some(name), word.into_any(), on_tap)
}

/// Fields for a new thing, those of a mass with the unit on display, and the button that adds it. `add` says why not, if so; then the
/// fields stay as they are.
pub fn adder(
    app: Stanchion,
    part: &'static str,
    new: &'static str,
    fields: &'static [Field],
    add: Callback<Vec<String>, Result<(), String>>,
) -> AnyView {
    let values: Vec<Live<String>> = fields.iter().map(|_| Live::new(String::new())).collect();
    let wrong = Live::new(None::<String>);
    let unit = app.of(Model::unit);
    let inputs: Vec<AnyView> = fields
        .iter()
        .zip(values.clone())
        .map(|((word, label), value)| {
            let (mode, is_mass) = match *word {
                "name" | "label" => (Mode::Text, false),
                "pairs" | "count" => (Mode::Decimal, false),
                _ => (Mode::Decimal, true),
            };
            let label = text(move || match is_mass {
                true => format!("{}, {}", label(), unit.get()),
                false => label().to_owned(),
            });
            let typed = move |text| value.set(text);
            field(format!("{part}-{word}"), mode, label, value, true, typed)
        })
        .collect();
    let take_in = move || {
        let typed = values.iter().map(|value| value.get_untracked()).collect();
        match add.run(typed) {
            Ok(()) => {
                wrong.set(None);
                for value in &values {
                    value.set(String::new());
                }
            }
            Err(why) => wrong.set(Some(why)),
        }
    };
    let wrong = wrong_word(format!("{part}-wrong"), wrong);
    let button = button("wide", format!("{part}-add"), t("Add"), take_in);
    el("details")
        .class("adder")
        .child(el("summary").part(format!("{part}-new")).child(new))
        .child(el("div").class("adder-fields").child(inputs))
        .child(wrong)
        .child(button)
        .view()
}
