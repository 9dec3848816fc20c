//! The first tap rehearsed: a browser compiles a function when it is called for the first time, and the tap that logs the
//! first set would wait for all that it calls. While nothing else is to be done it is gone through out of sight.

use super::hands::{Hands, done_now};
use super::pad::rest_pad;
use super::screen::{Face, Open, boards, current_board};
use crate::device::idle::when_idle;
use crate::device::painted::once_painted;
use crate::session::What;
use crate::ui::happen::{Lies, take_all};
use crate::ui::live::Live;
use crate::ui::model::Model;
use crate::ui::seen::Seen;
use crate::ui::stanchion::{Stanchion, moment};
use leptos::prelude::*;
use leptos::tachys::view::Render;
use std::array::IntoIter;
use std::cell::Cell;

thread_local! {
    static DONE: Cell<bool> = const { Cell::new(false) };
}

/// Rehearses the first tap of this page, once, when the floor is painted and the browser idle.
pub fn rehearse_soon(app: Stanchion) {
    once_painted(move || {
        when_idle(move || {
            if !DONE.replace(true) {
                rehearse(app);
            }
        });
    });
}

/// Logs the set that is next, draws its rest and takes it back: in a model of its own that nobody sees and nothing is
/// written of. Each step waits for the browser to be idle again, so that a tap meanwhile waits for one of them at most.
fn rehearse(app: Stanchion) {
    if let Some(model) = app.model.with_untracked(stage) {
        let owner = Owner::new();
        let stage = owner.with(|| app.on_stage(model));
        let steps: [fn(Stanchion) -> Option<()>; 4] = [log, draw_boards, draw_pad, take_back];
        rehearse_on(owner, stage, steps.into_iter());
    }
}

fn rehearse_on(
    owner: Owner,
    stage: Stanchion,
    mut steps: IntoIter<fn(Stanchion) -> Option<()>, 4>,
) {
    let next = steps.next();
    let went = next.and_then(|next| owner.with(|| untrack(|| next(stage))));
    match went {
        Some(()) => when_idle(move || rehearse_on(owner, stage, steps)),
        None => owner.cleanup(),
    }
}

/// What of the model a tap on the floor looks at.
fn stage(model: &Model) -> Option<Model> {
    let session = model.session.as_ref().filter(|_| model.pair.is_none())?;
    let state = session.state();
    let exercise = &state.block_of(state.current()?).exercise.id;
    let mut stage = Model {
        session: Some(session.clone()),
        kit: model.kit.clone(),
        lifter: model.lifter.clone(),
        ..Model::default()
    };
    if let Some(summary) = model.summaries.get(exercise) {
        stage.summaries.insert(exercise.clone(), summary.clone());
    }
    Some(stage)
}

fn log(app: Stanchion) -> Option<()> {
    let board = app.model.with_untracked(current_board)?;
    take(app, vec![done_now(app, &board)?]);
    Some(())
}

/// The rest that the floor shows now.
fn rest(app: Stanchion) -> Option<Seen<Face>> {
    let board = app.model.with_untracked(current_board)?;
    Some(Seen::fixed(Face::Rest(board.key)))
}

fn draw_boards(app: Stanchion) -> Option<()> {
    let open = Live::new(Open::Nothing);
    drop(boards(app, rest(app)?, app.of(current_board), open).build());
    Some(())
}

fn draw_pad(app: Stanchion) -> Option<()> {
    let hands = Hands::on(app, app.of(current_board), rest(app)?);
    drop(rest_pad(hands).build());
    Some(())
}

fn take_back(app: Stanchion) -> Option<()> {
    let targets = app
        .model
        .with_untracked(|model| Some(model.session.as_ref()?.undo_last_set()))?;
    let undone = |event| What::Undone { event };
    take(app, targets.into_iter().map(undone).collect());
    Some(())
}

fn take(app: Stanchion, whats: Vec<What>) {
    let events = whats.into_iter().map(|what| app.event(moment(), what));
    let events = events.collect();
    app.model
        .update(|model| drop(take_all(model, Lies::OnFloor, events)));
}
