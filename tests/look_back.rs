//! Looking back: sessions found by exercise, note and day; a session made a sheet.

use crate::common;

use common::built::{block, done, events, key, record, reps, sets, sheet, work};
use common::events::{event, session};
use common::{id, time};
use proptest::prelude::*;
use stanchion::exercises::Catalogue;
use stanchion::ledger::{
    Heading, Period, SessionRecord, Sought, again, best_said, course, pasts_of,
};
use stanchion::session::{Amount, State, What};
use stanchion::sheet::{
    ExerciseId, LoadBasis, LoadPolicy, Note, RepTarget, SetKind, SheetId, SideMode, Target, unroll,
};
use stanchion::strength::{Curve, Told};
use stanchion::units::{Metres, Rir, Seconds, Share, Unit};

fn found(text: &str, heading: &Heading) -> bool {
    let none = std::iter::empty::<(&ExerciseId, &str)>();
    Sought::new(text, &Catalogue::default(), none, None, None).finds(heading)
}

/// A session of one front squat with a note on it and one on its set.
fn noted() -> Heading {
    let block = block(vec![work(3, 5, 7)], LoadBasis::External, SideMode::Both);
    let sets = [(key(0, 0), done(Some("60 kg"), Amount::Reps(reps(5))))];
    let mut all = events(1, &block, None, &sets);
    for (n, (set, text)) in [
        (None, "Cold boathouse."),
        (Some(key(0, 0)), "Left KNEE felt odd"),
    ]
    .into_iter()
    .enumerate()
    {
        let text = Note::new(text).unwrap();
        let at = 86_400_000 + 3_600_000 + n as u64;
        all.push(event(9, at, 1, What::Noted { set, text }));
    }
    Heading::of(&SessionRecord::from_events(&all).unwrap(), &[])
}

#[test]
fn a_session_is_found_by_exercise_note_and_sheet() {
    let heading = noted();
    for text in [
        "front squat",
        "squat front",
        "FRONT",
        "cold",
        "knee",
        "KNEE left",
        "lower a",
        "",
    ] {
        assert!(found(text, &heading), "{text}");
    }
    for text in ["bench press", "warm", "knee warm", "upper b"] {
        assert!(!found(text, &heading), "{text}");
    }
}

#[test]
fn what_was_done_under_another_name_is_found_by_it() {
    let heading = noted();
    let id = ExerciseId::new("front-squat").unwrap();
    let done = [(&id, "Rack squat with straps")];
    let catalogue = Catalogue::default();
    let sought = Sought::new("straps", &catalogue, done.into_iter(), None, None);
    assert!(sought.finds(&heading));
    let name = |id: &ExerciseId| id.to_string();
    assert_eq!(sought.place(&heading, name), "front-squat");
    let by_note = Sought::new("odd", &catalogue, std::iter::empty(), None, None);
    assert_eq!(by_note.place(&heading, name), "Left KNEE felt odd");
}

#[test]
fn days_bound_a_search_on_both_sides() {
    let heading = noted();
    let on = heading.began.date_naive();
    let within = |first, last| {
        let none = std::iter::empty();
        Sought::new("", &Catalogue::default(), none, first, last).finds(&heading)
    };
    assert!(within(Some(on), Some(on)));
    assert!(!within(on.succ_opt(), None));
    assert!(!within(None, on.pred_opt()));
}

#[test]
fn what_was_done_is_a_sheet_with_its_loads_and_reps() {
    let shares = vec![Share::percent(60)];
    let five = Target::Reps(RepTarget::fixed(reps(5)).unwrap());
    let ramp = sets(SetKind::RampUp { shares }, 2, five);
    let block = block(
        vec![ramp, work(3, 5, 7)],
        LoadBasis::External,
        SideMode::Both,
    );
    let one = |load, count| done(Some(load), Amount::Reps(reps(count)));
    let dones = [
        (key(0, 0), one("40 kg", 5)),
        (key(1, 0), one("80 kg", 7)),
        (key(1, 1), one("82.5 kg", 7)),
        (
            key(1, 2),
            one("82.5 kg", 6).with_reserve(Some(Rir::saturating(1))),
        ),
    ];
    let record = record(1, &block, None, &dones);
    let mut n = 500;
    let mut ids = || {
        n += 1;
        id(n, n)
    };
    let made = again(
        &record,
        &sheet(block),
        SheetId(id(400, 4)),
        &mut ids,
        time(0),
    )
    .unwrap();
    assert_eq!(made.name.as_str(), "Lower A, as on 6 Jan 2026");
    let lines = &made.blocks().next().unwrap().sets;
    assert_eq!(lines.len(), 3);
    assert_eq!((lines[0].count, lines[0].kind.is_work()), (1, false));
    let list =
        |loads: &[&str]| LoadPolicy::List(loads.iter().map(|load| load.parse().unwrap()).collect());
    assert_eq!(
        (lines[1].count, &lines[1].load),
        (2, &list(&["80 kg", "82.5 kg"]))
    );
    assert_eq!((lines[2].count, &lines[2].load), (1, &list(&["82.5 kg"])));
    assert_eq!(
        lines[2].target,
        Target::Reps(RepTarget::fixed(reps(6)).unwrap())
    );
    assert_eq!(
        made.blocks().next().unwrap().start,
        Some("82.5 kg".parse().unwrap())
    );
}

