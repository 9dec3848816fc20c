//! Another exercise on the floor: what is left of a block is done as the other one, what was done stays what it was.

use crate::common;

use common::built::{reps, sets, work};
use common::events::event;
use common::id;
use common::swaps::{Floor, back, kit, line, squat, swapped, to};
use proptest::prelude::*;
use stanchion::exercises::{self, alike};
use stanchion::ledger::{Volume, moved, performances_of, summaries_of};
use stanchion::order::Map;
use stanchion::session::{Phase, Refusal, Session, Status, Swap, What};
use stanchion::sheet::{BlockId, LoadPolicy, RepTarget, SetKind, SideMode, Step, Target};
use stanchion::strength::{Because, SetBecause};
use stanchion::units::{Load, Share};

fn pairs(expected: &[(&str, usize)]) -> Vec<(String, usize)> {
    expected
        .iter()
        .map(|(id, sets)| ((*id).to_owned(), *sets))
        .collect()
}

#[test]
fn the_board_is_of_the_other_exercise_and_begins_light() {
    let written = squat(vec![work(3, 5, 7)]);
    let mut floor = Floor::open(&written);
    assert_eq!(floor.load().as_deref(), Some("60 kg"));
    floor
        .act(What::LoadChosen {
            set: floor.current().planned.key,
            load: Load::whole_kg(50),
            proposed: None,
        })
        .unwrap();
    floor
        .act(swapped(to(&written, "goblet-squat", &[])))
        .unwrap();
    let board = floor.session.state().board(&floor.current(), &kit(), &[]);
    assert_eq!(board.exercise.as_str(), "Goblet squat");
    // No load of the squat is left: a first time, with the lightest dumbbell.
    let to = Load::whole_kg(4);
    assert_eq!(board.load, Some(to));
    assert_eq!(board.because, SetBecause::WorkLoad { to });
    assert_eq!(board.proposal, Some(Because::GuidedStart { to }));
    assert_eq!(board.cue, None);
    let own = exercises::entry("goblet-squat").unwrap().cautions();
    let own: Vec<String> = own.iter().map(ToString::to_string).collect();
    assert_eq!(board.cautions, own);
    assert_eq!((board.number, board.of), (1, 3));
}

#[test]
fn the_load_comes_from_the_other_exercises_own_history() {
    let written = squat(vec![work(3, 5, 7)]);
    // Goblet squats of another day, every set at the top of the range: the next dumbbell of the kit waits for more reps.
    let mut before = Floor::open(&written);
    before
        .act(swapped(to(&written, "goblet-squat", &[])))
        .unwrap();
    for _ in 0..3 {
        before.log(Some("15 kg"));
    }
    let summaries = summaries_of([&before.record()]);
    let goblet = exercises::entry("goblet-squat").unwrap().id();
    let history = &summaries.get(&goblet).unwrap().performances;
    let swap = to(&written, "goblet-squat", history);
    let Some(load) = swap.proposal.load else {
        panic!("nothing is proposed: {:?}", swap.proposal);
    };
    assert_eq!(load, Load::whole_kg(15));
    let waits = matches!(swap.proposal.because, Because::StepWaits { .. });
    assert!(waits, "{:?}", swap.proposal);
    let mut floor = Floor::open(&written);
    floor.act(swapped(swap)).unwrap();
    assert_eq!(floor.load(), Some(load.to_string()));
}

#[test]
fn sets_done_stay_what_they_were_and_the_ledger_tells_both() {
    let written = squat(vec![work(4, 5, 7)]);
    let mut floor = Floor::open(&written);
    floor.log(None);
    floor
        .act(swapped(to(&written, "walking-lunge", &[])))
        .unwrap();
    assert_eq!(floor.current().planned.sides, SideMode::EachInTurn);
    floor.log(Some("10 kg"));
    floor.act(swapped(back(&written))).unwrap();
    assert_eq!(
        floor.load().as_deref(),
        Some("60 kg"),
        "the squat goes on from the squat"
    );
    floor.log(None);
    assert_eq!(
        floor.done(),
        pairs(&[("front-squat", 2), ("walking-lunge", 1)])
    );

    let record = floor.record();
    let ids: Vec<String> = performances_of(&record)
        .iter()
        .map(|(id, performance)| format!("{id} × {}", performance.sets.len()))
        .collect();
    assert_eq!(ids, ["front-squat × 2", "walking-lunge × 1"]);
    // Squat 2 × 7 × 60 kg, lunge 7 on each of two sides × 10 kg.
    assert_eq!(Volume::of(&record).work.to_string(), "980 kg");
    let said: Vec<String> = moved(&record, &Map::new())
        .iter()
        .map(ToString::to_string)
        .collect();
    assert_eq!(
        said,
        [
            "Front squat: 60 kg for 7, the first time",
            "Walking lunge: 10 kg for 7, the first time"
        ]
    );
    assert_eq!(record.blocks[0].block, written);
}

