//! Holds and carries: what is said to have moved in them, built by hand.

use crate::common;

use common::built::{block, done, key, record, sets, work};
use stanchion::ledger::{
    Period, SessionRecord, beaten_in, best, best_said, moved, pasts_of, summaries_of,
};
use stanchion::session::{Amount, StageAmount};
use stanchion::sheet::{Block, LoadBasis, Pattern, RepTarget, SetKind, SideMode, Stage, Target};
use stanchion::strength::Curve;
use stanchion::units::{Metres, Reps, Seconds, Unit};

fn held(seconds: i64) -> Amount {
    Amount::Timed(Seconds::saturating(seconds))
}

fn carried(metres: i64) -> Amount {
    Amount::Distance(Metres::saturating(metres))
}

/// Two sets for that target.
fn two(target: Target, basis: LoadBasis) -> Block {
    let lines = vec![sets(SetKind::Work, 2, target)];
    block(lines, basis, SideMode::Both)
}

fn hold(basis: LoadBasis) -> Block {
    two(Target::Timed(Seconds::saturating(30)), basis)
}

/// Session `n`: what was done in the sets of the block.
fn session(n: u64, block: &Block, dones: &[(Option<&str>, Amount)]) -> SessionRecord {
    let set = |(i, (load, amount)): (usize, &(Option<&str>, Amount))| {
        (key(0, i as u8), done(*load, amount.clone()))
    };
    let dones: Vec<_> = dones.iter().enumerate().map(set).collect();
    record(n, block, None, &dones)
}

/// What moved in the last of these.
fn said(records: &[SessionRecord]) -> String {
    let moves = moved(records.last().unwrap(), &summaries_of(records));
    assert_eq!(moves.len(), 1);
    moves[0].to_string()
}

/// What moved in a second session that did this, after a first that did that.
fn after(block: &Block, one: &(Option<&str>, Amount), two: &(Option<&str>, Amount)) -> String {
    let of = |n, done: &(Option<&str>, Amount)| session(n, block, std::slice::from_ref(done));
    said(&[of(1, one), of(2, two)])
}

#[test]
fn a_carry_that_goes_by_time_is_not_said_to_be_held() {
    let mut carry = hold(LoadBasis::External);
    carry.exercise.pattern = Pattern::Carry;
    let first = session(1, &carry, &[(Some("24 kg"), held(30))]);
    assert_eq!(
        said(&[first]),
        "Front squat: 0:30 carried at 24 kg, the first time"
    );
}

#[test]
fn the_longest_hold_is_compared_with_that_of_the_last_time() {
    let plank = hold(LoadBasis::Unloaded);
    let first = session(1, &plank, &[(None, held(30)), (None, held(25))]);
    assert_eq!(said(&[first]), "Front squat: 0:30 held, the first time");
    let of = |one, two| after(&plank, &(None, held(one)), &(None, held(two)));
    assert_eq!(
        of(30, 75),
        "Front squat: 1:15 held, 45 s more than last time"
    );
    assert_eq!(
        of(40, 30),
        "Front squat: 0:30 held, 10 s less than last time"
    );
    assert_eq!(of(30, 30), "Front squat: 0:30 held, as last time");
}

#[test]
fn of_a_carry_the_load_comes_first_and_then_the_distance() {
    let carry = two(
        Target::Distance(Metres::saturating(20)),
        LoadBasis::External,
    );
    let of = |one: (&str, i64), two: (&str, i64)| {
        let done = |(load, metres)| (Some(load), carried(metres));
        after(&carry, &done(one), &done(two))
    };
    assert_eq!(
        of(("20 kg", 20), ("20 kg", 25)),
        "Front squat: 25 m at 20 kg, 5 m more than last time"
    );
    assert_eq!(
        of(("20 kg", 30), ("24 kg", 20)),
        "Front squat: 20 m at 24 kg, 4 kg more than last time"
    );
    assert_eq!(
        of(("24 kg", 20), ("20 kg", 30)),
        "Front squat: 30 m at 20 kg, 4 kg less than last time"
    );
}

#[test]
fn a_load_on_the_body_and_a_help_are_said_as_such() {
    let of = |basis, one, two| {
        let done = |load| (Some(load), held(30));
        after(&hold(basis), &done(one), &done(two))
    };
    assert_eq!(
        of(LoadBasis::BodyMassPlus, "5 kg", "10 kg"),
        "Front squat: 0:30 held, +10 kg, 5 kg more than last time"
    );
    assert_eq!(
        of(LoadBasis::BodyMassMinus, "20 kg", "15 kg"),
        "Front squat: 0:30 held with 15 kg of assistance, 5 kg less than last time"
    );
}

/// It is the time that is to rise, so another time that is asked for is no other way of doing it. Reps are.
#[test]
fn a_hold_is_compared_with_one_of_another_time_and_with_no_reps() {
    let of_30 = hold(LoadBasis::Unloaded);
    let of_40 = two(Target::Timed(Seconds::saturating(40)), LoadBasis::Unloaded);
    let reps = block(vec![work(2, 5, 7)], LoadBasis::Unloaded, SideMode::Both);
    let before = session(1, &of_30, &[(None, held(30))]);
    let between = session(2, &reps, &[(None, Amount::Reps(common::built::reps(6)))]);
    let now = session(3, &of_40, &[(None, held(40))]);
    assert_eq!(
        said(&[before, between, now]),
        "Front squat: 0:40 held, 10 s more than last time"
    );
}

