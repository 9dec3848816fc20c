//! Two periods side by side: examples, and laws over random histories against the plain way over all events.

use crate::common;

use chrono::{Datelike, Days, NaiveDate};
use common::built::{block, done, key, plain, record, reps, work};
use proptest::prelude::*;
use stanchion::exercises::Catalogue;
use stanchion::ledger::{
    Comparison, EndsBefore, Heading, Past, Period, SessionRecord, best, best_said, course,
    newest_first, pasts_of, weeks,
};
use stanchion::pictures::{Peg, year};
use stanchion::session::Amount;
use stanchion::sheet::{Block, ExerciseId, LoadBasis, SetKind, SideMode};
use stanchion::strength::Curve;
use stanchion::units::{Share, Unit};

fn squat() -> Block {
    block(vec![work(3, 5, 7)], LoadBasis::External, SideMode::Both)
}

fn named(id: &str, basis: LoadBasis) -> Block {
    let mut block = block(vec![work(3, 5, 7)], basis, SideMode::Both);
    block.exercise.id = ExerciseId::new(id).unwrap();
    block
}

fn headings(records: &[SessionRecord]) -> Vec<Heading> {
    let mut headings: Vec<Heading> = Vec::new();
    for record in records {
        headings.push(Heading::of(record, &headings));
        newest_first(&mut headings);
    }
    headings
}

fn pasts(records: &[SessionRecord], exercise: &ExerciseId) -> Vec<Past> {
    let all = records.iter().flat_map(pasts_of);
    all.filter(|(id, _)| id == exercise)
        .map(|(_, past)| past)
        .collect()
}

fn day_of(record: &SessionRecord) -> NaiveDate {
    record.began.date_naive()
}

/// What a comparison says in short: sessions, sets and volume, and the best set.
fn said(comparison: &Comparison) -> Vec<String> {
    let exercises = comparison.exercises.iter().flat_map(|(id, done)| {
        done.iter().map(move |done| {
            let best = done.best.as_ref().map_or_else(String::new, |best| {
                let load = best.load.map(|load| load.to_string());
                format!(", {} x {}", load.unwrap_or_default(), best.much.get())
            });
            format!(
                "{id}: {} sessions, {} sets, {}{best}",
                done.sessions, done.sets, done.volume
            )
        })
    });
    exercises.collect()
}

#[test]
fn a_session_without_a_set_is_in_no_figure() {
    let (empty, done) = (plain(1, &squat(), &[]), plain(2, &squat(), &[("60 kg", 5)]));
    let days = [&empty, &done].map(day_of);
    let headings = headings(&[empty, done]);
    assert_eq!(headings.len(), 2);
    let of_days = Period::new(days[0], days[1]).unwrap();
    let comparison = Comparison::of([of_days, of_days], &headings);
    assert_eq!(comparison.all[0].sessions, 1);
    let weeks = weeks(&headings, &Catalogue::default(), days[0], days[1]);
    assert_eq!(weeks.iter().map(|week| week.sessions).sum::<u32>(), 1);
    let chart = year(&headings, days[0].year(), Peg::Minutes, Unit::Kg);
    assert_eq!(chart.rows.len(), 1);
}

#[test]
fn two_periods_are_counted_side_by_side() {
    let records = [
        plain(1, &squat(), &[("60 kg", 7), ("60 kg", 7)]),
        plain(2, &squat(), &[("62.5 kg", 5)]),
        plain(9, &squat(), &[("65 kg", 5), ("65 kg", 6), ("60 kg", 8)]),
    ];
    let first = Period::new(day_of(&records[0]), day_of(&records[1])).unwrap();
    let second = Period::new(day_of(&records[2]), day_of(&records[2])).unwrap();
    let periods = [first, second];
    let mut comparison = Comparison::of(periods, &headings(&records));
    let id = squat().exercise.id;
    comparison.note_best(periods, &id, &pasts(&records, &id));
    // Σ repetitions × load, by hand: 60 · 14 + 62.5 · 5 = 1152.5; 65 · 11 + 60 · 8 = 1195.
    assert_eq!(
        said(&comparison),
        [
            format!("{id}: 2 sessions, 3 sets, 1152.5 kg, 62.5 kg x 5"),
            format!("{id}: 1 sessions, 3 sets, 1195 kg, 65 kg x 6"),
        ]
    );
    assert_eq!(comparison.all[0].sessions, 2);
    assert_eq!(comparison.all[1].volume.to_string(), "1195 kg");
}

