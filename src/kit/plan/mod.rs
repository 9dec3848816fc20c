//! The plan for a run of loads: which plates at each of them, so that the fewest are moved in all.
//!
//! The model, what is counted and where it is exact: `docs/plates.md`.

mod bases;
mod ways;

use super::loading::{Change, Loading, change};
use super::mass::{Fine, Window, fine};
use super::reach::{Empty, Kit};
use crate::sheet::Equipment;
use crate::units::Load;
use bases::{Bases, Kind};
use ways::{Ending, Lying, Moves, Ways};

/// Most different loads in a row that are planned as one; what comes after goes on from where they end.
pub const PLANNED_TOGETHER_MAX: usize = 16;

/// Most entries of the table of a plan: loads × loads × sets of plates.
const ENTRIES_MAX: usize = 800_000;
/// Most sets of plates that are looked at, few loads or many.
const BASES_MAX: usize = 16_000;
/// Where all sets of plates are too many: at most so many plates more than the load that needs most.
const SPARE_PLATES: [u16; 4] = [6, 4, 2, 0];

/// The plates at each of a run of loads.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Plan {
    /// The loading of each load; none where the kit cannot make it, which is passed over.
    pub loadings: Vec<Option<Loading>>,
    /// What to change for each loading, on the one before or on what lay on the bar at the beginning.
    pub changes: Vec<Option<Change>>,
    /// Plates taken off and put on at one side of one bar, all together.
    pub moved: usize,
    /// True when every way to load was looked at, so that none moves fewer plates. False only far beyond a garage: where
    /// ways with many small plates were left out, or more than [`PLANNED_TOGETHER_MAX`] loads planned in pieces.
    pub exact: bool,
}

impl Plan {
    /// These loadings one after the other, from what lies on the bar or from the empty bar.
    fn following(on_bar: Option<&Loading>, loadings: Vec<Option<Loading>>, exact: bool) -> Plan {
        let first = loadings.iter().flatten().next();
        let mut lies = on_bar.cloned().or_else(|| {
            let per_side = Vec::new();
            first.map(|first| Loading {
                per_side,
                ..first.clone()
            })
        });
        let mut changes = Vec::with_capacity(loadings.len());
        for loading in &loadings {
            let both = lies.as_ref().zip(loading.as_ref());
            changes.push(both.map(|(from, to)| change(from, to)));
            lies = loading.clone().or(lies);
        }
        let steps = changes.iter().flatten();
        let moved = steps.map(|step| step.off.len() + step.on.len()).sum();
        Plan {
            loadings,
            changes,
            moved,
            exact,
        }
    }
}

/// The sides of a stretch of loads: kinds of plates from the inside out.
struct Laid {
    sides: Vec<Vec<usize>>,
    exact: bool,
}

