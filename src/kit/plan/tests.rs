//! Plans that are easily seen through.

use super::super::{Bar, KitParts, PlatePairs};
use super::*;
use crate::sheet::Line;
use crate::units::Unit;

fn load(text: &str) -> Load {
    text.parse().unwrap()
}

fn kit(plates: &[(&str, u8)]) -> Kit {
    let mut parts: KitParts = Kit::starter(Unit::Kg).parts().clone();
    parts.plates = plates
        .iter()
        .map(|(mass, pairs)| PlatePairs {
            mass: load(mass),
            pairs: *pairs,
        })
        .collect();
    Kit::new(parts).unwrap()
}

fn said(plan: &Plan) -> Vec<String> {
    let changes = plan.changes.iter();
    changes
        .map(|change| change.as_ref().map_or("?".to_owned(), ToString::to_string))
        .collect()
}

fn planned(kit: &Kit, on_bar: Option<&Loading>, loads: &[&str]) -> Plan {
    let loads: Vec<Load> = loads.iter().map(|text| load(text)).collect();
    kit.plan(Equipment::Barbell, on_bar, &loads)
}

#[test]
fn small_plates_that_stay_are_better_than_a_large_one_that_goes() {
    // The fewest plates of 40 kg are one 10 a side; with 5 and 5 only one is added for each step.
    let kit = kit(&[("10 kg", 1), ("5 kg", 3)]);
    let plan = planned(&kit, None, &["30 kg", "40 kg", "50 kg"]);
    assert_eq!(said(&plan), ["+5 each side"; 3]);
    assert_eq!((plan.moved, plan.exact), (3, true));
}

#[test]
fn what_is_needed_longest_may_lie_inside_of_something_heavier() {
    // 5 stays for both loads; 20 is only there for the first.
    let kit = kit(&[("20 kg", 1), ("5 kg", 1)]);
    let plan = planned(&kit, None, &["70 kg", "30 kg"]);
    assert_eq!(said(&plan), ["+5 + 20 each side", "off 20 each side"]);
    // Where nothing is won by it, the heaviest is inside.
    let plan = planned(&kit, None, &["70 kg", "70 kg", "60 kg"]);
    let steps = ["+20 + 5 each side", "same as before", "off 5 each side"];
    assert_eq!(said(&plan), steps);
}

#[test]
fn a_plate_may_come_off_to_go_on_again_further_out() {
    // Kept where it lies, the 20 would have to come off from under the two small ones.
    let kit = kit(&[("20 kg", 1), ("2 kg", 1), ("1 kg", 1)]);
    let plan = planned(&kit, None, &["60 kg", "66 kg", "26 kg"]);
    assert_eq!(plan.moved, 1 + 4 + 1);
    assert_eq!(said(&plan)[1], "off 20, on 2 + 1 + 20 each side");
}

#[test]
fn the_plan_goes_on_from_what_lies_on_the_bar() {
    let kit = kit(&[("20 kg", 1), ("10 kg", 2), ("5 kg", 1)]);
    let on_bar = planned(&kit, None, &["40 kg"]).loadings[0].clone().unwrap();
    assert_eq!(on_bar.to_string(), "10 a side");
    let plan = planned(&kit, Some(&on_bar), &["60 kg", "70 kg"]);
    assert_eq!(said(&plan), ["+10 each side", "+5 each side"]);
    // Of plates that are not in the kit nothing is made: they come off, and what lies outside of them too.
    let borrowed = Loading {
        per_side: ["10 kg", "7 kg", "5 kg"].map(load).to_vec(),
        ..on_bar
    };
    let plan = planned(&kit, Some(&borrowed), &["50 kg"]);
    assert_eq!(said(&plan), ["off 5 + 7, on 5 each side"]);
}

#[test]
fn what_cannot_be_made_is_passed_over() {
    let kit = kit(&[("10 kg", 1)]);
    let plan = planned(&kit, None, &["61 kg", "40 kg", "10 kg", "20 kg"]);
    assert_eq!(said(&plan), ["?", "+10 each side", "?", "off 10 each side"]);
    assert_eq!(plan.moved, 2);
    for nothing in [planned(&kit, None, &[]), planned(&kit, None, &["61 kg"])] {
        assert_eq!((nothing.moved, nothing.exact), (0, true));
    }
}

#[test]
fn between_two_bars_all_plates_come_off() {
    let mut parts = kit(&[("10 kg", 1)]).parts().clone();
    parts.bars.push(Bar {
        name: Line::new("short bar").unwrap(),
        mass: load("8 kg"),
        collars: None,
    });
    let kit = Kit::new(parts).unwrap();
    let plan = planned(&kit, None, &["40 kg", "28 kg", "40 kg"]);
    let there = "change to short bar, on 10 each side";
    let back = "change to straight bar, on 10 each side";
    assert_eq!(said(&plan), ["+10 each side", there, back]);
    assert_eq!((plan.moved, plan.exact), (5, true));
    // One bar that makes all is kept to.
    let plan = planned(&kit, None, &["28 kg", "8 kg"]);
    assert!(
        plan.loadings
            .iter()
            .flatten()
            .all(|at| at.empty == load("8 kg"))
    );
}

