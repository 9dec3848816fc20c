//! Generators of exercises of one's own and of programmes.

use super::quantities::line;
use super::sheets::{basis, exercise, sides};
use super::{id, time};
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;
use proptest::sample::{select, subsequence};
use rust_decimal::Decimal;
use stanchion::exercises::{Muscle, Muscles, OwnExercise};
use stanchion::programme::{LightWeek, Monday, Plan, Programme, ProgrammeId, Rotation, Weekdays};
use stanchion::sheet::SheetId;
use stanchion::store::{ExerciseRecord, ProgrammeRecord, Removed};
use stanchion::units::Share;

/// Two sets of muscles without one in common.
fn muscles() -> BoxedStrategy<(Muscles, Muscles)> {
    (subsequence(Muscle::ALL.to_vec(), 0..6), 0..6_usize)
        .prop_map(|(all, mains)| {
            let (main, also) = all.split_at(mains.min(all.len()));
            let set = |list: &[Muscle]| {
                let all = list.iter();
                all.fold(Muscles::default(), |set, muscle| set.with(*muscle))
            };
            (set(main), set(also))
        })
        .boxed()
}

fn own() -> BoxedStrategy<OwnExercise> {
    (
        0..4_u64,
        exercise(),
        muscles(),
        basis(),
        sides(),
        vec(line(), 0..3),
    )
        .prop_map(
            |(n, exercise, (main, also), basis, sides, cautions)| OwnExercise {
                id: exercise.id,
                version: id(n, 21),
                written: time(n),
                name: exercise.name,
                pattern: exercise.pattern,
                equipment: exercise.equipment,
                main,
                also,
                basis,
                sides,
                cautions,
            },
        )
        .boxed()
}

/// A version of one of four exercises, or that it was removed.
pub fn exercise_record() -> BoxedStrategy<ExerciseRecord> {
    prop_oneof![
        4 => own().prop_map(|own| ExerciseRecord::Written(Box::new(own))),
        1 => (own(), 0..4_u64).prop_map(|(own, n)| {
            ExerciseRecord::Removed(Removed::new(own.id, id(n, 21), time(n)))
        }),
    ]
    .boxed()
}

fn sheet_id() -> BoxedStrategy<SheetId> {
    (0..4_u64)
        .prop_map(|sheet| SheetId(id(1000 + sheet, sheet)))
        .boxed()
}

fn plan() -> BoxedStrategy<Plan> {
    let days = vec(option::of(sheet_id()), 7);
    prop_oneof![
        vec(sheet_id(), 1..=14).prop_map(|sheets| Plan::Rotation(Rotation::new(sheets).unwrap())),
        days.prop_filter_map("some day", |days| {
            let days = <[Option<SheetId>; 7]>::try_from(days).ok()?;
            Some(Plan::Weekdays(Weekdays::new(days).ok()?))
        }),
    ]
    .boxed()
}

fn light() -> BoxedStrategy<LightWeek> {
    let share = |least: i64| {
        (least..=10_000).prop_map(|percent| Share::new(Decimal::new(percent, 2)).unwrap())
    };
    (
        select((2..=12_u8).collect::<Vec<_>>()),
        0..2_000_u64,
        share(4_000),
        share(3_000),
    )
        .prop_map(|(every, days, load, sets)| {
            let from = Monday::of(time(days * 86_400_000).date_naive());
            LightWeek::new(every, from, load, sets).unwrap()
        })
        .boxed()
}

fn programme() -> BoxedStrategy<Programme> {
    (0..2_u64, 0..4_u64, line(), plan(), option::of(light()))
        .prop_map(|(programme, n, name, plan, light)| Programme {
            id: ProgrammeId(id(programme, 22)),
            version: id(n, 23),
            written: time(n),
            name,
            plan,
            light,
        })
        .boxed()
}

/// A version of one of two programmes, or that it was removed.
pub fn programme_record() -> BoxedStrategy<ProgrammeRecord> {
    prop_oneof![
        4 => programme().prop_map(|programme| ProgrammeRecord::Written(Box::new(programme))),
        1 => (programme(), 0..4_u64).prop_map(|(programme, n)| {
            ProgrammeRecord::Removed(Removed::new(programme.id, id(n, 23), time(n)))
        }),
    ]
    .boxed()
}
