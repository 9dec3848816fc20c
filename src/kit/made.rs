//! What follows from the parts of a kit and is worked out once: the sums of its plates, and the loads of everything.

use super::choices::Choices;
use super::mass::{Fine, load_of};
use super::parts::{KitParts, Stack, UnfitKit};
use super::side::Side;
use crate::units::Load;
use rust_decimal::Decimal;

/// Loads and sums.
#[derive(Debug)]
pub(super) struct Made {
    /// One side of a bar.
    pub(super) bar: Side,
    /// One side of a handle, where two are loaded at once; else it is as one of a bar.
    pub(super) handle: Option<Side>,
    /// All loads on bars, and those of each bar.
    pub(super) on_bars: (Choices, Vec<Choices>),
    /// All loads on handles.
    pub(super) on_handles: Choices,
    /// Fixed dumbbells.
    pub(super) dumbbells: Choices,
    /// All loads on stacks, and those of each stack.
    pub(super) on_stacks: (Choices, Vec<Choices>),
}

impl Made {
    /// Works them out.
    ///
    /// # Errors
    /// [`UnfitKit::TooManySums`].
    pub(super) fn new(parts: &KitParts) -> Result<Made, UnfitKit> {
        let bar = Side::new(&parts.plates, 1)?;
        let handle = match &parts.handles {
            Some(handle) if handle.count > 1 => Some(Side::new(&parts.plates, handle.count)?),
            _ => None,
        };
        let on = |empty: Fine, side: &Side| -> Vec<Load> {
            let masses = side.masses();
            masses
                .filter_map(|mass| load_of(empty + 2 * mass, parts.unit))
                .collect()
        };
        let bars = parts.bars.iter().map(|one| on(one.with_collars(), &bar));
        let handles = parts.handles.iter();
        let handles = handles.flat_map(|one| {
            let side = handle.as_ref().unwrap_or(&bar);
            on(one.empty(), side)
        });
        let on_handles = Choices::listed(handles.collect());
        Ok(Made {
            on_bars: together(bars.collect()),
            on_handles,
            dumbbells: Choices::listed(parts.dumbbells.clone()),
            on_stacks: together(parts.stacks.iter().map(Stack::loads).collect()),
            bar,
            handle,
        })
    }
}

fn together(each: Vec<Vec<Load>>) -> (Choices, Vec<Choices>) {
    let all = Choices::listed(each.concat());
    (all, each.into_iter().map(Choices::listed).collect())
}

impl Stack {
    /// The loads at the positions of the pin, rising.
    pub(super) fn positions(&self) -> impl Iterator<Item = Load> {
        let steps = if self.step.is_zero() {
            Decimal::ZERO
        } else {
            ((self.last.kg() - self.first.kg()) / self.step.kg()).floor()
        };
        let mut next = Decimal::ZERO;
        std::iter::from_fn(move || {
            let at = next;
            next += Decimal::ONE;
            (at <= steps).then(|| self.first.plus(self.step.times(at)))
        })
    }

    /// All loads: each position with any of the add-ons on top.
    fn loads(&self) -> Vec<Load> {
        let mut loads: Vec<Load> = self.positions().collect();
        for &add_on in &self.add_ons {
            let with: Vec<Load> = loads.iter().map(|load| load.plus(add_on)).collect();
            loads.extend(with);
        }
        loads
    }
}
