//! The board of a set: its big figures, the bar, the tempo, and where the load comes from.

use super::figures::{
    Figure, bands_line, counting, kind_line, load_figure, target_figure, under_way,
};
use super::plates::plates;
use super::tempo::tempo_strip;
use crate::cues::{Phase as CuePhase, Position};
use crate::session::Board;
use crate::sheet::{Stage, Target};
use crate::strength::body_mass_words;
use crate::ui::parts::{dynamic, el, line, list};
use crate::ui::seen::Seen;
use crate::ui::stanchion::Stanchion;
use crate::units::Unit;
use crate::words::t;
use leptos::prelude::*;

/// A figure with its word behind it.
fn figure(class: &'static str, part: &'static str, size: &'static str, figure: Figure) -> AnyView {
    el("p")
        .class(class)
        .part(part)
        .child(el("span").class(size).child(figure.text))
        .child(el("span").class("board-word").child(figure.word))
        .view()
}

/// The frame of a board on which nothing is counted. It takes the place of one on which something may be, as a whole:
/// an attribute that stays is never drawn into one that follows.
pub fn frame(inside: Vec<AnyView>) -> AnyView {
    el("section")
        .class("board")
        .part("board")
        .child(inside)
        .view()
}

/// The frame of a board on which something may be counted.
fn frame_of(counting: Seen<bool>, inside: Vec<AnyView>) -> AnyView {
    let class = move || {
        if counting.get() {
            "board counting"
        } else {
            "board"
        }
    };
    el("section")
        .follow("class", class)
        .part("board")
        .child(inside)
        .view()
}

/// Letters from which on a name gives way to the figure below it.
const LONG_NAME: usize = 32;

/// The name on top of a board.
pub fn title(text: String) -> AnyView {
    let class = match text.chars().count() {
        0..LONG_NAME => "board-exercise",
        _ => "board-exercise long",
    };
    el("h1").class(class).part("exercise").child(text).view()
}

/// The board of a set.
pub fn set_board(app: Stanchion, board: &Board, turn: Option<String>, unit: Unit) -> AnyView {
    let position = Seen::new(move || {
        let (now, behind) = (app.now.get(), app.behind.get());
        app.model.with(|model| under_way(model, &now, behind))
    });
    let load = load_figure(board, unit);
    let target = target_figure(board);
    // Largest is the load, and what is to be done where there is none, or none that hangs on the body.
    let (main, second) = match load {
        Some(load) if load.text.is_empty() && !target.text.is_empty() => (Some(target), Some(load)),
        Some(load) => (Some(load), Some(target)),
        None if target.text.is_empty() => (None, Some(target)),
        None => (Some(target), None),
    };
    let mut inside = vec![
        title(board.exercise.to_string()),
        line("board-kind", "kind", kind_line(board)),
    ];
    inside.extend(turn.map(|turn| line("board-kind", "turn", turn)));
    inside.extend(main.map(|main| figure("board-main", "main", main.size(), main)));
    let counted = Seen::new(move || position.get().and_then(counting));
    inside.push(dynamic(move || match (counted.get(), second.clone()) {
        (Some(count), _) => figure("board-second", "count", "second", count),
        (None, Some(second)) => figure("board-second", "target", "second", second),
        (None, None) => ().into_any(),
    }));
    // High up: on a small screen the end of a full board lies behind the pad.
    inside.extend(board.jump.map(|said| line("caution", "jump-caution", said)));
    if !board.cautions.is_empty() {
        let lines = board.cautions.iter();
        let lines = lines.map(|line| line.to_string().into_any()).collect();
        inside.push(list("board-cautions", Some("cautions"), lines));
    }
    inside.extend(loaded(board));
    inside.extend(bands_line(board).map(|bands| line("quiet", "band-next", bands)));
    let counts = Seen::new(move || counted.with(Option::is_some));
    if let Some(stages) = stages_line(board) {
        // Its words stand in the second line until a count takes that.
        inside.push(dynamic(move || match counts.get() {
            true => line("board-kind", "stages", stages.clone()),
            false => ().into_any(),
        }));
    }
    inside.push(tempo_of(board, position));
    if !board.warm_up.is_empty() {
        let mut lines = vec![el("strong").child(t("Warm-up first")).view()];
        lines.extend(board.warm_up.iter().map(|line| line.said().into_any()));
        inside.push(list("board-warm-up", Some("warm-up-first"), lines));
    }
    inside.push(line("board-because", "because", board.because(unit)));
    if board.lacks_body_mass {
        inside.push(line("quiet", "no-body-mass", body_mass_words()));
    }
    inside.extend(
        board
            .cue
            .as_ref()
            .map(|cue| line("board-cue", "cue", cue.said().to_owned())),
    );
    frame_of(counts, inside)
}

/// The stages of a set, in words.
fn stages_line(board: &Board) -> Option<String> {
    matches!(board.target, Target::Stages(_)).then(|| target_figure(board).word)
}

/// The strip of the tempo; in a set of stages that of the stage under way, or of the next that has one.
fn tempo_of(board: &Board, position: Seen<Option<Position>>) -> AnyView {
    if let Some(tempo) = board.tempo {
        return tempo_strip(tempo, position);
    }
    let Target::Stages(stages) = board.target.clone() else {
        return ().into_any();
    };
    let tempo = Seen::new(move || {
        let at = match position.get() {
            // The other side begins with the first.
            Some(Position::Running { span, .. }) if span.what == CuePhase::ChangeOver => 0,
            Some(Position::Running { span, .. }) => usize::from(span.stage),
            // The last one goes on, or none does.
            Some(Position::Open { .. }) => stages.len().saturating_sub(1),
            Some(Position::Over) => stages.len(),
            None => 0,
        };
        let tempo = |stage: &Stage| match stage {
            Stage::Reps { tempo, .. } => Some(*tempo),
            Stage::Hold { .. } | Stage::Partials { .. } => None,
        };
        stages.iter().skip(at).find_map(tempo)
    });
    dynamic(move || match tempo.get() {
        Some(tempo) => tempo_strip(tempo, position),
        None => ().into_any(),
    })
}

/// The bar as it shall be loaded, and what changes on it.
pub fn loaded(board: &Board) -> Option<AnyView> {
    let loading = board.loading.as_ref()?;
    let change = board
        .change
        .as_ref()
        .map_or_else(|| loading.to_string(), ToString::to_string);
    let inside = vec![plates(loading), line("change", "change", change)];
    Some(el("div").class("loaded").child(inside).view())
}
