//! What a screen reader says unasked: once for each set and each rest, what it is. The clocks say nothing by themselves.

use super::figures::{load_figure, target_figure};
use super::screen::Face;
use crate::say;
use crate::session::Board;
use crate::ui::parts::el;
use crate::ui::seen::Seen;
use crate::ui::stanchion::Stanchion;
use crate::words::t;
use leptos::prelude::*;

/// The exercise, its load and what is asked of the set.
fn of_set(board: &Board, app: Stanchion) -> String {
    let unit = app.model.with_untracked(|model| model.unit());
    let figures = load_figure(board, unit)
        .into_iter()
        .chain([target_figure(board)]);
    let figures: Vec<String> = figures.map(|figure| figure.to_string()).collect();
    format!("{}: {}", board.exercise, figures.join(", "))
}

/// A line that is heard and not seen.
pub fn told(app: Stanchion, face: Seen<Face>, board: Seen<Option<Board>>) -> AnyView {
    let told = Seen::new(move || {
        let set = board.with(|board| board.as_ref().map(|board| of_set(board, app)));
        match (face.get(), set) {
            (Face::Rest(_), Some(next)) => say!("Rest. Next: {next}", next),
            (Face::Set(_), Some(set)) => say!("Now: {set}", set),
            _ => t("All sets done").to_owned(),
        }
    });
    el("p")
        .class("unseen")
        .set("role", "status")
        .part("told")
        .text(told)
        .view()
}
