//! One session: every set as it was done, and the correction of a set.

use crate::ledger::{DoneLine, SessionRecord, Volume};
use crate::session::{Done, Session, SessionId, What};
use crate::sheet::{LoadBasis, SetKey};
use crate::store::{SessionLog, Shelf};
use crate::ui::floor::{logged_line, rpe_word};
use crate::ui::model::Model;
use crate::ui::parts::{Panel, Stepper};
use crate::ui::place::Place;
use crate::ui::stanchion::{Stanchion, stanchion};
use crate::units::{Load, Reps, Rir, Rpe, Unit, clock};
use leptos::prelude::*;
use leptos::task::spawn_local;

/// Reads the session into the model.
fn open(app: Stanchion, id: SessionId) {
    let is_open = app.model.with_untracked(|model| {
        model
            .opened
            .as_ref()
            .is_some_and(|session| session.state().began.session == id)
    });
    if is_open {
        return;
    }
    app.model.update(|model| model.opened = None);
    spawn_local(async move {
        match app
            .keep()
            .get::<SessionLog>(Shelf::Sessions, &id.0.to_string())
            .await
        {
            Ok(log) => {
                let session = log.and_then(|log| Session::replay(log.events()).ok());
                if session.is_none() {
                    app.complain("This session is not stored here, or cannot be read.");
                }
                app.model.update(|model| model.opened = session);
            }
            Err(error) => app.complain(error.to_string()),
        }
    });
}

fn record(model: &Model, id: SessionId) -> Option<SessionRecord> {
    let session = model
        .opened
        .as_ref()
        .filter(|session| session.state().began.session == id)?;
    SessionRecord::from_events(session.events()).ok()
}

/// One session of the ledger.
#[component]
pub fn SessionPlace(id: SessionId) -> impl IntoView {
    let app = stanchion();
    open(app, id);
    let record = app.of(move |model| record(model, id));
    let unit = app.of(Model::unit);
    let correcting = RwSignal::new(None::<SetKey>);
    move || {
        record.get().map(|record| {
            let unit = unit.get();
            let volume = Volume::of(&record);
            view! {
                <div class="page" data-part="session-record">
                    <p><a href=Place::Ledger.href()>"All sessions"</a></p>
                    <h1>{record.sheet_name.to_string()}</h1>
                    <p class="quiet">{record.began.format("%A %-d %B %Y, %H:%M").to_string()}</p>
                    <p data-part="facts">
                        {format!(
                            "{} · {} sets · {} volume load of work sets",
                            clock((record.duration_ms / 1000) as i64),
                            record.lines().count(),
                            volume.work.shown(unit),
                        )}
                    </p>
                    {record.note.as_ref().map(|note| view! { <p class="because">{note.as_str().to_owned()}</p> })}
                    {record.blocks.iter().filter(|block| !block.lines.is_empty()).map(|block| view! {
                        <section class="group">
                            <h2>{block.block.exercise.name.to_string()}</h2>
                            <ul class="rows">
                                {block.lines.iter().map(|line| view! {
                                    <SetRow line=line.clone() basis=block.block.basis.clone() unit correcting/>
                                }).collect_view()}
                            </ul>
                        </section>
                    }).collect_view()}
                    <Rating rpe=record.rpe/>
                </div>
                {correcting.get().map(|key| view! { <CorrectPanel id key correcting/> })}
            }
        })
    }
}

/// One set; a tap corrects it.
#[component]
fn SetRow(
    line: DoneLine,
    basis: LoadBasis,
    unit: Unit,
    correcting: RwSignal<Option<SetKey>>,
) -> impl IntoView {
    let key = line.key;
    let done = Done {
        load: line.load,
        amount: line.amount.clone(),
        reserve: line.reserve,
    };
    let mut facts = vec![line.kind.name().to_owned()];
    if let Some(reserve) = line.reserve {
        facts.push(format!("{reserve} in reserve"));
    }
    if let Some(rest) = line.rest_taken {
        facts.push(format!("rest {}", clock(i64::from(rest))));
    }
    if let Some(proposed) = line
        .proposed
        .filter(|proposed| Some(*proposed) != line.load)
    {
        facts.push(format!("proposed was {}", proposed.shown(unit)));
    }
    if let Some(original) = &line.original {
        facts.push(format!(
            "first logged as {}",
            logged_line(original, &basis, unit)
        ));
    }
    view! {
        <li>
            <button class="row" data-part="set" aria-haspopup="dialog" on:click=move |_| correcting.set(Some(key))>
                <strong>{logged_line(&done, &basis, unit)}</strong>
                <span class="quiet">{facts.join(" · ")}</span>
            </button>
        </li>
    }
}

