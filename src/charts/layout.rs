//! A chart laid out for a width: axes, ticks, and each mark as a path.
//!
//! A unit is a pixel at ordinary text size; a page with larger text asks for fewer units and draws them larger, so that the
//! figures on the axes grow with the text around them.

use super::axes::axes;
use super::chart::{Axis, Chart, Grain, Row, Shape};
use super::dates::{time_ticks, week_ticks};
use super::marks::draw;
use super::pen::Pen;
use super::scale::Scale;
use super::ticks::{Tick, number_ticks};

/// The narrowest drawing, in units.
pub const WIDTH_LEAST: i64 = 120;

/// Size of the figures on the axes, in units.
pub(super) const TEXT: i64 = 13;

/// Width of a character at that size, in tenths: digits of common faces have 6.5 to 7.5 units.
const CHARACTER: i64 = 75;

/// Units above the plot, for the name of the upright axis.
pub(super) const TOP: i64 = 24;

/// Units below the plot, for the ticks.
const BOTTOM: i64 = 24;

/// Units that a name of the horizontal axis needs below the ticks.
const NAME: i64 = 18;

/// Units that a row with a name takes.
const NAMED: i64 = 26;

/// Units that a week takes that lies across.
const WEEK: i64 = 9;

/// Units between the plot's edge and the outermost mark.
const PAD: i64 = 6;

/// A path and how it is drawn.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stroke {
    /// Classes, as in `style/charts.css`.
    pub class: String,
    /// The data of the path.
    pub path: String,
}

/// Words at a place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Words {
    /// Along the horizontal, in tenths.
    pub x: i64,
    /// The base line, in tenths.
    pub y: i64,
    /// Which end of the words lies there: `start`, `middle` or `end`.
    pub anchor: &'static str,
    /// The words.
    pub words: String,
}

/// A chart laid out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Drawing {
    /// Its width in units.
    pub width: i64,
    /// Its height in units.
    pub height: i64,
    /// Its paths, the first at the back.
    pub strokes: Vec<Stroke>,
    /// Its words.
    pub words: Vec<Words>,
    pub(super) x: Span,
    pub(super) y: Span,
    /// Whether it is read from top to bottom, each row from left to right.
    pub(super) lying: bool,
}

/// A scale and what it is doubled and widened by: bars reach half their width beyond their value.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Span {
    scale: Scale,
    ends: (i64, i64),
}

impl Span {
    fn new(low: i64, high: i64, beyond: i64, to: (i64, i64)) -> Span {
        Span {
            scale: Scale::new(2 * low - beyond, 2 * high + beyond, to),
            ends: to,
        }
    }

    pub(super) fn at(&self, value: i64) -> i64 {
        self.scale.at(2 * value)
    }

    /// From half of `width` before the value to half of it behind, a tenth of it left free between two.
    pub(super) fn around(&self, value: i64, width: i64) -> (i64, i64) {
        let (from, to) = (
            self.scale.at(2 * value - width),
            self.scale.at(2 * value + width),
        );
        let free = (to - from).abs() / 10 * (to - from).signum();
        let (from, to) = (from + free, to - free);
        if (to - from).abs() < 10 {
            (from, from + 10)
        } else {
            (from, to)
        }
    }
}

impl Drawing {
    /// Where values lie, in tenths of a unit from the upper left corner.
    #[must_use]
    pub fn place(&self, x: i64, y: i64) -> (i64, i64) {
        (self.x.at(x), self.y.at(y))
    }

    /// Upper and lower end of the plot, in tenths.
    pub(super) fn upright(&self) -> (i64, i64) {
        let (one, other) = self.y.ends;
        (one.min(other), one.max(other))
    }

    /// The path that points out a row: a line through the plot and a dot.
    #[must_use]
    pub fn here(&self, row: &Row) -> String {
        let (x, y) = self.place(row.x, row.y);
        let mut pen = Pen::new();
        if self.lying {
            pen.line(&[(self.x.ends.0, y), (x, y)]);
        } else {
            pen.line(&[(x, self.y.ends.1), (x, self.y.ends.0)]);
        }
        pen.dot((x, y));
        pen.path()
    }

    /// The row of the chart that lies nearest to a place in tenths: by the axis that it is read by, then by the other.
    #[must_use]
    pub fn nearest(&self, chart: &Chart, (x, y): (i64, i64)) -> Option<usize> {
        let far = |row: &Row| {
            let place = self.place(row.x, row.y);
            let (along, across) = ((place.0 - x).abs(), (place.1 - y).abs());
            if self.lying {
                (across, along)
            } else {
                (along, across)
            }
        };
        let rows = chart.rows.iter().enumerate();
        rows.min_by_key(|(_, row)| far(row)).map(|(n, _)| n)
    }
}

/// The least and largest value along an axis; none where there is none.
fn range(axis: &Axis, values: impl Iterator<Item = i64>) -> (i64, i64) {
    let mut found = axis.span;
    for value in values {
        found = Some(match found {
            None => (value, value),
            Some((low, high)) => (low.min(value), high.max(value)),
        });
    }
    match (&axis.grain, found) {
        (Grain::Names(names), _) => (0, i64::try_from(names.len()).unwrap_or(1).max(1) - 1),
        (_, None) => (0, 1),
        (Grain::Days | Grain::Weeks, Some(range)) => range,
        // A single value wants some room, or it would fill the whole height; below nothing there is nothing.
        (_, Some((low, high))) if low == high => {
            let room = (low.abs() / 20).max(1);
            let begins = axis.span.map_or(low - room, |(from, _)| from);
            (begins.min(low), high + room)
        }
        (_, Some(range)) => range,
    }
}

