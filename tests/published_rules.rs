//! Checks of the progression rules against published values. Each names its source and how sure we are of it.
//!
//! Marks: P published, read in an excerpt or copy; P2 published, seen quoted; M published, the value from memory;
//! D derived by arithmetic from a published formula; C common practice, no source.

use crate::common;

use common::squat::{block, planned};
use rust_decimal::Decimal;
use serde_json::json;
use stanchion::kit::{Kit, KitParts};
use stanchion::sheet::{Block, Equipment, Pattern, usual_ramp};
use stanchion::strength::{
    Base, Because, Bound, Curve, DoneSet, Maximum, Performance, Proposal, SetResult, Today,
    Training, jump_caution, propose, set_load, usual_steps,
};
use stanchion::units::{Load, Reps, Rir, Unit};
use uuid::Uuid;

fn load(text: &str) -> Load {
    text.parse().unwrap()
}

fn reps(n: u16) -> Reps {
    Reps::new(i64::from(n)).unwrap()
}

/// What follows sessions of one set each, two days apart, two days after the last.
fn next(block: &Block, sessions: &[(&str, u16)]) -> Proposal {
    let mut now = "2026-01-05T18:00:00+01:00".parse().unwrap();
    let mut history = Vec::new();
    let asked = block.sets[0].target.plain_reps().unwrap();
    for (at, n) in sessions {
        history.push(Performance {
            session: Uuid::from_u128(4),
            at: now,
            shape: block.shape(),
            basis: None,
            body_mass: None,
            left: 0,
            sets: vec![SetResult {
                stretch: None,
                stages: Vec::new(),
                load: Some(load(at)),
                reps: reps(*n),
                low: asked.low(),
                top: asked.top(),
                reserve: None,
                work: true,
                to_limit: false,
                to_spare: false,
                unfed: None,
            }],
        });
        now += chrono::TimeDelta::days(2);
    }
    propose(
        block,
        &Today {
            history: &history,
            kit: &Kit::starter(Unit::Kg),
            now,
            curve: Curve::default(),
            body_mass: None,
        },
    )
}

/// Push-up 0.64 of the body mass (Ebben et al. 2011, J Strength Cond Res 25(10):2891–2894, P2); pull-up, chin-up and dip the
/// whole body mass ± external (Johnson et al. 2009, J Strength Cond Res 23(3):1022–1028, P). Of 80 kg D: chin-up + 10 moves
/// 90, − 20 of assistance 60, a push-up 51.2. So the whole of a maximum of 90, 60 and 51.2 kg is written as + 10, − 20
/// and nothing; of 76 kg of body the same 90 kg leave 14.
#[test]
fn a_share_of_the_maximum_counts_the_body() {
    let sets = json!([{"kind": "work", "count": 1, "target": {"reps": 1}, "load": {"share_of_e1rm": "100 %"}}]);
    let written = |basis: serde_json::Value, e1rm: &str, mass: &str| {
        let mut block = block(&sets, &json!("as_written"));
        block.exercise.equipment = Equipment::Body;
        block.basis = serde_json::from_value(basis).unwrap();
        let maximum = Maximum {
            e1rm: Some(load(e1rm)),
            body_mass: Some(load(mass)),
        };
        let mut parts = Kit::starter(Unit::Kg).parts().clone();
        parts.smallest_step = load("0.5 kg");
        let kit = Kit::new(parts).unwrap();
        set_load(&block, &planned(&block)[0], None, &[], maximum, &kit).load
    };
    let push_up = || json!({"body_mass_share": "64 %"});
    assert_eq!(
        written(json!("body_mass_plus"), "90 kg", "80 kg"),
        Some(load("10 kg"))
    );
    assert_eq!(
        written(json!("body_mass_minus"), "60 kg", "80 kg"),
        Some(load("20 kg"))
    );
    assert_eq!(written(push_up(), "51.2 kg", "80 kg"), Some(load("0 kg")));
    assert_eq!(written(push_up(), "61.2 kg", "80 kg"), Some(load("10 kg")));
    assert_eq!(
        written(json!("body_mass_plus"), "90 kg", "76 kg"),
        Some(load("14 kg"))
    );
}

/// The 2-for-2 rule (Baechle & Earle, Essentials of Strength Training and Conditioning, P2): two or more reps over the
/// goal in the last set, in two consecutive sessions at the same load. The four sequences with a goal of 10 are P2.
#[test]
fn the_four_sequences_of_two_for_two() {
    let sets = json!([{"kind": "work", "count": 1, "target": {"reps": 10}}]);
    let block = block(&sets, &json!({"two_for_two": {}}));
    let up = |sessions: &[(&str, u16)]| {
        let next = next(&block, sessions);
        let at = load(sessions[sessions.len() - 1].0);
        let up = matches!(next.because, Because::TwoOverTwice { .. });
        assert_eq!(
            next.load,
            Some(if up { at.plus(load("2.5 kg")) } else { at })
        );
        up
    };
    assert!(up(&[("60 kg", 12), ("60 kg", 12)]));
    assert!(!up(&[("60 kg", 12), ("60 kg", 11), ("60 kg", 12)]));
    assert!(up(&[("60 kg", 15), ("60 kg", 12)]));
    assert!(!up(&[("57.5 kg", 12), ("60 kg", 12)]));
    // The same with the load changed and changed back between: not consecutive at one load.
    assert!(!up(&[("60 kg", 12), ("62.5 kg", 10), ("60 kg", 12)]));
}

