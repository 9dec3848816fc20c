//! What the ledger says of sessions built by hand.

use crate::common;

use common::built::{at, block, done, events, key, plain, record, reps, sets, work};
use stanchion::ledger::{
    ExerciseSummary, Moved, PERFORMANCES_MAX, Past, SessionRecord, Unreadable, beaten_in,
    beaten_just_now, moved, pasts_of, performances_of, shares_of, summaries_of,
};
use stanchion::session::{Amount, Done};
use stanchion::sheet::{LoadBasis, RepTarget, SetKind, SideMode, Target};
use stanchion::strength::Curve;
use stanchion::units::{Rir, Share, Unit};

/// What moved in the last of these sessions against those before it.
fn said(basis: LoadBasis, sessions: &[&[(&str, i64)]]) -> String {
    let block = block(vec![work(3, 5, 7)], basis, SideMode::Both);
    let records: Vec<SessionRecord> = sessions
        .iter()
        .zip(1..)
        .map(|(sets, n)| plain(n, &block, sets))
        .collect();
    // The summaries may hold the session itself.
    let summaries = summaries_of(&records);
    let moves = moved(records.last().unwrap(), &summaries);
    assert_eq!(moves.len(), 1);
    moves[0].to_string()
}

#[test]
fn what_moved_is_said_in_a_sentence() {
    let external = |sessions: &[&[(&str, i64)]]| said(LoadBasis::External, sessions);
    assert_eq!(
        external(&[
            &[("82.5 kg", 7), ("82.5 kg", 7)],
            &[("82.5 kg", 6), ("85 kg", 6)]
        ]),
        "Front squat: 85 kg for 6, 2.5 kg more than last time"
    );
    assert_eq!(
        external(&[&[("85 kg", 4)], &[("80 kg", 6)]]),
        "Front squat: 80 kg for 6, 5 kg less than last time"
    );
    assert_eq!(
        external(&[&[("80 kg", 5), ("80 kg", 5)], &[("80 kg", 5), ("80 kg", 6)]]),
        "Front squat: 80 kg for 6, 1 more rep than last time"
    );
    assert_eq!(
        external(&[&[("80 kg", 7)], &[("80 kg", 5)]]),
        "Front squat: 80 kg for 5, 2 fewer reps than last time"
    );
    assert_eq!(
        external(&[&[("80 kg", 7)], &[("80 kg", 7)]]),
        "Front squat: 80 kg for 7, as last time"
    );
    assert_eq!(
        external(&[&[("60 kg", 7)]]),
        "Front squat: 60 kg for 7, the first time"
    );
}

#[test]
fn the_last_time_is_the_newest_before() {
    assert_eq!(
        said(
            LoadBasis::External,
            &[&[("90 kg", 5)], &[("70 kg", 5)], &[("80 kg", 5)]]
        ),
        "Front squat: 80 kg for 5, 10 kg more than last time"
    );
}

#[test]
fn less_assistance_is_harder() {
    let block = block(
        vec![work(3, 5, 7)],
        LoadBasis::BodyMassMinus,
        SideMode::Both,
    );
    let before = plain(1, &block, &[("20 kg", 5)]);
    let now = plain(2, &block, &[("20 kg", 5), ("15 kg", 6)]);
    let moves = moved(&now, &summaries_of([&before, &now]));
    assert!(matches!(moves[0], Moved::Harder(..)));
    assert_eq!(
        moves[0].to_string(),
        "Front squat: 15 kg of assistance for 6, 5 kg less than last time"
    );
    let back = plain(3, &block, &[("17.5 kg", 6)]);
    let moves = moved(&back, &summaries_of([&before, &now, &back]));
    assert!(matches!(moves[0], Moved::Easier(..)));
    assert_eq!(
        moves[0].to_string(),
        "Front squat: 17.5 kg of assistance for 6, 2.5 kg more than last time"
    );
}

