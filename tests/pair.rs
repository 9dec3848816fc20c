//! Two lifters at one rack: whose turn it is, whose tap is taken back, and what of both lies on the bar.

use chrono::{DateTime, Duration, FixedOffset};
use proptest::collection::vec;
use proptest::prelude::*;
use stanchion::kit::{Kit, Loading, change};
use stanchion::session::{
    Along, Began, Beside, Board, Event, EventId, Mint, Moment, Phase, Session, SessionId, Tick,
    What, can_undo, is_next, logged_last, tapped_last, turns,
};
use stanchion::sheet::{Equipment, Sheet};
use stanchion::strength::{Curve, Today, propose};
use stanchion::units::{Load, Reps, Unit};
use uuid::Uuid;

fn morning() -> DateTime<FixedOffset> {
    DateTime::parse_from_rfc3339("2026-03-02T18:00:00+01:00").unwrap()
}

/// Two sessions at one rack with one clock and one row of ids, as a phone has them.
struct Rack {
    both: [Session; 2],
    /// Whose board it is.
    on: usize,
    mint: Mint,
    ms: u64,
    kit: Kit,
}

/// The demo's sheet of that name, which begins on the bar.
fn demo(name: &str) -> Sheet {
    let demo = stanchion::store::demo();
    let sheets = demo.current_sheets();
    let named = sheets.into_iter().find(|sheet| sheet.name.as_str() == name);
    let mut sheet = named.expect("the demo has it").clone();
    sheet.groups.retain(|group| {
        group
            .blocks()
            .iter()
            .any(|block| block.exercise.equipment == Equipment::Barbell)
    });
    sheet
}

impl Rack {
    fn open(sheets: [&str; 2]) -> Rack {
        let mut rack = Rack {
            both: sheets.map(|_| none()),
            on: 0,
            mint: Mint::default(),
            ms: 0,
            kit: Kit::starter(Unit::Kg),
        };
        for (at, name) in sheets.into_iter().enumerate() {
            let began = rack.began(at, demo(name));
            let event = rack.event(What::Began(Box::new(began)));
            rack.both[at] = Session::begin(event).unwrap();
        }
        rack
    }

    fn began(&self, at: usize, sheet: Sheet) -> Began {
        let today = Today {
            history: &[],
            kit: &self.kit,
            now: morning(),
            curve: Curve::default(),
            body_mass: None,
        };
        let session = |at: usize| SessionId(Uuid::from_u128(1 + at as u128));
        Began {
            curve: Curve::default(),
            session: session(at),
            proposals: sheet.blocks().map(|block| propose(block, &today)).collect(),
            sheet,
            light: false,
            body_mass: None,
            along: Some(Along {
                lifter: Uuid::from_u128(9),
                session: session(1 - at),
                first: at == 0,
            }),
        }
    }

    fn event(&mut self, what: What) -> Event {
        self.ms += 1000;
        let at = morning() + Duration::milliseconds(self.ms.try_into().unwrap());
        let ms = u64::try_from(at.timestamp_millis()).unwrap();
        Event {
            id: EventId(self.mint.next(ms, [0; 10])),
            at,
            tick: Tick {
                run: 1,
                ms: self.ms,
            },
            what,
        }
    }

    fn act(&mut self, what: What) {
        let event = self.event(what);
        self.both[self.on].take(event).unwrap();
    }

    fn own(&self) -> &Session {
        &self.both[self.on]
    }

    fn other(&self) -> &Session {
        &self.both[1 - self.on]
    }

    /// The board of the one whose turn it is.
    fn board(&self) -> Option<Board> {
        let state = self.own().state();
        let beside = Beside {
            state: self.other().state(),
            theirs: &|_| &[],
            own: &|_| &[],
        };
        Some(state.board_beside(state.current()?, &self.kit, &[], Some(&beside)))
    }

    fn log(&mut self, board: &Board, reps: Option<Reps>) {
        let slot = self.own().state().slot(board.key).unwrap();
        let mut done = slot.as_prescribed(board.load);
        if let Some(reps) = reps {
            done = done.with_reps(reps);
        }
        let what = What::SetDone {
            set: board.key,
            done,
            proposed: board.prescribed,
        };
        self.act(what);
        if turns(self.own().state(), self.other().state()) {
            self.on = 1 - self.on;
        }
    }

