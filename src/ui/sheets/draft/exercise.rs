//! The choice of an exercise for the sheet that is being written: by pattern or by any word.

use super::sheet::nothing_begun;
use crate::draft::new_block;
use crate::exercises::{self, Entry};
use crate::quick::named_exercise;
use crate::sheet::{BlockId, Equipment, Exercise, Line, LoadBasis, Pattern, SheetId, SideMode};
use crate::ui::parts::{
    Mode, button, choices, dynamic, field, h1, list, page, quiet, tap, toggles_of, way,
};
use crate::ui::place::Place;
use crate::ui::stanchion::{Stanchion, stanchion};
use leptos::prelude::*;

/// How many are offered at once for a search.
const FOUND_MOST: usize = 12;

/// Patterns in the words of a person who looks for one.
const PATTERNS: [(Pattern, &str); 10] = [
    (Pattern::Squat, "squat"),
    (Pattern::Hinge, "hinge"),
    (Pattern::PushAcross, "push across"),
    (Pattern::PushUpward, "push upward"),
    (Pattern::PullAcross, "pull across"),
    (Pattern::PullDownward, "pull downward"),
    (Pattern::Carry, "carry"),
    (Pattern::Explosive, "explosive"),
    (Pattern::Trunk, "trunk"),
    (Pattern::SingleJoint, "single joint"),
];

/// What is taken of an exercise into a block.
struct Chosen {
    exercise: Exercise,
    basis: LoadBasis,
    sides: SideMode,
    cautions: Vec<Line>,
}

/// The choice of an exercise: for a block more, or for `block` in place of its own.
#[component]
pub fn DraftExercisePlace(sheet: SheetId, block: Option<BlockId>) -> impl IntoView {
    let app = stanchion();
    let there = app.of(move |model| model.drafts.contains_key(&sheet));
    dynamic(move || match there.get() {
        true => choice(app, sheet, block),
        false => nothing_begun(),
    })
}

fn choice(app: Stanchion, sheet: SheetId, block: Option<BlockId>) -> AnyView {
    let sought = RwSignal::new(String::new());
    let pattern = RwSignal::new(None::<i64>);
    let labels = PATTERNS.iter().map(|(_, word)| ((*word).to_owned(), ""));
    let patterns = toggles_of("pattern", labels, pattern.into(), move |n| {
        sought.set(String::new());
        pattern.set(Some(n).filter(|_| pattern.get_untracked() != Some(n)));
    });
    let search = field(
        "exercise-find",
        Mode::Text,
        "name, muscle or equipment",
        sought,
        true,
        move |typed| {
            pattern.set(None);
            sought.set(typed);
        },
    );
    let found = dynamic(move || {
        let typed = sought.get();
        let typed = typed.trim().to_owned();
        let entries = match pattern.get().and_then(|n| PATTERNS.get(n as usize)) {
            Some((pattern, _)) => of_pattern(*pattern),
            None if typed.is_empty() => Vec::new(),
            None => exercises::search(&typed, FOUND_MOST),
        };
        let mut rows: Vec<AnyView> = entries
            .into_iter()
            .map(|entry| offered(app, sheet, block, entry))
            .collect();
        if let Ok(name) = Line::new(&typed) {
            let label = format!("“{name}” as I typed it");
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
            way(back.href(), "Back to the sheet"),
            h1("Which exercise?"),
            search,
            choices("choices words", "movement pattern", patterns),
            found,
        ],
    )
}

/// The entries of a pattern.
fn of_pattern(pattern: Pattern) -> Vec<&'static Entry> {
    let all = exercises::all().iter();
    all.filter(|entry| entry.pattern() == pattern).collect()
}

fn offered(
    app: Stanchion,
    sheet: SheetId,
    block: Option<BlockId>,
    entry: &'static Entry,
) -> AnyView {
    let muscles: Vec<&str> = entry.main().map(|muscle| muscle.name()).collect();
    let kit = app
        .model
        .with_untracked(|model| entry.exercise_with(&model.kit).is_some());
    let mut words = vec![
        equipment_word(entry.equipment()).to_owned(),
        muscles.join(", "),
    ];
    if !kit {
        words.push("not with your kit".to_owned());
    }
    let name = entry.exercise().name.to_string();
    let face = view! { <strong>{name}</strong> {quiet(words.join(" · "))} };
    let chosen = Callback::new(move |()| {
        let exercise = app
            .model
            .with_untracked(|model| entry.exercise_with(&model.kit));
        let chosen = Chosen {
            exercise: exercise.unwrap_or_else(|| entry.exercise()),
            basis: entry.basis(),
            sides: entry.sides(),
            cautions: entry.cautions(),
        };
        take(app, sheet, block, chosen);
    });
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

/// What the equipment is called on screen.
pub fn equipment_word(equipment: Equipment) -> &'static str {
    match equipment {
        Equipment::Barbell => "barbell",
        Equipment::Dumbbell => "dumbbell or kettlebell",
        Equipment::Handle => "loadable handle",
        Equipment::Stack => "stack",
        Equipment::Band => "band",
        Equipment::Body => "body",
        Equipment::Other => "other",
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
