//! The sets of one way to load an exercise that no other of that way beats.

use super::bests::{BEST_REPS_MAX, Best};
use super::history::Past;
use super::much::Much;
use crate::sheet::{LoadBasis, is_same_band, moved_part};
use crate::strength::SetResult;
use crate::units::{Load, Reps};
use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};
use std::cmp::Ordering;

/// When something was best, and in which session.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct When {
    /// The session.
    pub session: uuid::Uuid,
    /// When it began.
    pub at: DateTime<FixedOffset>,
}

impl When {
    pub(super) fn of(past: &Past) -> When {
        When {
            session: past.performance.session,
            at: past.performance.at,
        }
    }
}

/// A set that no other set of its way beats in load and in how much was done alike.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BestSet {
    /// Load as written, on its basis; zero where there is none.
    pub load: Load,
    /// How much was done, 1 or more.
    pub much: Much,
    /// When.
    pub when: When,
}

/// The bests of one way to do an exercise: only sets that move the same on the same basis, and are counted alike, are
/// compared.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Way {
    /// With which sides and what in the hands: see [`moved_part`]. Of sets in stages the whole shape, since only the same
    /// stages compare.
    pub moved: String,
    /// What the loads are added to; a band by its label.
    pub basis: LoadBasis,
    /// The sets that no other beats, rising in how much was done and so falling in load.
    pub sets: Vec<BestSet>,
}

impl Way {
    /// The way of a set that was done so, with none in it yet.
    pub(super) fn empty(past: &Past, basis: &LoadBasis, much: Much) -> Way {
        let shape = &past.performance.shape;
        let moved = match much {
            Much::Staged(_) => shape,
            Much::Reps(_) | Much::Held(_) | Much::Carried(_) => moved_part(shape),
        };
        Way {
            moved: moved.to_owned(),
            basis: basis.clone(),
            sets: Vec::new(),
        }
    }

    /// Whether a set of the other, counted like `much`, is compared with those of this.
    pub(super) fn is_of(&self, other: &Way, much: Much) -> bool {
        let alike = match (&self.basis, &other.basis) {
            (LoadBasis::Band(one), LoadBasis::Band(other)) => is_same_band(one, other),
            (one, other) => one == other,
        };
        let first = self.sets.first();
        alike && self.moved == other.moved && first.is_none_or(|set| set.much.is_like(much))
    }

    /// The hardest load at which so much or more was done.
    #[must_use]
    pub fn at(&self, much: Much) -> Option<&BestSet> {
        self.sets.iter().find(|set| set.much >= much)
    }

    /// The hardest load at which so many reps or more were done.
    #[must_use]
    pub fn at_reps(&self, reps: Reps) -> Option<&BestSet> {
        self.at(Much::Reps(reps))
            .filter(|set| matches!(set.much, Much::Reps(_)))
    }

    /// The most that was done at that load or a harder one.
    #[must_use]
    pub fn at_load(&self, load: Load) -> Option<&BestSet> {
        let mut hardest_last = self.sets.iter().rev();
        hardest_last.find(|set| self.harder(set.load, load) != Ordering::Less)
    }

    /// How two loads compare, the harder being greater: of assistance that is the less.
    fn harder(&self, a: Load, b: Load) -> Ordering {
        if self.basis.assists() {
            b.cmp(&a)
        } else {
            a.cmp(&b)
        }
    }

    /// What a set beats; none where one before was as good. The first set of all beats nothing.
    pub(super) fn beaten_by(&self, load: Load, much: Much) -> Option<Best> {
        let at = self.at(much);
        if self.sets.is_empty()
            || at.is_some_and(|set| self.harder(load, set.load) != Ordering::Greater)
        {
            return None;
        }
        let (load_before, much_before) = (at.map(|set| set.load), self.at_load(load));
        let much_before = much_before.map(|set| set.much);
        let basis = self.basis.clone();
        let Much::Reps(reps) = much else {
            return Some(Best::Much {
                basis,
                load,
                much,
                load_before,
                much_before,
            });
        };
        Some(Best::Set {
            basis,
            load,
            reps,
            load_before: load_before.filter(|_| reps.get() <= BEST_REPS_MAX),
            reps_before: match much_before {
                Some(Much::Reps(reps)) => Some(reps),
                _ => None,
            },
        })
    }

    pub(super) fn put(&mut self, new: BestSet) {
        let beaten = |set: &BestSet| self.harder(new.load, set.load) != Ordering::Greater;
        if self.at(new.much).is_some_and(beaten) {
            return;
        }
        let mut sets = std::mem::take(&mut self.sets);
        sets.retain(|set| {
            set.much > new.much || self.harder(set.load, new.load) == Ordering::Greater
        });
        let place = sets.partition_point(|set| set.much < new.much);
        sets.insert(place, new);
        self.sets = sets;
    }
}

/// Load of a set that counts for bests, and how much was done.
pub(super) fn counted(basis: &LoadBasis, set: &SetResult) -> Option<(Load, Much)> {
    let much = Much::of(set)?;
    let load = match basis {
        LoadBasis::External => set.load?,
        _ if basis.has_load() => set.load.unwrap_or(Load::ZERO),
        _ => Load::ZERO,
    };
    Some((load, much))
}

#[cfg(test)]
#[path = "ways_tests.rs"]
pub(crate) mod tests;