    /// Takes the newest tap of both back, on the board of whoever made it.
    fn undo(&mut self) {
        if tapped_last(self.own(), self.other()) {
            self.on = 1 - self.on;
        }
        for event in self.own().undo_last_tap() {
            self.act(What::Undone { event });
        }
    }
}

/// A session in place of one that is begun at once.
fn none() -> Session {
    let began = Began {
        curve: Curve::default(),
        session: SessionId(Uuid::nil()),
        proposals: Vec::new(),
        sheet: demo("Lower A"),
        light: false,
        body_mass: None,
        along: None,
    };
    let moment = Moment {
        at: morning(),
        tick: Tick { run: 1, ms: 0 },
    };
    Session::begin(Event {
        id: EventId(Uuid::nil()),
        at: moment.at,
        tick: moment.tick,
        what: What::Began(Box::new(began)),
    })
    .unwrap()
}

#[test]
fn the_board_turns_after_each_set_that_a_rest_follows() {
    let mut rack = Rack::open(["Lower A", "Lower A"]);
    assert!(is_next(&rack.both[0], &rack.both[1]), "who began is first");
    for n in 0..6 {
        assert_eq!(rack.on, n % 2, "set {n}");
        let board = rack.board().unwrap();
        rack.log(&board, None);
    }
}

#[test]
fn who_has_nothing_left_is_not_turned_to() {
    let mut rack = Rack::open(["Lower A", "Upper B"]);
    rack.on = 1;
    rack.act(What::Ended);
    rack.on = 0;
    let board = rack.board().unwrap();
    rack.log(&board, None);
    assert_eq!(rack.on, 0);
    assert!(is_next(&rack.both[0], &rack.both[1]));
    assert!(!is_next(&rack.both[1], &rack.both[0]));
}

#[test]
fn what_changes_goes_from_the_one_s_plates_to_the_other_s() {
    let mut rack = Rack::open(["Lower A", "Lower A"]);
    let load = |text: &str| -> Load { text.parse().unwrap() };
    let mut said = Vec::new();
    for mass in ["60 kg", "100 kg", "62.5 kg", "100 kg"] {
        let set = rack.own().state().current().unwrap().planned.key;
        rack.act(What::LoadChosen {
            set,
            load: load(mass),
            proposed: None,
        });
        let board = rack.board().unwrap();
        assert_eq!(board.loading.as_ref().map(Loading::load), Some(load(mass)));
        said.push(board.change.as_ref().map(|change| {
            let sum = |masses: &[Load]| {
                masses
                    .iter()
                    .map(|mass| mass.kg())
                    .sum::<rust_decimal::Decimal>()
            };
            (sum(&change.on) - sum(&change.off)).normalize().to_string()
        }));
        rack.log(&board, None);
    }
    // Each side takes half of the difference; before the first set nothing is known of the bar.
    let said: Vec<Option<&str>> = said.iter().map(Option::as_deref).collect();
    assert_eq!(said, [None, Some("20"), Some("-18.75"), Some("18.75")]);
}

#[test]
fn a_tap_is_taken_back_from_whoever_made_it() {
    let mut rack = Rack::open(["Lower A", "Lower A"]);
    assert!(!can_undo(rack.own(), Some(rack.other())));
    for _ in 0..2 {
        let board = rack.board().unwrap();
        rack.log(&board, None);
        // From the board of the other one too, who may have done nothing yet.
        assert!(can_undo(rack.own(), Some(rack.other())));
    }
    // It is the first one's board again; the second one logged last.
    assert_eq!(rack.on, 0);
    assert!(tapped_last(&rack.both[0], &rack.both[1]));
    assert!(logged_last(&rack.both[0], &rack.both[1]));
    assert!(!logged_last(&rack.both[1], &rack.both[0]));
    rack.undo();
    assert_eq!(rack.on, 1);
    assert!(rack.both[1].state().last_logged().is_none());
    assert!(!can_undo(rack.own(), None));
    rack.undo();
    assert_eq!(rack.on, 0);
    assert!(rack.both[0].state().last_logged().is_none());
    assert!(!can_undo(rack.own(), Some(rack.other())));
}

/// A tap on the board.
#[derive(Debug, Clone)]
enum Tap {
    Log(Option<i64>),
    Choose(u16),
    Start,
    Undo,
    EndRest,
}

