//! A step up of more than 10 % for which the kit has nothing smaller: reps above the range come before it (common practice,
//! no source).

use super::super::curves::Curve;
use super::super::history::SetResult;
use super::super::ladder::Ladder;
use super::super::moved::{Bound, Wish};
use crate::sheet::Step;
use crate::units::{Load, Reps, Rir};

/// More reps than these are never asked for, or twice the top of the range where that is fewer: from there on no curve
/// says anything, and the step must be within reach (common practice, no source).
const MOST_REPS: u16 = 30;

/// By what reps at one load are held against reps at another.
#[derive(Debug, Clone, Copy)]
pub(in super::super) struct Worth {
    /// The lifter's curve.
    pub curve: Curve,
    /// The reserve that the block aims at, at either load.
    pub reserve: Rir,
}

/// Such a step.
pub(super) struct Coarse {
    from: Load,
    to: Load,
    worth: Worth,
}

impl Coarse {
    /// The step up from `from`; none where the kit has one of 10 % or less, or nothing harder. From no load at all there is no
    /// share to speak of.
    pub(super) fn of(from: Load, up: Step, ladder: &Ladder, worth: Worth) -> Option<Coarse> {
        let moved = ladder.moved(from, Wish::Harder, up)?;
        let coarse = moved.bound == Some(Bound::KitStep) && !from.is_zero();
        coarse.then_some(Coarse {
            from,
            to: moved.to,
            worth,
        })
    }

    /// The load that it leads to.
    pub(super) fn to(&self) -> Load {
        self.to
    }

    /// The fewest reps that say by the curve that `low` come with the next load, the same reserve left at either; never
    /// fewer than `top`.
    ///
    /// Above the reps for which the curve holds its formula is used nevertheless: it only says for how long the step
    /// waits, and the most reps bound it.
    pub(super) fn reps(&self, low: Reps, top: Reps) -> Reps {
        let Worth { curve, reserve } = self.worth;
        let maximum = |load: Load, reps: u16| {
            load.kg() * curve.factor_on(reps.saturating_add(u16::from(reserve.get())))
        };
        let needed = maximum(self.to, low.get());
        let (top, most) = (top.get(), most(top));
        let enough = (top..most).find(|&reps| maximum(self.from, reps) >= needed);
        Reps::saturating(i64::from(enough.unwrap_or(most)))
    }

    /// Whether a set says that the next load will go: by its reps and, where that was told, by what was left beside them.
    pub(super) fn is_there(&self, set: &SetResult) -> bool {
        let aim = self.worth.reserve;
        let told = set.reserve.unwrap_or(aim);
        let reps = i64::from(set.reps.get()) + i64::from(told.get()) - i64::from(aim.get());
        // The most reps are enough whatever was left: the step must be within reach.
        reps >= i64::from(self.reps(set.low, set.top).get()) || set.reps.get() >= most(set.top)
    }
}

/// More reps than these are not asked for where the range ends at `top`.
fn most(top: Reps) -> u16 {
    let top = top.get();
    top.saturating_mul(2).min(MOST_REPS).max(top)
}

#[cfg(test)]
#[path = "coarse_tests.rs"]
mod tests;
