//! The machine: a running session that takes events, refuses those that make no sense, and keeps its state.

use super::band::is_other_band;
use super::done::{Amount, Done, StageAmount};
use super::effective::{effective, undos};
use super::event::{Event, EventId, Moment, What};
use super::slot::{Phase, Slot, Status};
use super::state::State;
use super::swap::Swap;
use crate::order;
use crate::sheet::{BlockId, SetKey, Stage, Target};
use crate::units::{Load, Metres, Reps, Rir, Seconds};
use std::fmt;

/// For so long after its end a session may go on, in milliseconds: three hours (our own choice).
pub const RESUME_MS_MAX: u64 = 3 * 60 * 60 * 1000;

/// Why an event was not taken.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Refusal {
    /// The first event is no beginning, or a second one came.
    NotABeginning,
    /// The id is not greater than that of the event before.
    OutOfOrder,
    /// The plan has no such set.
    NoSuchSet,
    /// The set was logged or skipped already.
    AlreadySettled,
    /// The set was not logged yet.
    NotLogged,
    /// There is no rest under way.
    NotResting,
    /// The session has ended.
    Ended,
    /// The session has not ended.
    NotEnded,
    /// The session ended too long ago to go on.
    EndedLongAgo,
    /// There is no such event, or it may not be undone.
    CannotUndo,
    /// The sheet has no such block.
    NoSuchBlock,
    /// Every set of the block is logged or skipped.
    NothingLeft,
    /// A set of the block is under way.
    UnderWay,
    /// The block is done as this exercise already.
    SameExercise,
    /// The session holds as many events as it may.
    Full,
}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(crate::words::t(match self {
            Refusal::NotABeginning => "a session begins once, with its sheet",
            Refusal::OutOfOrder => "the event is older than the last one; try again",
            Refusal::NoSuchSet => "this sheet has no such set",
            Refusal::AlreadySettled => "this set is logged or skipped already; undo that first",
            Refusal::NotLogged => "this set is not logged yet",
            Refusal::NotResting => "no rest is running",
            Refusal::Ended => "the session has ended; correct its sets in the ledger",
            Refusal::NotEnded => "the session is under way",
            Refusal::EndedLongAgo => "the session ended more than three hours ago; begin a new one",
            Refusal::CannotUndo => "there is nothing to undo",
            Refusal::NoSuchBlock => "this sheet has no such block",
            Refusal::NothingLeft => "nothing of this block is left to do; add a set first",
            Refusal::UnderWay => "a set of it is under way; stop or log that first",
            Refusal::SameExercise => "it is done as this exercise already",
            Refusal::Full => "the session is full; end it and begin another",
        }))
    }
}

impl std::error::Error for Refusal {}

/// A session: its events and the state they fold to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Session {
    events: Vec<Event>,
    state: State,
}

impl Session {
    /// A session from its beginning.
    ///
    /// # Errors
    /// [`Refusal::NotABeginning`] for any other event.
    pub fn begin(event: Event) -> Result<Session, Refusal> {
        Session::replay(vec![event])
    }

    /// A session from stored events, in any order.
    ///
    /// # Errors
    /// [`Refusal::NotABeginning`] when there is no beginning among them.
    pub fn replay(mut events: Vec<Event>) -> Result<Session, Refusal> {
        order::by_key(&mut events, |event| event.id);
        events.dedup_by_key(|event| event.id);
        let state = State::fold(&events).ok_or(Refusal::NotABeginning)?;
        Ok(Session { events, state })
    }

    /// Its events by rising id.
    #[must_use]
    pub fn events(&self) -> &[Event] {
        &self.events
    }

    /// Its state.
    #[must_use]
    pub fn state(&self) -> &State {
        &self.state
    }

    /// Takes an event.
    ///
    /// # Errors
    /// [`Refusal`]; the session is as before then.
    pub fn take(&mut self, event: Event) -> Result<(), Refusal> {
        self.has_room_for(&event.what)?;
        if self.events.last().is_some_and(|last| last.id >= event.id) {
            return Err(Refusal::OutOfOrder);
        }
        self.allow(&event.what)?;
        if matches!(event.what, What::Resumed) {
            self.may_resume(&event.moment())?;
        }
        self.events.push(event);
        // A session has at most some hundred events: folding them all again takes less than a frame, and there is
        // no second path on which live and replayed state could differ.
        self.state = State::fold(&self.events).ok_or(Refusal::NotABeginning)?;
        Ok(())
    }

    /// Whether the session may go on at `now`, after its end.
    ///
    /// # Errors
    /// [`Refusal::NotEnded`], or [`Refusal::EndedLongAgo`] more than [`RESUME_MS_MAX`] after its end.
    pub fn may_resume(&self, now: &Moment) -> Result<(), Refusal> {
        match self.state.phase {
            Phase::Ended(end) if now.since(&end) <= RESUME_MS_MAX => Ok(()),
            Phase::Ended(_) => Err(Refusal::EndedLongAgo),
            _ => Err(Refusal::NotEnded),
        }
    }

