//! The screen of a session under way: rail, board, pad, and the panel that may lie over them.

use super::band::band_panel;
use super::board::{frame, set_board, title};
use super::end::done_pad;
use super::hands::Hands;
use super::heat::heat_panel;
use super::help::keys_panel;
use super::keys::{Meant, meant};
use super::more::{more_panel, note_panel, order_panel};
use super::pad::{rest_pad, set_pad};
use super::panels::{amend_panel, load_panel, reserve_panel};
use super::rail::{asleep, rail};
use super::rehearse::rehearse_soon;
use super::rest::rest_board;
use super::safety::{ask, safety_panel};
use super::short::short_panel;
use super::sides::sides_panel;
use super::swap::swap_panel;
use super::told::told;
use crate::device::dom;
use crate::device::events::{on_pointer, on_press};
use crate::device::painted::once_painted;
use crate::session::{Beside, Board, Phase, State};
use crate::sheet::{LoadBasis, SetKey};
use crate::ui::live::Live;
use crate::ui::model::Model;
use crate::ui::parts::{dynamic, el, words};
use crate::ui::seen::{Seen, whenever_after};
use crate::ui::stanchion::Stanchion;
use crate::words::t;
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
    /// What goes when time is short.
    Short,
    /// Each side with its own reps.
    Sides,
    /// The keys that work here.
    Keys,
    /// Whether a set to failure is safe.
    Safety,
}

/// What the floor shows, whatever the clock says.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Face {
    /// That set, to be done or under way.
    Set(SetKey),
    /// The rest before that set.
    Rest(SetKey),
    /// Nothing is left to do.
    AllDone,
}

/// The board of the set that is to be done now or next.
pub fn current_board(model: &Model) -> Option<Board> {
    let state = model.session.as_ref()?.state();
    let slot = state.current()?;
    let history = model.history(&state.block_of(slot).exercise.id);
    let other = model.partner().and_then(|other| {
        let state = other.session.as_ref()?.state();
        Some((other, state))
    });
    let Some((other, theirs)) = other else {
        return Some(state.board(slot, model.rack(), history));
    };
    let beside = Beside {
        state: theirs,
        theirs: &|exercise| other.history(exercise),
        own: &|exercise| model.history(exercise),
    };
    Some(state.board_beside(slot, model.rack(), history, Some(&beside)))
}

fn face(state: &State, rest_is_over: bool) -> Face {
    match (&state.phase, state.current()) {
        (_, None) => Face::AllDone,
        (Phase::Resting(rest), Some(slot)) if rest.held.is_some() || !rest_is_over => {
            Face::Rest(slot.planned.key)
        }
        (_, Some(slot)) => Face::Set(slot.planned.key),
    }
}

/// The board when nothing is left to do.
fn all_done() -> AnyView {
    frame(vec![
        title(t("All sets done").to_owned()),
        words("board-because", t("Put everything away, breathe, drink.")),
    ])
}

/// The panel that lies over the floor.
fn over(hands: Hands) -> AnyView {
    let Hands {
        app, board, open, ..
    } = hands;
    let close = Callback::new(move |()| open.set(Open::Nothing));
    dynamic(move || match open.get() {
        Open::Nothing => ().into_any(),
        Open::Sides => sides_panel(hands, close),
        Open::Safety => safety_panel(hands, close),
        // The others come with the rest of the app, and open when it is there.
        _ if !app.whole.get() => ().into_any(),
        Open::Load if with_band(board) => band_panel(app, close),
        Open::Load => load_panel(app, board, close),
        Open::Reserve => reserve_panel(app, board, close),
        Open::Amend => amend_panel(app, close),
        Open::More => more_panel(app, open, close),
        Open::Heat => heat_panel(app, close),
        Open::Note => note_panel(app, close),
        Open::Order => order_panel(app, close),
        Open::Swap => swap_panel(app, close),
        Open::Short => short_panel(hands, close),
        Open::Keys => keys_panel(hands, close),
    })
}

/// Whether the set on the board is done with a band.
fn with_band(board: Seen<Option<Board>>) -> bool {
    board.with_untracked(|board| {
        let basis = board.as_ref().map(|board| &board.basis);
        matches!(basis, Some(LoadBasis::Band(_)))
    })
}

