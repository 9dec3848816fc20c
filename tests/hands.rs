//! What careless hands do to a session: a set stopped early, sides that differ, a session short of time, taps taken back.

mod common;

use common::built::{block, key, reps, sets, sheet as sheet_of, work};
use common::events::event;
use proptest::prelude::*;
use stanchion::cues::{Position, position, set_timeline};
use stanchion::ledger::{SessionRecord, Volume};
use stanchion::session::{
    Amount, Began, EventId, Moment, Phase, Session, SessionId, Short, StageAmount, State, What,
};
use stanchion::sheet::{
    BlockId, Group, LoadBasis, Off, Role, SetKind, Sheet, SideMode, Target, Tempo, cuts, unroll,
    worth,
};
use stanchion::strength::Curve;
use stanchion::units::{Load, Seconds};
use uuid::Uuid;

const COUNT_IN_S: u8 = 3;

/// A session with a clock of its own, in milliseconds.
#[derive(Debug)]
struct Floor {
    session: Session,
    ms: u64,
}

impl Floor {
    fn on(sheet: Sheet) -> Floor {
        let began = What::Began(Box::new(Began {
            curve: Curve::default(),
            session: SessionId(common::id(5, 5)),
            sheet,
            body_mass: None,
            proposals: Vec::new(),
            light: false,
        }));
        let session = Session::begin(event(0, 1000, 1, began)).unwrap();
        Floor { session, ms: 1000 }
    }

    fn now(&self) -> Moment {
        event(0, self.ms, 1, What::RestHeld).moment()
    }

    fn state(&self) -> &State {
        self.session.state()
    }

    fn wait(&mut self, ms: u64) {
        self.ms += ms;
    }

    /// The events of one tap: they bear one moment, and no other tap has it.
    fn tap(&mut self, whats: Vec<What>) {
        self.ms += 1;
        for (nth, what) in whats.into_iter().enumerate() {
            let made = event(nth as u64, self.ms, 1, what);
            self.session.take(made).unwrap();
        }
    }

    fn start(&mut self) {
        let set = self.state().current().unwrap().planned.key;
        self.tap(vec![What::SetStarted { set }]);
    }

    fn stop(&mut self) {
        let set = self.state().current().unwrap().planned.key;
        let stop = self.state().stop(set, &self.now(), COUNT_IN_S);
        self.tap(vec![stop]);
    }

