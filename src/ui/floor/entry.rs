//! A load as it is stepped or typed on the floor, and what is said of one that the kit does not make.

use crate::kit::{Kit, NotLoadable};
use crate::say;
use crate::sheet::{Block, Equipment, SetKey};
use crate::ui::live::Live;
use crate::ui::model::Model;
use crate::ui::parts::{Mode, Text, button, dynamic, field, line, quiet, when};
use crate::ui::seen::Seen;
use crate::ui::stanchion::Stanchion;
use crate::units::Load;
use crate::words::{decimal, t};
use leptos::prelude::*;

/// The block of a set, as the set is done.
pub fn block_of(model: &Model, key: SetKey) -> Option<&Block> {
    let state = model.session.as_ref()?.state();
    Some(state.block_of(state.slot(key)?))
}

/// The equipment of a set's exercise.
fn equipment(model: &Model, key: SetKey) -> Equipment {
    block_of(model, key).map_or(Equipment::Other, |block| block.exercise.equipment)
}

/// The next load up or down that the kit can make; from nothing, the lightest.
fn stepped(kit: &Kit, equipment: Equipment, load: Option<Load>, up: bool) -> Option<Load> {
    match load {
        None => kit.at_or_above(equipment, Load::ZERO),
        Some(load) if up => kit.next_above(equipment, load),
        Some(load) => kit.next_below(equipment, load),
    }
}

/// The load of one set, which a panel changes.
#[derive(Clone, Copy)]
pub struct Entry {
    app: Stanchion,
    set: Seen<Option<(SetKey, Option<Load>)>>,
    take: Callback<Load>,
    /// What is wrong with what was asked for.
    pub wrong: Live<Option<String>>,
    refused: Live<Option<NotLoadable>>,
    /// What was typed and not taken: the panel stays with it, or the lifter would go on with the load of before.
    untaken: Live<bool>,
}

impl Entry {
    /// Of a set with the load it has; `take` is given another one.
    pub fn new(
        app: Stanchion,
        set: Seen<Option<(SetKey, Option<Load>)>>,
        take: Callback<Load>,
    ) -> Entry {
        Entry {
            app,
            set,
            take,
            wrong: Live::new(None),
            refused: Live::new(None),
            untaken: Live::new(false),
        }
    }

    /// Something else of the set is changed: what was wrong with a step is not said any more. What was typed and not taken is.
    pub fn goes_on(self) {
        if self.is_taken() {
            self.wrong.set(None);
        }
    }

    fn clear(self) {
        self.wrong.set(None);
        self.refused.set(None);
        self.untaken.set(false);
    }

    /// Takes a load.
    pub fn take(self, load: Load) {
        self.clear();
        self.take.run(load);
    }

    /// Takes the next load up or down.
    pub fn step(self, up: bool) {
        let next = self.app.model.with_untracked(|model| {
            let (key, load) = self.set.get_untracked()?;
            stepped(model.rack(), equipment(model, key), load, up)
        });
        match next {
            Some(load) => self.take(load),
            None => {
                let ends = t("The kit has nothing further that way.");
                self.wrong.set(Some(ends.to_owned()));
            }
        }
    }

    /// Whether nothing stands there that was typed and not taken.
    pub fn is_taken(self) -> bool {
        !self.untaken.get_untracked()
    }

    fn typed(self, typed: &str) {
        let unit = self.app.model.with_untracked(Model::unit);
        self.clear();
        if typed.trim().is_empty() {
            return;
        }
        match Load::parse_in(typed, unit) {
            Ok(load) => {
                let refused = self.app.model.with_untracked(|model| {
                    let (key, _) = self.set.get_untracked()?;
                    model.rack().not_loadable(equipment(model, key), load)
                });
                match refused {
                    None => self.take.run(load),
                    refused => {
                        self.refused.set(refused);
                        self.untaken.set(true);
                    }
                }
            }
            Err(error) => {
                self.wrong.set(Some(error.to_string()));
                self.untaken.set(true);
            }
        }
    }

    /// The field to type it into, and of which of two things the load is.
    pub fn field(self, label: impl Into<Text>) -> AnyView {
        let set = self.set;
        let may_be_two = self.app.of(move |model| {
            set.get()
                .is_some_and(|(key, _)| equipment(model, key).loaded_as() == Equipment::Dumbbell)
        });
        let field = field(
            "load-typed",
            Mode::Decimal,
            label,
            String::new(),
            false,
            move |typed: String| self.typed(&typed),
        );
        let of_one = when(may_be_two, || {
            quiet(t("Of two dumbbells, the load of one."))
        });
        vec![field, of_one].into_any()
    }

    /// What is said of a typed load that the kit cannot make, with the nearest that it makes; `take` is given what is tapped.
    pub fn instead(self, take: Callback<Load>) -> AnyView {
        dynamic(move || match self.refused.get() {
            Some(told) => instead(&told, take),
            None => ().into_any(),
        })
    }
}

/// What is said of a typed load that the kit cannot make: the nearest that it makes, and the load all the same, since
/// plates can be borrowed.
fn instead(told: &NotLoadable, choose: Callback<Load>) -> AnyView {
    let take = move |load: Load| move || choose.run(load);
    let (unit, wanted) = (told.unit, told.wanted);
    let below = told
        .below
        .map(|load| button("wide", "load-below", load.shown(unit), take(load)));
    let above = told
        .above
        .map(|load| button("wide", "load-above", load.shown(unit), take(load)));
    let anyway = say!(
        "{wanted} all the same",
        wanted = decimal(&wanted.to_string()),
    );
    vec![
        Some(line("wrong-word", "load-refused", told.to_string())),
        below,
        above,
        Some(button("wide", "load-anyway", anyway, take(wanted))),
    ]
    .into_any()
}
