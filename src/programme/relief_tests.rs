//! When a light session is offered though none is planned.

use super::*;
use crate::kit::Kit;
use crate::sheet::{ExerciseId, Sheet, SheetId};
use crate::strength::{Curve, Performance, Today, propose};
use crate::units::Unit;
use chrono::{DateTime, FixedOffset, TimeDelta};
use uuid::Uuid;

fn first() -> DateTime<FixedOffset> {
    "2026-08-03T18:00:00+02:00".parse().unwrap()
}

/// Lower A: a front squat of that role.
fn sheet(role: &str) -> Sheet {
    serde_json::from_value(serde_json::json!({
        "id": SheetId(Uuid::from_u128(3)),
        "version": Uuid::from_u128(4),
        "written": "2026-01-05T09:00:00+01:00",
        "name": "Lower A",
        "groups": [{"straight": {
            "id": Uuid::from_u128(1),
            "exercise": {"id": "front-squat", "name": "Front squat", "pattern": "squat", "equipment": "barbell"},
            "role": role,
            "sets": [{"kind": "work", "count": 3, "target": {"reps": {"from": 5, "to": 7}}}],
            "basis": "external",
            "rest": 150,
            "rest_after": 180,
        }}],
    }))
    .unwrap()
}

/// Sessions of five reps to failure, four days apart, with 90 kg and so much more each time.
fn history(sessions: i64, more: i64) -> Vec<Performance> {
    let one = |n: i64| {
        Performance {
        session: Uuid::from_u128(10),
        at: first() + TimeDelta::days(4 * n),
        shape: sheet("strength").blocks().next().unwrap().shape(),
        basis: Some(crate::sheet::LoadBasis::External),
        body_mass: None,
        left: 0,
        sets: serde_json::from_value(serde_json::json!([
            {"load": format!("{} kg", 90 + more * n), "reps": 5, "low": 5, "top": 7, "reserve": 0, "work": true}
        ]))
        .unwrap(),
    }
    };
    (0..sessions).map(one).collect()
}

/// What is offered so many days after the last session; `lightened` says how many days before now sessions were light.
fn offered(sheet: &Sheet, history: &[Performance], days: i64, lightened: &[i64]) -> Option<Relief> {
    let now = history.last()?.at + TimeDelta::days(days);
    let lightened: Vec<_> = lightened
        .iter()
        .map(|ago| now - TimeDelta::days(*ago))
        .collect();
    let of = |_: &ExerciseId| history;
    let lately = Lately {
        history: &of,
        lightened: &lightened,
        curve: Curve::default(),
        now,
    };
    relief(sheet, LightWeek::usual(now), &lately)
}

#[test]
fn weeks_without_a_gain_in_main_work_offer_a_light_session() {
    let flat = history(14, 0);
    let relief = offered(&sheet("strength"), &flat, 3, &[]).unwrap();
    let said = relief.said();
    assert!(
        said.starts_with("Front squat: no gain to be seen in "),
        "{said}"
    );
    assert!(
        said.ends_with("(common practice): 90 % of the load, 50 % of the work sets."),
        "{said}"
    );
    assert!(offered(&sheet("power"), &flat, 3, &[]).is_some());
}

#[test]
fn nothing_is_offered_without_a_plateau_in_main_work_done_lately() {
    let flat = history(14, 0);
    assert_eq!(offered(&sheet("hypertrophy"), &flat, 3, &[]), None);
    assert_eq!(
        offered(&sheet("strength"), &history(14, 1), 3, &[]),
        None,
        "gains"
    );
    assert_eq!(
        offered(&sheet("strength"), &history(5, 0), 3, &[]),
        None,
        "too few"
    );
    assert_eq!(offered(&sheet("strength"), &[], 3, &[]), None);
    // After a break the load is lighter anyway.
    assert!(offered(&sheet("strength"), &flat, 14, &[]).is_some());
    assert_eq!(offered(&sheet("strength"), &flat, 15, &[]), None);
}

#[test]
fn a_light_week_is_offered_for_a_week_and_not_again_at_once() {
    let flat = history(14, 0);
    let after = |lightened: &[i64]| offered(&sheet("strength"), &flat, 3, lightened).is_some();
    assert!(after(&[0]) && after(&[6, 3]), "the week goes on");
    assert!(!after(&[7]) && !after(&[41, 2]), "that was it");
    assert!(after(&[42]));
}

/// What is begun is lighter, by the loads of the kit, and fewer sets.
#[test]
fn what_is_offered_is_lighter() {
    let (sheet, flat) = (sheet("strength"), history(14, 0));
    let kit = Kit::starter(Unit::Kg);
    let now = flat.last().unwrap().at + TimeDelta::days(3);
    let today = Today {
        history: &flat,
        kit: &kit,
        now,
        curve: Curve::default(),
        body_mass: None,
    };
    let block = sheet.blocks().next().unwrap();
    let usual = propose(block, &today);
    let light = offered(&sheet, &flat, 3, &[]).unwrap().light;
    let (lighter, proposals) = lighten(&sheet, std::slice::from_ref(&usual), &light, &kit);
    assert!(proposals[0].load < usual.load, "{}", proposals[0].because);
    assert!(
        kit.choices(block.exercise.equipment)
            .contains(proposals[0].load.unwrap())
    );
    assert_eq!(lighter.blocks().next().unwrap().sets[0].count, 2);
}