/// Lets keys, pointers and the keyboard's place follow the floor while it is there.
fn follow(hands: Hands) {
    let keys = StoredValue::new_local(Some(on_press(move |press| {
        if hands.open.get_untracked() != Open::Nothing {
            return false;
        }
        match meant(press) {
            Meant::Theirs => false,
            Meant::Nothing => true,
            Meant::Wish(wish) => hands.wish(wish),
        }
    })));
    let pointers = StoredValue::new_local(Some(on_pointer(move |pointer| hands.touch(pointer))));
    hands.follow_headset();
    on_cleanup(move || {
        keys.set_value(None);
        pointers.set_value(None);
    });
    let settling = StoredValue::new(false);
    whenever_after(move |changed: Option<()>| {
        hands.app.model.track();
        hands.counting.track();
        hands.open.track();
        if changed.is_some() {
            // Once the page is painted: what had the keyboard may be gone, and keys would go nowhere.
            if !settling.get_value() {
                settling.set_value(true);
                once_painted(move || {
                    // Where the floor is gone meanwhile, so are these.
                    if settling
                        .try_update_value(|settling| *settling = false)
                        .is_some()
                    {
                        settle_focus(hands.open.get_untracked());
                    }
                });
            }
        }
    });
}

/// Gives the keyboard to the panel that is open, or else to the pad, where nothing has it any more.
fn settle_focus(open: Open) {
    if dom::focus_is_lost() {
        dom::focus_on(match open {
            Open::Nothing => ".pad-main",
            _ => ".panel",
        });
    }
}

/// The board that the floor shows. One effect follows all that it is a function of: a board that is
/// about to go is not redrawn first.
pub(super) fn boards(
    app: Stanchion,
    face: Seen<Face>,
    board: Seen<Option<Board>>,
    open: Live<Open>,
) -> AnyView {
    let unit = app.of(Model::unit);
    let turn = app.of(|model| {
        let state = model.session.as_ref()?.state();
        Some(state.turn(state.current()?.planned.key)?.said())
    });
    dynamic(move || match (face.get(), board.get()) {
        (Face::Set(_), Some(board)) => set_board(app, &board, turn.get(), unit.get()),
        (Face::Rest(_), Some(board)) => rest_board(app, &board, turn.get(), unit.get(), open),
        _ => all_done(),
    })
}

/// The screen of a session under way.
pub fn screen(app: Stanchion) -> AnyView {
    let rest_is_over = Seen::new(move || {
        let now = app.now.get();
        app.model.with(
            |model| match model.session.as_ref().map(|session| session.state().phase) {
                Some(Phase::Resting(rest)) => rest.left_ms(&now).is_some_and(|left| left <= 0),
                _ => false,
            },
        )
    });
    let face = Seen::new(move || {
        app.model.with(|model| {
            model.session.as_ref().map_or(Face::AllDone, |session| {
                face(session.state(), rest_is_over.get())
            })
        })
    });
    let board = app.of(current_board);
    let hands = Hands::on(app, board, face);
    let open = hands.open;
    if app.model.with_untracked(|model| model.partner().is_some()) {
        // The board turned to another one, under a finger that was on its way.
        hands.settle();
    }
    whenever_after(move |before: Option<Face>| {
        let now = face.get();
        if before.is_some_and(|before| before != now) {
            // With large text the window scrolls: what comes next is told at its top. After the picture, when it costs nothing.
            // Not where a rest ends by itself: the page would go from under a finger.
            let by_itself = matches!(before, Some(Face::Rest(_))) && rest_is_over.get_untracked();
            if !by_itself {
                once_painted(dom::scroll_to_top);
            }
            hands.ending.set(false);
            if open.get_untracked() == Open::Safety {
                // Not answered when the rest ended: it is asked again.
                hands.safety_asked.set_value(None);
            }
            // A panel belongs to the set it was opened on; what goes of the session belongs to none.
            if open.get_untracked() != Open::Short {
                open.set(Open::Nothing);
            }
            // The pad changed by itself, under a finger that was on its way.
            if rest_is_over.get_untracked() {
                hands.settle();
            }
        }
        if matches!(now, Face::Set(_)) {
            board.with(|board| ask(hands, board.as_ref()));
        }
        now
    });
    follow(hands);
    rehearse_soon(app);
    let upper = vec![rail(app), boards(app, face, board, open), asleep(app)];
    let lower = dynamic(move || match face.get() {
        Face::Set(_) => set_pad(hands),
        Face::Rest(_) => rest_pad(hands),
        Face::AllDone => done_pad(hands),
    });
    let over = over(hands);
    let told = told(app, face, board);
    el("div")
        .class("floor")
        .part("floor")
        .child(told)
        .child(
            el("div")
                // One element, so that what changes under a panel stays out of reach too.
                .class("floor-under")
                .child(
                    el("div")
                        .class("floor-upper")
                        .set("role", "region")
                        .set("aria-label", t("Board"))
                        .set("tabindex", "0")
                        .part("upper")
                        .child(upper)
                        .child(el("div").class("floor-end").set("aria-hidden", "true"))
                        .child(
                            el("div")
                                .class("floor-more")
                                .set("aria-hidden", "true")
                                .part("below")
                                .child(t("▾ more below")),
                        ),
                )
                .child(lower),
        )
        .child(over)
        .view()
}
