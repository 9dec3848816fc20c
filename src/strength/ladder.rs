//! The loads of one block as a ladder: which rung is harder, which easier, and which is on the safe side.

use super::because::Because;
use super::moved::{Bound, Moved, Wish};
use super::safety::JUMP;
use crate::kit::{Choices, Kit};
use crate::sheet::{Block, Equipment, LoadBasis, Step};
use crate::units::{Load, Share};
use rust_decimal::Decimal;

/// The loads that the kit can make for a block, in order of how hard they are.
pub(super) struct Ladder {
    choices: Choices,
    on: Equipment,
    assists: bool,
    alone: bool,
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
            alone: block.basis == LoadBasis::External,
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

    /// The easier of two.
    pub(super) fn easier_of(&self, a: Load, b: Load) -> Load {
        if self.is_harder(a, b) { b } else { a }
    }

    /// True when the kit makes nothing at all.
    pub(super) fn is_empty(&self) -> bool {
        self.choices.at_or_above(Load::ZERO).is_none()
    }

    /// The nearest that can be made and is no harder than `load`.
    pub(super) fn fit(&self, load: Load) -> Option<Load> {
        if self.assists {
            self.choices.at_or_above(load)
        } else {
            self.choices.at_or_below(load)
        }
    }

    /// `load`, which was written or done, where just that can be made; else what [`Ladder::fit`] makes of it. What was worked
    /// out is fitted: of equipment that nobody knows any load could be had, and 63.74 kg helps no one.
    pub(super) fn keep(&self, load: Load) -> Option<Load> {
        match self.choices.contains(load) {
            true => Some(load),
            false => self.fit(load),
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

    /// The easiest load there is, for loads that are not written as assistance: of that there is no least hard.
    pub(super) fn lightest(&self) -> Option<Load> {
        if self.assists {
            None
        } else if self.alone {
            self.choices.next_above(Load::ZERO)
        } else {
            self.choices.at_or_above(Load::ZERO)
        }
    }

    /// At least a step harder, and up to `aim`; none where the kit ends. `aim` is a load, not a step.
    pub(super) fn up_to(&self, from: Load, aim: Load) -> Option<Load> {
        let next = self.step(from, Step::Smallest, true)?;
        Some(
            self.fit(aim)
                .map_or(next, |load| self.harder_of(next, load)),
        )
    }

    /// A rule's step up, and what it ran into. Of loads moved alone no step is above 10 %, unless the kit has nothing
    /// smaller; of loads added to the body the share is not known here.
    fn raise(&self, from: Load, step: Step) -> Option<(Load, Option<Bound>)> {
        let wanted = self.step(from, step, true)?;
        let most = from.times(JUMP);
        if !self.alone || wanted <= most {
            return Some((wanted, None));
        }
        let to = self.up_to(from, most)?;
        let bound = if to > most {
            Bound::KitStep
        } else {
            Bound::Tenth
        };
        Some((to, Some(bound)))
    }

    /// A load so much lighter, or the nearest below; where the kit makes nothing so light, its lightest, though it be
    /// harder. None where it makes nothing. A share of an assistance says nothing about how hard a set is: there it is
    /// a step more assistance, and one more for each tenth.
    pub(super) fn lightened(&self, from: Load, less: Share) -> Option<Load> {
        if self.assists {
            let tenths = (less.in_percent() / Decimal::TEN).floor();
            let mut at = self.keep(from)?;
            let mut steps = Decimal::ZERO;
            while steps <= tenths {
                at = self.step(at, Step::Smallest, false).unwrap_or(at);
                steps += Decimal::ONE;
            }
            return Some(at);
        }
        let wanted = from.times(Decimal::ONE - less.factor());
        self.fit(wanted)
            .or_else(|| self.choices.at_or_above(Load::ZERO))
    }

    /// From which load to which easier one.
    pub(super) fn eased(&self, at: Load, to: Load) -> Moved {
        Moved {
            at,
            to,
            wish: Wish::Easier,
            on: self.on,
            assists: self.assists,
            named: None,
            bound: None,
            span: None,
        }
    }

    /// Why there is no load: the kit makes nothing as easy.
    pub(super) fn out_of_kit(&self, wanted: Load) -> Because {
        Because::OutOfKit {
            wanted,
            easiest: self.easiest_above(wanted),
        }
    }

    /// What becomes of last time's load under a wish; none when the kit makes nothing as easy.
    pub(super) fn moved(&self, at: Load, wish: Wish, step: Step) -> Option<Moved> {
        let (to, bound) = match wish {
            Wish::Same => (None, None),
            Wish::Harder => self.raise(at, step).unzip(),
            Wish::Easier => (self.step(at, step, false), None),
        };
        let bound = bound.flatten();
        let named = match step {
            Step::By(by) if to.is_some() && bound.is_none() => Some(by),
            Step::By(_) | Step::Smallest => None,
        };
        Some(Moved {
            at,
            to: to.or_else(|| self.keep(at))?,
            wish,
            on: self.on,
            assists: self.assists,
            named,
            bound,
            span: None,
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
            .map_or_else(|| self.out_of_kit(at), because)
    }
}
