//! Checks of a sheet made light.

use super::*;
use crate::kit::Kit;
use crate::sheet::{LoadPolicy, SetKey, Sheet, SheetId, unroll};
use crate::strength::{Base, Curve, DoneSet, Proposal, Today, propose, set_load};
use crate::units::{Load, Reps, Share, Unit};
use chrono::NaiveDate;

fn light(load: u8, sets: u8) -> LightWeek {
    let monday = Monday::of(NaiveDate::from_ymd_opt(2026, 1, 5).unwrap());
    LightWeek::new(4, monday, Share::percent(load), Share::percent(sets)).unwrap()
}

/// A sheet of one block with those lines of sets.
fn sheet(sets: serde_json::Value) -> Sheet {
    let block = serde_json::json!({
        "id": uuid::Uuid::from_u128(1),
        "exercise": {"id": "front-squat", "name": "Front squat", "pattern": "squat", "equipment": "barbell"},
        "role": "strength",
        "sets": sets,
        "basis": "external",
        "start": "80 kg",
        "rest": 150,
        "rest_after": 180,
    });
    serde_json::from_value(serde_json::json!({
        "id": SheetId(uuid::Uuid::from_u128(3)),
        "version": uuid::Uuid::from_u128(4),
        "written": "2026-01-05T09:00:00+01:00",
        "name": "Lower A",
        "groups": [{"straight": block}],
    }))
    .unwrap()
}

fn lightened(sets: serde_json::Value, light: LightWeek) -> (Sheet, Option<Load>) {
    let (sheet, proposal) = with_proposal(sets, light);
    (sheet, proposal.load)
}

fn with_proposal(sets: serde_json::Value, light: LightWeek) -> (Sheet, Proposal) {
    let kit = Kit::starter(Unit::Kg);
    let sheet = sheet(sets);
    let proposals: Vec<_> = sheet
        .blocks()
        .map(|block| {
            propose(
                block,
                &Today {
                    history: &[],
                    kit: &kit,
                    now: sheet.written,
                    curve: Curve::default(),
                    body_mass: None,
                },
            )
        })
        .collect();
    let (sheet, mut proposals) = lighten(&sheet, &proposals, &light, &kit);
    sheet.check().unwrap();
    (sheet, proposals.remove(0))
}

fn counts(sheet: &Sheet) -> Vec<u8> {
    let block = sheet.blocks().next().unwrap();
    block.sets.iter().map(|sets| sets.count).collect()
}

#[test]
fn work_sets_are_taken_away_from_the_end_and_one_is_left() {
    let ramp = serde_json::json!({"kind": {"ramp_up": {"shares": ["50 %"]}}, "count": 2, "target": {"reps": 4}});
    let work =
        |count: u8| serde_json::json!({"kind": "work", "count": count, "target": {"reps": 5}});
    let back_off = serde_json::json!({"kind": {"back_off": {"share": "80 %"}}, "count": 2, "target": {"reps": 8}});
    let lines = serde_json::json!([ramp, work(3), back_off]);
    // Of five work sets: 60 % are three, 50 % round up to three, 100 % are all, 30 % are 1.5 and so two.
    for (share, left) in [
        (100, vec![2, 3, 2]),
        (80, vec![2, 3, 1]),
        (60, vec![2, 3]),
        (50, vec![2, 3]),
        (30, vec![2, 2]),
    ] {
        let (sheet, _) = lightened(lines.clone(), light(90, share));
        assert_eq!(counts(&sheet), left, "{share} %");
    }
    let (one, _) = lightened(serde_json::json!([work(1)]), light(90, 30));
    assert_eq!(counts(&one), [1]);
}

#[test]
fn proposed_and_listed_loads_are_lighter_and_can_be_made() {
    let listed = serde_json::json!([{
        "kind": "work", "count": 3, "target": {"reps": 5},
        "load": {"list": ["60 kg", "82.5 kg"]},
    }]);
    let (sheet, load) = lightened(listed, light(90, 100));
    // 90 % of 80 kg are 72 kg, of 60 kg 54 kg, of 82.5 kg 74.25 kg; the bar goes by 2.5 kg.
    assert_eq!(load, Some("70 kg".parse().unwrap()));
    let listed = LoadPolicy::List(vec!["52.5 kg".parse().unwrap(), "72.5 kg".parse().unwrap()]);
    assert_eq!(sheet.blocks().next().unwrap().sets[0].load, listed);
}

#[test]
fn shares_of_the_maximum_are_smaller_and_no_outcome_earns_a_step() {
    let lines = serde_json::json!([
        {"kind": "work", "count": 1, "target": {"reps": 5}, "load": {"share_of_e1rm": "82.5 %"}},
        {"kind": "work", "count": 1, "target": {"reps": 5}, "load": {"rising_by_outcome": {"large": {"by": "5 kg"}}}},
        {"kind": "work", "count": 1, "target": {"reps": 5}, "load": {"share_of_top": ["80 %"]}},
    ]);
    let (sheet, _) = lightened(lines, light(85, 100));
    let policies: Vec<LoadPolicy> = sheet
        .blocks()
        .flat_map(|block| block.sets.iter().map(|sets| sets.load.clone()))
        .collect();
    // 85 % of 82.5 % are 70.125 %, cut to two decimals.
    assert_eq!(
        policies[0],
        LoadPolicy::ShareOfE1rm("70.12 %".parse().unwrap())
    );
    assert!(matches!(policies[1], LoadPolicy::Rising(_)));
    assert!(matches!(policies[2], LoadPolicy::ShareOfTop(_)));
}

/// Worked by hand: of 80 kg 90 % are 70 kg on this bar, and 70 % of them 49 kg. Of a maximum of 100 kg 63 % are 63 kg.
#[test]
fn a_share_of_a_load_that_is_light_already_is_as_usual() {
    let lines = serde_json::json!([
        {"kind": "work", "count": 1, "target": {"reps": 3}},
        {"kind": "work", "count": 1, "target": {"reps": 8}, "load": {"share_of_e1rm": "70 %"}},
    ]);
    let (sheet, proposal) = with_proposal(lines, light(90, 100));
    let block = sheet.blocks().next().unwrap();
    let eights = unroll(&sheet)
        .into_iter()
        .find(|set| set.key.line == 1)
        .unwrap();
    let triple = |at: &str| DoneSet {
        key: SetKey {
            line: 0,
            ..eights.key
        },
        load: Some(at.parse().unwrap()),
        reps: Some(Reps::saturating(3)),
        reserve: None,
    };
    let said = |done: &[DoneSet], e1rm: Option<Load>| {
        let kit = Kit::starter(Unit::Kg);
        let base = Base::from(&proposal);
        let next = set_load(block, &eights, base, done, e1rm, &kit);
        next.because.to_string()
    };
    assert_eq!(
        said(&[], None),
        "no estimate of the maximum yet: 70 % of the work load 70 kg, nearest below is 47.5 kg"
    );
    // Who took the usual load all the same did not lighten it.
    assert!(said(&[triple("80 kg")], None).contains("63 %"));
    assert_eq!(
        said(&[], Some(Load::whole_kg(100))),
        "63 % of the estimated maximum 100 kg, nearest below is 62.5 kg"
    );
}
