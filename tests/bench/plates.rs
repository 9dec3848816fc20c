//! The plate plan for eight loads with eight kinds of plates, and two other ways to the same number of moves.

use super::stacks::{Stack, fewest_moves, orders};
use criterion::Criterion;
use pathfinding::prelude::dijkstra;
use stanchion::kit::{Bar, Kit, KitParts, PlatePairs};
use stanchion::sheet::{Equipment, Line};
use stanchion::units::{Load, Unit};
use std::hint::black_box;
use std::time::Duration;

/// Mass of one plate in grams, and pairs.
const PLATES: [(u32, u8); 8] = [
    (20_000, 2),
    (15_000, 1),
    (10_000, 1),
    (5_000, 2),
    (2_500, 1),
    (1_250, 1),
    (1_000, 1),
    (500, 1),
];
const BAR: u32 = 20_000;
/// Ramp-ups and work sets, in grams.
const LOADS: [u32; 8] = [
    40_000, 65_000, 82_500, 92_500, 100_000, 102_500, 105_000, 95_000,
];

fn load(grams: u32) -> Load {
    format!("{}.{:03} kg", grams / 1000, grams % 1000)
        .parse()
        .unwrap()
}

/// The kit, or one with at least that many pairs of each kind.
fn kit(at_least: u8) -> Kit {
    Kit::new(KitParts {
        unit: Unit::Kg,
        bars: vec![Bar {
            name: Line::new("bar").unwrap(),
            mass: load(BAR),
            collars: None,
        }],
        plates: PLATES
            .map(|(mass, pairs)| PlatePairs {
                mass: load(mass),
                pairs: pairs.max(at_least),
            })
            .to_vec(),
        dumbbells: vec![],
        handles: None,
        stacks: vec![],
        bands: vec![],
        smallest_step: load(500),
    })
    .unwrap()
}

/// Every order of every set of plates at each load, then the shortest way through all of them.
fn by_brute_force() -> usize {
    let kinds = PLATES.map(|(mass, pairs)| (i128::from(mass), pairs));
    let lists: Vec<Vec<Stack>> = LOADS
        .iter()
        .map(|load| orders(&kinds, i128::from((load - BAR) / 2), 0, 1_000_000).unwrap())
        .collect();
    fewest_moves(&vec![], &lists)
}

/// What a general solver is asked: how many loads are done, and what lies on a side.
type Node = (usize, Vec<u8>);

/// Dijkstra's algorithm over the same stacks, one plate a move.
fn by_solver() -> usize {
    let mass = |side: &[u8]| -> u32 { side.iter().map(|&kind| PLATES[usize::from(kind)].0).sum() };
    let heaviest = LOADS.iter().map(|load| (load - BAR) / 2).max().unwrap();
    let next = |(done, side): &Node| {
        let here = mass(side);
        let mut next: Vec<(Node, usize)> = Vec::new();
        if here == (LOADS[*done] - BAR) / 2 {
            next.push(((done + 1, side.clone()), 0));
        }
        if let Some((_, inside)) = side.split_last() {
            next.push(((*done, inside.to_vec()), 1));
        }
        for (kind, (one, pairs)) in (0..).zip(PLATES) {
            let used = side.iter().filter(|&&on| on == kind).count();
            if used < usize::from(pairs) && here + one <= heaviest {
                let mut with = side.clone();
                with.push(kind);
                next.push(((*done, with), 1));
            }
        }
        next
    };
    let way = dijkstra(&(0, vec![]), next, |(done, _)| *done == LOADS.len());
    way.expect("every load can be made").1
}

/// `core.plate_plan_us` and what its ratios are made of.
pub fn plan(criterion: &mut Criterion) {
    let (kit, rich) = (kit(1), kit(2));
    let loads = LOADS.map(load);
    let plan = || kit.plan(Equipment::Barbell, None, black_box(&loads));
    let found = plan();
    assert!(found.exact);
    assert_eq!(found.moved, by_brute_force());
    assert_eq!(found.moved, by_solver());

    let mut group = criterion.benchmark_group("plate_plan");
    group.bench_function("plan", |bencher| bencher.iter(plan));
    // Two pairs of each kind have 6,561 sets of plates a side: the other two ways do not get through those.
    assert!(rich.plan(Equipment::Barbell, None, &loads).exact);
    group.bench_function("rich", |bencher| {
        bencher.iter(|| rich.plan(Equipment::Barbell, None, black_box(&loads)));
    });
    group
        .sample_size(10)
        .measurement_time(Duration::from_secs(10));
    group.bench_function("bruteforce", |bencher| bencher.iter(by_brute_force));
    group.bench_function("solver", |bencher| bencher.iter(by_solver));
    group.finish();
}
