//! What contradicts itself in a block that is being written, by taps or as lines.

use crate::sheet::Block;
use crate::ui::parts::{list, words};
use crate::ui::stanchion::Stanchion;
use leptos::prelude::*;

/// The doubts about a block, each in a sentence.
pub fn doubts_said(app: Stanchion, block: &Block) -> Vec<String> {
    let known = app
        .model
        .with_untracked(|model| !model.history(&block.exercise.id).is_empty());
    let doubts = block.doubts(known);
    doubts.iter().map(ToString::to_string).collect()
}

/// Doubts under each other.
pub fn doubt_list(part: &'static str, doubts: Vec<String>) -> AnyView {
    let doubts = doubts.into_iter().map(|doubt| words("caution", doubt));
    list("", Some(part), doubts.collect())
}
