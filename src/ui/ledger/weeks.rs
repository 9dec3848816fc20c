//! Weeks: how much was done in one, beside the twelve before it. It describes and judges nothing.

use super::week_charts::{load_chart, muscle_chart, sets_chart, volume_chart};
use crate::ledger::{Band, Heading, Week, beside, formulas, halves_said, monday_of, weeks};
use crate::say;
use crate::ui::charts::chart;
use crate::ui::live::Live;
use crate::ui::parts::{
    Turn, Ways, dynamic, el, h1, leads, line, list, page, quiet, section, stretch_head, text, way,
    when,
};
use crate::ui::place::Place;
use crate::ui::reading::{first_day, headings_between};
use crate::ui::seen::{Seen, whenever};
use crate::ui::stanchion::{Stanchion, moment, stanchion};
use crate::units::{Unit, WEEK, date, minutes_said, weekday_short};
use crate::words::{grouped, many, t};
use chrono::{Days, NaiveDate};
use leptos::prelude::*;
use leptos::task::spawn_local;
use std::cell::RefCell;

/// So many weeks before the one that is looked at are shown with it.
const BEFORE: u64 = 12;

/// What is looked at.
#[derive(Clone, Copy)]
struct Looked {
    app: Stanchion,
    /// Its Monday.
    monday: Live<NaiveDate>,
    /// It and those before it, the oldest first; empty until they are read.
    weeks: Live<Vec<Week>>,
    /// The day of the first session of all.
    since: Live<Option<NaiveDate>>,
    today: NaiveDate,
}

/// The week that is looked at and those before it.
pub fn weeks_place() -> AnyView {
    let app = stanchion();
    let today = moment().at.date_naive();
    let looked = Looked {
        app,
        monday: Live::new(monday_of(today)),
        weeks: Live::new(Vec::new()),
        since: Live::new(None),
        today,
    };
    let newest = app.of(|model| model.headings.clone());
    let before = RefCell::new(None);
    whenever(move || {
        let now = Some(newest.get());
        let others = *before.borrow() != now;
        before.replace(now);
        read(looked, looked.monday.get(), others);
    });
    let unit = app.of(|model| model.unit());
    let shown = looked.weeks;
    let some = Seen::new(move || !shown.with(Vec::is_empty));
    page(
        "weeks",
        vec![
            way(Place::Ledger.href(), t("Ledger")),
            h1(t("Weeks")),
            head(looked),
            dynamic(move || {
                let since = looked.since.get();
                shown.with(|weeks| figures(weeks, since, looked.today, unit.get()))
            }),
            when(some, move || {
                let of_muscles = Seen::new(move || {
                    shown.with(|weeks| muscle_chart(weeks.last().map_or(&[], |week| &week.muscles)))
                });
                vec![
                    chart(
                        "weeks-sets",
                        Seen::new(move || shown.with(|weeks| sets_chart(weeks))),
                    ),
                    chart("weeks-muscles", of_muscles),
                    dynamic(move || shown.with(|weeks| bands(weeks))),
                    chart(
                        "weeks-load",
                        Seen::new(move || shown.with(|weeks| load_chart(weeks))),
                    ),
                    dynamic(move || shown.with(|weeks| days(weeks, looked.today))),
                    chart(
                        "weeks-volume",
                        Seen::new(move || shown.with(|weeks| volume_chart(weeks, unit.get()))),
                    ),
                    dynamic(move || shown.with(|weeks| rest(weeks))),
                    how_counted(),
                ]
                .into_any()
            }),
        ],
    )
}

