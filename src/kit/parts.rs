//! What stands in the garage, as written and edited; a [`super::Kit`] is made of it once it is checked.

use super::mass::{Fine, fine};
use crate::say;
use crate::sheet::Line;
use crate::units::{Load, Unit};
use crate::words::t;
use serde::{Deserialize, Serialize};
use std::fmt;

/// Most bars.
pub const BARS_MAX: usize = 8;
/// Most kinds of plates.
pub const PLATES_MAX: usize = 20;
/// Most pairs of one kind of plate.
pub const PAIRS_MAX: u8 = 20;
/// Most fixed dumbbells or kettlebells.
pub const DUMBBELLS_MAX: usize = 60;
/// Most weight stacks.
pub const STACKS_MAX: usize = 10;
/// Most positions of the pin of one stack.
pub const STACK_STEPS_MAX: usize = 60;
/// Most add-on weights of one stack.
pub const STACK_ADD_ONS_MAX: usize = 4;
/// Most bands.
pub const BANDS_MAX: usize = 20;

/// A bar.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Bar {
    /// Name on screen.
    pub name: Line,
    /// Mass without plates. Home bars differ: weigh them (common practice, no source).
    pub mass: Load,
    /// Mass of the two collars that close the sleeves together, where `mass` is without them: they are a part of
    /// every load on this bar.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub collars: Option<Load>,
}

impl Bar {
    /// What the bar weighs without plates, collars on.
    pub(super) fn with_collars(&self) -> Fine {
        fine(self.mass) + self.collars.map_or(0, fine)
    }
}

/// Plates of one mass.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PlatePairs {
    /// Mass of one plate.
    pub mass: Load,
    /// How many pairs, 1 to 20: a pair is one plate on each side.
    pub pairs: u8,
}

/// Loadable dumbbell handles, which share the bars' plates.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Handle {
    /// Mass of one handle with its collars.
    pub mass: Load,
    /// How many are loaded alike at once, 1 or 2. Two need twice the plates.
    pub count: u8,
}

impl Handle {
    /// What one handle weighs without plates.
    pub(super) fn empty(&self) -> Fine {
        fine(self.mass)
    }
}

/// A weight stack.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Stack {
    /// Name on screen.
    pub name: Line,
    /// Load at the first position of the pin.
    pub first: Load,
    /// Load from one position to the next.
    pub step: Load,
    /// Load at the last position: no position lies above it.
    pub last: Load,
    /// Weights that can be put on top, any of them together: at most 4.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub add_ons: Vec<Load>,
}

/// Everything in the garage, not yet checked.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct KitParts {
    /// Unit on display.
    pub unit: Unit,
    /// Bars, at most 8. Where two can make a load, the one named first is used.
    #[serde(default)]
    pub bars: Vec<Bar>,
    /// Plates, at most 20 kinds, each mass once.
    #[serde(default)]
    pub plates: Vec<PlatePairs>,
    /// Fixed dumbbells and kettlebells, the mass of one, at most 60.
    #[serde(default)]
    pub dumbbells: Vec<Load>,
    /// Loadable handles.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub handles: Option<Handle>,
    /// Weight stacks, at most 10.
    #[serde(default)]
    pub stacks: Vec<Stack>,
    /// Bands by label, the lightest first, at most 20. Only their order is known.
    #[serde(default)]
    pub bands: Vec<Line>,
    /// Smallest step of any other load (a belt, a sled, a vest), above zero.
    pub smallest_step: Load,
}

/// Why a kit does not hold together.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum UnfitKit {
    /// A list is too long.
    TooMany {
        /// The list, in words.
        what: &'static str,
        /// How many there are.
        given: usize,
        /// Most allowed.
        most: usize,
    },
    /// A mass that must be above zero is zero.
    NoMass {
        /// What has no mass, in words.
        what: &'static str,
    },
    /// The number of pairs of a plate is out of range.
    Pairs {
        /// The plate.
        plate: Load,
        /// The number given.
        given: u8,
    },
    /// Two entries for plates of one mass.
    TwinPlates(Load),
    /// The number of handles is neither 1 nor 2.
    Handles(u8),
    /// A stack whose last load is below its first, or with too many positions.
    StackSteps(Line),
    /// The plates make more sums than can be handled.
    TooManySums {
        /// Most sums a side.
        most: usize,
    },
}