    fn log(&mut self) {
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

    fn offer(&self) -> Amount {
        let state = self.state();
        state.offer(state.current().unwrap(), &self.now(), COUNT_IN_S)
    }

    fn step(&mut self, more: bool) {
        let step = self.state().current().unwrap().step(self.offer(), more);
        self.tap(vec![step]);
    }

    fn undo_tap(&mut self) {
        let targets = self.session.undo_last_tap();
        self.tap(
            targets
                .into_iter()
                .map(|event| What::Undone { event })
                .collect(),
        );
    }

    fn short(&self, within_s: u64) -> Short {
        self.state().short(&self.now(), within_s, change_over())
    }

    fn left(&self) -> u64 {
        self.state().seconds_left(&self.now(), change_over())
    }
}

fn change_over() -> Seconds {
    Seconds::new(60).unwrap()
}

/// The state without what an undo moves on.
fn seen(state: &State) -> State {
    State {
        newest: EventId(Uuid::nil()),
        ..state.clone()
    }
}

/// One set of six to eight reps at 2/0/1/0, three seconds each.
fn paced(sides: SideMode) -> Floor {
    let mut block = block(vec![work(2, 6, 8)], LoadBasis::Unloaded, sides);
    block.tempo = Some("2/0/1/0".parse::<Tempo>().unwrap());
    Floor::on(sheet_of(block))
}

#[test]
fn a_set_that_is_stopped_early_offers_the_reps_that_were_heard() {
    let mut floor = paced(SideMode::Both);
    assert_eq!(floor.offer(), Amount::Reps(reps(8)));
    floor.start();
    // In the count-in and in the first rep nothing is done yet.
    floor.wait(3000 + 2999);
    assert_eq!(floor.offer(), Amount::Reps(reps(8)));
    floor.wait(9001);
    assert_eq!(floor.offer(), Amount::Reps(reps(4)));
    floor.stop();
    floor.wait(60_000);
    assert_eq!(floor.offer(), Amount::Reps(reps(4)));
    floor.step(true);
    assert_eq!(floor.offer(), Amount::Reps(reps(5)));
    floor.undo_tap();
    floor.log();
    let logged = floor.state().last_logged().unwrap().logged().unwrap();
    assert_eq!(logged.done.amount, Amount::Reps(reps(4)));
}

#[test]
fn what_the_hand_chose_counts_over_the_cues_and_a_new_start_counts_anew() {
    let mut floor = paced(SideMode::Both);
    floor.start();
    floor.wait(3000 + 3 * 3000);
    floor.step(false);
    assert_eq!(floor.offer(), Amount::Reps(reps(2)));
    floor.wait(3000);
    assert_eq!(floor.offer(), Amount::Reps(reps(2)));
    floor.stop();
    assert_eq!(floor.offer(), Amount::Reps(reps(2)));
    floor.start();
    floor.wait(3000 + 3000);
    assert_eq!(floor.offer(), Amount::Reps(reps(1)));
    // The cues end after the top of the range; what was chosen before the start stands.
    floor.wait(60_000);
    assert_eq!(floor.offer(), Amount::Reps(reps(2)));
}

#[test]
fn a_stop_leaves_nothing_behind_when_the_set_is_begun_again() {
    let mut floor = paced(SideMode::Both);
    floor.start();
    floor.wait(3000 + 2 * 3000);
    floor.stop();
    assert_eq!(floor.offer(), Amount::Reps(reps(2)));
    floor.start();
    floor.wait(60_000);
    assert_eq!(floor.offer(), Amount::Reps(reps(8)));
}

#[test]
fn each_side_is_offered_and_logged_with_its_own_reps() {
    let mut floor = paced(SideMode::EachInTurn);
    let sides = |first, second| Amount::Sides {
        first: reps(first),
        second: reps(second),
    };
    let asked = floor.state().current().unwrap().planned.target.clone();
    assert!(matches!(asked, Target::Reps(_)));
    floor.start();
    floor.wait(3000 + 2 * 3000);
    assert_eq!(floor.offer(), sides(2, 0));
    // All eight of the first side, five seconds to change, three of the other.
    floor.wait(6 * 3000 + 5000 + 3 * 3000);
    floor.stop();
    assert_eq!(floor.offer(), sides(8, 3));
    floor.step(true);
    assert_eq!(floor.offer(), sides(8, 4));
    floor.log();
    floor.tap(vec![What::Ended]);
    let record = SessionRecord::from_events(floor.session.events()).unwrap();
    let line = record.lines().next().unwrap().1;
    assert_eq!(line.amount, sides(8, 4));
    // No rule takes the stronger side for both.
    assert_eq!(line.amount.reps(), Some(reps(4)));
}

#[test]
fn volume_counts_the_reps_of_both_sides() {
    let of = |amount: Amount| {
        let block = block(
            vec![work(1, 7, 8)],
            LoadBasis::External,
            SideMode::EachInTurn,
        );
        let dones = [(key(0, 0), common::built::done(Some("20 kg"), amount))];
        Volume::of(&common::built::record(1, &block, None, &dones)).work
    };
    assert_eq!(
        of(Amount::of_sides(reps(8), reps(8))),
        of(Amount::Reps(reps(8)))
    );
    let differ = Amount::Sides {
        first: reps(9),
        second: reps(7),
    };
    assert_eq!(of(differ), of(Amount::Reps(reps(8))));
}

#[test]
fn a_hold_that_is_let_go_offers_its_seconds() {
    let target = Target::Timed(Seconds::new(40).unwrap());
    let line = sets(SetKind::Work, 1, target);
    let mut floor = Floor::on(sheet_of(block(
        vec![line],
        LoadBasis::Unloaded,
        SideMode::Both,
    )));
    floor.start();
    floor.wait(3000 + 17_400);
    floor.stop();
    assert_eq!(floor.offer(), Amount::Timed(Seconds::new(17).unwrap()));
    floor.step(true);
    assert_eq!(floor.offer(), Amount::Timed(Seconds::new(22).unwrap()));
}

#[test]
fn stages_that_were_not_reached_count_nothing() {
    let target: Target = serde_json::from_str(
        r#"{"stages":[{"hold":{"seconds":10}},{"reps":{"reps":4,"tempo":"2/0/2/0"}},{"partials":{"reps":6}}]}"#,
    )
    .unwrap();
    let line = sets(SetKind::Work, 1, target);
    let mut floor = Floor::on(sheet_of(block(
        vec![line],
        LoadBasis::Unloaded,
        SideMode::Both,
    )));
    floor.start();
    floor.wait(3000 + 10_000 + 2 * 4000);
    floor.stop();
    let stages = vec![
        StageAmount::Hold(Seconds::new(10).unwrap()),
        StageAmount::Reps(reps(2)),
        StageAmount::Partials(reps(0)),
    ];
    assert_eq!(floor.offer(), Amount::Stages(stages));
}

/// A sheet of straight blocks of every role.
fn straight() -> impl Strategy<Value = Sheet> {
    let roles = [Role::Power, Role::Strength, Role::Hypertrophy, Role::Pump];
    let one = (prop::sample::select(roles.to_vec()), 1..6u8, 4..12i64);
    prop::collection::vec(one, 1..6).prop_map(|blocks| {
        let groups = blocks.into_iter().zip(1..).map(|((role, count, reps), n)| {
            let mut block = block(
                vec![work(count, reps, reps + 2)],
                LoadBasis::Unloaded,
                SideMode::Both,
            );
            block.id = BlockId(common::id(n, n));
            block.role = role;
            Group::Straight(Box::new(block))
        });
        let plain = block(vec![work(1, 1, 2)], LoadBasis::Unloaded, SideMode::Both);
        Sheet {
            groups: groups.collect(),
            ..sheet_of(plain)
        }
    })
}

/// A floor on any sheet, some of its sets logged or skipped.
fn floor() -> impl Strategy<Value = Floor> {
    (
        common::sheets::sheet(),
        prop::collection::vec(0..6u8, 0..12),
        0..300_000u64,
        any::<bool>(),
    )
        .prop_map(|(sheet, taps, wait, starts)| {
            let mut floor = Floor::on(sheet);
            for tap in taps {
                let Some(slot) = floor.state().current() else {
                    break;
                };
                let set = slot.planned.key;
                match tap {
                    0 => floor.tap(vec![What::SetSkipped { set }]),
                    1 => floor.tap(vec![What::SetAdded {
                        block: set.block,
                        line: set.line,
                    }]),
                    _ => floor.log(),
                }
            }
            floor.wait(wait);
            if starts && floor.state().current().is_some() {
                floor.start();
            }
            floor
        })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    /// Stopping and then logging is logging; what is offered is never more than the cues have said, and what is
    /// prescribed once they have ended.
    #[test]
    fn the_offer_follows_the_cues(sheet in common::sheets::sheet(), at in 0..400_000u64) {
        let mut floor = Floor::on(sheet);
        let prescribed = floor.offer();
        floor.start();
        floor.wait(at);
        let offered = floor.offer();
        let state = floor.state();
        let slot = state.current().unwrap();
        let timeline = set_timeline(&slot.planned, COUNT_IN_S);
        let now = floor.now().since(&match state.phase {
            Phase::Working { since, .. } => since,
            _ => unreachable!("it was started"),
        });
        match position(&timeline, now as u32) {
            Position::Over | Position::Open { .. } => prop_assert_eq!(&offered, &prescribed),
            Position::Running { .. } => {
                let top = unroll(&state.began.sheet)[0].offered;
                let asked = slot.planned.target.plain_reps().map(|asked| asked.top());
                if let (Amount::Reps(heard), Some(asked)) = (&offered, asked) {
                    prop_assert!(*heard <= asked.max(top.unwrap_or(asked)) || slot.planned.kind.name() == "cluster");
                }
            }
        }
        floor.stop();
        let after = floor.offer();
        prop_assert_eq!(&after, &offered);
        floor.log();
        let logged = floor.state().last_logged().unwrap().logged().unwrap().done.amount.clone();
        prop_assert_eq!(logged, offered);
    }

    /// A session short of time fits it, or there is nothing left to take off; it takes no more than that asks for.
    #[test]
    fn short_of_time_takes_off_what_it_must_and_no_more(mut floor in floor(), within in 0..4000u64) {
        let pending = |floor: &Floor| floor.state().slots.iter().filter(|slot| slot.logged().is_none()).count();
        let before = seen(floor.state());
        let left = floor.left();
        let under_way = match floor.state().phase {
            Phase::Working { set, .. } => Some(set),
            _ => None,
        };
        let short = floor.short(within);
        prop_assert_eq!(short.drops.is_empty(), short.gone.is_empty());
        if left <= within {
            prop_assert!(short.drops.is_empty());
        }
        prop_assert_eq!(left - short.left, short.gone.iter().map(|gone| gone.saves).sum::<u64>());
        prop_assert!(short.gone.iter().all(|gone| gone.saves > 0 && gone.sets > 0));
        prop_assert!(under_way.is_none_or(|set| !short.drops.contains(&set)));
        if floor.state().current().is_none() || short.drops.is_empty() {
            return Ok(());
        }
        let many = pending(&floor);
        floor.tap(short.events());
        // What was said is what there is.
        prop_assert_eq!(floor.left(), short.left);
        prop_assert_eq!(pending(&floor), many - short.drops.len());
        prop_assert!(floor.state().current().is_some(), "one set stays");
        prop_assert!(floor.short(within).drops.is_empty(), "a second time finds nothing");
        floor.undo_tap();
        prop_assert_eq!(seen(floor.state()), before);
    }

    /// What is worth more keeps its sets while what is worth less has any to give.
    #[test]
    fn power_and_strength_are_kept_longest(sheet in straight(), within in 0..6000u64) {
        let mut floor = Floor::on(sheet.clone());
        let short = floor.short(within);
        floor.tap(short.events());
        let dearest = short.gone.iter().map(|gone| worth(sheet.block(gone.block).unwrap().role)).max();
        let cheaper = sheet.blocks().filter(|block| dearest.is_some_and(|lost| worth(block.role) < lost));
        for block in cheaper {
            let left = floor.state().slots.iter().filter(|slot| slot.planned.key.block == block.id).count();
            prop_assert_eq!(left, 0, "{} sets of {:?} are left", left, block.role);
        }
        // One set stays, of the first block of what is kept longest.
        if within == 0 {
            let best = sheet.blocks().map(|block| worth(block.role)).max().unwrap();
            let first = sheet.blocks().find(|block| worth(block.role) == best).unwrap().id;
            let kept: Vec<_> = floor.state().slots.iter().map(|slot| slot.planned.key.block).collect();
            prop_assert_eq!(kept, vec![first]);
        }
    }

    /// Before the first set it is the sheet's own cuts.
    #[test]
    fn before_the_first_set_it_is_what_the_sheet_says(sheet in common::sheets::sheet(), minutes in 0..60u16) {
        let floor = Floor::on(sheet.clone());
        let own = cuts(&sheet, minutes, change_over());
        let short = floor.short(u64::from(minutes) * 60);
        let saves = own.iter().map(|cut| cut.saves).sum::<u64>();
        // The sheet's cuts may name a block twice; here it is one line.
        prop_assert_eq!(saves, short.gone.iter().map(|gone| gone.saves).sum::<u64>());
        for cut in own {
            let gone = short.gone.iter().find(|gone| gone.block == cut.block);
            prop_assert!(gone.is_some());
            if cut.off == Off::Whole {
                prop_assert!(gone.unwrap().whole);
            }
        }
    }
}

#[test]
fn what_goes_is_said_with_what_it_saves() {
    let mut squat = block(vec![work(3, 4, 5)], LoadBasis::Unloaded, SideMode::Both);
    squat.tempo = Some("2/0/1/0".parse().unwrap());
    let mut floor = Floor::on(sheet_of(squat));
    floor.log();
    // 150 s of rest, 15 s of work, 150 s, 15 s.
    assert_eq!(floor.left(), 330);
    let short = floor.short(170);
    assert_eq!(short.left, 165);
    let said: Vec<String> = short.gone.iter().map(|gone| gone.said()).collect();
    assert_eq!(said, ["1 set of Front squat, saves 3 min"]);
}

#[test]
fn a_pair_says_who_is_next_and_after_which_rest() {
    let demo = stanchion::store::demo();
    let sheets = demo.current_sheets();
    let sheet = sheets
        .iter()
        .find(|sheet| {
            sheet
                .groups
                .iter()
                .any(|group| matches!(group, Group::Pair { .. }))
        })
        .expect("the demo holds a pair");
    let floor = Floor::on((*sheet).clone());
    let state = floor.state();
    let mut said = Vec::new();
    for slot in &state.slots {
        if let Some(turn) = state.turn(slot.planned.key) {
            assert_eq!(turn.of, 2);
            said.push(turn.said());
        } else {
            assert_eq!(
                state.began.sheet.groups[slot.planned.group].blocks().len(),
                1
            );
        }
    }
    assert!(said[0].starts_with("pair 1 of 2 · then "), "{}", said[0]);
    assert!(said[1].starts_with("pair 2 of 2 · then "), "{}", said[1]);
    assert!(said.last().unwrap().ends_with("its last set"));
}

#[test]
fn taps_of_one_moment_are_taken_back_together_and_others_alone() {
    let mut floor = paced(SideMode::Both);
    let set = key(0, 0);
    let load = What::LoadChosen {
        set,
        load: Load::whole_kg(20),
        proposed: None,
    };
    floor.tap(vec![load]);
    let before = seen(floor.state());
    let two = [7, 9].map(|n| What::RepsChosen { set, reps: reps(n) });
    floor.tap(two.to_vec());
    assert_eq!(floor.offer(), Amount::Reps(reps(9)));
    floor.undo_tap();
    assert_eq!(seen(floor.state()), before);
    floor.undo_tap();
    assert_eq!(floor.state().slot(set).unwrap().load, None);
    assert_eq!(floor.session.undo_last_tap(), []);
}