/// A kit with two bars and one loading of the second, 20 a side.
fn on_the_second(mass: &str, plates: &[(&str, u8)]) -> (Kit, Loading) {
    let mut parts = kit(plates).parts().clone();
    parts.bars.push(Bar {
        name: Line::new("second bar").unwrap(),
        mass: load(mass),
        collars: None,
    });
    let on_bar = Loading {
        bar: Some(parts.bars[1].name.clone()),
        empty: load(mass),
        per_side: vec![load("20 kg")],
        unit: Unit::Kg,
    };
    (Kit::new(parts).unwrap(), on_bar)
}

#[test]
fn plates_on_another_bar_are_not_the_load_though_they_would_be_on_the_right_one() {
    // 20 a side on 15 kg are 55 kg. Only the straight bar makes 60, and only the second 15.
    let (kit, on_bar) = on_the_second("15 kg", &[("20 kg", 1)]);
    let plan = planned(&kit, Some(&on_bar), &["60 kg", "15 kg"]);
    let there = "change to straight bar, on 20 each side";
    assert_eq!(said(&plan), [there, "change to second bar, empty"]);
    for (loading, mass) in plan.loadings.iter().zip(["60 kg", "15 kg"]) {
        assert_eq!(loading.as_ref().map(Loading::load), Some(load(mass)));
    }
}

#[test]
fn of_two_bars_that_weigh_the_same_the_one_that_lies_there_is_kept() {
    let (kit, on_bar) = on_the_second("20 kg", &[("20 kg", 1), ("10 kg", 1)]);
    let plan = planned(&kit, Some(&on_bar), &["60 kg", "80 kg"]);
    assert_eq!(said(&plan), ["same as before", "+10 each side"]);
    let plan = planned(&kit, Some(&on_bar), &["80 kg"]);
    assert_eq!(said(&plan), ["+10 each side"]);
}

#[test]
fn the_fewest_plates_are_kept_to_where_the_kit_is_beyond_all_bounds() {
    let kinds: Vec<(String, u8)> = (1..=20).map(|n| (format!("{n} kg"), 20)).collect();
    let kinds: Vec<(&str, u8)> = kinds.iter().map(|(mass, n)| (mass.as_str(), *n)).collect();
    let kit = kit(&kinds);
    let loads: Vec<Load> = (0..16).map(|n| Load::whole_kg(400 + 7 * n)).collect();
    let loads: Vec<Load> = loads
        .into_iter()
        .filter(|&load| kit.choices(Equipment::Barbell).contains(load))
        .collect();
    let plan = kit.plan(Equipment::Barbell, None, &loads);
    assert!(!plan.exact);
    assert!(plan.loadings.iter().all(Option::is_some));
    // What lies there makes the first load, in more plates than it needs: it stays all the same.
    let on_bar = Loading {
        per_side: vec![load("10 kg"); 19],
        ..plan.loadings[0].clone().unwrap()
    };
    assert_eq!(on_bar.load(), loads[0]);
    let plan = kit.plan(Equipment::Barbell, Some(&on_bar), &loads);
    assert!(!plan.exact);
    assert_eq!(said(&plan)[0], "same as before");
}

#[test]
fn two_pairs_of_eight_kinds_and_eight_loads_are_planned_exactly() {
    let kinds = [
        "25 kg", "20 kg", "15 kg", "10 kg", "5 kg", "2.5 kg", "1.25 kg", "0.5 kg",
    ];
    let kit = kit(&kinds.map(|mass| (mass, 2)));
    let loads = [60, 100, 130, 150, 160, 165, 170, 155].map(Load::whole_kg);
    assert!(kit.plan(Equipment::Barbell, None, &loads).exact);
}

#[test]
fn a_run_of_many_loads_is_planned_in_pieces_that_fit() {
    let kit = Kit::starter(Unit::Kg);
    let all = kit.loads(Equipment::Barbell);
    let together = kit.plan(Equipment::Barbell, None, &all[..PLANNED_TOGETHER_MAX]);
    assert!(together.exact);
    let plan = kit.plan(Equipment::Barbell, None, &all);
    assert!(!plan.exact);
    for (loading, load) in plan.loadings.iter().zip(&all) {
        assert_eq!(loading.as_ref().map(Loading::load), Some(*load));
    }
}

/// Seventeen loads are planned in two pieces, and the first piece ends where the second begins badly: here going to each
/// load by its fewest plates moves fewer. That is taken then.
#[test]
fn in_pieces_no_more_plates_move_than_by_the_fewest_plates_each() {
    let kit = kit(&[("1.25 kg", 2), ("0.5 kg", 1)]);
    let loads = [
        "22.5 kg", "20 kg", "23.5 kg", "26 kg", "25 kg", "21 kg", "22.5 kg", "23.5 kg", "22.5 kg",
        "23.5 kg", "20 kg", "21 kg", "23.5 kg", "22.5 kg", "21 kg", "26 kg", "25 kg",
    ];
    let plan = planned(&kit, None, &loads);
    assert!(!plan.exact);
    let fewest = loads.map(|at| kit.loading(Equipment::Barbell, load(at)));
    assert_eq!(plan.loadings, fewest);
    assert_eq!(
        plan.moved,
        Plan::following(None, fewest.to_vec(), false).moved
    );
}
