//! The loads to choose from, and the nearest of them to a wanted one.

use crate::order;
use crate::units::Load;
use rust_decimal::Decimal;
use std::sync::Arc;

/// Loads that can be made: a list, every multiple of a step, or any.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Choices(Inner);

#[derive(Debug, Clone, PartialEq, Eq)]
enum Inner {
    /// Rising, each once.
    Listed(Arc<[Load]>),
    /// Every multiple of a step above zero, from nothing to the largest load.
    Grid(Load),
    /// Any at all, of which the neighbours are the multiples of a step above zero.
    Any(Load),
}

impl Choices {
    /// These loads.
    pub(super) fn listed(mut loads: Vec<Load>) -> Choices {
        order::by_key(&mut loads, |load| *load);
        loads.dedup();
        Choices(Inner::Listed(loads.into()))
    }

    /// Every multiple of `step`, which is above zero.
    pub(super) fn grid(step: Load) -> Choices {
        Choices(Inner::Grid(step))
    }

    /// Any load: of what is moved nothing is known. Those that are looked for beside a load are multiples of `step`, which is
    /// above zero.
    pub(super) fn any(step: Load) -> Choices {
        Choices(Inner::Any(step))
    }

    /// The list, rising, each once; none where every multiple of a step can be made, or any load.
    #[must_use]
    pub fn list(&self) -> Option<&[Load]> {
        match &self.0 {
            Inner::Listed(loads) => Some(loads),
            Inner::Grid(_) | Inner::Any(_) => None,
        }
    }

    /// The heaviest that is not above `load`.
    #[must_use]
    pub fn at_or_below(&self, load: Load) -> Option<Load> {
        match &self.0 {
            Inner::Listed(loads) => last(&loads[..loads.partition_point(|&l| l <= load)]),
            Inner::Grid(step) | Inner::Any(step) => multiple(*step, steps(*step, load).floor()),
        }
    }

    /// The lightest that is not below `load`.
    #[must_use]
    pub fn at_or_above(&self, load: Load) -> Option<Load> {
        match &self.0 {
            Inner::Listed(loads) => loads.get(loads.partition_point(|&l| l < load)).copied(),
            Inner::Grid(step) | Inner::Any(step) => multiple(*step, steps(*step, load).ceil()),
        }
    }

    /// The lightest above `load`.
    #[must_use]
    pub fn next_above(&self, load: Load) -> Option<Load> {
        match &self.0 {
            Inner::Listed(loads) => loads.get(loads.partition_point(|&l| l <= load)).copied(),
            Inner::Grid(step) | Inner::Any(step) => {
                multiple(*step, steps(*step, load).floor() + Decimal::ONE)
            }
        }
    }

    /// The heaviest below `load`.
    #[must_use]
    pub fn next_below(&self, load: Load) -> Option<Load> {
        match &self.0 {
            Inner::Listed(loads) => last(&loads[..loads.partition_point(|&l| l < load)]),
            Inner::Grid(step) | Inner::Any(step) => {
                multiple(*step, steps(*step, load).ceil() - Decimal::ONE)
            }
        }
    }

    /// The nearest to `load`; of two as near, the lighter, which is the safe side.
    #[must_use]
    pub fn nearest(&self, load: Load) -> Option<Load> {
        match (self.at_or_below(load), self.at_or_above(load)) {
            (Some(below), Some(above)) => {
                let down = load.kg() - below.kg();
                let up = above.kg() - load.kg();
                Some(if up < down { above } else { below })
            }
            (below, above) => below.or(above),
        }
    }

    /// True when exactly `load` can be made.
    #[must_use]
    pub fn contains(&self, load: Load) -> bool {
        matches!(self.0, Inner::Any(_)) || self.at_or_below(load) == Some(load)
    }
}

fn last(loads: &[Load]) -> Option<Load> {
    loads.last().copied()
}

/// How many steps make `load`, with a fraction where they do not.
fn steps(step: Load, load: Load) -> Decimal {
    load.kg() / step.kg()
}

/// So many steps; none below zero or above the largest load.
fn multiple(step: Load, count: Decimal) -> Option<Load> {
    Load::new(step.amount().checked_mul(count)?, step.unit()).ok()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn kg(text: &str) -> Load {
        text.parse().unwrap()
    }

    fn some_load() -> impl Strategy<Value = Load> {
        (0..40_000_i64).prop_map(|n| Load::new(Decimal::new(n, 2), crate::units::Unit::Kg).unwrap())
    }

    #[test]
    fn of_two_as_near_the_lighter_is_taken() {
        let choices = Choices::listed(vec![kg("40 kg"), kg("42.5 kg"), kg("42.5 kg")]);
        assert_eq!(choices.nearest(kg("41.25 kg")), Some(kg("40 kg")));
        assert_eq!(choices.nearest(kg("41.26 kg")), Some(kg("42.5 kg")));
        assert_eq!(choices.list().unwrap().len(), 2);
        assert_eq!(Choices::listed(vec![]).nearest(kg("40 kg")), None);
    }

    #[test]
    fn any_load_is_its_own_and_has_neighbours_on_a_grid() {
        let any = Choices::any(kg("1.25 kg"));
        assert!(any.contains(kg("24 kg")) && any.list().is_none());
        assert_eq!(any.at_or_below(kg("24 kg")), Some(kg("23.75 kg")));
        assert_eq!(any.next_above(kg("24 kg")), Some(kg("25 kg")));
    }

    #[test]
    fn a_grid_has_every_multiple_and_nothing_below_zero() {
        let grid = Choices::grid(kg("1.25 kg"));
        assert_eq!(grid.at_or_below(kg("11 kg")), Some(kg("10 kg")));
        assert_eq!(grid.next_above(kg("10 kg")), Some(kg("11.25 kg")));
        assert_eq!(grid.next_below(kg("10 kg")), Some(kg("8.75 kg")));
        assert_eq!(grid.next_below(Load::ZERO), None);
        assert_eq!(grid.next_above(Load::whole_kg(2000)), None);
        assert!(grid.contains(kg("10 kg")) && !grid.contains(kg("11 kg")));
    }

    proptest! {
        #[test]
        fn the_neighbours_of_a_load_lie_on_their_sides(
            loads in prop::collection::vec(some_load(), 0..20),
            step in 1..500_i64,
            wanted in some_load(),
        ) {
            let step = Load::new(Decimal::new(step, 2), crate::units::Unit::Kg).unwrap();
            for choices in [Choices::listed(loads), Choices::grid(step)] {
                let below = choices.at_or_below(wanted);
                let above = choices.at_or_above(wanted);
                prop_assert!(below.is_none_or(|l| l <= wanted && choices.contains(l)));
                prop_assert!(above.is_none_or(|l| l >= wanted && choices.contains(l)));
                prop_assert!(choices.next_above(wanted).is_none_or(|l| l > wanted));
                prop_assert!(choices.next_below(wanted).is_none_or(|l| l < wanted));
                let nearest = choices.nearest(wanted);
                prop_assert!(nearest == below || nearest == above);
                if let Some(next) = choices.next_above(wanted) {
                    prop_assert_eq!(choices.next_below(next), below);
                }
            }
        }
    }
}
