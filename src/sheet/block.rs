//! A block: one exercise on a sheet with its prescription.

use super::exercise::{Equipment, Exercise};
use super::kind::{SetKind, Sets};
use super::loads::LoadBasis;
use super::progression::Progression;
use super::target::Target;
use super::tempo::Tempo;
use super::text::Line;
use crate::json;
use crate::units::{Load, Rir, Seconds};
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
    /// What a line says of it; nothing of both together, as most is done so.
    #[must_use]
    pub fn said(self) -> Option<&'static str> {
        match self {
            SideMode::Both => None,
            SideMode::EachInTurn => Some(t("each side in turn")),
            SideMode::OneHolds => Some(t("one side holds while the other works")),
        }
    }

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

/// Ends each of the two parts by which a shape begins. No side mode and no equipment is written with it.
const SHAPE_END: char = '|';

/// The part of a shape that says what is moved: two blocks by which the same is moved have the same. See
/// [`Block::moved_shape`].
#[must_use]
pub fn moved_part(shape: &str) -> &str {
    let end = shape.find(SHAPE_END);
    &shape[..end.unwrap_or(shape.len())]
}

/// What a [`moved_part`] says, in words; nothing where both sides move the body.
#[must_use]
pub fn moved_words(part: &str) -> String {
    let read: Result<(SideMode, Option<Equipment>), _> = json::parse(part);
    let (sides, hangs_on) = read.unwrap_or_default();
    let words = hangs_on.map(Equipment::name).into_iter();
    words.chain(sides.said()).collect::<Vec<_>>().join(", ")
}

impl Block {
    /// The prescription told apart from others of the same exercise, so that only like is compared with like.
    ///
    /// Blocks of one shape ask for the same work: what is moved in the same way, on the same basis, with the same targets
    /// and tempo of the work sets, and as many portions where they are clusters. Ramp-ups, rests, cues and the number of
    /// sets do not matter.
    #[must_use]
    pub fn shape(&self) -> String {
        let mut shape = self.load_shape();
        for sets in self.sets.iter().filter(|sets| sets.kind.is_work()) {
            shape.push_str(&format!(" {} {}", sets.kind.word(), sets.target));
            if let SetKind::Cluster { portions, .. } = sets.kind {
                shape.push_str(&format!(" × {portions}"));
            }
            if let Some(tempo) = sets.tempo.or(self.tempo) {
                shape.push_str(&format!(" {tempo}"));
            }
        }
        shape
    }

    /// How a shape begins whose loads are of the same: moved as [`Block::moved_shape`] says, on the same basis. Reps and tempo
    /// may be others.
    #[must_use]
    pub fn load_shape(&self) -> String {
        format!(
            "{}{}{SHAPE_END}",
            self.moved_shape(),
            json::text(&self.basis)
        )
    }

    /// Whether a load means the same in both: see [`Block::load_shape`].
    #[must_use]
    pub fn is_loaded_as(&self, other: &Block) -> bool {
        self.sides == other.sides
            && self.basis == other.basis
            && self.hangs_on() == other.hangs_on()
    }

    /// How a shape begins by which the same is moved: with the same sides and, where the load is moved alone, in the same
    /// hands. What a bar says of strength is not what one dumbbell says. With the body moved the whole counts, whatever it hangs
    /// on.
    #[must_use]
    pub fn moved_shape(&self) -> String {
        format!(
            "{}{SHAPE_END}",
            json::text(&(&self.sides, &self.hangs_on()))
        )
    }

    /// Reserve that the block's rule aims at in its work sets, where it is one that goes by reserve.
    #[must_use]
    pub fn rule_aim(&self) -> Option<Rir> {
        match self.progression {
            Progression::ByReserve { aim, .. } => Some(aim),
            _ => None,
        }
    }

    /// Whether a set of this block goes on until no rep more can be done, see [`SetKind::goes_to_limit`]: what the rule aims at
    /// is asked of a set that names no reserve itself.
    #[must_use]
    pub fn goes_to_limit(&self, kind: &SetKind, target: &Target, reserve: Option<Rir>) -> bool {
        kind.goes_to_limit(target, reserve.or(self.rule_aim()))
    }

    /// Whether a set of this block is to leave reps in reserve: its own, or what the rule aims at.
    #[must_use]
    pub fn leaves_reps(&self, reserve: Option<Rir>) -> bool {
        let asked = reserve.or(self.rule_aim());
        asked.is_some_and(|asked| asked.get() > 0)
    }

    /// What the load hangs on, where it is moved alone.
    fn hangs_on(&self) -> Option<Equipment> {
        let alone = self.basis == LoadBasis::External;
        alone.then(|| self.exercise.equipment.loaded_as())
    }
}