#[test]
fn with_assistance_less_is_better_and_without_load_more_reps_are() {
    let minus = named("pull-up", LoadBasis::BodyMassMinus);
    let records = [plain(
        1,
        &minus,
        &[("20 kg", 5), ("10 kg", 5), ("15 kg", 8)],
    )];
    let period = Period::new(day_of(&records[0]), day_of(&records[0])).unwrap();
    let best_of = |block: &Block, records: &[SessionRecord]| {
        let best = best(period, &pasts(records, &block.exercise.id)).unwrap();
        (best.load.map(|load| load.to_string()), best.much.get())
    };
    assert_eq!(best_of(&minus, &records), (Some("10 kg".to_owned()), 5));
    let bare = named("push-up", LoadBasis::Unloaded);
    let sets = [(key(0, 0), 9), (key(0, 1), 12), (key(0, 2), 11)]
        .map(|(key, n)| (key, done(None, Amount::Reps(reps(n)))));
    let records = [record(1, &bare, None, &sets)];
    assert_eq!(best_of(&bare, &records), (None, 12));
}

#[test]
fn a_best_set_says_what_its_load_does_and_is_a_dash_where_there_is_none() {
    let said = |basis: LoadBasis, load: Option<&str>, n: i64| {
        let block = named("chin-up", basis);
        let set = (key(0, 0), done(load, Amount::Reps(reps(n))));
        let records = [record(1, &block, None, &[set])];
        let period = Period::new(day_of(&records[0]), day_of(&records[0])).unwrap();
        let found = best(period, &pasts(&records, &block.exercise.id));
        best_said(found.as_ref(), Unit::Kg)
    };
    let plus = LoadBasis::BodyMassPlus;
    assert_eq!(said(plus.clone(), Some("5 kg"), 7), "5 kg added × 7");
    assert_eq!(said(plus, Some("0 kg"), 7), "nothing added × 7");
    let minus = LoadBasis::BodyMassMinus;
    assert_eq!(said(minus, Some("12.5 kg"), 6), "12.5 kg assistance × 6");
    assert_eq!(said(LoadBasis::External, Some("60 kg"), 5), "60 kg × 5");
    assert_eq!(said(LoadBasis::Unloaded, None, 12), "12 reps");
    assert_eq!(said(LoadBasis::External, Some("60 kg"), 0), "–");
}

/// No work set of the rules, yet the best of a report as of a comparison.
#[test]
fn the_first_part_of_a_drop_set_can_be_the_best_of_a_period() {
    let mut block = named("dumbbell-curl", LoadBasis::External);
    block.sets[0].kind = SetKind::Drop {
        drops: 1,
        keep: Share::percent(80),
    };
    let set = (key(0, 0), done(Some("10 kg"), Amount::Reps(reps(10))));
    let records = [record(1, &block, None, &[set])];
    let period = Period::new(day_of(&records[0]), day_of(&records[0])).unwrap();
    let pasts = pasts(&records, &block.exercise.id);
    let course = course(&pasts, Curve::default(), period);
    assert_eq!(best_said(course.best.as_ref(), Unit::Kg), "10 kg × 10");
}

#[test]
fn loads_on_another_basis_are_not_compared() {
    // First with assistance of 30 kg, later with 5 kg added: the newest counts alone.
    let minus = named("dip", LoadBasis::BodyMassMinus);
    let plus = named("dip", LoadBasis::BodyMassPlus);
    let records = [
        plain(1, &minus, &[("30 kg", 5)]),
        plain(2, &plus, &[("5 kg", 5)]),
    ];
    let period = Period::new(day_of(&records[0]), day_of(&records[1])).unwrap();
    let best = best(period, &pasts(&records, &plus.exercise.id)).unwrap();
    assert_eq!(best.load.unwrap().to_string(), "5 kg");
    assert_eq!(best.basis, LoadBasis::BodyMassPlus);
}