fn tap() -> impl Strategy<Value = Tap> {
    prop_oneof![
        6 => prop::option::of(0..15_i64).prop_map(Tap::Log),
        2 => (0..90_u16).prop_map(Tap::Choose),
        1 => Just(Tap::Start),
        1 => Just(Tap::Undo),
        1 => Just(Tap::EndRest),
    ]
}

fn sheets() -> impl Strategy<Value = [&'static str; 2]> {
    let name = || prop::sample::select(vec!["Lower A", "Upper B"]);
    (name(), name()).prop_map(|(one, other)| [one, other])
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// After a reload it is the turn of the one whose board was shown, as long as nobody turned it by hand; and what both
    /// sessions are is what their events say.
    #[test]
    fn a_reload_brings_the_turn_back(sheets in sheets(), taps in vec(tap(), 1..24)) {
        let mut rack = Rack::open(sheets);
        for tap in taps {
            let Some(board) = rack.board() else { break };
            match tap {
                Tap::Log(reps) => rack.log(&board, reps.map(Reps::saturating)),
                Tap::Start => rack.act(What::SetStarted { set: board.key }),
                Tap::EndRest if matches!(rack.own().state().phase, Phase::Resting(_)) => {
                    rack.act(What::RestEnded);
                }
                _ => continue,
            }
            let replayed = rack.both.clone().map(|session| Session::replay(session.events().to_vec()).unwrap());
            prop_assert_eq!(&replayed, &rack.both);
            let left = |at: usize| rack.both[at].state().current().is_some();
            if left(0) || left(1) {
                prop_assert!(is_next(&replayed[rack.on], &replayed[1 - rack.on]));
                prop_assert!(!is_next(&replayed[1 - rack.on], &replayed[rack.on]));
            }
        }
    }

    /// What is said to change on the bar goes on from the plates that were shown to whoever lifted last.
    #[test]
    fn every_change_goes_on_from_the_plates_of_whoever_lifted_last(
        sheets in sheets(),
        taps in vec((prop::option::of(0..90_u16), prop::option::of(0..15_i64), any::<bool>()), 1..16),
    ) {
        let mut rack = Rack::open(sheets);
        let mut shown: Option<Loading> = None;
        for (chosen, reps, stay) in taps {
            // By hand, now and then.
            if stay && rack.other().state().current().is_some() {
                rack.on = 1 - rack.on;
            }
            let Some(slot) = rack.own().state().current() else { break };
            let set = slot.planned.key;
            let on_bar = rack.own().state().block_of(slot).exercise.equipment == Equipment::Barbell;
            if let Some(halves) = chosen.filter(|_| on_bar) {
                let load = format!("{halves}.5 kg").parse().unwrap();
                rack.act(What::LoadChosen { set, load, proposed: None });
            }
            let board = rack.board().unwrap();
            if on_bar {
                match (&shown, &board.loading) {
                    (Some(from), Some(to)) => prop_assert_eq!(&board.change, &Some(change(from, to))),
                    _ => prop_assert_eq!(&board.change, &None),
                }
                if let (Some(loading), Some(load)) = (&board.loading, board.load) {
                    prop_assert_eq!(loading.load(), load);
                }
                // A set without a load says nothing of the bar.
                if board.load.is_some() {
                    shown.clone_from(&board.loading);
                }
            }
            rack.log(&board, reps.map(Reps::saturating));
        }
    }

    /// Taken back tap by tap, both sessions are as they were before each, whoever made it.
    #[test]
    fn all_taps_of_both_can_be_taken_back(sheets in sheets(), taps in vec(tap(), 1..16)) {
        let mut rack = Rack::open(sheets);
        let fresh = |rack: &Rack| rack.both.clone().map(|session| {
            let state = session.state();
            (state.slots.clone(), matches!(state.phase, Phase::Ready))
        });
        let first = fresh(&rack);
        let mut made = 0;
        for tap in taps {
            let Some(board) = rack.board() else { break };
            match tap {
                Tap::Log(reps) => rack.log(&board, reps.map(Reps::saturating)),
                Tap::Choose(halves) => {
                    let load = format!("{halves}.5 kg").parse().unwrap();
                    rack.act(What::LoadChosen { set: board.key, load, proposed: None });
                }
                _ => continue,
            }
            made += 1;
        }
        for _ in 0..made {
            rack.undo();
        }
        prop_assert_eq!(fresh(&rack), first);
    }
}
