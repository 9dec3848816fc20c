//! Weeks: what they sum, against an independent path over the raw events; lengths and rests over a pause.

use crate::common;

use chrono::{Datelike, Days, NaiveDate};
use common::archives::archive;
use common::built::{block, done, events, key, reps, work};
use common::events::{session, session_id};
use proptest::prelude::*;
use rust_decimal::Decimal;
use stanchion::exercises::{Catalogue, Muscle};
use stanchion::ledger::{
    Heading, MuscleSets, SessionRecord, Week, days_told, halves_said, monday_of, muscles_of,
    newest_first, session_load, weeks,
};
use stanchion::session::{Amount, Event, EventId, StageAmount, What};
use stanchion::sheet::{ExerciseId, LoadBasis, Pattern, SetKey, SetKind, SideMode, unroll};
use stanchion::units::{Load, Rpe};
use std::collections::{BTreeMap, BTreeSet};

fn day(text: &str) -> NaiveDate {
    text.parse().unwrap()
}

/// One set as the plain reading of the events has it.
struct Plain {
    exercise: ExerciseId,
    hard: bool,
    kg_reps: Decimal,
}

/// A session as the plain reading of its events has it: no state, no record, one event after the other.
struct PlainSession {
    day: NaiveDate,
    rpe: Option<u32>,
    budget: Option<u32>,
    sets: Vec<Plain>,
}

/// Whether an event counts: no later undo that counts takes it away.
fn counts(events: &[Event], id: EventId) -> bool {
    !events.iter().any(|undo| {
        matches!(undo.what, What::Undone { event } if event == id) && counts(events, undo.id)
    })
}

fn reps_of(amount: &Amount, rounds: u32) -> u32 {
    match amount {
        Amount::Reps(reps) => u32::from(reps.get()) * rounds,
        Amount::Sides { first, second } => u32::from(first.get()) + u32::from(second.get()),
        Amount::Stages(stages) => stages
            .iter()
            .map(|stage| match stage {
                StageAmount::Reps(reps) => u32::from(reps.get()) * rounds,
                _ => 0,
            })
            .sum(),
        Amount::Timed(_) | Amount::Distance(_) => 0,
    }
}

/// What is known of how a set is done: exercise, basis and sides.
type How = (ExerciseId, LoadBasis, SideMode);