/// Ramp-ups are on the way to what could move.
#[test]
fn ramp_ups_alone_move_nothing() {
    let shares = vec![Share::new(40.into()).unwrap()];
    let ramp_up = sets(
        SetKind::RampUp { shares },
        1,
        Target::Reps(RepTarget::Fixed(reps(5))),
    );
    let lines = vec![ramp_up, work(3, 5, 7)];
    let block = block(lines, LoadBasis::External, SideMode::Both);
    let fives = |load| done(Some(load), Amount::Reps(reps(5)));
    let whole = |n, load| {
        let dones = [(key(0, 0), fives("32.5 kg")), (key(1, 0), fives(load))];
        record(n, &block, None, &dones)
    };
    let ended = record(2, &block, None, &[(key(0, 0), fives("32.5 kg"))]);
    let all = [whole(1, "80 kg"), ended, whole(3, "82.5 kg")];
    let summaries = summaries_of(&all);
    assert!(moved(&all[1], &summaries).is_empty());
    let third = moved(&all[2], &summaries);
    assert_eq!(
        third[0].to_string(),
        "Front squat: 82.5 kg for 5, 2.5 kg more than last time"
    );
}

#[test]
fn added_load_and_none_are_said_as_such() {
    assert_eq!(
        said(LoadBasis::BodyMassPlus, &[&[("5 kg", 5)], &[("7.5 kg", 5)]]),
        "Front squat: +7.5 kg for 5, 2.5 kg more than last time"
    );
    assert_eq!(
        said(LoadBasis::BodyMassPlus, &[&[("0 kg", 5)], &[("0 kg", 8)]]),
        "Front squat: 8 reps, 3 more reps than last time"
    );
    assert_eq!(
        said(LoadBasis::Unloaded, &[&[("0 kg", 5)], &[("0 kg", 1)]]),
        "Front squat: 1 rep, 4 fewer reps than last time"
    );
}

#[test]
fn a_sentence_can_be_said_in_the_other_unit() {
    let block = block(vec![work(3, 5, 7)], LoadBasis::External, SideMode::Both);
    let before = plain(1, &block, &[("100 kg", 5)]);
    let now = plain(2, &block, &[("225 lb", 5)]);
    let moves = moved(&now, &summaries_of([&before]));
    // 225 lb = 102.05828325 kg (agreement of 1 July 1959; NIST SP 811).
    assert_eq!(
        moves[0].sentence(Unit::Kg),
        "Front squat: 102.06 kg for 5, 2.06 kg more than last time"
    );
    assert!(
        moves[0]
            .to_string()
            .starts_with("Front squat: 225 lb for 5, ")
    );
}

#[test]
fn another_prescription_is_not_compared() {
    let heavy = block(vec![work(3, 5, 7)], LoadBasis::External, SideMode::Both);
    let light = block(vec![work(3, 10, 12)], LoadBasis::External, SideMode::Both);
    let before = plain(1, &heavy, &[("85 kg", 6)]);
    let now = plain(2, &light, &[("60 kg", 12)]);
    let moves = moved(&now, &summaries_of([&before, &now]));
    assert!(matches!(moves[0], Moved::First(_)), "{moves:?}");
}

#[test]
fn the_newest_performances_are_kept() {
    let block = block(vec![work(3, 5, 7)], LoadBasis::External, SideMode::Both);
    let records: Vec<SessionRecord> = (1..=30)
        .map(|n| plain(n, &block, &[("60 kg", 5)]))
        .collect();
    let whole = summaries_of(&records);
    let summary: &ExerciseSummary = whole.values().next().unwrap();
    assert_eq!(summary.performances.len(), PERFORMANCES_MAX);
    assert_eq!(summary.performances[0].session, records[6].session.0);
    assert_eq!(summary.performances[23].session, records[29].session.0);
    assert_eq!(summaries_of(records.iter().rev()), whole, "in any order");
    let text = serde_json::to_string(summary).unwrap();
    assert_eq!(
        serde_json::from_str::<ExerciseSummary>(&text).unwrap(),
        *summary
    );
}

