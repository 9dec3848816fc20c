//! Generators of sheets that use every part of the prescription.

use super::quantities::{line, load, metres, note, rir, seconds, share, tempo};
use super::{id, time};
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;
use proptest::sample::select;
use stanchion::sheet::{
    Block, BlockId, Equipment, Exercise, ExerciseId, Group, LoadBasis, LoadPolicy, OrderWarning,
    Pattern, Progression, Reach, RepTarget, Role, SetKind, Sets, Sheet, SheetId, SheetVersion,
    SideMode, Stage, Step, Target, WarningKind,
};
use stanchion::units::Reps;
use std::num::NonZeroU16;

fn rep_target() -> BoxedStrategy<RepTarget> {
    let some = || (1..=40_i64).prop_map(|n| Reps::new(n).unwrap());
    prop_oneof![
        some().prop_map(|n| RepTarget::fixed(n).unwrap()),
        some().prop_map(|n| RepTarget::at_least(n).unwrap()),
        (some(), 1..=10_i64).prop_map(|(low, more)| {
            RepTarget::range(low, Reps::saturating(i64::from(low.get()) + more)).unwrap()
        }),
    ]
    .boxed()
}

fn stage() -> BoxedStrategy<Stage> {
    prop_oneof![
        seconds().prop_map(|seconds| Stage::Hold { seconds }),
        (rep_target(), tempo()).prop_map(|(reps, tempo)| Stage::Reps { reps, tempo }),
        rep_target().prop_map(|reps| Stage::Partials { reps }),
    ]
    .boxed()
}

fn target() -> BoxedStrategy<Target> {
    prop_oneof![
        3 => rep_target().prop_map(Target::Reps),
        1 => seconds().prop_map(Target::Timed),
        1 => metres().prop_map(Target::Distance),
        1 => vec(stage(), 1..=8).prop_map(Target::Stages),
    ]
    .boxed()
}

fn kind_and_target() -> BoxedStrategy<(SetKind, Target)> {
    // A kind that is new does not compile here, before it is among those that are made.
    let _each_is_made = |kind: &SetKind| match kind {
        SetKind::Work
        | SetKind::RampUp { .. }
        | SetKind::BackOff { .. }
        | SetKind::Drop { .. }
        | SetKind::Cluster { .. }
        | SetKind::ToFailure => (),
    };
    let counted = || rep_target().prop_map(Target::Reps);
    prop_oneof![
        3 => target().prop_map(|target| (SetKind::Work, target)),
        2 => (vec(share(), 1..5), target()).prop_map(|(shares, target)| (SetKind::RampUp { shares }, target)),
        1 => (share(), target()).prop_map(|(share, target)| (SetKind::BackOff { share }, target)),
        1 => (1..=5_u8, share(), counted()).prop_map(|(drops, keep, target)| (SetKind::Drop { drops, keep }, target)),
        1 => (2..=10_u8, seconds(), counted())
            .prop_map(|(portions, pause, target)| (SetKind::Cluster { portions, pause }, target)),
        1 => target().prop_map(|target| (SetKind::ToFailure, target)),
    ]
    .boxed()
}

fn step() -> impl Strategy<Value = Step> {
    prop_oneof![Just(Step::Smallest), load().prop_map(Step::By)]
}

fn policy() -> BoxedStrategy<LoadPolicy> {
    prop_oneof![
        3 => Just(LoadPolicy::Same),
        1 => step().prop_map(LoadPolicy::Rising),
        1 => step().prop_map(LoadPolicy::Falling),
        1 => vec(load(), 1..5).prop_map(LoadPolicy::List),
        1 => vec(share(), 1..5).prop_map(LoadPolicy::ShareOfTop),
        1 => share().prop_map(LoadPolicy::ShareOfE1rm),
        1 => (step(), step()).prop_map(|(planned, large)| LoadPolicy::RisingByOutcome { planned, large }),
    ]
    .boxed()
}

fn sets() -> BoxedStrategy<Sets> {
    (
        kind_and_target(),
        1..=4_u8,
        vec(rir(), 0..3),
        policy(),
        option::of(tempo()),
        option::of(seconds()),
    )
        .prop_map(|((kind, target), count, reserve, load, tempo, rest)| Sets {
            kind,
            count,
            target,
            reserve,
            load,
            tempo,
            rest,
        })
        .boxed()
}

/// Any basis of a load.
pub fn basis() -> BoxedStrategy<LoadBasis> {
    prop_oneof![
        3 => Just(LoadBasis::External),
        1 => Just(LoadBasis::BodyMassPlus),
        1 => Just(LoadBasis::BodyMassMinus),
        1 => share().prop_map(LoadBasis::BodyMassShare),
        1 => line().prop_map(LoadBasis::Band),
        1 => Just(LoadBasis::Unloaded),
    ]
    .boxed()
}

fn progression() -> BoxedStrategy<Progression> {
    // A rule that is new does not compile here, before it is among those that are made.
    let _each_is_made = |rule: &Progression| match rule {
        Progression::Double { .. }
        | Progression::TwoForTwo { .. }
        | Progression::Fixed { .. }
        | Progression::ShareOfE1rm { .. }
        | Progression::ByReserve { .. }
        | Progression::AsWritten => (),
    };
    let reach = select(vec![Reach::AllSets, Reach::LastSet]);
    prop_oneof![
        (reach, step(), step()).prop_map(|(reach, up, down)| Progression::Double {
            reach,
            up,
            down
        }),
        step().prop_map(|up| Progression::TwoForTwo { up }),
        step().prop_map(|up| Progression::Fixed { up }),
        share().prop_map(|share| Progression::ShareOfE1rm { share }),
        (rir(), step()).prop_map(|(aim, step)| Progression::ByReserve { aim, step }),
        Just(Progression::AsWritten),
    ]
    .boxed()
}

