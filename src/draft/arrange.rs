//! Blocks added, moved, doubled, taken away, done together and apart.

use super::{Draft, Unfit};
use crate::say;
use crate::sheet::{Block, BlockId, Group, Sheet};
use crate::units::Seconds;

/// Rest from block to block of a new pair or circuit. Common practice, no source.
const BETWEEN_SECONDS: i64 = 30;

/// Where a block stands: its group, and its place in it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Spot {
    group: usize,
    place: usize,
}

impl Draft {
    /// Adds a block at the end.
    ///
    /// # Errors
    /// [`Unfit::Sheet`] when there are too many.
    pub fn add(&mut self, block: Block) -> Result<(), Unfit> {
        let what = say!("adding {name}", name = block.exercise.name);
        self.attempt(&what, |sheet| {
            sheet.groups.push(Group::Straight(Box::new(block)));
            Ok(())
        })
    }

    /// Puts a copy of a block behind it; of a block in a pair or circuit behind the whole group.
    ///
    /// # Errors
    /// [`Unfit`]: no such block, or too many.
    pub fn duplicate(&mut self, id: BlockId, copy: BlockId) -> Result<(), Unfit> {
        let what = say!("doubling {name}", name = self.named(id)?);
        self.attempt(&what, |sheet| {
            let spot = spot(sheet, id)?;
            let block = Block {
                id: copy,
                ..sheet.groups[spot.group].blocks()[spot.place].clone()
            };
            let copy = Group::Straight(Box::new(block));
            sheet.groups.insert(spot.group + 1, copy);
            Ok(())
        })
    }

    /// Takes a block off.
    ///
    /// # Errors
    /// [`Unfit::NoSuchBlock`].
    pub fn remove(&mut self, id: BlockId) -> Result<(), Unfit> {
        let what = say!("removing {name}", name = self.named(id)?);
        self.attempt(&what, |sheet| {
            let spot = spot(sheet, id)?;
            take(sheet, spot);
            Ok(())
        })
    }

    /// Moves a block one place up or down: within its pair or circuit, from its edge the whole group. At the end of
    /// the sheet nothing moves.
    ///
    /// # Errors
    /// [`Unfit::NoSuchBlock`].
    pub fn shift(&mut self, id: BlockId, down: bool) -> Result<(), Unfit> {
        let what = say!("moving {name}", name = self.named(id)?);
        self.attempt(&what, |sheet| {
            let spot = spot(sheet, id)?;
            let beside = |at: usize, len: usize| match down {
                true => Some(at + 1).filter(|at| *at < len),
                false => at.checked_sub(1),
            };
            let blocks = sheet.groups[spot.group].blocks().len();
            if let Some(to) = beside(spot.place, blocks) {
                sheet.groups[spot.group].blocks_mut().swap(spot.place, to);
            } else if let Some(to) = beside(spot.group, sheet.groups.len()) {
                sheet.groups.swap(spot.group, to);
            }
            Ok(())
        })
    }

    /// Moves the group of one block to the place of the group of another, as a finger drags it.
    ///
    /// # Errors
    /// [`Unfit::NoSuchBlock`].
    pub fn drag(&mut self, id: BlockId, onto: BlockId) -> Result<(), Unfit> {
        let what = say!("moving {name}", name = self.named(id)?);
        self.attempt(&what, |sheet| {
            let (from, to) = (spot(sheet, id)?, spot(sheet, onto)?);
            if from.group == to.group {
                let blocks = sheet.groups[from.group].blocks_mut();
                turn(blocks, from.place, to.place);
            } else {
                turn(&mut sheet.groups, from.group, to.group);
            }
            Ok(())
        })
    }

