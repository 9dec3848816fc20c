//! What of the model is heard: the set or the rest under way, and the words of what comes next.

use crate::cues::next_words;
use crate::session::{Moment, Phase};
use crate::sheet::PlannedSet;
use crate::ui::floor::current_board;
use crate::ui::model::Model;

/// What sounds: the line of a set, or that of a rest.
#[derive(Debug, Clone, PartialEq)]
pub enum Sounding {
    /// Nothing is under way.
    Nothing,
    /// The cues of a set that was started at that moment.
    Set(Box<PlannedSet>, Moment),
    /// A rest of so many milliseconds that began at that moment.
    Rest(u64, Moment),
}

/// What sounds in this state of the model. A rest that is held open sounds no more, and a tab that only follows another
/// one leaves the sound to that.
pub fn sounding(model: &Model) -> Sounding {
    let Some(session) = model.session.as_ref().filter(|_| !model.follows) else {
        return Sounding::Nothing;
    };
    let state = session.state();
    match &state.phase {
        Phase::Working { set, since } => match state.slot(*set) {
            Some(slot) => Sounding::Set(Box::new(slot.planned.clone()), *since),
            None => Sounding::Nothing,
        },
        Phase::Resting(rest) if rest.held.is_none() => Sounding::Rest(rest.length_ms, rest.since),
        _ => Sounding::Nothing,
    }
}

/// What comes after the rest under way, in words to be said; the exercise only where it is another one than before.
pub fn next_said(model: &Model) -> Option<String> {
    let state = model.session.as_ref()?.state();
    if !matches!(state.phase, Phase::Resting(_)) {
        return None;
    }
    let next = state.current()?;
    let board = current_board(model)?;
    let same = state
        .last_logged()
        .is_some_and(|last| state.block_of(last).exercise.id == state.block_of(next).exercise.id);
    let exercise = (!same).then_some(board.exercise.as_str());
    Some(next_words(
        exercise,
        board.load,
        &board.basis,
        model.unit(),
        &board.target,
        board.sides,
    ))
}