fn plain(events: &[Event]) -> PlainSession {
    let mut sorted: Vec<Event> = events.to_vec();
    sorted.sort_by_key(|event| event.id);
    let counting: Vec<&Event> = sorted
        .iter()
        .filter(|event| counts(&sorted, event.id))
        .collect();
    let began = counting.iter().find_map(|event| match &event.what {
        What::Began(began) => Some((event, began)),
        _ => None,
    });
    let (first, began) = began.unwrap();
    let mut there: BTreeSet<SetKey> = unroll(&began.sheet).iter().map(|set| set.key).collect();
    let mut settled: BTreeMap<SetKey, How> = BTreeMap::new();
    let mut how: BTreeMap<_, How> = began
        .sheet
        .blocks()
        .map(|block| {
            (
                block.id,
                (block.exercise.id.clone(), block.basis.clone(), block.sides),
            )
        })
        .collect();
    let mut logged = BTreeMap::new();
    let mut added: BTreeMap<(_, u8), u8> = BTreeMap::new();
    let mut rpe = None;
    for event in &counting {
        match &event.what {
            What::SetDropped { set } if there.contains(set) && !settled.contains_key(set) => {
                there.remove(set);
            }
            What::SetSkipped { set } if there.contains(set) && !settled.contains_key(set) => {
                settled.insert(*set, how[&set.block].clone());
            }
            What::SetAdded { block, line } => {
                let written = began.sheet.block(*block);
                let written = written.and_then(|block| block.sets.get(usize::from(*line)));
                let more = added.entry((*block, *line)).or_default();
                if let Some(sets) = written {
                    let drops = match sets.kind {
                        SetKind::Drop { drops, .. } => drops,
                        _ => 0,
                    };
                    there.extend((0..=drops).map(|drop| SetKey {
                        block: *block,
                        line: *line,
                        set: sets.count + *more,
                        drop,
                    }));
                    *more += 1;
                }
            }
            What::BlockSwapped(swap) => {
                how.insert(
                    swap.block(),
                    (swap.exercise.id.clone(), swap.basis.clone(), swap.sides),
                );
            }
            What::SetDone { set, done, .. } if there.contains(set) => {
                let as_done = settled
                    .entry(*set)
                    .or_insert_with(|| how[&set.block].clone());
                logged
                    .entry(*set)
                    .or_insert_with(|| (as_done.clone(), done.clone()));
            }
            What::SetAmended { set, done } => {
                if let Some((_, was)) = logged.get_mut(set) {
                    *was = done.clone();
                }
            }
            What::Rated { rpe: given } => rpe = Some(u32::from(given.get())),
            _ => {}
        }
    }
    let body = began.body_mass.map(Load::kg);
    let mut sets = Vec::new();
    for (key, ((exercise, basis, sides), done)) in logged {
        let kind = &began.sheet.block(key.block).unwrap().sets[usize::from(key.line)].kind;
        if matches!(kind, SetKind::RampUp { .. }) {
            continue;
        }
        let rounds = if sides == SideMode::Both { 1 } else { 2 };
        let load = done.load.map(Load::kg);
        let extra = load.unwrap_or_default();
        let kg = match basis {
            LoadBasis::External => load,
            LoadBasis::BodyMassPlus => body.map(|body| body + extra),
            LoadBasis::BodyMassMinus => body.map(|body| (body - extra).max(Decimal::ZERO)),
            LoadBasis::BodyMassShare(share) => body.map(|body| body * share.factor() + extra),
            LoadBasis::Band(_) | LoadBasis::Unloaded => None,
        };
        let hard = match done.reserve {
            Some(left) => left.get() <= 4,
            None => *kind == SetKind::ToFailure,
        };
        let reps = Decimal::from(reps_of(&done.amount, rounds));
        sets.push(Plain {
            exercise,
            hard,
            kg_reps: kg.unwrap_or_default() * reps,
        });
    }
    PlainSession {
        day: first.at.date_naive(),
        rpe,
        budget: began
            .sheet
            .budget_minutes
            .map(|minutes| u32::from(minutes.get())),
        sets,
    }
}

