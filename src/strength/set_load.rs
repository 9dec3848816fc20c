//! The load of one set: its line's policy, its kind's share and what was done before it in this session.

use super::guided::{Guide, guide};
use super::ladder::Ladder;
use super::maximum::{Lack, Maximum, Taken, WithBody};
use super::prescribed::{Base, DoneSet, Prescribed};
use super::set_because::{SetBecause, ShareOf};
use crate::kit::Kit;
use crate::order;
use crate::sheet::{Block, LoadPolicy, PlannedSet, SetKind, Sets, Step};
use crate::units::{Load, Share};

/// The load of `set`, always one that `kit` can make.
///
/// `base` is the block's work load as proposed, `done` holds the sets of this session that are over, in the
/// order they were done, and `maximum` is the estimate with the body mass of the day: where the body is moved, a share is
/// taken of both together. Sets between the last one done and `set` that are neither done nor passed over are taken to
/// go as planned, so that a whole block can be looked at ahead. After an overruled load the line goes on from what was done.
#[must_use]
pub fn set_load(
    block: &Block,
    set: &PlannedSet,
    base: impl Into<Base>,
    done: &[DoneSet],
    maximum: impl Into<Maximum>,
    kit: &Kit,
) -> Prescribed {
    prescribe(block, set, base.into(), done, maximum.into(), kit)
}

fn prescribe(
    block: &Block,
    set: &PlannedSet,
    base: Base,
    done: &[DoneSet],
    maximum: Maximum,
    kit: &Kit,
) -> Prescribed {
    let (guided, because) = if block.basis.has_load() {
        let done_last = done.iter().rev().find_map(|done| done.load);
        let beside = if base.guided { done_last } else { None };
        let wanted = SetToLoad {
            block,
            base: base.load,
            light: base.light,
            done,
            maximum,
            ladder: Ladder::new(block, kit, beside.or(base.load)),
        };
        if base.guided {
            wanted.guided(set)
        } else {
            (false, wanted.kind(set))
        }
    } else {
        (false, SetBecause::NoLoad)
    };
    Prescribed {
        load: because.load(),
        because,
        guided,
    }
}

/// What a set's load is worked out from.
pub(super) struct SetToLoad<'a> {
    pub(super) block: &'a Block,
    pub(super) base: Option<Load>,
    pub(super) light: Option<Share>,
    pub(super) done: &'a [DoneSet],
    pub(super) maximum: Maximum,
    pub(super) ladder: Ladder,
}

