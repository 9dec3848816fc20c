//! Laws of the session machine over random taps on the demo's sheets: replay equals live, undo takes back.

use crate::common;
use crate::common::floor::seen;

use chrono::{DateTime, FixedOffset, TimeDelta};
use proptest::prelude::*;
use stanchion::cues::{SoundSet, set_timeline, tones};
use stanchion::exercises::alike;
use stanchion::heat::{Air, Humidity, Scale, Temperature};
use stanchion::kit::Kit;
use stanchion::ledger::SessionRecord;
use stanchion::session::{
    Amount, Began, Event, EventId, Mint, Moment, Phase, Session, SessionId, State, Swap, Tick, What,
};
use stanchion::sheet::{Note, Sheet, unroll};
use stanchion::strength::{Curve, Today, propose};
use stanchion::units::{Load, Reps, Rir, Unit};
use uuid::Uuid;

/// A tap, before it is known what it can mean on the floor as it is then.
#[derive(Debug, Clone, Copy)]
enum Tap {
    Log,
    Start,
    Stop,
    Skip,
    Add,
    Drop,
    Turn,
    Load(u16),
    Reps(u16),
    Step(bool),
    Sides(u8, u8),
    Air(u8),
    Reserve(u8),
    Stretch(i32),
    Hold,
    EndRest,
    Amend(u16),
    Note,
    Swap(u8),
    Undo,
    End,
    GoOn,
    Wait(u16),
    Restart,
}

fn tap() -> impl Strategy<Value = Tap> {
    prop_oneof![
        6 => Just(Tap::Log),
        1 => Just(Tap::Start),
        1 => Just(Tap::Stop),
        1 => Just(Tap::Skip),
        1 => Just(Tap::Add),
        1 => Just(Tap::Drop),
        1 => Just(Tap::Turn),
        1 => (0..300u16).prop_map(Tap::Load),
        1 => (0..40u16).prop_map(Tap::Reps),
        1 => any::<bool>().prop_map(Tap::Step),
        1 => (0..20u8, 0..20u8).prop_map(|(first, second)| Tap::Sides(first, second)),
        1 => (20..40u8).prop_map(Tap::Air),
        1 => (0..10u8).prop_map(Tap::Reserve),
        1 => (-200..200i32).prop_map(Tap::Stretch),
        1 => Just(Tap::Hold),
        1 => Just(Tap::EndRest),
        1 => (0..40u16).prop_map(Tap::Amend),
        1 => Just(Tap::Note),
        2 => (0..24u8).prop_map(Tap::Swap),
        2 => Just(Tap::Undo),
        1 => Just(Tap::End),
        1 => Just(Tap::GoOn),
        2 => (0..400u16).prop_map(Tap::Wait),
        1 => Just(Tap::Restart),
    ]
}

struct Floor {
    session: Session,
    mint: Mint,
    now: Moment,
}

impl Floor {
    /// A session on one of the demo's sheets.
    fn open(sheet: usize) -> Floor {
        let demo = stanchion::store::demo();
        Floor::with(
            demo.current_sheets()[sheet].clone(),
            &Kit::starter(Unit::Kg),
        )
    }

    fn with(sheet: Sheet, kit: &Kit) -> Floor {
        let at: DateTime<FixedOffset> = "2026-03-02T18:00:00+01:00".parse().unwrap();
        let now = Moment {
            at,
            tick: Tick { run: 1, ms: 0 },
        };
        let proposals = sheet
            .blocks()
            .map(|block| {
                propose(
                    block,
                    &Today {
                        history: &[],
                        kit,
                        now: at,
                        curve: Curve::default(),
                        body_mass: None,
                    },
                )
            })
            .collect();
        let session = SessionId(Uuid::from_u128(1));
        let began = Began {
            curve: Curve::default(),
            session,
            sheet,
            body_mass: None,
            proposals,
            light: false,
            along: None,
        };
        let mut mint = Mint::default();
        let event = stamp(&mut mint, now, What::Began(Box::new(began)));
        Floor {
            session: Session::begin(event).unwrap(),
            mint,
            now,
        }
    }

