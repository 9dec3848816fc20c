//! Another name for an exercise on the sheets that hold it.

use crate::sheet::{Block, Exercise, Sheet};

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
        let blocks = group.blocks_mut().iter_mut();
        for block in blocks.filter(|block| other_name(block)) {
            block.exercise.name = exercise.name.clone();
        }
    }
    Some(sheet)
}
