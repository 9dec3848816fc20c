//! Panels over the floor: another load, reps in reserve, correction of the last set.

use super::entry::{Entry, block_of};
use super::figures::{amount_line, load_word};
use super::sides;
use super::stages::stage_steppers;
use crate::say;
use crate::session::{Amount, Board, Done, What};
use crate::sheet::SetKey;
use crate::ui::model::Model;
use crate::ui::parts::{
    button, choices, dynamic, line, panel, quiet, stepper, text, toggles_of, when, wrong_word,
};
use crate::ui::seen::Seen;
use crate::ui::stanchion::Stanchion;
use crate::units::{Load, Rir};
use crate::words::t;
use leptos::prelude::*;

/// What the field for a load is called.
fn typed_label(word: &str) -> String {
    say!("or type it, {word}", word)
}

/// Another load for the set on the board.
pub fn load_panel(app: Stanchion, board: Seen<Option<Board>>, close: Callback<()>) -> AnyView {
    let unit = app.of(Model::unit);
    let set = Seen::new(move || board.get().map(|board| (board.key, board.load)));
    let choose = Callback::new(move |load: Load| {
        if let Some(board) = board.get_untracked() {
            app.act(What::LoadChosen {
                set: board.key,
                load,
                proposed: board.prescribed,
            });
        }
    });
    let entry = Entry::new(app, set, choose);
    // One tap on a load that is offered says all; there is nothing left to do in the panel.
    let take = move |load: Load| {
        entry.take(load);
        close.run(());
    };
    let figure = text(move || match board.get().and_then(|board| board.load) {
        Some(load) => load.shown(unit.get()),
        None => "?".to_owned(),
    });
    let label = text(move || {
        let word = board
            .get()
            .map(|board| load_word(&board.basis, unit.get()))
            .unwrap_or_default();
        typed_label(&word)
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
            stepper(t("load"), "load-step", figure, move |up| entry.step(up)),
            entry.field(label),
            wrong_word("load-wrong", entry.wrong),
            entry.instead(Callback::new(take)),
            dynamic(move || {
                let said = jump.get();
                said.map(|said| line("caution", "jump-caution", said))
                    .into_any()
            }),
            as_proposed,
            button("wide strong", "load-use", t("Use it"), move || {
                if entry.is_taken() {
                    close.run(());
                }
            }),
        ],
    )
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

/// The set that was logged last.
fn last_set(model: &Model) -> Option<(SetKey, Done)> {
    let slot = model.session.as_ref()?.state().last_logged()?;
    Some((slot.planned.key, slot.logged()?.done.clone()))
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
    let last = app.of(last_set);
    let amend = move |change: &dyn Fn(&Done) -> Done| {
        let last = last.get_untracked();
        let changed = last.map(|(set, done)| (set, change(&done), done));
        // What changes nothing is nothing that could be undone.
        if let Some((set, done, _)) = changed.filter(|(_, done, before)| done != before) {
            app.act(What::SetAmended { set, done });
        }
    };
    let set = Seen::new(move || last.get().map(|(set, done)| (set, done.load)));
    let choose = Callback::new(move |load| amend(&|done| done.with_load(Some(load))));
    let entry = Entry::new(app, set, choose);
    let amend = move |change: &dyn Fn(&Done) -> Done| {
        entry.goes_on();
        amend(change);
    };
    let step_count = move |more: bool| amend(&|done| done.stepped(more));
    let count = text(move || {
        last.get()
            .map(|(_, done)| amount_line(&done.amount))
            .unwrap_or_default()
    });
    let load = text(move || match set.get() {
        Some((_, Some(load))) => load.shown(unit.get()),
        _ => String::new(),
    });
    let label = app.of(|model| {
        let (key, _) = last_set(model)?;
        Some(load_word(&block_of(model, key)?.basis, model.unit()))
    });
    let label = text(move || typed_label(&label.get().unwrap_or_default()));
    let sides = Seen::new(move || {
        let (_, done) = last.get()?;
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
    let amount = Seen::new(move || last.get().map(|(_, done)| done.amount));
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
    let said = Seen::new(move || last.get().and_then(|(_, done)| done.reserve).map(i64::from));
    panel(
        "amend-panel",
        t("Change the last set"),
        close,
        vec![
            by_count,
            when(has_load, move || {
                let step = move |up| entry.step(up);
                let parts = [
                    stepper(t("load"), "amend-load", load, step),
                    entry.field(label),
                ];
                parts.into_any()
            }),
            wrong_word("amend-wrong", entry.wrong),
            entry.instead(Callback::new(move |load| entry.take(load))),
            quiet(t("reps left in reserve")),
            reserves(said, move |reserve| {
                amend(&|done| done.with_reserve(Some(reserve)))
            }),
            button("wide strong", "amend-close", t("Done"), move || {
                if entry.is_taken() {
                    close.run(());
                }
            }),
        ],
    )
}
