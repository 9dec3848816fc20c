//! An entry of the list, kept small: sets as bits, other names in one text.

use super::caution::Caution;
use super::means::{Means, Moved};
use super::muscle::Muscle;
use crate::kit::Kit;
use crate::sheet::{Equipment, Exercise, ExerciseId, Line, LoadBasis, Pattern, SideMode};
use crate::words::{name_in, small, spoken};

/// An exercise of the list.
#[derive(Debug, Clone, Copy)]
pub struct Entry {
    pub(super) name: &'static str,
    /// Other names, parted by `;`.
    pub(super) others: &'static str,
    /// Bits of [`Muscle`].
    pub(super) main: u32,
    /// Bits of [`Muscle`].
    pub(super) also: u32,
    /// Bits of [`Caution`].
    pub(super) cautions: u32,
    pub(super) pattern: Pattern,
    pub(super) means: Means,
    pub(super) moved: Moved,
    pub(super) sides: SideMode,
}

impl Entry {
    /// The lasting id: the name in kebab case. A name of the list is never changed; new words go to the other names.
    ///
    /// # Panics
    /// Never: every name makes a valid id, which a test holds.
    #[must_use]
    pub fn id(&self) -> ExerciseId {
        ExerciseId::new(&kebab(self.name)).expect("a name of the list makes an id")
    }

    /// The name by the trade's usage, as it is kept: see [`ExerciseId::said`].
    #[must_use]
    pub fn name(&self) -> &'static str {
        self.name
    }

    /// The name, then what else it is called.
    pub fn names(&self) -> impl Iterator<Item = &'static str> {
        let others = self.others.split(';').map(str::trim);
        std::iter::once(self.name).chain(others.filter(|other| !other.is_empty()))
    }

    /// Its names as they stand on a sheet, which begin with a capital.
    pub fn sheet_names(&self) -> impl Iterator<Item = String> {
        self.names().map(capital)
    }

    /// Its names, and what the language that is spoken calls them.
    pub fn names_said(&self) -> impl Iterator<Item = &'static str> {
        self.names()
            .flat_map(|name| std::iter::once(name).chain(name_in(&capital(name))))
    }

    /// The movement pattern.
    #[must_use]
    pub fn pattern(&self) -> Pattern {
        self.pattern
    }

    /// What the load is made of.
    #[must_use]
    pub fn equipment(&self) -> Equipment {
        self.means.equipment()
    }

    /// The muscles that do most of the work.
    pub fn main(&self) -> impl Iterator<Item = Muscle> + use<> {
        muscles(self.main)
    }

    /// The muscles that help or hold.
    pub fn also(&self) -> impl Iterator<Item = Muscle> + use<> {
        muscles(self.also)
    }

    /// How the sides of the body usually share a set; anything but `Both` is unilateral.
    #[must_use]
    pub fn sides(&self) -> SideMode {
        self.sides
    }

    /// What the load usually means together with the body. A band is labelled “band” until one of the kit is named.
    #[must_use]
    pub fn basis(&self) -> LoadBasis {
        self.moved.basis()
    }

    /// The cautions for a new block, in English, whatever language is spoken: [`Line::said`] says them in that one. Each is a
    /// fit line, which a test holds.
    #[must_use]
    pub fn cautions(&self) -> Vec<Line> {
        let held = Caution::ALL.into_iter();
        held.filter(|caution| self.cautions & caution.bit() != 0)
            .filter_map(|caution| Line::new(caution.english()).ok())
            .collect()
    }

    /// The exercise as a block names it.
    #[must_use]
    pub fn exercise(&self) -> Exercise {
        self.called(self.name)
    }

    /// The exercise as it is done with `kit`: on loadable handles where there are no dumbbells. None where the kit
    /// lacks what it takes. Racks, benches and pull-up bars are not in a kit, so they are not asked for.
    #[must_use]
    pub fn exercise_with(&self, kit: &Kit) -> Option<Exercise> {
        let equipment = self.means.in_kit(kit)?;
        Some(Exercise {
            equipment,
            ..self.exercise()
        })
    }

    /// The exercise that the language that is spoken gives this name, whatever the case of the letters.
    pub(super) fn called_here(&self, name: &str) -> Option<Exercise> {
        spoken()?;
        let lower = small(name);
        let is_it =
            |known: &&str| name_in(&capital(known)).is_some_and(|said| small(said) == lower);
        self.names().find(is_it).map(|known| self.called(known))
    }

    /// The exercise under one of its names, which then begins with a capital.
    pub(super) fn called(&self, name: &str) -> Exercise {
        Exercise {
            id: self.id(),
            name: Line::new(&capital(name)).expect("a name of the list is a fit line"),
            pattern: self.pattern,
            equipment: self.equipment(),
        }
    }
}

fn capital(name: &str) -> String {
    let (first, rest) = name.split_at(1);
    first.to_ascii_uppercase() + rest
}

fn muscles(bits: u32) -> impl Iterator<Item = Muscle> {
    let all = Muscle::ALL.into_iter();
    all.filter(move |muscle| bits & muscle.bit() != 0)
}

/// Small letters and digits, with one hyphen for whatever parts words; apostrophes go.
fn kebab(name: &str) -> String {
    let mut id = String::with_capacity(name.len());
    for c in name.chars().filter(|c| *c != '\'' && *c != '’') {
        if c.is_ascii_alphanumeric() {
            id.push(c.to_ascii_lowercase());
        } else if !id.ends_with('-') {
            id.push('-');
        }
    }
    id
}
