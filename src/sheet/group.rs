//! A sheet: the written plan of one session, its blocks straight, in pairs or in circuits.

use super::block::{Block, BlockId};
use super::form::SheetForm;
use super::text::{Line, Note};
use super::warning::{OrderWarning, SETTLED_MAX};
use crate::order::Set;
use crate::say;
use crate::units::Seconds;
use crate::words::t;
use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};
use std::fmt;
use std::num::NonZeroU16;
use uuid::Uuid;

/// The longest time budget that can be written, in minutes.
pub const BUDGET_MINUTES_MAX: u16 = 600;

/// Most blocks on a sheet.
pub const BLOCKS_MAX: usize = 40;
/// Most lines of sets in a block.
pub const SET_LINES_MAX: usize = 12;
/// Most cues, cautions, or warm-up lines.
pub const LINES_MAX: usize = 20;
/// Most blocks in a circuit.
pub const CIRCUIT_BLOCKS_MAX: usize = 8;

/// What identifies a sheet through all its versions.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct SheetId(pub Uuid);

/// What identifies one written version of a sheet; UUIDv7, so the newest is the greatest.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct SheetVersion(pub Uuid);

/// Blocks that are done together.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Group {
    /// One block, all its sets.
    Straight(Box<Block>),
    /// Two blocks in alternation, a set of each in turn.
    Pair {
        /// The two.
        blocks: Box<[Block; 2]>,
        /// Rest from one block to the other within a round.
        between: Seconds,
    },
    /// Blocks in rounds, a set of each in turn: 2 to 8.
    Circuit {
        /// The blocks.
        blocks: Vec<Block>,
        /// Rest from block to block within a round.
        between: Seconds,
    },
}

impl Group {
    /// Its blocks in order.
    #[must_use]
    pub fn blocks(&self) -> &[Block] {
        match self {
            Group::Straight(block) => std::slice::from_ref(block),
            Group::Pair { blocks, .. } => &blocks[..],
            Group::Circuit { blocks, .. } => blocks,
        }
    }

    /// Its blocks in order, to be changed.
    pub fn blocks_mut(&mut self) -> &mut [Block] {
        match self {
            Group::Straight(block) => std::slice::from_mut(block),
            Group::Pair { blocks, .. } => &mut blocks[..],
            Group::Circuit { blocks, .. } => blocks,
        }
    }

    /// Rest from block to block within a round, for groups of several.
    #[must_use]
    pub fn between(&self) -> Option<Seconds> {
        match self {
            Group::Straight(_) => None,
            Group::Pair { between, .. } | Group::Circuit { between, .. } => Some(*between),
        }
    }
}

/// The written plan of one session.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "SheetForm")]
pub struct Sheet {
    /// Identity through all versions.
    pub id: SheetId,
    /// This version.
    pub version: SheetVersion,
    /// When this version was written.
    pub written: DateTime<FixedOffset>,
    /// Name on screen.
    pub name: Line,
    /// Warm-up checklist at the head.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub warm_up: Vec<Line>,
    /// Notes of the writer.
    #[serde(default, skip_serializing_if = "Note::is_empty")]
    pub notes: Note,
    /// Time budget in minutes.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub budget_minutes: Option<NonZeroU16>,
    /// Its groups of blocks in order.
    pub groups: Vec<Group>,
    /// Warnings about the order that the writer settled: they stay away. Those of unknown blocks mean nothing.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub settled: Vec<OrderWarning>,
    /// For whom it was written, where that is somebody else than the one who keeps it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub written_for: Option<Line>,
}

/// Why a sheet does not hold together.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum UnfitSheet {
    /// A list is shorter or longer than allowed.
    Count {
        /// The list, in words.
        what: &'static str,
        /// Where, in words.
        place: String,
        /// How many there are.
        given: usize,
        /// Fewest allowed.
        least: usize,
        /// Most allowed.
        most: usize,
    },
    /// Two blocks have one id.
    TwinBlocks(BlockId),
}

impl fmt::Display for UnfitSheet {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            UnfitSheet::Count {
                what,
                place,
                given,
                least,
                most,
            } => f.write_str(&say!(
                "{place} has {given} {what}, it must have {least} to {most}",
                place,
                given,
                what,
                least,
                most
            )),
            UnfitSheet::TwinBlocks(id) => f.write_str(&say!(
                "two blocks have the id {id}: give each its own",
                id = id.0,
            )),
        }
    }
}

impl std::error::Error for UnfitSheet {}

impl Sheet {
    /// All blocks in order.
    pub fn blocks(&self) -> impl Iterator<Item = &Block> {
        self.groups.iter().flat_map(Group::blocks)
    }

    /// The block of that id.
    #[must_use]
    pub fn block(&self, id: BlockId) -> Option<&Block> {
        self.blocks().find(|block| block.id == id)
    }

    /// Checks that the sheet holds together.
    ///
    /// # Errors
    /// [`UnfitSheet`]: a list too short or too long, or two blocks with one id.
    pub fn check(&self) -> Result<(), UnfitSheet> {
        let count = |what, place: &str, given, least, most| {
            if (least..=most).contains(&given) {
                Ok(())
            } else {
                Err(UnfitSheet::Count {
                    what,
                    place: place.to_owned(),
                    given,
                    least,
                    most,
                })
            }
        };
        count(
            t("blocks"),
            t("the sheet"),
            self.blocks().count(),
            1,
            BLOCKS_MAX,
        )?;
        count(
            t("warm-up lines"),
            t("the sheet"),
            self.warm_up.len(),
            0,
            LINES_MAX,
        )?;
        count(
            t("settled warnings"),
            t("the sheet"),
            self.settled.len(),
            0,
            SETTLED_MAX,
        )?;
        let mut seen = Set::new();
        for group in &self.groups {
            if let Group::Circuit { blocks, .. } = group {
                count(
                    t("blocks"),
                    t("a circuit"),
                    blocks.len(),
                    2,
                    CIRCUIT_BLOCKS_MAX,
                )?;
            }
            for block in group.blocks() {
                let place = block.exercise.id.said(&block.exercise.name);
                count(
                    t("lines of sets"),
                    place,
                    block.sets.len(),
                    1,
                    SET_LINES_MAX,
                )?;
                count(t("cues"), place, block.cues.len(), 0, LINES_MAX)?;
                count(t("cautions"), place, block.cautions.len(), 0, LINES_MAX)?;
                if !seen.insert(block.id) {
                    return Err(UnfitSheet::TwinBlocks(block.id));
                }
            }
        }
        Ok(())
    }
}