    /// What the tap means now, if anything.
    fn what(&mut self, tap: Tap) -> Option<What> {
        let state = self.session.state();
        let set = state.current().map(|slot| slot.planned.key);
        Some(match tap {
            Tap::Log => {
                let slot = state.current()?;
                What::SetDone {
                    set: set?,
                    done: state.done_as_offered(slot, Some(Load::whole_kg(40)), &self.now, 3),
                    proposed: None,
                }
            }
            Tap::Start => What::SetStarted { set: set? },
            Tap::Stop => state.stop(set?, &self.now, 3),
            Tap::Skip => What::SetSkipped { set: set? },
            Tap::Add => What::SetAdded {
                block: set?.block,
                line: set?.line,
            },
            Tap::Drop => What::SetDropped { set: set? },
            Tap::Turn => {
                let groups = state.order.iter().rev().map(|&group| group as u8).collect();
                What::OrderChanged { groups }
            }
            Tap::Load(kg) => What::LoadChosen {
                set: set?,
                load: Load::whole_kg(kg),
                proposed: None,
            },
            Tap::Reps(reps) => What::RepsChosen {
                set: set?,
                reps: Reps::saturating(i64::from(reps)),
            },
            Tap::Step(more) => {
                let slot = state.current()?;
                slot.offer_stepped(state.offer(slot, &self.now, 3), more)?
            }
            Tap::Sides(first, second) => What::AmountChosen {
                set: set?,
                amount: Amount::of_sides(
                    Reps::saturating(i64::from(first)),
                    Reps::saturating(i64::from(second)),
                ),
            },
            Tap::Air(degrees) => What::AirNoted {
                air: Air {
                    temperature: Temperature::parse(&degrees.to_string(), Scale::Celsius).unwrap(),
                    humidity: Humidity::parse("60").unwrap(),
                },
            },
            Tap::Reserve(left) => What::ReserveChosen {
                set: set?,
                reserve: Rir::saturating(i64::from(left)),
            },
            Tap::Stretch(by_seconds) => What::RestChanged { by_seconds },
            Tap::Hold => What::RestHeld,
            Tap::EndRest => What::RestEnded,
            Tap::Amend(reps) => {
                let slot = state.last_logged()?;
                let done = slot
                    .logged()?
                    .done
                    .with_reps(Reps::saturating(i64::from(reps)));
                What::SetAmended {
                    set: slot.planned.key,
                    done,
                }
            }
            Tap::Note => What::Noted {
                set,
                text: Note::new("left knee").unwrap(),
            },
            Tap::Swap(pick) => What::BlockSwapped(Box::new(swap(state, pick)?)),
            Tap::Undo => What::Undone {
                event: self.session.newest_undoable()?.id,
            },
            Tap::End => What::Ended,
            Tap::GoOn => What::Resumed,
            Tap::Wait(seconds) => {
                self.now.at += TimeDelta::seconds(i64::from(seconds));
                self.now.tick.ms += u64::from(seconds) * 1000;
                return None;
            }
            Tap::Restart => {
                self.now.tick = Tick {
                    run: self.now.tick.run + 1,
                    ms: 0,
                };
                return None;
            }
        })
    }

    fn act(&mut self, tap: Tap) -> bool {
        let Some(what) = self.what(tap) else {
            return false;
        };
        let event = stamp(&mut self.mint, self.now, what);
        self.session.take(event).is_ok()
    }
}

/// The block of the current set done as another exercise of its movement, or as written again.
fn swap(state: &State, pick: u8) -> Option<Swap> {
    let kit = Kit::starter(Unit::Kg);
    let written = state
        .began
        .sheet
        .block(state.current()?.planned.key.block)?;
    let today = Today {
        history: &[],
        kit: &kit,
        now: state.since.at,
        curve: state.began.curve,
        body_mass: state.began.body_mass,
    };
    let instead = alike(written.exercise.id.as_str(), &kit);
    let Some(entry) = instead.get(usize::from(pick)) else {
        return Some(Swap::back(written, &today));
    };
    Some(Swap::to(
        written,
        entry.exercise_with(&kit)?,
        entry.basis(),
        entry.sides(),
        entry.cautions(),
        &today,
    ))
}

