//! Masses as whole numbers, so that sums of kilograms and pounds are exact.
//!
//! A load has at most nine digits after the point and a pound in kilograms has eight, so 10⁻¹⁷ kg holds every typed
//! load exactly, in either unit. A sum of both units that is no round figure in either is rounded to a billionth of a
//! kilogram, and sums are compared after that rounding.

use crate::units::{Load, Unit};
use rust_decimal::Decimal;

/// A mass in units of 10⁻¹⁷ kg.
pub(super) type Fine = i128;

/// Digits after the point of a [`Fine`] in kilograms.
const FINE_DECIMALS: u32 = 17;
/// Digits after the point of a typed load.
const TYPED_DECIMALS: u32 = 9;
/// One pound is exactly so many 10⁻⁸ kg, and a billionth of a pound so many [`Fine`] units.
const FINE_PER_NANO_LB: Fine = 45_359_237;
/// A billionth of a kilogram in [`Fine`] units.
const FINE_PER_NANO_KG: Fine = 100_000_000;

/// The mass of a load, exactly.
pub(super) fn fine(load: Load) -> Fine {
    let kg = load.kg().normalize();
    kg.mantissa() * 10_i128.pow(FINE_DECIMALS - kg.scale().min(FINE_DECIMALS))
}

/// The mass in whole billionths of a kilogram: what two loads are compared by.
pub(super) fn nano(mass: Fine) -> i128 {
    (mass + FINE_PER_NANO_KG / 2).div_euclid(FINE_PER_NANO_KG)
}

/// The masses of one side, from the least to the most, that make a load: more than one only by rounding.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Window {
    /// Least mass; below zero where the bar alone is too heavy.
    pub(super) low: Fine,
    /// Most mass.
    pub(super) high: Fine,
}

impl Window {
    /// What two sides alike must weigh each to make `load` on a bar of `empty`, told apart as loads are.
    pub(super) fn new(load: Load, empty: Fine) -> Window {
        let least = nano(fine(load)) * FINE_PER_NANO_KG - FINE_PER_NANO_KG / 2 - empty;
        let most = least + FINE_PER_NANO_KG - 1;
        Window {
            low: -(-least).div_euclid(2),
            high: most.div_euclid(2),
        }
    }

    /// True when that mass makes the load.
    pub(super) fn holds(self, mass: Fine) -> bool {
        self.low <= mass && mass <= self.high
    }
}

/// The load of that mass, in `unit` where that is exact, else in the other unit, else in billionths of a kilogram.
///
/// None below zero or above what a load may be.
pub(super) fn load_of(mass: Fine, unit: Unit) -> Option<Load> {
    let exact = |unit: Unit| {
        let per_nano = match unit {
            Unit::Kg => FINE_PER_NANO_KG,
            Unit::Lb => FINE_PER_NANO_LB,
        };
        (mass % per_nano == 0).then(|| written(mass / per_nano, unit))
    };
    let other = match unit {
        Unit::Kg => Unit::Lb,
        Unit::Lb => Unit::Kg,
    };
    exact(unit)
        .or_else(|| exact(other))
        .unwrap_or_else(|| written(nano(mass), Unit::Kg))
}

fn written(nanos: i128, unit: Unit) -> Option<Load> {
    let amount = Decimal::try_from_i128_with_scale(nanos, TYPED_DECIMALS).ok()?;
    Load::new(amount, unit).ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_mass_goes_both_ways_exactly() {
        for text in [
            "20 kg",
            "45 lb",
            "1.25 lb",
            "0.000000001 lb",
            "1.133980925 kg",
        ] {
            let load: Load = text.parse().unwrap();
            assert_eq!(load_of(fine(load), load.unit()), Some(load), "{text}");
        }
    }

    #[test]
    fn a_sum_is_written_in_the_unit_where_it_is_exact() {
        let lb: Load = "45 lb".parse().unwrap();
        let kg = Load::whole_kg(20);
        assert_eq!(
            load_of(2 * fine(lb), Unit::Kg).unwrap().to_string(),
            "40.8233133 kg"
        );
        assert_eq!(
            load_of(2 * fine(lb), Unit::Lb).unwrap().to_string(),
            "90 lb"
        );
        assert_eq!(
            load_of(fine(lb) + fine(kg), Unit::Lb).unwrap().to_string(),
            "40.41165665 kg"
        );
    }
}
