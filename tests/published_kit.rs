//! The kit against published values. P: in the publication; D: derived from it by hand; C: common practice.

use stanchion::kit::{Bar, Kit, KitParts, PlatePairs};
use stanchion::sheet::{Equipment, Line};
use stanchion::units::{Load, Unit};

fn load(text: &str) -> Load {
    text.parse().unwrap()
}

/// The discs that the rules of the International Weightlifting Federation name, in kilograms (P).
const DISCS: [&str; 10] = [
    "25 kg", "20 kg", "15 kg", "10 kg", "5 kg", "2.5 kg", "2 kg", "1.5 kg", "1 kg", "0.5 kg",
];

/// A 20-kg bar (P) with discs, two pairs of each.
fn competition(discs: &[&str], collars: Option<&str>) -> Kit {
    Kit::new(KitParts {
        unit: Unit::Kg,
        bars: vec![Bar {
            name: Line::new("bar").unwrap(),
            mass: load("20 kg"),
            collars: collars.map(load),
        }],
        plates: discs
            .iter()
            .map(|mass| PlatePairs {
                mass: load(mass),
                pairs: 2,
            })
            .collect(),
        dumbbells: Vec::new(),
        handles: None,
        stacks: Vec::new(),
        bands: Vec::new(),
        smallest_step: load("0.5 kg"),
    })
    .unwrap()
}

/// With the small discs of 1.25 kg that gyms have in place of those below 2.5 kg (C).
fn gym() -> Kit {
    let discs = [&DISCS[..6], &["1.25 kg"]].concat();
    competition(&discs, None)
}

fn side(kit: &Kit, at: &str) -> Vec<String> {
    let loading = kit.loading(Equipment::Barbell, load(at)).unwrap();
    loading.per_side.iter().map(Load::to_string).collect()
}

/// Agreement of 1 July 1959; NIST Special Publication 811: 1 lb = 0.453 592 37 kg exactly. P.
#[test]
fn a_pound_is_exact() {
    for (pounds, kilograms) in [
        ("1 lb", "0.45359237"),
        ("2.5 lb", "1.133980925"),
        ("45 lb", "20.41165665"),
        ("225 lb", "102.05828325"),
    ] {
        assert_eq!(load(pounds).kg().to_string(), kilograms, "{pounds}");
    }
    // To six decimals, as printed there.
    let pounds = load("20 kg").amount_in(Unit::Lb).round_dp(6);
    assert_eq!(pounds.to_string(), "44.092452");
}

/// Bars of 20 kg and discs of 25, 15 and 1.25 kg: 102.5 kg is 25 + 15 + 1.25 a side (D).
#[test]
fn a_bar_is_loaded_as_in_competition() {
    assert_eq!(side(&gym(), "102.5 kg"), ["25 kg", "15 kg", "1.25 kg"]);
}

/// 61 kg on a 20-kg bar needs 20.5 kg a side: not with 1.25 kg as the smallest (D); with the 0.5-kg disc (P) it does.
#[test]
fn what_the_smallest_disc_does_not_make_cannot_be_loaded() {
    let kit = gym();
    assert_eq!(kit.loading(Equipment::Barbell, load("61 kg")), None);
    assert!(!kit.choices(Equipment::Barbell).contains(load("61 kg")));
    let below = kit.at_or_below(Equipment::Barbell, load("61 kg"));
    let above = kit.at_or_above(Equipment::Barbell, load("61 kg"));
    assert_eq!((below, above), (Some(load("60 kg")), Some(load("62.5 kg"))));
    let small = competition(&DISCS, None);
    assert_eq!(side(&small, "61 kg"), ["20 kg", "0.5 kg"]);
}

/// Two collars of 2.5 kg each (P) are a part of the bar: 25 kg is the least, and 107.5 kg takes the discs of 102.5 (D).
#[test]
fn collars_are_a_part_of_the_empty_bar() {
    let discs = [&DISCS[..6], &["1.25 kg"]].concat();
    let kit = competition(&discs, Some("5 kg"));
    assert_eq!(kit.loads(Equipment::Barbell)[0], load("25 kg"));
    assert_eq!(side(&kit, "107.5 kg"), ["25 kg", "15 kg", "1.25 kg"]);
}

/// The heaviest disc inside, both sides alike (P): for every load alone, and in a plan where no other way moves fewer.
#[test]
fn the_heaviest_disc_is_inside() {
    let kit = competition(&DISCS, Some("5 kg"));
    for at in kit.loads(Equipment::Barbell) {
        let loading = kit.loading(Equipment::Barbell, at).unwrap();
        assert!(loading.per_side.is_sorted_by(|a, b| a >= b), "{at}");
    }
    let loads = ["75 kg", "105 kg", "115 kg", "110 kg"].map(load);
    let plan = kit.plan(Equipment::Barbell, None, &loads);
    for loading in plan.loadings.iter().flatten() {
        assert!(loading.per_side.is_sorted_by(|a, b| a >= b), "{loading}");
    }
}