#[test]
fn nothing_of_the_first_exercise_counts_for_the_other_ones_loads() {
    let back_off = Target::Reps(RepTarget::fixed(reps(8)).unwrap());
    let mut lines = vec![work(2, 5, 7)];
    lines[0].load = LoadPolicy::Rising(Step::By("2.5 kg".parse().unwrap()));
    lines.push(sets(
        SetKind::BackOff {
            share: Share::percent(80),
        },
        1,
        back_off,
    ));
    let written = squat(lines);
    let mut floor = Floor::open(&written);
    floor.log(Some("100 kg"));
    floor
        .act(swapped(to(&written, "goblet-squat", &[])))
        .unwrap();
    assert_eq!(floor.load().as_deref(), Some("4 kg"));
    floor.log(Some("20 kg"));
    // 80 % of the 20 kg of the goblet squat, not of the 100 kg of the front squat.
    let load: Load = floor.load().unwrap().parse().unwrap();
    assert!(load <= Load::whole_kg(16), "{load}");
}

#[test]
fn loads_in_figures_belong_to_the_written_exercise() {
    let mut lines = vec![work(2, 5, 7)];
    lines[0].load = LoadPolicy::List(vec![Load::whole_kg(80), Load::whole_kg(85)]);
    let written = squat(lines);
    let mut floor = Floor::open(&written);
    assert_eq!(floor.load().as_deref(), Some("80 kg"));
    floor
        .act(swapped(to(&written, "goblet-squat", &[])))
        .unwrap();
    assert_eq!(floor.load().as_deref(), Some("4 kg"));
    floor.undo();
    assert_eq!(floor.load().as_deref(), Some("80 kg"));
}

#[test]
fn what_changes_on_the_bar_is_told_across_a_swap() {
    let written = squat(vec![work(3, 5, 7)]);
    let mut floor = Floor::open(&written);
    floor.log(Some("60 kg"));
    // Another barbell exercise goes on with the bar as it is loaded; a hand weight has nothing to do with it.
    for (id, load, told) in [
        ("back-squat", "70 kg", true),
        ("goblet-squat", "10 kg", false),
    ] {
        floor.act(swapped(to(&written, id, &[]))).unwrap();
        let set = floor.current().planned.key;
        let load = load.parse().unwrap();
        let chosen = What::LoadChosen {
            set,
            load,
            proposed: None,
        };
        floor.act(chosen).unwrap();
        let board = floor.session.state().board(&floor.current(), &kit(), &[]);
        assert_eq!(board.change.is_some(), told, "{id}");
    }
}

#[test]
fn a_set_added_later_is_of_the_exercise_that_is_done_now() {
    let written = squat(vec![work(1, 5, 7)]);
    let mut floor = Floor::open(&written);
    floor
        .act(swapped(to(&written, "goblet-squat", &[])))
        .unwrap();
    floor.log(Some("10 kg"));
    floor
        .act(What::SetAdded {
            block: written.id,
            line: 0,
        })
        .unwrap();
    floor.log(Some("10 kg"));
    assert_eq!(floor.done(), pairs(&[("goblet-squat", 2)]));
}

#[test]
fn a_rest_goes_on_and_a_skipped_set_stays_skipped() {
    let written = squat(vec![work(3, 5, 7)]);
    let mut floor = Floor::open(&written);
    let set = floor.current().planned.key;
    floor.act(What::SetSkipped { set }).unwrap();
    floor.log(None);
    let resting = floor.session.state().phase;
    assert!(matches!(resting, Phase::Resting(_)));
    floor
        .act(swapped(to(&written, "goblet-squat", &[])))
        .unwrap();
    assert_eq!(floor.session.state().phase, resting);
    let skipped = floor.session.state().slot(set).unwrap();
    assert_eq!(skipped.status, Status::Skipped);
    assert_eq!(floor.session.state().block_of(skipped), &written);
}

