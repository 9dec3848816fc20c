//! A checked kit: the loads that each kind of equipment can make, and the plates for a load.

use super::choices::Choices;
use super::loading::Loading;
use super::made::Made;
use super::mass::{Fine, Window, load_of};
use super::parts::{KitParts, UnfitKit};
use super::side::Side;
use crate::order;
use crate::sheet::{Equipment, Line};
use crate::units::{Load, Unit};
use serde::{Deserialize, Serialize};
use std::sync::Arc;

/// What stands in the garage, checked, with the loads that it makes.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[serde(try_from = "KitParts", into = "KitParts")]
pub struct Kit {
    parts: KitParts,
    made: Arc<Made>,
}

/// The loads follow from the parts.
impl PartialEq for Kit {
    fn eq(&self, other: &Kit) -> bool {
        self.parts == other.parts
    }
}

impl Eq for Kit {}

/// Something that plates are put on.
pub(super) struct Empty<'a> {
    /// Name of a bar.
    pub(super) name: Option<&'a Line>,
    /// Its mass without plates, collars on.
    pub(super) mass: Fine,
    /// The same as a load.
    pub(super) shown: Load,
}

impl Kit {
    /// Checks the parts and sorts plates (heaviest first) and dumbbells (lightest first, each once).
    ///
    /// # Errors
    /// [`UnfitKit`], which says what is allowed.
    pub fn new(mut parts: KitParts) -> Result<Kit, UnfitKit> {
        parts.check()?;
        order::by_key(&mut parts.dumbbells, |load| *load);
        parts.dumbbells.dedup();
        order::by_key(&mut parts.plates, |kind| std::cmp::Reverse(kind.mass));
        let made = Arc::new(Made::new(&parts)?);
        Ok(Kit { parts, made })
    }

    /// What it is made of; change a copy and check it again with [`Kit::new`].
    #[must_use]
    pub fn parts(&self) -> &KitParts {
        &self.parts
    }

    /// The unit on display.
    #[must_use]
    pub fn unit(&self) -> Unit {
        self.parts.unit
    }

    /// All loads of `equipment`; for the body every multiple of the smallest step; for other equipment any, as the kit does
    /// not know what it is; none for bands.
    #[must_use]
    pub fn choices(&self, equipment: Equipment) -> Choices {
        match equipment {
            Equipment::Barbell => self.made.on_bars.0.clone(),
            Equipment::Handle => self.made.on_handles.clone(),
            Equipment::Dumbbell => self.made.dumbbells.clone(),
            Equipment::Stack => self.made.on_stacks.0.clone(),
            Equipment::Band => Choices::listed(Vec::new()),
            Equipment::Body => Choices::grid(self.parts.smallest_step),
            Equipment::Other => Choices::any(self.parts.smallest_step),
        }
    }

    /// Loads that are made on the same bar or stack as `load`, so that nobody is sent to another bar between sets;
    /// all of `equipment` where none makes exactly `load`.
    #[must_use]
    pub fn choices_beside(&self, equipment: Equipment, load: Load) -> Choices {
        let each = match equipment {
            Equipment::Barbell => &self.made.on_bars.1[..],
            Equipment::Stack => &self.made.on_stacks.1[..],
            _ => &[],
        };
        let beside = each.iter().find(|choices| choices.contains(load));
        beside.map_or_else(|| self.choices(equipment), Choices::clone)
    }

    /// All achievable loads, rising, each once; empty for bands, for the body, where every multiple of the smallest step can
    /// be made, and for other equipment, where any can.
    #[must_use]
    pub fn loads(&self, equipment: Equipment) -> Vec<Load> {
        self.choices(equipment)
            .list()
            .map(<[Load]>::to_vec)
            .unwrap_or_default()
    }

    /// The heaviest achievable load that is not above `load`.
    #[must_use]
    pub fn at_or_below(&self, equipment: Equipment, load: Load) -> Option<Load> {
        self.choices(equipment).at_or_below(load)
    }

    /// The lightest achievable load that is not below `load`.
    #[must_use]
    pub fn at_or_above(&self, equipment: Equipment, load: Load) -> Option<Load> {
        self.choices(equipment).at_or_above(load)
    }

    /// The achievable load nearest to `load`; of two as near, the lighter.
    #[must_use]
    pub fn nearest(&self, equipment: Equipment, load: Load) -> Option<Load> {
        self.choices(equipment).nearest(load)
    }

    /// The next heavier load, on the same bar or stack where that makes `load`.
    #[must_use]
    pub fn next_above(&self, equipment: Equipment, load: Load) -> Option<Load> {
        self.choices_beside(equipment, load).next_above(load)
    }

    /// The next lighter load, on the same bar or stack where that makes `load`.
    #[must_use]
    pub fn next_below(&self, equipment: Equipment, load: Load) -> Option<Load> {
        self.choices_beside(equipment, load).next_below(load)
    }

    /// The bar or handle and the fewest plates that make exactly `load`, of several bars on the first named; none
    /// where it cannot be made, and for equipment without plates.
    #[must_use]
    pub fn loading(&self, equipment: Equipment, load: Load) -> Option<Loading> {
        self.empties(equipment).iter().find_map(|empty| {
            let mass = self.mass_of(equipment, empty, load)?;
            Some(Loading {
                bar: empty.name.cloned(),
                empty: empty.shown,
                per_side: self.side(equipment).plates(mass)?,
                unit: self.parts.unit,
            })
        })
    }

    pub(super) fn empties(&self, equipment: Equipment) -> Vec<Empty<'_>> {
        let empty = |name, mass| {
            let shown = load_of(mass, self.parts.unit)?;
            Some(Empty { name, mass, shown })
        };
        match equipment {
            Equipment::Barbell => {
                let bars = self.parts.bars.iter();
                bars.filter_map(|bar| empty(Some(&bar.name), bar.with_collars()))
                    .collect()
            }
            Equipment::Handle => {
                let handles = self.parts.handles.iter();
                handles
                    .filter_map(|handle| empty(None, handle.empty()))
                    .collect()
            }
            _ => Vec::new(),
        }
    }

    pub(super) fn side(&self, equipment: Equipment) -> &Side {
        match equipment {
            Equipment::Handle => self.made.handle.as_ref().unwrap_or(&self.made.bar),
            _ => &self.made.bar,
        }
    }

    /// How many bars or handles are loaded alike at once.
    pub(super) fn at_once(&self, equipment: Equipment) -> u8 {
        match (equipment, &self.parts.handles) {
            (Equipment::Handle, Some(handle)) => handle.count,
            _ => 1,
        }
    }

    /// The mass of one side that makes `load`; none where it cannot be made.
    pub(super) fn mass_of(
        &self,
        equipment: Equipment,
        empty: &Empty<'_>,
        load: Load,
    ) -> Option<Fine> {
        let window = Window::new(load, empty.mass);
        let mass = self
            .side(equipment)
            .first_where(|mass| mass >= window.low)?;
        (mass <= window.high).then_some(mass)
    }
}

impl TryFrom<KitParts> for Kit {
    type Error = UnfitKit;
    fn try_from(parts: KitParts) -> Result<Kit, UnfitKit> {
        Kit::new(parts)
    }
}

impl From<Kit> for KitParts {
    fn from(kit: Kit) -> KitParts {
        kit.parts
    }
}