    /// Does the group of a block together with the one behind it: two become a pair, more a circuit.
    ///
    /// # Errors
    /// [`Unfit`]: no such block, nothing behind it, or more than a circuit holds.
    pub fn join(&mut self, id: BlockId) -> Result<(), Unfit> {
        let what = say!(
            "doing {name} together with the next",
            name = self.named(id)?
        );
        self.attempt(&what, |sheet| {
            let spot = spot(sheet, id)?;
            if spot.group + 1 == sheet.groups.len() {
                return Err(Unfit::Alone);
            }
            let second = sheet.groups.remove(spot.group + 1);
            let first = &mut sheet.groups[spot.group];
            let between = first.between().or(second.between());
            let mut blocks = first.blocks().to_vec();
            blocks.extend_from_slice(second.blocks());
            *first = together(
                blocks,
                between.unwrap_or(Seconds::saturating(BETWEEN_SECONDS)),
            );
            Ok(())
        })
    }

    /// Takes a block out of its pair or circuit and puts it behind it.
    ///
    /// # Errors
    /// [`Unfit::NoSuchBlock`].
    pub fn part(&mut self, id: BlockId) -> Result<(), Unfit> {
        let what = say!("doing {name} on its own", name = self.named(id)?);
        self.attempt(&what, |sheet| {
            let spot = spot(sheet, id)?;
            if sheet.groups[spot.group].between().is_some() {
                let block = take(sheet, spot);
                let alone = Group::Straight(Box::new(block));
                sheet.groups.insert(spot.group + 1, alone);
            }
            Ok(())
        })
    }

    /// Sets the rest from block to block of the pair or circuit that a block is in.
    ///
    /// # Errors
    /// [`Unfit::NoSuchBlock`].
    pub fn set_between(&mut self, id: BlockId, rest: Seconds) -> Result<(), Unfit> {
        let what = say!("the rest in the group of {name}", name = self.named(id)?);
        self.attempt(&what, |sheet| {
            let spot = spot(sheet, id)?;
            match &mut sheet.groups[spot.group] {
                Group::Straight(_) => {}
                Group::Pair { between, .. } | Group::Circuit { between, .. } => *between = rest,
            }
            Ok(())
        })
    }

    /// Does the two blocks of a pair in rounds as a circuit, or the other way.
    ///
    /// # Errors
    /// [`Unfit::NoSuchBlock`].
    pub fn turn_pair(&mut self, id: BlockId) -> Result<(), Unfit> {
        let what = say!("pair or circuit of {name}", name = self.named(id)?);
        self.attempt(&what, |sheet| {
            let spot = spot(sheet, id)?;
            let group = &mut sheet.groups[spot.group];
            match group {
                Group::Pair { blocks, between } => {
                    *group = Group::Circuit {
                        blocks: blocks.to_vec(),
                        between: *between,
                    };
                }
                Group::Circuit { blocks, between } => {
                    *group = together(std::mem::take(blocks), *between)
                }
                Group::Straight(_) => {}
            }
            Ok(())
        })
    }
}

fn spot(sheet: &Sheet, id: BlockId) -> Result<Spot, Unfit> {
    for (group, blocks) in sheet.groups.iter().map(Group::blocks).enumerate() {
        if let Some(place) = blocks.iter().position(|block| block.id == id) {
            return Ok(Spot { group, place });
        }
    }
    Err(Unfit::NoSuchBlock)
}

/// Blocks that are done together.
fn together(blocks: Vec<Block>, between: Seconds) -> Group {
    match <[Block; 2]>::try_from(blocks) {
        Ok(pair) => Group::Pair {
            blocks: Box::new(pair),
            between,
        },
        Err(blocks) => Group::Circuit { blocks, between },
    }
}

/// Takes a block out of its group; what is left of the group stays, as a pair or alone where it is one or two.
fn take(sheet: &mut Sheet, spot: Spot) -> Block {
    let group = &mut sheet.groups[spot.group];
    let between = group.between();
    let mut blocks = group.blocks().to_vec();
    let block = blocks.remove(spot.place);
    match (blocks.len(), between) {
        (0, _) | (_, None) => {
            sheet.groups.remove(spot.group);
        }
        (1, Some(_)) => *group = Group::Straight(Box::new(blocks.remove(0))),
        (_, Some(between)) => *group = together(blocks, between),
    }
    block
}

/// Moves the item at `from` to `to`; those between make room.
fn turn<T>(items: &mut [T], from: usize, to: usize) {
    if from < to {
        items[from..=to].rotate_left(1);
    } else {
        items[to..=from].rotate_right(1);
    }
}
