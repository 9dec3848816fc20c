//! What is known of an exercise, to be written by taps: a new one, or another version.

use super::draft::{BAND, BASES, Draft, SHARE, base};
use super::words::{EQUIPMENT, PATTERNS, SIDES, sides};
use crate::device::clock;
use crate::exercises::Muscle;
use crate::sheet::{Equipment, ExerciseId, Pattern};
use crate::ui::live::Live;
use crate::ui::parts::{
    Mode, button, choices, el, field, h1, page, section, toggle, toggles_of, way, when, wrong_word,
};
use crate::ui::place::Place;
use crate::ui::seen::Seen;
use crate::ui::stanchion::{Stanchion, stanchion};
use crate::words::t;
use leptos::prelude::*;

/// Choices of one value of a list of values and words.
fn one_of<T: Copy + PartialEq + Send + Sync + 'static>(
    part: &'static str,
    name: &'static str,
    (list, said): (Vec<T>, fn(T) -> &'static str),
    of: impl Fn(&Draft) -> T + Copy + Send + Sync + 'static,
    put: impl Fn(&mut Draft, T) + Copy + Send + Sync + 'static,
    draft: Live<Draft>,
) -> AnyView {
    let labels: Vec<_> = list.iter().map(|one| (said(*one).to_owned(), "")).collect();
    let list = StoredValue::new(list);
    let pressed = Seen::new(move || {
        let value = draft.with(of);
        let at = list.with_value(|list| list.iter().position(|other| *other == value));
        at.and_then(|at| i64::try_from(at).ok())
    });
    let inside = toggles_of(part, labels, pressed, move |n| {
        let at = usize::try_from(n).unwrap_or_default();
        let chosen = list.with_value(|list| list.get(at).copied());
        if let Some(value) = chosen {
            draft.update(|draft| put(draft, value));
        }
    });
    section(None, name, vec![choices("choices three", name, inside)])
}

/// All muscles, on or off.
fn muscle_choices(
    part: &'static str,
    name: &'static str,
    as_main: bool,
    draft: Live<Draft>,
) -> AnyView {
    let inside = Muscle::ALL.into_iter().map(|muscle| {
        let on = Seen::new(move || {
            draft.with(|draft| if as_main { draft.main } else { draft.also }.has(muscle))
        });
        toggle(
            format!("{part}-{}", muscle.key().replace(' ', "-")),
            muscle.name(),
            "",
            on,
            move || draft.update(|draft| draft.tap(muscle, as_main)),
        )
    });
    let inside = choices("choices three", name, inside.collect());
    section(None, name, vec![inside])
}

fn basis(draft: Live<Draft>) -> AnyView {
    let labels = (0..BASES).map(|n| (base(n).to_owned(), ""));
    let chosen = Seen::new(move || Some(draft.with(|draft| draft.basis)));
    let name = t("What the load is");
    let inside = toggles_of("exercise-basis", labels, chosen, move |n| {
        draft.update(|draft| draft.basis = n)
    });
    let is = move |n| Seen::new(move || chosen.get() == Some(n));
    section(
        None,
        name,
        vec![
            choices("choices three", name, inside),
            when(is(SHARE), move || {
                let share = Seen::new(move || draft.with(|draft| draft.share.clone()));
                field(
                    "exercise-share",
                    Mode::Text,
                    t("share of the body mass, in %"),
                    share,
                    true,
                    move |typed| draft.update(|draft| draft.share = typed),
                )
            }),
            when(is(BAND), move || {
                let band = Seen::new(move || draft.with(|draft| draft.band.clone()));
                field(
                    "exercise-band",
                    Mode::Text,
                    t("label of the band"),
                    band,
                    true,
                    move |typed| draft.update(|draft| draft.band = typed),
                )
            }),
        ],
    )
}

fn cautions(draft: Live<Draft>) -> AnyView {
    let area = el("textarea")
        .class("note")
        .set("rows", "3")
        .part("exercise-cautions")
        .set("aria-label", t("cautions, one a line"))
        .value(move || draft.with(|draft| draft.cautions.clone()))
        .on("input", move |event| {
            draft.update(|draft| draft.cautions = event_target_value(&event))
        });
    section(None, t("Cautions, one a line"), vec![area.into_any()])
}

/// Keeps what was said, or says what is wrong with it.
fn keep(app: Stanchion, id: Option<&ExerciseId>, draft: &Draft) -> Result<(), String> {
    let known = app.model.with_untracked(|model| model.exercises.clone());
    let own = draft.read(id, &known, app.id(), clock::wall())?;
    let kept = own.id.clone();
    if app.keep_exercise(own) {
        app.go(Place::Exercise(kept));
    }
    Ok(())
}

/// The place where an exercise is written, a new one or another version of `id`.
pub fn write_exercise_place(id: Option<ExerciseId>) -> AnyView {
    let app = stanchion();
    let before = app.model.with_untracked(|model| {
        let known = id.as_ref().and_then(|id| model.exercises.of(id.as_str()));
        known.map(Draft::of)
    });
    // An id that nobody knows is written as a new one.
    let id = id.filter(|_| before.is_some());
    let title = if before.is_some() {
        t("Change an exercise")
    } else {
        t("An exercise of your own")
    };
    let draft = Live::new(before.unwrap_or_else(Draft::new));
    let wrong = Live::new(None::<String>);
    let back = id.clone().map_or(Place::Exercises, Place::Exercise);
    let name = Seen::new(move || draft.with(|draft| draft.name.clone()));
    let keep = move || {
        let kept = draft.with_untracked(|draft| keep(app, id.as_ref(), draft));
        wrong.set(kept.err());
    };
    page(
        "exercise-write",
        vec![
            way(back.href(), t("Back without keeping")),
            h1(title),
            field(
                "exercise-own-name",
                Mode::Text,
                t("name"),
                name,
                true,
                move |typed| draft.update(|draft| draft.name = typed),
            ),
            one_of(
                "exercise-pattern",
                t("Movement pattern"),
                (PATTERNS.map(|(one, _)| one).into(), Pattern::name),
                |draft| draft.pattern,
                |draft, pattern| draft.pattern = pattern,
                draft,
            ),
            one_of(
                "exercise-equipment",
                t("Equipment"),
                (EQUIPMENT.map(|(one, _)| one).into(), Equipment::name),
                |draft| draft.equipment,
                |draft, equipment| draft.equipment = equipment,
                draft,
            ),
            muscle_choices("exercise-main", t("Main muscles"), true, draft),
            muscle_choices("exercise-also", t("Muscles that help"), false, draft),
            basis(draft),
            one_of(
                "exercise-sides",
                t("Sides"),
                (SIDES.into(), sides),
                |draft| draft.sides,
                |draft, sides| draft.sides = sides,
                draft,
            ),
            cautions(draft),
            wrong_word("exercise-wrong", wrong),
            button("wide strong", "exercise-keep", t("Keep it"), keep),
        ],
    )
}
