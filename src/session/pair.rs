//! Two lifters at one rack, each in a session of their own: whose turn it is, whose tap is taken back, and what of both
//! the bar is planned over. All of it follows from the two sessions; nothing is kept of it.

use super::event::{EventId, What};
use super::machine::Session;
use super::slot::{Phase, Slot};
use super::state::State;
use crate::sheet::ExerciseId;
use crate::strength::{Performance, best_e1rm, moved_alike};
use crate::units::{Load, Seconds};

/// What is known of an exercise.
pub type History<'a> = &'a dyn Fn(&ExerciseId) -> &'a [Performance];

/// The other lifter at the rack, and what is known of the exercises of both.
pub struct Beside<'a> {
    /// The state of the other one's session.
    pub state: &'a State,
    /// What is known of the other one's exercises.
    pub theirs: History<'a>,
    /// What is known of one's own.
    pub own: History<'a>,
}

impl Beside<'_> {
    /// The estimate of the exercise that `slot` of one of both states is done as.
    pub(super) fn e1rm(&self, state: &State, slot: &Slot) -> Option<Load> {
        let history = if std::ptr::eq(state, self.state) {
            self.theirs
        } else {
            self.own
        };
        let block = state.block_of(slot);
        let history = moved_alike(history(&block.exercise.id), block);
        best_e1rm(history, state.began.curve)
    }
}

/// Whether the other one is next, after one has logged a set: not where what follows is done without a rest, as the
/// drops of a drop set, and not where the other one has nothing left to do.
#[must_use]
pub fn turns(logged: &State, other: &State) -> bool {
    let straight_on = !matches!(
        logged.phase,
        Phase::Resting(_) | Phase::AllDone | Phase::Ended(_)
    );
    !straight_on && has_sets_left(other)
}

fn has_sets_left(state: &State) -> bool {
    !state.has_ended() && state.current().is_some()
}

/// Whether it is `one`'s turn and not the other's, as after a reload: who is amid a set goes on with it; else whoever
/// did not log last is next, as [`turns`] says; before the first set the one who began.
#[must_use]
pub fn is_next(one: &Session, other: &Session) -> bool {
    let (state, others) = (one.state(), other.state());
    match (works_since(one), works_since(other)) {
        (None, None) => {}
        // An event that is there is later than one that is not.
        (mine, theirs) => return mine > theirs,
    }
    let logged = |state: &State| Some(state.last_logged()?.logged()?.event);
    match (logged(state), logged(others)) {
        (None, None) => {
            let began = |session: &Session| session.events().first().map(|event| event.id);
            has_sets_left(state) && (!has_sets_left(others) || began(one) < began(other))
        }
        (mine, theirs) if mine > theirs => !turns(state, others),
        _ => turns(others, state),
    }
}

/// The event that began the set under way.
fn works_since(session: &Session) -> Option<EventId> {
    let Phase::Working { set, .. } = session.state().phase else {
        return None;
    };
    let started = |what: &What| matches!(what, What::SetStarted { set: other } if *other == set);
    let mut events = session.events().iter().rev();
    events
        .find(|event| started(&event.what))
        .map(|event| event.id)
}

/// Whether the newest tap that can be taken back was the other one's. What came after an end is not taken back from the
/// floor of the other.
#[must_use]
pub fn tapped_last(own: &Session, other: &Session) -> bool {
    let newest = |session: &Session| Some(session.newest_undoable()?.id);
    !other.state().has_ended() && newest(other) > newest(own)
}

/// Whether a tap can be taken back on the board of `own`: one of its own, or the newest of both, where that is the
/// other one's.
#[must_use]
pub fn can_undo(own: &Session, other: Option<&Session>) -> bool {
    own.newest_undoable().is_some() || other.is_some_and(|other| tapped_last(own, other))
}

/// Whether the set that was logged or skipped last was the other one's.
#[must_use]
pub fn logged_last(own: &Session, other: &Session) -> bool {
    // The set itself is what is taken back last.
    let newest = |session: &Session| session.undo_last_set().last().copied();
    !other.state().has_ended() && newest(other) > newest(own)
}

/// Sets parted into what is done without a rest between.
pub(super) fn goes(slots: Vec<&Slot>) -> Vec<Vec<&Slot>> {
    let mut goes: Vec<Vec<&Slot>> = Vec::new();
    for slot in slots {
        let before = goes.last().and_then(|go| go.last());
        let rest = before.map(|before| before.planned.rest_before(&slot.planned));
        match (rest, goes.last_mut()) {
            (Some(Seconds::MIN), Some(go)) => go.push(slot),
            _ => goes.push(vec![slot]),
        }
    }
    goes
}

/// The loads of both in turn, the first's first; of the one who has more left, the rest follows.
pub(super) fn in_turn(first: Vec<Vec<Load>>, second: Vec<Vec<Load>>) -> Vec<Load> {
    let mut all = Vec::new();
    let mut second = second.into_iter();
    for go in first {
        all.extend(go);
        all.extend(second.next().unwrap_or_default());
    }
    all.extend(second.flatten());
    all
}

#[cfg(test)]
#[path = "pair_tests.rs"]
mod tests;
