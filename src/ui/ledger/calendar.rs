//! The sessions of a month: a board of days, each with a bar as high as its minutes, and the sessions under it.

use super::list::row;
use crate::ledger::{Heading, monday_of};
use crate::say;
use crate::ui::live::Live;
use crate::ui::parts::{
    Row, Turn, Ways, dynamic, el, leads, line, rows, status_line, stretch_head, text, yes_or_no,
};
use crate::ui::reading::headings_between;
use crate::ui::seen::{Seen, whenever};
use crate::ui::stanchion::{Stanchion, moment};
use crate::units::{WEEK, long_date, month, weekday};
use crate::words::{many, t};
use chrono::{Datelike, Days, Months, NaiveDate};
use leptos::prelude::*;
use leptos::task::spawn_local;

/// Minutes that fill the bar of a day.
const FULL_MINUTES: u32 = 120;

/// The first and the last day of the month of a day.
fn ends_of(day: NaiveDate) -> (NaiveDate, NaiveDate) {
    let first = day.with_day(1).unwrap_or(day);
    let next = first.checked_add_months(Months::new(1));
    let last = next.and_then(|next| next.pred_opt()).unwrap_or(day);
    (first, last)
}

/// The weeks that a month lies in, each by its Monday.
fn mondays(first: NaiveDate, last: NaiveDate) -> Vec<NaiveDate> {
    let begin = monday_of(first);
    let weeks = (0..6).filter_map(|week| begin.checked_add_days(Days::new(7 * week)));
    weeks.filter(|monday| *monday <= last).collect()
}

/// The month that is looked at, and what was done in it.
#[derive(Clone, Copy)]
struct Looked {
    app: Stanchion,
    first: Seen<NaiveDate>,
    headings: Live<Vec<Heading>>,
    chosen: Live<Option<NaiveDate>>,
}

impl Looked {
    /// Shows the month before or after, or the one that today is in.
    fn turn(self, to: Turn) {
        let first = self.first.get_untracked();
        let one = Months::new(1);
        let to = match to {
            Turn::Before => first.checked_sub_months(one),
            Turn::Now => None,
            Turn::After => first.checked_add_months(one),
        };
        self.chosen.set(None);
        self.app.model.update(|model| model.back.month = to);
    }

    fn of_day(self, day: NaiveDate) -> Vec<Heading> {
        self.headings.with(|all| {
            let on_day = all.iter().filter(|it| it.began.date_naive() == day);
            on_day.cloned().collect()
        })
    }
}

/// The calendar.
pub fn calendar_view(app: Stanchion) -> AnyView {
    let today = moment().at.date_naive();
    let first = app.of(move |model| ends_of(model.back.month.unwrap_or(today)).0);
    let looked = Looked {
        app,
        first,
        headings: Live::new(Vec::new()),
        chosen: Live::new(None),
    };
    let newest = app.of(|model| model.headings.clone());
    whenever(move || {
        newest.with(|_| ());
        let (first, last) = ends_of(looked.first.get());
        spawn_local(async move {
            match headings_between(&app.keep(), first, last).await {
                Ok(read) => {
                    // The month may have been turned, or the page left, meanwhile.
                    let shown = app.model.with_untracked(|model| model.back.month);
                    if ends_of(shown.unwrap_or(today)).0 == first {
                        looked.headings.set(read);
                    }
                }
                Err(error) => app.complain(error.to_string()),
            }
        });
    });
    let board = dynamic(move || board(looked, today));
    let key = say!(
        "The bar of a day is full at {minutes} minutes.",
        minutes = FULL_MINUTES
    );
    let of_days = Seen::new(move || sessions_of(looked));
    let said = text(move || {
        let count = many(of_days.with(Vec::len), "{n} session", "{n} sessions");
        match looked.chosen.get() {
            Some(day) => format!("{}: {count}", long_date(day)),
            None => format!("{}: {count}", month(looked.first.get())),
        }
    });
    vec![
        head(looked, today),
        board,
        line("quiet", "month-key", key),
        status_line("month-said", said),
        rows("session", of_days),
    ]
    .into_any()
}