/// The rating, given or still to be given.
#[component]
fn Rating(rpe: Option<Rpe>) -> impl IntoView {
    let app = stanchion();
    view! {
        <section class="group">
            <h2>"Session RPE"</h2>
            <div class="choices" role="group" aria-label="session RPE">
                {(0..=10).map(|n| {
                    let value = Rpe::saturating(n);
                    let word = rpe_word(n);
                    view! {
                        <button
                            class="choice"
                            aria-pressed=(rpe == Some(value)).to_string()
                            aria-label=if word.is_empty() { n.to_string() } else { format!("{n}, {word}") }
                            on:click=move |_| { app.correct(What::Rated { rpe: value }); }
                        >
                            {n}
                        </button>
                    }
                }).collect_view()}
            </div>
        </section>
    }
}

/// What was logged of a set.
fn done_of(model: &Model, id: SessionId, key: SetKey) -> Option<Done> {
    let session = model
        .opened
        .as_ref()
        .filter(|session| session.state().began.session == id)?;
    Some(session.state().slot(key)?.logged()?.done.clone())
}

/// Correction of one set: kept as an event; what was logged first is kept too.
#[component]
fn CorrectPanel(id: SessionId, key: SetKey, correcting: RwSignal<Option<SetKey>>) -> impl IntoView {
    let app = stanchion();
    let unit = app.model.with_untracked(Model::unit);
    let before = app.model.with_untracked(|model| done_of(model, id, key));
    let Some(before) = before else {
        return ().into_any();
    };
    let reps = RwSignal::new(
        before
            .amount
            .reps()
            .map(|reps| reps.to_string())
            .unwrap_or_default(),
    );
    let load = RwSignal::new(
        before
            .load
            .map(|load| load.figure(unit))
            .unwrap_or_default(),
    );
    let reserve = RwSignal::new(
        before
            .reserve
            .map(|reserve| reserve.to_string())
            .unwrap_or_default(),
    );
    let wrong = RwSignal::new(None::<String>);
    let close = Callback::new(move |()| correcting.set(None));
    let has_reps = before.amount.reps().is_some();
    let has_load = before.load.is_some();
    let step = move |by: i64| {
        let now = Reps::parse(&reps.get_untracked()).map_or(0, i64::from);
        reps.set(Reps::saturating(now + by).to_string());
    };
    let keep = move || -> Result<(), String> {
        let mut done = before.clone();
        if has_reps {
            done = done
                .with_reps(Reps::parse(&reps.get_untracked()).map_err(|error| error.to_string())?);
        }
        if has_load {
            let typed = load.get_untracked();
            // Untouched, it stays as exact as it was logged.
            if Some(typed.clone()) != before.load.map(|load| load.figure(unit)) {
                let load = Load::parse_in(&typed, unit).map_err(|error| error.to_string())?;
                done = done.with_load(Some(load));
            }
        }
        let said = reserve.get_untracked();
        let said = if said.trim().is_empty() {
            None
        } else {
            Some(Rir::parse(&said).map_err(|error| error.to_string())?)
        };
        done = done.with_reserve(said);
        if done != before {
            app.correct(What::SetAmended { set: key, done });
        }
        Ok(())
    };
    view! {
        <Panel title="Correct this set" part="correct-panel" close>
            {has_reps.then(|| view! {
                <Stepper what="rep" part="correct-reps" figure=reps less=move || step(-1) more=move || step(1)/>
            })}
            {has_load.then(|| view! {
                <label class="field">
                    <span>{format!("load, {unit}")}</span>
                    <input
                        type="text"
                        inputmode="decimal"
                        data-part="correct-load"
                        prop:value=move || load.get()
                        on:input=move |event| load.set(event_target_value(&event))
                    />
                </label>
            })}
            <label class="field">
                <span>"reps in reserve, if known"</span>
                <input
                    type="text"
                    inputmode="numeric"
                    data-part="correct-reserve"
                    prop:value=move || reserve.get()
                    on:input=move |event| reserve.set(event_target_value(&event))
                />
            </label>
            <p class="wrong-word" role="alert" data-part="correct-wrong">{move || wrong.get()}</p>
            <button
                class="wide strong"
                data-part="correct-keep"
                on:click=move |_| match keep() {
                    Ok(()) => close.run(()),
                    Err(why) => wrong.set(Some(why)),
                }
            >
                "Keep the correction"
            </button>
        </Panel>
    }
    .into_any()
}
