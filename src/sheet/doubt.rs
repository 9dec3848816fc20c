//! Doubts about a block: what can be written, but contradicts itself. Each is explained where it arises.

use super::block::Block;
use super::exercise::Equipment;
use super::kind::{SetKind, Sets};
use super::loads::LoadPolicy;
use super::progression::Progression;
use super::target::Target;
use crate::say;
use crate::units::{Load, Rir, Seconds, Share};
use crate::words::{decimal, many_of, t};
use std::fmt;

/// A rest from one set to the next that is shorter is asked about, in seconds; common practice, no source. None at all is
/// written on purpose.
const REST_LEAST: u16 = 10;

/// Something in a block that contradicts itself.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Doubt {
    /// A ramp-up set is heavier than the work sets.
    RampAboveWork(Share),
    /// Ramp-up sets that get lighter.
    RampFalls(Share, Share),
    /// A ramp-up behind work sets.
    RampAfterWork,
    /// A back-off set that is no lighter than the heaviest set.
    BackOffNotLighter(Share),
    /// A drop that takes nothing off.
    DropKeepsAll(Share),
    /// A share of the estimated maximum while nothing is known of the exercise, and no load to start from.
    NoStrengthKnown,
    /// A share of the heaviest load before any set was done.
    NothingHeavierYet,
    /// More loads, shares or reserves are listed than there are sets.
    ListedTooMany {
        /// How many are listed.
        listed: usize,
        /// How many sets there are.
        sets: u8,
    },
    /// A bar that is to take load off the body.
    BarAssists,
    /// A load for an exercise that takes none.
    LoadUnused(Load),
    /// A tempo where no reps are timed by it.
    TempoUnused,
    /// A rest of a few seconds: more likely that many minutes.
    RestShort(Seconds),
    /// The last set is further from failure than the one before.
    ReserveRises(Rir, Rir),
    /// A set to failure that is to leave so many.
    FailureLeaves(Rir),
    /// Plain work sets behind sets to failure.
    WorkAfterFailure,
    /// A rule that goes by the reserve of a set that is to leave none.
    NoReserveToGoBy,
    /// No set of work.
    NoWork,
}

/// A figure as the reader writes it.
fn figure(figure: &impl fmt::Display) -> String {
    decimal(&figure.to_string())
}

impl fmt::Display for Doubt {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Doubt::RampAboveWork(share) => f.write_str(&say!(
                "A ramp-up set at {share} is heavier than the work sets and is done at their load: use less than 100 %.",
                share = figure(share),
            )),
            Doubt::RampFalls(first, then) => f.write_str(&say!(
                "The ramp-up falls from {first} to {then}: put the lighter one first.",
                first = figure(first),
                then = figure(then),
            )),
            Doubt::RampAfterWork => {
                f.write_str(t("The ramp-up comes after work sets: move it to the front."))
            }
            Doubt::BackOffNotLighter(share) => f.write_str(&say!(
                "A back-off at {share} of the heaviest set is no lighter than it: use less than 100 %.",
                share = figure(share),
            )),
            Doubt::DropKeepsAll(share) => {
                f.write_str(&say!(
                    "A drop to {share} takes nothing off: use less than 100 %.",
                    share = figure(share),
                ))
            }
            Doubt::NoStrengthKnown => f.write_str(
                t("A share of the estimated maximum, but nothing is known of this exercise yet: give a load to start from."),
            ),
            Doubt::NothingHeavierYet => f.write_str(
                t("A share of the heaviest set, but no set comes before: put these sets behind it."),
            ),
            Doubt::ListedTooMany { listed, sets } => f.write_str(&many_of(
                usize::from(*sets),
                "{listed} are listed for {n} set: the last ones are not used.",
                "{listed} are listed for {n} sets: the last ones are not used.",
                &[("listed", listed)],
            )),
            Doubt::BarAssists => f.write_str(
                t("Assistance by a bar, which only adds load: take the load alone, or equipment that helps."),
            ),
            Doubt::LoadUnused(load) => f.write_str(&say!(
                "{load} to start from, but this exercise takes no figure of load: it is not used.",
                load = figure(load),
            )),
            Doubt::TempoUnused => {
                f.write_str(t("A tempo, but no reps that go by it: it is not used."))
            }
            Doubt::RestShort(rest) => f.write_str(&say!(
                "A rest of {rest} s: {rest} minutes would be {rest}:00.",
                rest
            )),
            Doubt::ReserveRises(before, last) => f.write_str(&say!(
                "The last set leaves {last} reps, the one before {before}: the last set is usually nearest to failure.",
                last,
                before,
            )),
            Doubt::FailureLeaves(reserve) => f.write_str(&say!(
                "A set to failure leaves nothing in reserve, but {reserve} is asked for: remove the reserve, or make it a plain set.",
                reserve
            )),
            Doubt::WorkAfterFailure => f.write_str(
                t("Work sets come behind sets to failure, and are done tired: put those to failure last."),
            ),
            Doubt::NoReserveToGoBy => f.write_str(
                t("The rule goes by what the last work set leaves in reserve, but that set goes to failure and leaves nothing, so the load never rises: choose another rule for the next time."),
            ),
            Doubt::NoWork => f.write_str(t("There are only ramp-up sets: add the work.")),
        }
    }
}

