//! The sums that one side of a bar can carry, and the fewest plates for each.
//!
//! Greedy loading (heaviest first) misses sums: with one pair each of 5 and three of 4, 8 a side is 4 + 4, and greedy
//! ends at 5. So all sums are found kind by kind, lightest first, each with its fewest plates.

use super::mass::{Fine, fine};
use super::parts::{PlatePairs, UnfitKit};
use crate::order;
use crate::units::{Load, Unit};
use crate::words::decimal;

/// Most different sums that one side may have.
pub const SUMS_MAX: usize = 20_000;

/// A sum that one side can carry, made of the kinds up to one layer.
#[derive(Debug, Clone, Copy)]
struct Sum {
    mass: Fine,
    /// Fewest plates that make it.
    plates: u16,
    /// How many of them are of the layer's own kind.
    used: u8,
}

/// One kind of plate with the sums of it and all lighter kinds, lightest sum first.
#[derive(Debug)]
struct Layer {
    plate: Load,
    sums: Vec<Sum>,
}

/// Everything that one side can carry.
#[derive(Debug)]
pub(super) struct Side {
    layers: Vec<Layer>,
}

const EMPTY: Sum = Sum {
    mass: 0,
    plates: 0,
    used: 0,
};

impl Side {
    /// Finds all sums, where `handles` bars are loaded alike at once.
    ///
    /// # Errors
    /// [`UnfitKit::TooManySums`] past [`SUMS_MAX`].
    pub(super) fn new(plates: &[PlatePairs], handles: u8) -> Result<Side, UnfitKit> {
        // Nothing above what a load may be.
        let most = fine(Load::whole_kg(2000)) / 2;
        let mut kinds: Vec<&PlatePairs> = plates.iter().collect();
        order::by_key(&mut kinds, |kind| kind.mass);
        let mut layers: Vec<Layer> = Vec::with_capacity(kinds.len());
        for kind in kinds {
            let below = layers.last().map_or(&[EMPTY][..], |layer| &layer.sums);
            let one = fine(kind.mass);
            let mut sums: Vec<Sum> = (0..=kind.pairs / handles.max(1))
                .flat_map(|used| {
                    below.iter().map(move |sum| Sum {
                        mass: sum.mass + one * Fine::from(used),
                        plates: sum.plates + u16::from(used),
                        used,
                    })
                })
                .filter(|sum| sum.mass <= most)
                .collect();
            // Of one mass the fewest plates first; among those as many of the heavier kind as can be.
            order::by_key(&mut sums, |sum| (sum.mass, sum.plates, u8::MAX - sum.used));
            sums.dedup_by_key(|sum| sum.mass);
            if sums.len() > SUMS_MAX {
                return Err(UnfitKit::TooManySums { most: SUMS_MAX });
            }
            layers.push(Layer {
                plate: kind.mass,
                sums,
            });
        }
        Ok(Side { layers })
    }

    /// All masses that one side can carry, lightest first, nothing among them.
    pub(super) fn masses(&self) -> impl Iterator<Item = Fine> {
        self.last().iter().map(|sum| sum.mass)
    }

    /// The lightest mass for which `reached` holds; `reached` must not turn false again as masses rise.
    pub(super) fn first_where(&self, reached: impl Fn(Fine) -> bool) -> Option<Fine> {
        let sums = self.last();
        let at = sums.partition_point(|sum| !reached(sum.mass));
        sums.get(at).map(|sum| sum.mass)
    }

    /// The fewest plates of exactly that mass, heaviest first; of several such sets the one with the heaviest plates.
    pub(super) fn plates(&self, mass: Fine) -> Option<Vec<Load>> {
        let mut left = mass;
        let mut plates = Vec::new();
        for layer in self.layers.iter().rev() {
            let at = layer
                .sums
                .binary_search_by_key(&left, |sum| sum.mass)
                .ok()?;
            let used = layer.sums[at].used;
            plates.extend(std::iter::repeat_n(layer.plate, usize::from(used)));
            left -= fine(layer.plate) * Fine::from(used);
        }
        (left == 0).then_some(plates)
    }

    fn last(&self) -> &[Sum] {
        self.layers
            .last()
            .map_or(&[EMPTY][..], |layer| &layer.sums[..])
    }

