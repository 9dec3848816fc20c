//! Whose turn it is in a pair or a circuit: who is on, and who follows after which rest.

use super::slot::{Slot, Status};
use super::state::State;
use crate::say;
use crate::sheet::SetKey;
use crate::units::Seconds;
use crate::words::t;

/// The turn of a set among the blocks of its group.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Turn {
    /// Its block's place, from 1.
    pub place: usize,
    /// How many blocks of the group are in turn.
    pub of: usize,
    /// The exercise that follows within the group, with the rest before it; none after the last set of the group.
    pub next: Option<(String, Seconds)>,
}

impl Turn {
    /// The turn in words.
    #[must_use]
    pub fn said(&self) -> String {
        let (place, of) = (self.place, self.of);
        let turn = if of == 2 {
            say!("pair {place} of {of}", place, of)
        } else {
            say!("circuit {place} of {of}", place, of)
        };
        let then = match &self.next {
            Some((name, Seconds::MIN)) => say!("straight on: {name}", name),
            // How long the rest before it is stands on the board already.
            Some((name, _)) => say!("then {name}", name),
            None => t("its last set").to_owned(),
        };
        format!("{turn} · {then}")
    }
}

impl State {
    /// The turn of the set of that key; none where its group is one block.
    #[must_use]
    pub fn turn(&self, key: SetKey) -> Option<Turn> {
        let at = self.slots.iter().position(|slot| slot.planned.key == key)?;
        let slot = &self.slots[at];
        let group = self.began.sheet.groups.get(slot.planned.group)?;
        let blocks = group.blocks();
        if blocks.len() < 2 {
            return None;
        }
        let place = blocks.iter().position(|block| block.id == key.block)? + 1;
        let follows = |other: &&Slot| {
            other.status == Status::Pending && other.planned.group == slot.planned.group
        };
        let next = self.slots[at + 1..].iter().find(follows).map(|next| {
            let name = self.block_of(next).exercise.said();
            (
                name,
                self.rest_in_heat(slot.planned.rest_before(&next.planned)),
            )
        });
        Some(Turn {
            place,
            of: blocks.len(),
            next,
        })
    }
}

#[cfg(test)]
#[path = "turn_tests.rs"]
mod tests;
