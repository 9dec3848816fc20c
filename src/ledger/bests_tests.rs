//! What is a best, what beats it, and what is said of it.

use super::*;
use crate::sheet::{Line, SheetId};
use crate::strength::{Performance, SetResult};
use crate::units::Unit;
use chrono::DateTime;

/// Session `n`, a week after the one before: loads, reps, whether they went to the limit.
fn past(n: u32, basis: &LoadBasis, sets: &[(&str, i64)]) -> Past {
    let id = uuid::Uuid::from_u128(u128::from(n));
    let at = DateTime::parse_from_rfc3339("2026-01-05T09:00:00Z").unwrap();
    let results = sets.iter().map(|(load, reps)| SetResult {
        stretch: None,
        stages: Vec::new(),
        load: load.parse().ok(),
        reps: Reps::saturating(*reps),
        low: Reps::saturating(5),
        top: Reps::saturating(7),
        reserve: None,
        work: true,
        to_limit: true,
        to_spare: false,
        unfed: None,
    });
    let mut volume = VolumeLoad::default();
    for (load, reps) in sets {
        let kg = load.parse::<Load>().map(Load::kg).unwrap_or_default();
        volume.add(kg * rust_decimal::Decimal::from(*reps));
    }
    Past {
        name: Line::new("Front squat").unwrap(),
        performance: Performance {
            session: id,
            at: at + chrono::TimeDelta::weeks(i64::from(n)),
            shape: String::new(),
            basis: Some(basis.clone()),
            body_mass: "80 kg".parse().ok(),
            left: 0,
            sets: results.collect(),
        },
        sheet: SheetId(id),
        light: false,
        volume,
        tempo: crate::ledger::TempoKept::default(),
    }
}

fn squats(sessions: &[&[(&str, i64)]]) -> Vec<Past> {
    let sessions = sessions.iter().zip(1..);
    sessions
        .map(|(sets, n)| past(n, &LoadBasis::External, sets))
        .collect()
}

/// What the last of these sessions beats, but for the volume.
fn said(history: &[Past]) -> Vec<String> {
    let (before, last) = history.split_at(history.len() - 1);
    let beaten = Bests::of(before).beaten_by(&[], last);
    let sets = beaten
        .iter()
        .filter(|best| matches!(best, Best::Set { .. }));
    sets.map(|best| best.sentence(Unit::Kg)).collect()
}

#[test]
fn a_set_of_eight_is_one_of_five_too() {
    let bests = Bests::of(&squats(&[&[("80 kg", 8), ("85 kg", 4)], &[("82.5 kg", 6)]]));
    let best = |reps| {
        let set = bests.ways[0].at_reps(Reps::saturating(reps));
        set.map(|set| set.load.to_string())
    };
    let loads: Vec<Option<String>> = [1, 4, 5, 6, 7, 8, 9].map(best).to_vec();
    let kg = |load: &str| Some(format!("{load} kg"));
    assert_eq!(
        loads,
        [
            kg("85"),
            kg("85"),
            kg("82.5"),
            kg("82.5"),
            kg("80"),
            kg("80"),
            None
        ]
    );
    let most = |load: &str| bests.ways[0].at_load(load.parse().unwrap());
    assert_eq!(most("81 kg").unwrap().much.get(), 6);
    assert_eq!(most("80 kg").unwrap().much.get(), 8);
    assert_eq!(most("86 kg"), None);
}

#[test]
fn of_two_equal_sets_the_earlier_is_the_best() {
    let history = squats(&[&[("80 kg", 8)], &[("80 kg", 8)]]);
    let bests = Bests::of(&history);
    assert_eq!(bests.ways[0].sets[0].when, When::of(&history[0]));
    assert!(said(&history).is_empty());
}

#[test]
fn a_best_is_said_in_one_sentence() {
    assert!(
        said(&squats(&[&[("80 kg", 5)]])).is_empty(),
        "the first time beats nothing"
    );
    assert_eq!(
        said(&squats(&[&[("80 kg", 5)], &[("82.5 kg", 5)]])),
        ["82.5 kg for 5: the most at 5 reps, 80 kg before"]
    );
    assert_eq!(
        said(&squats(&[&[("80 kg", 5)], &[("80 kg", 6)]])),
        ["80 kg for 6: the most reps at it, 5 before"]
    );
    assert_eq!(
        said(&squats(&[&[("90 kg", 4), ("80 kg", 8)], &[("85 kg", 6)]])),
        ["85 kg for 6: the most at 6 reps, 80 kg before; the most reps at it, 4 before"]
    );
    assert_eq!(
        said(&squats(&[&[("80 kg", 5)], &[("85 kg", 6)]])),
        ["85 kg for 6: harder and longer than any before"]
    );
    // Beyond fifteen only the reps are asked for.
    assert_eq!(
        said(&squats(&[
            &[("40 kg", 20), ("50 kg", 10)],
            &[("45 kg", 18)]
        ])),
        ["45 kg for 18: the most reps at it, 10 before"]
    );
}

