//! The sessions as a list, the newest first: found by exercise, sheet, note and day, read further back as asked.

use super::back::{Found, read_on, search};
use crate::ledger::{Heading, Sought};
use crate::sheet::ExerciseId;
use crate::ui::live::Live;
use crate::ui::model::Model;
use crate::ui::parts::{
    Mode, Row, button, dynamic, el, field, line, rows, status_line, text, when,
};
use crate::ui::place::Place;
use crate::ui::seen::{Seen, whenever};
use crate::ui::stanchion::Stanchion;
use crate::units::{Unit, date, day_and_time, parse_date};
use crate::words::{many, many_of, t, t_in};
use leptos::prelude::*;

/// The facts of a session in one line.
pub fn facts(heading: &Heading, unit: Unit) -> String {
    let mut facts = format!(
        "{} min · {} · {}",
        heading.minutes,
        heading.sets_said(),
        heading.volume.shown(unit)
    );
    if let Some(rpe) = heading.rpe {
        facts.push_str(&format!(" · RPE {rpe}"));
    }
    facts
}

/// The row of a session; where it was found stands behind its facts.
pub fn row(heading: &Heading, unit: Unit, place: &str) -> Row {
    let mut after = facts(heading, unit);
    if !place.is_empty() {
        after.push_str(&format!(" · {place}"));
    }
    Row {
        href: Place::Session(heading.session).href(),
        before: day_and_time(heading.began),
        strong: heading.sheet.to_string(),
        after,
    }
}

/// What an exercise is called, whatever sheets and sessions call it.
pub fn name_of(model: &Model, id: &ExerciseId) -> String {
    let last = model.summaries.get(id).map(|known| &known.name);
    model.exercises.called(id, last)
}

/// What was found, as rows.
fn found_rows(app: Stanchion, found: Live<Found>) -> Vec<Row> {
    app.model.with_untracked(|model| {
        let unit = model.unit();
        let sought: Sought = model.back.sought(model);
        found.with(|found| {
            let headings = found.headings.iter();
            headings
                .map(|heading| {
                    let place = sought.place(heading, |id| name_of(model, id));
                    row(heading, unit, &place)
                })
                .collect()
        })
    })
}

/// The list, and the fields that narrow it.
pub fn list_view(app: Stanchion) -> AnyView {
    let found = Live::new(Found::default());
    let newest = app.of(|model| model.headings.clone());
    let sought = app.of(|model| {
        let back = &model.back;
        (back.text.clone(), back.first.clone(), back.last.clone())
    });
    whenever(move || {
        newest.with(|_| ());
        sought.with(|_| ());
        search(app, found);
    });
    let rows_found = Seen::new(move || found_rows(app, found));
    let everything = app.of(|model| model.back.sought(model).is_everything());
    let more = Seen::new(move || found.with(|found| found.before.is_some() && !found.reading));
    let said = move |of_all: bool| {
        text(move || match everything.get() {
            everything if everything == of_all => found.with(|found| told(found, everything)),
            _ => String::new(),
        })
    };
    // Read aloud to who searches; who opens the ledger hears its heading.
    let (in_answer, unasked) = (said(false), said(true));
    vec![
        fields(app),
        el("div")
            .part("found")
            .child(status_line("found-sought", in_answer))
            .child(line("quiet", "found-newest", unasked))
            .view(),
        rows("session", rows_found),
        when(more, move || {
            button("wide", "earlier", t("Earlier"), move || {
                read_on(app, found, None);
            })
        }),
    ]
    .into_any()
}

/// What was found, in words; nothing where all of a short ledger stands there.
fn told(found: &Found, everything: bool) -> String {
    let count = found.headings.len();
    match (found.reading, found.before, everything) {
        (true, ..) => t("Reading.").to_owned(),
        (false, None, true) if found.headings.is_empty() => String::new(),
        (false, None, true) => many(count, "{n} session in all.", "{n} sessions in all."),
        (false, None, false) => many(
            count,
            "{n} session found in the whole ledger.",
            "{n} sessions found in the whole ledger.",
        ),
        (false, Some(before), true) => many_of(
            count,
            "The newest {n} session, back to {day}.",
            "The newest {n} sessions, back to {day}.",
            &[("day", &date(before))],
        ),
        (false, Some(before), false) => many_of(
            count,
            "{n} session found back to {day}.",
            "{n} sessions found back to {day}.",
            &[("day", &date(before))],
        ),
    }
}

/// The fields that narrow the list.
fn fields(app: Stanchion) -> AnyView {
    let typed = app.of(|model| model.back.text.clone());
    let days = app.of(|model| (model.back.first.clone(), model.back.last.clone()));
    let first = text(move || days.get().0);
    let last = text(move || days.get().1);
    let open = app
        .model
        .with_untracked(|model| !model.back.first.is_empty() || !model.back.last.is_empty());
    let wrong = text(move || {
        let (first, last) = days.get();
        match (parse_date(&first), parse_date(&last)) {
            (Some(first), Some(last)) if last < first => {
                t("The last day lies before the first: nothing can be found.").to_owned()
            }
            _ => String::new(),
        }
    });
    let change = move |change: &dyn Fn(&mut super::LookBack)| {
        app.model.update(|model| {
            change(&mut model.back);
            model.back.until = None;
        });
    };
    let between = vec![
        field(
            "find-first",
            Mode::Day,
            t_in("day", "from"),
            first,
            false,
            move |typed| {
                change(&|back| back.first.clone_from(&typed));
            },
        ),
        field(
            "find-last",
            Mode::Day,
            t_in("day", "to"),
            last,
            false,
            move |typed| {
                change(&|back| back.last.clone_from(&typed));
            },
        ),
    ];
    let some = app.of(|model| !model.back.sought(model).is_everything());
    let narrow = move |typed: String| change(&|back| back.text.clone_from(&typed));
    let label = t("find by exercise, sheet or note");
    vec![
        field("find-text", Mode::Text, label, typed, false, narrow),
        el("details")
            .class("adder")
            .set("open", open)
            .part("find-days")
            .child(el("summary").child(t("Between two days")))
            .child(el("div").class("between").child(between))
            .view(),
        dynamic(move || match wrong.get() {
            wrong if wrong.is_empty() => ().into_any(),
            wrong => line("wrong-word", "find-wrong", wrong),
        }),
        when(some, move || {
            button("plain", "find-all", t("Show all sessions"), move || {
                change(&|back| {
                    back.text.clear();
                    back.first.clear();
                    back.last.clear();
                });
            })
        }),
    ]
    .into_any()
}