/// American College of Sports Medicine position stand 2009 (Ratamess et al., Med Sci Sports Exerc 41(3):687–708), P:
/// add 2–10 % when one or two reps over the number can be done. No rule steps further, whatever step it is given,
/// but where the kit has nothing smaller (C), and then it says so. Ten reps for five are enough for double progression to do
/// that.
#[test]
fn no_step_up_is_above_ten_percent() {
    let sets = json!([{"kind": "work", "count": 1, "target": {"reps": 5}}]);
    let mut of_kit = 0;
    for rule in ["fixed", "double"] {
        let block = block(&sets, &json!({rule: {"up": {"by": "25 kg"}}}));
        for at in Kit::starter(Unit::Kg).loads(Equipment::Barbell) {
            let because = next(&block, &[(&at.to_string(), 10)]).because;
            let moved = because.moved().unwrap();
            let percent = (moved.to.kg() / at.kg() - Decimal::ONE) * Decimal::ONE_HUNDRED;
            match moved.bound {
                Some(Bound::KitStep) => {
                    of_kit += 1;
                    assert!(percent > Decimal::TEN && at < load("25 kg"), "{because}");
                    assert!(jump_caution(Some(at), moved.to));
                }
                _ => assert!(percent <= Decimal::TEN, "{because}"),
            }
        }
    }
    assert_eq!(of_kit, 4, "20 and 22.5 kg by either rule");
}

/// NSCA (Essentials of Strength Training and Conditioning), M: less trained, upper body 1–2 kg (2.5–5 lb), lower body
/// 2–4 kg (5–10 lb); more trained, upper body 2–4 kg (5–10 lb), lower body 4–7 kg (10–15 lb).
#[test]
fn usual_steps_are_those_of_the_table() {
    let table = [
        (
            Training::Less,
            Pattern::PushAcross,
            ["1 kg", "2 kg"],
            ["2.5 lb", "5 lb"],
        ),
        (
            Training::Less,
            Pattern::Squat,
            ["2 kg", "4 kg"],
            ["5 lb", "10 lb"],
        ),
        (
            Training::More,
            Pattern::PullDownward,
            ["2 kg", "4 kg"],
            ["5 lb", "10 lb"],
        ),
        (
            Training::More,
            Pattern::Hinge,
            ["4 kg", "7 kg"],
            ["10 lb", "15 lb"],
        ),
    ];
    for (training, pattern, kg, lb) in table {
        assert_eq!(usual_steps(pattern, training, Unit::Kg), kg.map(load));
        assert_eq!(usual_steps(pattern, training, Unit::Lb), lb.map(load));
    }
    // From how many sessions a lifter is more trained is ours (C).
    assert_eq!(Training::of(&[]), Training::Less);
}

/// Ribeiro et al. 2020, PMC7558980, P: 40 % and 80 % of the training load served best before the bench press, 80 %
/// alone before the squat; 80 kg → 32 and 64 D.
#[test]
fn usual_ramp_ups_are_those_that_were_studied() {
    let loads = |n: u8| {
        let sets = json!([
            {"kind": {"ramp_up": {"shares": usual_ramp(n)}}, "count": n, "target": {"reps": 6}},
            {"kind": "work", "count": 1, "target": {"reps": 6}},
        ]);
        let mut block = block(&sets, &json!("as_written"));
        // By whole kilograms, so that the shares themselves can be loaded.
        block.exercise.equipment = Equipment::Other;
        let mut parts: KitParts = Kit::starter(Unit::Kg).parts().clone();
        parts.smallest_step = load("1 kg");
        let kit = Kit::new(parts).unwrap();
        let loads: Vec<String> = planned(&block)
            .iter()
            .map(|set| set_load(&block, set, Some(load("80 kg")), &[], None, &kit))
            .map(|prescribed| prescribed.load.unwrap().to_string())
            .collect();
        loads
    };
    assert_eq!(loads(2), ["32 kg", "64 kg", "80 kg"]);
    assert_eq!(loads(1), ["64 kg", "80 kg"]);
    // Between the two, evenly (C).
    assert_eq!(loads(3), ["32 kg", "48 kg", "64 kg", "80 kg"]);
}

/// NSCA test of the one-repetition maximum (P2): from attempt to attempt +5–10 % for the upper body, +10–20 % for the
/// lower body. A guided start takes the most of that while five or more are left (C), and never more.
#[test]
fn a_guided_start_rises_no_faster_than_a_test_of_the_maximum() {
    let sets = json!([{"kind": "work", "count": 2, "target": {"reps": 8}}]);
    for (pattern, least, most) in [(Pattern::PushAcross, 5, 10), (Pattern::Squat, 10, 20)] {
        let mut block = block(&sets, &json!({"double": {}}));
        block.exercise.pattern = pattern;
        let kit = Kit::starter(Unit::Kg);
        let begun = next(&block, &[]);
        assert!(matches!(begun.because, Because::GuidedStart { .. }));
        let sets = planned(&block);
        let percent = |at: Load| {
            let first = DoneSet {
                key: sets[0].key,
                load: Some(at),
                reps: Some(reps(8)),
                reserve: Some(Rir::new(6).unwrap()),
            };
            let second = set_load(&block, &sets[1], Base::from(&begun), &[first], None, &kit);
            (second.load.unwrap().kg() / at.kg() - Decimal::ONE) * Decimal::ONE_HUNDRED
        };
        // Where a step of 2.5 kg is fine enough to tell.
        for at in (60..=140).step_by(5).map(Load::whole_kg) {
            let up = percent(at);
            assert!(
                up >= Decimal::from(least) && up <= Decimal::from(most),
                "{at}: {up} %"
            );
        }
    }
}