/// Reads the weeks up to the one of that Monday, and the day of the first session where the sessions are `others` than before.
fn read(looked: Looked, monday: NaiveDate, others: bool) {
    let first = monday
        .checked_sub_days(Days::new(7 * BEFORE))
        .unwrap_or(monday);
    let last = monday.checked_add_days(Days::new(6)).unwrap_or(monday);
    spawn_local(async move {
        let keep = looked.app.keep();
        let read = async {
            if others {
                let since = first_day(&keep).await?;
                // The page may have been left meanwhile.
                if looked.monday.try_get_untracked().is_some() {
                    looked.since.set(since);
                }
            }
            headings_between(&keep, first, last).await
        };
        match read.await {
            Ok(headings) => {
                let read = add_up(looked.app, &headings, first, last);
                // Another week may have been chosen, or the page left, meanwhile.
                if looked.monday.try_get_untracked() == Some(monday) {
                    looked.weeks.set(read);
                }
            }
            Err(error) => looked.app.complain(error.to_string()),
        }
    });
}

fn add_up(app: Stanchion, headings: &[Heading], first: NaiveDate, last: NaiveDate) -> Vec<Week> {
    app.model
        .with_untracked(|model| weeks(headings, &model.exercises, first, last))
}

/// The week, and the way to others.
fn head(looked: Looked) -> AnyView {
    let this = monday_of(looked.today);
    let turn = move |to: Turn| {
        looked.monday.update(|monday| {
            let to = match to {
                Turn::Before => monday.checked_sub_days(Days::new(7)),
                Turn::Now => Some(this),
                Turn::After => monday.checked_add_days(Days::new(7)),
            };
            // What is to come is not written yet.
            *monday = to.unwrap_or(*monday).min(this.max(*monday));
        });
    };
    let name = text(move || {
        let monday = looked.monday.get();
        match monday == this {
            true => t("This week").to_owned(),
            false => say!("Week from {day}", day = date(monday)),
        }
    });
    let away = Seen::new(move || looked.monday.get() != this);
    let ways = Ways {
        before: leads("week-before", t("week before")),
        now: leads("week-now", t("This week")),
        after: leads("week-after", t("week after")),
    };
    stretch_head("week-name", name, away, ways, turn)
}

/// A figure of the week with its name, and those of the weeks before it.
fn of_week(name: &'static str, value: String, before: String) -> AnyView {
    el("div")
        .child(el("dt").child(name))
        .child(el("dd").child(value))
        .child(el("dd").class("beside").child(before))
        .view()
}

/// The week's sums; `since` is the day of the first session, before which no week says anything.
fn figures(weeks: &[Week], since: Option<NaiveDate>, today: NaiveDate, unit: Unit) -> AnyView {
    let Some((week, before)) = weeks.split_last() else {
        return ().into_any();
    };
    let any_before = before.iter().any(|week| week.sessions > 0);
    // A figure's own words, with what it was in the weeks before it, where that is known.
    let with_said =
        |own: String, said: &dyn Fn(i64) -> String, value: &dyn Fn(&Week) -> Option<i64>| {
            let trained = before.iter().filter(|week| since <= Some(week.sunday()));
            let before: Vec<Option<i64>> = trained.map(value).collect();
            let said = beside(&before, said).filter(|_| any_before);
            let both = [own].into_iter().chain(said);
            let both: Vec<String> = both.filter(|said| !said.is_empty()).collect();
            both.join("; ")
        };
    let with = |own: String, value: &dyn Fn(&Week) -> Option<i64>| {
        with_said(own, &|figure| grouped(&figure.to_string()), value)
    };
    let sessions = week.sessions as usize;
    let inside = vec![
        of_week(
            t("sets"),
            week.sets.to_string(),
            with(say!("{hard} of them hard", hard = week.hard), &|week| {
                Some(i64::from(week.sets))
            }),
        ),
        of_week(
            t("session load"),
            // Of a week in which nothing was rated there is none.
            match (week.load.total(), week.load.whole()) {
                (0, None) => "–".to_owned(),
                (total, _) => total.to_string(),
            },
            with(String::new(), &|week| week.load.whole().map(i64::from)),
        ),
        of_week(
            t("volume load"),
            week.volume.shown(unit),
            with(String::new(), &|week| Some(week.volume.whole(unit))),
        ),
        of_week(
            t("time"),
            minutes_said(week.minutes),
            with_said(
                many(sessions, "in {n} session", "in {n} sessions"),
                &|minutes| minutes_said(u32::try_from(minutes).unwrap_or(0)),
                &|week| Some(i64::from(week.minutes)),
            ),
        ),
    ];
    let none_before = (!any_before).then(|| {
        let said = say!(
            "No session in the {weeks} weeks before: there is nothing to compare with yet.",
            weeks = before.len()
        );
        line("quiet", "week-alone", said)
    });
    let still = (!week.is_over(today)).then(|| {
        let left = (week.sunday() - today.max(week.monday)).num_days();
        let left = usize::try_from(left).unwrap_or(0);
        line(
            "quiet",
            "week-left",
            many(
                left,
                "{n} day of this week still to come after today.",
                "{n} days of this week still to come after today.",
            ),
        )
    });
    vec![
        el("dl")
            .class("sums")
            .part("week-sums")
            .child(inside)
            .view(),
        none_before.into_any(),
        still.into_any(),
    ]
    .into_any()
}

