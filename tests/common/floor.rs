//! A session on the floor with a clock of its own: begun, waited through, tapped.

use super::events::event;
use super::id;
use stanchion::session::{Amount, Began, EventId, Moment, Session, SessionId, Short, State, What};
use stanchion::sheet::Sheet;
use stanchion::strength::{Curve, Proposal};
use stanchion::units::{Load, Seconds};
use uuid::Uuid;

/// Seconds counted in before the cues.
pub const COUNT_IN_S: u8 = 3;

/// A session with a clock of its own, in milliseconds.
#[derive(Debug)]
pub struct Floor {
    pub session: Session,
    ms: u64,
}

impl Floor {
    pub fn on(sheet: Sheet) -> Floor {
        Floor::with(sheet, Vec::new())
    }

    /// One on which loads were proposed when it began.
    pub fn with(sheet: Sheet, proposals: Vec<Proposal>) -> Floor {
        let began = What::Began(Box::new(Began {
            curve: Curve::default(),
            session: SessionId(id(5, 5)),
            sheet,
            body_mass: None,
            proposals,
            light: false,
            along: None,
        }));
        let session = Session::begin(event(0, 1000, 1, began)).unwrap();
        Floor { session, ms: 1000 }
    }

    pub fn now(&self) -> Moment {
        event(0, self.ms, 1, What::RestHeld).moment()
    }

    pub fn state(&self) -> &State {
        self.session.state()
    }

    pub fn wait(&mut self, ms: u64) {
        self.ms += ms;
    }

    /// The events of one tap: they bear one moment, and no other tap has it.
    pub fn tap(&mut self, whats: Vec<What>) {
        self.ms += 1;
        for (nth, what) in whats.into_iter().enumerate() {
            let made = event(nth as u64, self.ms, 1, what);
            self.session.take(made).unwrap();
        }
    }

    /// Chooses a load for the set on the board, over what was proposed.
    pub fn choose(&mut self, load: Load, proposed: Option<Load>) {
        let set = self.state().current().unwrap().planned.key;
        self.tap(vec![What::LoadChosen {
            set,
            load,
            proposed,
        }]);
    }

    pub fn start(&mut self) {
        let set = self.state().current().unwrap().planned.key;
        self.tap(vec![What::SetStarted { set }]);
    }

    pub fn stop(&mut self) {
        let set = self.state().current().unwrap().planned.key;
        let stop = self.state().stop(set, &self.now(), COUNT_IN_S);
        self.tap(vec![stop]);
    }

    pub fn log(&mut self) {
        let state = self.state();
        let slot = state.current().unwrap();
        let done = state.done_as_offered(slot, None, &self.now(), COUNT_IN_S);
        let set = slot.planned.key;
        self.tap(vec![What::SetDone {
            set,
            done,
            proposed: None,
        }]);
    }

    pub fn offer(&self) -> Amount {
        let state = self.state();
        state.offer(state.current().unwrap(), &self.now(), COUNT_IN_S)
    }

    pub fn step(&mut self, more: bool) {
        let step = self
            .state()
            .current()
            .unwrap()
            .offer_stepped(self.offer(), more);
        self.tap(step.into_iter().collect());
    }

    pub fn undo_tap(&mut self) {
        let targets = self.session.undo_last_tap();
        self.tap(
            targets
                .into_iter()
                .map(|event| What::Undone { event })
                .collect(),
        );
    }

    pub fn short(&self, within_s: u64) -> Short {
        self.state().short(&self.now(), within_s, change_over())
    }

    pub fn left(&self) -> u64 {
        self.state().seconds_left(&self.now(), change_over())
    }
}

pub fn change_over() -> Seconds {
    Seconds::new(60).unwrap()
}

/// The state without what an undo moves on.
pub fn seen(state: &State) -> State {
    State {
        newest: EventId(Uuid::nil()),
        last: state.since,
        ..state.clone()
    }
}
