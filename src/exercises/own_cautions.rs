//! The cautions of exercises for a sheet that was written as lines: a line names an exercise and tells nothing of them.

use super::catalogue::Catalogue;
use super::{Entry, entry};
use crate::sheet::{Block, Line, Sheet};

/// Gives each block without a caution those of its exercise, as a block that is added by taps has them from the start; those
/// of the list in English, so that the sheet is the same in every language. One that stood in `before` for the same exercise stays as it is: there they may have been taken off on purpose.
pub fn add_cautions(sheet: &mut Sheet, before: Option<&Sheet>, exercises: &Catalogue) {
    let stood = |block: &Block| {
        let before = before.and_then(|sheet| sheet.block(block.id));
        before.is_some_and(|before| before.exercise.id == block.exercise.id)
    };
    for block in blocks(sheet).filter(|block| block.cautions.is_empty() && !stood(block)) {
        let known = exercises.of(block.exercise.id.as_str());
        block.cautions = known.map(|known| known.cautions()).unwrap_or_default();
    }
}

/// The sheet without what [`give_back_cautions`] gives back: the cautions that the list of exercises has for its blocks, in
/// English. None where there are none, or where what comes back would not be the very same sheet.
#[must_use]
pub fn without_cautions(sheet: &Sheet) -> Option<Sheet> {
    let mut bare = sheet.clone();
    for block in blocks(&mut bare) {
        if listed(block) == block.cautions {
            block.cautions.clear();
        }
    }
    let mut again = bare.clone();
    give_back_cautions(&mut again);
    (bare != *sheet && again == *sheet).then_some(bare)
}

/// Gives each block without a caution those that the list of exercises has for it.
pub fn give_back_cautions(sheet: &mut Sheet) {
    for block in blocks(sheet).filter(|block| block.cautions.is_empty()) {
        block.cautions = listed(block);
    }
}

fn blocks(sheet: &mut Sheet) -> impl Iterator<Item = &mut Block> {
    sheet.groups.iter_mut().flat_map(|group| group.blocks_mut())
}

fn listed(block: &Block) -> Vec<Line> {
    let entry = entry(block.exercise.id.as_str());
    entry.map(Entry::cautions).unwrap_or_default()
}
