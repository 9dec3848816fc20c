//! What contradicts itself in a block that is being written, by taps or as lines.

use crate::say;
use crate::sheet::{Block, LoadBasis, is_same_band};
use crate::ui::parts::{list, words};
use crate::ui::stanchion::Stanchion;
use leptos::prelude::*;

/// The doubts about a block, each in a sentence.
pub fn doubts_said(app: Stanchion, block: &Block) -> Vec<String> {
    let known = app
        .model
        .with_untracked(|model| !model.history(&block.exercise.id).is_empty());
    let doubts = block.doubts(known);
    let mut doubts: Vec<String> = doubts.iter().map(ToString::to_string).collect();
    doubts.extend(no_such_band(app, block));
    let lacks = app
        .model
        .with_untracked(|model| model.kit.lacks(block.exercise.equipment));
    doubts.extend(lacks.filter(|_| block.basis.has_load()));
    doubts
}

/// That the band is none of those in the kit, where any are.
fn no_such_band(app: Stanchion, block: &Block) -> Option<String> {
    let LoadBasis::Band(label) = &block.basis else {
        return None;
    };
    let there = app.model.with_untracked(|model| {
        let bands = &model.kit.parts().bands;
        bands.is_empty() || bands.iter().any(|band| is_same_band(band, label))
    });
    (!there).then(|| say!("The band “{label}” is not in Kit.", label))
}

/// Doubts under each other.
pub fn doubt_list(part: &'static str, doubts: Vec<String>) -> AnyView {
    let doubts = doubts.into_iter().map(|doubt| words("caution", doubt));
    list("", Some(part), doubts.collect())
}
