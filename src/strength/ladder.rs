//! The loads of one block as a ladder: which rung is harder, which easier, and which is on the safe side.

use super::because::{Because, Moved, Wish};
use crate::kit::{Choices, Kit};
use crate::sheet::{Block, Equipment, Step};
use crate::units::Load;

/// The loads that the kit can make for a block, in order of how hard they are.
pub(super) struct Ladder {
    choices: Choices,
    on: Equipment,
    assists: bool,
}

impl Ladder {
    /// The ladder of `block`, kept to the bar or stack that makes `beside` where one does.
    pub(super) fn new(block: &Block, kit: &Kit, beside: Option<Load>) -> Ladder {
        let on = block.exercise.equipment;
        Ladder {
            choices: match beside {
                Some(load) => kit.choices_beside(on, load),
                None => kit.choices(on),
            },
            on,
            assists: block.basis.assists(),
        }
    }

    /// True when the load assists, so that harder is less of it.
    pub(super) fn assists(&self) -> bool {
        self.assists
    }

    /// True when `a` is harder than `b`.
    pub(super) fn is_harder(&self, a: Load, b: Load) -> bool {
        if self.assists { a < b } else { a > b }
    }

    /// The harder of two.
    pub(super) fn harder_of(&self, a: Load, b: Load) -> Load {
        if self.is_harder(b, a) { b } else { a }
    }

    /// The nearest that can be made and is no harder than `load`.
    pub(super) fn fit(&self, load: Load) -> Option<Load> {
        if self.assists {
            self.choices.at_or_above(load)
        } else {
            self.choices.at_or_below(load)
        }
    }

    /// The easiest that can be made and is harder than `load`, for shares that fall below everything there is.
    pub(super) fn easiest_above(&self, load: Load) -> Option<Load> {
        if self.assists {
            self.choices.next_below(load)
        } else {
            self.choices.next_above(load)
        }
    }

    /// A step that way, or the nearest to it that can be made; always a real step. None where the kit ends.
    pub(super) fn step(&self, from: Load, step: Step, harder: bool) -> Option<Load> {
        let more = harder != self.assists;
        let next = if more {
            self.choices.next_above(from)
        } else {
            self.choices.next_below(from)
        };
        let Step::By(by) = step else {
            return next;
        };
        let aim = if more { from.plus(by) } else { from.minus(by) };
        self.choices
            .nearest(aim)
            .filter(|&load| if more { load > from } else { load < from })
            .or(next)
    }

    /// What becomes of last time's load under a wish; none when the kit makes nothing as easy.
    pub(super) fn moved(&self, at: Load, wish: Wish, step: Step) -> Option<Moved> {
        let to = match wish {
            Wish::Same => None,
            Wish::Harder => self.step(at, step, true),
            Wish::Easier => self.step(at, step, false),
        };
        Some(Moved {
            at,
            to: to.or_else(|| self.fit(at))?,
            wish,
            on: self.on,
            assists: self.assists,
        })
    }

    /// The because of a rule's wish, or that the kit has nothing for it.
    pub(super) fn because(
        &self,
        at: Load,
        wish: Wish,
        step: Step,
        because: impl FnOnce(Moved) -> Because,
    ) -> Because {
        self.moved(at, wish, step)
            .map_or(Because::OutOfKit { wanted: at }, because)
    }
}