#[test]
fn what_makes_no_sense_is_refused() {
    let written = squat(vec![work(1, 5, 7)]);
    let mut floor = Floor::open(&written);
    let goblet = || swapped(to(&written, "goblet-squat", &[]));
    let mut stray = to(&written, "goblet-squat", &[]);
    stray.proposal.block = BlockId(id(77, 7));
    assert_eq!(floor.act(swapped(stray)), Err(Refusal::NoSuchBlock));
    let same = swapped(back(&written));
    assert_eq!(floor.act(same.clone()), Err(Refusal::SameExercise));
    let set = floor.current().planned.key;
    floor.act(What::SetStarted { set }).unwrap();
    assert_eq!(floor.act(goblet()), Err(Refusal::UnderWay));
    floor.act(What::SetStopped { set, heard: None }).unwrap();
    floor.act(goblet()).unwrap();
    assert_eq!(floor.act(goblet()), Err(Refusal::SameExercise));
    floor.log(Some("10 kg"));
    assert_eq!(floor.act(same.clone()), Err(Refusal::NothingLeft));
    floor.act(What::Ended).unwrap();
    assert_eq!(floor.act(same), Err(Refusal::Ended));
}

#[test]
fn a_swap_in_a_merged_history_calls_off_a_set_under_way() {
    let written = squat(vec![work(2, 5, 7)]);
    let mut floor = Floor::open(&written);
    let set = floor.current().planned.key;
    floor.act(What::SetStarted { set }).unwrap();
    // Two devices: the swap comes between the start and the log of the other one.
    let mut events = floor.session.events().to_vec();
    events.push(event(
        10,
        90_000,
        2,
        swapped(to(&written, "goblet-squat", &[])),
    ));
    let session = Session::replay(events).unwrap();
    assert_eq!(session.state().phase, Phase::Ready);
}

#[test]
fn a_swap_with_too_many_cautions_is_not_read() {
    let mut swap = to(&squat(vec![work(1, 5, 7)]), "goblet-squat", &[]);
    swap.cautions = vec![line("Slowly"); 20];
    let text = |swap: &Swap| serde_json::to_string(swap).unwrap();
    assert_eq!(serde_json::from_str::<Swap>(&text(&swap)).unwrap(), swap);
    swap.cautions.push(line("Slowly"));
    let error = serde_json::from_str::<Swap>(&text(&swap)).unwrap_err();
    assert!(error.to_string().contains("21 cautions"), "{error}");
}

proptest! {
    /// Whatever is swapped when: every logged set is in the record as the exercise that was on the board.
    #[test]
    fn the_ledger_holds_each_set_as_the_exercise_on_its_board(
        taps in prop::collection::vec((0..4_u8, any::<prop::sample::Index>()), 1..30),
    ) {
        let written = squat(vec![work(4, 5, 7), work(4, 8, 10)]);
        let instead = alike("front-squat", &kit());
        let mut floor = Floor::open(&written);
        let mut logged: Vec<(Vec<u8>, String)> = Vec::new();
        for (tap, pick) in taps {
            if floor.session.state().current().is_none() {
                break;
            }
            match tap {
                0 => {
                    let id = pick.get(&instead).id();
                    // The exercise that it is already is refused, and changes nothing.
                    let before = floor.session.state().clone();
                    if floor.act(swapped(to(&written, id.as_str(), &[]))).is_err() {
                        prop_assert_eq!(floor.session.state(), &before);
                    }
                }
                1 => {
                    let before = floor.session.state().swapped.len();
                    if floor.act(swapped(back(&written))).is_ok() {
                        prop_assert_eq!(floor.session.state().swapped.len(), before + 1);
                    }
                }
                _ => {
                    let slot = floor.current();
                    let board = floor.session.state().board(&slot, &kit(), &[]);
                    let at = vec![slot.planned.key.line, slot.planned.key.set];
                    logged.push((at, board.exercise.to_string()));
                    floor.log(Some("10 kg"));
                }
            }
        }
        let record = floor.record();
        let mut kept: Vec<(Vec<u8>, String)> = record
            .lines()
            .map(|(block, line)| (vec![line.key.line, line.key.set], block.exercise.name.to_string()))
            .collect();
        kept.sort();
        prop_assert_eq!(kept, logged);
        let replayed = Session::replay(floor.session.events().to_vec()).unwrap();
        prop_assert_eq!(replayed.state(), floor.session.state());
    }
}
