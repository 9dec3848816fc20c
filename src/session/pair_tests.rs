//! What is planned over both who share a rack: each goes by what is known of their own exercises.

use super::super::tests::Gym;
use super::super::{Session, State};
use super::*;
use crate::kit::{Kit, Loading};
use crate::sheet::Sheet;
use crate::strength::SetResult;
use crate::units::Reps;
use serde_json::json;
use uuid::Uuid;

/// A kit with one pair of 10 kg and two of 5 kg.
fn kit() -> Kit {
    serde_json::from_value(json!({
        "unit": "kg",
        "smallest_step": "1.25 kg",
        "bars": [{"name": "bar", "mass": "20 kg"}],
        "plates": [{"mass": "10 kg", "pairs": 1}, {"mass": "5 kg", "pairs": 2}],
    }))
    .unwrap()
}

/// A session of two sets at 80 % of the maximum.
fn session(n: u128) -> Session {
    let sheet: Sheet = serde_json::from_value(json!({
        "id": Uuid::from_u128(1),
        "version": Uuid::from_u128(2),
        "written": "2026-03-01T08:00:00+01:00",
        "name": "Lower A",
        "groups": [{"straight": {
            "id": Uuid::from_u128(10),
            "exercise": {"id": "front-squat", "name": "Front squat", "pattern": "squat", "equipment": "barbell"},
            "role": "strength",
            "sets": [{"kind": "work", "count": 1, "target": {"reps": 5}, "load": {"share_of_e1rm": "80 %"}}],
            "basis": "external", "rest": 90, "rest_after": 120,
        }}],
    }))
    .unwrap();
    Gym::of(n, sheet).session
}

/// Once `load`, to failure: that is the maximum.
fn once(state: &State, load: &str) -> [Performance; 1] {
    let block = state.began.sheet.blocks().next().unwrap();
    let one = Reps::saturating(1);
    [Performance {
        session: Uuid::from_u128(3),
        at: "2026-03-01T18:00:00+01:00".parse().unwrap(),
        shape: block.shape(),
        basis: Some(block.basis.clone()),
        body_mass: None,
        left: 0,
        sets: vec![SetResult {
            stretch: None,
            stages: Vec::new(),
            load: Some(load.parse().unwrap()),
            reps: one,
            low: one,
            top: one,
            reserve: None,
            work: true,
            to_limit: true,
            to_spare: false,
            unfed: None,
        }],
    }]
}

#[test]
fn each_goes_by_what_is_known_of_their_own() {
    let (mine, other) = (session(5), session(6));
    let (state, others) = (mine.state(), other.state());
    let board = |own: &str, theirs: &str| {
        let (own, theirs) = (once(state, own), once(others, theirs));
        let beside = Beside {
            state: others,
            theirs: &|_| &theirs,
            own: &|_| &own,
        };
        let slot = state.current().unwrap();
        let board = state.board_beside(slot, &kit(), &own, Some(&beside));
        board.loading.as_ref().map(Loading::to_string)
    };
    // 40 kg for both: one plate a side does for both.
    assert_eq!(board("50 kg", "50 kg").as_deref(), Some("10 a side"));
    // 40 kg and then 30 kg for the other: either way as many plates move, and the heaviest is inside.
    assert_eq!(board("50 kg", "62.5 kg").as_deref(), Some("10 a side"));
    assert_eq!(board("50 kg", "37.5 kg").as_deref(), Some("5 + 5 a side"));
}
