//! The screen of a session under way: rail, board, pad, and the panel that may lie over them.

use super::board::{frame, set_board, title};
use super::end::done_pad;
use super::heat::heat_panel;
use super::more::{more_panel, note_panel, order_panel};
use super::pad::{LastTap, rest_pad, set_pad};
use super::panels::{amend_panel, load_panel, reserve_panel};
use super::rail::rail;
use super::rest::rest_board;
use super::swap::swap_panel;
use crate::session::{Board, Phase, State};
use crate::sheet::SetKey;
use crate::ui::model::Model;
use crate::ui::parts::{dynamic, words};
use crate::ui::stanchion::Stanchion;
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
    /// Temperature and humidity.
    Heat,
    /// A note.
    Note,
    /// The order of what is left.
    Order,
    /// Another exercise for what is left of the block.
    Swap,
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

/// The board when nothing is left to do.
fn all_done() -> AnyView {
    frame(vec![
        title("All sets done".to_owned()),
        words("board-because", "Rack everything, breathe, drink."),
    ])
}

/// The panel that lies over the floor.
fn over(app: Stanchion, board: Memo<Option<Board>>, open: RwSignal<Open>) -> AnyView {
    let close = Callback::new(move |()| open.set(Open::Nothing));
    dynamic(move || match open.get() {
        Open::Nothing => ().into_any(),
        Open::Load => load_panel(app, board, close),
        Open::Reserve => reserve_panel(app, board, close),
        Open::Amend => amend_panel(app, close),
        Open::More => more_panel(app, open, close),
        Open::Heat => heat_panel(app, close),
        Open::Note => note_panel(app, close),
        Open::Order => order_panel(app, close),
        Open::Swap => swap_panel(app, close),
    })
}

/// The screen of a session under way.
pub fn screen(app: Stanchion) -> AnyView {
    let open = RwSignal::new(Open::Nothing);
    let tapped = LastTap::none();
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
    let upper = vec![
        rail(app),
        dynamic(move || match face.get() {
            Face::Set(_) => set_board(app, board),
            Face::Rest(_) => rest_board(app, board, open),
            Face::AllDone => all_done(),
        }),
    ];
    let lower = dynamic(move || match face.get() {
        Face::Set(_) => set_pad(app, board, open, tapped),
        Face::Rest(_) => rest_pad(app, board, open, tapped),
        Face::AllDone => done_pad(app, open, tapped),
    });
    let over = over(app, board, open);
    view! {
        <div class="floor" data-part="floor">
            <div class="floor-upper" role="region" aria-label="Board" tabindex="0" data-part="upper">
                {upper}
                <div class="floor-end" aria-hidden="true"></div>
                <div class="floor-more" aria-hidden="true" data-part="below">"▾ more below"</div>
            </div>
            {lower}
            {over}
        </div>
    }
    .into_any()
}
