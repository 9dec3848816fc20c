//! Panels over the floor: another load, reps in reserve, correction of the last set.

use super::board::load_word;
use super::screen::Open;
use crate::kit::Kit;
use crate::session::{Board, Done, What};
use crate::sheet::{Equipment, SetKey};
use crate::strength::jump_caution;
use crate::ui::model::Model;
use crate::ui::parts::{Panel, Stepper};
use crate::ui::stanchion::stanchion;
use crate::units::{Load, Reps, Rir};
use leptos::prelude::*;

/// The equipment of a set's exercise.
fn equipment(model: &Model, key: SetKey) -> Equipment {
    let block = model
        .session
        .as_ref()
        .and_then(|session| session.state().began.sheet.block(key.block));
    block.map_or(Equipment::Other, |block| block.exercise.equipment)
}

/// The next load up or down that the kit can make; from nothing, the lightest.
fn stepped(kit: &Kit, equipment: Equipment, load: Option<Load>, up: bool) -> Option<Load> {
    match load {
        None => kit.at_or_above(equipment, Load::ZERO),
        Some(load) if up => kit.next_above(equipment, load),
        Some(load) => kit.next_below(equipment, load),
    }
}

/// Another load for the set on the board.
#[component]
pub fn LoadPanel(board: Memo<Option<Board>>, close: Callback<()>) -> impl IntoView {
    let app = stanchion();
    let unit = app.of(Model::unit);
    let wrong = RwSignal::new(None::<String>);
    let choose = move |load: Load| {
        if let Some(board) = board.get_untracked() {
            wrong.set(None);
            app.act(What::LoadChosen {
                set: board.key,
                load,
                proposed: board.prescribed,
            });
        }
    };
    let step = move |up: bool| {
        let next = app.model.with_untracked(|model| {
            let board = board.get_untracked()?;
            stepped(&model.kit, equipment(model, board.key), board.load, up)
        });
        match next {
            Some(load) => choose(load),
            None => wrong.set(Some("The kit has nothing further that way.".to_owned())),
        }
    };
    let figure = Signal::derive(move || {
        board
            .get()
            .and_then(|board| board.load)
            .map_or_else(|| "?".to_owned(), |load| load.shown(unit.get()))
    });
    let caution = Memo::new(move |_| {
        board.get().is_some_and(|board| {
            board
                .load
                .is_some_and(|load| !board.basis.assists() && jump_caution(board.prescribed, load))
        })
    });
    let typed = move |text: String| {
        let fits = Load::parse_in(&text, unit.get_untracked());
        match fits {
            Ok(load) => choose(load),
            Err(error) => wrong.set(Some(error.to_string())),
        }
    };
    view! {
        <Panel title="Load" part="load-panel" close>
            <Stepper what="load" part="load-step" figure less=move || step(false) more=move || step(true)/>
            <label class="field">
                <span>{move || format!("or type it, {}", board.get().map(|b| load_word(&b.basis, unit.get())).unwrap_or_default())}</span>
                <input
                    type="text"
                    inputmode="decimal"
                    data-part="load-typed"
                    aria-describedby="load-wrong"
                    on:change=move |event| typed(event_target_value(&event))
                />
            </label>
            <p class="wrong-word" id="load-wrong" role="alert">{move || wrong.get()}</p>
            <Show when=move || caution.get()>
                <p class="caution" data-part="jump-caution">
                    "More than 10 % above what is proposed. Warm up to it, use safety bars or a spotter, and stop when technique goes."
                </p>
            </Show>
            <div class="panel-row">
                {move || board.get().filter(|board| board.overruled).and_then(|board| board.prescribed).map(|load| view! {
                    <button class="wide" data-part="load-proposed" on:click=move |_| choose(load)>
                        {format!("as proposed: {}", load.shown(unit.get()))}
                    </button>
                })}
                <button class="wide strong" data-part="load-use" on:click=move |_| close.run(())>"Use it"</button>
            </div>
        </Panel>
    }
}

