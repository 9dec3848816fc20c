//! Another name for an exercise on the sheets that hold it.

use crate::sheet::{Block, Exercise, Group, Sheet};

/// `sheet` with the exercise called as in `exercise`, wherever a block holds its id; none where no block does under
/// another name. Id, version and time stay: who keeps it gives it a new version.
///
/// Only the name changes. What a block says of equipment and pattern was chosen for that sheet.
#[must_use]
pub fn renamed(sheet: &Sheet, exercise: &Exercise) -> Option<Sheet> {
    let other_name =
        |block: &Block| block.exercise.id == exercise.id && block.exercise.name != exercise.name;
    if !sheet.blocks().any(other_name) {
        return None;
    }
    let mut sheet = sheet.clone();
    for group in &mut sheet.groups {
        let blocks = match group {
            Group::Straight(block) => std::slice::from_mut(&mut **block),
            Group::Pair { blocks, .. } => &mut blocks[..],
            Group::Circuit { blocks, .. } => blocks,
        };
        for block in blocks.iter_mut().filter(|block| other_name(block)) {
            block.exercise.name = exercise.name.clone();
        }
    }
    Some(sheet)
}
