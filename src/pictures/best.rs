//! The best load at each number of reps, and the reps at one load over time.

use super::asked::{Asked, day, hundredths, load_grain, without_others};
use super::moved::{moved, plain_sets, with_body, written};
use crate::charts::{Axis, Cell, Chart, Column, Grain, Ink, Mark, Row, Shape, Spot};
use crate::ledger::{BEST_REPS_MAX, Past, moved_as_newest};
use crate::order::Map;
use crate::say;
use crate::units::{Load, Unit};
use crate::words::{t, t_in};
use rust_decimal::Decimal;

/// A column of reps.
fn reps() -> Column {
    Column::many(t("reps"), "{n} rep", "{n} reps")
}

/// The best of one number of reps.
#[derive(Clone, Copy)]
struct Best {
    load: Load,
    written: Option<Load>,
    reps: u16,
    day: i64,
}

/// The heaviest load at 1 to [`BEST_REPS_MAX`] reps: done for so many reps or more. The first day on which it was done counts.
/// Where the body is moved, the load is what is moved in all. Only what was moved as the last time is compared, and what was
/// done light counts for nothing, as in [`crate::ledger::Bests`].
#[must_use]
pub fn best_at_reps(history: &[&Past], asked: Asked) -> Chart {
    let unit = asked.unit;
    let mut bests: [Option<Best>; BEST_REPS_MAX as usize] = [None; BEST_REPS_MAX as usize];
    let (alike, others) = moved_as_newest(history.iter().copied());
    let body = alike.iter().any(|past| with_body(past));
    for past in alike.into_iter().filter(|past| asked.holds(past)) {
        for set in plain_sets(past) {
            let Some(load) = moved(past, set) else {
                continue;
            };
            let reps = set.reps.get();
            let at = usize::from(reps.min(BEST_REPS_MAX)) - 1;
            // Beyond the last number of reps, more of them are the better ones, as with fewer.
            let beats = |best: Best| (load.kg(), reps) > (best.load.kg(), best.reps);
            if bests[at].is_none_or(beats) {
                let written = written(past, set);
                let day = day(past);
                bests[at] = Some(Best {
                    load,
                    written,
                    reps,
                    day,
                });
            }
        }
    }
    // Who did it for more reps did it for fewer.
    let mut carried: Option<Best> = None;
    for best in bests.iter_mut().rev() {
        match (*best, carried) {
            (Some(own), Some(more)) if more.load.kg() >= own.load.kg() => *best = Some(more),
            (None, Some(more)) => *best = Some(more),
            _ => {}
        }
        carried = *best;
    }
    let found = || {
        (1..)
            .zip(bests)
            .filter_map(|(n, best): (i64, _)| Some((n, best?)))
    };
    let spot = |(n, best): (i64, Best)| Spot::at(n, hundredths(best.load, unit));
    let exact = |(n, best): &(i64, Best)| i64::from(best.reps.min(BEST_REPS_MAX)) == *n;
    let rows: Vec<Row> = found()
        .map(|(n, best)| {
            let y = hundredths(best.load, unit);
            let as_done = say!("for {reps}", reps = best.reps);
            let mut cells = vec![
                Cell::Of(n),
                Cell::Of(y),
                Cell::Of(best.day),
                Cell::Words(as_done),
            ];
            if body {
                let own = best.written.map(|load| hundredths(load, unit));
                cells.push(own.map_or(Cell::Empty, Cell::Of));
            }
            Row { x: n, y, cells }
        })
        .collect();
    let grain = || load_grain(unit);
    let mut columns = vec![
        reps(),
        Column::new(
            if body {
                t("moved in all")
            } else {
                t_in("chart", "load")
            },
            grain(),
        ),
        Column::new(t_in("chart", "on"), Grain::Days),
        Column::new(t_in("chart", "done"), Grain::count()),
    ];
    if body {
        columns.push(Column::new(t("as written"), grain()));
    }
    let about = t(if rows.is_empty() {
        "Nothing in this period with reps and a known load."
    } else {
        "The heaviest load done for so many reps or more. Step through it to see when."
    });
    Chart {
        title: t("Best load by reps").to_owned(),
        about: without_others(about.to_owned(), others),
        x: Axis::of(Grain::count(), t("reps")).spanning(1, i64::from(BEST_REPS_MAX)),
        y: Axis::of(grain(), unit.sign()),
        marks: vec![
            Mark::new(Shape::Line, Ink::Quiet, "", found().map(spot).collect()),
            Mark::new(
                Shape::Rings,
                Ink::Second,
                t("done for more reps"),
                found().filter(|best| !exact(best)).map(spot).collect(),
            ),
            Mark::new(
                Shape::Dots,
                Ink::Main,
                t("done for that many"),
                found().filter(exact).map(spot).collect(),
            ),
        ],
        columns,
        rows,
    }
}

/// The written loads that were done for reps, rising, each with how often; what is the same mass is one.
#[must_use]
pub fn loads_done(history: &[&Past]) -> Vec<(Load, usize)> {
    let mut loads: Map<Decimal, (Load, usize)> = Map::new();
    for past in history {
        for load in plain_sets(past).filter_map(|set| written(past, set)) {
            let entry = loads.or_insert_with(load.kg(), || (load, 0));
            entry.1 += 1;
        }
    }
    loads.into_values().collect()
}

/// Most reps in one set with that written load, session by session.
#[must_use]
pub fn reps_at_load(history: &[&Past], asked: Asked, load: Load) -> Chart {
    let mut rows: Vec<Row> = Vec::new();
    let within = history.iter().filter(|past| asked.holds(past));
    for past in within {
        let with_it = plain_sets(past).filter(|set| written(past, set) == Some(load));
        let Some(best) = with_it.max_by_key(|set| set.reps) else {
            continue;
        };
        let reserve = best.reserve.map(|reserve| i64::from(reserve.get()));
        let (x, y) = (day(past), i64::from(best.reps.get()));
        rows.push(Row {
            x,
            y,
            cells: vec![
                Cell::Of(x),
                Cell::Of(y),
                reserve.map_or(Cell::Empty, Cell::Of),
            ],
        });
    }
    let about = [
        t("Not done with this load in this period."),
        t("The most reps of each session in one set with this load."),
    ];
    Chart {
        title: say!("Reps with {load}", load = shown(history, load, asked.unit)),
        y: Axis::of(Grain::count(), t("reps")),
        columns: vec![
            Column::new(t("day"), Grain::Days),
            reps(),
            Column::new(t("reserve"), Grain::count()),
        ],
        ..asked.over_time(rows, about)
    }
}

/// A load in a title, with what it did to the body the last time.
fn shown(history: &[&Past], load: Load, unit: Unit) -> String {
    let newest = history.last();
    match newest.and_then(|past| past.performance.basis.as_ref()) {
        _ if load.is_zero() => t("the body alone").to_owned(),
        Some(basis) => basis.told(load, unit),
        None => load.shown(unit),
    }
}
