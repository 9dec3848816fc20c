//! One invented session, tapped through the session machine.

use chrono::{DateTime, FixedOffset, TimeDelta};
use stanchion::programme::{LightWeek, Monday, lighten};
use stanchion::session::{Began, Done, Event, EventId, Session, SessionId, Tick, What};
use stanchion::sheet::{Note, SetKind, Sheet};
use stanchion::strength::{Curve, Proposal, Today, best_e1rm, propose};
use stanchion::units::{Load, Reps, Rir, Rpe, Share};

use super::Ledger;
use super::body::reps_to_failure;
use crate::say::{OrNext, Outcome};

const NEXT: &str = "mend xtask/src/ledger";

const NOTES: [&str; 6] = [
    "Slept badly, all felt heavy",
    "Boathouse cold, longer warm-up",
    "Left knee stiff in the first sets, gone after",
    "Good day",
    "River high, came late and in a hurry",
    "New chalk",
];

/// A time as it is written in the code.
pub fn at(text: &str) -> Outcome<DateTime<FixedOffset>> {
    text.parse()
        .or_next(format!("reading the time {text}"), NEXT)
}

/// A note.
pub fn text(text: &str) -> Outcome<Note> {
    Note::new(text).or_next("making a note", NEXT)
}

/// A session that is being done.
struct Floor<'a> {
    ledger: &'a mut Ledger,
    session: Session,
    begin: DateTime<FixedOffset>,
    run: u32,
    ms: i64,
}

impl Floor<'_> {
    fn wait(&mut self, seconds: i64) {
        self.ms += seconds * 1000;
    }

    fn tap(&mut self, what: What) -> Outcome<()> {
        self.ms += 1;
        let at = self.begin + TimeDelta::milliseconds(self.ms);
        let event = Event {
            id: EventId(self.ledger.id(at)),
            at,
            tick: Tick {
                run: self.run,
                ms: u64::try_from(self.ms).unwrap_or(0),
            },
            what,
        };
        self.session
            .take(event)
            .or_next("logging an invented set", NEXT)
    }

    fn seconds(&mut self, least: i64, spread: u64) -> i64 {
        least + i64::try_from(self.ledger.chance.one_of(spread)).unwrap_or(0)
    }
}

fn proposals(
    ledger: &Ledger,
    sheet: &Sheet,
    now: DateTime<FixedOffset>,
    mass: Load,
) -> Vec<Proposal> {
    let history = |block: &stanchion::sheet::Block| {
        ledger
            .histories
            .get(&block.exercise.id)
            .map_or(&[][..], Vec::as_slice)
    };
    sheet
        .blocks()
        .map(|block| {
            let today = Today {
                history: history(block),
                kit: &ledger.kit,
                now,
                curve: Curve::default(),
                body_mass: Some(mass),
            };
            propose(block, &today)
        })
        .collect()
}

/// A session of `sheet`, all of it, light where that is the week's.
pub fn session(
    ledger: &mut Ledger,
    sheet: &Sheet,
    begin: DateTime<FixedOffset>,
    mass: Load,
    light: bool,
) -> Outcome<Session> {
    let usual = proposals(ledger, sheet, begin, mass);
    let (sheet, proposals) = if light {
        let monday = Monday::of(begin.date_naive());
        let week = LightWeek::new(8, monday, Share::percent(90), Share::percent(60))
            .or_next("planning a light week", NEXT)?;
        lighten(sheet, &usual, &week, &ledger.kit)
    } else {
        (sheet.clone(), usual)
    };
    let began = Began {
        session: SessionId(ledger.id(begin)),
        sheet,
        body_mass: Some(mass),
        proposals,
        light,
        curve: Curve::default(),
        along: None,
    };
    let run = ledger.chance.one_of(u64::from(u32::MAX)) as u32;
    let first = Event {
        id: EventId(ledger.id(begin)),
        at: begin,
        tick: Tick { run, ms: 0 },
        what: What::Began(Box::new(began)),
    };
    let session = Session::begin(first).or_next("beginning an invented session", NEXT)?;
    let form = ledger.body.form(&mut ledger.chance);
    let mut floor = Floor {
        ledger,
        session,
        begin,
        run,
        ms: 0,
    };
    let begun = floor.seconds(240, 240);
    floor.wait(begun);
    while set(&mut floor, form, mass)? {}
    if floor.ledger.chance.happens(0.06) {
        let which = floor.ledger.chance.one_of(NOTES.len() as u64) as usize;
        let text = text(NOTES[which])?;
        floor.tap(What::Noted { set: None, text })?;
    }
    floor.tap(What::Ended)?;
    if floor.ledger.chance.happens(0.8) {
        floor.wait(20);
        let rpe = Rpe::saturating(floor.seconds(5, 4));
        floor.tap(What::Rated { rpe })?;
    }
    if floor.ledger.chance.happens(0.05) {
        correct(&mut floor)?;
    }
    Ok(floor.session)
}