#[test]
fn a_period_is_whole_days_and_ends_on_its_first_or_later() {
    let day = |d| NaiveDate::from_ymd_opt(2026, 3, d).unwrap();
    assert_eq!(Period::new(day(2), day(1)), Err(EndsBefore));
    assert_eq!(Period::new(day(1), day(1)).unwrap().days(), 1);
    let [earlier, later] = Period::weeks_up_to(day(29), 1);
    assert_eq!((later.first(), later.last()), (day(23), day(29)));
    assert_eq!((earlier.first(), earlier.last()), (day(16), day(22)));
    let [_, ends] = Period::weeks_up_to(NaiveDate::MIN, 4);
    assert_eq!(ends.days(), 1, "before the calendar there is nothing");
}

prop_compose! {
    /// Sessions of up to forty days, of two exercises, each with up to three sets.
    fn history()(sessions in prop::collection::vec(
        (1..40_u64, any::<bool>(), prop::collection::vec((1..200_u32, 1..12_i64), 1..=3)), 1..12,
    )) -> Vec<SessionRecord> {
        let mut records: Vec<SessionRecord> = Vec::new();
        for (n, other, sets) in sessions {
            let block = if other { named("bent-over-row", LoadBasis::External) } else { squat() };
            let sets: Vec<(String, i64)> =
                sets.into_iter().map(|(half, reps)| (format!("{} kg", f64::from(half) / 2.0), reps)).collect();
            let sets: Vec<(&str, i64)> = sets.iter().map(|(load, reps)| (load.as_str(), *reps)).collect();
            let record = plain(n, &block, &sets);
            if records.iter().all(|other| other.session != record.session) {
                records.push(record);
            }
        }
        records.sort_by_key(|record| (record.began, record.session));
        records
    }
}

proptest! {
    /// Sums and best sets are those of all sets that were logged within the days, gone through one by one.
    #[test]
    fn a_comparison_is_what_the_sets_say(
        records in history(),
        (start, length, gap, second) in (0..30_u64, 0..20_u64, 0..10_u64, 0..20_u64),
    ) {
        let base = day_of(&records[0]);
        let day = |n: u64| base.checked_add_days(Days::new(n)).unwrap();
        let periods = [
            Period::new(day(start), day(start + length)).unwrap(),
            Period::new(day(start + length + gap), day(start + length + gap + second)).unwrap(),
        ];
        let mut comparison = Comparison::of(periods, &headings(&records));
        let ids: Vec<ExerciseId> = comparison.exercises.iter().map(|(id, _)| id.clone()).collect();
        for id in &ids {
            comparison.note_best(periods, id, &pasts(&records, id));
        }
        for (at, period) in periods.iter().enumerate() {
            let within = |record: &&SessionRecord| {
                (period.first()..=period.last()).contains(&day_of(record))
            };
            let sessions = records.iter().filter(within).count();
            prop_assert_eq!(comparison.all[at].sessions as usize, sessions);
            for (id, done) in &comparison.exercises {
                let mut sets: Vec<(rust_decimal::Decimal, u32)> = Vec::new();
                for record in records.iter().filter(within) {
                    for block in record.blocks.iter().filter(|block| block.block.exercise.id == *id) {
                        sets.extend(block.lines.iter().map(|line| {
                            let reps = line.amount.reps().unwrap();
                            (line.load.unwrap().kg(), u32::from(reps.get()))
                        }));
                    }
                }
                prop_assert_eq!(done[at].sets as usize, sets.len());
                let volume: rust_decimal::Decimal =
                    sets.iter().map(|(kg, reps)| kg * rust_decimal::Decimal::from(*reps)).sum();
                prop_assert_eq!(done[at].volume.kg(), volume.normalize());
                let best = done[at].best.as_ref().map(|best| (best.load.unwrap().kg(), best.much.get()));
                prop_assert_eq!(best, sets.iter().copied().max());
            }
        }
    }

    /// The order in which headings come changes nothing, and what lies in neither period is in no sum.
    #[test]
    fn what_lies_outside_counts_nowhere(records in history(), start in 0..45_u64) {
        let base = day_of(&records[0]);
        let from = base.checked_add_days(Days::new(start)).unwrap();
        let periods = Period::weeks_up_to(from, 1);
        let all = headings(&records);
        let within: Vec<Heading> = all
            .iter()
            .rev()
            .filter(|heading| periods.iter().any(|period| period.has(heading.began)))
            .cloned()
            .collect();
        prop_assert_eq!(Comparison::of(periods, &all), Comparison::of(periods, &within));
    }
}
