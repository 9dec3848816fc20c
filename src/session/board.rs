//! The board: everything the floor shows of one set, as a function of state, kit and what is known of the exercise.

use super::bar::Means;
use super::slot::{Slot, Status};
use super::state::State;
use crate::kit::{Change, Kit, Loading};
use crate::sheet::{Line, SideMode};
use crate::sheet::{LoadBasis, SetKey, Target, Tempo};
use crate::strength::{
    Because, DoneSet, Performance, Prescribed, Proposal, SetBecause, best_e1rm, cautions, set_load,
};
use crate::units::{Load, Reps, Rir, Seconds, Unit};

/// What the floor shows of one set.
#[derive(Debug, Clone, PartialEq)]
pub struct Board {
    /// The set.
    pub key: SetKey,
    /// Name of the exercise.
    pub exercise: Line,
    /// Kind of set.
    pub kind: &'static str,
    /// Number among the block's sets of this kind.
    pub number: usize,
    /// How many of this kind there are.
    pub of: usize,
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
    /// Reps that the pad offers.
    pub reps: Option<Reps>,
    /// Reserve aimed at.
    pub aim: Option<Rir>,
    /// Reserve said already.
    pub reserve: Option<Rir>,
    /// How the sides share it.
    pub sides: SideMode,
    /// Tempo of its reps.
    pub tempo: Option<Tempo>,
    /// One form cue.
    pub cue: Option<Line>,
    /// Caution lines: the sheet's own and the usual ones.
    pub cautions: Vec<String>,
    /// The warm-up of the sheet, while nothing was done yet.
    pub warm_up: Vec<Line>,
    /// Where the load comes from.
    pub because: SetBecause,
    /// Where the block's work load comes from.
    pub proposal: Option<Because>,
    /// The next lighter and the next heavier band of the kit, for a set with a band.
    pub bands: [Option<Line>; 2],
    /// Plates on the bar, for a barbell.
    pub loading: Option<Loading>,
    /// What changes on the bar since the set before.
    pub change: Option<Change>,
}

impl Board {
    /// Where the load comes from, in one sentence; a work load by the rule that proposed it.
    #[must_use]
    pub fn because(&self, unit: Unit) -> String {
        match (&self.because, &self.proposal) {
            (SetBecause::WorkLoad { .. }, Some(proposal)) => proposal.said(unit),
            (because, _) => because.said(unit),
        }
    }
}

impl State {
    /// What was proposed at the beginning for the block of `slot`.
    pub(super) fn proposal(&self, slot: &Slot) -> Option<&Proposal> {
        let block = slot.planned.key.block;
        self.began
            .proposals
            .iter()
            .find(|proposal| proposal.block == block)
    }

    /// The load of `slot` by its prescription, with its because.
    #[must_use]
    pub fn prescribe(&self, slot: &Slot, kit: &Kit, history: &[Performance]) -> Prescribed {
        let block = self.block_of(slot);
        let done: Vec<DoneSet> = self
            .done(None)
            .into_iter()
            .filter(|done| done.key.block == block.id)
            .collect();
        set_load(
            block,
            &slot.planned,
            self.proposal(slot).and_then(|proposal| proposal.load),
            &done,
            best_e1rm(history),
            kit,
        )
    }

    /// The board of `slot`.
    #[must_use]
    pub fn board(&self, slot: &Slot, kit: &Kit, history: &[Performance]) -> Board {
        let block = self.block_of(slot);
        let planned = &slot.planned;
        let prescribed = self.prescribe(slot, kit, history);
        let load = slot.load.or(prescribed.load);
        let means = Means {
            kit,
            slot,
            e1rm: best_e1rm(history),
        };
        let (loading, change) = load.map_or((None, None), |load| self.on_bar(&means, load));
        let cue = match block.cues.len() {
            0 => None,
            n => block.cues.get((planned.number - 1) % n).cloned(),
        };
        let own = block.cautions.iter().map(ToString::to_string);
        let usual = cautions(block, &planned.kind)
            .into_iter()
            .map(str::to_owned);
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
        Board {
            key: planned.key,
            exercise: block.exercise.name.clone(),
            kind: planned.kind.name(),
            number: planned.number,
            of: planned.of,
            then_rest: next
                .map(|next| planned.rest_before(&next.planned))
                .filter(|rest| rest.get() > 0),
            basis: block.basis.clone(),
            load,
            prescribed: prescribed.load,
            overruled: slot.load.is_some() && slot.load != prescribed.load,
            target: planned.target.clone(),
            reps: slot.reps.or(planned.offered),
            aim: planned.reserve,
            reserve: slot.reserve,
            sides: planned.sides,
            tempo: planned.tempo,
            cue,
            cautions: own.chain(usual).collect(),
            warm_up: if untouched {
                self.began.sheet.warm_up.clone()
            } else {
                Vec::new()
            },
            because: prescribed.because,
            proposal: self.proposal(slot).map(|proposal| proposal.because.clone()),
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
