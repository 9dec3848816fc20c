//! Two periods of a ledger side by side.

use crate::device::clock;
use crate::ledger::{Comparison, InPeriod, Period, best_said};
use crate::sheet::ExerciseId;
use crate::ui::ledger::name_of;
use crate::ui::live::Live;
use crate::ui::model::Model;
use crate::ui::parts::{
    choices, column_head, dynamic, el, h1, h2, line, page, quiet, table_row, toggles_of, way,
};
use crate::ui::place::Place;
use crate::ui::reading::{headings_between, history_of};
use crate::ui::seen::{Seen, whenever};
use crate::ui::stanchion::{Stanchion, stanchion};
use crate::units::{Unit, day};
use crate::words::{t, t_in};
use chrono::NaiveDate;
use leptos::prelude::*;
use leptos::task::spawn_local;

/// Lengths that can be chosen with one tap, in weeks.
const WEEKS: [u8; 4] = [4, 8, 12, 26];

/// What is compared: first and last day of the one period, first and last day of the other.
type Typed = [NaiveDate; 4];

fn typed_of([first, second]: [Period; 2]) -> Typed {
    [first.first(), first.last(), second.first(), second.last()]
}

fn periods_of([from, to, then_from, then_to]: Typed) -> Result<[Period; 2], String> {
    let period = |from, to| Period::new(from, to).map_err(|wrong| wrong.to_string());
    Ok([period(from, to)?, period(then_from, then_to)?])
}

/// Reads both periods and the best sets of each exercise in them.
async fn read(app: Stanchion, periods: [Period; 2]) -> Result<Comparison, String> {
    let keep = app.keep();
    let mut headings = Vec::new();
    for period in periods {
        let more = headings_between(&keep, period.first(), period.last()).await;
        for heading in more.map_err(|error| error.to_string())? {
            // Of periods that overlap, each session once.
            if headings
                .iter()
                .all(|other: &crate::ledger::Heading| other.session != heading.session)
            {
                headings.push(heading);
            }
        }
    }
    let mut comparison = Comparison::of(periods, &headings);
    let ids: Vec<ExerciseId> = comparison
        .exercises
        .iter()
        .map(|(id, _)| id.clone())
        .collect();
    for id in ids {
        let pasts = history_of(&keep, &id).await;
        comparison.note_best(periods, &id, &pasts.map_err(|error| error.to_string())?);
    }
    Ok(comparison)
}

/// Two periods side by side.
pub fn compare_place() -> AnyView {
    let app = stanchion();
    let today = clock::wall().date_naive();
    let typed = Live::new(typed_of(Period::weeks_up_to(today, WEEKS[0])));
    let found = Live::new(None::<Result<Comparison, String>>);
    whenever(move || {
        let days = typed.get();
        found.set(None);
        match periods_of(days) {
            Err(wrong) => found.set(Some(Err(wrong))),
            Ok(periods) => spawn_local(async move {
                let compared = read(app, periods).await;
                // Other days may have been chosen, or the place left.
                if typed.try_get_untracked() == Some(days) {
                    found.set(Some(compared));
                }
            }),
        }
    });
    let weeks = WEEKS.map(|weeks| (weeks.to_string(), t("weeks")));
    let pressed = Seen::new(move || {
        let days = typed.get();
        let is = |weeks: &u8| typed_of(Period::weeks_up_to(days[3], *weeks)) == days;
        let at = WEEKS.iter().position(is)?;
        i64::try_from(at).ok()
    });
    let choose = move |n: i64| {
        let weeks = usize::try_from(n).ok().and_then(|n| WEEKS.get(n));
        if let Some(weeks) = weeks {
            typed.set(typed_of(Period::weeks_up_to(today, *weeks)));
        }
    };
    let toggles = toggles_of("compare-weeks", weeks, pressed, choose);
    let fields = vec![
        day_field("compare-first-from", t("first period from"), typed, 0),
        day_field("compare-first-to", t_in("day", "to"), typed, 1),
        day_field("compare-second-from", t("second period from"), typed, 2),
        day_field("compare-second-to", t_in("day", "to"), typed, 3),
    ];
    let shown = app.of(Model::unit);
    page(
        "compare",
        vec![
            way(Place::Ledger.href(), t("Ledger")),
            h1(t("Two periods side by side")),
            quiet(t(
                "The last weeks against as many before them, or any days:",
            )),
            choices("choices", t("weeks"), toggles),
            el("div").class("two-days").child(fields).view(),
            dynamic(move || match found.get() {
                None => quiet(t("Reading.")),
                Some(Err(why)) => line("wrong-word", "compare-wrong", why),
                Some(Ok(comparison)) => table(app, &comparison, shown.get()),
            }),
        ],
    )
}

/// A field for the day of that place among the four.
fn day_field(part: &'static str, label: &'static str, typed: Live<Typed>, at: usize) -> AnyView {
    let take = move |event: leptos::ev::Event| {
        // A day that is half typed is none yet.
        if let Ok(day) = event_target_value(&event).parse() {
            typed.update(|days| days[at] = day);
        }
    };
    el("label")
        .class("field")
        .child(el("span").child(label))
        .child(
            el("input")
                .set("type", "date")
                .part(part)
                .value(move || typed.get()[at].to_string())
                .on_change(take),
        )
        .view()
}

fn table(app: Stanchion, comparison: &Comparison, unit: Unit) -> AnyView {
    if comparison.exercises.is_empty() {
        return line(
            "quiet",
            "compare-none",
            t("Nothing was done in either of them."),
        );
    }
    let mut inside = vec![side_by_side(
        t("All of it").to_owned(),
        &comparison.all,
        unit,
        false,
    )];
    let names = app.model.with_untracked(|model| {
        let exercises = comparison.exercises.iter();
        exercises
            .map(|(id, _)| name_of(model, id))
            .collect::<Vec<String>>()
    });
    for ((_, done), name) in comparison.exercises.iter().zip(names) {
        inside.push(side_by_side(name, done, unit, true));
    }
    inside.push(quiet(
        t("Best set: the most load, or the least assistance; of equal loads the more reps. Sets: all but ramp-ups. Hard \
         sets: at most 4 reps in reserve were told. Volume load: of work sets."),
    ));
    inside.into_any()
}

/// One exercise in both periods: a row a measure.
fn side_by_side(name: String, done: &[InPeriod; 2], unit: Unit, best: bool) -> AnyView {
    let row = |word: &'static str, of: &dyn Fn(&InPeriod) -> String| {
        table_row(&[], vec![word.to_owned(), of(&done[0]), of(&done[1])])
    };
    let mut rows = vec![
        row(t("sessions"), &|done| done.sessions.to_string()),
        row(t("sets"), &|done| done.sets.to_string()),
        row(t("hard sets"), &|done| done.hard.to_string()),
        row(t("volume load"), &|done| done.volume.shown(unit)),
    ];
    if best {
        rows.push(row(t("best set"), &|done| {
            let best = done.best.as_ref();
            let said = best_said(best, unit);
            match best {
                Some(best) => format!("{said}, {}", day(best.at)),
                None => said,
            }
        }));
    }
    el("div")
        .class("compared")
        .part("compared")
        .child(h2(name))
        .child(
            el("table")
                .child(
                    el("thead").child(
                        el("tr")
                            .child(el("td").child(""))
                            .child(column_head(t_in("period", "first")))
                            .child(column_head(t_in("period", "second"))),
                    ),
                )
                .child(el("tbody").child(rows)),
        )
        .view()
}
