//! Checks of the proposals: each rule's turn, each fallback, and the laws that hold for all.

use super::*;
use crate::sheet::{BlockId, LoadBasis};
use crate::strength::{SetResult, Unfed};
use crate::units::{Reps, Rir, Unit};
use uuid::Uuid;

/// A plain block of three sets of 5–7 on the bar, changed as JSON says.
pub(in crate::strength) fn block(changes: serde_json::Value) -> Block {
    let mut block = serde_json::json!({
        "id": Uuid::from_u128(1),
        "exercise": {"id": "front-squat", "name": "Front squat", "pattern": "squat", "equipment": "barbell"},
        "role": "strength",
        "sets": [{"kind": "work", "count": 3, "target": {"reps": {"from": 5, "to": 7}}}],
        "basis": "external",
        "start": "60 kg",
        "rest": 150,
        "rest_after": 180,
    });
    let serde_json::Value::Object(changes) = changes else {
        panic!("changes are an object")
    };
    for (key, value) in changes {
        match value {
            serde_json::Value::Null => block.as_object_mut().unwrap().remove(&key),
            value => block.as_object_mut().unwrap().insert(key, value),
        };
    }
    serde_json::from_value(block).unwrap()
}

fn plain() -> Block {
    block(serde_json::json!({}))
}

/// One session of work sets at those loads and reps, of a range.
pub(in crate::strength) fn performed(sets: &[(&str, u16)], range: (u16, u16)) -> Performance {
    let reps = |n: u16| Reps::new(i64::from(n)).unwrap();
    Performance {
        session: Uuid::from_u128(2),
        at: "2026-01-05T18:00:00+01:00".parse().unwrap(),
        shape: plain().shape(),
        basis: Some(plain().basis),
        body_mass: None,
        left: 0,
        sets: sets
            .iter()
            .map(|(load, n)| SetResult {
                stretch: None,
                stages: Vec::new(),
                load: Some(load.parse().unwrap()),
                reps: reps(*n),
                low: reps(range.0),
                top: reps(range.1),
                reserve: None,
                work: true,
                to_limit: false,
                to_spare: false,
                unfed: None,
            })
            .collect(),
    }
}

pub(in crate::strength) fn kit() -> Kit {
    Kit::starter(Unit::Kg)
}

/// What is proposed three days after the last performance, each having been done in a session of its own.
pub(in crate::strength) fn propose(block: &Block, history: &[Performance], kit: &Kit) -> Proposal {
    let mut history = history.to_vec();
    for (n, done) in (1..).zip(&mut history) {
        done.session = Uuid::from_u128(n);
    }
    super::propose(
        block,
        &Today {
            history: &history,
            kit,
            now: "2026-01-08T18:00:00+01:00".parse().unwrap(),
            curve: Curve::default(),
            body_mass: None,
        },
    )
}

fn said(block: &Block, sessions: &[&[(&str, u16)]]) -> String {
    let history: Vec<Performance> = sessions
        .iter()
        .map(|sets| {
            let mut performance = performed(sets, (5, 7));
            performance.shape = block.shape();
            performance
        })
        .collect();
    propose(block, &history, &kit()).because.to_string()
}

#[test]
fn double_progression_says_why() {
    let said = |sets: &[(&str, u16)]| said(&plain(), &[sets]);
    assert_eq!(
        said(&[("82.5 kg", 7), ("82.5 kg", 7), ("82.5 kg", 7)]),
        "7, 7, 7 at 82.5 kg: top of 5–7 reached, next step on this bar is 85 kg"
    );
    assert_eq!(
        said(&[("82.5 kg", 7), ("82.5 kg", 6), ("82.5 kg", 5)]),
        "7, 6, 5 at 82.5 kg: inside 5–7, same load again"
    );
    assert_eq!(
        said(&[("82.5 kg", 6), ("82.5 kg", 4)]),
        "6, 4 at 82.5 kg: below 5–7, a step down to 80 kg"
    );
    assert_eq!(
        said(&[("177.5 kg", 7)]),
        "7 at 177.5 kg: top of 5–7 reached, nothing heavier on this bar, 177.5 kg again"
    );
    assert_eq!(
        said(&[("83 kg", 6)]),
        "6 at 83 kg: inside 5–7, same load again, nearest below is 82.5 kg"
    );
}