impl fmt::Display for UnfitKit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            UnfitKit::TooMany { what, given, most } => {
                f.write_str(&say!("the kit has {given} {what}, at most {most} are allowed", given, what, most))
            }
            UnfitKit::NoMass { what } => f.write_str(&say!("{what} must have a mass above zero", what)),
            UnfitKit::Pairs { plate, given } => f.write_str(&say!(
                "the {plate} plate has {given} pairs, it must have 1 to {most}: one plate alone goes on no bar",
                plate, given, most = PAIRS_MAX
            )),
            UnfitKit::TwinPlates(mass) => f.write_str(&say!(
                "two entries for {mass} plates: put all their pairs in one", mass
            )),
            UnfitKit::Handles(given) => f.write_str(&say!("handles are 1 or 2, not {given}", given)),
            UnfitKit::StackSteps(name) => f.write_str(&say!(
                "the stack “{name}” must rise from its first load to its last in 1 to {most} positions",
                name, most = STACK_STEPS_MAX
            )),
            UnfitKit::TooManySums { most } => f.write_str(&say!(
                "the plates make more than {most} different loads a side: leave out some odd masses", most
            )),
        }
    }
}

impl std::error::Error for UnfitKit {}

impl KitParts {
    /// Checks every list and mass but not yet the sums that the plates make.
    pub(super) fn check(&self) -> Result<(), UnfitKit> {
        let at_most = |what, given, most| {
            if given <= most {
                Ok(())
            } else {
                Err(UnfitKit::TooMany { what, given, most })
            }
        };
        let massive = |what, mass: Load| {
            if mass.is_zero() {
                Err(UnfitKit::NoMass { what })
            } else {
                Ok(())
            }
        };
        at_most(t("bars"), self.bars.len(), BARS_MAX)?;
        at_most(t("kinds of plates"), self.plates.len(), PLATES_MAX)?;
        at_most(t("dumbbells"), self.dumbbells.len(), DUMBBELLS_MAX)?;
        at_most(t("stacks"), self.stacks.len(), STACKS_MAX)?;
        at_most(t("bands"), self.bands.len(), BANDS_MAX)?;
        massive(t("the smallest step"), self.smallest_step)?;
        for bar in &self.bars {
            massive(t("a bar"), bar.mass)?;
            if let Some(mass) = bar.collars {
                massive(t("a pair of collars"), mass)?;
            }
        }
        for &mass in &self.dumbbells {
            massive(t("a dumbbell"), mass)?;
        }
        for (i, plate) in self.plates.iter().enumerate() {
            massive(t("a plate"), plate.mass)?;
            if !(1..=PAIRS_MAX).contains(&plate.pairs) {
                return Err(UnfitKit::Pairs {
                    plate: plate.mass,
                    given: plate.pairs,
                });
            }
            if self.plates[..i].iter().any(|p| p.mass == plate.mass) {
                return Err(UnfitKit::TwinPlates(plate.mass));
            }
        }
        if let Some(handle) = &self.handles {
            massive(t("a handle"), handle.mass)?;
            if !(1..=2).contains(&handle.count) {
                return Err(UnfitKit::Handles(handle.count));
            }
        }
        for stack in &self.stacks {
            massive(t("a stack's step"), stack.step)?;
            at_most(
                t("add-ons on a stack"),
                stack.add_ons.len(),
                STACK_ADD_ONS_MAX,
            )?;
            for &mass in &stack.add_ons {
                massive(t("an add-on"), mass)?;
            }
            let rises = stack.first <= stack.last;
            if !rises || stack.positions().nth(STACK_STEPS_MAX).is_some() {
                return Err(UnfitKit::StackSteps(stack.name.clone()));
            }
        }
        Ok(())
    }
}
