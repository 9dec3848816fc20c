//! Another exercise for what is left of the block: those of the same movement that the kit can do, nearest first.

use crate::exercises::{KnownExercise, Muscles};
use crate::say;
use crate::session::{Began, Phase, State, Swap, What};
use crate::sheet::{Block, BlockId, ExerciseId, SetKey};
use crate::strength::Today;
use crate::ui::live::Live;
use crate::ui::model::Model;
use crate::ui::parts::{button, dynamic, el, line, list, panel, quiet, tap};
use crate::ui::stanchion::{Stanchion, moment};
use crate::words::t;
use leptos::prelude::*;

/// How many are shown before more are asked for.
const SHOWN: usize = 12;

/// What the panel shows.
#[derive(Debug, Clone, PartialEq)]
struct Offer {
    /// The exercise that the block is done as now.
    now: String,
    /// The set of the block that is under way, which must be stopped first.
    under_way: Option<SetKey>,
    /// Whether sets of the block are logged.
    logged: bool,
    /// What can be done instead, nearest first; what the sheet says stands before all.
    instead: Vec<Instead>,
}

/// An exercise that can be done instead.
#[derive(Debug, Clone, PartialEq)]
struct Instead {
    swap: Swap,
    about: String,
}

/// The offer for the block of the set that is to be done now or next.
fn offer(model: &Model) -> Option<Offer> {
    let state = model.session.as_ref()?.state();
    let key = state.current()?.planned.key;
    let written = state.began.sheet.block(key.block)?;
    let now = &state.as_done(written).exercise;
    let as_written = (now.id != written.exercise.id).then(|| Instead {
        swap: Swap::back(written, &today(model, &state.began, &written.exercise.id))
            .suited_to(&state.began, model.rack()),
        about: t("as the sheet says").to_owned(),
    });
    let others = model
        .exercises
        .alike(&written.exercise, model.rack())
        .into_iter()
        .filter(|known| ![&now.id, &written.exercise.id].contains(&&known.id()))
        .filter_map(|known| instead(model, &state.began, written, known));
    Some(Offer {
        now: now.said(),
        under_way: under_way(state, written.id),
        logged: is_logged(state, written),
        instead: as_written.into_iter().chain(others).collect(),
    })
}

/// The set of that block that is under way.
pub fn under_way(state: &State, block: BlockId) -> Option<SetKey> {
    match state.phase {
        Phase::Working { set, .. } if set.block == block => Some(set),
        _ => None,
    }
}

/// What a swap for that exercise is proposed from: by the curve and the body mass that the session began with.
fn today<'a>(model: &'a Model, began: &Began, exercise: &ExerciseId) -> Today<'a> {
    Today {
        curve: began.curve,
        body_mass: began.body_mass,
        ..model.today(exercise, moment().at)
    }
}

fn instead(model: &Model, began: &Began, written: &Block, known: KnownExercise) -> Option<Instead> {
    let exercise = known.exercise_with(model.rack())?;
    let about = format!(
        "{} · {}",
        exercise.equipment.name(),
        muscles(model, written, known)
    );
    let swap = Swap::to(
        written,
        exercise.clone(),
        known.basis_with(model.rack()),
        known.sides(),
        known.cautions(),
        &today(model, began, &exercise.id),
    )
    .suited_to(began, model.rack());
    Some(Instead { swap, about })
}

/// The main muscles that both work; where there are none, or the written one is not known, those of the other.
fn muscles(model: &Model, written: &Block, other: KnownExercise) -> String {
    let from = model.exercises.of(written.exercise.id.as_str());
    let names = |muscles: Muscles| {
        let names = muscles.iter().map(|muscle| muscle.name());
        names.collect::<Vec<_>>().join(", ")
    };
    match from.map(|from| from.main().and(other.main())) {
        None => names(other.main()),
        Some(both) if both.is_empty() => {
            say!("other muscles: {muscles}", muscles = names(other.main()))
        }
        Some(both) => say!("in common: {muscles}", muscles = names(both)),
    }
}

fn is_logged(state: &State, written: &Block) -> bool {
    state
        .slots
        .iter()
        .any(|slot| slot.planned.key.block == written.id && slot.logged().is_some())
}

/// Another exercise for what is left of the block.
pub fn swap_panel(app: Stanchion, close: Callback<()>) -> AnyView {
    let offer = app.of(offer);
    let shown = Live::new(SHOWN);
    let inside = dynamic(move || match offer.get() {
        None => ().into_any(),
        Some(Offer {
            under_way: Some(set),
            now,
            ..
        }) => stop_first(app, set, now),
        Some(offer) => choice(app, &offer, shown, close),
    });
    panel("swap-panel", t("Another exercise"), close, vec![inside])
}

/// That a set of `now` is under way, and what stops it.
pub fn stop_first(app: Stanchion, set: SetKey, now: String) -> AnyView {
    vec![
        line(
            "",
            "swap-waits",
            say!("A set of {now} is under way. Stop it first.", now),
        ),
        button("wide strong", "swap-stop", t("Stop the set"), move || {
            app.act(What::SetStopped { set, heard: None });
        }),
    ]
    .into_any()
}

fn choice(app: Stanchion, offer: &Offer, shown: Live<usize>, close: Callback<()>) -> AnyView {
    let mut inside = vec![quiet(say!("In place of: {name}", name = offer.now))];
    if offer.logged {
        inside.push(line("", "swap-logged", logged_words()));
    }
    if offer.instead.is_empty() {
        inside.push(line("", "swap-none", none_words()));
    }
    let most = shown.get();
    let rows = offer.instead.iter().take(most);
    let rows = rows.map(|instead| row(app, instead, close)).collect();
    inside.push(list("more", None, rows));
    if offer.instead.len() > most {
        inside.push(button("wide", "swap-more", t("Show more"), move || {
            shown.update(|shown| *shown += SHOWN);
        }));
    }
    inside.into_any()
}

/// What is said when sets of the block are logged.
fn logged_words() -> &'static str {
    t("Sets done stay as they are. Ramp up to the other exercise before its work sets.")
}

/// What is said when there is nothing to choose from.
fn none_words() -> &'static str {
    t("The list has nothing else of this movement that the kit can do.")
}

fn row(app: Stanchion, instead: &Instead, close: Callback<()>) -> AnyView {
    let swap = instead.swap.clone();
    let name = swap.exercise.said();
    let inside = vec![
        el("strong").child(name).view(),
        el("span")
            .class("quiet")
            .child(instead.about.clone())
            .view(),
    ];
    let take = Callback::new(move |()| {
        app.act(What::BlockSwapped(Box::new(swap.clone())));
        close.run(());
    });
    tap("row", "swap-to", None, inside.into_any(), take)
}
