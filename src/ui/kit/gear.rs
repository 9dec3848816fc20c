//! What stands in the garage: bars, plates, handles, dumbbells, stacks, bands, and the smallest step of all else.

use super::lists::{adder, kit_row};
use super::things::{BANDS, BARS, DUMBBELLS, HANDLES, PLATES, STACKS, Things, mass};
use crate::kit::{Kit, KitParts};
use crate::say;
use crate::ui::live::Live;
use crate::ui::model::Model;
use crate::ui::parts::{Mode, button, checked_field, dynamic, el, group, quiet, section, text};
use crate::ui::seen::Seen;
use crate::ui::stanchion::Stanchion;
use crate::units::Unit;
use crate::words::t;
use leptos::prelude::*;

/// Changes the kit; what does not hold together is refused in words.
pub fn change(
    app: Stanchion,
    edit: &dyn Fn(&mut KitParts) -> Result<(), String>,
) -> Result<(), String> {
    let mut parts = app.model.with_untracked(|model| model.kit.parts().clone());
    edit(&mut parts)?;
    let kit = Kit::new(parts).map_err(|error| error.to_string())?;
    app.keep_kit(kit);
    Ok(())
}

/// Changes the kit where no field stands beside that could say why not: a refusal becomes a notice.
fn change_or_tell(app: Stanchion, edit: &dyn Fn(&mut KitParts)) {
    let changed = change(app, &|kit| {
        edit(kit);
        Ok(())
    });
    if let Err(why) = changed {
        app.complain(why);
    }
}

/// Lets plates and steps follow the unit on display.
pub fn show_kit_in(app: Stanchion, unit: Unit) {
    if app.model.with_untracked(|model| model.kit.unit() == unit) {
        return;
    }
    change_or_tell(app, &|kit| kit.unit = unit);
}

/// Everything in the garage.
pub fn gear(app: Stanchion) -> Vec<AnyView> {
    vec![
        shelf("bars", app, &BARS, adding("bar", app, &BARS)),
        shelf("plates", app, &PLATES, adding("plate", app, &PLATES)),
        shelf(
            "dumbbells",
            app,
            &DUMBBELLS,
            adding("dumbbell", app, &DUMBBELLS),
        ),
        shelf("handles", app, &HANDLES, adding("handle", app, &HANDLES)),
        shelf("stacks", app, &STACKS, adding("stack", app, &STACKS)),
        shelf("bands", app, &BANDS, adding("band", app, &BANDS)),
        smallest_step(app),
    ]
}

/// The list of one kind of things.
fn shelf(part: &'static str, app: Stanchion, things: &'static Things, adding: AnyView) -> AnyView {
    let shown = app.of(|model| (things.shown)(model.kit.parts(), model.unit()));
    let gone = Live::new(None::<Gone>);
    let rows = dynamic(move || {
        let rows = shown.get();
        let count = rows.len();
        let row = |(at, what): (usize, String)| {
            let take_away = {
                let what = what.clone();
                Callback::new(move |()| take_away(app, things, at, &what, gone))
            };
            // To move one down is to move the next one up.
            let up = things.raise.filter(|_| at > 0);
            let up = up.map(|raise| edit(app, raise, at));
            let down = things.raise.filter(|_| at + 1 < count);
            let down = down.map(|raise| edit(app, raise, at + 1));
            // Drawn anew, its buttons are others: a key that pressed one does not press the next.
            dynamic(move || kit_row(what.clone(), take_away, up, down))
        };
        let items: Vec<AnyView> = rows.into_iter().enumerate().map(row).collect();
        el("ul").class("rows").child(items).view()
    });
    let mut inside = Vec::new();
    let hint = (things.hint)();
    if !hint.is_empty() {
        inside.push(quiet(hint));
    }
    inside.extend([rows, gone_row(app, gone), adding]);
    section(Some(part), (things.title)(), inside)
}

/// A thing that was taken away: in words, and the kit with it and without it.
#[derive(Clone, PartialEq)]
struct Gone {
    what: String,
    before: KitParts,
    after: KitParts,
}

fn take_away(app: Stanchion, things: &Things, at: usize, what: &str, gone: Live<Option<Gone>>) {
    let parts = || app.model.with_untracked(|model| model.kit.parts().clone());
    let before = parts();
    edit_at(app, things.remove, at);
    let after = parts();
    let what = what.to_owned();
    gone.set((before != after).then_some(Gone {
        what,
        before,
        after,
    }));
}

/// What was taken away last, with its undo, until the kit is changed again.
fn gone_row(app: Stanchion, gone: Live<Option<Gone>>) -> AnyView {
    let parts = app.of(|model| model.kit.parts().clone());
    let shown = Seen::new(move || gone.get().filter(|gone| parts.get() == gone.after));
    dynamic(move || match shown.get() {
        None => ().into_any(),
        Some(Gone { what, before, .. }) => {
            let undo = button("plain", "thing-back", t("Undo"), move || {
                change_or_tell(app, &|kit| *kit = before.clone());
            });
            let said = say!("Removed: {what}.", what);
            group(Some("thing-gone"), vec![quiet(said), undo])
        }
    })
}

/// A change of the list at one place.
fn edit(app: Stanchion, edit: fn(&mut KitParts, usize), at: usize) -> Callback<()> {
    Callback::new(move |()| edit_at(app, edit, at))
}

fn edit_at(app: Stanchion, edit: fn(&mut KitParts, usize), at: usize) {
    change_or_tell(app, &|kit| edit(kit, at));
}

/// The fields that add one.
fn adding(part: &'static str, app: Stanchion, things: &'static Things) -> AnyView {
    let add = move |typed: Vec<String>| {
        let unit = app.model.with_untracked(Model::unit);
        change(app, &|kit| (things.add)(kit, &typed, unit))
    };
    adder(app, part, (things.new)(), things.fields, Callback::new(add))
}

fn smallest_step(app: Stanchion) -> AnyView {
    let unit = app.of(Model::unit);
    let label = move || {
        let unit = unit.get();
        say!(
            "of load hung on the body, or of anything else, {unit}",
            unit
        )
    };
    let step = app.of(|model| model.kit.parts().smallest_step.figure(model.unit()));
    let wrong = Live::new(None::<String>);
    let typed = move |text: String| {
        let kept = mass(&text, unit.get_untracked()).and_then(|step| {
            change(app, &|kit| {
                kit.smallest_step = step;
                Ok(())
            })
        });
        wrong.set(kept.err());
    };
    let field = checked_field(
        "smallest-step",
        Mode::Decimal,
        text(label),
        step,
        false,
        typed,
        wrong,
    );
    section(None, t("Smallest step"), vec![field])
}