#[test]
fn only_a_later_session_is_taken_in_without_the_history() {
    let block = block(vec![work(3, 5, 7)], LoadBasis::External, SideMode::Both);
    let pasts = |n| {
        let pasts = pasts_of(&plain(n, &block, &[("60 kg", 5)]));
        let pasts: Vec<Past> = pasts.into_iter().map(|(_, past)| past).collect();
        pasts
    };
    let summaries = summaries_of([&plain(3, &block, &[("60 kg", 5)])]);
    let mut summary = summaries.into_values().next().unwrap();
    let before = summary.clone();
    for n in [2, 3] {
        assert!(!summary.take(&pasts(n)));
        assert_eq!(summary, before);
    }
    assert!(summary.take(&pasts(4)));
    assert_eq!(summary.performances.len(), 2);
    let mut light = pasts(6);
    light[0].light = true;
    assert!(summary.take(&light));
    assert_eq!(summary.performances.len(), 2, "a light session counts not");
    assert_eq!(summary.last_done, light[0].performance.at);
    let alone = ExerciseSummary::of(&block.exercise.id, &light).unwrap();
    assert!(alone.performances.is_empty());
    assert_eq!(alone.last_done, light[0].performance.at);
}

#[test]
fn a_performance_says_what_was_asked_and_done() {
    let block = block(vec![work(3, 5, 7)], LoadBasis::External, SideMode::Both);
    let (exercise, performance) = performances_of(&plain(1, &block, &[("60 kg", 6)])).remove(0);
    assert_eq!(exercise.as_str(), "front-squat");
    assert_eq!(performance.shape, block.shape());
    let set = &performance.sets[0];
    assert_eq!((set.low, set.top, set.reps), (reps(5), reps(7), reps(6)));
    assert!(set.work);
}

#[test]
fn the_duration_is_of_the_right_clock_and_never_negative() {
    let block = block(vec![work(3, 5, 7)], LoadBasis::External, SideMode::Both);
    let sets = [(key(0, 0), done(Some("60 kg"), Amount::Reps(reps(5))))];
    let events = events(1, &block, None, &sets);
    let lasted = |clocks: [(u64, u32, u64); 3]| {
        let moved: Vec<_> = events
            .iter()
            .zip(clocks)
            .map(|(event, (wall, run, ms))| at(event, wall, run, ms))
            .collect();
        SessionRecord::from_events(&moved).unwrap().duration_ms
    };
    // The wall clock is set back within a run: the monotonic clock counts.
    assert_eq!(
        lasted([(900_000, 1, 0), (960_000, 1, 60_000), (0, 1, 120_000)]),
        120_000
    );
    // The monotonic clock stood still while the phone slept: the wall clock counts.
    assert_eq!(
        lasted([(0, 1, 0), (60_000, 1, 60_000), (300_000, 1, 70_000)]),
        300_000
    );
    // Another run: from run to run by the wall clock, though its ticks are lower.
    assert_eq!(
        lasted([(0, 1, 5_000_000), (60_000, 2, 0), (120_000, 2, 60_000)]),
        120_000
    );
    // Set back between two runs: only the pause between them is lost.
    assert_eq!(
        lasted([(900_000, 1, 0), (0, 2, 0), (60_000, 2, 60_000)]),
        60_000
    );
}

#[test]
fn what_is_no_session_says_so() {
    let block = block(vec![work(3, 5, 7)], LoadBasis::External, SideMode::Both);
    assert_eq!(SessionRecord::from_events(&[]), Err(Unreadable::NoEvents));
    let events = events(1, &block, None, &[]);
    assert_eq!(
        SessionRecord::from_events(&events[1..]),
        Err(Unreadable::NoBeginning)
    );
}

