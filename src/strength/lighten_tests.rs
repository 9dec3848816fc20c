//! Checks of the loads of a light week.

use super::*;
use crate::strength::propose::tests::{block, performed, propose};
use crate::units::Unit;
use proptest::prelude::*;

fn load(text: &str) -> Load {
    text.parse().unwrap()
}

fn light(changes: serde_json::Value, sets: &[(&str, u16)], share: u8) -> Proposal {
    let block = block(changes);
    let kit = Kit::starter(Unit::Kg);
    let mut history = performed(sets, (5, 7));
    history.shape = block.shape();
    let usual = propose(&block, &[history], &kit);
    lighten_proposal(&block, &usual, Share::percent(share), &kit)
}

#[test]
fn a_share_of_the_usual_load_is_made_at_or_below() {
    // Inside 5–7 at 82.5 kg: the same load again; 90 % of it are 74.25 kg, the bar makes 72.5 kg below.
    let proposal = light(serde_json::json!({}), &[("82.5 kg", 6)], 90);
    assert_eq!(proposal.load, Some(load("72.5 kg")));
    assert_eq!(
        proposal.because.to_string(),
        "light week: 90 % of 82.5 kg, nearest below is 72.5 kg"
    );
    let usual = light(serde_json::json!({}), &[("82.5 kg", 6)], 100);
    assert_eq!(usual.because.to_string(), "light week: 82.5 kg as usual");
    // 40 % of the bare bar are below everything there is.
    let bare = light(serde_json::json!({}), &[("20 kg", 6)], 40);
    assert_eq!(bare.load, Some(load("20 kg")));
}

/// A bar of 8 kg stands beside: the loads stay on the one of the usual load, which has no lighter one.
#[test]
fn the_lightest_is_that_of_the_bar_of_the_usual_load() {
    let mut parts = Kit::starter(Unit::Kg).parts().clone();
    let light = crate::kit::Bar {
        name: crate::sheet::Line::new("light bar").unwrap(),
        mass: load("8 kg"),
        ..parts.bars[0].clone()
    };
    parts.bars.push(light);
    let kit = Kit::new(parts).unwrap();
    let said = |equipment: &str, usual: &str| {
        let mut block = block(serde_json::json!({"start": usual}));
        block.exercise.equipment = serde_json::from_value(equipment.into()).unwrap();
        let usual = propose(&block, &[], &kit);
        let light = lighten_proposal(&block, &usual, Share::percent(40), &kit);
        light.because.to_string()
    };
    assert_eq!(
        said("barbell", "30 kg"),
        "light week: 40 % of 30 kg, the lightest with the same equipment: 20 kg"
    );
    assert_eq!(
        said("dumbbell", "6 kg"),
        "light week: 40 % of 6 kg, the lightest with the same equipment: 4 kg"
    );
}

#[test]
fn assistance_goes_up_and_what_has_no_load_stays() {
    let assisted = serde_json::json!({
        "basis": "body_mass_minus",
        "exercise": {"id": "chin-up", "name": "Chin-up", "pattern": "pull_downward", "equipment": "body"},
    });
    let proposal = light(assisted, &[("20 kg", 6)], 80);
    assert_eq!(proposal.load, Some(load("21.25 kg")));
    assert_eq!(
        proposal.because.to_string(),
        "light week: more assistance than 20 kg, 21.25 kg"
    );
    let unloaded = light(serde_json::json!({"basis": "unloaded"}), &[], 80);
    assert_eq!(unloaded.because, Because::NoLoad {});
}

proptest! {
    /// Of any load that can be made, at any share: it can be made, and it is no harder.
    #[test]
    fn no_light_load_is_harder_than_usual(at in 0..60_usize, share in 40..=100_u8, assists in any::<bool>()) {
        let kit = Kit::starter(Unit::Kg);
        let basis = if assists { "body_mass_minus" } else { "external" };
        let block = block(serde_json::json!({"basis": basis}));
        let loads = kit.loads(block.exercise.equipment);
        let usual = loads[at % loads.len()];
        let light = lighten_loads(&block, &[usual], Share::percent(share), &kit)[0];
        prop_assert!(kit.choices(block.exercise.equipment).contains(light));
        let no_harder = if assists { light >= usual } else { light <= usual };
        prop_assert!(no_harder, "{} instead of {}", light, usual);
    }
}
