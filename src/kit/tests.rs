//! Checks of a whole kit: what it makes, what it refuses, and how it is kept.

use super::*;
use crate::sheet::{Equipment, Line};
use crate::units::{Load, Unit};
use proptest::prelude::*;

fn load(text: &str) -> Load {
    text.parse().unwrap()
}

fn edited(edit: impl FnOnce(&mut KitParts)) -> Result<Kit, UnfitKit> {
    let mut parts = Kit::starter(Unit::Kg).parts().clone();
    edit(&mut parts);
    Kit::new(parts)
}

#[test]
fn the_starter_kit_makes_every_step_in_either_unit() {
    for (unit, bar, step, count) in [
        (Unit::Kg, "20 kg", "2.5 kg", 64),
        (Unit::Lb, "45 lb", "5 lb", 72),
    ] {
        let kit = Kit::starter(unit);
        let loads = kit.loads(Equipment::Barbell);
        assert_eq!(loads[0], load(bar));
        assert_eq!(loads.len(), count, "{unit}");
        for pair in loads.windows(2) {
            assert_eq!(pair[0].plus(load(step)), pair[1]);
        }
    }
}

#[test]
fn true_pounds_keep_their_unit_and_mass() {
    let loads = Kit::starter(Unit::Lb).loads(Equipment::Barbell);
    let at = loads.iter().position(|l| l.to_string() == "225 lb");
    assert_eq!(loads[at.unwrap()].kg().to_string(), "102.05828325");
}

#[test]
fn mixed_units_are_summed_exactly() {
    let kit = edited(|parts| {
        parts.plates = vec![
            PlatePairs {
                mass: load("45 lb"),
                pairs: 1,
            },
            PlatePairs {
                mass: load("1.25 kg"),
                pairs: 1,
            },
        ];
    })
    .unwrap();
    let shown: Vec<String> = kit
        .loads(Equipment::Barbell)
        .iter()
        .map(Load::to_string)
        .collect();
    assert_eq!(
        shown,
        ["20 kg", "22.5 kg", "60.8233133 kg", "63.3233133 kg"]
    );
    let loading = kit
        .loading(Equipment::Barbell, load("63.3233133 kg"))
        .unwrap();
    assert_eq!(loading.to_string(), "45 lb + 1.25 a side");
    assert_eq!(
        kit.at_or_below(Equipment::Barbell, load("60 kg")),
        Some(load("22.5 kg"))
    );
}

#[test]
fn the_bar_named_first_is_used_and_steps_stay_on_it() {
    let kit = edited(|parts| {
        parts.bars.push(Bar {
            name: Line::new("odd bar").unwrap(),
            mass: load("21 kg"),
            collars: None,
        });
    })
    .unwrap();
    assert_eq!(
        kit.next_above(Equipment::Barbell, load("60 kg")),
        Some(load("62.5 kg"))
    );
    assert_eq!(
        kit.next_above(Equipment::Barbell, load("61 kg")),
        Some(load("63.5 kg"))
    );
    assert_eq!(
        kit.at_or_above(Equipment::Barbell, load("60.5 kg")),
        Some(load("61 kg"))
    );
    let loading = kit.loading(Equipment::Barbell, load("61 kg")).unwrap();
    assert_eq!(loading.bar.unwrap().as_str(), "odd bar");
}

#[test]
fn two_handles_share_the_plates() {
    let kit = edited(|parts| {
        parts.handles = Some(Handle {
            mass: load("2 kg"),
            count: 2,
        });
    })
    .unwrap();
    // Only 20 and 5 are there in two pairs.
    assert_eq!(
        kit.loads(Equipment::Handle),
        [2, 12, 42, 52].map(Load::whole_kg)
    );
    let loading = kit.loading(Equipment::Handle, Load::whole_kg(12)).unwrap();
    assert_eq!(loading.to_string(), "5 a side");
}

#[test]
fn a_stack_has_its_positions_and_its_add_ons() {
    let kit = edited(|parts| {
        parts.stacks = vec![Stack {
            name: Line::new("pulley").unwrap(),
            first: load("5 kg"),
            step: load("5 kg"),
            last: load("16 kg"),
            add_ons: vec![load("2.5 kg")],
        }];
    })
    .unwrap();
    let shown: Vec<String> = kit
        .loads(Equipment::Stack)
        .iter()
        .map(Load::to_string)
        .collect();
    assert_eq!(
        shown,
        ["5 kg", "7.5 kg", "10 kg", "12.5 kg", "15 kg", "17.5 kg"]
    );
}

#[test]
fn a_load_that_can_be_made_is_its_own_nearest_from_both_sides() {
    let kit = Kit::starter(Unit::Kg);
    let (bar, at) = (Equipment::Barbell, load("60 kg"));
    for found in [
        kit.at_or_below(bar, at),
        kit.at_or_above(bar, at),
        kit.nearest(bar, at),
    ] {
        assert_eq!(found, Some(at));
    }
    assert_eq!(kit.next_below(bar, at), Some(load("57.5 kg")));
    assert_eq!(kit.next_above(bar, at), Some(load("62.5 kg")));
    assert_eq!(kit.nearest(bar, load("61.3 kg")), Some(load("62.5 kg")));
}