/// Which muscles lie in which group of weekly sets.
fn bands(weeks: &[Week]) -> AnyView {
    let Some(week) = weeks.last() else {
        return ().into_any();
    };
    let lines = [Band::From10, Band::From5, Band::Under5].map(|band| {
        let muscles = week.muscles.iter();
        let of_band = muscles.filter(|sets| Band::of_halves(sets.halves()) == band);
        let said: Vec<String> = of_band
            .map(|sets| format!("{} {}", sets.muscle.name(), halves_said(sets.halves())))
            .collect();
        (band, said)
    });
    let lines = lines.into_iter().filter(|(_, said)| !said.is_empty());
    let lines: Vec<AnyView> = lines
        .map(|(band, said)| {
            say!(
                "{band} sets: {muscles}",
                band = band.name(),
                muscles = said.join(", ")
            )
            .into_any()
        })
        .collect();
    let unknown = week
        .unknown_said()
        .map(|said| line("quiet", "week-unknown", said));
    vec![
        list("plain-list", Some("week-bands"), lines),
        unknown.into_any(),
    ]
    .into_any()
}

/// The loads day by day, with monotony and strain.
fn days(weeks: &[Week], today: NaiveDate) -> AnyView {
    let Some(week) = weeks.last() else {
        return ().into_any();
    };
    let days = WEEK.zip(week.load.days);
    let days: Vec<String> = days
        .map(|(day, load)| format!("{} {load}", weekday_short(day)))
        .collect();
    vec![
        line("", "week-load", week.load_said()),
        line("quiet", "week-days", days.join(" · ")),
        line(
            "",
            "week-spread",
            week.load.spread(week.is_over(today)).said(),
        ),
    ]
    .into_any()
}

/// The balance of patterns, and the time against the budgets.
fn rest(weeks: &[Week]) -> AnyView {
    let Some(week) = weeks.last() else {
        return ().into_any();
    };
    let balance = week.balance.said().map(IntoAny::into_any).into();
    let budget = week
        .budget
        .said()
        .unwrap_or_else(|| t("No session of a sheet with a time budget.").to_owned());
    vec![
        section(
            None,
            t("Balance of patterns"),
            vec![list("plain-list", Some("week-balance"), balance)],
        ),
        section(
            None,
            t("Time against the budget"),
            vec![line("", "week-budget", budget)],
        ),
    ]
    .into_any()
}

/// Formulas and sources.
pub fn how_counted() -> AnyView {
    let lines: Vec<AnyView> = formulas()
        .iter()
        .map(|said| quiet((*said).to_owned()))
        .collect();
    el("details")
        .class("adder")
        .part("how-counted")
        .child(el("summary").child(t("How this is counted")))
        .child(lines)
        .view()
}
