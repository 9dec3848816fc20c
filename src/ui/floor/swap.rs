//! Another exercise for what is left of the block: those of the same movement that the kit can do, nearest first.

use crate::exercises::{Entry, alike, entry, of_pattern};
use crate::kit::Kit;
use crate::session::{Phase, State, Swap, What};
use crate::sheet::{Block, SetKey};
use crate::ui::model::Model;
use crate::ui::parts::{button, dynamic, line, list, panel, quiet, tap};
use crate::ui::stanchion::Stanchion;
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
    let under_way = match state.phase {
        Phase::Working { set, .. } if set.block == written.id => Some(set),
        _ => None,
    };
    let as_written = (now.id != written.exercise.id).then(|| Instead {
        swap: Swap::back(written, model.history(&written.exercise.id), &model.kit),
        about: "as the sheet says".to_owned(),
    });
    let others = entries(written, &model.kit)
        .into_iter()
        .filter(|entry| ![&now.id, &written.exercise.id].contains(&&entry.id()))
        .filter_map(|entry| instead(model, written, entry));
    Some(Offer {
        now: now.name.to_string(),
        under_way,
        logged: is_logged(state, written),
        instead: as_written.into_iter().chain(others).collect(),
    })
}

/// What the list of exercises has for a block; by the movement alone for an exercise that is not in it.
fn entries(written: &Block, kit: &Kit) -> Vec<&'static Entry> {
    let id = written.exercise.id.as_str();
    if entry(id).is_some() {
        alike(id, kit)
    } else {
        of_pattern(written.exercise.pattern, kit).collect()
    }
}

fn instead(model: &Model, written: &Block, entry: &Entry) -> Option<Instead> {
    let exercise = entry.exercise_with(&model.kit)?;
    let about = format!(
        "{} · {}",
        exercise.equipment.name(),
        muscles(written, entry)
    );
    let history = model.history(&exercise.id);
    let swap = Swap::to(
        written,
        exercise.clone(),
        entry.basis(),
        entry.sides(),
        entry.cautions(),
        history,
        &model.kit,
    );
    Some(Instead { swap, about })
}

/// The main muscles that both work; where there are none, or the written one is not known, those of the other.
fn muscles(written: &Block, other: &Entry) -> String {
    let from = entry(written.exercise.id.as_str());
    let names = |common: bool| {
        let main = other
            .main()
            .filter(|muscle| !common || from.is_some_and(|from| from.main().any(|m| m == *muscle)));
        main.map(|muscle| muscle.name())
            .collect::<Vec<_>>()
            .join(", ")
    };
    match (from, names(true)) {
        (None, _) => names(false),
        (Some(_), both) if both.is_empty() => format!("other muscles: {}", names(false)),
        (Some(_), both) => format!("in common: {both}"),
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
    let shown = RwSignal::new(SHOWN);
    let inside = dynamic(move || match offer.get() {
        None => ().into_any(),
        Some(Offer {
            under_way: Some(set),
            now,
            ..
        }) => vec![
            line(
                "",
                "swap-waits",
                format!("A set of {now} is under way. Stop it first."),
            ),
            button("wide strong", "swap-stop", "Stop the set", move || {
                app.act(What::SetStopped { set });
            }),
        ]
        .into_any(),
        Some(offer) => choice(app, &offer, shown, close),
    });
    panel("swap-panel", "Another exercise", close, vec![inside])
}

fn choice(app: Stanchion, offer: &Offer, shown: RwSignal<usize>, close: Callback<()>) -> AnyView {
    let mut inside = vec![quiet(format!("In place of: {}", offer.now))];
    if offer.logged {
        inside.push(line("", "swap-logged", LOGGED_WORDS));
    }
    if offer.instead.is_empty() {
        inside.push(line("", "swap-none", NONE_WORDS));
    }
    let most = shown.get();
    let rows = offer.instead.iter().take(most);
    let rows = rows.map(|instead| row(app, instead, close)).collect();
    inside.push(list("more", None, rows));
    if offer.instead.len() > most {
        inside.push(button("wide", "swap-more", "Show more", move || {
            shown.update(|shown| *shown += SHOWN);
        }));
    }
    inside.into_any()
}

/// What is said when sets of the block are logged.
const LOGGED_WORDS: &str =
    "Sets done stay as they are. Ramp up to the other exercise before its work sets.";

/// What is said when there is nothing to choose from.
const NONE_WORDS: &str = "The list has nothing else of this movement that the kit can do.";

fn row(app: Stanchion, instead: &Instead, close: Callback<()>) -> AnyView {
    let swap = instead.swap.clone();
    let name = swap.exercise.name.to_string();
    let inside = view! {
        <strong>{name}</strong>
        <span class="quiet">{instead.about.clone()}</span>
    };
    let take = Callback::new(move |()| {
        app.act(What::BlockSwapped(Box::new(swap.clone())));
        close.run(());
    });
    tap("row", "swap-to", None, inside.into_any(), take)
}
