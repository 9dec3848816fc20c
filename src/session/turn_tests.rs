//! Whose turn it is, told by small circuits.

use crate::session::tests::Gym;
use crate::session::{Amount, Done, What};
use crate::units::Reps;
use serde_json::{Value, json};
use uuid::Uuid;

fn block(n: u128, id: &str, name: &str) -> Value {
    json!({
        "id": Uuid::from_u128(n),
        "exercise": {"id": id, "name": name, "pattern": "squat", "equipment": "barbell"},
        "role": "strength",
        "sets": [{"kind": "work", "count": 2, "target": {"reps": 5}}],
        "basis": "external", "rest": 90, "rest_after": 120,
    })
}

/// A session of these groups.
fn on(groups: &[Value]) -> Gym {
    let sheet = json!({
        "id": Uuid::from_u128(1),
        "version": Uuid::from_u128(2),
        "written": "2026-03-01T08:00:00+01:00",
        "name": "Lower A",
        "groups": groups,
    });
    Gym::of(5, serde_json::from_value(sheet).unwrap())
}

/// What is said of each set as it comes, all of them logged.
fn turns(mut gym: Gym) -> Vec<Option<String>> {
    let mut said = Vec::new();
    while let Some(set) = gym.session.state().current().map(|slot| slot.planned.key) {
        said.push(gym.session.state().turn(set).map(|turn| turn.said()));
        let done = Done {
            load: None,
            amount: Amount::Reps(Reps::saturating(5)),
            reserve: None,
        };
        let what = What::SetDone {
            set,
            done,
            proposed: None,
        };
        gym.act(what).unwrap();
    }
    said
}

fn some(said: &[&str]) -> Vec<Option<String>> {
    said.iter().map(|said| Some((*said).to_owned())).collect()
}

#[test]
fn a_pair_says_who_follows_and_which_set_is_the_last() {
    let pair = json!({"pair": {
        "blocks": [block(10, "front-squat", "Front squat"), block(11, "row", "Row")],
        "between": 30,
    }});
    let said = [
        "pair 1 of 2 · then Row",
        "pair 2 of 2 · then Front squat",
        "pair 1 of 2 · then Row",
        "pair 2 of 2 · its last set",
    ];
    assert_eq!(turns(on(&[pair])), some(&said));
}

#[test]
fn neither_what_is_over_nor_another_group_follows() {
    let pair = json!({"pair": {
        "blocks": [block(10, "front-squat", "Front squat"), block(11, "row", "Row")],
        "between": 30,
    }});
    let alone = json!({"straight": block(12, "plank", "Plank")});
    let mut gym = on(&[pair, alone]);
    // Both sets of the row are passed over: the squat follows on itself, and then nothing of the pair.
    let rows = gym
        .session
        .state()
        .slots
        .iter()
        .map(|slot| slot.planned.key);
    let rows: Vec<_> = rows
        .filter(|key| key.block.0 == Uuid::from_u128(11))
        .collect();
    for set in rows {
        gym.act(What::SetSkipped { set }).unwrap();
    }
    let said = [
        "pair 1 of 2 · then Front squat",
        "pair 1 of 2 · its last set",
    ];
    assert_eq!(turns(gym)[..2], some(&said));
}

#[test]
fn a_circuit_of_three_goes_straight_on_where_there_is_no_rest_between() {
    let circuit = json!({"circuit": {
        "blocks": [
            block(10, "front-squat", "Front squat"),
            block(11, "row", "Row"),
            block(12, "plank", "Plank"),
        ],
        "between": 0,
    }});
    let said = [
        "circuit 1 of 3 · straight on: Row",
        "circuit 2 of 3 · straight on: Plank",
        "circuit 3 of 3 · then Front squat",
    ];
    assert_eq!(turns(on(&[circuit]))[..3], some(&said));
}

#[test]
fn a_block_alone_has_no_turn() {
    let alone = json!({"straight": block(10, "front-squat", "Front squat")});
    assert_eq!(turns(on(&[alone])), [None, None]);
}
