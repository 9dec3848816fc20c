//! Generators of kits.

use super::quantities::{line, unit};
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;
use rust_decimal::Decimal;
use stanchion::kit::{Bar, Handle, Kit, KitParts, PlatePairs, Stack};
use stanchion::units::{Load, Unit};

/// A mass from 0.25 to 50 in one of the units.
fn mass() -> impl Strategy<Value = Load> {
    (1..=200_i64, unit())
        .prop_map(|(quarters, unit)| Load::new(Decimal::new(quarters * 25, 2), unit).unwrap())
}

fn stack() -> impl Strategy<Value = Stack> {
    let add_ons = vec(mass(), 0..3);
    (line(), 0..20_u16, 1..10_u16, 1..30_u16, add_ons).prop_map(
        |(name, first, step, steps, add_ons)| Stack {
            name,
            first: Load::whole_kg(first),
            step: Load::whole_kg(step),
            last: Load::whole_kg(first + step * steps),
            add_ons,
        },
    )
}

fn bar() -> impl Strategy<Value = Bar> {
    (line(), mass(), option::of(mass())).prop_map(|(name, mass, collars)| Bar {
        name,
        mass,
        collars,
    })
}

fn handle() -> impl Strategy<Value = Handle> {
    (mass(), 1..=2_u8).prop_map(|(mass, count)| Handle { mass, count })
}

fn plates() -> impl Strategy<Value = Vec<PlatePairs>> {
    vec((1..=40_i64, 1..=3_u8), 0..5).prop_map(|kinds| {
        let mut plates: Vec<PlatePairs> = Vec::new();
        for (halves, pairs) in kinds {
            let mass = Load::new(Decimal::new(halves * 5, 1), Unit::Kg).unwrap();
            if plates.iter().all(|there| there.mass != mass) {
                plates.push(PlatePairs { mass, pairs });
            }
        }
        plates
    })
}

/// A kit that holds together.
pub fn kit() -> BoxedStrategy<Kit> {
    (
        (unit(), mass()),
        vec(bar(), 0..3),
        plates(),
        vec(mass(), 0..6),
        option::of(handle()),
        vec(stack(), 0..2),
        vec(line(), 0..3),
    )
        .prop_map(
            |((unit, smallest_step), bars, plates, dumbbells, handles, stacks, bands)| {
                Kit::new(KitParts {
                    unit,
                    bars,
                    plates,
                    dumbbells,
                    handles,
                    stacks,
                    bands,
                    smallest_step,
                })
                .unwrap()
            },
        )
        .boxed()
}