    /// Whether `what` makes sense now, whatever the time.
    ///
    /// # Errors
    /// [`Refusal`] when it does not.
    pub fn allow(&self, what: &What) -> Result<(), Refusal> {
        let ended = self.state.has_ended();
        let slot = |key: &SetKey| self.state.slot(*key).ok_or(Refusal::NoSuchSet);
        let pending = |key: &SetKey| match slot(key)?.status {
            Status::Pending => Ok(()),
            Status::Done(_) | Status::Skipped => Err(Refusal::AlreadySettled),
        };
        match what {
            What::Began(_) => Err(Refusal::NotABeginning),
            // What may still come after the end: corrections, notes, the rating, a set that was forgotten, going on.
            What::SetAmended { set, .. } => {
                slot(set)?.logged().map(|_| ()).ok_or(Refusal::NotLogged)
            }
            What::Noted { set, .. } => set.as_ref().map_or(Ok(()), |key| slot(key).map(|_| ())),
            What::Rated { .. } => Ok(()),
            What::Undone { event } if self.may_undo(*event) => Ok(()),
            What::Undone { .. } => Err(Refusal::CannotUndo),
            What::Resumed if ended => Ok(()),
            What::Resumed => Err(Refusal::NotEnded),
            What::SetDone { set, .. } if ended => match slot(set)?.logged() {
                None => Ok(()),
                Some(_) => Err(Refusal::AlreadySettled),
            },
            What::SetAdded { block, line } => self.allow_added(*block, *line),
            _ if ended => Err(Refusal::Ended),
            What::SetStarted { set }
            | What::SetStopped { set, .. }
            | What::SetDone { set, .. }
            | What::SetSkipped { set }
            | What::SetDropped { set }
            | What::LoadChosen { set, .. }
            | What::RepsChosen { set, .. }
            | What::AmountChosen { set, .. }
            | What::ReserveChosen { set, .. } => pending(set),
            What::BlockSwapped(swap) => self.allow_swap(swap),
            What::OrderChanged { groups } => {
                if groups.len() == self.state.order.len() {
                    Ok(())
                } else {
                    Err(Refusal::NoSuchSet)
                }
            }
            What::RestChanged { .. } | What::RestHeld | What::RestEnded => match self.state.phase {
                Phase::Resting(_) => Ok(()),
                _ => Err(Refusal::NotResting),
            },
            What::AirNoted { .. } | What::Ended => Ok(()),
        }
    }

    fn allow_added(&self, block: BlockId, line: u8) -> Result<(), Refusal> {
        let block = self.state.began.sheet.block(block);
        let line = block.and_then(|block| block.sets.get(usize::from(line)));
        line.map(|_| ()).ok_or(Refusal::NoSuchSet)
    }

    fn allow_swap(&self, swap: &Swap) -> Result<(), Refusal> {
        let state = &self.state;
        let written = state.began.sheet.block(swap.block());
        let written = written.ok_or(Refusal::NoSuchBlock)?;
        let left =
            |slot: &Slot| slot.planned.key.block == written.id && slot.status == Status::Pending;
        if !state.slots.iter().any(left) {
            Err(Refusal::NothingLeft)
        } else if matches!(state.phase, Phase::Working { set, .. } if set.block == written.id) {
            Err(Refusal::UnderWay)
        } else if state.as_done(written).exercise.id == swap.exercise.id
            && !is_other_band(state.as_done(written), swap)
        {
            Err(Refusal::SameExercise)
        } else {
            Ok(())
        }
    }

    /// The events that count and may be undone step by step, oldest first: all but the beginning, an end and going on;
    /// after the end only what came after it.
    fn undoable(&self) -> impl DoubleEndedIterator<Item = &Event> {
        let counting = effective(&self.events);
        let end = counting
            .iter()
            .rposition(|event| matches!(event.what, What::Ended))
            .filter(|_| self.state.has_ended());
        let from = end.map_or(1, |end| end + 1);
        let steps = |event: &&Event| !matches!(event.what, What::Ended | What::Resumed);
        counting.into_iter().skip(from).filter(steps)
    }

    /// Whether that event may be undone: one of the steps, and after the end also a set that was logged before it and
    /// an undo made since, so that a set can be taken out and put back.
    fn may_undo(&self, event: EventId) -> bool {
        if self.undoable().any(|other| other.id == event) {
            return true;
        }
        let Phase::Ended(_) = self.state.phase else {
            return false;
        };
        let end = effective(&self.events)
            .into_iter()
            .rfind(|event| matches!(event.what, What::Ended))
            .map(|end| end.id);
        let logged = effective(&self.events)
            .into_iter()
            .any(|other| other.id == event && matches!(other.what, What::SetDone { .. }));
        logged
            || undos(&self.events)
                .iter()
                .any(|undo| undo.id == event && Some(event) > end)
    }