fn stamp(mint: &mut Mint, now: Moment, what: What) -> Event {
    let ms = u64::try_from(now.at.timestamp_millis()).unwrap();
    Event {
        id: EventId(mint.next(ms, [0; 10])),
        at: now.at,
        tick: now.tick,
        what,
    }
}

proptest! {
    #[test]
    fn replay_equals_live_whatever_was_tapped(sheet in 0..2usize, taps in prop::collection::vec(tap(), 0..80)) {
        let mut floor = Floor::open(sheet);
        for tap in taps {
            floor.act(tap);
        }
        // As after a crash: the rows come back from the disk as text, in no order that matters.
        let rows: Vec<String> =
            floor.session.events().iter().rev().map(|event| serde_json::to_string(event).unwrap()).collect();
        let events = rows.iter().map(|row| serde_json::from_str(row).unwrap()).collect();
        prop_assert_eq!(Session::replay(events).unwrap(), floor.session);
    }

    #[test]
    fn undo_after_do_is_as_if_nothing_had_been_done(
        sheet in 0..2usize,
        taps in prop::collection::vec(tap(), 0..60),
        last in tap(),
    ) {
        let mut floor = Floor::open(sheet);
        for tap in taps {
            floor.act(tap);
        }
        let before = seen(floor.session.state());
        // An end and going on are no steps of an undo: from the one the other leads back.
        let step = !matches!(last, Tap::Undo | Tap::End | Tap::GoOn);
        prop_assume!(step && floor.act(last));
        prop_assert!(floor.act(Tap::Undo));
        prop_assert_eq!(seen(floor.session.state()), before);
    }

    #[test]
    fn a_rest_is_never_longer_than_it_was_made_though_the_clock_went_back(
        taps in prop::collection::vec(tap(), 0..80),
        away in 0..100_000i64,
    ) {
        let mut floor = Floor::open(0);
        for tap in taps {
            floor.act(tap);
        }
        if let Phase::Resting(rest) = floor.session.state().phase {
            // The clock may be set back, and the program may have been started again meanwhile.
            floor.now.at -= TimeDelta::seconds(away);
            floor.now.tick.run += 1;
            let length = i64::try_from(rest.length_ms).unwrap();
            if let Some(left) = rest.left_ms(&floor.now) {
                prop_assert!(left <= length, "{left} ms left of {length}");
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// Whatever a sheet file holds runs on the floor: each set has a board and cues, a tap logs it, and the session
    /// comes to its end with a record of every set.
    #[test]
    fn any_sheet_runs_on_the_floor_with_any_kit(sheet in common::sheets::sheet(), kit in common::kits::kit()) {
        let sets = unroll(&sheet).len();
        let mut floor = Floor::with(sheet, &kit);
        let mut logged = 0;
        while let Some(slot) = floor.session.state().current().cloned() {
            let state = floor.session.state();
            let board = state.board(&slot, &kit, &[]);
            prop_assert!(!board.because(kit.unit()).is_empty());
            if let Some(load) = board.prescribed {
                let equipment = state.block_of(&slot).exercise.equipment;
                prop_assert!(kit.is_loadable(equipment, load), "{load} on {equipment:?}");
            }
            let timeline = set_timeline(&slot.planned, 3);
            prop_assert!(tones(&timeline, SoundSet::Tones).iter().all(|tone| tone.len_ms > 0));
            // All from none to six left, so that a first time goes every way.
            let left = Rir::saturating(logged as i64 * 3 % 7);
            let what = What::SetDone {
                set: slot.planned.key,
                done: slot.as_prescribed(board.load).with_reserve(Some(left)),
                proposed: board.prescribed,
            };
            let event = stamp(&mut floor.mint, floor.now, what);
            prop_assert_eq!(floor.session.take(event), Ok(()));
            logged += 1;
        }
        prop_assert_eq!(logged, sets);
        prop_assert_eq!(floor.session.state().phase, Phase::AllDone);
        let record = SessionRecord::from_events(floor.session.events()).unwrap();
        prop_assert_eq!(record.lines().count(), sets);
    }
}
