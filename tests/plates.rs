//! The plate plan against brute force and against going greedily from load to load, on random kits and loads.

#[path = "common/stacks.rs"]
mod stacks;

use proptest::collection::{btree_map, vec};
use proptest::option;
use proptest::prelude::*;
use proptest::sample::select;
use proptest::test_runner::{Config, TestRunner};
use rust_decimal::Decimal;
use stacks::{Stack, fewest_moves, orders};
use stanchion::kit::{Bar, Handle, Kit, KitParts, Loading, PlatePairs, change};
use stanchion::sheet::{Equipment, Line};
use stanchion::units::{Load, Unit};
use std::cell::Cell;

/// Where one load has more orders of plates than this, they are not all tried out.
const ORDERS_MAX: usize = 5_000;

/// A billionth of a kilogram: loads are told apart by no less.
const NANO: i128 = 100_000_000;

fn load(text: &str) -> Load {
    text.parse().unwrap()
}

/// A mass in 10⁻¹⁷ kg, exactly.
fn exact(load: Load) -> i128 {
    let fine = load.kg() * Decimal::from(100_000_000_000_000_000_i64);
    let fine = fine.normalize();
    assert_eq!(fine.scale(), 0, "{load} is finer than a load can be");
    fine.mantissa()
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
    let bar = select(vec!["20 kg", "45 lb", "7.3 kg"]);
    let collars = option::of(select(vec!["0.3 kg", "5 kg", "1.25 lb"]));
    (plates(), bar, collars, 1..=2_u8).prop_map(|(plates, bar, collars, count)| {
        Kit::new(KitParts {
            unit: Unit::Kg,
            bars: vec![Bar {
                name: Line::new("long bar").unwrap(),
                mass: load(bar),
                collars: collars.map(load),
            }],
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
    })
}

/// A run of loads on a bar or on handles, and what lies there before.
#[derive(Debug, Clone)]
struct Case {
    kit: Kit,
    equipment: Equipment,
    loads: Vec<Load>,
    on_bar: Option<Loading>,
}

impl Case {
    /// Mass without plates, and for each kind of plate its mass and how many there are for one side.
    fn side(&self) -> (i128, Vec<(i128, u8)>) {
        let parts = self.kit.parts();
        let (empty, at_once) = match (self.equipment, &parts.handles) {
            (Equipment::Handle, Some(handle)) => (exact(handle.mass), handle.count),
            _ => {
                let bar = &parts.bars[0];
                (exact(bar.mass) + bar.collars.map_or(0, exact), 1)
            }
        };
        let plates = parts.plates.iter();
        let kinds = plates.map(|kind| (exact(kind.mass), kind.pairs / at_once));
        (empty, kinds.collect())
    }

    fn stack(&self, loading: &Loading) -> Stack {
        let plates = &self.kit.parts().plates;
        let place = |mass: &Load| plates.iter().position(|own| own.mass == *mass).unwrap();
        loading.per_side.iter().map(place).collect()
    }

    /// The moves of going to each load by its fewest plates, whatever comes after.
    fn greedy(&self) -> usize {
        let loading = |load: &Load| self.kit.loading(self.equipment, *load).unwrap();
        let mut at = self.on_bar.clone().unwrap_or_else(|| Loading {
            per_side: vec![],
            ..loading(&self.loads[0])
        });
        let mut moved = 0;
        for load in &self.loads {
            let next = loading(load);
            let step = change(&at, &next);
            moved += step.off.len() + step.on.len();
            at = next;
        }
        moved
    }

    /// The fewest moves by trying every order of every set of plates; none where there are too many.
    fn by_brute_force(&self) -> Option<usize> {
        let (empty, kinds) = self.side();
        let each = self.loads.iter().map(|load| {
            let side = (exact(*load) - empty) / 2;
            orders(&kinds, side, NANO / 4, ORDERS_MAX)
        });
        let each: Vec<Vec<Stack>> = each.collect::<Option<_>>()?;
        let start = self.on_bar.as_ref().map_or(vec![], |on| self.stack(on));
        Some(fewest_moves(&start, &each))
    }
}

fn case(loads_max: usize) -> impl Strategy<Value = Case> {
    let picks = vec(0..10_000_usize, 1..=loads_max);
    let before = option::of((0..10_000_usize, any::<bool>()));
    (kit(), any::<bool>(), picks, before).prop_map(|(kit, handle, picks, before)| {
        let equipment = if handle {
            Equipment::Handle
        } else {
            Equipment::Barbell
        };
        let all = kit.loads(equipment);
        let loads = picks.iter().map(|pick| all[pick % all.len()]).collect();
        let on_bar = before.and_then(|(pick, turned)| {
            let mut lies = kit.loading(equipment, all[pick % all.len()])?;
            if turned {
                lies.per_side.reverse();
            }
            Some(lies)
        });
        Case {
            kit,
            equipment,
            loads,
            on_bar,
        }
    })
}

#[test]
fn the_plan_moves_as_few_plates_as_brute_force_finds() {
    let compared = Cell::new(0);
    let mut runner = TestRunner::new(Config::with_cases(400));
    runner
        .run(&case(5), |case| {
            let plan = case
                .kit
                .plan(case.equipment, case.on_bar.as_ref(), &case.loads);
            prop_assert!(plan.exact);
            if let Some(fewest) = case.by_brute_force() {
                compared.set(compared.get() + 1);
                prop_assert_eq!(plan.moved, fewest);
            }
            Ok(())
        })
        .unwrap();
    // The orders are tried out for most cases, or the test would say little.
    assert!(compared.get() >= 200, "only {} compared", compared.get());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn the_plan_is_never_worse_than_greedy(case in case(40)) {
        let plan = case.kit.plan(case.equipment, case.on_bar.as_ref(), &case.loads);
        prop_assert!(plan.moved <= case.greedy());
    }

    #[test]
    fn a_plan_keeps_to_its_loads_its_plates_and_its_count(case in case(8)) {
        let plan = case.kit.plan(case.equipment, case.on_bar.as_ref(), &case.loads);
        let (empty, kinds) = case.side();
        let mut at = case.on_bar.clone();
        let mut moved = 0;
        prop_assert_eq!(plan.loadings.len(), case.loads.len());
        for ((loading, step), load) in plan.loadings.iter().zip(&plan.changes).zip(&case.loads) {
            let loading = loading.clone().expect("a listed load can be made");
            let stack = case.stack(&loading);
            // Exactly the load, or where no written load is that exact, to half a billionth of a kilogram.
            let mass = empty + 2 * stack.iter().map(|&kind| kinds[kind].0).sum::<i128>();
            prop_assert!((mass - exact(*load)).abs() <= NANO / 2);
            if mass % NANO == 0 {
                prop_assert_eq!(mass, exact(*load));
            }
            for (kind, &(_, most)) in kinds.iter().enumerate() {
                let used = stack.iter().filter(|&&on| on == kind).count();
                prop_assert!(used <= usize::from(most));
            }
            let from = at.unwrap_or_else(|| Loading { per_side: vec![], ..loading.clone() });
            let step = step.as_ref().expect("a loading has its change");
            prop_assert_eq!(step, &change(&from, &loading));
            moved += step.off.len() + step.on.len();
            at = Some(loading);
        }
        prop_assert_eq!(moved, plan.moved);
    }
}
