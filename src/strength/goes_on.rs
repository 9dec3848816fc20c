//! How a line of sets goes on from what was done in this session, where it plans no step.

use super::prescribed::DoneSet;
use super::set_because::SetBecause;
use super::set_load::SetToLoad;
use crate::sheet::{LoadPolicy, PlannedSet, SetKind};
use crate::units::Load;

impl SetToLoad<'_> {
    /// The load of the set before, else the work load.
    pub(super) fn same(&self, set: &PlannedSet) -> SetBecause {
        let before = match self.before(set) {
            Some((before, _)) => before.load,
            None => self.eased_before(set),
        };
        match before {
            Some(at) if Some(at) != self.base || self.ladder.fit(at).is_none() => {
                self.from(Some(at), |to| SetBecause::AsDone { at, to })
            }
            _ => self.from(self.base, |to| SetBecause::WorkLoad { to }),
        }
    }

    /// What the lines before that plan the same load were left at, where that is easier than the work load: who took less is not
    /// sent back to more by the next line (common practice, no source).
    fn eased_before(&self, set: &PlannedSet) -> Option<Load> {
        let plans_same = |done: &&DoneSet| {
            let line = self.block.sets.get(usize::from(done.key.line));
            let same = line.is_some_and(|line| {
                line.load == LoadPolicy::Same
                    && !matches!(line.kind, SetKind::RampUp { .. } | SetKind::BackOff { .. })
            });
            same && (done.key.block, done.key.drop) == (set.key.block, 0)
                && done.key.line < set.key.line
        };
        let last = self.done.iter().rev().filter(plans_same);
        let last = last.filter_map(|done| done.load).next()?;
        (self.ladder.is_harder(self.base?, last)).then_some(last)
    }

    /// Where the kit makes nothing for the exercise, what a back-off, a drop or a share of the maximum was done with in the
    /// set before of its line: nobody should be asked again. Never harder than what was done last.
    pub(super) fn like_before(&self, set: &PlannedSet) -> Option<SetBecause> {
        let alike = match set.kind {
            SetKind::RampUp { .. } => false,
            SetKind::BackOff { .. } => true,
            SetKind::Drop { .. } if set.key.drop > 0 => true,
            _ => matches!(set.load, LoadPolicy::ShareOfE1rm(_)),
        };
        let mut loaded = self.done.iter().rev().filter(|done| done.load.is_some());
        let last = loaded.clone().next()?.load?;
        let before = |done: &&DoneSet| {
            let (key, own) = (done.key, set.key);
            (key.block, key.line, key.drop) == (own.block, own.line, own.drop) && key.set < own.set
        };
        let at = loaded.find(before)?.load?;
        let fits = alike && !self.ladder.is_harder(at, last);
        fits.then_some(SetBecause::AsDone { at, to: at })
    }
}