#[test]
fn the_last_set_alone_can_decide() {
    let last = block(serde_json::json!({"progression": {"double": {"reach": "last_set"}}}));
    assert_eq!(
        propose(
            &last,
            &[performed(&[("80 kg", 5), ("80 kg", 7)], (5, 7))],
            &kit()
        )
        .load,
        Some("82.5 kg".parse().unwrap())
    );
}

#[test]
fn a_named_step_goes_to_the_nearest_that_can_be_made() {
    let by =
        |step: &str| block(serde_json::json!({"progression": {"double": {"up": {"by": step}}}}));
    let next = |step: &str| propose(&by(step), &[performed(&[("80 kg", 7)], (5, 7))], &kit()).load;
    assert_eq!(next("5 kg"), Some("85 kg".parse().unwrap()));
    // One kilogram cannot be made, and a step up is a real step.
    assert_eq!(next("1 kg"), Some("82.5 kg".parse().unwrap()));
}

#[test]
fn reps_reached_with_less_load_earn_no_step_up() {
    assert_eq!(
        said(&plain(), &[&[("80 kg", 7), ("75 kg", 7), ("70 kg", 7)]]),
        "went from 80 kg to 70 kg within the work sets: 80 kg again"
    );
    // A load that was chosen and cannot be made is followed by the nearest: that is no less.
    assert_eq!(
        said(&plain(), &[&[("81 kg", 7), ("80 kg", 7), ("80 kg", 7)]]),
        "7, 7, 7 at 80–81 kg: top of 5–7 reached, next step on this bar is 82.5 kg"
    );
    assert_eq!(
        said(&plain(), &[&[("81 kg", 7), ("80 kg", 7), ("77.5 kg", 7)]]),
        "went from 81 kg to 77.5 kg within the work sets: same load again, nearest below is 80 kg"
    );
}

/// Loads tried at or above the one that was done in the end count: a rep more at one of them never gives less.
#[test]
fn what_was_tried_and_missed_on_the_way_counts() {
    let next = |changes: serde_json::Value, missed: &[(&str, u16)], reached: &[(&str, u16)]| {
        let block = block(serde_json::json!({ "progression": changes }));
        let load = |sets| {
            propose(&block, &[performed(sets, (5, 7))], &kit())
                .load
                .unwrap()
        };
        let (less, more) = (load(missed), load(reached));
        assert!(less <= more, "{less} then {more}");
        (less.to_string(), more.to_string())
    };
    let by_the_last = serde_json::json!({"double": {"reach": "last_set", "up": {"by": "4 kg"}}});
    // Harder than what was done in the end.
    assert_eq!(
        next(
            by_the_last,
            &[("80 kg", 7), ("92.5 kg", 4), ("90 kg", 7)],
            &[("80 kg", 7), ("92.5 kg", 5), ("90 kg", 7)]
        ),
        ("87.5 kg".to_owned(), "92.5 kg".to_owned())
    );
    // The very load that was done in the end.
    assert_eq!(
        next(
            serde_json::json!({"double": {}}),
            &[("80 kg", 7), ("90 kg", 4), ("90 kg", 7)],
            &[("80 kg", 7), ("90 kg", 5), ("90 kg", 7)]
        ),
        ("87.5 kg".to_owned(), "90 kg".to_owned())
    );
}

#[test]
fn two_over_after_a_harder_load_was_left_earns_no_step_up() {
    let rule = serde_json::json!({"progression": {"two_for_two": {"up": {"by": "10 kg"}}}});
    let sessions: [&[(&str, u16)]; 2] =
        [&[("80 kg", 9)], &[("80 kg", 7), ("85 kg", 4), ("80 kg", 9)]];
    assert_eq!(
        said(&block(rule), &sessions),
        "went from 85 kg to 80 kg within the work sets: 80 kg again"
    );
}

