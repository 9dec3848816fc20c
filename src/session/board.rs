//! The board: everything the floor shows of one set, as a function of state, kit and what is known of the exercise.

use super::bar::Means;
use super::ends::Ends;
use super::pair::Beside;
use super::slot::{Slot, Status};
use super::state::State;
use crate::kit::{Change, Kit, Loading};
use crate::say;
use crate::sheet::{ExerciseId, Line, LoadBasis, SetKey, SetKind, SideMode, Target, Tempo};
use crate::strength::{
    Above, Base, Because, Bound, DoneSet, Foretold, Known, Maximum, Performance, Prescribed,
    Proposal, SetBecause, Strength, lacks_body_mass, may_fall, moved_alike, set_load,
};
use crate::units::{Load, Reps, Rir, Seconds, Unit};
use crate::words::t;

/// What the floor shows of one set.
#[derive(Debug, Clone, PartialEq)]
pub struct Board {
    /// The set.
    pub key: SetKey,
    /// Name of the exercise, as it is said.
    pub exercise: String,
    /// What the exercise is, whatever it is called.
    pub exercise_id: ExerciseId,
    /// Kind of set.
    pub kind: &'static str,
    /// Number among the block's sets of this kind.
    pub number: usize,
    /// How many of this kind there are.
    pub of: usize,
    /// How it ends in the lifter's hands.
    pub ends: Ends,
    /// Rest that follows it, when another set does.
    pub then_rest: Option<Seconds>,
    /// What the load is added to.
    pub basis: LoadBasis,
    /// The load to use: the chosen one, else the prescribed one.
    pub load: Option<Load>,
    /// The prescribed load.
    pub prescribed: Option<Load>,
    /// True when another load than the prescribed one was chosen.
    pub overruled: bool,
    /// What it asks for.
    pub target: Target,
    /// Of a cluster: how many portions the target is asked for, and the pause between them.
    pub portions: Option<(u8, Seconds)>,
    /// Reps that the pad offers.
    pub reps: Option<Reps>,
    /// Reserve aimed at.
    pub aim: Option<Rir>,
    /// Reserve said already.
    pub reserve: Option<Rir>,
    /// True when the next load depends on the reserve of this set, which was not said yet.
    pub asks_reserve: bool,
    /// What is said of a load more than 10 % above the best done lately or, where nothing was, above what is proposed.
    pub jump: Option<&'static str>,
    /// How the sides share it.
    pub sides: SideMode,
    /// Tempo of its reps.
    pub tempo: Option<Tempo>,
    /// One form cue.
    pub cue: Option<Line>,
    /// Caution lines that are due now: what the load calls for, what the heat does with the first set after it was noted,
    /// and, with the first set of its block that they are for, the sheet's own and the usual ones.
    pub cautions: Vec<String>,
    /// The sheet's own and the usual caution lines and all others that were shown in this session, due now or not.
    pub cautions_known: Vec<String>,
    /// What could come down on the lifter in the set, which goes to failure.
    pub falls: Option<Above>,
    /// The warm-up of the sheet, while nothing was done yet.
    pub warm_up: Vec<Line>,
    /// Where the load comes from.
    pub because: SetBecause,
    /// True when the block wants the estimate, the body mass of the day is not known and the because does not ask for it.
    pub lacks_body_mass: bool,
    /// Where the block's work load comes from.
    pub proposal: Option<Because>,
    /// What the estimate says of the set, where it is a work set counted in reps.
    pub foretold: Option<Foretold>,
    /// True when a work set of its block was done in this session: reps that a fresh set has are not to be expected.
    pub worked: bool,
    /// True where the sheet itself says what the load is added to: no other exercise and no other band stands in its place.
    pub as_written: bool,
    /// The band that was proposed in words, where another one was chosen.
    pub band_proposed: Option<String>,
    /// The next lighter and the next heavier band of the kit, for a set with a band.
    pub bands: [Option<Line>; 2],
    /// Plates on the bar, for a barbell.
    pub loading: Option<Loading>,
    /// What changes on the bar since the set before.
    pub change: Option<Change>,
}