#[test]
fn what_was_done_is_asked_for_as_it_was_counted() {
    let reps_of = |n| Target::Reps(RepTarget::fixed(reps(n)).unwrap());
    let timed = |n| Target::Timed(Seconds::new(n).unwrap());
    let far = |n| Target::Distance(Metres::saturating(n));
    let made = |kind: SetKind, asked: Target, amount: Amount| {
        let block = block(
            vec![sets(kind, 1, asked)],
            LoadBasis::External,
            SideMode::Both,
        );
        let record = record(1, &block, None, &[(key(0, 0), done(Some("60 kg"), amount))]);
        let mut n = 500;
        let mut ids = || {
            n += 1;
            id(n, n)
        };
        let id = SheetId(id(400, 4));
        let made = again(&record, &sheet(block), id, &mut ids, time(0)).unwrap();
        let line = made.blocks().next().unwrap().sets[0].clone();
        (line.kind, line.target)
    };
    let work = |asked, amount| made(SetKind::Work, asked, amount).1;
    assert_eq!(work(reps_of(8), Amount::Reps(reps(6))), reps_of(6));
    let at_least = |n| Target::Reps(RepTarget::at_least(reps(n)).unwrap());
    assert_eq!(work(at_least(12), Amount::Reps(reps(14))), at_least(14));
    assert_eq!(
        work(timed(30), Amount::Timed(Seconds::saturating(25))),
        timed(25)
    );
    assert_eq!(
        work(far(20), Amount::Distance(Metres::saturating(15))),
        far(15)
    );
    // What was not done at all is asked for as before.
    assert_eq!(work(timed(30), Amount::Timed(Seconds::MIN)), timed(30));
    // The reps of a cluster are those of all its portions: it is asked for as before.
    let cluster = SetKind::Cluster {
        portions: 3,
        pause: Seconds::new(15).unwrap(),
    };
    assert_eq!(
        made(cluster, reps_of(3), Amount::Reps(reps(9))).1,
        reps_of(3)
    );
    // A drop set without its drops is a plain one.
    let drop = SetKind::Drop {
        drops: 2,
        keep: Share::percent(80),
    };
    assert_eq!(
        made(drop, reps_of(8), Amount::Reps(reps(8))).0,
        SetKind::Work
    );
}

#[test]
fn of_nothing_done_there_is_no_sheet() {
    let block = block(vec![work(3, 5, 7)], LoadBasis::External, SideMode::Both);
    let none = record(1, &block, None, &[]);
    assert_eq!(
        again(
            &none,
            &sheet(block),
            SheetId(id(4, 4)),
            &mut || id(9, 9),
            time(0)
        ),
        None
    );
}

#[test]
fn a_period_says_the_best_set_and_what_changed_beyond_noise() {
    let block = block(vec![work(3, 5, 7)], LoadBasis::External, SideMode::Both);
    // A set to two left a day, 60 days long, a fifth stronger at their end.
    let pasts: Vec<_> = (0..60_u64)
        .flat_map(|n| {
            let load = format!("{} kg", 80 + n / 4);
            let set =
                done(Some(&load), Amount::Reps(reps(6))).with_reserve(Some(Rir::saturating(1)));
            pasts_of(&record(n, &block, None, &[(key(0, 0), set)]))
        })
        .map(|(_, past)| past)
        .collect();
    let on = |n: usize| pasts[n].performance.at.date_naive();
    let course_of = |first, last| {
        let period = Period::new(first, last).unwrap();
        course(&pasts, Curve::default(), period)
    };
    let whole = course_of(on(0), on(59));
    assert_eq!(whole.sessions, 60);
    assert_eq!(best_said(whole.best.as_ref(), Unit::Kg), "94 kg × 6");
    let (begin, end) = whole.estimate.unwrap();
    assert!(begin.middle < end.middle);
    assert_eq!(whole.change.unwrap().told, Told::Up);
    // Three days are within noise; a day before all of it knows nothing.
    let short = course_of(on(20), on(22));
    assert_eq!(short.sessions, 3);
    assert_eq!(short.change.unwrap().told, Told::Noise);
    let before = on(0).pred_opt().unwrap();
    let none = course_of(before, before);
    assert_eq!(
        (none.sessions, none.best, none.estimate, none.change),
        (0, None, None, None)
    );
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// Whatever was done, the sheet of it holds together and asks for no set that was not done.
    #[test]
    fn any_session_makes_a_sheet_that_holds(events in session(0)) {
        let record = SessionRecord::from_events(&events).unwrap();
        let written = State::fold(&events).unwrap().began.sheet;
        let mut n = 500;
        let mut ids = || { n += 1; id(n, n) };
        let done = record.lines().count();
        match again(&record, &written, SheetId(id(400, 4)), &mut ids, time(0)) {
            Some(sheet) => {
                prop_assert!(sheet.check().is_ok());
                for block in sheet.blocks() {
                    for sets in &block.sets {
                        prop_assert!(sets.check().is_ok(), "{:?}", sets.check());
                    }
                }
                prop_assert!(unroll(&sheet).len() <= done);
            }
            // Only drops of a set that itself was not done, or nothing.
            None => prop_assert!(record.lines().all(|(_, line)| line.key.drop > 0)
                || record.blocks.iter().any(|block| !block.lines.is_empty()
                    && block.lines.iter().all(|line| line.key.drop > 0))),
        }
    }
}