#[test]
fn rising_sets_follow_the_first_one() {
    let rising = block(serde_json::json!({"sets": [
        {"kind": "work", "count": 3, "target": {"reps": {"from": 5, "to": 7}}, "load": {"rising": "smallest"}}
    ]}));
    assert_eq!(
        said(&rising, &[&[("80 kg", 7), ("82.5 kg", 7), ("85 kg", 7)]]),
        "7, 7, 7 at 80–85 kg: top of 5–7 reached, next step on this bar is 82.5 kg"
    );
}

#[test]
fn less_assistance_is_the_step_up() {
    let assisted = block(serde_json::json!({
        "basis": "body_mass_minus",
        "exercise": {"id": "chin-up", "name": "Chin-up", "pattern": "pull_downward", "equipment": "body"},
    }));
    assert_eq!(
        said(&assisted, &[&[("20 kg", 7)]]),
        "7 at 20 kg: top of 5–7 reached, less assistance, next step in this kit is 18.75 kg"
    );
    assert_eq!(
        said(&assisted, &[&[("20 kg", 4)]]),
        "4 at 20 kg: below 5–7, more assistance, back to 21.25 kg"
    );
    assert_eq!(
        said(&assisted, &[&[("0 kg", 7)]]),
        "7 at 0 kg: top of 5–7 reached, no less assistance in this kit, 0 kg again"
    );
    assert_eq!(
        said(&assisted, &[&[("21 kg", 6)]]),
        "6 at 21 kg: inside 5–7, same assistance again, nearest above is 21.25 kg"
    );
}

#[test]
fn without_history_the_sheet_decides() {
    assert_eq!(said(&plain(), &[]), "start of the sheet: 60 kg");
    let odd = block(serde_json::json!({"start": "61 kg"}));
    assert_eq!(
        said(&odd, &[]),
        "start of the sheet: 61 kg, nearest below is 60 kg"
    );
    let light = block(serde_json::json!({"start": "15 kg"}));
    assert_eq!(
        said(&light, &[]),
        "the kit makes nothing as light as 15 kg, its lightest is 20 kg: take that only if it is light for you"
    );
    let bare = block(serde_json::json!({"start": null}));
    assert_eq!(
        propose(&bare, &[], &kit()).because,
        Because::GuidedStart {
            to: Load::whole_kg(20)
        }
    );
    let unloaded = block(serde_json::json!({"basis": "unloaded"}));
    assert_eq!(propose(&unloaded, &[], &kit()).because, Because::NoLoad {});
}

#[test]
fn without_a_start_the_first_of_listed_loads_is_where_to_begin() {
    let listed = block(serde_json::json!({"start": null, "sets": [
        {"kind": {"ramp_up": {"shares": ["50 %"]}}, "count": 1, "target": {"reps": 5}},
        {"kind": "work", "count": 2, "target": {"reps": 5}, "load": {"list": ["70 kg", "80 kg"]}},
    ]}));
    assert_eq!(said(&listed, &[]), "start of the sheet: 70 kg");
}

#[test]
fn other_shapes_are_not_compared() {
    let mut other = performed(&[("100 kg", 7)], (5, 7));
    other.shape.push_str(" other");
    assert_eq!(
        propose(&plain(), &[other], &kit()).load,
        Some(Load::whole_kg(60))
    );
}

#[test]
fn a_written_load_never_moves() {
    let written = block(serde_json::json!({"progression": "as_written"}));
    assert_eq!(said(&written, &[&[("80 kg", 7)]]), "as written: 60 kg");
}

#[test]
fn the_fixed_step_needs_every_rep() {
    let fixed = block(serde_json::json!({"progression": {"fixed": {}}}));
    assert_eq!(
        said(&fixed, &[&[("80 kg", 5), ("80 kg", 5)]]),
        "every rep done at 80 kg: next step on this bar is 82.5 kg"
    );
    assert_eq!(
        said(&fixed, &[&[("80 kg", 5), ("80 kg", 4)]]),
        "not every rep done at 80 kg: same load again"
    );
}

