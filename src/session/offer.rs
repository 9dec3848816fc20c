//! What a tap on the pad logs: what is prescribed, what was chosen by hand, or what was cued so far.

use super::done::{Amount, Done, StageAmount};
use super::event::{Moment, What};
use super::machine::amount;
use super::slot::{Phase, Slot};
use super::state::State;
use crate::cues::{Counted, Position, counted, position, set_timeline};
use crate::sheet::{PlannedSet, SetKey, Stage, Target};
use crate::units::{Load, Reps, Seconds};

/// Seconds counted in before the cues of a set.
pub const COUNT_IN_SECONDS: u8 = 3;

/// True where `offered` is in stages that are all as prescribed, but for the last that has a count.
fn as_prescribed(target: &Target, offered: &Amount) -> bool {
    matches!(offered, Amount::Stages(_)) && amount(target, offered.reps()) == *offered
}

/// The place of the stage whose count a pad shows and steps: the last one that has a count, and where the set was left before
/// it, the last one that was begun. None for what is no stages, and where all of them are held.
#[must_use]
pub fn stage_offered(target: &Target, offered: &Amount) -> Option<usize> {
    let Amount::Stages(stages) = offered else {
        return None;
    };
    let whole = as_prescribed(target, offered);
    let begun = stages.iter().rposition(|stage| {
        let count = stage.count();
        count.is_some_and(|count| whole || count > Reps::MIN)
    });
    begun.or_else(|| stages.iter().position(|stage| stage.count().is_some()))
}

impl Slot {
    /// The amount that a tap logs while no cues run: what was heard until the set was called off, else what was chosen,
    /// else what is prescribed.
    #[must_use]
    pub fn offered(&self) -> Amount {
        let chosen = self.heard.as_ref().or(self.amount.as_ref());
        chosen
            .cloned()
            .unwrap_or_else(|| amount(&self.planned.target, self.reps.or(self.planned.offered)))
    }

    /// Forgets what was chosen or heard.
    pub(super) fn offer_as_planned(&mut self) {
        self.reps = None;
        self.amount = None;
        self.heard = None;
        self.by_hand = false;
    }

    /// The event that offers one rep, or five seconds or metres, more or fewer than `offered`; none at either end of what there
    /// is: what changes nothing is nothing that could be undone.
    #[must_use]
    pub fn offer_stepped(&self, offered: Amount, more: bool) -> Option<What> {
        let target = &self.planned.target;
        // The other stages are as prescribed: the reps say it all.
        let whole = matches!(offered, Amount::Reps(_)) || as_prescribed(target, &offered);
        let stepped = match stage_offered(target, &offered) {
            Some(at) => offered.stage_stepped(at, more),
            None => {
                let done = Done {
                    load: None,
                    amount: offered.clone(),
                    reserve: None,
                };
                done.stepped(more).amount
            }
        };
        let set = self.planned.key;
        let what = match (stepped.reps(), &stepped) {
            (Some(reps), Amount::Reps(_) | Amount::Stages(_)) if whole => {
                What::RepsChosen { set, reps }
            }
            _ => What::AmountChosen {
                set,
                amount: stepped.clone(),
            },
        };
        (stepped != offered).then_some(what)
    }
}

impl State {
    /// True while the cues of that set run.
    pub(super) fn works_on(&self, key: SetKey) -> bool {
        matches!(self.phase, Phase::Working { set, .. } if set == key)
    }

    /// What was cued so far of the set under way, the count-in being `count_in_s` seconds. None before the first rep or
    /// second is done, where the lifter chose a number since the start, and once all that is paced was heard: then what
    /// is prescribed is offered.
    #[must_use]
    pub fn heard(&self, now: &Moment, count_in_s: u8) -> Option<Amount> {
        let Phase::Working { set, since } = &self.phase else {
            return None;
        };
        let slot = self.slot(*set).filter(|slot| !slot.by_hand)?;
        let at_ms = u32::try_from(now.since(since)).unwrap_or(u32::MAX);
        let timeline = set_timeline(&slot.planned, count_in_s);
        match position(&timeline, at_ms) {
            Position::Running { .. } => amount_heard(&slot.planned, &counted(&timeline, at_ms)),
            Position::Open { .. } | Position::Over => None,
        }
    }

