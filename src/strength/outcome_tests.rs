//! Checks of the loads that follow from the set before.

use crate::strength::set_load::tests::{done, lines, loads, said, work};
use serde_json::json;

#[test]
fn the_outcome_decides_the_next_step() {
    let block = lines(json!([work(
        2,
        json!({"rising_by_outcome": {"planned": {"by": "5 kg"}, "large": {"by": "10 kg"}}})
    )]));
    let said = |reps| said(&block, 1, &[done(0, 0, Some("80 kg"), reps)]);
    assert_eq!(said(6), "6 is inside 5–7: planned step to 85 kg");
    assert_eq!(said(7), "7 reaches the top of 5–7: large step to 90 kg");
    assert_eq!(said(4), "4 is below 5–7: 80 kg again");
    assert_eq!(said(3), "3 is below 5–7: 80 kg again");
    assert_eq!(said(2), "2 is far below 5–7: planned step down to 75 kg");
}

#[test]
fn rising_loads_wait_for_a_set_that_was_missed() {
    let rising = lines(json!([work(4, json!({"rising": "smallest"}))]));
    let missed = [done(0, 0, Some("80 kg"), 6), done(0, 1, Some("82.5 kg"), 4)];
    assert_eq!(said(&rising, 2, &missed), "4 is below 5–7: 82.5 kg again");
    // No step is made up for: it goes on from there.
    assert_eq!(loads(&rising, &missed)[2..], ["82.5", "85"]);
    let mut made = missed.to_vec();
    made.push(done(0, 2, Some("82.5 kg"), 5));
    assert_eq!(loads(&rising, &made)[3], "85");
    // The fewest that are asked for are enough, and falling loads fall all the same.
    assert_eq!(loads(&rising, &[done(0, 0, Some("80 kg"), 5)])[1], "82.5");
    let falling = lines(json!([work(2, json!({"falling": "smallest"}))]));
    assert_eq!(loads(&falling, &[done(0, 0, Some("80 kg"), 3)])[1], "77.5");
}

/// Of a target without width its number gives the planned step, more than that the large one; of a cluster all of its
/// portions count (common practice, no source).
#[test]
fn the_outcome_of_one_number_and_of_a_cluster() {
    let policy =
        json!({"rising_by_outcome": {"planned": {"by": "5 kg"}, "large": {"by": "10 kg"}}});
    let load_after = |mut sets: serde_json::Value, reps| {
        sets["load"] = policy.clone();
        let block = lines(json!([sets]));
        loads(&block, &[done(0, 0, Some("80 kg"), reps)])[1].clone()
    };
    let five = json!({"kind": "work", "count": 2, "target": {"reps": 5}});
    let of_five = [5, 6, 4, 2].map(|reps| load_after(five.clone(), reps));
    assert_eq!(of_five, ["85", "90", "80", "75"]);
    let cluster = json!({
        "kind": {"cluster": {"portions": 3, "pause": 20}}, "count": 2, "target": {"reps": {"from": 2, "to": 3}},
    });
    let of_cluster = [9, 6, 5, 3].map(|reps| load_after(cluster.clone(), reps));
    assert_eq!(of_cluster, ["90", "85", "80", "75"]);
}
