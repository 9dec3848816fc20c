//! Panels over the floor: another load, reps in reserve, correction of the last set.

use super::figures::{amount_line, load_word};
use super::sides;
use super::stages::stage_steppers;
use crate::kit::{Kit, NotLoadable};
use crate::say;
use crate::session::{Amount, Board, Done, What};
use crate::sheet::{Block, Equipment, SetKey};
use crate::ui::live::Live;
use crate::ui::model::Model;
use crate::ui::parts::{
    Mode, button, choices, dynamic, field, line, panel, quiet, stepper, text, toggles_of, when,
    wrong_word,
};
use crate::ui::seen::Seen;
use crate::ui::stanchion::Stanchion;
use crate::units::{Load, Rir};
use crate::words::{decimal, t};
use leptos::prelude::*;

/// The block of a set, as the set is done.
fn block_of(model: &Model, key: SetKey) -> Option<&Block> {
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

/// Said where no further step can be made.
fn kit_ends() -> String {
    t("The kit has nothing further that way.").to_owned()
}

/// Another load for the set on the board.
pub fn load_panel(app: Stanchion, board: Seen<Option<Board>>, close: Callback<()>) -> AnyView {
    let unit = app.of(Model::unit);
    let wrong = Live::new(None::<String>);
    let refused = Live::new(None::<NotLoadable>);
    // What was typed and not taken: the panel stays with it, or the lifter would go on with the load of before.
    let untaken = Live::new(false);
    let choose = move |load: Load| {
        if let Some(board) = board.get_untracked() {
            wrong.set(None);
            refused.set(None);
            untaken.set(false);
            app.act(What::LoadChosen {
                set: board.key,
                load,
                proposed: board.prescribed,
            });
        }
    };
    // One tap on a load that is offered says all; there is nothing left to do in the panel.
    let take = move |load: Load| {
        choose(load);
        close.run(());
    };
    let step = move |up: bool| {
        let next = app.model.with_untracked(|model| {
            let board = board.get_untracked()?;
            stepped(model.rack(), equipment(model, board.key), board.load, up)
        });
        match next {
            Some(load) => choose(load),
            None => wrong.set(Some(kit_ends())),
        }
    };
    let typed = move |typed: String| match Load::parse_in(&typed, unit.get_untracked()) {
        _ if typed.trim().is_empty() => {
            wrong.set(None);
            refused.set(None);
            untaken.set(false);
        }
        Ok(load) => {
            let told = app.model.with_untracked(|model| {
                let equipment = equipment(model, board.get_untracked()?.key);
                model.rack().not_loadable(equipment, load)
            });
            match told {
                Some(told) => {
                    wrong.set(None);
                    refused.set(Some(told));
                    untaken.set(true);
                }
                None => choose(load),
            }
        }
        Err(error) => {
            refused.set(None);
            wrong.set(Some(error.to_string()));
            untaken.set(true);
        }
    };
    let instead = dynamic(move || match refused.get() {
        Some(told) => instead(&told, Callback::new(take)),
        None => ().into_any(),
    });
    let figure = text(move || match board.get().and_then(|board| board.load) {
        Some(load) => load.shown(unit.get()),
        None => "?".to_owned(),
    });
    let label = text(move || {
        let word = board
            .get()
            .map(|board| load_word(&board.basis, unit.get()))
            .unwrap_or_default();
        say!("or type it, {word}", word)
    });
    let jump = Seen::new(move || board.get().and_then(|board| board.jump));
    let as_proposed = dynamic(move || {
        match board
            .get()
            .filter(|board| board.overruled)
            .and_then(|board| board.prescribed)
        {
            None => ().into_any(),
            Some(load) => {
                let label = say!("as proposed: {load}", load = load.shown(unit.get()));
                button("wide", "load-proposed", label, move || take(load))
            }
        }
    });
    panel(
        "load-panel",
        t("Load"),
        close,
        vec![
            stepper(t("load"), "load-step", figure, step),
            field(
                "load-typed",
                Mode::Decimal,
                label,
                String::new(),
                false,
                typed,
            ),
            wrong_word("load-wrong", wrong),
            instead,
            dynamic(move || {
                let said = jump.get();
                said.map(|said| line("caution", "jump-caution", said))
                    .into_any()
            }),
            as_proposed,
            button("wide strong", "load-use", t("Use it"), move || {
                if !untaken.get_untracked() {
                    close.run(());
                }
            }),
        ],
    )
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

/// Buttons for reps in reserve.
fn reserves(
    said: Seen<Option<i64>>,
    choose: impl Fn(Rir) + Copy + Send + Sync + 'static,
) -> AnyView {
    let labels = (0..=5).map(|n| {
        (
            if n == 5 {
                "5+".to_owned()
            } else {
                n.to_string()
            },
            "",
        )
    });
    let inside = toggles_of("reserve", labels, said, move |n| choose(Rir::saturating(n)));
    choices("choices", t("reps in reserve"), inside)
}

/// Reps in reserve of the set on the board.
pub fn reserve_panel(app: Stanchion, board: Seen<Option<Board>>, close: Callback<()>) -> AnyView {
    let said = Seen::new(move || board.get().and_then(|board| board.reserve).map(i64::from));
    let choose = move |reserve| {
        if let Some(board) = board.get_untracked() {
            app.act(What::ReserveChosen {
                set: board.key,
                reserve,
            });
        }
        close.run(());
    };
    panel(
        "reserve-panel",
        t("Reps left in reserve"),
        close,
        vec![
            quiet(t("How many more could you have done well? 0 is none.")),
            reserves(said, choose),
        ],
    )
}

/// The set that was logged last, with the equipment of its exercise.
fn last(model: &Model) -> Option<(SetKey, Done, Equipment)> {
    let slot = model.session.as_ref()?.state().last_logged()?;
    let key = slot.planned.key;
    Some((key, slot.logged()?.done.clone(), equipment(model, key)))
}

/// Correction of the set logged last.
pub fn amend_panel(app: Stanchion, close: Callback<()>) -> AnyView {
    let unit = app.of(Model::unit);
    let last_sided = app.of(|model| {
        let slot = model
            .session
            .as_ref()
            .and_then(|session| session.state().last_logged());
        slot.is_some_and(|slot| slot.planned.sides.rounds() > 1)
    });
    let last = app.of(last);
    let wrong = Live::new(None::<String>);
    let amend = move |change: &dyn Fn(&Done) -> Done| {
        wrong.set(None);
        let last = last.get_untracked();
        let changed = last.map(|(set, done, _)| (set, change(&done), done));
        // What changes nothing is nothing that could be undone.
        if let Some((set, done, _)) = changed.filter(|(_, done, before)| done != before) {
            app.act(What::SetAmended { set, done });
        }
    };
    let step_count = move |more: bool| amend(&|done| done.stepped(more));
    let step_load = move |up: bool| {
        let next = app.model.with_untracked(|model| {
            let (_, done, equipment) = last.get_untracked()?;
            stepped(model.rack(), equipment, done.load, up)
        });
        match next {
            Some(load) => amend(&|done| done.with_load(Some(load))),
            None => wrong.set(Some(kit_ends())),
        }
    };
    let count = text(move || {
        last.get()
            .map(|(_, done, _)| amount_line(&done.amount))
            .unwrap_or_default()
    });
    let load = text(
        move || match last.get().and_then(|(_, done, _)| done.load) {
            Some(load) => load.shown(unit.get()),
            None => String::new(),
        },
    );
    let sides = Seen::new(move || {
        let (_, done, _) = last.get()?;
        last_sided.get().then(|| sides::of(&done.amount)).flatten()
    });
    let step_side = Callback::new(move |(second, more): (bool, bool)| {
        amend(&|done| match sides::stepped(&done.amount, second, more) {
            Some(amount) => Done {
                amount,
                ..done.clone()
            },
            None => done.clone(),
        });
    });
    let step_stage = Callback::new(move |(at, more): (usize, bool)| {
        amend(&|done| Done {
            amount: done.amount.stage_stepped(at, more),
            ..done.clone()
        });
    });
    let amount = Seen::new(move || last.get().map(|(_, done, _)| done.amount));
    let staged = Seen::new(move || matches!(amount.get(), Some(Amount::Stages(_))));
    let sided = Seen::new(move || sides.get().is_some());
    let by_count = dynamic(move || {
        if staged.get() {
            stage_steppers(amount, step_stage)
        } else if sided.get() {
            sides::steppers(sides, step_side).into_any()
        } else {
            stepper(t("count"), "amend-reps", count, step_count)
        }
    });
    let has_load = Seen::new(move || !load.get().is_empty());
    let said = Seen::new(move || {
        last.get()
            .and_then(|(_, done, _)| done.reserve)
            .map(i64::from)
    });
    panel(
        "amend-panel",
        t("Change the last set"),
        close,
        vec![
            by_count,
            when(has_load, move || {
                stepper(t("load"), "amend-load", load, step_load)
            }),
            wrong_word("amend-wrong", wrong),
            quiet(t("reps left in reserve")),
            reserves(said, move |reserve| {
                amend(&|done| done.with_reserve(Some(reserve)))
            }),
            button("wide strong", "amend-close", t("Done"), move || {
                close.run(())
            }),
        ],
    )
}