#[test]
fn the_next_step_of_a_stack_is_on_the_same_stack() {
    let stack = |name: &str, first: &str, step: &str| Stack {
        name: Line::new(name).unwrap(),
        first: load(first),
        step: load(step),
        last: load("50 kg"),
        add_ons: vec![],
    };
    let kit = edited(|parts| {
        parts.stacks = vec![
            stack("pulley", "5 kg", "5 kg"),
            stack("low", "4 kg", "4 kg"),
        ];
    })
    .unwrap();
    let next = |from: &str| kit.next_above(Equipment::Stack, load(from));
    assert_eq!(next("15 kg"), Some(load("20 kg")));
    assert_eq!(next("12 kg"), Some(load("16 kg")));
    let below = kit.next_below(Equipment::Stack, load("16 kg"));
    assert_eq!(below, Some(load("12 kg")));
}

#[test]
fn a_loading_of_two_handles_needs_every_plate_twice() {
    let kit = edited(|parts| {
        parts.handles = Some(Handle {
            mass: load("2 kg"),
            count: 2,
        });
        parts.plates = [("5 kg", 1), ("2.5 kg", 4)]
            .map(|(mass, pairs)| PlatePairs {
                mass: load(mass),
                pairs,
            })
            .to_vec();
    })
    .unwrap();
    // One pair of 5 kg is not enough for two handles.
    let loading = kit.loading(Equipment::Handle, load("12 kg")).unwrap();
    assert_eq!(loading.per_side, [load("2.5 kg"); 2]);
    let on_bar = kit.loading(Equipment::Barbell, load("30 kg")).unwrap();
    assert_eq!(on_bar.per_side, [load("5 kg")]);
}

#[test]
fn kits_are_told_apart_by_their_parts() {
    let (kg, lb) = (Kit::starter(Unit::Kg), Kit::starter(Unit::Lb));
    assert_ne!(kg, lb);
    assert_eq!((kg.unit(), lb.unit()), (Unit::Kg, Unit::Lb));
}

#[test]
fn what_cannot_be_is_refused_with_a_sentence() {
    let said = |edit: fn(&mut KitParts)| edited(edit).unwrap_err().to_string();
    assert!(said(|p| p.smallest_step = Load::ZERO).contains("above zero"));
    assert!(said(|p| p.plates[0].pairs = 0).contains("1 to 20"));
    assert!(said(|p| p.plates[0].pairs = 21).contains("1 to 20"));
    assert!(said(|p| p.plates[0].mass = p.plates[1].mass).contains("two entries for 15 kg"));
    assert!(said(|p| p.bars = vec![p.bars[0].clone(); 9]).contains("9 bars, at most 8"));
    assert!(said(|p| p.dumbbells = vec![Load::whole_kg(5); 61]).contains("at most 60"));
    assert!(
        said(|p| p.handles = Some(Handle {
            mass: Load::whole_kg(2),
            count: 3
        }))
        .contains("1 or 2")
    );
    assert!(
        said(|p| p.stacks = vec![Stack {
            name: Line::new("pulley").unwrap(),
            first: Load::whole_kg(1),
            step: "0.001 kg".parse().unwrap(),
            last: Load::whole_kg(100),
            add_ons: vec![],
        }])
        .contains("“pulley”")
    );
}

#[test]
fn a_kit_survives_the_file_and_the_file_is_checked() {
    let kit = Kit::starter(Unit::Lb);
    let text = serde_json::to_string(&kit).unwrap();
    assert_eq!(serde_json::from_str::<Kit>(&text).unwrap(), kit);
    let bad = text.replace("\"pairs\":2", "\"pairs\":200");
    assert!(
        serde_json::from_str::<Kit>(&bad)
            .unwrap_err()
            .to_string()
            .contains("200 pairs")
    );
    let unknown = text.replace("\"bands\"", "\"belts\"");
    assert!(serde_json::from_str::<Kit>(&unknown).is_err());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn every_listed_load_has_a_loading_of_just_that_mass(
        pairs in prop::collection::vec(1..4_u8, 6),
        pounds in any::<bool>(),
    ) {
        let kit = edited(|parts| {
            for (kind, n) in parts.plates.iter_mut().zip(&pairs) {
                kind.pairs = *n;
            }
            if pounds {
                parts.plates[2].mass = load("25 lb");
            }
        })
        .unwrap();
        for wanted in kit.loads(Equipment::Barbell) {
            let loading = kit.loading(Equipment::Barbell, wanted).expect("a listed load can be made");
            let plates = loading.per_side.iter().fold(Load::ZERO, |sum, &plate| sum.plus(plate));
            prop_assert_eq!(loading.empty.plus(plates).plus(plates), wanted);
        }
    }
}
