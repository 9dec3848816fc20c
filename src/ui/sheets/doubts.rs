//! What contradicts itself in a block that is being written, by taps or as lines.

use crate::say;
use crate::sheet::{Block, Line, LoadBasis, is_any_band, is_same_band};
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

/// That the band is none of those in the kit, where any are, or not chosen among them.
fn no_such_band(app: Stanchion, block: &Block) -> Option<String> {
    let LoadBasis::Band(label) = &block.basis else {
        return None;
    };
    app.model.with_untracked(|model| {
        let bands = &model.kit.parts().bands;
        if bands.is_empty() || bands.iter().any(|band| is_same_band(band, label)) {
            None
        } else if is_any_band(label) {
            let bands: Vec<&str> = bands.iter().map(Line::as_str).collect();
            let bands = bands.join(", ");
            Some(say!(
                "Which band is not chosen yet. In Kit: {bands}.",
                bands
            ))
        } else {
            Some(say!("The band “{label}” is not in Kit.", label))
        }
    })
}

/// That the kit cannot make the load to start from.
pub fn start_doubt(app: Stanchion, block: &Block) -> Option<String> {
    let start = block.start.filter(|_| block.basis.has_load())?;
    let equipment = block.exercise.equipment;
    let kit = app.model.with_untracked(|model| model.kit.clone());
    // Where there is nothing to load at all, that is what is said.
    let unmade = kit.not_loadable(equipment, start);
    let unmade = unmade.filter(|_| kit.lacks(equipment).is_none())?;
    Some(unmade.to_string())
}

/// Doubts under each other.
pub fn doubt_list(part: &'static str, doubts: Vec<String>) -> AnyView {
    let doubts = doubts.into_iter().map(|doubt| words("caution", doubt));
    list("", Some(part), doubts.collect())
}
