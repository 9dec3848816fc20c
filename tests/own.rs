//! What is renamed keeps its history, and a light week leaves no trace in the next proposal.

use crate::common;

use common::built::{self, key};
use common::sheets::sheet;
use common::swaps::today;
use proptest::prelude::*;
use stanchion::exercises::renamed;
use stanchion::kit::Kit;
use stanchion::ledger::{SessionRecord, moved, performances_of, summaries_of};
use stanchion::session::{Amount, Began, Done, Event, SessionId, Swap, What};
use stanchion::sheet::{Block, Exercise, ExerciseId, Line, LoadBasis, SideMode};
use stanchion::strength::{Curve, Performance, Proposal, lighten_proposal};
use stanchion::units::{Share, Unit};

fn squat() -> Block {
    let work = vec![built::work(3, 5, 7)];
    built::block(work, LoadBasis::External, SideMode::Both)
}

fn three_sets(load: &str, reps: i64) -> Vec<(stanchion::sheet::SetKey, Done)> {
    let done = || built::done(Some(load), Amount::Reps(built::reps(reps)));
    (0..3).map(|set| (key(0, set), done())).collect()
}

/// The same session, done in a light week.
fn light(mut events: Vec<Event>) -> SessionRecord {
    for event in &mut events {
        if let What::Began(began) = &mut event.what {
            began.light = true;
        }
    }
    SessionRecord::from_events(&events).unwrap()
}

fn proposed(block: &Block, records: &[SessionRecord]) -> Proposal {
    let summaries = summaries_of(records);
    let history = summaries.get(&block.exercise.id);
    let performances = history.map_or(&[][..], |summary| &summary.performances);
    today(performances, &Kit::starter(Unit::Kg)).propose(block)
}

#[test]
fn an_exercise_that_is_renamed_keeps_its_history() {
    let squat = squat();
    let before = built::record(0, &squat, None, &three_sets("60 kg", 7));
    let name = Line::new("Slow squat").unwrap();
    let exercise = Exercise {
        name: name.clone(),
        ..squat.exercise.clone()
    };
    let sheet = renamed(&built::sheet(squat.clone()), &exercise).unwrap();
    let block = sheet.blocks().next().unwrap();
    assert_eq!(block.exercise.name, name);
    let proposal = proposed(block, std::slice::from_ref(&before));
    assert_eq!(
        proposal.because.to_string(),
        "7, 7, 7 at 60 kg: top of 5–7 reached, next step on this bar is 62.5 kg"
    );
    assert_eq!(proposal, proposed(&squat, &[before]));
    // It has that name now.
    assert_eq!(renamed(&sheet, &exercise), None);
}

#[test]
fn a_light_week_leaves_no_trace_in_the_next_proposal() {
    let squat = squat();
    let usual = built::record(0, &squat, None, &three_sets("60 kg", 7));
    let events = built::events(7, &squat, None, &three_sets("52.5 kg", 4));
    let light_one = light(events.clone());
    assert!(performances_of(&light_one).is_empty());
    let without = proposed(&squat, std::slice::from_ref(&usual));
    assert_eq!(without.load, Some("62.5 kg".parse().unwrap()));
    let with = [usual.clone(), light_one.clone()];
    assert_eq!(proposed(&squat, &with), without);
    // As a usual session it would have counted.
    let heavy = SessionRecord::from_events(&events).unwrap();
    assert_ne!(proposed(&squat, &[usual, heavy]), without);
    // Nothing has moved by an easy session either.
    assert!(moved(&light_one, &summaries_of(&with)).is_empty());
}

#[test]
fn another_exercise_in_a_light_week_is_as_light_as_the_rest() {
    let squat = squat();
    let kit = Kit::starter(Unit::Kg);
    let share = Share::percent(90);
    let usual = built::record(0, &squat, None, &three_sets("80 kg", 6));
    let history: Vec<Performance> = performances_of(&usual)
        .into_iter()
        .map(|(_, performance)| performance)
        .collect();
    let light = lighten_proposal(&squat, &today(&history, &kit).propose(&squat), share, &kit);
    let mut began = Began {
        curve: Curve::default(),
        session: SessionId(common::id(1, 1)),
        sheet: built::sheet(squat.clone()),
        body_mass: None,
        proposals: vec![light.clone()],
        light: true,
        along: None,
    };
    let other = Exercise {
        id: ExerciseId::new("box-squat").unwrap(),
        ..squat.exercise.clone()
    };
    let to = |history: &[Performance]| {
        let (basis, sides) = (squat.basis.clone(), squat.sides);
        Swap::to(
            &squat,
            other.clone(),
            basis,
            sides,
            vec![],
            &today(history, &kit),
        )
    };
    // 80 kg again would be usual; 90 % of it are 72 kg, and the bar makes 70 kg below.
    let swap = to(&history).suited_to(&began, &kit);
    assert_eq!(swap.proposal.load, Some("70 kg".parse().unwrap()));
    // Of its own history: 90 % of 60 kg are 54 kg, and the bar makes 52.5 kg below.
    let own = built::record(0, &squat, None, &three_sets("60 kg", 6));
    let own: Vec<Performance> = performances_of(&own)
        .into_iter()
        .map(|(_, own)| own)
        .collect();
    let lighter = to(&own).suited_to(&began, &kit);
    assert_eq!(lighter.proposal.load, Some("52.5 kg".parse().unwrap()));
    let back_with = |history| Swap::back(&squat, &today(history, &kit)).suited_to(&began, &kit);
    assert_eq!(
        back_with(&own).proposal,
        light,
        "as it was made light at the beginning"
    );
    let back = Swap::back(&squat, &today(&history, &kit)).suited_to(&began, &kit);
    assert_eq!(back.proposal, light);
    began.light = false;
    let swap = to(&history);
    assert_eq!(swap.clone().suited_to(&began, &kit), swap);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// Only names change, everywhere the exercise is, and nowhere else.
    #[test]
    fn renaming_changes_the_name_and_nothing_else(sheet in sheet(), at in any::<proptest::sample::Index>()) {
        let blocks: Vec<&Block> = sheet.blocks().collect();
        let of = blocks[at.index(blocks.len())].exercise.clone();
        let name = Line::new("A name that no generator makes").unwrap();
        let exercise = Exercise { name: name.clone(), ..of };
        let after = renamed(&sheet, &exercise).unwrap();
        prop_assert_eq!(sheet.blocks().count(), after.blocks().count());
        for (before, after) in sheet.blocks().zip(after.blocks()) {
            let mut expected = before.clone();
            if before.exercise.id == exercise.id {
                expected.exercise.name = name.clone();
            }
            prop_assert_eq!(&expected, after);
            prop_assert_eq!(before.shape(), after.shape());
        }
    }
}