/// Does the set that is next; false where none is left.
fn set(floor: &mut Floor, form: f64, mass: Load) -> Outcome<bool> {
    let state = floor.session.state();
    let Some(slot) = state.current() else {
        return Ok(false);
    };
    let (key, rest) = (slot.planned.key, i64::from(slot.planned.rest_after.get()));
    let block = state.block_of(slot).clone();
    let history = floor.ledger.histories.get(&block.exercise.id);
    let history = history.map_or(&[][..], Vec::as_slice);
    let e1rm = best_e1rm(history, state.began.curve);
    let proposed = state.prescribe(slot, &floor.ledger.kit, e1rm).load;
    let mut done = slot.as_prescribed(proposed);
    let asked = slot.planned.target.plain_reps();
    let ramp = matches!(slot.planned.kind, SetKind::RampUp { .. });
    if floor.ledger.chance.happens(0.006) {
        floor.tap(What::SetSkipped { set: key })?;
        return Ok(true);
    }
    if floor.ledger.chance.happens(0.35) {
        floor.tap(What::SetStarted { set: key })?;
    }
    if let Some(asked) = asked.filter(|_| !ramp) {
        let can = reps_to_failure(&block, done.load, mass, form) + floor.ledger.chance.normal(0.8);
        let can = can.floor().max(0.0) as i64;
        let top = i64::from(asked.top().get());
        done = done.with_reps(Reps::saturating(can.clamp(1, top)));
        if floor.ledger.chance.happens(0.4) {
            done = done.with_reserve(Some(told(floor, can - top)));
        }
    }
    let lasted = floor.seconds(25, 20);
    floor.wait(lasted);
    log(floor, key, done, proposed)?;
    let rested = floor.seconds(rest, 40);
    floor.wait(rested);
    // After the last set there is none.
    let cut = floor.ledger.chance.happens(0.3);
    if cut && floor.session.allow(&What::RestEnded).is_ok() {
        floor.tap(What::RestEnded)?;
    }
    Ok(true)
}

/// A reserve as it is told: about a rep off.
fn told(floor: &mut Floor, left: i64) -> Rir {
    let off = floor.ledger.chance.normal(0.7).round() as i64;
    Rir::saturating((left.max(0) + off).clamp(0, 5))
}

/// Logs a set; now and then a slip is taken back and logged again.
fn log(
    floor: &mut Floor,
    set: stanchion::sheet::SetKey,
    done: Done,
    proposed: Option<Load>,
) -> Outcome<()> {
    if floor.ledger.chance.happens(0.01) {
        let slip = What::SetDone {
            set,
            done: done.stepped(true),
            proposed,
        };
        floor.tap(slip)?;
        floor.wait(3);
        for event in floor.session.undo_last_tap() {
            floor.tap(What::Undone { event })?;
        }
    }
    floor.tap(What::SetDone {
        set,
        done,
        proposed,
    })
}

/// Corrects one of the sets afterwards.
fn correct(floor: &mut Floor) -> Outcome<()> {
    let slots = floor.session.state().slots.iter();
    let logged: Vec<_> = slots
        .filter_map(|slot| Some((slot.planned.key, slot.logged()?.done.clone())))
        .collect();
    if logged.is_empty() {
        return Ok(());
    }
    let which = floor.ledger.chance.one_of(logged.len() as u64) as usize;
    let (set, done) = logged[which].clone();
    floor.wait(600);
    floor.tap(What::SetAmended {
        set,
        done: done.stepped(false),
    })
}
