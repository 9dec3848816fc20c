//! A front squat on a sheet of its own, for checks of one prescription.

use serde_json::json;
use stanchion::sheet::{Block, PlannedSet, Sheet, unroll};
use uuid::Uuid;

/// A block of a front squat with these lines of sets and this rule.
pub fn block(sets: &serde_json::Value, progression: &serde_json::Value) -> Block {
    serde_json::from_value(json!({
        "id": Uuid::from_u128(1),
        "exercise": {"id": "front-squat", "name": "Front squat", "pattern": "squat", "equipment": "barbell"},
        "role": "strength",
        "sets": sets,
        "basis": "external",
        "rest": 150,
        "rest_after": 180,
        "progression": progression,
    }))
    .unwrap()
}

/// The planned sets of a sheet that holds this block alone.
pub fn planned(block: &Block) -> Vec<PlannedSet> {
    let sheet: Sheet = serde_json::from_value(json!({
        "id": Uuid::from_u128(2),
        "version": Uuid::from_u128(3),
        "written": "2026-01-05T18:00:00+01:00",
        "name": "Lower A",
        "groups": [{"straight": block}],
    }))
    .unwrap();
    unroll(&sheet)
}
