//! Checks against published values. Each names its source and how sure we are of it.
//!
//! Marks: P published, read in an excerpt or copy; P2 published, seen quoted; M published, the value from memory;
//! D derived by arithmetic from a published formula; C common practice, no source.

mod common;
mod published_heat;
mod published_kit;
mod published_ledger;
mod published_rules;
mod published_strength;

use common::squat::{block, planned};
use rust_decimal::Decimal;
use serde_json::json;
use stanchion::cues::{Length, set_timeline};
use stanchion::kit::{Bar, Kit, KitParts, PlatePairs};
use stanchion::sheet::{Block, Equipment, Line, LoadBasis, Tempo};
use stanchion::strength::{
    Because, Curve, Performance, Proposal, SetResult, Today, jump_caution, set_load,
};
use stanchion::units::{Load, Reps, Rir, Unit};
use uuid::Uuid;

fn load(text: &str) -> Load {
    text.parse().unwrap()
}

fn reps(n: u16) -> Reps {
    Reps::new(i64::from(n)).unwrap()
}

/// What is proposed two days after the last performance.
fn propose(block: &Block, history: &[Performance], kit: &Kit) -> Proposal {
    let now = "2026-01-07T18:00:00+01:00".parse().unwrap();
    stanchion::strength::propose(
        block,
        &Today {
            history,
            kit,
            now,
            curve: Curve::default(),
            body_mass: None,
        },
    )
}

/// A 20-kg bar with one pair each of the IWF discs and small discs of 5, 2.5 and 1.25 kg; 25 and 20 in two pairs.
fn iwf_kit() -> Kit {
    let plates = [
        ("25 kg", 2),
        ("20 kg", 2),
        ("15 kg", 1),
        ("10 kg", 1),
        ("5 kg", 1),
        ("2.5 kg", 1),
        ("1.25 kg", 1),
    ];
    Kit::new(KitParts {
        unit: Unit::Kg,
        bars: vec![Bar {
            name: Line::new("bar").unwrap(),
            mass: load("20 kg"),
            collars: None,
        }],
        plates: plates
            .map(|(mass, pairs)| PlatePairs {
                mass: load(mass),
                pairs,
            })
            .to_vec(),
        dumbbells: Vec::new(),
        handles: None,
        stacks: Vec::new(),
        bands: Vec::new(),
        smallest_step: load("1.25 kg"),
    })
    .unwrap()
}

/// Epley 1985, w(1 + r/30): the formula M/P2, these values for w = 100 D, rounded to two decimals.
#[test]
fn epley_gives_its_table() {
    for (r, percent) in [
        (2, "106.67"),
        (3, "110.00"),
        (5, "116.67"),
        (8, "126.67"),
        (10, "133.33"),
        (12, "140.00"),
    ] {
        let e1rm = Curve::Epley.e1rm(load("100 kg"), reps(r)).unwrap();
        let printed: Decimal = percent.parse().unwrap();
        assert_eq!(e1rm.kg().round_dp(2), printed.normalize(), "{r} reps");
    }
}

/// One rep done is the maximum (a rule, C); the curves are not to be used above 12 to 15 reps (C, from Reynolds et al.
/// 2006, J Strength Cond Res 20(3):584–592, P: no more than 10 reps in linear equations).
#[test]
fn epley_keeps_to_its_range() {
    assert_eq!(
        Curve::Epley.e1rm(load("100 kg"), reps(1)),
        Ok(load("100 kg"))
    );
    assert!(Curve::Epley.e1rm(load("100 kg"), reps(13)).is_err());
    assert!(Curve::Epley.e1rm(load("100 kg"), reps(0)).is_err());
}

/// Zourdos et al. 2016, J Strength Cond Res 30(1):267–275, P: RIR = 10 − RPE. With a reserve, e1RM is taken at
/// reps + RIR (C): 5 reps at RPE 8 is Epley at 7 reps, 100 × (1 + 7/30) (D).
#[test]
fn a_reserve_counts_as_reps() {
    let reserve = Rir::new(10 - 8).unwrap();
    let history = [performance("100 kg", 5, (5, 5), Some(reserve), "any")];
    let best = stanchion::strength::best_e1rm(&history, Curve::Epley).unwrap();
    assert_eq!(best.kg().round_dp(2).to_string(), "123.33");
}

/// Seconds per repetition are the sum of the four digits (D).
#[test]
fn a_tempo_takes_the_sum_of_its_digits() {
    for (tempo, n, seconds) in [("3/1/1/0", 8, 40), ("4/0/2/0", 10, 60)] {
        let parsed: Tempo = tempo.parse().unwrap();
        assert_eq!(parsed.rep_seconds() * n, seconds);
        let sets = json!([{"kind": "work", "count": 1, "target": {"reps": n}, "tempo": tempo}]);
        let set = &planned(&block(&sets, &json!("as_written")))[0];
        let at_ms = seconds * 1000;
        assert_eq!(set_timeline(set, 0).length, Length::Ends { at_ms });
    }
}