    /// The amount that a tap logs of `slot` now.
    #[must_use]
    pub fn offer(&self, slot: &Slot, now: &Moment, count_in_s: u8) -> Amount {
        let works = self.works_on(slot.planned.key);
        let heard = works.then(|| self.heard(now, count_in_s)).flatten();
        heard.unwrap_or_else(|| slot.offered())
    }

    /// What a tap logs of `slot` now; `load` is the prescribed load.
    #[must_use]
    pub fn done_as_offered(
        &self,
        slot: &Slot,
        load: Option<Load>,
        now: &Moment,
        count_in_s: u8,
    ) -> Done {
        Done {
            amount: self.offer(slot, now, count_in_s),
            ..slot.as_prescribed(load)
        }
    }

    /// From which number on a tap may count each rep of `slot`: from none where it has no tempo, and from what was asked
    /// for once its cues have said that much and the end is the lifter's. None for sets that the cues count, and where
    /// the sides work apart.
    #[must_use]
    pub fn counts_from(&self, slot: &Slot, now: &Moment, count_in_s: u8) -> Option<Reps> {
        let planned = &slot.planned;
        if !matches!(planned.target, Target::Reps(_)) || planned.sides.rounds() > 1 {
            return None;
        }
        if planned.tempo.is_none() {
            return Some(Reps::MIN);
        }
        let Phase::Working { set, since } = &self.phase else {
            return None;
        };
        let at_ms = u32::try_from(now.since(since)).unwrap_or(u32::MAX);
        let open = matches!(
            position(&set_timeline(planned, count_in_s), at_ms),
            Position::Open { .. }
        );
        (open && *set == planned.key)
            .then(|| self.offer(slot, now, count_in_s).reps())
            .flatten()
    }

    /// The event that calls the set off and keeps what was heard of it.
    #[must_use]
    pub fn stop(&self, set: SetKey, now: &Moment, count_in_s: u8) -> What {
        What::SetStopped {
            set,
            heard: self.heard(now, count_in_s),
        }
    }
}

/// What was cued of a set, as an amount of its target; none while nothing was done.
fn amount_heard(set: &PlannedSet, counted: &[Counted]) -> Option<Amount> {
    let reps = |side: u8| {
        let of_side = counted.iter().filter(|one| one.side == side);
        Reps::saturating(of_side.map(|one| i64::from(one.reps)).sum())
    };
    let held = |one: &Counted| Seconds::saturating(i64::from(one.held_ms / 1000));
    match &set.target {
        Target::Reps(_) if reps(0) == Reps::MIN => None,
        Target::Reps(_) if set.sides.rounds() > 1 => Some(Amount::of_sides(reps(0), reps(1))),
        Target::Reps(_) => Some(Amount::Reps(reps(0))),
        // One figure stands for both sides: that of the side which is under way.
        Target::Timed(_) => {
            let held = counted.last().map(held)?;
            (held > Seconds::MIN).then_some(Amount::Timed(held))
        }
        Target::Distance(_) => None,
        Target::Stages(stages) => {
            let side = counted.last()?.side;
            let of_stage = |at: usize| {
                let mut own = counted.iter().filter(|one| one.side == side);
                own.find(|one| usize::from(one.stage) == at)
            };
            let amounts = stages.iter().enumerate().map(|(at, stage)| {
                let one = of_stage(at);
                let reps = Reps::saturating(one.map_or(0, |one| i64::from(one.reps)));
                match stage {
                    Stage::Hold { .. } => StageAmount::Hold(one.map_or(Seconds::MIN, held)),
                    Stage::Reps { .. } => StageAmount::Reps(reps),
                    Stage::Partials { .. } => StageAmount::Partials(reps),
                }
            });
            let amounts: Vec<StageAmount> = amounts.collect();
            let nothing = |one: &StageAmount| {
                *one == StageAmount::Hold(Seconds::MIN) || one.count() == Some(Reps::MIN)
            };
            (!amounts.iter().all(nothing)).then_some(Amount::Stages(amounts))
        }
    }
}
