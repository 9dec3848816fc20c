//! The board of a rest: the time left, what was logged, and what comes next.

use super::board::{frame, loaded, title};
use super::figures::{load_figure, logged_line, target_figure};
use super::screen::Open;
use crate::session::{Board, Phase};
use crate::ui::model::{Keeping, Model};
use crate::ui::parts::{dynamic, line, tap, text};
use crate::ui::stanchion::Stanchion;
use crate::units::{Unit, clock};
use leptos::prelude::*;

/// Seconds left of the rest under way, rounded up: 0:00 is over. None when it is held open.
fn seconds_left(app: Stanchion) -> Option<i64> {
    let now = app.now.get();
    app.model
        .with(|model| match model.session.as_ref()?.state().phase {
            Phase::Resting(rest) => Some((rest.left_ms(&now)? + 999).div_euclid(1000).max(0)),
            _ => None,
        })
}

/// Why the rest under way is longer than planned.
fn because(model: &Model) -> Option<String> {
    match model.session.as_ref()?.state().phase {
        Phase::Resting(rest) => rest.because(),
        _ => None,
    }
}

/// What was logged last, in words.
fn logged(model: &Model) -> Option<String> {
    let state = model.session.as_ref()?.state();
    let slot = state.last_logged()?;
    let said = logged_line(
        &slot.logged()?.done,
        &state.block_of(slot).basis,
        model.unit(),
    );
    Some(format!("logged {said}"))
}

/// Whether it is on disk.
fn saved(model: &Model) -> &'static str {
    match (&model.keeping, model.unsaved) {
        (Keeping::Nothing(_), _) => "in memory only",
        (_, 0) => "saved",
        _ => "saving",
    }
}

/// The board of a rest.
pub fn rest_board(app: Stanchion, board: Memo<Option<Board>>, open: RwSignal<Open>) -> AnyView {
    let unit = app.of(Model::unit);
    let left = Memo::new(move |_| seconds_left(app));
    let logged = app.of(logged);
    let saved = app.of(saved);
    let because = app.of(because);
    let clock = view! {
        <p class="board-main" data-part="rest" role="timer" aria-label="rest left">
            <span class="figure" class:chars-4=move || left.get().is_some() class:chars-6=move || left.get().is_none()>
                {move || left.get().map_or_else(|| "held".to_owned(), clock)}
            </span>
        </p>
    };
    let said = view! {
        <span data-part="logged">{move || logged.get()}</span>
        " · "
        <span data-part="saved" role="status">{move || saved.get()}</span>
        <span class="logged-change">{"change"}</span>
    };
    let change = Callback::new(move |()| open.set(Open::Amend));
    let name = text(move || format!("{}, change it", logged.get().unwrap_or_default()));
    frame(vec![
        title("Rest".to_owned()),
        clock.into_any(),
        dynamic(move || match because.get() {
            Some(because) => line("quiet", "rest-because", because),
            None => ().into_any(),
        }),
        tap("plain logged", "amend", Some(name), said.into_any(), change),
        dynamic(move || match board.get() {
            Some(board) => next(&board, unit.get()),
            None => ().into_any(),
        }),
    ])
}

/// What comes after the rest.
fn next(board: &Board, unit: Unit) -> AnyView {
    let load = load_figure(board, unit).map(|figure| format!("{} {}, ", figure.text, figure.word));
    let target = target_figure(board);
    let target = format!("{} {}", target.text, target.word);
    let set = format!(
        "{} · {} {} of {}",
        board.exercise, board.kind, board.number, board.of
    );
    let mut inside = vec![
        line(
            "next",
            "next",
            format!("Next: {}{}", load.unwrap_or_default(), target.trim()),
        ),
        line("board-kind", "next-exercise", set),
    ];
    inside.extend(loaded(board, unit));
    inside.push(line("board-because", "because", board.because(unit)));
    view! { <div class="next-up">{inside}</div> }.into_any()
}
