//! One exercise: what is known of it, and another name for it.

use super::words::{basis, muscle_names, sides};
use crate::exercises::KnownExercise;
use crate::say;
use crate::sheet::ExerciseId;
use crate::ui::history::{best_lines, bests};
use crate::ui::live::Live;
use crate::ui::model::Model;
use crate::ui::parts::{
    Mode, button, checked_field, dynamic, h1, list, page, read_name, section, sure_button, way,
    words,
};
use crate::ui::place::Place;
use crate::ui::stanchion::{Stanchion, stanchion};
use crate::units::day;
use crate::words::t;
use leptos::prelude::*;

/// What is shown of an exercise.
#[derive(Clone, PartialEq)]
struct Shown {
    name: String,
    facts: Vec<String>,
    cautions: Vec<String>,
    bests: Vec<String>,
    own: bool,
    /// Its name in the list, where the lifter has one of that id.
    listed: Option<&'static str>,
}

fn shown(model: &Model, id: &ExerciseId) -> Option<Shown> {
    let known = model.exercises.of(id.as_str())?;
    let listed = known.listed().filter(|_| known.is_own());
    let mut facts = vec![
        say!("pattern: {what}", what = known.pattern().name()),
        say!("main muscles: {what}", what = muscle_names(known.main())),
        say!("also: {what}", what = muscle_names(known.also())),
        say!("equipment: {what}", what = known.equipment().name()),
        say!("load: {what}", what = basis(&known.basis())),
        say!("sides: {what}", what = sides(known.sides())),
    ];
    let last = model.history(id).last();
    facts.push(last.map_or_else(
        || t("not done yet").to_owned(),
        |last| say!("done last on {day}", day = day(last.at)),
    ));
    facts.extend(listed.map(|entry| {
        say!(
            "in the list: {name}",
            name = crate::words::t_name(entry.name())
        )
    }));
    Some(Shown {
        name: known.name().to_owned(),
        facts,
        cautions: known
            .cautions()
            .iter()
            .map(|line| line.said().to_owned())
            .collect(),
        bests: best_lines(model, id),
        own: known.is_own(),
        listed: listed.map(|entry| crate::words::t_name(entry.name())),
    })
}

/// One exercise.
pub fn exercise_place(id: ExerciseId) -> AnyView {
    let app = stanchion();
    let of = id.clone();
    let shown = app.of(move |model| shown(model, &of));
    dynamic(move || match shown.get() {
        Some(shown) => look(app, id.clone(), shown),
        None => page("exercise-none", vec![all(), h1(t("No such exercise"))]),
    })
}

fn all() -> AnyView {
    way(Place::Exercises.href(), t("All exercises"))
}

fn look(app: Stanchion, id: ExerciseId, shown: Shown) -> AnyView {
    let facts = shown.facts.into_iter().map(IntoAny::into_any).collect();
    let mut inside = vec![
        all(),
        h1(shown.name.clone()),
        list("facts", Some("exercise-facts"), facts),
    ];
    let cautions = shown.cautions.into_iter();
    inside.extend(cautions.map(|caution| words("caution", caution)));
    inside.push(bests(shown.bests));
    inside.push(way(
        Place::History(id.clone()).href(),
        t("What was done of it"),
    ));
    inside.push(naming(app, id.clone(), shown.name));
    let of = id.clone();
    inside.push(button(
        "wide",
        "exercise-change",
        t("Change what is known of it"),
        move || app.go(Place::WriteExercise(Some(of.clone()))),
    ));
    if shown.own {
        let ask = match shown.listed {
            Some(_) => t("Back to what the list says"),
            None => t("Remove it from your exercises"),
        };
        let remove = Callback::new(move |()| {
            app.remove_exercise(id.clone());
            app.go(Place::Exercises);
        });
        inside.push(sure_button(
            "exercise-remove",
            ask,
            t("Yes, do it; what was done stays"),
            remove,
        ));
    }
    page("exercise-look", inside)
}

/// Another name for it.
fn naming(app: Stanchion, id: ExerciseId, name: String) -> AnyView {
    let typed = Live::new(name);
    let wrong = Live::new(None::<String>);
    let rename = move || wrong.set(typed.with_untracked(|typed| rename(app, &id, typed)).err());
    let name = checked_field(
        "exercise-name",
        Mode::Text,
        t("its name; what was done stays with it"),
        typed,
        true,
        move |name| typed.set(name),
        wrong,
    );
    let button = button("wide", "exercise-rename", t("Call it that"), rename);
    section(None, t("Call it something else"), vec![name, button])
}

fn rename(app: Stanchion, id: &ExerciseId, typed: &str) -> Result<(), String> {
    let name = read_name(typed)?;
    let exercises = app.model.with_untracked(|model| model.exercises.clone());
    let taken = exercises.find(name.as_str());
    if let Some(taken) = taken.filter(|other| other.id != *id) {
        return Err(say!(
            "another exercise is called {name} already",
            name = taken.name
        ));
    }
    let known = exercises.of(id.as_str()).map(KnownExercise::name);
    if known == Some(name.as_str()) {
        return Err(t("that is its name: type another").to_owned());
    }
    if let Some(known) = exercises.of(id.as_str())
        && app.rename_exercise(known, name.clone())
    {
        app.say(say!(
            "It is called {name} from now on, on your sheets too.",
            name
        ));
    }
    Ok(())
}