    /// The figure of a plate: bare in the unit on display, with its sign in the other.
    pub(super) fn figure(plate: Load, unit: Unit) -> String {
        if plate.unit() == unit {
            decimal(&plate.amount().normalize().to_string())
        } else {
            plate.to_string()
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use std::collections::BTreeMap;

    fn pairs(given: &[(&str, u8)]) -> Vec<PlatePairs> {
        given
            .iter()
            .map(|(mass, pairs)| PlatePairs {
                mass: mass.parse().unwrap(),
                pairs: *pairs,
            })
            .collect()
    }

    #[test]
    fn a_sum_that_greedy_misses_is_found() {
        let side = Side::new(&pairs(&[("5 kg", 1), ("4 kg", 3)]), 1).unwrap();
        let eight = side.plates(fine(Load::whole_kg(8))).unwrap();
        assert_eq!(eight, vec![Load::whole_kg(4); 2]);
    }

    #[test]
    fn fewer_plates_are_taken_where_greedy_takes_more() {
        let side = Side::new(&pairs(&[("5 kg", 1), ("4 kg", 2), ("1 kg", 3)]), 1).unwrap();
        // Greedy takes 5 + 1 + 1 + 1.
        let eight = side.plates(fine(Load::whole_kg(8))).unwrap();
        assert_eq!(eight, vec![Load::whole_kg(4); 2]);
    }

    #[test]
    fn two_handles_need_twice_the_plates() {
        let plates = pairs(&[("5 kg", 3)]);
        let five = fine(Load::whole_kg(5));
        let masses = |handles| -> Vec<Fine> {
            Side::new(&plates, handles)
                .unwrap()
                .masses()
                .map(|m| m / five)
                .collect()
        };
        assert_eq!(masses(1), [0, 1, 2, 3]);
        assert_eq!(masses(2), [0, 1]);
    }

    #[test]
    fn plates_without_end_of_sums_are_refused() {
        let plates: Vec<PlatePairs> = (0..20)
            .map(|i| PlatePairs {
                mass: format!("1.{:03} kg", 7 * i * i + 1).parse().unwrap(),
                pairs: 20,
            })
            .collect();
        assert!(matches!(
            Side::new(&plates, 1),
            Err(UnfitKit::TooManySums { .. })
        ));
    }

    /// Every set of plates, by trying them all: mass → fewest plates.
    fn by_brute_force(plates: &[PlatePairs]) -> BTreeMap<Fine, usize> {
        let mut all = BTreeMap::from([(0, 0)]);
        for kind in plates {
            let mut next: BTreeMap<Fine, usize> = BTreeMap::new();
            for (&mass, &count) in &all {
                for n in 0..=kind.pairs {
                    let mass = mass + fine(kind.mass) * Fine::from(n);
                    let count = count + usize::from(n);
                    let fewest = next.entry(mass).or_insert(count);
                    *fewest = count.min(*fewest);
                }
            }
            all = next;
        }
        all
    }

    fn some_plates() -> impl Strategy<Value = Vec<PlatePairs>> {
        let mass = prop::sample::select(vec![
            "0.5 kg", "1.25 kg", "2 kg", "2.5 kg", "3 kg", "4 kg", "5 kg", "7 kg", "10 kg",
            "1.25 lb", "2.5 lb", "5 lb", "10 lb", "45 lb",
        ]);
        prop::collection::btree_map(mass, 1..=4_u8, 0..=6).prop_map(|kinds| {
            let kinds: Vec<(&str, u8)> = kinds.into_iter().collect();
            pairs(&kinds)
        })
    }

    proptest! {
        #[test]
        fn sums_and_fewest_plates_are_those_of_brute_force(plates in some_plates()) {
            let side = Side::new(&plates, 1).unwrap();
            let found: BTreeMap<Fine, usize> = side
                .masses()
                .map(|mass| {
                    let set = side.plates(mass).expect("a listed mass has its plates");
                    assert_eq!(set.iter().map(|&plate| fine(plate)).sum::<Fine>(), mass);
                    assert!(set.is_sorted_by(|a, b| a >= b), "heaviest first");
                    for kind in &plates {
                        let used = set.iter().filter(|&&plate| plate == kind.mass).count();
                        assert!(used <= usize::from(kind.pairs), "no more than there are");
                    }
                    (mass, set.len())
                })
                .collect();
            prop_assert_eq!(found, by_brute_force(&plates));
        }
    }
}
