//! The plate plan against brute force and against going greedily from load to load, on random kits and loads.

mod common;

use common::stacks::{fewest_moves, moves};
use proptest::collection::{btree_map, vec};
use proptest::option;
use proptest::prelude::*;
use proptest::sample::select;
use stanchion::kit::{Bar, Handle, Kit, KitParts, Loading, Plan, PlatePairs, change};
use stanchion::sheet::{Equipment, Line};
use stanchion::units::{Load, Unit};
use std::collections::BTreeMap;

/// More orders of plates than this at one load are not tried out; greedy is still compared.
const ORDERS_MAX: usize = 4_000;

fn load(text: &str) -> Load {
    text.parse().unwrap()
}

/// Up to six kinds of plates in both units, up to three pairs of each.
fn plates() -> impl Strategy<Value = Vec<PlatePairs>> {
    let mass = select(vec![
        "0.5 kg", "1.25 kg", "2.5 kg", "5 kg", "7.5 kg", "10 kg", "15 kg", "20 kg", "25 kg",
        "2.5 lb", "5 lb", "10 lb", "25 lb", "35 lb", "45 lb",
    ]);
    btree_map(mass, 1..=3_u8, 1..=6).prop_map(|kinds| {
        let pair = |(mass, pairs)| PlatePairs {
            mass: load(mass),
            pairs,
        };
        kinds.into_iter().map(pair).collect()
    })
}

fn kit() -> impl Strategy<Value = Kit> {
    let collars = option::of(select(vec!["0.3 kg", "5 kg", "1.25 lb"]));
    (plates(), select(vec!["20 kg", "45 lb", "7.3 kg"]), collars, 1..=2_u8).prop_map(
        |(plates, bar, collars, count)| {
            let bar = |name: &str, mass| Bar {
                name: Line::new(name).unwrap(),
                mass: load(mass),
                collars: collars.map(load),
            };
            Kit::new(KitParts {
                unit: Unit::Kg,
                bars: vec![bar("long bar", bar_mass(bar_text(&bar_name(bar)))) ],
                plates,
                dumbbells: vec![],
                handles: Some(Handle {
                    mass: load("2.5 kg"),
                    count,
                }),
                stacks: vec![],
                bands: vec![],
                smallest_step: load("1.25 kg"),
            })
            .unwrap()
        },
    )
}
