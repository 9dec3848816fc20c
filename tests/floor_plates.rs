//! What the floor says of the plates: it follows the plan, and it always goes on from what it said before.

use chrono::DateTime;
use proptest::collection::vec;
use proptest::prelude::*;
use stanchion::kit::{Kit, Loading, change};
use stanchion::session::{
    Began, Board, Event, EventId, Mint, Moment, Session, SessionId, Slot, Tick, What,
};
use stanchion::sheet::{Equipment, Sheet};
use stanchion::strength::{Curve, Today, propose};
use stanchion::units::{Load, Reps, Unit};
use uuid::Uuid;

struct Floor {
    session: Session,
    mint: Mint,
    now: Moment,
    kit: Kit,
}

/// The demo's sheet of that name.
fn demo(name: &str) -> Sheet {
    let demo = stanchion::store::demo();
    let sheets = demo.current_sheets();
    let named = sheets.into_iter().find(|sheet| sheet.name.as_str() == name);
    named.expect("the demo has it").clone()
}

impl Floor {
    fn open(name: &str) -> Floor {
        let sheet = demo(name);
        let kit = Kit::starter(Unit::Kg);
        let now = Moment {
            at: DateTime::parse_from_rfc3339("2026-03-02T18:00:00+01:00").unwrap(),
            tick: Tick { run: 1, ms: 0 },
        };
        let began = Began {
            curve: Curve::default(),
            session: SessionId(Uuid::from_u128(1)),
            proposals: sheet
                .blocks()
                .map(|block| {
                    propose(
                        block,
                        &Today {
                            history: &[],
                            kit: &kit,
                            now: now.at,
                            curve: Curve::default(),
                            body_mass: None,
                        },
                    )
                })
                .collect(),
            sheet,
            light: false,
            body_mass: None,
            along: None,
        };
        let mut mint = Mint::default();
        let event = stamp(&mut mint, now, What::Began(Box::new(began)));
        Floor {
            session: Session::begin(event).unwrap(),
            mint,
            now,
            kit,
        }
    }

    fn act(&mut self, what: What) {
        self.now.tick.ms += 1000;
        let event = stamp(&mut self.mint, self.now, what);
        self.session.take(event).unwrap();
    }

    fn slot(&self) -> Option<&Slot> {
        self.session.state().current()
    }

    fn board(&self) -> Board {
        let slot = self.slot().expect("a set is left");
        self.session.state().board(slot, &self.kit, &[])
    }

    fn log(&mut self, reps: Option<Reps>) {
        let load = self.board().load;
        let slot = self.slot().expect("a set is left");
        let mut done = slot.as_prescribed(load);
        if let Some(reps) = reps {
            done = done.with_reps(reps);
        }
        let set = slot.planned.key;
        self.act(What::SetDone {
            set,
            done,
            proposed: load,
        });
    }

    /// Skips to the first set on a bar.
    fn go_to_the_bar(&mut self) {
        while self.equipment() != Equipment::Barbell {
            let set = self.slot().unwrap().planned.key;
            self.act(What::SetSkipped { set });
        }
    }

    fn equipment(&self) -> Equipment {
        let state = self.session.state();
        let slot = state.current().expect("a set is left");
        state.block_of(slot).exercise.equipment
    }
}

fn stamp(mint: &mut Mint, now: Moment, what: What) -> Event {
    let ms = u64::try_from(now.at.timestamp_millis()).unwrap() + now.tick.ms;
    Event {
        id: EventId(mint.next(ms, [0; 10])),
        at: now.at,
        tick: now.tick,
        what,
    }
}

/// The change line of a board, as it is shown.
fn said(board: &Board) -> String {
    match (&board.change, &board.loading) {
        (Some(change), _) => change.to_string(),
        (None, Some(loading)) => loading.to_string(),
        (None, None) => String::new(),
    }
}

#[test]
fn the_ramp_up_of_the_demo_follows_the_plan() {
    let mut floor = Floor::open("Lower A");
    floor.go_to_the_bar();
    let mut lines = Vec::new();
    let mut loads: Vec<Load> = Vec::new();
    let mut moved = 0;
    for set in 0..6 {
        let board = floor.board();
        loads.extend(board.load);
        lines.push(said(&board));
        let change = board.change.filter(|_| set > 0);
        moved += change.map_or(0, |change| change.off.len() + change.on.len());
        floor.log(None);
    }
    let plan = floor.kit.plan(Equipment::Barbell, None, &loads);
    assert_eq!(plan.moved, moved + 1);
    assert_eq!(
        lines,
        [
            "1.25 a side",
            "off 1.25, on 5 + 2.5 each side",
            "+5 + 1.25 each side",
            "off 1.25 + 5 + 2.5, on 15 each side",
            "+2.5 each side",
            "off 2.5, on 5 each side",
        ]
    );
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn every_change_goes_on_from_the_plates_that_were_shown_before(
        taps in vec((prop::option::of(0..90_u16), prop::option::of(0..15_i64), any::<bool>()), 1..12),
        upper in any::<bool>(),
    ) {
        let mut floor = Floor::open(if upper { "Upper B" } else { "Lower A" });
        let mut shown: Option<Loading> = None;
        for (chosen, reps, skip) in taps {
            let Some(slot) = floor.slot() else { break };
            let set = slot.planned.key;
            if floor.equipment() == Equipment::Barbell {
                if let Some(halves) = chosen {
                    let load = format!("{}.5 kg", halves).parse().unwrap();
                    floor.act(What::LoadChosen { set, load, proposed: None });
                }
                let board = floor.board();
                match (&shown, &board.loading) {
                    (Some(from), Some(to)) => prop_assert_eq!(&board.change, &Some(change(from, to))),
                    (_, to) => {
                        prop_assert_eq!(&board.change, &None);
                        prop_assert_eq!(to.is_some(), board.load.is_some_and(|load| floor.kit.choices(Equipment::Barbell).contains(load)));
                    }
                }
                if let (Some(loading), Some(load)) = (&board.loading, board.load) {
                    prop_assert_eq!(loading.load(), load);
                }
                if skip {
                    floor.act(What::SetSkipped { set });
                    continue;
                }
                shown = board.loading;
            }
            floor.log(reps.map(Reps::saturating));
        }
    }
}
