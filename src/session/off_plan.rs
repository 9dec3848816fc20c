//! How the set that was logged last differs from what it asked for, in words.

use super::done::{Amount, StageAmount};
use super::slot::{Logged, Slot};
use super::state::State;
use crate::say;
use crate::sheet::{LoadBasis, Progression, RepTarget, SetKind, Stage, Target};
use crate::strength::Because;
use crate::units::{Load, Unit};
use crate::words::many_of;

impl State {
    /// How the set that was logged last differs from its plan; none where it does not. What follows from it is the
    /// because of the next set.
    ///
    /// Another amount than was asked for (reps, seconds, metres; a stage that was short), another load than was proposed, or a
    /// reserve below the one aimed at. More in reserve than aimed at is no fault and is not told; nor are more reps where the
    /// block's rule asks for them.
    #[must_use]
    pub fn off_plan(&self, unit: Unit) -> Option<String> {
        let slot = self.last_logged()?;
        let logged = slot.logged()?;
        let basis = &self.block_of(slot).basis;
        let mut said = amount(slot, logged, self.asks_beyond(slot));
        said.extend(load(basis, logged, unit));
        said.extend(reserve(slot, logged));
        (!said.is_empty()).then(|| say!("Off plan: {what}.", what = said.join("; ")))
    }

    /// True where the load rises only by more reps than the set asks for: by the 2-for-2 rule, and before a coarse step. In a
    /// light week no rule asks for anything.
    fn asks_beyond(&self, slot: &Slot) -> bool {
        let by_rule = matches!(
            self.block_of(slot).progression,
            Progression::TwoForTwo { .. }
        );
        let waits = self
            .proposal(slot)
            .is_some_and(|proposal| matches!(proposal.because, Because::StepWaits { .. }));
        let asks = waits || (by_rule && !self.began.light);
        asks && slot.planned.kind.is_work()
    }
}

/// Another amount than was asked for. Where more reps are `beyond` what is asked and yet wanted, or no rep more was to be had,
/// more than that is no fault; nor is it in a stage, the last of which often goes on.
fn amount(slot: &Slot, logged: &Logged, beyond: bool) -> Vec<String> {
    let kind = &slot.planned.kind;
    let open = matches!(kind, SetKind::ToFailure);
    let off = |done: u16, asked: u16| done < asked || (done > asked && !open);
    let said = match (&slot.planned.target, &logged.done.amount) {
        (Target::Reps(asked), done) => reps(kind.whole(*asked), done, open || beyond),
        (Target::Timed(asked), Amount::Timed(done)) => off(done.get(), asked.get()).then(|| {
            say!(
                "held {done} where {asked} were asked",
                done = done.clock(),
                asked = asked.clock()
            )
        }),
        (Target::Distance(asked), Amount::Distance(done)) => off(done.get(), asked.get())
            .then(|| say!("{done} m where {asked} m were asked", done, asked)),
        (Target::Stages(asked), Amount::Stages(done)) => {
            return asked.iter().zip(done).filter_map(short).collect();
        }
        _ => None,
    };
    said.into_iter().collect()
}

fn reps(asked: RepTarget, done: &Amount, open: bool) -> Option<String> {
    let done = done.reps()?;
    let above = match asked {
        RepTarget::Fixed(top) | RepTarget::Range(_, top) => done > top && !open,
        RepTarget::AtLeast(_) => false,
    };
    (above || done < asked.low()).then(|| {
        many_of(
            usize::from(done.get()),
            "{n} rep where {asked} were asked",
            "{n} reps where {asked} were asked",
            &[("asked", &asked)],
        )
    })
}

/// A stage that was done short.
fn short((stage, done): (&Stage, &StageAmount)) -> Option<String> {
    let (asked, got) = match (stage, done) {
        (Stage::Hold { seconds }, StageAmount::Hold(held)) => (seconds.get(), held.get()),
        (Stage::Reps { reps, .. }, StageAmount::Reps(done))
        | (Stage::Partials { reps }, StageAmount::Partials(done)) => (reps.low().get(), done.get()),
        _ => return None,
    };
    let done = match done {
        StageAmount::Hold(_) => format!("{got} s"),
        _ => got.to_string(),
    };
    (got < asked).then(|| say!("{done} in place of {asked}", done, asked = stage.said()))
}

fn load(basis: &LoadBasis, logged: &Logged, unit: Unit) -> Option<String> {
    let (done, proposed): (Load, Load) = (logged.done.load?, logged.proposed?);
    if done == proposed {
        return None;
    }
    let load = proposed.shown(unit);
    Some(match (basis.assists(), done < proposed) {
        (true, true) => say!("assistance below the {load} proposed", load),
        (true, false) => say!("assistance above the {load} proposed", load),
        (false, true) => say!("load below the {load} proposed", load),
        (false, false) => say!("load above the {load} proposed", load),
    })
}

fn reserve(slot: &Slot, logged: &Logged) -> Option<String> {
    let (done, aim) = (logged.done.reserve?, slot.planned.reserve?);
    (done < aim).then(|| say!("{done} in reserve where {aim} were aimed at", done, aim))
}
