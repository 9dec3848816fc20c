//! The next load by what came of the set before it.

use super::set_because::{OutcomeStep, SetBecause};
use super::set_load::SetToLoad;
use crate::sheet::{PlannedSet, Step};
use crate::units::Reps;

/// More reps than this missing call for a lighter set rather than the same again: the 2-for-2 rule turned round
/// (common practice, no source).
const FAR_BELOW: u16 = 2;

impl SetToLoad<'_> {
    /// A step up, or the load of the set before once more where that had fewer reps than were asked for: more load would be
    /// missed too (common practice, no source).
    pub(super) fn rising(&self, set: &PlannedSet, step: Step) -> SetBecause {
        let missed = self.before(set).and_then(|(before, steps)| {
            let (low, top) = asked(set)?;
            let reps = before.reps.filter(|reps| *reps < low)?;
            Some((before.load?, steps, reps, low, top))
        });
        match missed {
            None => self.stepped(set, step, true),
            Some((from, 1, reps, low, top)) => self.from(Some(from), |to| SetBecause::Outcome {
                reps,
                low,
                top,
                step: OutcomeStep::Stay,
                to,
            }),
            // Further ahead: of the sets between, the first is the one that waits.
            Some((from, sets, ..)) => self.stepped_from(from, step, sets - 1, true),
        }
    }

    /// The next load by the reps of the set before: larger step, planned step, the same, or where more than two reps
    /// are missing a planned step down (common practice, no source). Of a target without width, its number gives the
    /// planned step and more than that the large one.
    pub(super) fn outcome(&self, set: &PlannedSet, planned: Step, large: Step) -> SetBecause {
        let Some((before, 1)) = self.before(set) else {
            return self.stepped(set, planned, true);
        };
        let (Some(from), Some(reps), Some((low, top))) = (before.load, before.reps, asked(set))
        else {
            return self.stepped(set, planned, true);
        };
        let at_top = if low < top { reps >= top } else { reps > top };
        let outcome = |step| {
            move |to| SetBecause::Outcome {
                reps,
                low,
                top,
                step,
                to,
            }
        };
        if at_top {
            self.steps(from, large, 1, true, outcome(OutcomeStep::Large))
        } else if reps >= low {
            self.steps(from, planned, 1, true, outcome(OutcomeStep::Planned))
        } else if reps.get().saturating_add(FAR_BELOW) < low.get() {
            self.steps(from, planned, 1, false, outcome(OutcomeStep::Down))
        } else {
            self.from(Some(from), outcome(OutcomeStep::Stay))
        }
    }
}

/// The fewest and the most reps that a whole set asks for; none where it does not count plain reps.
fn asked(set: &PlannedSet) -> Option<(Reps, Reps)> {
    let whole = set.kind.whole(set.target.plain_reps()?);
    Some((whole.low(), whole.top()))
}

#[cfg(test)]
#[path = "outcome_tests.rs"]
mod tests;
