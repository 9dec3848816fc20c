//! The choice of an exercise for the sheet that is being written: by pattern or by any word.

use super::sheet::nothing_begun;
use crate::draft::new_block;
use crate::exercises::KnownExercise;
use crate::kit::Kit;
use crate::quick::named_exercise;
use crate::say;
use crate::sheet::{BlockId, Exercise, Line, LoadBasis, SheetId, SideMode};
use crate::ui::exercises::PATTERNS;
use crate::ui::live::Live;
use crate::ui::parts::{
    Mode, button, choices, dynamic, el, field, h1, list, page, quiet, tap, toggles_of, way,
};
use crate::ui::place::Place;
use crate::ui::seen::Seen;
use crate::ui::stanchion::{Stanchion, stanchion};
use crate::words::t;
use leptos::prelude::*;

/// How many are shown at first for a search, and more at each asking.
const FOUND_MOST: usize = 12;

/// What is taken of an exercise into a block.
#[derive(Clone)]
struct Chosen {
    exercise: Exercise,
    basis: LoadBasis,
    sides: SideMode,
    cautions: Vec<Line>,
}

/// The choice of an exercise: for a block more, or for `block` in place of its own.
pub fn draft_exercise_place(sheet: SheetId, block: Option<BlockId>) -> AnyView {
    let app = stanchion();
    let there = app.of(move |model| model.drafts.contains_key(&sheet));
    dynamic(move || match there.get() {
        true => choice(app, sheet, block),
        false => nothing_begun(),
    })
}

fn choice(app: Stanchion, sheet: SheetId, block: Option<BlockId>) -> AnyView {
    let sought = Live::new(String::new());
    let pattern = Live::new(None::<i64>);
    let shown = Live::new(FOUND_MOST);
    let search = field(
        "exercise-find",
        Mode::Text,
        t("name, muscle or equipment"),
        sought,
        true,
        move |typed| {
            pattern.set(None);
            shown.set(FOUND_MOST);
            sought.set(typed);
        },
    );
    let is_typed = Seen::new(move || sought.with(|typed| !typed.trim().is_empty()));
    // While something is typed, what it finds stands right below the field.
    let patterns = dynamic(move || match is_typed.get() {
        true => ().into_any(),
        false => patterns(pattern),
    });
    let found = dynamic(move || {
        let typed = sought.get();
        let typed = typed.trim().to_owned();
        let pattern = pattern.get().and_then(|n| PATTERNS.get(n as usize));
        let most = pattern.map_or(shown.get(), |_| usize::MAX);
        let (mut rows, more) = app.model.with(|model| {
            let found = match pattern {
                Some((pattern, _)) => model.exercises.of_pattern_with(*pattern, &model.kit),
                None if typed.is_empty() => Vec::new(),
                None => model.exercises.search_with(&typed, &model.kit),
            };
            let more = found.len() > most;
            let rows = found
                .into_iter()
                .take(most)
                .map(|known| offered(app, sheet, block, known, &model.kit));
            (rows.collect::<Vec<AnyView>>(), more)
        });
        if more {
            rows.push(more_button(shown, FOUND_MOST));
        }
        if let Ok(name) = Line::new(&typed) {
            let label = say!("“{name}” as I typed it", name);
            rows.push(button("row", "exercise-new", label, move || {
                take(app, sheet, block, typed_in(name.clone()));
            }));
        }
        list("rows", Some("exercises-found"), rows)
    });
    let back = match block {
        Some(block) => Place::DraftBlock(sheet, block),
        None => Place::Draft(sheet),
    };
    page(
        "draft-exercise",
        vec![
            way(back.href(), t("Back to the sheet")),
            h1(t("Which exercise?")),
            search,
            patterns,
            found,
        ],
    )
}

/// The movement patterns, of which one may be chosen.
fn patterns(pattern: Live<Option<i64>>) -> AnyView {
    let labels = PATTERNS.map(|(pattern, _)| (pattern.name().to_owned(), ""));
    let inside = toggles_of("pattern", labels, pattern.into(), move |n| {
        pattern.set(Some(n).filter(|_| pattern.get_untracked() != Some(n)));
    });
    choices("choices words", t("movement pattern"), inside)
}

/// Shows so many more of what was found.
pub fn more_button(shown: Live<usize>, by: usize) -> AnyView {
    button("wide", "exercise-more", t("Show more"), move || {
        shown.update(|shown| *shown += by);
    })
}

fn offered(
    app: Stanchion,
    sheet: SheetId,
    block: Option<BlockId>,
    known: KnownExercise,
    kit: &Kit,
) -> AnyView {
    let muscles: Vec<&str> = known.main().iter().map(|muscle| muscle.name()).collect();
    let with_kit = known.exercise_with(kit);
    let mut words = vec![known.equipment().name().to_owned(), muscles.join(", ")];
    if with_kit.is_none() {
        words.push(t("not with your kit").to_owned());
    }
    let name = known.exercise().said();
    let face = vec![el("strong").child(name).view(), quiet(words.join(" · "))];
    let chosen = Chosen {
        exercise: with_kit.unwrap_or_else(|| known.exercise()),
        basis: known.basis_with(kit),
        sides: known.sides(),
        cautions: known.cautions(),
    };
    let chosen = Callback::new(move |()| take(app, sheet, block, chosen.clone()));
    tap("row", "exercise-take", None, face.into_any(), chosen)
}

/// An exercise that nobody knows, by the name that was typed.
fn typed_in(name: Line) -> Chosen {
    Chosen {
        exercise: named_exercise(name),
        basis: LoadBasis::External,
        sides: SideMode::Both,
        cautions: Vec::new(),
    }
}

/// Takes the exercise: as a new block, or into the block that is open.
fn take(app: Stanchion, sheet: SheetId, block: Option<BlockId>, chosen: Chosen) {
    let Chosen {
        exercise,
        basis,
        sides,
        cautions,
    } = chosen;
    let id = block.unwrap_or_else(|| BlockId(app.id()));
    let changed = match block {
        None => {
            let new = new_block(id, exercise, basis, sides, cautions);
            app.change_draft(sheet, &mut |draft| draft.add(new.clone()))
        }
        Some(_) => app.change_block(sheet, id, &mut |block| {
            block.exercise = exercise.clone();
            block.basis = basis.clone();
            block.sides = sides;
            block.cautions = cautions.clone();
            // It was the load of another exercise.
            block.start = None;
        }),
    };
    match changed {
        Ok(()) => app.go(Place::DraftBlock(sheet, id)),
        Err(why) => app.complain(why),
    }
}