/// The widest mark along an axis: bars that lie are wide along the upright one.
fn beyond(chart: &Chart, lying: bool) -> i64 {
    let marks = chart.marks.iter();
    let bars = marks.filter(|mark| mark.shape.lies() == lying);
    bars.map(|mark| mark.width).max().unwrap_or(0)
}

fn ticks_of(axis: &Axis, low: i64, high: i64, most: i64, wide: bool) -> Vec<Tick> {
    let most = usize::try_from(most).unwrap_or(0);
    match &axis.grain {
        Grain::Days => time_ticks(low, high, most, wide),
        Grain::Weeks => week_ticks(low, high, most, wide),
        Grain::Number { decimals, .. } => number_ticks(low, high, most, *decimals),
        Grain::Names(names) => (0..)
            .zip(names)
            .map(|(at, name)| Tick {
                at,
                label: name.clone(),
            })
            .collect(),
    }
}

/// Width of words in tenths of a unit, as far as that can be said without the face.
pub(super) fn width_of(words: &str) -> i64 {
    i64::try_from(words.chars().count()).unwrap_or(0) * CHARACTER
}

fn widest(ticks: &[Tick]) -> i64 {
    let widths = ticks.iter().map(|tick| width_of(&tick.label));
    widths.max().unwrap_or(0)
}

/// Lays a chart out for a drawing so many units wide (at least [`WIDTH_LEAST`]).
#[must_use]
pub fn lay_out(chart: &Chart, width: i64) -> Drawing {
    let width = width.max(WIDTH_LEAST);
    let named = if chart.x.label.is_empty() { 0 } else { NAME };
    let rows = match &chart.y.grain {
        Grain::Names(names) => i64::try_from(names.len()).unwrap_or(0) * NAMED,
        Grain::Days => {
            let (low, high) = chart.y.span.unwrap_or((0, 0));
            ((high - low) / 7 + 1).clamp(10, 60) * WEEK
        }
        _ => (width * 2 / 3).clamp(170, 270) - TOP - BOTTOM,
    };
    let height = TOP + rows + BOTTOM + named;
    let bottom = height - BOTTOM - named;
    let spots = || chart.marks.iter().flat_map(|mark| &mark.spots);
    let reaching = |lying: bool| {
        let marks = chart.marks.iter();
        marks
            .filter(move |mark| match mark.shape {
                Shape::Band | Shape::Bars => !lying,
                Shape::Lying | Shape::Pegs => lying,
                _ => false,
            })
            .flat_map(|mark| mark.spots.iter().map(|spot| spot.from))
    };

    let (low, high) = range(&chart.y, spots().map(|spot| spot.y).chain(reaching(false)));
    let up = ticks_of(&chart.y, low, high, rows / 26, false);
    let ends = |ticks: &[Tick], low: i64, high: i64| {
        let first = ticks.first().map_or(low, |tick| tick.at.min(low));
        (first, ticks.last().map_or(high, |tick| tick.at.max(high)))
    };
    let (low, high) = ends(&up, low, high);
    // What has no numbers upright is read from top to bottom.
    let lying = !matches!(chart.y.grain, Grain::Number { .. });
    let upright = if lying {
        (TOP * 10, bottom * 10)
    } else {
        ((bottom - PAD) * 10, (TOP + PAD) * 10)
    };
    let y = Span::new(low, high, beyond(chart, true), upright);

    let left = (widest(&up) + 80).min(width * 5);
    let right = (width - 4) * 10;
    let (low, high) = range(&chart.x, spots().map(|spot| spot.x).chain(reaching(true)));
    let room = |characters: i64| (right - left) / (characters * CHARACTER + 100);
    let characters = match &chart.x.grain {
        Grain::Days | Grain::Weeks => 6,
        Grain::Number { .. } => 4,
        Grain::Names(names) => {
            let lengths = names.iter().map(|name| name.chars().count());
            i64::try_from(lengths.max().unwrap_or(1)).unwrap_or(1)
        }
    };
    let most = room(characters).max(1);
    let across = ticks_of(&chart.x, low, high, most, room(8) >= most);
    let is_number = matches!(chart.x.grain, Grain::Number { .. });
    let bars = beyond(chart, false);
    let (low, high) = if is_number && bars == 0 {
        ends(&across, low, high)
    } else {
        (low, high)
    };
    let pad = if lying { 0 } else { PAD * 10 };
    let x = Span::new(low, high, bars, (left + pad, right - PAD * 10));
    let across: Vec<Tick> = across
        .into_iter()
        .filter(|tick| (low..=high).contains(&tick.at))
        .collect();

    let mut drawing = Drawing {
        width,
        height,
        strokes: Vec::new(),
        words: Vec::new(),
        x,
        y,
        lying,
    };
    axes(
        &mut drawing,
        chart,
        &up,
        &across,
        (left, right, bottom * 10),
    );
    let marks = chart.marks.iter().filter(|mark| !mark.spots.is_empty());
    for mark in marks {
        draw(&mut drawing, mark);
    }
    drawing
}

#[cfg(test)]
#[path = "layout_tests.rs"]
mod tests;