/// Buttons for reps in reserve.
#[component]
fn Reserves(
    /// The one that is said.
    #[prop(into)]
    said: Signal<Option<Rir>>,
    choose: impl Fn(Rir) + Copy + 'static,
) -> impl IntoView {
    view! {
        <div class="choices" role="group" aria-label="reps in reserve">
            {(0..=5)
                .map(|n| {
                    let rir = Rir::saturating(n);
                    view! {
                        <button
                            class="choice"
                            data-part=format!("reserve-{n}")
                            aria-pressed=move || (said.get() == Some(rir)).to_string()
                            on:click=move |_| choose(rir)
                        >
                            {if n == 5 { "5+".to_owned() } else { n.to_string() }}
                        </button>
                    }
                })
                .collect_view()}
        </div>
    }
}

/// Reps in reserve of the set on the board.
#[component]
pub fn ReservePanel(board: Memo<Option<Board>>, close: Callback<()>) -> impl IntoView {
    let app = stanchion();
    let said = Signal::derive(move || board.get().and_then(|board| board.reserve));
    view! {
        <Panel title="Reps left in reserve" part="reserve-panel" close>
            <p class="quiet">"How many more could you have done well? 0 is none."</p>
            <Reserves
                said
                choose=move |reserve| {
                    if let Some(board) = board.get_untracked() {
                        app.act(What::ReserveChosen { set: board.key, reserve });
                    }
                    close.run(());
                }
            />
        </Panel>
    }
}

/// The set that was logged last, with the equipment of its exercise.
fn last(model: &Model) -> Option<(SetKey, Done, Equipment)> {
    let slot = model.session.as_ref()?.state().last_logged()?;
    let key = slot.planned.key;
    Some((key, slot.logged()?.done.clone(), equipment(model, key)))
}

/// Correction of the set logged last.
#[component]
pub fn AmendPanel(close: Callback<()>) -> impl IntoView {
    let app = stanchion();
    let unit = app.of(Model::unit);
    let last = app.of(last);
    let amend = move |change: &dyn Fn(&Done) -> Done| {
        if let Some((set, done, _)) = last.get_untracked() {
            app.act(What::SetAmended {
                set,
                done: change(&done),
            });
        }
    };
    let step_reps = move |by: i64| {
        if let Some(reps) = last
            .get_untracked()
            .and_then(|(_, done, _)| done.amount.reps())
        {
            amend(&|done| done.with_reps(Reps::saturating(i64::from(reps) + by)));
        }
    };
    let step_load = move |up: bool| {
        let next = app.model.with_untracked(|model| {
            let (_, done, equipment) = last.get_untracked()?;
            stepped(&model.kit, equipment, done.load, up)
        });
        if let Some(load) = next {
            amend(&|done| done.with_load(Some(load)));
        }
    };
    let reps = Signal::derive(move || {
        last.get()
            .and_then(|(_, done, _)| done.amount.reps())
            .map(|reps| format!("{reps} reps"))
            .unwrap_or_default()
    });
    let load = Signal::derive(move || {
        last.get()
            .and_then(|(_, done, _)| done.load)
            .map(|load| load.shown(unit.get()))
            .unwrap_or_default()
    });
    let said = Signal::derive(move || last.get().and_then(|(_, done, _)| done.reserve));
    view! {
        <Panel title="Change the last set" part="amend-panel" close>
            <Show when=move || !reps.get().is_empty()>
                <Stepper what="rep" part="amend-reps" figure=reps less=move || step_reps(-1) more=move || step_reps(1)/>
            </Show>
            <Show when=move || !load.get().is_empty()>
                <Stepper
                    what="load"
                    part="amend-load"
                    figure=load
                    less=move || step_load(false)
                    more=move || step_load(true)
                />
            </Show>
            <p class="quiet">"reps left in reserve"</p>
            <Reserves said choose=move |reserve| amend(&|done| done.with_reserve(Some(reserve)))/>
            <button class="wide strong" data-part="amend-close" on:click=move |_| close.run(())>"Done"</button>
        </Panel>
    }
}

/// Opens a panel.
pub fn opens(open: RwSignal<Open>, which: Open) -> impl Fn(leptos::ev::MouseEvent) + Copy {
    move |_| open.set(which)
}