impl SetToLoad<'_> {
    /// The set of a guided start, and whether the work load is still looked for. Ramp-ups are part of the search;
    /// back-offs and drops follow what was done as ever.
    fn guided(mut self, set: &PlannedSet) -> (bool, SetBecause) {
        let searches = match set.kind {
            SetKind::BackOff { .. } => false,
            SetKind::Drop { .. } => set.key.drop == 0,
            _ => true,
        };
        match guide(self.block, self.done, &self.ladder) {
            Guide::Begin => {
                let because = self.from(self.base, |to| SetBecause::WorkLoad { to });
                (true, because)
            }
            Guide::Next(because) if searches => (true, because),
            Guide::Next(because) => {
                self.base = because.load();
                (false, self.kind(set))
            }
            Guide::Found(at) => {
                self.base = Some(at);
                let because = match self.kind(set) {
                    // The work load of the block is none that was proposed: it was found on the way.
                    SetBecause::WorkLoad { to } => SetBecause::AsDone { at, to },
                    because => because,
                };
                (false, because)
            }
        }
    }

    fn kind(&self, set: &PlannedSet) -> SetBecause {
        match self.planned(set) {
            because @ SetBecause::OutOfKit { .. } if self.ladder.is_empty() => {
                self.like_before(set).unwrap_or(because)
            }
            because => because,
        }
    }

    fn planned(&self, set: &PlannedSet) -> SetBecause {
        match &set.kind {
            SetKind::RampUp { shares } => match (pick(shares, set.key.set), self.first_work()) {
                (Some(&share), Some(whole)) => self.share(ShareOf::WorkLoad, share, whole),
                _ => SetBecause::NothingKnown,
            },
            SetKind::BackOff { share } => match self.top().or_else(|| self.first_work()) {
                Some(whole) => self.share(ShareOf::BackOff, *share, whole),
                None => SetBecause::NothingKnown,
            },
            SetKind::Drop { keep, .. } if set.key.drop > 0 => self.drop(set, *keep),
            SetKind::Drop { .. } | SetKind::Work | SetKind::Cluster { .. } | SetKind::ToFailure => {
                self.policy(set)
            }
        }
    }

    fn policy(&self, set: &PlannedSet) -> SetBecause {
        match &set.load {
            LoadPolicy::Same => self.same(set),
            LoadPolicy::Rising(step) => self.rising(set, *step),
            LoadPolicy::Falling(step) => self.stepped(set, *step, false),
            LoadPolicy::List(loads) => self.listed(loads, set.key.set),
            LoadPolicy::ShareOfTop(shares) => {
                match (pick(shares, set.key.set), self.top_beside(), self.base) {
                    (Some(&share), Some(top), _) => self.share(ShareOf::Top, share, top),
                    (Some(&share), None, Some(base)) => self.share(ShareOf::Base, share, base),
                    _ => SetBecause::NothingKnown,
                }
            }
            LoadPolicy::ShareOfE1rm(share) => self.of_maximum_or_instead(set, *share),
            LoadPolicy::RisingByOutcome { planned, large } => self.outcome(set, *planned, *large),
        }
    }

    /// The load fitted to the kit with its because, or why there is none. Where the kit makes nothing at all for the
    /// exercise, what was done today can be had all the same.
    pub(super) fn from(
        &self,
        load: Option<Load>,
        because: impl FnOnce(Load) -> SetBecause,
    ) -> SetBecause {
        let Some(wanted) = load else {
            return SetBecause::NothingKnown;
        };
        let was_done = || self.done.iter().any(|done| done.load == Some(wanted));
        let done = || (self.ladder.is_empty() && was_done()).then_some(wanted);
        match self.ladder.keep(wanted).or_else(done) {
            Some(to) => because(to),
            None => SetBecause::OutOfKit { wanted },
        }
    }

    /// A share of another load, nearest below; where the kit makes nothing so light, its lightest. A share up to 100 %
    /// is never above the whole.
    pub(super) fn share(&self, of: ShareOf, share: Share, whole: Load) -> SetBecause {
        if self.ladder.assists() {
            let easier = self.ladder.step(whole, Step::Smallest, false);
            let easier = easier.filter(|_| share < Share::percent(100));
            return self.from(Some(easier.unwrap_or(whole)), |to| {
                SetBecause::MoreAssistance { from: whole, to }
            });
        }
        // Of a ramp-up no more than the whole: it leads to the work set.
        let most = if of == ShareOf::WorkLoad {
            share.min(Share::percent(100))
        } else {
            share
        };
        let wanted = whole.times(most.factor());
        let lightest = || {
            let lightest = self.ladder.easiest_above(wanted);
            lightest.filter(|&load| load <= whole)
        };
        // An estimate is no load that anybody wrote or did: it is fitted even where all of it is asked for.
        let fitted = match wanted == whole && of != ShareOf::E1rm {
            true => self.ladder.keep(wanted),
            false => self.ladder.fit(wanted),
        };
        match fitted.or_else(lightest) {
            Some(to) => SetBecause::Shared {
                of,
                share: most,
                whole,
                to,
                on: self.block.exercise.equipment,
            },
            None => SetBecause::OutOfKit { wanted },
        }
    }

    /// A share of the estimated maximum; where it or the body mass is missing, the work load.
    pub(super) fn of_maximum(&self, share: Share) -> SetBecause {
        match self.maximum.take(&self.block.basis, share) {
            Ok(Taken::Alone(e1rm)) => self.share(ShareOf::E1rm, share, e1rm),
            Ok(Taken::WithBody(taken)) => self.with_body(taken),
            Err(Lack::Estimate) => self.from(self.base, |to| SetBecause::NoEstimate { to }),
            Err(Lack::BodyMass) => self.from(self.base, |to| SetBecause::BodyMassUnknown { to }),
        }
    }

    /// The load beside the body, on the safe side; where the kit makes nothing so light, its lightest that the maximum
    /// allows.
    pub(super) fn with_body(&self, taken: WithBody) -> SetBecause {
        let lightest = || {
            let lightest = self.ladder.easiest_above(taken.to)?;
            let moved = if taken.assists {
                taken.body.minus(lightest)
            } else {
                taken.body.plus(lightest)
            };
            (moved <= taken.e1rm).then_some(lightest)
        };
        match self.ladder.fit(taken.to).or_else(lightest) {
            Some(to) => SetBecause::ShareWithBody(WithBody { to, ..taken }),
            None => SetBecause::OutOfKit { wanted: taken.to },
        }
    }

    /// What a drop keeps of the load before: of the drop before as done, else as planned.
    fn drop(&self, set: &PlannedSet, keep: Share) -> SetBecause {
        let mut before = set.clone();
        before.key.drop -= 1;
        let done = self.done.iter().rev().find(|d| d.key == before.key);
        let whole = done
            .and_then(|done| done.load)
            .or_else(|| self.kind(&before).load());
        match whole {
            Some(whole) => self.share(ShareOf::Drop, keep, whole),
            None => SetBecause::NothingKnown,
        }
    }

    /// The last set of this set's line that was done with a load before it, and how many sets from that one to this.
    ///
    /// Sets that were passed over do not count: nobody should meet two steps at once.
    pub(super) fn before(&self, set: &PlannedSet) -> Option<(&DoneSet, u8)> {
        let mut in_line: Vec<&DoneSet> = self
            .done
            .iter()
            .filter(|d| d.key.block == set.key.block && d.key.line == set.key.line)
            .filter(|d| d.key.drop == 0 && d.key.set < set.key.set)
            .collect();
        order::by_key(&mut in_line, |d| d.key.set);
        let at = in_line.iter().rposition(|d| d.load.is_some())?;
        let passed_over = in_line.len() - 1 - at;
        let last = in_line[at];
        let steps = usize::from(set.key.set - last.key.set).saturating_sub(passed_over);
        Some((last, steps.max(1) as u8))
    }

    /// Where the steps of a line start from, and how many lead to this set.
    fn start(&self, set: &PlannedSet) -> Option<(Load, u8)> {
        match self.before(set) {
            Some((before, steps)) => Some((before.load?, steps)),
            None => {
                let passed_over = self.done.iter().filter(|d| {
                    d.key.block == set.key.block
                        && d.key.line == set.key.line
                        && d.key.set < set.key.set
                        && d.key.drop == 0
                });
                let steps = usize::from(set.key.set).saturating_sub(passed_over.count());
                Some((self.base?, steps as u8))
            }
        }
    }

    pub(super) fn stepped(&self, set: &PlannedSet, step: Step, harder: bool) -> SetBecause {
        match self.start(set) {
            None => SetBecause::NothingKnown,
            Some((from, 0)) => self.from(Some(from), |to| SetBecause::WorkLoad { to }),
            Some((from, steps)) => self.stepped_from(from, step, steps, harder),
        }
    }

    /// So many steps from a load, told as steps.
    pub(super) fn stepped_from(
        &self,
        from: Load,
        step: Step,
        steps: u8,
        harder: bool,
    ) -> SetBecause {
        self.steps(from, step, steps, harder, |to| SetBecause::Stepped {
            from,
            steps,
            harder,
            to,
        })
    }

    /// So many steps from a load; where the kit ends before, the last that it makes.
    pub(super) fn steps(
        &self,
        from: Load,
        step: Step,
        steps: u8,
        harder: bool,
        because: impl FnOnce(Load) -> SetBecause,
    ) -> SetBecause {
        let next = |at: Load, _: u8| self.ladder.step(at, step, harder).ok_or(at);
        match (0..steps).try_fold(from, next) {
            Ok(to) => because(to),
            Err(at) => self.from(Some(at), |at| SetBecause::KitEnds {
                at,
                heavier: harder != self.ladder.assists(),
            }),
        }
    }

    fn listed(&self, loads: &[Load], index: u8) -> SetBecause {
        let number = usize::from(index).min(loads.len().saturating_sub(1)) + 1;
        match loads.get(number - 1) {
            Some(&wanted) => {
                self.from(Some(wanted), |to| SetBecause::Listed { number, wanted, to })
            }
            None => SetBecause::NothingKnown,
        }
    }

    /// The load of the block's first work set, which ramp-ups lead to, as the kit makes it.
    fn first_work(&self) -> Option<Load> {
        let work = self.block.sets.iter().find(|sets| sets.kind.is_work());
        let first = match work.map(|sets: &Sets| &sets.load) {
            Some(LoadPolicy::List(loads)) => self.listed(loads, 0),
            Some(LoadPolicy::ShareOfE1rm(share)) => self.of_maximum(*share),
            Some(LoadPolicy::ShareOfTop(shares)) => {
                self.share(ShareOf::Base, *shares.first()?, self.base?)
            }
            _ => return self.base,
        };
        match first {
            SetBecause::OutOfKit { wanted } => Some(wanted),
            because => because.load().or(self.base),
        }
    }

    /// The hardest load of the block's sets done, ramp-ups aside, and those of which no rep was done.
    fn top(&self) -> Option<Load> {
        self.top_of(|_| true)
    }

    /// The same of the lines that are no shares of it: a share of a share would get less from set to set.
    fn top_beside(&self) -> Option<Load> {
        self.top_of(|sets| !matches!(sets.load, LoadPolicy::ShareOfTop(_)))
    }

    pub(super) fn top_of(&self, counts: impl Fn(&Sets) -> bool) -> Option<Load> {
        let is_work = |done: &&DoneSet| {
            let sets = self.block.sets.get(usize::from(done.key.line));
            done.key.block == self.block.id
                && sets.is_some_and(|sets| sets.kind.is_work() && counts(sets))
                && done.reps.is_none_or(|reps| reps.get() > 0)
        };
        let work = self.done.iter().filter(is_work);
        work.filter_map(|done| done.load)
            .reduce(|a, b| self.ladder.harder_of(a, b))
    }
}

/// The entry of a list for an index; the last one stays.
fn pick<T>(list: &[T], index: u8) -> Option<&T> {
    list.get(usize::from(index)).or(list.last())
}

#[cfg(test)]
#[path = "set_load_tests.rs"]
pub(super) mod tests;

#[cfg(test)]
#[path = "goes_on_tests.rs"]
mod goes_on_tests;

#[cfg(test)]
#[path = "guided_tests.rs"]
mod guided_tests;

#[cfg(test)]
#[path = "guided_ends_tests.rs"]
mod guided_ends_tests;