/// A week as the sums over the plain sessions have it, held against the one to be tested.
fn same(
    week: &Week,
    sessions: &[(PlainSession, u32)],
    catalogue: &Catalogue,
) -> Result<(), TestCaseError> {
    let of_week: Vec<&(PlainSession, u32)> = sessions
        .iter()
        .filter(|(session, _)| {
            let after = (session.day - week.monday).num_days();
            (0..7).contains(&after)
        })
        .collect();
    let sets = || of_week.iter().flat_map(|(session, _)| &session.sets);
    prop_assert_eq!(week.sessions as usize, of_week.len());
    prop_assert_eq!(
        week.minutes,
        of_week.iter().map(|(_, minutes)| minutes).sum::<u32>()
    );
    prop_assert_eq!(week.sets as usize, sets().count());
    prop_assert_eq!(week.hard as usize, sets().filter(|set| set.hard).count());
    let volume: Decimal = sets().map(|set| set.kg_reps).sum();
    prop_assert_eq!(week.volume.kg(), volume.normalize());
    let rated = of_week
        .iter()
        .filter_map(|(session, minutes)| Some(session.rpe? * minutes));
    prop_assert_eq!(week.load.total(), rated.sum::<u32>());
    let unrated = of_week.iter().filter(|(session, _)| session.rpe.is_none());
    prop_assert_eq!(week.load.unrated as usize, unrated.count());
    for (at, load) in week.load.days.iter().enumerate() {
        let date = week.monday + Days::new(at as u64);
        let on_day = of_week.iter().filter(|(session, _)| session.day == date);
        let loads = on_day.map(|(session, minutes)| session.rpe.unwrap_or(0) * minutes);
        prop_assert_eq!(*load, loads.sum::<u32>());
    }
    let budgets = of_week
        .iter()
        .filter_map(|(session, minutes)| Some((session.budget?, minutes)));
    let planned: u32 = budgets.clone().map(|(budget, _)| budget).sum();
    let taken: u32 = budgets.map(|(_, minutes)| minutes).sum();
    prop_assert_eq!((week.budget.planned, week.budget.taken), (planned, taken));
    for muscle in Muscle::ALL {
        let halves = |hard_only: bool| -> u32 {
            sets()
                .filter(|set| set.hard || !hard_only)
                .filter_map(|set| catalogue.of(set.exercise.as_str()))
                .map(
                    |known| match (known.main().has(muscle), known.also().has(muscle)) {
                        (true, _) => 2,
                        (false, true) => 1,
                        (false, false) => 0,
                    },
                )
                .sum()
        };
        let found = week.muscles.iter().find(|sets| sets.muscle == muscle);
        let found = found.map_or((0, 0), |sets| (sets.halves(), sets.hard_halves()));
        prop_assert_eq!(found, (halves(false), halves(true)), "{}", muscle.name());
    }
    let by = |wanted: &[Pattern]| {
        let known = sets().filter_map(|set| catalogue.of(set.exercise.as_str()));
        known
            .filter(|known| wanted.contains(&known.pattern()))
            .count() as u32
    };
    prop_assert_eq!(
        week.balance.pull,
        by(&[Pattern::PullAcross, Pattern::PullDownward])
    );
    prop_assert_eq!(
        week.balance.push,
        by(&[Pattern::PushAcross, Pattern::PushUpward])
    );
    prop_assert_eq!(week.balance.hinge, by(&[Pattern::Hinge]));
    prop_assert_eq!(week.balance.squat, by(&[Pattern::Squat]));
    let unknown = sets().filter(|set| catalogue.of(set.exercise.as_str()).is_none());
    prop_assert_eq!(week.unknown as usize, unknown.count());
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]

    #[test]
    fn weeks_equal_a_plain_reading_of_the_raw_events(
        a in archive(), b in archive(), more in prop::collection::vec((0..9_u64).prop_flat_map(session), 0..4),
    ) {
        // Two phones that were merged, sessions removed on either, and some days of a third.
        let merged = a.merge(b).archive;
        let catalogue = merged.catalogue();
        let mut logs: BTreeMap<_, Vec<Event>> =
            merged.sessions.iter().map(|(id, log)| (*id, log.events())).collect();
        for (n, events) in more.into_iter().enumerate() {
            let of = SessionRecord::from_events(&events).unwrap().session;
            if of != session_id(n as u64) || !logs.contains_key(&of) {
                logs.entry(of).or_insert(events);
            }
        }
        let (mut headings, mut plains) = (Vec::new(), Vec::new());
        for events in logs.values() {
            let record = SessionRecord::from_events(events).unwrap();
            headings.push(Heading::of(&record, &[]));
            // A session without a set is in no figure.
            let is_done = record.lines().next().is_some();
            plains.extend(is_done.then(|| (plain(events), record.minutes())));
        }
        newest_first(&mut headings);
        let days = || plains.iter().map(|(session, _)| session.day);
        if let (Some(first), Some(last)) = (days().min(), days().max()) {
            let all = weeks(&headings, &catalogue, first, last);
            prop_assert_eq!(all[0].monday, monday_of(first));
            prop_assert!(all.last().unwrap().sunday() >= last);
            for week in &all {
                prop_assert_eq!(week.monday.weekday().num_days_from_monday(), 0);
                same(week, &plains, &catalogue)?;
            }
            prop_assert_eq!(all.iter().map(|week| week.sessions).sum::<u32>() as usize, plains.len());
            headings.reverse();
            prop_assert_eq!(weeks(&headings, &catalogue, first, last), all, "in any order");
        }
    }
}

/// A heading of one rated session of three sets of a front squat, begun at `began`.
fn heading(began: &str) -> Heading {
    let block = block(vec![work(3, 5, 7)], LoadBasis::External, SideMode::Both);
    let sets = [0, 1, 2].map(|n| (key(0, n), done(Some("60 kg"), Amount::Reps(reps(5)))));
    let record = SessionRecord::from_events(&events(1, &block, None, &sets)).unwrap();
    Heading {
        began: began.parse().unwrap(),
        rpe: Rpe::new(7).ok(),
        minutes: 60,
        ..Heading::of(&record, &[])
    }
}