/// The sessions of the day that is chosen, or of the whole month.
fn sessions_of(looked: Looked) -> Vec<Row> {
    let unit = looked.app.model.with_untracked(|model| model.unit());
    let shown = match looked.chosen.get() {
        Some(day) => looked.of_day(day),
        None => looked.headings.get(),
    };
    shown.iter().map(|heading| row(heading, unit, "")).collect()
}

/// The month, and the way to others.
fn head(looked: Looked, today: NaiveDate) -> AnyView {
    let name = text(move || month(looked.first.get()));
    let away = Seen::new(move || looked.first.get() != ends_of(today).0);
    let ways = Ways {
        before: leads("month-before", t("month before")),
        now: leads("month-now", t("This month")),
        after: leads("month-after", t("month after")),
    };
    stretch_head("month-name", name, away, ways, move |to| looked.turn(to))
}

fn board(looked: Looked, today: NaiveDate) -> AnyView {
    let (first, last) = ends_of(looked.first.get());
    let heads: Vec<AnyView> = WEEK
        .map(weekday)
        .map(|name| {
            let short: String = name.chars().take(2).collect();
            el("th")
                .set("scope", "col")
                .set("abbr", name)
                .child(short)
                .view()
        })
        .collect();
    let weeks: Vec<AnyView> = mondays(first, last)
        .into_iter()
        .map(|monday| {
            let days = (0..7).filter_map(|day| monday.checked_add_days(Days::new(day)));
            let cells: Vec<AnyView> = days
                .map(|day| {
                    let within = first <= day && day <= last;
                    let inside = if within {
                        of_day(looked, day, today)
                    } else {
                        ().into_any()
                    };
                    el("td").child(inside).view()
                })
                .collect();
            el("tr").child(cells).view()
        })
        .collect();
    el("table")
        .class("month")
        .part("month")
        .child(el("thead").child(el("tr").child(heads)))
        .child(el("tbody").child(weeks))
        .view()
}

/// A day of the board: a number, or a button where something was done.
fn of_day(looked: Looked, day: NaiveDate, today: NaiveDate) -> AnyView {
    let number = day.day();
    let current = (day == today).then_some("date");
    let done = looked.of_day(day);
    if done.is_empty() {
        return el("span")
            .class("day")
            .set("aria-current", current)
            .child(number.to_string())
            .view();
    }
    let minutes: u32 = done.iter().map(|heading| heading.minutes).sum();
    let sheets: Vec<String> = done
        .iter()
        .map(|heading| heading.sheet.to_string())
        .collect();
    let count = many(done.len(), "{n} session", "{n} sessions");
    let (day_said, sheets) = (long_date(day), sheets.join(", "));
    let name = format!("{day_said}, {count}, {minutes} min: {sheets}");
    // A short session is seen too.
    let share = (minutes * 100 / FULL_MINUTES).clamp(12, 100);
    let pressed = move || looked.chosen.get() == Some(day);
    let choose = move |_| {
        looked.chosen.update(|chosen| {
            *chosen = if *chosen == Some(day) {
                None
            } else {
                Some(day)
            };
        });
    };
    let bar = el("i")
        .class("day-bar")
        .style("block-size", format!("{share}%"));
    el("button")
        .class("day done")
        .part(format!("day-{number}"))
        .set("aria-label", name)
        .set("aria-current", current)
        .follow("aria-pressed", move || yes_or_no(pressed()))
        .on("click", choose)
        .child(bar)
        .child(el("b").child(number.to_string()))
        .view()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::parse_date;

    #[test]
    fn a_month_is_laid_out_in_whole_weeks() {
        let (first, last) = ends_of(parse_date("2026-11-25").unwrap());
        assert_eq!((first.day(), last.day()), (1, 30));
        let weeks = mondays(first, last);
        assert_eq!(weeks.len(), 6);
        assert_eq!(weeks[0], parse_date("2026-10-26").unwrap());
        let (first, last) = ends_of(parse_date("2027-02-14").unwrap());
        assert_eq!(mondays(first, last).len(), 4);
    }
}