impl Kit {
    /// The plan for `loads`, one after the other, that moves the fewest plates; of several such plans one with the
    /// heaviest plates inside throughout, where there is one.
    ///
    /// `on_bar` is what lies on the bar now; without it the bar is empty. All loads go on the bar that lies there, or
    /// else on the first named, where that makes them all; otherwise each on the first named that makes it, and all
    /// plates come off between two bars. What stays on the bar at the end is not counted as taken off.
    #[must_use]
    pub fn plan(&self, equipment: Equipment, on_bar: Option<&Loading>, loads: &[Load]) -> Plan {
        let empties = self.empties(equipment);
        let bars = self.bars_for(equipment, &empties, on_bar, loads);
        let mut loadings: Vec<Option<Loading>> = vec![None; loads.len()];
        let mut exact = true;
        let makeable: Vec<usize> = (0..loads.len()).filter(|&at| bars[at].is_some()).collect();
        let mut on = on_bar.cloned();
        let mut rest = &makeable[..];
        // What lies there already stays: a change that is needed later costs no more then.
        while let (Some(&at), Some(lies)) = (rest.first(), &on) {
            let empty = &empties[bars[at].unwrap_or(0)];
            let window = Window::new(loads[at], 0);
            if !empty.is_of(lies) || !window.holds(lies.mass(empty.mass) / 2) {
                break;
            }
            loadings[at] = on.clone();
            rest = &rest[1..];
        }
        while let Some(stretch) = self.stretch(rest, &bars, loads) {
            rest = &rest[stretch.len()..];
            let bar = bars[stretch[0]].unwrap_or(0);
            let ending = match rest.first() {
                Some(&next) if bars[next] != Some(bar) => Ending::Cleared,
                // A piece of a run: what comes after it is not looked at.
                Some(_) => {
                    exact = false;
                    Ending::Left
                }
                None => Ending::Left,
            };
            let wanted: Vec<Load> = stretch.iter().map(|&at| loads[at]).collect();
            let laid = self.lay(equipment, &empties[bar], on.as_ref(), &wanted, ending);
            exact &= laid.exact;
            for (&at, side) in stretch.iter().zip(laid.sides) {
                loadings[at] = Some(self.loading_of(&empties[bar], &side));
            }
            on = loadings[stretch[stretch.len() - 1]].clone();
        }
        let plan = Plan::following(on_bar, loadings, exact);
        if exact {
            return plan;
        }
        let fewest = loads.iter().zip(&bars).map(|(&load, bar)| {
            let empty = &empties[(*bar)?];
            let mass = self.mass_of(equipment, empty, load)?;
            Some(self.loading_of(empty, &self.fewest_kinds(equipment, mass)?))
        });
        let greedy = Plan::following(on_bar, fewest.collect(), exact);
        if greedy.moved < plan.moved {
            greedy
        } else {
            plan
        }
    }

