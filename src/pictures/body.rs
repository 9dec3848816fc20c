//! Body mass and measures of one's own over time.

use super::asked::{Asked, hundredths, in_parts, load_grain};
use crate::charts::{Axis, Cell, Chart, Column, Grain, Ink, Mark, Row, Shape, Spot, day_of};
use crate::say;
use crate::sheet::Line;
use crate::store::{BodyEntry, BodyValue};
use crate::units::MeasureUnit;
use crate::words::t;

/// How much of the smoothed line a day leaves: nine tenths. An exponentially weighted mean by days: after a week half of
/// what is new is in it. Common practice, no source.
pub const DAY_KEEPS: f64 = 0.9;

/// The smoothed line at each of the values: days, rising, with what was measured.
///
/// It begins at the first value; a value `d` days later moves it by 1 − 0.9^d of the way. Two on one day are taken one
/// after the other as if half a day lay between them.
#[must_use]
pub fn smoothed(values: &[(i64, i64)]) -> Vec<(i64, i64)> {
    let mut line: Option<(i64, f64)> = None;
    let mut smoothed = Vec::new();
    for (day, value) in values {
        let value = *value as f64;
        let at = match line {
            None => value,
            Some((before, at)) => {
                let days = ((day - before) as f64).max(0.5);
                at + (1.0 - DAY_KEEPS.powf(days)) * (value - at)
            }
        };
        line = Some((*day, at));
        smoothed.push((*day, at.round() as i64));
    }
    smoothed
}

/// The body mass with its smoothed line.
#[must_use]
pub fn body_mass(entries: &[BodyEntry], asked: Asked) -> Chart {
    let unit = asked.unit;
    let values = entries.iter().filter_map(|entry| {
        let mass = entry.mass()?;
        Some((day_of(entry.at.date_naive()), hundredths(mass, unit)))
    });
    let empty = t(
        "No body mass in this period. Type it below whenever you weigh yourself: an estimate of what the body moves needs it.",
    );
    measured(
        values.collect(),
        load_grain(unit),
        asked,
        (t("Body mass"), empty),
    )
}

/// A measure of one's own with its smoothed line.
#[must_use]
pub fn own_measure(entries: &[BodyEntry], name: &Line, unit: MeasureUnit, asked: Asked) -> Chart {
    let values = entries.iter().filter_map(|entry| match &entry.value {
        BodyValue::Measure { name: of, measure } if of == name && measure.unit() == unit => {
            Some((day_of(entry.at.date_naive()), in_parts(measure.amount(), 2)))
        }
        _ => None,
    });
    let grain = Grain::Number {
        decimals: 2,
        unit: unit.sign(),
    };
    let title = name.to_string();
    measured(
        values.collect(),
        grain,
        asked,
        (&title, t("Nothing in this period.")),
    )
}

fn measured(
    values: Vec<(i64, i64)>,
    grain: Grain,
    asked: Asked,
    (title, empty): (&str, &str),
) -> Chart {
    let axis = asked.days();
    let first = axis.span.map_or(i64::MIN, |span| span.0);
    // Smoothed over all, shown from the first day on.
    let line = smoothed(&values);
    let shown = || {
        values
            .iter()
            .zip(&line)
            .filter(|(value, _)| value.0 >= first)
    };
    let rows: Vec<Row> = shown()
        .map(|((day, value), (_, smooth))| Row {
            x: *day,
            y: *value,
            cells: vec![Cell::Of(*day), Cell::Of(*value), Cell::Of(*smooth)],
        })
        .collect();
    let spots = |(x, y): &(i64, i64)| Spot::at(*x, *y);
    let about = match (rows.first(), rows.last()) {
        (Some(from), Some(to)) if rows.len() > 1 => {
            let smooth = |row: &Row| match row.cells[2] {
                Cell::Of(value) => value,
                _ => row.y,
            };
            let change = smooth(to) - smooth(from);
            // To a tenth: finer than that nothing is measured.
            let tenths = (change.abs() + 5) / 10;
            let by = crate::charts::figure(tenths, 1);
            let went = if change < 0 {
                say!(
                    "The smoothed line went down by {by} {unit}.",
                    by,
                    unit = grain.unit()
                )
            } else {
                say!(
                    "The smoothed line went up by {by} {unit}.",
                    by,
                    unit = grain.unit()
                )
            };
            let how = t(
                "Each day it keeps nine tenths of itself; what was weighed or measured swings from day to day.",
            );
            format!("{went} {how}")
        }
        (Some(_), _) => t("One entry so far: a line needs more.").to_owned(),
        _ => empty.to_owned(),
    };
    Chart {
        title: title.to_owned(),
        about,
        x: axis,
        y: Axis::of(grain.clone(), grain.unit()),
        marks: vec![
            Mark::new(
                Shape::Rings,
                Ink::Second,
                t("as typed"),
                shown().map(|(value, _)| spots(value)).collect(),
            ),
            Mark::new(
                Shape::Line,
                Ink::Main,
                t("smoothed"),
                shown().map(|(_, smooth)| spots(smooth)).collect(),
            ),
        ],
        columns: vec![
            Column::new(t("day"), Grain::Days),
            Column::unsaid(t("as typed"), grain.clone()),
            Column::new(t("smoothed"), grain),
        ],
        rows,
    }
}

/// The measures of one's own that were ever taken, by name and unit, the one taken last first.
#[must_use]
pub fn own_measures(entries: &[BodyEntry]) -> Vec<(Line, MeasureUnit)> {
    let mut found: Vec<(Line, MeasureUnit)> = Vec::new();
    for entry in entries.iter().rev() {
        if let BodyValue::Measure { name, measure } = &entry.value
            && !found
                .iter()
                .any(|(of, unit)| of == name && *unit == measure.unit())
        {
            found.push((name.clone(), measure.unit()));
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_line_follows_slowly_and_by_days() {
        assert_eq!(smoothed(&[]), []);
        assert_eq!(smoothed(&[(10, 8_000)]), [(10, 8_000)]);
        // A day later a tenth of the way; ten days later 1 − 0.9^10 = 0.6513 of it.
        assert_eq!(smoothed(&[(10, 8_000), (11, 9_000)])[1], (11, 8_100));
        assert_eq!(smoothed(&[(10, 8_000), (20, 9_000)])[1], (20, 8_651));
        // The same all the time stays the same.
        assert!(
            smoothed(&[(1, 77), (1, 77), (900, 77)])
                .iter()
                .all(|(_, value)| *value == 77)
        );
    }
}