#[test]
fn a_session_counts_on_the_day_it_began_by_the_clock_of_its_place() {
    // Sunday night in one place, Monday already by Greenwich: it is Sunday's. And the other way round.
    let headings = [
        heading("2026-11-23T00:30:00+13:00"),
        heading("2026-11-22T23:30:00-05:00"),
    ];
    let all = weeks(
        &headings,
        &Catalogue::default(),
        day("2026-11-16"),
        day("2026-11-23"),
    );
    assert_eq!(all.len(), 2);
    let sets: Vec<u32> = all.iter().map(|week| week.sets).collect();
    assert_eq!(sets, [3, 3]);
    assert_eq!(
        all[0].load.days,
        [0, 0, 0, 0, 0, 0, session_load(Rpe::new(7).unwrap(), 60)]
    );
    assert_eq!(all[1].load.days[0], 420);
    assert!(all[0].is_over(day("2026-11-23")) && !all[1].is_over(day("2026-11-29")));
}

#[test]
fn a_period_has_no_weeks_before_the_first_session_nor_after_today() {
    let headings = [
        heading("2026-11-25T18:00:00+01:00"),
        heading("2026-11-11T18:00:00+01:00"),
    ];
    let (since, today) = (Some(day("2026-11-11")), day("2026-11-27"));
    let told = |first, last| days_told(&headings, (day(first), day(last)), since, today);
    // The years that a field of a day reports while 2026 is typed, and one that is far ahead.
    for first in ["0002-10-01", "0020-10-01", "0202-10-01", "2026-10-01"] {
        let (first, last) = told(first, "9999-12-31");
        let all = weeks(&headings, &Catalogue::default(), first, last);
        let sessions: Vec<u32> = all.iter().map(|week| week.sessions).collect();
        assert_eq!(sessions, [1, 0, 1]);
    }
    let (first, last) = (day("2026-11-16"), day("2026-11-22"));
    assert_eq!(told("2026-11-16", "2026-11-22"), (first, last));
    // A session from a clock that was ahead is not lost.
    let ahead = [heading("2027-01-05T18:00:00+01:00")];
    let period = (day("2026-11-01"), day("2027-02-01"));
    let (_, last) = days_told(&ahead, period, since, today);
    assert_eq!(last, day("2027-01-05"));
    // With no session there is nothing to begin at.
    assert_eq!(days_told(&[], period, None, today), (period.0, today));
}

#[test]
fn a_front_squat_counts_whole_for_its_main_muscles_and_half_for_the_others() {
    let all = weeks(
        &[heading("2026-11-25T18:00:00+01:00")],
        &Catalogue::default(),
        day("2026-11-25"),
        day("2026-11-25"),
    );
    let of = |muscle| {
        let found = all[0].muscles.iter().find(|sets| sets.muscle == muscle);
        found.map(|sets| halves_said(sets.halves()))
    };
    assert_eq!(of(Muscle::Quadriceps).as_deref(), Some("3"));
    assert_eq!(of(Muscle::SpinalErectors).as_deref(), Some("1.5"));
    assert_eq!(of(Muscle::Biceps), None);
    assert_eq!(all[0].balance.squat, 3);
}

#[test]
fn the_muscles_of_two_weeks_are_those_of_both() {
    let all = weeks(
        &[heading("2026-11-25T18:00:00+01:00")],
        &Catalogue::default(),
        day("2026-11-25"),
        day("2026-11-25"),
    );
    let both = muscles_of(&[all[0].clone(), all[0].clone()]);
    assert_eq!(both.len(), all[0].muscles.len());
    for (two, one) in both.iter().zip(&all[0].muscles) {
        assert_eq!(two.muscle, one.muscle);
        let of = |sets: &MuscleSets| [sets.main, sets.also, sets.hard_main, sets.hard_also];
        assert_eq!(of(two), of(one).map(|sets| 2 * sets));
    }
    assert!(muscles_of(&[]).is_empty());
}