/// A hold of 10 s, 6 slow reps, 8 partials.
fn staged() -> Target {
    Target::Stages(vec![
        Stage::Hold {
            seconds: Seconds::saturating(10),
        },
        Stage::Reps {
            reps: RepTarget::Fixed(Reps::saturating(6)),
            tempo: "4/0/2/0".parse().unwrap(),
        },
        Stage::Partials {
            reps: RepTarget::Fixed(Reps::saturating(8)),
        },
    ])
}

#[test]
fn of_stages_it_is_said_what_moved_in_each() {
    let squat = two(staged(), LoadBasis::External);
    let did = |load: &'static str, hold, reps, partials| {
        let amount = Amount::Stages(vec![
            StageAmount::Hold(Seconds::saturating(hold)),
            StageAmount::Reps(Reps::saturating(reps)),
            StageAmount::Partials(Reps::saturating(partials)),
        ]);
        (Some(load), amount)
    };
    let of = |one, two| after(&squat, &one, &two);
    let first = session(1, &squat, &[did("40 kg", 10, 6, 7), did("40 kg", 10, 6, 8)]);
    assert_eq!(
        said(&[first]),
        "Front squat: 10 s → 6 reps → 8 partials at 40 kg, the first time"
    );
    assert_eq!(
        of(did("40 kg", 10, 5, 1), did("40 kg", 10, 6, 8)),
        "Front squat: 10 s → 6 reps → 8 partials at 40 kg, last time 10 s → 5 reps → 1 partial"
    );
    assert_eq!(
        of(did("40 kg", 10, 6, 8), did("40 kg", 10, 6, 5)),
        "Front squat: 10 s → 6 reps → 5 partials at 40 kg, last time 10 s → 6 reps → 8 partials"
    );
    assert_eq!(
        of(did("40 kg", 10, 6, 8), did("40 kg", 10, 6, 8)),
        "Front squat: 10 s → 6 reps → 8 partials at 40 kg, as last time"
    );
    assert_eq!(
        of(did("40 kg", 10, 6, 8), did("42.5 kg", 10, 6, 8)),
        "Front squat: 10 s → 6 reps → 8 partials at 42.5 kg, 2.5 kg more than last time"
    );
    // A set that was left in its hold is no set that did not happen.
    assert_eq!(
        of(did("40 kg", 10, 0, 0), did("40 kg", 12, 0, 0)),
        "Front squat: 12 s → 0 reps → 0 partials at 40 kg, last time 10 s → 0 reps → 0 partials"
    );
}

/// What the second of two sessions is told to have beaten, at its end.
fn beaten(block: &Block, one: (Option<&str>, Amount), two: (Option<&str>, Amount)) -> Vec<String> {
    let records = [session(1, block, &[one]), session(2, block, &[two])];
    let summaries = summaries_of(&records);
    let beaten = beaten_in(&records[1], &summaries, Curve::default());
    beaten
        .into_iter()
        .map(|(_, best)| best.sentence(Unit::Kg))
        .collect()
}

#[test]
fn the_end_of_a_session_tells_bests_of_holds_and_carries() {
    let plank = hold(LoadBasis::Unloaded);
    assert_eq!(
        beaten(&plank, (None, held(30)), (None, held(45))),
        ["45 s: the longest, 30 s before"]
    );
    assert!(beaten(&plank, (None, held(45)), (None, held(30))).is_empty());
    let target = Target::Distance(Metres::saturating(20));
    let carry = two(target, LoadBasis::External);
    assert_eq!(
        beaten(
            &carry,
            (Some("24 kg"), carried(20)),
            (Some("28 kg"), carried(20))
        ),
        ["20 m at 28 kg: the heaviest at 20 m, 24 kg before"]
    );
}

#[test]
fn the_best_set_of_a_period_may_be_a_hold_or_a_carry() {
    let best_of = |block: &Block, dones: &[(Option<&str>, Amount)]| {
        let record = session(1, block, dones);
        let day = record.began.date_naive();
        let pasts: Vec<_> = pasts_of(&record)
            .into_iter()
            .map(|(_, past)| past)
            .collect();
        let found = best(Period::new(day, day).unwrap(), &pasts);
        best_said(found.as_ref(), Unit::Kg)
    };
    let plank = hold(LoadBasis::Unloaded);
    assert_eq!(
        best_of(&plank, &[(None, held(30)), (None, held(45))]),
        "1 × 45 s"
    );
    assert_eq!(best_of(&plank, &[(None, held(0))]), "–");
    let carry = two(
        Target::Distance(Metres::saturating(20)),
        LoadBasis::External,
    );
    let dones = [(Some("20 kg"), carried(40)), (Some("24 kg"), carried(20))];
    assert_eq!(best_of(&carry, &dones), "20 m at 24 kg");
    let assisted = hold(LoadBasis::BodyMassMinus);
    let dones = [(Some("20 kg"), held(40)), (Some("10 kg"), held(15))];
    assert_eq!(best_of(&assisted, &dones), "15 s with 10 kg of assistance");
    let band = LoadBasis::Band(stanchion::sheet::Line::new("green").unwrap());
    let pull = block(vec![work(2, 5, 7)], band, SideMode::Both);
    let count = |n| (None, Amount::Reps(Reps::saturating(n)));
    assert_eq!(
        best_of(&pull, &[count(8), count(12)]),
        "12 reps, band: green"
    );
}