#[test]
fn a_share_of_the_estimate_needs_an_estimate() {
    let share = block(serde_json::json!({"progression": {"share_of_e1rm": {"share": "80 %"}}}));
    assert_eq!(
        said(&share, &[&[("90 kg", 5)]]),
        "80 % of the estimated maximum 105 kg, nearest below is 82.5 kg"
    );
    let none = "no estimate of the maximum yet: a step down to 47.5 kg";
    assert_eq!(said(&share, &[&[("60 kg", 0)]]), none);
}

#[test]
fn reserve_steers_both_ways() {
    let steered = block(serde_json::json!({"progression": {"by_reserve": {"aim": 2}}}));
    let said = |reserve: Option<i64>| {
        let mut last = performed(&[("80 kg", 5)], (5, 7));
        last.sets[0].reserve = reserve.map(|r| Rir::new(r).unwrap());
        propose(&steered, &[last], &kit()).because.to_string()
    };
    assert_eq!(
        said(Some(3)),
        "3 left at 80 kg, 2 aimed at: next step on this bar is 82.5 kg"
    );
    assert_eq!(
        said(Some(2)),
        "2 left at 80 kg, as aimed at: same load again"
    );
    assert_eq!(
        said(Some(1)),
        "only 1 left at 80 kg, 2 aimed at: a step down to 77.5 kg"
    );
    assert_eq!(
        said(None),
        "no reps in reserve were said at 80 kg: same load again"
    );
}

#[test]
fn sets_that_a_rule_cannot_judge_keep_their_load() {
    let mut staged = performed(&[("30 kg", 8), ("60 kg", 8)], (8, 8));
    let kinds = [Unfed::RampUp, Unfed::Staged];
    of_kinds(&mut staged, &kinds);
    let block = block(serde_json::json!({"sets": [
        {"kind": {"ramp_up": {"shares": ["50 %"]}}, "count": 1, "target": {"reps": 8}},
        {"kind": "work", "count": 1, "target": {"stages": [{"hold": {"seconds": 10}}]}},
    ]}));
    staged.shape = block.shape();
    assert_eq!(
        propose(&block, &[staged], &kit()).because.to_string(),
        "60 kg last time: same load again"
    );
}

#[test]
fn of_sets_that_a_rule_cannot_judge_the_first_behind_the_ramp_ups_counts() {
    let block = block(serde_json::json!({"sets": [
        {"kind": {"ramp_up": {"shares": ["40 %", "60 %"]}}, "count": 2, "target": {"reps": 8}},
        {"kind": "work", "count": 1, "target": {"stages": [{"hold": {"seconds": 10}}]}},
    ]}));
    let sets = [("25 kg", 8), ("35 kg", 8), ("60 kg", 8), ("50 kg", 8)];
    let mut last = performed(&sets, (8, 8));
    let kinds = [Unfed::RampUp, Unfed::RampUp, Unfed::Staged, Unfed::Staged];
    of_kinds(&mut last, &kinds);
    last.shape = block.shape();
    let next = propose(&block, &[last.clone()], &kit());
    assert_eq!(next.load, Some(Load::whole_kg(60)));
    // Ramp-ups that were passed over are not counted behind.
    last.sets.drain(..2);
    let next = propose(&block, &[last], &kit());
    assert_eq!(next.load, Some(Load::whole_kg(60)));
}

/// Sets that no rule judges, each of a kind.
pub(in crate::strength) fn of_kinds(performance: &mut Performance, kinds: &[Unfed]) {
    for (set, kind) in performance.sets.iter_mut().zip(kinds) {
        (set.work, set.unfed) = (false, Some(*kind));
    }
}

#[test]
fn a_because_survives_the_file() {
    let proposal = propose(&plain(), &[performed(&[("82.5 kg", 7)], (5, 7))], &kit());
    let text = serde_json::to_string(&proposal).unwrap();
    assert!(text.contains("\"top_reached\""), "{text}");
    assert_eq!(serde_json::from_str::<Proposal>(&text).unwrap(), proposal);
    assert_eq!(
        proposal.because.said(Unit::Lb, &LoadBasis::External),
        "7 at 181.88 lb: top of 5–7 reached, next step on this bar is 187.39 lb"
    );
    assert_eq!(proposal.block, BlockId(Uuid::from_u128(1)));
}