#[test]
fn less_assistance_and_more_reps_alone_are_bests_too() {
    let assisted = |n, sets: &[(&str, i64)]| past(n, &LoadBasis::BodyMassMinus, sets);
    assert_eq!(
        said(&[assisted(1, &[("20 kg", 5)]), assisted(2, &[("15 kg", 5)])]),
        ["15 kg of assistance for 5: the least at 5 reps, 20 kg of assistance before"]
    );
    let bare = |n, reps| past(n, &LoadBasis::Unloaded, &[("0 kg", reps)]);
    assert_eq!(
        said(&[bare(1, 12), bare(2, 15)]),
        ["15 reps: the most reps, 12 before"]
    );
    let added = |n, load| past(n, &LoadBasis::BodyMassPlus, &[(load, 5)]);
    assert_eq!(
        said(&[added(1, "5 kg"), added(2, "7.5 kg")]),
        ["+7.5 kg for 5: the most at 5 reps, +5 kg before"]
    );
    assert_eq!(
        said(&[added(1, "0 kg"), added(2, "2.5 kg")]),
        ["+2.5 kg for 5: the most at 5 reps, nothing added before"]
    );
    let alone = |n, reps| past(n, &LoadBasis::BodyMassPlus, &[("0 kg", reps)]);
    assert_eq!(
        said(&[alone(1, 10), alone(2, 12)]),
        ["12 reps, nothing added: the most reps at it, 10 before"]
    );
}

#[test]
fn only_what_a_set_itself_beat_is_said_after_it() {
    let known = Bests::of(&squats(&[&[("80 kg", 5)]]));
    let now = |sets: &[(&str, i64)]| [past(9, &LoadBasis::External, sets)];
    let first = known.beaten_by(&[], &now(&[("82.5 kg", 5)]));
    assert_eq!(first.len(), 2, "the set and the volume: {first:?}");
    let before = now(&[("82.5 kg", 5)]);
    let again = known.beaten_by(&before, &now(&[("82.5 kg", 5), ("82.5 kg", 5)]));
    assert!(again.is_empty(), "{again:?}");
    let more = known.beaten_by(&before, &now(&[("82.5 kg", 5), ("85 kg", 5)]));
    assert_eq!(more.len(), 1, "{more:?}");
    assert_eq!(
        more[0].sentence(Unit::Kg),
        "85 kg for 5: the most at 5 reps, 82.5 kg before"
    );
}

/// 2.772 × the typical error: of one test-retest difference of 4.2 % it is 11.64 % (Hopkins 2000, Sports Med
/// 30(1):1–15; Grgic et al. 2020, Sports Med Open 6:31). A set to the limit at some reps errs a little more.
#[test]
fn a_maximum_is_a_best_beyond_the_detectable_change_alone() {
    let told = |load: &str| {
        let history = squats(&[&[("100 kg", 1)], &[(load, 1)]]);
        let beaten = Bests::of(&history[..1]).beaten_by(&[], &history[1..]);
        beaten
            .into_iter()
            .find(|best| matches!(best, Best::E1rm { curve, .. } if *curve == Curve::default()))
    };
    assert_eq!(told("111 kg"), None);
    let best = told("120 kg").unwrap();
    let Best::E1rm { detectable, .. } = &best else {
        panic!("{best:?}")
    };
    assert!((1164..1600).contains(detectable), "{detectable}");
    assert!(best.sentence(Unit::Kg).starts_with(
        "estimated maximum 120 kg by this session alone: above the 100 kg of an earlier one"
    ));
    assert!(best.counts(Curve::default()) && !best.counts(Curve::Wathan));
}