fn performance(
    at: &str,
    done: u16,
    range: (u16, u16),
    reserve: Option<Rir>,
    shape: &str,
) -> Performance {
    Performance {
        session: Uuid::from_u128(4),
        at: "2026-01-05T18:00:00+01:00".parse().unwrap(),
        shape: shape.to_owned(),
        basis: Some(LoadBasis::External),
        body_mass: None,
        left: 0,
        sets: vec![SetResult {
            stretch: None,
            stages: Vec::new(),
            load: Some(load(at)),
            reps: reps(done),
            low: reps(range.0),
            top: reps(range.1),
            reserve,
            work: true,
            to_limit: false,
            to_spare: false,
            unfed: None,
        }],
    }
}

/// The 2-for-2 rule (Baechle & Earle, Essentials of Strength Training and Conditioning, P2): two or more reps over the
/// goal in the last set, in two consecutive sessions at the same load.
#[test]
fn two_for_two_goes_up_after_two_over_twice() {
    let sets = json!([{"kind": "work", "count": 1, "target": {"reps": 10}}]);
    let block = block(&sets, &json!({"two_for_two": {}}));
    let next = |sessions: &[(&str, u16)]| {
        let history: Vec<Performance> = (1..)
            .zip(sessions)
            .map(|(session, (at, n))| Performance {
                session: Uuid::from_u128(session),
                ..performance(at, *n, (10, 10), None, &block.shape())
            })
            .collect();
        propose(&block, &history, &iwf_kit())
    };
    let (same, up) = (Some(load("60 kg")), Some(load("62.5 kg")));
    let went_up = next(&[("60 kg", 12), ("60 kg", 12)]);
    assert_eq!(went_up.load, up);
    assert!(matches!(went_up.because, Because::TwoOverTwice { .. }));
    assert_eq!(next(&[("60 kg", 15), ("60 kg", 12)]).load, up);
    assert_eq!(next(&[("60 kg", 12)]).load, same);
    assert_eq!(next(&[("60 kg", 12), ("60 kg", 11)]).load, same);
    // 12, 11, 12: not two running.
    let broken = [("60 kg", 12), ("60 kg", 11), ("60 kg", 12)];
    assert_eq!(next(&broken).load, same);
    // 12, 12 with a change of load between.
    assert_eq!(next(&[("57.5 kg", 12), ("60 kg", 12)]).load, same);
}

/// Ribeiro et al. 2020, PMC7558980, P: warm-up at 40 % and 80 % of the training load; 80 kg → 32 and 64 D.
#[test]
fn a_ramp_up_takes_its_shares_of_the_work_load() {
    let sets = json!([
        {"kind": {"ramp_up": {"shares": ["40 %", "80 %"]}}, "count": 2, "target": {"reps": 6}},
        {"kind": "work", "count": 3, "target": {"reps": 6}},
    ]);
    let mut block = block(&sets, &json!("as_written"));
    // By whole kilograms, so that the shares themselves can be loaded.
    block.exercise.equipment = Equipment::Other;
    let mut parts = iwf_kit().parts().clone();
    parts.smallest_step = load("1 kg");
    let kit = Kit::new(parts).unwrap();
    let base = Some(load("80 kg"));
    let loads: Vec<String> = planned(&block)
        .iter()
        .filter_map(|set| set_load(&block, set, base, &[], None, &kit).load)
        .map(|load| load.to_string())
        .collect();
    assert_eq!(loads, ["32 kg", "64 kg", "80 kg", "80 kg", "80 kg"]);
}

/// American College of Sports Medicine position stand 2009 (Ratamess et al., Med Sci Sports Exerc 41(3):687–708), P:
/// add 2–10 %. Above that a word of caution is due.
#[test]
fn above_the_usual_step_a_caution_is_due() {
    let best = Some(load("100 kg"));
    assert!(!jump_caution(best, load("102 kg")));
    assert!(!jump_caution(best, load("110 kg")));
    assert!(jump_caution(best, load("112.5 kg")));
}

/// The smallest step up of this kit lies in the 2–10 % of the same position stand for middling loads (D: 2.5 kg of
/// 25 to 125 kg).
#[test]
fn the_smallest_step_is_a_usual_one_from_25_to_125_kg() {
    let kit = iwf_kit();
    let middling = |at: &&Load| (load("25 kg")..=load("125 kg")).contains(*at);
    let loads = kit.loads(Equipment::Barbell);
    let mut checked = 0;
    for at in loads.iter().filter(middling) {
        let next = kit.next_above(Equipment::Barbell, *at).unwrap();
        let percent = (next.kg() / at.kg() - Decimal::ONE) * Decimal::ONE_HUNDRED;
        assert!(
            (Decimal::TWO..=Decimal::TEN).contains(&percent),
            "{at} → {next}"
        );
        checked += 1;
    }
    assert_eq!(checked, 41);
}

/// Double progression (C): reps rise inside a range at a load; top reached, load is added; below the bottom, load is
/// taken off.
#[test]
fn double_progression_turns_at_both_ends_of_the_range() {
    let sets = json!([{"kind": "work", "count": 1, "target": {"reps": {"from": 5, "to": 7}}}]);
    let block = block(&sets, &json!({"double": {}}));
    let next = |n| {
        let last = performance("82.5 kg", n, (5, 7), None, &block.shape());
        propose(&block, &[last], &iwf_kit()).load
    };
    assert_eq!(next(4), Some(load("80 kg")));
    assert_eq!(next(5), Some(load("82.5 kg")));
    assert_eq!(next(6), Some(load("82.5 kg")));
    assert_eq!(next(7), Some(load("85 kg")));
}
