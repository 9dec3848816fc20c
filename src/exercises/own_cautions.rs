//! The cautions of exercises for a sheet that was written as lines: a line names an exercise and tells nothing of them.

use super::catalogue::Catalogue;
use crate::sheet::{Block, Sheet};

/// Gives each block without a caution those of its exercise, as a block that is added by taps has them from the start. One
/// that stood in `before` for the same exercise stays as it is: there they may have been taken off on purpose.
pub fn add_cautions(sheet: &mut Sheet, before: Option<&Sheet>, exercises: &Catalogue) {
    let stood = |block: &Block| {
        let before = before.and_then(|sheet| sheet.block(block.id));
        before.is_some_and(|before| before.exercise.id == block.exercise.id)
    };
    let blocks = sheet.groups.iter_mut().flat_map(|group| group.blocks_mut());
    for block in blocks.filter(|block| block.cautions.is_empty() && !stood(block)) {
        let known = exercises.of(block.exercise.id.as_str());
        block.cautions = known.map(|known| known.cautions()).unwrap_or_default();
    }
}

/// Leaves out of a sheet that goes into a link what [`add_cautions`] gives back where it is opened, in the words of whoever
/// reads it: the cautions that the list of exercises has for a block, all of them and no others.
pub fn leave_out_cautions(sheet: &mut Sheet) {
    let listed = Catalogue::default();
    let blocks = sheet.groups.iter_mut().flat_map(|group| group.blocks_mut());
    for block in blocks {
        let known = listed.of(block.exercise.id.as_str());
        if known.is_some_and(|known| known.cautions() == block.cautions) {
            block.cautions.clear();
        }
    }
}