    /// Which bar each load goes on, by its place; none where none makes it.
    fn bars_for(
        &self,
        equipment: Equipment,
        empties: &[Empty<'_>],
        on_bar: Option<&Loading>,
        loads: &[Load],
    ) -> Vec<Option<usize>> {
        let makes = |bar: usize, load: Load| self.mass_of(equipment, &empties[bar], load).is_some();
        let first: Vec<Option<usize>> = loads
            .iter()
            .map(|&load| (0..empties.len()).find(|&bar| makes(bar, load)))
            .collect();
        let lies = |bar: &usize| on_bar.is_some_and(|on| empties[*bar].is_of(on));
        let there = (0..empties.len()).filter(lies);
        let mut each = there.chain(0..empties.len());
        let for_all = each.find(|&bar| {
            let mut makeable = loads
                .iter()
                .zip(&first)
                .filter(|(_, first)| first.is_some());
            makeable.all(|(&load, _)| makes(bar, load))
        });
        first
            .into_iter()
            .map(|first| first.map(|first| for_all.unwrap_or(first)))
            .collect()
    }

    /// The next loads that are planned as one: on one bar, and not too many different ones in a row.
    fn stretch<'a>(
        &self,
        rest: &'a [usize],
        bars: &[Option<usize>],
        loads: &[Load],
    ) -> Option<&'a [usize]> {
        let bar = bars[*rest.first()?];
        let mut different = 1;
        let end = (1..rest.len()).find(|&at| {
            different += usize::from(loads[rest[at]] != loads[rest[at - 1]]);
            bars[rest[at]] != bar || different > PLANNED_TOGETHER_MAX
        });
        Some(&rest[..end.unwrap_or(rest.len())])
    }

    /// The sides for loads that one bar makes, all of them.
    fn lay(
        &self,
        equipment: Equipment,
        empty: &Empty<'_>,
        on: Option<&Loading>,
        loads: &[Load],
        ending: Ending,
    ) -> Laid {
        // Loads alike in a row are one: what lies there stays.
        let mut windows: Vec<Window> = Vec::new();
        let mut at: Vec<usize> = Vec::with_capacity(loads.len());
        for &load in loads {
            let window = Window::new(load, empty.mass);
            if windows.last() != Some(&window) {
                windows.push(window);
            }
            at.push(windows.len() - 1);
        }
        let heaviest = windows.iter().map(|window| window.high).max().unwrap_or(0);
        let kinds = self.kinds(equipment);
        let kinds: Vec<Kind> = kinds
            .into_iter()
            .map(|kind| Kind {
                count: kind.count.min((heaviest / kind.mass).min(31) as u8),
                ..kind
            })
            .collect();
        let fewest: Vec<Vec<usize>> = loads
            .iter()
            .filter_map(|&load| {
                let mass = self.mass_of(equipment, empty, load)?;
                self.fewest_kinds(equipment, mass)
            })
            .collect();
        let needed = fewest.iter().map(Vec::len).max().unwrap_or(0) as u16;
        let most = (ENTRIES_MAX / (windows.len() * windows.len()).max(1)).min(BASES_MAX);
        let limits = std::iter::once(u16::MAX).chain(SPARE_PLATES.map(|spare| needed + spare));
        let bases = limits
            .map(|plates| (plates, Bases::new(&kinds, &windows, plates, most)))
            .find_map(|(plates, bases)| Some((plates == u16::MAX, bases?)));
        let Some((exact, bases)) = bases else {
            return Laid {
                sides: fewest,
                exact: false,
            };
        };
        let lies = on
            .filter(|on| empty.is_of(on))
            .map_or(Vec::new(), |on| self.kinds_of(&on.per_side, &kinds));
        let inside = Ways::new(&bases, &windows, Lying::HeaviestInside, ending).from(&lies);
        let anyhow: (Moves, Vec<Vec<usize>>) =
            Ways::new(&bases, &windows, Lying::Anyhow, ending).from(&lies);
        let sides = if anyhow.0 < inside.0 {
            anyhow.1
        } else {
            inside.1
        };
        Laid {
            sides: at.iter().filter_map(|&at| sides.get(at).cloned()).collect(),
            exact,
        }
    }

    /// The plates for one side, heaviest first.
    fn kinds(&self, equipment: Equipment) -> Vec<Kind> {
        let at_once = self.at_once(equipment);
        let plates = self.parts().plates.iter();
        plates
            .map(|plate| Kind {
                mass: fine(plate.mass),
                count: plate.pairs / at_once,
            })
            .collect()
    }

    /// The kinds of plates on a side, from the inside out, as far as they are the kit's own.
    fn kinds_of(&self, plates: &[Load], kinds: &[Kind]) -> Vec<usize> {
        let mut left: Vec<u8> = kinds.iter().map(|kind| kind.count).collect();
        plates
            .iter()
            .map_while(|plate| {
                let kind = self
                    .parts()
                    .plates
                    .iter()
                    .position(|own| own.mass == *plate)?;
                left[kind] = left[kind].checked_sub(1)?;
                Some(kind)
            })
            .collect()
    }

    fn fewest_kinds(&self, equipment: Equipment, mass: Fine) -> Option<Vec<usize>> {
        let plates = self.side(equipment).plates(mass)?;
        let own = &self.parts().plates;
        plates
            .iter()
            .map(|plate| own.iter().position(|own| own.mass == *plate))
            .collect()
    }

    fn loading_of(&self, empty: &Empty<'_>, kinds: &[usize]) -> Loading {
        Loading {
            bar: empty.name.cloned(),
            empty: empty.shown,
            per_side: kinds
                .iter()
                .map(|&kind| self.parts().plates[kind].mass)
                .collect(),
            unit: self.unit(),
        }
    }
}

impl Empty<'_> {
    /// True when that is a loading of this bar.
    fn is_of(&self, loading: &Loading) -> bool {
        self.name == loading.bar.as_ref() && self.shown == loading.empty
    }
}

#[cfg(test)]
mod tests;
