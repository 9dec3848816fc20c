//! Sessions built by hand: one block, its sets, what was done.

use super::events::event;
use super::{id, time};
use stanchion::ledger::SessionRecord;
use stanchion::session::{Amount, Began, Done, Event, SessionId, Tick, What};
use stanchion::sheet::{
    Block, BlockId, Equipment, Exercise, ExerciseId, Group, Line, LoadBasis, LoadPolicy, Note,
    Pattern, Progression, RepTarget, Role, SetKey, SetKind, Sets, Sheet, SheetId, SheetVersion,
    SideMode, Target,
};
use stanchion::strength::Curve;
use stanchion::units::{Load, Reps, Seconds};

pub fn reps(n: i64) -> Reps {
    Reps::new(n).unwrap()
}

/// A line of `count` sets of a kind.
pub fn sets(kind: SetKind, count: u8, target: Target) -> Sets {
    Sets {
        kind,
        count,
        target,
        reserve: Vec::new(),
        load: LoadPolicy::Same,
        tempo: None,
        rest: None,
    }
}

/// A line of `count` work sets of `low` to `top` reps.
pub fn work(count: u8, low: i64, top: i64) -> Sets {
    let target = RepTarget::range(reps(low), reps(top)).unwrap();
    sets(SetKind::Work, count, Target::Reps(target))
}

/// A front squat, or what becomes of it by `basis` and `sides`.
pub fn block(sets: Vec<Sets>, basis: LoadBasis, sides: SideMode) -> Block {
    Block {
        id: BlockId(id(1, 1)),
        exercise: Exercise {
            id: ExerciseId::new("front-squat").unwrap(),
            name: Line::new("Front squat").unwrap(),
            pattern: Pattern::Squat,
            equipment: Equipment::Barbell,
        },
        role: Role::Strength,
        sets,
        basis,
        start: None,
        tempo: None,
        sides,
        rest: Seconds::new(150).unwrap(),
        rest_after: Seconds::new(120).unwrap(),
        cues: Vec::new(),
        cautions: Vec::new(),
        progression: Progression::default(),
    }
}

/// A sheet of that block alone.
pub fn sheet(block: Block) -> Sheet {
    Sheet {
        id: SheetId(id(2, 2)),
        version: SheetVersion(id(3, 3)),
        written: time(3),
        name: Line::new("Lower A").unwrap(),
        warm_up: Vec::new(),
        notes: Note::default(),
        budget_minutes: None,
        groups: vec![Group::Straight(Box::new(block))],
        settled: Vec::new(),
        written_for: None,
    }
}

/// A set of a line: `(line, set)`.
pub fn key(line: u8, set: u8) -> SetKey {
    SetKey {
        block: BlockId(id(1, 1)),
        line,
        set,
        drop: 0,
    }
}

/// What was done: a load like `60 kg`, or none, and an amount.
pub fn done(load: Option<&str>, amount: Amount) -> Done {
    Done {
        load: load.map(|load| load.parse().unwrap()),
        amount,
        reserve: None,
    }
}

/// The events of session `n`, a day after session `n - 1`: each of `dones` in turn, a minute apart, and the end.
pub fn events(
    n: u64,
    block: &Block,
    body_mass: Option<&str>,
    dones: &[(SetKey, Done)],
) -> Vec<Event> {
    let day = n * 86_400_000;
    let body_mass: Option<Load> = body_mass.map(|mass| mass.parse().unwrap());
    let began = What::Began(Box::new(Began {
        curve: Curve::default(),
        session: SessionId(id(day, n)),
        sheet: sheet(block.clone()),
        body_mass,
        proposals: Vec::new(),
        light: false,
        along: None,
    }));
    let logs = dones.iter().map(|(set, done)| What::SetDone {
        set: *set,
        done: done.clone(),
        proposed: None,
    });
    std::iter::once(began)
        .chain(logs)
        .chain([What::Ended])
        .enumerate()
        .map(|(i, what)| event(n, day + i as u64 * 60_000, 1, what))
        .collect()
}

/// The record of such a session.
pub fn record(
    n: u64,
    block: &Block,
    body_mass: Option<&str>,
    dones: &[(SetKey, Done)],
) -> SessionRecord {
    SessionRecord::from_events(&events(n, block, body_mass, dones)).unwrap()
}

/// The record of a session of plain sets of one line: loads and reps.
pub fn plain(n: u64, block: &Block, sets: &[(&str, i64)]) -> SessionRecord {
    let dones: Vec<(SetKey, Done)> = sets
        .iter()
        .enumerate()
        .map(|(i, (load, count))| {
            (
                key(0, i as u8),
                done(Some(*load), Amount::Reps(reps(*count))),
            )
        })
        .collect();
    record(n, block, None, &dones)
}

/// The event at another reading of both clocks.
pub fn at(event: &Event, wall_ms: u64, run: u32, ms: u64) -> Event {
    Event {
        at: time(wall_ms),
        tick: Tick { run, ms },
        ..event.clone()
    }
}
