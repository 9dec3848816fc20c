//! The screen of a session under way: rail, board, pad, and the panel that may lie over them.

use super::board::{NextUp, SetBoard};
use super::more::{MorePanel, NotePanel, OrderPanel};
use super::pad::{DonePad, LastTap, RestPad, SetPad};
use super::panels::{AmendPanel, LoadPanel, ReservePanel};
use super::rail::Rail;
use crate::session::{Board, Phase, State};
use crate::sheet::SetKey;
use crate::ui::model::Model;
use crate::ui::stanchion::stanchion;
use leptos::prelude::*;

/// Which panel lies over the floor.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Open {
    /// None.
    Nothing,
    /// Another load for the set.
    Load,
    /// Reps in reserve of the set.
    Reserve,
    /// Correction of the set logged last.
    Amend,
    /// Everything else.
    More,
    /// A note.
    Note,
    /// The order of what is left.
    Order,
}

/// What the floor shows, whatever the clock says.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Face {
    Set(SetKey),
    Rest(SetKey),
    AllDone,
}

/// The board of the set that is to be done now or next.
pub fn current_board(model: &Model) -> Option<Board> {
    let state = model.session.as_ref()?.state();
    let slot = state.current()?;
    let history = model.history(&state.block_of(slot).exercise.id);
    Some(state.board(slot, &model.kit, history))
}

fn face(state: &State, rest_is_over: bool) -> Face {
    match (&state.phase, state.current()) {
        (_, None) => Face::AllDone,
        (Phase::Resting(rest), Some(slot)) if rest.held || !rest_is_over => {
            Face::Rest(slot.planned.key)
        }
        (_, Some(slot)) => Face::Set(slot.planned.key),
    }
}

/// The screen of a session under way.
#[component]
pub fn Screen() -> impl IntoView {
    let app = stanchion();
    let open = RwSignal::new(Open::Nothing);
    provide_context(LastTap::none());
    let rest_is_over = Memo::new(move |_| {
        let now = app.now.get();
        app.model.with(
            |model| match model.session.as_ref().map(|session| session.state().phase) {
                Some(Phase::Resting(rest)) => rest.left_ms(&now).is_some_and(|left| left <= 0),
                _ => false,
            },
        )
    });
    let face = Memo::new(move |_| {
        app.model.with(|model| {
            model.session.as_ref().map_or(Face::AllDone, |session| {
                face(session.state(), rest_is_over.get())
            })
        })
    });
    let board = app.of(current_board);
    // A panel belongs to the set it was opened on.
    Effect::new(move |before: Option<Face>| {
        let now = face.get();
        if before.is_some_and(|before| before != now) {
            open.set(Open::Nothing);
        }
        now
    });
    view! {
        <div class="floor" data-part="floor">
            <div class="floor-upper">
                <Rail/>
                {move || match face.get() {
                    Face::Set(_) => view! { <SetBoard board/> }.into_any(),
                    Face::Rest(_) => view! { <NextUp board open/> }.into_any(),
                    Face::AllDone => view! {
                        <section class="board" data-part="board">
                            <h1 class="board-exercise">"All sets done"</h1>
                            <p class="board-because">"Rack everything, breathe, drink."</p>
                        </section>
                    }
                    .into_any(),
                }}
            </div>
            {move || match face.get() {
                Face::Set(_) => view! { <SetPad board open/> }.into_any(),
                Face::Rest(_) => view! { <RestPad open/> }.into_any(),
                Face::AllDone => view! { <DonePad open/> }.into_any(),
            }}
            {move || {
                let close = Callback::new(move |()| open.set(Open::Nothing));
                match open.get() {
                    Open::Nothing => ().into_any(),
                    Open::Load => view! { <LoadPanel board close/> }.into_any(),
                    Open::Reserve => view! { <ReservePanel board close/> }.into_any(),
                    Open::Amend => view! { <AmendPanel close/> }.into_any(),
                    Open::More => view! { <MorePanel open close/> }.into_any(),
                    Open::Note => view! { <NotePanel close/> }.into_any(),
                    Open::Order => view! { <OrderPanel close/> }.into_any(),
                }
            }}
        </div>
    }
}