impl Board {
    /// True where the load is a jump that wants a second tap. The kit's smallest step, which a rule proposes once the reps say
    /// that it is there, has its caution and is not asked about.
    #[must_use]
    pub fn asks_twice(&self) -> bool {
        let moved = self.proposal.as_ref().and_then(Because::moved);
        let stepped = moved.filter(|moved| moved.bound == Some(Bound::KitStep));
        let own = !self.overruled && stepped.is_some_and(|moved| self.load == Some(moved.to));
        self.jump.is_some() && !own
    }

    /// Where the load comes from, in one sentence; a work load, or that there is none, by the rule that
    /// proposed it. A load that was chosen instead is told first.
    #[must_use]
    pub fn because(&self, unit: Unit) -> String {
        let because = match self.load.filter(|_| self.overruled) {
            Some(load) if self.prescribed.is_some() => say!(
                "{load} chosen ({because})",
                load = self.basis.told(load, unit),
                because = self.rule_said(unit),
            ),
            _ => self.rule_said(unit),
        };
        let fresh = self.foretold.filter(|_| !self.worked);
        let reps = fresh.map(|foretold| foretold.reps_said());
        match reps.filter(|reps| !reps.is_empty()) {
            Some(reps) => format!("{because}; {reps}"),
            None => because,
        }
    }

    fn rule_said(&self, unit: Unit) -> String {
        // A band has no figure, but it is a load.
        if let Some(band) = self.basis.band() {
            return match &self.band_proposed {
                Some(because) => say!("{load} chosen ({because})", load = band, because),
                None if self.as_written => t("as the sheet says").to_owned(),
                None => band,
            };
        }
        match (&self.because, &self.proposal) {
            // The kit was changed since.
            (SetBecause::WorkLoad { to }, Some(proposal))
                if proposal.load().is_some_and(|load| load != *to) =>
            {
                say!(
                    "{because}; the kit as it is now makes {load} of it",
                    because = proposal.said(unit, &self.basis),
                    load = self.basis.told(*to, unit)
                )
            }
            (SetBecause::WorkLoad { .. } | SetBecause::NothingKnown, Some(proposal)) => {
                proposal.said(unit, &self.basis)
            }
            (because, _) => because.said(unit, &self.basis),
        }
    }
}

impl State {
    /// What was proposed for the block of `slot`: at its swap, else at the beginning.
    #[must_use]
    pub fn proposal(&self, slot: &Slot) -> Option<&Proposal> {
        if let Some(swapped) = slot.swap.and_then(|at| self.swapped.get(at)) {
            return Some(&swapped.proposal);
        }
        let block = slot.planned.key.block;
        self.began
            .proposals
            .iter()
            .find(|proposal| proposal.block == block)
    }

    /// Whether a work set of the block of `slot` was done in this session.
    fn has_worked(&self, slot: &Slot) -> bool {
        let block = self.block_of(slot);
        let line = |done: &DoneSet| block.sets.get(usize::from(done.key.line));
        let done = self.done_of(slot, None);
        done.iter()
            .any(|done| line(done).is_some_and(|line| line.kind.is_work()))
    }

    /// An estimate with the body mass that the session began with.
    pub(super) fn maximum(&self, e1rm: Option<Load>) -> Maximum {
        Maximum {
            e1rm,
            body_mass: self.began.body_mass,
        }
    }

    /// The load of `slot` by its prescription, with its because, where `e1rm` is the estimated maximum.
    #[must_use]
    pub fn prescribe(&self, slot: &Slot, kit: &Kit, e1rm: Option<Load>) -> Prescribed {
        set_load(
            self.block_of(slot),
            &slot.planned,
            self.proposal(slot).map_or(None.into(), Base::from),
            &self.over_before(slot),
            self.maximum(e1rm),
            kit,
        )
    }

    /// What the estimate says of `slot` with `load`: of work sets that are counted in reps.
    pub(super) fn foretell(
        &self,
        slot: &Slot,
        load: Load,
        strength: Option<Strength>,
    ) -> Option<Foretold> {
        let planned = &slot.planned;
        let plain = matches!(planned.kind, SetKind::Work | SetKind::ToFailure);
        let asked = planned.target.plain_reps().filter(|_| plain)?;
        let known = Known {
            strength,
            body_mass: self.began.body_mass,
            now: self.since.at,
        };
        Foretold::of(&known, &self.block_of(slot).basis, load, asked)
    }

