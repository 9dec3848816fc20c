//! A floor with one block on which exercises are swapped.

use super::built::block;
use super::events::event;
use super::id;
use stanchion::exercises;
use stanchion::kit::Kit;
use stanchion::ledger::SessionRecord;
use stanchion::session::{Began, Refusal, Session, SessionId, Slot, Swap, What};
use stanchion::sheet::{Block, Line, LoadBasis, Sets, SideMode};
use stanchion::strength::{Curve, Performance, Today};
use stanchion::units::{Load, Unit};

pub fn kit() -> Kit {
    Kit::starter(Unit::Kg)
}

pub fn line(text: &str) -> Line {
    Line::new(text).unwrap()
}

/// The squat of the sheet: a start, a cue and a caution of its own.
pub fn squat(lines: Vec<Sets>) -> Block {
    let mut block = block(lines, LoadBasis::External, SideMode::Both);
    block.start = Some(Load::whole_kg(60));
    block.cues = vec![line("Elbows high")];
    block.cautions = vec![line("Bars set")];
    block
}

/// The swap of `written` for an exercise of the list, done before as `history` says.
pub fn to(written: &Block, id: &str, history: &[Performance]) -> Swap {
    let entry = exercises::entry(id).unwrap();
    let exercise = entry.exercise_with(&kit()).unwrap();
    let (basis, sides, cautions) = (entry.basis(), entry.sides(), entry.cautions());
    let kit = kit();
    let today = today(history, &kit);
    Swap::to(written, exercise, basis, sides, cautions, &today)
}

/// The swap back to what is written.
pub fn back(written: &Block) -> Swap {
    let kit = kit();
    Swap::back(written, &today(&[], &kit))
}

/// The morning, a few hours after which the sessions of these tests are.
pub fn today<'a>(history: &'a [Performance], kit: &'a Kit) -> Today<'a> {
    Today {
        history,
        kit,
        now: super::time(0),
        curve: Curve::default(),
        body_mass: None,
    }
}

pub fn swapped(swap: Swap) -> What {
    What::BlockSwapped(Box::new(swap))
}

/// A session on one block, a minute from event to event.
pub struct Floor {
    pub session: Session,
    minutes: u64,
}

impl Floor {
    pub fn open(written: &Block) -> Floor {
        let began = Began {
            curve: Curve::default(),
            session: SessionId(id(0, 9)),
            sheet: super::built::sheet(written.clone()),
            body_mass: Some(Load::whole_kg(80)),
            proposals: vec![today(&[], &kit()).propose(written)],
            light: false,
            along: None,
        };
        let event = event(9, 0, 1, What::Began(Box::new(began)));
        Floor {
            session: Session::begin(event).unwrap(),
            minutes: 0,
        }
    }

    pub fn act(&mut self, what: What) -> Result<(), Refusal> {
        self.minutes += 1;
        self.session.take(event(9, self.minutes * 60_000, 1, what))
    }

    pub fn undo(&mut self) {
        let event = self.session.newest_undoable().unwrap().id;
        self.act(What::Undone { event }).unwrap();
    }

    /// Logs the current set as its board says, or at `load`.
    pub fn log(&mut self, load: Option<&str>) {
        let slot = self.current();
        let board = self.session.state().board(&slot, &kit(), &[]);
        let load = load.map(|load| load.parse().unwrap()).or(board.load);
        let what = What::SetDone {
            set: slot.planned.key,
            done: slot.as_prescribed(load),
            proposed: board.prescribed,
        };
        self.act(what).unwrap();
    }

    pub fn current(&self) -> Slot {
        self.session.state().current().unwrap().clone()
    }

    pub fn load(&self) -> Option<String> {
        let board = self.session.state().board(&self.current(), &kit(), &[]);
        board.load.map(|load| load.to_string())
    }

    pub fn record(&self) -> SessionRecord {
        SessionRecord::from_events(self.session.events()).unwrap()
    }

    /// Each block of the record: the exercise it was done as, and how many sets of it.
    pub fn done(&self) -> Vec<(String, usize)> {
        let record = self.record();
        let blocks = record.blocks.iter();
        blocks
            .map(|block| (block.block.exercise.id.to_string(), block.lines.len()))
            .collect()
    }
}