    /// The newest event that may be undone.
    #[must_use]
    pub fn newest_undoable(&self) -> Option<&Event> {
        self.undoable().next_back()
    }

    /// What to undo, newest first, to take back the last tap: the newest event, and with it those that bear its moment.
    /// The shell gives all events of one tap one moment, and no two taps the same.
    #[must_use]
    pub fn undo_last_tap(&self) -> Vec<EventId> {
        let mut newest = self.undoable().rev().peekable();
        let Some(moment) = newest.peek().map(|event| event.moment()) else {
            return Vec::new();
        };
        newest
            .take_while(|event| event.moment() == moment)
            .map(|event| event.id)
            .collect()
    }

    /// What to undo, newest first, to take back the last logged or skipped set with all that followed it.
    #[must_use]
    pub fn undo_last_set(&self) -> Vec<EventId> {
        let mut targets = Vec::new();
        for event in self.undoable().rev() {
            targets.push(event.id);
            if matches!(event.what, What::SetDone { .. } | What::SetSkipped { .. }) {
                return targets;
            }
        }
        Vec::new()
    }
}

impl Slot {
    /// What a tap logs: the set as prescribed, with what was chosen for it; `load` is the prescribed load.
    #[must_use]
    pub fn as_prescribed(&self, load: Option<Load>) -> Done {
        Done {
            load: self.load.or(load),
            amount: self.offered(),
            reserve: self.reserve,
        }
    }
}

/// The amount that a target asks for, its counted reps being `reps`.
#[must_use]
pub fn amount(target: &Target, reps: Option<Reps>) -> Amount {
    match target {
        Target::Reps(asked) => Amount::Reps(reps.unwrap_or(asked.top())),
        Target::Timed(seconds) => Amount::Timed(*seconds),
        Target::Distance(metres) => Amount::Distance(*metres),
        Target::Stages(stages) => {
            let mut amounts: Vec<StageAmount> = stages
                .iter()
                .map(|stage| match stage {
                    Stage::Hold { seconds } => StageAmount::Hold(*seconds),
                    Stage::Reps { reps, .. } => StageAmount::Reps(reps.top()),
                    Stage::Partials { reps } => StageAmount::Partials(reps.top()),
                })
                .collect();
            if let Some(reps) = reps {
                set_last_count(&mut amounts, reps);
            }
            Amount::Stages(amounts)
        }
    }
}

fn set_last_count(stages: &mut [StageAmount], reps: Reps) {
    for stage in stages.iter_mut().rev() {
        match stage {
            StageAmount::Reps(count) | StageAmount::Partials(count) => {
                *count = reps;
                return;
            }
            StageAmount::Hold(_) => {}
        }
    }
}

impl Done {
    /// The same with other reps: of a staged set those of its last counted stage.
    #[must_use]
    pub fn with_reps(&self, reps: Reps) -> Done {
        let mut done = self.clone();
        match &mut done.amount {
            Amount::Reps(count) => *count = reps,
            Amount::Sides { .. } => done.amount = Amount::Reps(reps),
            Amount::Stages(stages) => set_last_count(stages, reps),
            Amount::Timed(_) | Amount::Distance(_) => {}
        }
        done
    }

    /// The same with one rep, five seconds or five metres more or fewer; of sides that differ the second one's reps.
    #[must_use]
    pub fn stepped(&self, more: bool) -> Done {
        let sign = if more { 1 } else { -1 };
        let mut done = self.clone();
        match &mut done.amount {
            Amount::Timed(seconds) => {
                *seconds = Seconds::saturating(i64::from(*seconds) + 5 * sign)
            }
            Amount::Distance(metres) => *metres = Metres::saturating(i64::from(*metres) + 5 * sign),
            Amount::Sides { first, second } => {
                let second = Reps::saturating(i64::from(*second) + sign);
                done.amount = Amount::of_sides(*first, second);
            }
            Amount::Reps(_) | Amount::Stages(_) => {
                if let Some(reps) = self.amount.reps() {
                    return self.with_reps(Reps::saturating(i64::from(reps) + sign));
                }
            }
        }
        done
    }

    /// The same with another load.
    #[must_use]
    pub fn with_load(&self, load: Option<Load>) -> Done {
        Done {
            load,
            ..self.clone()
        }
    }

    /// The same with another reserve.
    #[must_use]
    pub fn with_reserve(&self, reserve: Option<Rir>) -> Done {
        Done {
            reserve,
            ..self.clone()
        }
    }
}