    /// The board of `slot`.
    #[must_use]
    pub fn board(&self, slot: &Slot, kit: &Kit, history: &[Performance]) -> Board {
        self.board_beside(slot, kit, history, None)
    }

    /// The board of `slot` at a rack that is shared: what changes on the bar goes on from what either of both had there.
    #[must_use]
    pub fn board_beside(
        &self,
        slot: &Slot,
        kit: &Kit,
        history: &[Performance],
        beside: Option<&Beside<'_>>,
    ) -> Board {
        let block = self.block_of(slot);
        let planned = &slot.planned;
        let strength = Strength::of(moved_alike(history, block), self.began.curve);
        let own = strength.map(|strength| strength.e1rm().middle);
        let prescribed = self.prescribe(slot, kit, own);
        let load = slot.load.or(prescribed.load);
        let e1rm = |state: &State, set: &Slot| match beside {
            Some(beside) => beside.e1rm(state, set),
            None => own.filter(|_| state.is_alike(set, block)),
        };
        let means = Means {
            kit,
            slot,
            e1rm: &e1rm,
            other: beside.map(|beside| beside.state),
        };
        let (loading, change) = load.map_or((None, None), |load| self.on_bar(&means, load));
        let cue = match block.cues.len() {
            0 => None,
            n => block.cues.get((planned.number - 1) % n).cloned(),
        };
        let foretold = load.and_then(|load| self.foretell(slot, load, strength));
        let heed = self.heed(
            slot,
            load,
            &prescribed,
            history,
            foretold.as_ref(),
            strength,
        );
        let as_written = self.began.sheet.block(block.id).is_some_and(|written| {
            written.exercise.id == block.exercise.id && written.basis == block.basis
        });
        let untouched = self.slots.iter().all(|slot| slot.status == Status::Pending);
        let place = self
            .slots
            .iter()
            .position(|other| other.planned.key == planned.key);
        let next = place.and_then(|place| {
            self.slots[place + 1..]
                .iter()
                .find(|other| other.status == Status::Pending)
        });
        let proposal = self.proposal(slot).map(|proposal| proposal.because.clone());
        let asked = match (&prescribed.because, &proposal) {
            (SetBecause::WorkLoad { .. }, Some(proposal)) => proposal.asks_body_mass(),
            (because, _) => matches!(because, SetBecause::BodyMassUnknown { .. }),
        };
        Board {
            key: planned.key,
            exercise_id: block.exercise.id.clone(),
            exercise: block.exercise.said(),
            kind: planned.kind.name(),
            number: planned.number,
            of: planned.of,
            ends: Ends::of(block),
            then_rest: next
                .map(|next| self.rest_in_heat(planned.rest_before(&next.planned)))
                .filter(|rest| rest.get() > 0),
            basis: block.basis.clone(),
            load,
            prescribed: prescribed.load,
            overruled: slot.load.is_some() && slot.load != prescribed.load,
            target: planned.target.clone(),
            portions: match planned.kind {
                SetKind::Cluster { portions, pause } => Some((portions, pause)),
                _ => None,
            },
            reps: slot.reps.or(planned.offered),
            aim: planned.reserve,
            reserve: slot.reserve,
            asks_reserve: prescribed.guided
                && slot.reserve.is_none()
                && !block.goes_to_limit(&planned.kind, &planned.target, planned.reserve),
            jump: heed.jump,
            sides: planned.sides,
            tempo: planned
                .tempo
                .filter(|_| matches!(planned.target, Target::Reps(_))),
            cue,
            cautions: heed.due,
            cautions_known: heed.known,
            falls: may_fall(block, &planned.kind),
            warm_up: if untouched {
                self.began.sheet.warm_up.clone()
            } else {
                Vec::new()
            },
            because: prescribed.because,
            lacks_body_mass: !asked && lacks_body_mass(block, self.began.body_mass),
            proposal,
            foretold,
            worked: self.has_worked(slot),
            as_written,
            band_proposed: self.band_proposed(slot).and_then(LoadBasis::band),
            bands: match &block.basis {
                LoadBasis::Band(label) => {
                    [false, true].map(|heavier| kit.band_beside(label, heavier).cloned())
                }
                _ => [None, None],
            },
            loading,
            change,
        }
    }
}
