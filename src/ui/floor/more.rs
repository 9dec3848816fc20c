//! The panel with everything else: undo, skip, add or drop a set, order, note, end.

use super::panels::opens;
use super::screen::Open;
use crate::session::{State, What};
use crate::sheet::{Note, SetKey};
use crate::ui::parts::Panel;
use crate::ui::stanchion::stanchion;
use leptos::prelude::*;

/// The set that is to be done now or next.
fn current(state: &State) -> Option<SetKey> {
    state.current().map(|slot| slot.planned.key)
}

/// Everything else that can be done on the floor.
#[component]
pub fn MorePanel(open: RwSignal<Open>, close: Callback<()>) -> impl IntoView {
    let app = stanchion();
    let set = app.of(|model| {
        model
            .session
            .as_ref()
            .and_then(|session| current(session.state()))
    });
    let can_undo = app.of(|model| {
        model
            .session
            .as_ref()
            .is_some_and(|session| session.newest_undoable().is_some())
    });
    // A line to add a set to: that of the current set, else that of the last one.
    let line = app.of(|model| {
        let state = model.session.as_ref()?.state();
        state
            .current()
            .or(state.last_logged())
            .map(|slot| slot.planned.key)
    });
    let ending = RwSignal::new(false);
    let act = move |what: What| {
        app.act(what);
        close.run(());
    };
    view! {
        <Panel title="More" part="more-panel" close>
            <div class="more">
                <button data-part="undo" disabled=move || !can_undo.get() on:click=move |_| { app.undo(); close.run(()); }>
                    "Undo the last tap"
                </button>
                {move || set.get().map(|set| view! {
                    <button data-part="skip" on:click=move |_| act(What::SetSkipped { set })>"Skip this set"</button>
                    <button data-part="drop" on:click=move |_| act(What::SetDropped { set })>"Take this set off"</button>
                })}
                {move || line.get().map(|key| view! {
                    <button data-part="add" on:click=move |_| act(What::SetAdded { block: key.block, line: key.line })>
                        "One set more"
                    </button>
                })}
                <button data-part="order" on:click=opens(open, Open::Order)>"Other order"</button>
                <button data-part="note" on:click=opens(open, Open::Note)>"Note"</button>
                <Show
                    when=move || ending.get()
                    fallback=move || view! {
                        <button data-part="end-ask" on:click=move |_| ending.set(true)>"End the session"</button>
                    }
                >
                    <button class="strong" data-part="end-now" on:click=move |_| act(What::Ended)>
                        "End it now; what is left stays undone"
                    </button>
                </Show>
            </div>
        </Panel>
    }
}

/// A note on the session.
#[component]
pub fn NotePanel(close: Callback<()>) -> impl IntoView {
    let app = stanchion();
    let wrong = RwSignal::new(None::<String>);
    let before = app.model.with_untracked(|model| {
        model
            .session
            .as_ref()
            .and_then(|session| session.state().note.clone())
            .unwrap_or_default()
    });
    let text = RwSignal::new(before.as_str().to_owned());
    view! {
        <Panel title="Note on this session" part="note-panel" close>
            <textarea
                class="note"
                rows="4"
                data-part="note-text"
                aria-label="note"
                prop:value=move || text.get()
                on:input=move |event| text.set(event_target_value(&event))
            ></textarea>
            <p class="wrong-word" role="alert">{move || wrong.get()}</p>
            <button
                class="wide strong"
                data-part="note-keep"
                on:click=move |_| match Note::new(&text.get_untracked()) {
                    Ok(text) => {
                        app.act(What::Noted { set: None, text });
                        close.run(());
                    }
                    Err(error) => wrong.set(Some(error.to_string())),
                }
            >
                "Keep"
            </button>
        </Panel>
    }
}

/// The groups that still have sets to do, in order: index on the sheet and names of the exercises.
fn groups_left(state: &State) -> Vec<(usize, String)> {
    let left = |group: usize| {
        state.slots.iter().any(|slot| {
            slot.planned.group == group && slot.status == crate::session::Status::Pending
        })
    };
    let name = |group: usize| {
        let blocks = state.began.sheet.groups[group].blocks();
        blocks
            .iter()
            .map(|block| block.exercise.name.to_string())
            .collect::<Vec<_>>()
            .join(" + ")
    };
    state
        .order
        .iter()
        .copied()
        .filter(|&group| left(group))
        .map(|group| (group, name(group)))
        .collect()
}

/// The order of what is left.
#[component]
pub fn OrderPanel(close: Callback<()>) -> impl IntoView {
    let app = stanchion();
    let left = app.of(|model| {
        model
            .session
            .as_ref()
            .map(|session| groups_left(session.state()))
            .unwrap_or_default()
    });
    // Brings a group before all others that are left.
    let first = move |group: usize| {
        let order = app.model.with_untracked(|model| {
            model
                .session
                .as_ref()
                .map(|session| session.state().order.clone())
                .unwrap_or_default()
        });
        let rest = order.into_iter().filter(|&other| other != group);
        let first_left = left.with_untracked(|left| left.first().map(|(group, _)| *group));
        let mut wanted: Vec<u8> = Vec::new();
        for other in rest {
            if Some(other) == first_left {
                wanted.push(group as u8);
            }
            wanted.push(other as u8);
        }
        app.act(What::OrderChanged { groups: wanted });
        close.run(());
    };
    view! {
        <Panel title="Do next" part="order-panel" close>
            <ul class="more">
                {move || left.get().into_iter().enumerate().map(|(place, (group, name))| view! {
                    <li>
                        <button data-part="order-first" disabled=place == 0 on:click=move |_| first(group)>
                            {if place == 0 { format!("{name} (now)") } else { name }}
                        </button>
                    </li>
                }).collect_view()}
            </ul>
        </Panel>
    }
}