#[test]
fn a_session_without_a_set_moves_nothing() {
    let block = block(vec![work(3, 5, 7)], LoadBasis::External, SideMode::Both);
    let record = record(1, &block, None, &[]);
    assert!(moved(&record, &summaries_of([&record])).is_empty());
    assert_eq!(record.blocks.len(), 1);
}

#[test]
fn a_best_is_told_after_its_set_and_not_again() {
    let squat = block(vec![work(3, 5, 7)], LoadBasis::External, SideMode::Both);
    let said = |before: &[&[(&str, i64)]], now: &[(&str, i64)]| {
        let records: Vec<SessionRecord> = before
            .iter()
            .zip(1..)
            .map(|(sets, n)| plain(n, &squat, sets))
            .collect();
        let last = key(0, u8::try_from(now.len()).unwrap() - 1);
        let now = plain(50, &squat, now);
        beaten_just_now(&now, last, &summaries_of(&records), Curve::default())
            .iter()
            .map(|best| best.brief(Unit::Kg))
            .collect::<Vec<_>>()
    };
    let before: &[&[(&str, i64)]] = &[&[("80 kg", 5), ("80 kg", 5), ("80 kg", 5)]];
    assert_eq!(said(before, &[("80 kg", 5)]), [""; 0]);
    let best = "82.5 kg for 5, most at 5";
    assert_eq!(said(before, &[("80 kg", 5), ("82.5 kg", 5)]), [best]);
    assert_eq!(said(before, &[("80 kg", 6)]), ["80 kg for 6, most reps"]);
    let wide = said(before, &[("120 kg", 1)]);
    assert_eq!(
        wide[1],
        "estimated maximum 120 kg by this session alone, beyond noise"
    );
    assert_eq!(said(before, &[("82.5 kg", 5), ("82.5 kg", 5)]), [""; 0]);
    assert_eq!(said(&[], &[("82.5 kg", 5)]), [""; 0], "the first time");
}

#[test]
fn what_a_session_beat_is_told_while_it_is_the_newest() {
    let squat = block(vec![work(3, 5, 7)], LoadBasis::External, SideMode::Both);
    let first = plain(1, &squat, &[("80 kg", 5)]);
    let better = plain(2, &squat, &[("82.5 kg", 5)]);
    let later = plain(3, &squat, &[("70 kg", 5)]);
    let told = |records: &[&SessionRecord]| {
        let summaries = summaries_of(records.iter().copied());
        let beaten = beaten_in(&better, &summaries, Curve::default());
        beaten.len()
    };
    let newest = told(&[&first, &better]);
    assert_eq!(newest, 2, "the set and the volume");
    assert_eq!(told(&[&first, &better, &later]), 0);
}

#[test]
fn a_set_is_hard_by_what_was_said_and_to_failure_without_a_word() {
    let five = reps(5);
    let lines = vec![
        work(3, 5, 8),
        sets(SetKind::ToFailure, 3, Target::Reps(RepTarget::Fixed(five))),
        sets(SetKind::Work, 3, Target::Reps(RepTarget::AtLeast(five))),
    ];
    let block = block(lines, LoadBasis::External, SideMode::Both);
    let hard = |line: u8, set: u8, left: Option<i64>| {
        let done = Done {
            reserve: left.map(|left| Rir::new(left).unwrap()),
            ..done(Some("60 kg"), Amount::Reps(five))
        };
        let record = record(1, &block, None, &[(key(line, set), done)]);
        shares_of(&record)[0].hard == 1
    };
    // Of each line a set with nothing said, one that left 4 and one that left 5.
    let of_line = |line| {
        [
            hard(line, 0, None),
            hard(line, 1, Some(4)),
            hard(line, 2, Some(5)),
        ]
    };
    assert_eq!(of_line(0), [false, true, false], "work sets");
    assert_eq!(of_line(1), [true, true, false], "to failure");
    assert_eq!(of_line(2), [false, true, false], "5+");
}
