//! A block: one exercise on a sheet with its prescription.

use super::exercise::Exercise;
use super::kind::Sets;
use super::loads::LoadBasis;
use super::progression::Progression;
use super::tempo::Tempo;
use super::text::Line;
use crate::json;
use crate::units::{Load, Seconds};
use crate::words::t;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// What identifies a block within its sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct BlockId(pub Uuid);

/// What the block is for; sets the order by fatigue and the defaults of rest, tempo and progression.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Role {
    /// Fast, low load, quality reps.
    Power,
    /// Heavy.
    Strength,
    /// Muscle-building.
    Hypertrophy,
    /// Endurance and pump work.
    Pump,
}

impl Role {
    /// The name on screen.
    #[must_use]
    pub fn name(self) -> &'static str {
        t(match self {
            Role::Power => "power",
            Role::Strength => "strength",
            Role::Hypertrophy => "muscle-building",
            Role::Pump => "pump",
        })
    }
}

/// How the two sides of the body share a set.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SideMode {
    /// Both together.
    #[default]
    Both,
    /// All reps of one side, then all of the other.
    EachInTurn,
    /// One side holds while the other works, then they change.
    OneHolds,
}

impl SideMode {
    /// How many times the target is done in one set.
    #[must_use]
    pub fn rounds(self) -> u8 {
        match self {
            SideMode::Both => 1,
            SideMode::EachInTurn | SideMode::OneHolds => 2,
        }
    }

    /// Seconds to change sides: five where the load is put down and taken up, two where one holds while the other
    /// works and nothing is put down. Common practice, no source.
    #[must_use]
    pub fn change_seconds(self) -> u16 {
        match self {
            SideMode::Both => 0,
            SideMode::EachInTurn => 5,
            SideMode::OneHolds => 2,
        }
    }
}

/// One exercise on a sheet with its prescription.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Block {
    /// Identity within the sheet.
    pub id: BlockId,
    /// The exercise.
    pub exercise: Exercise,
    /// What the block is for.
    pub role: Role,
    /// Its sets, in order; 1 to 12 lines.
    pub sets: Vec<Sets>,
    /// What the load is added to.
    pub basis: LoadBasis,
    /// The work load to start from while there is no history.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub start: Option<Load>,
    /// Tempo of its reps.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tempo: Option<Tempo>,
    /// How the sides share a set.
    #[serde(default)]
    pub sides: SideMode,
    /// Rest between its sets.
    pub rest: Seconds,
    /// Rest after its last set, before the next block.
    pub rest_after: Seconds,
    /// Form cues, the lifter's own short lines.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub cues: Vec<Line>,
    /// Caution lines.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub cautions: Vec<Line>,
    /// How the work load moves from session to session.
    #[serde(default)]
    pub progression: Progression,
}

impl Block {
    /// The prescription told apart from others of the same exercise, so that only like is compared with like.
    ///
    /// Blocks of one shape ask for the same work: same basis, sides, tempo and work-set targets. Ramp-ups, rests,
    /// cues and the number of sets do not matter.
    #[must_use]
    pub fn shape(&self) -> String {
        let mut shape = json::text(&(&self.basis, &self.sides, &self.tempo));
        for sets in self.sets.iter().filter(|sets| sets.kind.is_work()) {
            shape.push_str(&format!(" {} {}", sets.kind.word(), sets.target));
        }
        shape
    }

    /// Whether a shape is of a block with the same basis and sides: a load means the same there, whatever reps and tempo.
    #[must_use]
    pub fn means_the_same_by(&self, shape: &str) -> bool {
        let alike = json::text(&(&self.basis, &self.sides));
        let alike = alike.strip_suffix(']').unwrap_or(&alike);
        let rest = shape.strip_prefix(alike);
        rest.is_some_and(|rest| rest.starts_with(','))
    }
}
