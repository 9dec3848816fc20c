//! A year at a glance: a peg a week on one upright, and on it a notch at the end of each session.

use super::asked::in_parts;
use crate::charts::{
    Axis, Cell, Chart, Column, Grain, Ink, Mark, Row, Shape, Spot, TO_THURSDAY, day_of,
};
use crate::ledger::{Heading, monday_of};
use crate::order::Map;
use crate::say;
use crate::units::{KG_PER_LB, Unit, minutes_said};
use crate::words::{many, t};
use chrono::{Datelike, NaiveDate};

/// What the length of a peg is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Peg {
    /// Minutes that it took.
    Minutes,
    /// Sets but ramp-ups, as in a week.
    Sets,
    /// Volume load.
    Volume,
}

impl Peg {
    /// All of them in the order of the choice.
    pub const ALL: [Peg; 3] = [Peg::Minutes, Peg::Sets, Peg::Volume];

    /// Its words.
    #[must_use]
    pub fn name(self) -> &'static str {
        t(match self {
            Peg::Minutes => "minutes",
            Peg::Sets => "sets",
            Peg::Volume => "volume load",
        })
    }

    fn grain(self, unit: Unit) -> Grain {
        let unit = match self {
            Peg::Minutes => "min",
            Peg::Sets => t("sets"),
            Peg::Volume => unit.sign(),
        };
        Grain::Number { decimals: 0, unit }
    }

    fn of(self, heading: &Heading, unit: Unit) -> i64 {
        match self {
            Peg::Minutes => i64::from(heading.minutes),
            Peg::Sets => i64::from(heading.sets_of_work()),
            Peg::Volume => {
                let kg = heading.volume.kg();
                let amount = match unit {
                    Unit::Kg => kg,
                    Unit::Lb => kg / KG_PER_LB,
                };
                in_parts(amount, 0)
            }
        }
    }
}

/// The Thursday of a day's week: weeks begin on Monday (ISO 8601).
fn thursday(date: NaiveDate) -> i64 {
    day_of(monday_of(date)) + TO_THURSDAY
}

/// The year: a row a week from the one of 1 January to the one of 31 December, the sessions of a week one after the other.
///
/// `headings` are those of that year in any order. Ones of light weeks are told apart, ones without a set left out.
#[must_use]
pub fn year(headings: &[Heading], year: i32, peg: Peg, unit: Unit) -> Chart {
    let ends = NaiveDate::from_ymd_opt(year, 1, 1).zip(NaiveDate::from_ymd_opt(year, 12, 31));
    let mut done: Vec<&Heading> = headings
        .iter()
        .filter(|heading| heading.has_sets() && heading.began.year() == year)
        .collect();
    crate::order::by_key(&mut done, |heading| (heading.began, heading.session));
    let mut reached: Map<i64, i64> = Map::new();
    let (mut usual, mut light, mut rows) = (Vec::new(), Vec::new(), Vec::new());
    for heading in &done {
        let date = heading.began.date_naive();
        let week = thursday(date);
        let length = peg.of(heading, unit);
        let from = reached.or_insert_with(week, || 0);
        let spot = Spot {
            x: *from + length,
            y: week,
            from: *from,
        };
        *from = spot.x;
        let pegs = if heading.light {
            &mut light
        } else {
            &mut usual
        };
        pegs.push(spot);
        let rated = heading.rpe.map(|rpe| i64::from(rpe.get()));
        let name = heading.sheet.to_string();
        let of = |peg: Peg| Cell::Of(peg.of(heading, unit));
        rows.push(Row {
            x: spot.x,
            y: week,
            cells: vec![
                Cell::Of(day_of(date)),
                Cell::Words(name),
                of(Peg::Minutes),
                of(Peg::Sets),
                of(Peg::Volume),
                rated.map_or(Cell::Empty, Cell::Of),
                if heading.light {
                    Cell::Words(t("light week").to_owned())
                } else {
                    Cell::Empty
                },
            ],
        });
    }
    let about = if done.is_empty() {
        say!("No session in {year}.", year)
    } else {
        said(&done, &reached)
    };
    let axis = Axis::of(Grain::Days, "");
    Chart {
        title: say!("The year {year}", year),
        about,
        x: Axis::from_zero(peg.grain(unit), peg.grain(unit).unit()),
        y: match ends {
            Some((first, last)) => axis.spanning(thursday(first), thursday(last)),
            None => axis,
        },
        marks: vec![
            Mark::new(Shape::Pegs, Ink::Main, "", usual).wide(7),
            Mark::new(Shape::Pegs, Ink::Second, t("light week"), light).wide(7),
        ],
        columns: vec![
            Column::new(t("day"), Grain::Days),
            Column::unsaid(t("sheet"), Grain::Days),
            Column::unsaid(t("minutes"), Peg::Minutes.grain(unit)),
            Column::many(t("sets"), "{n} set", "{n} sets"),
            Column::unsaid(t("volume load"), Peg::Volume.grain(unit)),
            Column::new("RPE", Grain::count()),
            Column::unsaid(t("week"), Grain::count()),
        ],
        rows,
    }
}

/// What it came to.
fn said(done: &[&Heading], weeks: &Map<i64, i64>) -> String {
    let minutes = done.iter().map(|heading| heading.minutes).sum();
    let sets = done.iter().map(|heading| heading.sets_of_work() as usize);
    say!(
        "{sessions} in {weeks}: {time} and {sets}. A row is a week; each notch ends a session.",
        sessions = many(done.len(), "{n} session", "{n} sessions"),
        weeks = many(weeks.len(), "{n} week", "{n} weeks"),
        time = minutes_said(minutes),
        sets = many(sets.sum(), "{n} set", "{n} sets")
    )
}
