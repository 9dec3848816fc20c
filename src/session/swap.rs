//! Another exercise in a block's place: what the rest of the block is done as, whatever was written.

use super::event::Began;
use super::slot::Slot;
use super::state::State;
use crate::kit::Kit;
use crate::say;
use crate::sheet::{
    Block, BlockId, Exercise, LINES_MAX, Line, LoadBasis, LoadPolicy, PlannedSet, SideMode,
};
use crate::strength::{Because, Proposal, Today, lighten_proposal};
use serde::de::Error;
use serde::{Deserialize, Deserializer, Serialize};

/// Another exercise for the sets of a block that are still to be done.
///
/// It holds all that the floor needs, whatever becomes of the list of exercises later.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Swap {
    /// The exercise; the written one again takes an earlier swap back.
    pub exercise: Exercise,
    /// What its load is added to.
    pub basis: LoadBasis,
    /// How the sides share a set of it.
    #[serde(default)]
    pub sides: SideMode,
    /// Its own cautions, in place of the written ones; at most 20.
    #[serde(
        default,
        skip_serializing_if = "Vec::is_empty",
        deserialize_with = "some_lines"
    )]
    pub cautions: Vec<Line>,
    /// What is proposed for it, and for which block.
    pub proposal: Proposal,
}

/// Cautions as many as a block may have.
fn some_lines<'de, D: Deserializer<'de>>(source: D) -> Result<Vec<Line>, D::Error> {
    let lines = Vec::deserialize(source)?;
    if lines.len() > LINES_MAX {
        return Err(D::Error::custom(say!(
            "an exercise has {given} cautions, at most {most} are allowed",
            given = lines.len(),
            most = LINES_MAX
        )));
    }
    Ok(lines)
}

impl Swap {
    /// The swap of `written` for `exercise`, with the load that is proposed `today` by its own history.
    #[must_use]
    pub fn to(
        written: &Block,
        exercise: Exercise,
        basis: LoadBasis,
        sides: SideMode,
        cautions: Vec<Line>,
        today: &Today<'_>,
    ) -> Swap {
        let mut swap = Swap {
            exercise,
            basis,
            sides,
            cautions,
            proposal: today.propose(written),
        };
        // What is proposed follows from the block as it is done, which only the swap can say.
        swap.proposal = today.propose(&swap.applied(written));
        swap
    }

    /// The swap that leads back to what is written.
    #[must_use]
    pub fn back(written: &Block, today: &Today<'_>) -> Swap {
        Swap {
            exercise: written.exercise.clone(),
            basis: written.basis.clone(),
            sides: written.sides,
            cautions: Vec::new(),
            proposal: today.propose(written),
        }
    }

    /// The swap as it belongs in a session: in a light week its load is as light as the others.
    #[must_use]
    pub fn suited_to(self, began: &Began, kit: &Kit) -> Swap {
        let Some(written) = began.sheet.block(self.block()).filter(|_| began.light) else {
            return self;
        };
        let of_block = |proposal: &&Proposal| proposal.block == written.id;
        let proposal = if self.exercise.id == written.exercise.id {
            // It was made light at the beginning.
            began.proposals.iter().find(of_block).cloned()
        } else {
            let share = began
                .proposals
                .iter()
                .find_map(|proposal| match proposal.because {
                    Because::LightWeek { share, .. } => Some(share),
                    _ => None,
                });
            share.map(|share| lighten_proposal(&self.applied(written), &self.proposal, share, kit))
        };
        Swap {
            proposal: proposal.unwrap_or_else(|| self.proposal.clone()),
            ..self
        }
    }

    /// The block it is about.
    #[must_use]
    pub fn block(&self) -> BlockId {
        self.proposal.block
    }

    /// `written` as it is done now. Cues, cautions and loads in figures belong to the written exercise: another one has
    /// none of them, and its loads come from its own history.
    #[must_use]
    pub fn applied(&self, written: &Block) -> Block {
        let mut block = Block {
            exercise: self.exercise.clone(),
            basis: self.basis.clone(),
            sides: self.sides,
            ..written.clone()
        };
        if self.exercise.id != written.exercise.id {
            block.start = None;
            block.cues = Vec::new();
            block.cautions = self.cautions.clone();
            for sets in &mut block.sets {
                if let LoadPolicy::List(_) = sets.load {
                    sets.load = LoadPolicy::Same;
                }
            }
        }
        block
    }
}

/// A block as it is done after a swap.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Swapped {
    /// The block.
    pub block: Block,
    /// What was proposed for it.
    pub proposal: Proposal,
}

impl Swapped {
    /// The planned set as it is done after the swap.
    pub(super) fn suited(&self, planned: PlannedSet) -> PlannedSet {
        let line = self.block.sets.get(usize::from(planned.key.line));
        PlannedSet {
            sides: self.block.sides,
            load: line.map_or(planned.load, |sets| sets.load.clone()),
            ..planned
        }
    }
}

impl State {
    /// The swap that counts for a block now.
    pub(super) fn newest_swap(&self, block: BlockId) -> Option<usize> {
        self.swapped
            .iter()
            .rposition(|other| other.block.id == block)
    }

    /// The block of a slot as the slot is done: after a swap with the other exercise, before it as written.
    #[must_use]
    pub fn block_of(&self, slot: &Slot) -> &Block {
        if let Some(swapped) = slot.swap.and_then(|at| self.swapped.get(at)) {
            return &swapped.block;
        }
        self.began
            .sheet
            .block(slot.planned.key.block)
            .expect("every slot was unrolled from a block of this sheet")
    }

    /// A block of the sheet as what is left of it is done.
    #[must_use]
    pub fn as_done<'a>(&'a self, written: &'a Block) -> &'a Block {
        match self
            .newest_swap(written.id)
            .and_then(|at| self.swapped.get(at))
        {
            Some(swapped) => &swapped.block,
            None => written,
        }
    }
}