/// Any equipment.
pub fn equipment() -> BoxedStrategy<Equipment> {
    select(vec![
        Equipment::Barbell,
        Equipment::Dumbbell,
        Equipment::Handle,
        Equipment::Stack,
        Equipment::Band,
        Equipment::Body,
        Equipment::Other,
    ])
    .boxed()
}

/// Any exercise, of one of four ids.
pub fn exercise() -> BoxedStrategy<Exercise> {
    let ids = ["front-squat", "chin-up", "push-up", "calf-raise-2"];
    let patterns = vec![
        Pattern::Squat,
        Pattern::Hinge,
        Pattern::PushAcross,
        Pattern::PushUpward,
        Pattern::PullAcross,
        Pattern::PullDownward,
        Pattern::Carry,
        Pattern::Explosive,
        Pattern::Trunk,
        Pattern::SingleJoint,
    ];
    (select(ids.to_vec()), line(), select(patterns), equipment())
        .prop_map(|(id, name, pattern, equipment)| Exercise {
            id: ExerciseId::new(id).unwrap(),
            name,
            pattern,
            equipment,
        })
        .boxed()
}

/// Any side mode.
pub fn sides() -> BoxedStrategy<SideMode> {
    select(vec![
        SideMode::Both,
        SideMode::EachInTurn,
        SideMode::OneHolds,
    ])
    .boxed()
}

/// A block; its id is set by the sheet.
/// A block; its id is that of no other only once its sheet gave it one.
pub fn block() -> BoxedStrategy<Block> {
    let roles = vec![Role::Power, Role::Strength, Role::Hypertrophy, Role::Pump];
    (
        (exercise(), select(roles), vec(sets(), 1..4), basis()),
        (option::of(load()), option::of(tempo()), sides()),
        (seconds(), seconds()),
        (vec(line(), 0..3), vec(line(), 0..3)),
        progression(),
    )
        .prop_map(|(head, load, rest, lines, progression)| Block {
            id: BlockId(id(0, 0)),
            exercise: head.0,
            role: head.1,
            sets: head.2,
            basis: head.3,
            start: load.0,
            tempo: load.1,
            sides: load.2,
            rest: rest.0,
            rest_after: rest.1,
            cues: lines.0,
            cautions: lines.1,
            progression,
        })
        .boxed()
}

fn group() -> BoxedStrategy<Group> {
    prop_oneof![
        3 => block().prop_map(|block| Group::Straight(Box::new(block))),
        1 => (block(), block(), seconds())
            .prop_map(|(a, b, between)| Group::Pair { blocks: Box::new([a, b]), between }),
        1 => (vec(block(), 2..4), seconds()).prop_map(|(blocks, between)| Group::Circuit { blocks, between }),
    ]
    .boxed()
}

/// Gives every block of the groups an id of its own.
fn number(groups: &mut [Group]) {
    let mut next = 0;
    for group in groups {
        let blocks = match group {
            Group::Straight(block) => std::slice::from_mut(&mut **block),
            Group::Pair { blocks, .. } => &mut blocks[..],
            Group::Circuit { blocks, .. } => blocks,
        };
        for block in blocks {
            next += 1;
            block.id = BlockId(id(next, next));
        }
    }
}

/// Settled warnings about some of the blocks.
fn settled(blocks: Vec<BlockId>) -> BoxedStrategy<Vec<OrderWarning>> {
    let kinds = vec![
        WarningKind::Role,
        WarningKind::Grip,
        WarningKind::LowerBack,
        WarningKind::SameMuscle,
    ];
    let pair = (select(kinds), select(blocks.clone()), select(blocks));
    vec(pair, 0..3)
        .prop_map(|warnings| {
            warnings
                .into_iter()
                .map(|(kind, earlier, later)| OrderWarning {
                    kind,
                    earlier,
                    later,
                })
                .collect()
        })
        .boxed()
}

/// A sheet: one of four ids, one of eight versions.
pub fn sheet() -> BoxedStrategy<Sheet> {
    (
        0..4_u64,
        0..8_u64,
        line(),
        vec(line(), 0..3),
        note(),
        (0..=600_u16).prop_map(NonZeroU16::new),
        vec(group(), 1..4),
    )
        .prop_map(
            |(sheet, version, name, warm_up, notes, budget_minutes, mut groups)| {
                number(&mut groups);
                Sheet {
                    id: SheetId(id(1000 + sheet, sheet)),
                    version: SheetVersion(id(2000 + version, sheet)),
                    written: time(2000 + version),
                    name,
                    warm_up,
                    notes,
                    budget_minutes,
                    groups,
                    settled: Vec::new(),
                    written_for: None,
                }
            },
        )
        .prop_flat_map(|sheet| {
            let blocks = sheet.blocks().map(|block| block.id).collect();
            (Just(sheet), settled(blocks), option::of(line()))
        })
        .prop_map(|(sheet, settled, written_for)| Sheet {
            settled,
            written_for,
            ..sheet
        })
        .boxed()
}