/// Two percent a session are noise each time, and are told once together they are not.
#[test]
fn a_creeping_gain_is_told_once_it_can_be_told() {
    let loads: Vec<String> = (0..12).map(|n| format!("{} kg", 100 + 2 * n)).collect();
    let history: Vec<Past> = loads
        .iter()
        .zip(1..)
        .map(|(load, n)| past(n, &LoadBasis::External, &[(load, 1)]))
        .collect();
    let told: Vec<usize> = (1..history.len())
        .filter(|&n| {
            let beaten = Bests::of(&history[..n]).beaten_by(&[], &history[n..=n]);
            beaten
                .iter()
                .any(|best| matches!(best, Best::E1rm { .. }) && best.counts(Curve::default()))
        })
        .collect();
    assert_eq!(told.len(), 1, "{told:?}");
    assert!(told[0] >= 6, "{told:?}");
}

#[test]
fn light_sessions_and_sets_that_are_no_plain_work_are_no_bests() {
    let mut history = squats(&[&[("80 kg", 5)], &[("100 kg", 5)], &[("90 kg", 5)]]);
    history[1].light = true;
    history[2].performance.sets[0].work = false;
    let bests = Bests::of(&history);
    assert_eq!(bests.ways[0].sets.len(), 1);
    assert_eq!(bests.ways[0].sets[0].load, "80 kg".parse().unwrap());
}

#[test]
fn of_two_blocks_of_one_session_the_better_shows_the_maximum() {
    let pair = |first: &str, second: &str| {
        let mut session = squats(&[&[(first, 1)], &[(second, 1)]]);
        session[1].performance.session = session[0].performance.session;
        session
    };
    for (first, second) in [("100 kg", "90 kg"), ("90 kg", "100 kg")] {
        let bests = Bests::of(&pair(first, second));
        let highest = bests.highest.iter().find(|it| it.curve == Curve::default());
        assert_eq!(highest.unwrap().shown.e1rm, "100 kg".parse().unwrap());
    }
}

#[test]
fn a_light_session_or_a_lighter_one_is_no_more_volume() {
    let history = squats(&[&[("80 kg", 5), ("80 kg", 5)], &[("80 kg", 5), ("80 kg", 5)]]);
    let known = Bests::of(&history[..1]);
    let volume = |history: &[Past]| {
        let beaten = known.beaten_by(&[], history);
        beaten
            .iter()
            .any(|best| matches!(best, Best::Volume { .. }))
    };
    assert!(!volume(&history[1..]), "as much is not more");
    let more = [past(9, &LoadBasis::External, &[("80 kg", 6), ("80 kg", 5)])];
    assert!(volume(&more));
    let beaten = known.beaten_by(&[], &more);
    let told: Vec<String> = beaten.iter().map(|best| best.brief(Unit::Kg)).collect();
    let said = "880 kg of volume load, most in a session".to_owned();
    assert!(told.contains(&said), "{told:?}");
    let mut both = known.clone();
    both.take(&history[1..]);
    assert_eq!(both.volume, known.volume, "the earlier of two stays");
}

/// A bar of 60 kg and dumbbells of 30 kg say nothing of each other, nor do both sides and one.
#[test]
fn what_is_moved_otherwise_is_compared_apart() {
    let with = |n, moved: &str, load: &str, reps| {
        let mut past = past(n, &LoadBasis::External, &[(load, reps)]);
        past.performance.shape = format!("{moved}|\"external\"| work 5");
        past
    };
    let bar = "[\"both\",\"barbell\"]";
    let dumbbells = "[\"both\",\"dumbbell\"]";
    let one = "[\"each_in_turn\",\"dumbbell\"]";
    let known = [with(1, bar, "100 kg", 5), with(2, dumbbells, "30 kg", 5)];
    let now = |past: Past| said(&[known[0].clone(), known[1].clone(), past]);
    assert_eq!(
        now(with(3, dumbbells, "32 kg", 5)),
        ["32 kg for 5: the most at 5 reps, 30 kg before"]
    );
    assert!(now(with(3, bar, "90 kg", 5)).is_empty());
    assert!(
        now(with(3, one, "40 kg", 5)).is_empty(),
        "the first time in this way beats nothing"
    );
    let bests = Bests::of(&known);
    let ways: Vec<&str> = bests.ways.iter().map(|way| way.moved.as_str()).collect();
    assert_eq!(ways, [bar, dumbbells]);
    let by_own = bests
        .highest
        .iter()
        .filter(|it| it.curve == Curve::default());
    let highest: Vec<&str> = by_own.map(|it| it.moved.as_str()).collect();
    assert_eq!(highest, [bar, dumbbells]);
    let told = bests.beaten_by(&[], &[with(3, dumbbells, "50 kg", 5)]);
    assert!(
        told.iter()
            .any(|best| matches!(best, Best::E1rm { .. }) && best.counts(Curve::default())),
        "{told:?}"
    );
}
