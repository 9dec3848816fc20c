//! The board of a rest: the time left, what was logged, and what comes next: load, reps, tempo, plates, and why.

use super::board::{frame, loaded, title};
use super::figures::{load_figure, logged_line, set_line, target_figure};
use super::hands::{Hands, held};
use super::screen::Open;
use crate::ledger::{SessionRecord, beaten_just_now};
use crate::say;
use crate::session::{Board, Phase};
use crate::ui::live::Live;
use crate::ui::model::Model;
use crate::ui::parts::{dynamic, el, line, tap};
use crate::ui::seen::Seen;
use crate::ui::stanchion::Stanchion;
use crate::units::{Unit, clock};
use crate::words::t;
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
    Some(say!("logged {said}", said))
}

/// Whether what was logged is on disk.
pub fn saved(in_memory: bool, unsaved: usize) -> &'static str {
    match unsaved {
        _ if in_memory => t("in memory only"),
        0 => t("saved"),
        _ => t("saving"),
    }
}

/// What the set logged last beats, in one sentence; looked for once an event, not whenever the model moves.
fn best(app: Stanchion) -> Seen<Option<String>> {
    let logged = app.of(|model| {
        let session = model.session.as_ref()?;
        let resting = matches!(session.state().phase, Phase::Resting(_));
        resting.then(|| session.events().len())
    });
    Seen::new(move || {
        logged.get()?;
        app.model.with_untracked(|model| {
            let session = model.session.as_ref()?;
            let last = session.state().last_logged()?.planned.key;
            let record = SessionRecord::from_events(session.events()).ok()?;
            let beaten = beaten_just_now(&record, last, &model.summaries, model.curve());
            let best = beaten.first()?;
            Some(say!("Best: {best}", best = best.brief(model.unit())))
        })
    })
}

/// The button beside the large one that stretches or cuts the rest. One that is held open has no length to change.
pub fn rest_step(hands: Hands, part: &'static str, more: bool) -> AnyView {
    let held = hands.app.of(held);
    let (name, sign) = if more {
        (t("+15 s of rest"), "+15 s")
    } else {
        (t("−15 s of rest"), "−15 s")
    };
    el("button")
        .class("step words")
        .part(part)
        .set("aria-label", name)
        .follow("disabled", move || held.get().then_some(""))
        .on_tap(Callback::new(move |()| hands.rest(more)))
        .child(sign)
        .view()
}

/// The board of a rest.
pub fn rest_board(
    app: Stanchion,
    board: &Board,
    turn: Option<String>,
    unit: Unit,
    open: Live<Open>,
) -> AnyView {
    let left = Seen::new(move || seconds_left(app));
    let logged = app.of(logged);
    let in_memory = app.of(Model::keeps_nothing);
    let saved = move || saved(in_memory.get(), app.unsaved.get()).to_owned();
    let because = app.of(because);
    let off_plan = app.of(|model| {
        let state = model.session.as_ref()?.state();
        state.off_plan(model.unit())
    });
    let best = best(app);
    let clock = el("p")
        .class("board-main")
        .part("rest")
        .set("role", "timer")
        .set("aria-label", t("rest left"))
        .child(
            el("span")
                .class("figure chars-5")
                .says(move || left.get().map_or_else(|| t("held").to_owned(), clock)),
        );
    let said = vec![
        el("span")
            .class("logged-what")
            .part("logged")
            .says(move || logged.get().unwrap_or_default())
            .view(),
        " ".into_any(),
        el("span")
            .part("saved")
            .set("role", "status")
            .says(saved)
            .view(),
        " · ".into_any(),
        el("span").class("logged-change").child(t("change")).view(),
    ];
    let change = Callback::new(move |()| open.set(Open::Amend));
    let amend = tap("plain logged", "amend", None, said.into_any(), change);
    let head = el("div")
        .class("rest-head")
        .child(title(t("Rest").to_owned()))
        .child(amend);
    frame(vec![
        head.into_any(),
        clock.into_any(),
        dynamic(move || match because.get() {
            Some(because) => line("quiet", "rest-because", because),
            None => ().into_any(),
        }),
        // The rest is for loading the bar: what comes next stands before what is over.
        next(board, turn, unit),
        dynamic(move || match off_plan.get() {
            Some(said) => line("off-plan", "off-plan", said),
            None => ().into_any(),
        }),
        dynamic(move || match best.get() {
            Some(said) => line("off-plan", "best", said),
            None => ().into_any(),
        }),
        against_budget(app),
    ])
}

/// How the session stands against its time budget, in a sentence; nothing where the sheet has none.
fn against_budget(app: Stanchion) -> AnyView {
    let said = Seen::new(move || {
        let now = app.now.get();
        app.model.with(|model| {
            let state = model.session.as_ref()?.state();
            let against = state.against_budget(&now, model.pace().change_over())?;
            Some(against.said())
        })
    });
    dynamic(move || match said.get() {
        Some(said) => line("board-kind", "budget", said),
        None => ().into_any(),
    })
}

/// What comes after the rest.
fn next(board: &Board, turn: Option<String>, unit: Unit) -> AnyView {
    let target = target_figure(board);
    let (figure, word) = match load_figure(board, unit) {
        // Of a set in stages there is no figure: its words stand behind.
        Some(load) if target.text.is_empty() => (load.to_string(), target.word),
        Some(load) if load.text.is_empty() => {
            (target.text, format!("{}, {}", target.word, load.word))
        }
        Some(load) => (format!("{load}, {}", target.text), target.word),
        None => (target.text, target.word),
    };
    let mut set = set_line(board);
    if let Some(tempo) = board.tempo {
        set.push_str(" · ");
        set.push_str(&say!("tempo {tempo}", tempo));
    }
    if let Some(turn) = turn {
        set.push_str(&format!(" · {turn}"));
    }
    let next = vec![
        el("p")
            .class("next-set")
            .child(t("Next: "))
            .child(
                el("strong")
                    .part("next-exercise")
                    .child(board.exercise.to_string()),
            )
            .view(),
        el("p")
            .class("next")
            .part("next")
            .child(el("strong").child(figure))
            .child(el("span").child(word))
            .view(),
        line("board-word next-kind", "next-kind", set),
    ];
    let mut inside = vec![next.into_any()];
    inside.extend(loaded(board));
    inside.push(line("board-because", "because", board.because(unit)));
    el("div").class("next-up").child(inside).view()
}