impl Block {
    /// What in the block contradicts itself. `known`: whether earlier sessions say how strong the lifter is in it.
    #[must_use]
    pub fn doubts(&self, known: bool) -> Vec<Doubt> {
        let mut doubts = Vec::new();
        let mut worked = false;
        let mut failed = false;
        for sets in &self.sets {
            if sets.kind == SetKind::Work && failed {
                doubts.push(Doubt::WorkAfterFailure);
            }
            failed |= sets.kind == SetKind::ToFailure;
            if !sets.kind.is_work() && worked {
                doubts.push(Doubt::RampAfterWork);
            }
            of_kind(sets, &mut doubts);
            of_load(sets, worked, known || self.start.is_some(), &mut doubts);
            if let [.., before, last] = sets.reserve[..]
                && last > before
            {
                doubts.push(Doubt::ReserveRises(before, last));
            }
            worked |= sets.kind.is_work();
        }
        if !worked {
            doubts.push(Doubt::NoWork);
        }
        if let (Progression::ShareOfE1rm { .. }, false) =
            (&self.progression, known || self.start.is_some())
        {
            doubts.push(Doubt::NoStrengthKnown);
        }
        if matches!(self.progression, Progression::ByReserve { .. }) && self.ends_at_limit() {
            doubts.push(Doubt::NoReserveToGoBy);
        }
        if self.basis.assists() && self.exercise.equipment == Equipment::Barbell {
            doubts.push(Doubt::BarAssists);
        }
        if let (Some(load), false) = (self.start, self.basis.has_load()) {
            doubts.push(Doubt::LoadUnused(load));
        }
        // Stages have tempos of their own.
        let timed = |sets: &Sets| matches!(sets.target, Target::Reps(_)) && sets.tempo.is_none();
        if self.tempo.is_some() && !self.sets.iter().any(timed) {
            doubts.push(Doubt::TempoUnused);
        }
        let rests = self.sets.iter().filter_map(|sets| sets.rest);
        let mut rests = rests.chain([self.rest]);
        let few = |rest: &Seconds| (1..REST_LEAST).contains(&rest.get());
        doubts.extend(rests.find(few).map(Doubt::RestShort));
        doubts.dedup();
        doubts
    }

    /// Whether the work set that a rule by reserve reads goes on until no rep more can be done: the last one that is plain and
    /// does not go by the maximum.
    fn ends_at_limit(&self) -> bool {
        let plain = |sets: &&Sets| {
            matches!(
                sets.kind,
                SetKind::Work | SetKind::Cluster { .. } | SetKind::ToFailure
            ) && matches!(sets.target, Target::Reps(_))
                && !matches!(sets.load, LoadPolicy::ShareOfE1rm(_))
        };
        self.sets.iter().rfind(plain).is_some_and(|sets| {
            let asked = sets.reserve_of(usize::from(sets.count.saturating_sub(1)));
            self.goes_to_limit(&sets.kind, &sets.target, asked)
        })
    }
}

fn of_kind(sets: &Sets, doubts: &mut Vec<Doubt>) {
    let whole = Share::percent(100);
    match &sets.kind {
        SetKind::RampUp { shares } => {
            let above = shares.iter().filter(|share| **share > whole);
            doubts.extend(above.map(|share| Doubt::RampAboveWork(*share)));
            let falls = shares.windows(2).filter(|pair| pair[0] > pair[1]);
            doubts.extend(falls.map(|pair| Doubt::RampFalls(pair[0], pair[1])));
        }
        SetKind::BackOff { share } if *share >= whole => {
            doubts.push(Doubt::BackOffNotLighter(*share));
        }
        SetKind::Drop { keep, .. } if *keep >= whole => doubts.push(Doubt::DropKeepsAll(*keep)),
        SetKind::ToFailure => {
            let asked = sets.reserve.iter().take(usize::from(sets.count)).max();
            let left = asked.filter(|reserve| reserve.get() > 0);
            doubts.extend(left.map(|reserve| Doubt::FailureLeaves(*reserve)));
        }
        _ => {}
    }
}

fn of_load(sets: &Sets, worked: bool, known: bool, doubts: &mut Vec<Doubt>) {
    let listed = match &sets.load {
        LoadPolicy::ShareOfE1rm(_) if !known => {
            doubts.push(Doubt::NoStrengthKnown);
            0
        }
        LoadPolicy::ShareOfTop(shares) => {
            if !worked {
                doubts.push(Doubt::NothingHeavierYet);
            }
            shares.len()
        }
        LoadPolicy::List(loads) => loads.len(),
        _ => 0,
    };
    let shares = match &sets.kind {
        SetKind::RampUp { shares } => shares.len(),
        _ => 0,
    };
    let listed = [listed, shares, sets.reserve.len()].into_iter();
    let too_many = listed.filter(|listed| *listed > usize::from(sets.count));
    doubts.extend(too_many.map(|listed| Doubt::ListedTooMany {
        listed,
        sets: sets.count,
    }));
}

#[cfg(test)]
#[path = "doubt_tests.rs"]
mod tests;
