//! All exercises that are known, and a search through them.

use crate::exercises::KnownExercise;
use crate::say;
use crate::ui::live::Live;
use crate::ui::parts::{Mode, Row, button, field, h1, page, rows, status_line, text, way};
use crate::ui::place::Place;
use crate::ui::seen::Seen;
use crate::ui::stanchion::stanchion;
use crate::words::t;
use leptos::prelude::*;

/// How many are shown at once; more words find fewer.
const SHOWN: usize = 20;

fn row(exercise: KnownExercise) -> Row {
    let equipment = exercise.equipment().name();
    let after = if exercise.is_own() {
        say!("{equipment} · your own", equipment)
    } else {
        equipment.to_owned()
    };
    Row {
        href: Place::Exercise(exercise.id()).href(),
        before: String::new(),
        strong: exercise.name().to_owned(),
        after,
    }
}

/// All exercises.
pub fn exercises_place() -> AnyView {
    let app = stanchion();
    let sought = Live::new(String::new());
    let found = Seen::new(move || {
        app.model.with(|model| {
            let found = sought.with(|sought| model.exercises.search_with(sought, &model.kit));
            let found = found.into_iter().take(SHOWN + 1);
            found.map(row).collect::<Vec<_>>()
        })
    });
    let shown = Seen::new(move || {
        let mut found = found.get();
        found.truncate(SHOWN);
        found
    });
    let told = text(move || {
        let said = match found.with(Vec::len) {
            0 => t("Nothing of that name. Write it as one of your own."),
            n if n > SHOWN => t("There are more: a word more finds fewer."),
            _ => "",
        };
        said.to_owned()
    });
    page(
        "exercises",
        vec![
            way(Place::Sheets.href(), t("All sheets")),
            h1(t("Exercises")),
            field(
                "exercise-sought",
                Mode::Text,
                t("find by name, muscle or equipment"),
                sought,
                true,
                move |typed| sought.set(typed),
            ),
            rows("exercise-row", shown),
            status_line("exercises-found", told),
            button(
                "wide",
                "exercise-begin",
                t("Write one of your own"),
                move || app.go(Place::WriteExercise(None)),
            ),
        ],
    )
}
