//! Holds, carries and sets without a load in figures: the most of each session, and the load of it.

use super::asked::{Asked, day, hundredths, load_grain};
use super::moved::written;
use crate::charts::{Axis, Cell, Chart, Column, Grain, Row};
use crate::ledger::{Much, Past};
use crate::sheet::LoadBasis;
use crate::strength::SetResult;
use crate::words::{t, t_in};
use std::cmp::Reverse;

/// What is counted of a set that feeds no estimate.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Counted {
    /// The seconds of a hold, or of a carry by time.
    Seconds,
    /// The metres of a carry.
    Metres,
    /// Repetitions with a band, or without any load.
    Reps,
}

impl Counted {
    fn of(self, past: &Past, set: &SetResult) -> Option<Much> {
        let much = Much::of(set)?;
        let counts = match much {
            Much::Held(_) => self == Counted::Seconds,
            Much::Carried(_) => self == Counted::Metres,
            Much::Reps(_) => self == Counted::Reps && !has_load(past),
            Much::Staged(_) => false,
        };
        counts.then_some(much)
    }

    fn grain(self) -> Grain {
        match self {
            Counted::Reps => Grain::count(),
            Counted::Seconds | Counted::Metres => Grain::Number {
                decimals: 0,
                unit: self.unit(),
            },
        }
    }

    fn unit(self) -> &'static str {
        match self {
            Counted::Seconds => "s",
            Counted::Metres => "m",
            Counted::Reps => t("reps"),
        }
    }

    fn column(self) -> Column {
        match self {
            Counted::Seconds => Column::unsaid(t("time"), self.grain()),
            Counted::Metres => Column::unsaid(t("distance"), self.grain()),
            Counted::Reps => Column::many(t("reps"), "{n} rep", "{n} reps"),
        }
    }

    fn title(self) -> &'static str {
        match self {
            Counted::Seconds => t("Longest time"),
            Counted::Metres => t("Farthest carry"),
            Counted::Reps => t("Most reps"),
        }
    }

    fn about(self) -> &'static str {
        match self {
            Counted::Seconds => t("The longest time of each session in one set."),
            Counted::Metres => t("The farthest of each session in one set."),
            Counted::Reps => t("The most reps of each session in one set."),
        }
    }
}

fn has_load(past: &Past) -> bool {
    let basis = past.performance.basis.as_ref();
    basis.is_none_or(LoadBasis::has_load)
}

/// The sets of a session that are counted so.
fn sets(past: &Past, counted: Counted) -> impl Iterator<Item = (Much, &SetResult)> {
    let sets = past.performance.sets.iter();
    sets.filter_map(move |set| Some((counted.of(past, set)?, set)))
}

/// With what it was done: a load with what it does to the body, or a band.
fn with(past: &Past, set: &SetResult, asked: Asked) -> Cell {
    let said = past.performance.basis.as_ref().and_then(|basis| {
        let load = written(past, set).filter(|_| basis.has_load());
        load.map(|load| basis.told(load, asked.unit))
            .or_else(|| basis.band())
    });
    said.map_or(Cell::Empty, Cell::Words)
}

/// The most of each session in one set, whatever it was done with; none where nothing was ever counted so.
#[must_use]
pub fn longest(history: &[&Past], asked: Asked, counted: Counted) -> Option<Chart> {
    let mut any = history.iter().flat_map(|past| sets(past, counted));
    any.next()?;
    let within = history.iter().filter(|past| asked.holds(past));
    let rows = within.filter_map(|past| {
        let (much, set) = sets(past, counted).max_by_key(|(much, _)| *much)?;
        let (x, y) = (day(past), i64::from(much.get()));
        let cells = vec![Cell::Of(x), Cell::Of(y), with(past, set, asked)];
        Some(Row { x, y, cells })
    });
    let columns = vec![
        Column::new(t("day"), Grain::Days),
        counted.column(),
        Column::unsaid(t("with"), Grain::count()),
    ];
    Some(Chart {
        title: counted.title().to_owned(),
        y: Axis::from_zero(counted.grain(), counted.unit()),
        columns,
        ..asked.over_time(rows.collect(), [nothing(), counted.about()])
    })
}

/// The most load of each session in one set that was held or carried, of assistance the least; none where there never was a
/// load.
#[must_use]
pub fn heaviest(history: &[&Past], asked: Asked, counted: Counted) -> Option<Chart> {
    let loaded = |past: &Past| {
        let mut sets = sets(past, counted);
        has_load(past) && sets.any(|(_, set)| set.load.is_some_and(|load| !load.is_zero()))
    };
    // What assists is not drawn in one line with what weighs.
    let newest = *history.iter().rfind(|past| loaded(past))?;
    let basis = newest.performance.basis.as_ref()?;
    let alike = history
        .iter()
        .filter(|past| asked.holds(past) && past.performance.basis.as_ref() == Some(basis));
    let rows = alike.filter_map(|past| {
        let all = sets(past, counted).filter_map(|(much, set)| Some((written(past, set)?, much)));
        let (load, much) = if basis.assists() {
            all.max_by_key(|(load, much)| (Reverse(load.kg()), *much))?
        } else {
            all.max_by_key(|(load, much)| (load.kg(), *much))?
        };
        let (x, y) = (day(past), hundredths(load, asked.unit));
        let cells = vec![Cell::Of(x), Cell::Of(y), Cell::Words(much.said())];
        Some(Row { x, y, cells })
    });
    let (title, about) = if basis.assists() {
        (
            t("Least assistance"),
            t("The least assistance of each session in one set."),
        )
    } else {
        (
            t("Heaviest load"),
            t("The heaviest load of each session in one set."),
        )
    };
    let grain = || load_grain(asked.unit);
    let columns = vec![
        Column::new(t("day"), Grain::Days),
        Column::new(t_in("chart", "load"), grain()),
        Column::new(t_in("chart", "done"), Grain::count()),
    ];
    Some(Chart {
        title: title.to_owned(),
        y: Axis::of(grain(), asked.unit.sign()),
        columns,
        ..asked.over_time(rows.collect(), [nothing(), about])
    })
}

fn nothing() -> &'static str {
    t("Nothing in this period.")
}

/// Why there is no maximum to estimate of all this, however long it goes on; none where there could be one.
#[must_use]
pub fn no_estimate(history: &[&Past]) -> Option<&'static str> {
    let mut work = history.iter().flat_map(|past| {
        let sets = past.performance.sets.iter();
        sets.filter_map(|set| Some((*past, Much::of(set)?)))
    });
    let first = work.next()?;
    let why = |(past, much): (&Past, Much)| match much {
        Much::Held(_) => Some(t(
            "A hold has no maximum to estimate: what counts is its time.",
        )),
        Much::Carried(_) => Some(t(
            "A carry has no maximum to estimate: what counts is its load and its way.",
        )),
        Much::Staged(_) => Some(t("A set in stages has no maximum to estimate.")),
        Much::Reps(_) => match past.performance.basis {
            Some(LoadBasis::Band(_)) => Some(t(
                "A band has no load in figures, so there is no maximum to estimate: what counts is the reps with it.",
            )),
            Some(LoadBasis::Unloaded) => Some(t(
                "Without a load there is no maximum to estimate: what counts is the reps.",
            )),
            _ => None,
        },
    };
    let said = why(first)?;
    // Of several kinds, that of the newest is told.
    work.try_fold(said, |_, set| why(set))
}

#[cfg(test)]
#[path = "stretch_tests.rs"]
mod tests;
