//! A chart laid out for a width: axes, ticks, and each mark as a path.
//!
//! A unit is a pixel at ordinary text size; who has larger text asks for fewer units and draws them larger, so that the
//! figures on the axes grow with the text around them.

use super::chart::{Axis, Chart, Grain, Ink, Mark, Shape};
use super::dates::time_ticks;
use super::pen::Pen;
use super::scale::Scale;
use super::thin::{thin_dots, thin_line};
use super::ticks::{Tick, number_ticks};

/// The narrowest drawing, in units.
pub const WIDTH_LEAST: i64 = 120;

/// Size of the figures on the axes, in units.
pub(super) const TEXT: i64 = 13;

/// Width of a character at that size, in tenths: digits of common faces have 6.5 to 7.5 units.
const CHARACTER: i64 = 75;

/// Units above the plot, for the name of the upright axis.
const TOP: i64 = 24;

/// Units below the plot, for the ticks.
const BOTTOM: i64 = 24;

/// Units that a name of the horizontal axis needs below the ticks.
const NAME: i64 = 18;

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
    x: Span,
    y: Span,
}

/// A scale and what it is doubled and widened by: bars reach half their width beyond their value.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Span {
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

    fn at(&self, value: i64) -> i64 {
        self.scale.at(2 * value)
    }

    /// From half of `width` before the value to half of it behind, a tenth of it left free between two.
    fn around(&self, value: i64, width: i64) -> (i64, i64) {
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
    #[must_use]
    pub fn upright(&self) -> (i64, i64) {
        (self.y.ends.1, self.y.ends.0)
    }

    /// The row of the chart that lies nearest to a place in tenths: by its horizontal distance, then by its upright one.
    #[must_use]
    pub fn nearest(&self, chart: &Chart, (x, y): (i64, i64)) -> Option<usize> {
        let lying = chart.marks.iter().any(|mark| mark.shape == Shape::Lying);
        let far = |row: &super::chart::Row| {
            let place = self.place(row.x, row.y);
            let (along, across) = ((place.0 - x).abs(), (place.1 - y).abs());
            if lying {
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
        (Grain::Days, Some(range)) => range,
        // A single value wants some room, or it would fill the whole height.
        (_, Some((low, high))) if low == high => {
            let room = (low.abs() / 20).max(1);
            (low - room, high + room)
        }
        (_, Some(range)) => range,
    }
}

/// The widest mark along an axis: bars that lie are wide along the upright one.
fn beyond(chart: &Chart, lying: bool) -> i64 {
    let marks = chart.marks.iter();
    let bars = marks.filter(|mark| (mark.shape == Shape::Lying) == lying);
    bars.map(|mark| mark.width).max().unwrap_or(0)
}

fn ticks_of(axis: &Axis, low: i64, high: i64, most: i64, wide: bool) -> Vec<Tick> {
    let most = usize::try_from(most).unwrap_or(0);
    match &axis.grain {
        Grain::Days => time_ticks(low, high, most, wide),
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
        Grain::Names(names) => i64::try_from(names.len()).unwrap_or(0) * 26,
        _ => (width * 9 / 16).clamp(130, 280) - TOP - BOTTOM,
    };
    let height = TOP + rows + BOTTOM + named;
    let bottom = height - BOTTOM - named;
    let spots = || chart.marks.iter().flat_map(|mark| &mark.spots);
    let reaching = |lying: bool| {
        let marks = chart.marks.iter();
        marks
            .filter(move |mark| match mark.shape {
                Shape::Band | Shape::Bars => !lying,
                Shape::Lying => lying,
                _ => false,
            })
            .flat_map(|mark| mark.spots.iter().map(|spot| spot.from))
    };

    let (low, high) = range(&chart.y, spots().map(|spot| spot.y).chain(reaching(false)));
    let up = ticks_of(&chart.y, low, high, rows / 34, false);
    let ends = |ticks: &[Tick], low: i64, high: i64| {
        let first = ticks.first().map_or(low, |tick| tick.at.min(low));
        (first, ticks.last().map_or(high, |tick| tick.at.max(high)))
    };
    let (low, high) = ends(&up, low, high);
    let pad = if matches!(chart.y.grain, Grain::Names(_)) {
        0
    } else {
        PAD
    };
    let y = Span::new(
        low,
        high,
        beyond(chart, true),
        ((bottom - pad) * 10, (TOP + pad) * 10),
    );

    let left = (widest(&up) + 80).min(width * 5);
    let right = (width - 4) * 10;
    let (low, high) = range(&chart.x, spots().map(|spot| spot.x).chain(reaching(true)));
    let room = |characters: i64| (right - left) / (characters * CHARACTER + 100);
    let characters = match &chart.x.grain {
        Grain::Days => 6,
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
    let x = Span::new(low, high, bars, (left + PAD * 10, right - PAD * 10));
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

/// Lines of the ticks and what stands beside them.
fn axes(
    drawing: &mut Drawing,
    chart: &Chart,
    up: &[Tick],
    across: &[Tick],
    (left, right, bottom): (i64, i64, i64),
) {
    let mut grid = Pen::new();
    let lined = !matches!(chart.y.grain, Grain::Names(_));
    let words = |x: i64, y: i64, anchor: &'static str, words: String| Words {
        x,
        y,
        anchor,
        words,
    };
    for tick in up {
        let y = drawing.y.at(tick.at);
        if lined {
            grid.line(&[(left, y), (right, y)]);
        }
        let beside = words(left - 60, y + 45, "end", tick.label.clone());
        drawing.words.push(beside);
    }
    // Bars that lie are read along the horizontal axis.
    let below = bottom + (TEXT + 5) * 10;
    let mut free = 0;
    for tick in across {
        let x = drawing.x.at(tick.at);
        if lined {
            grid.line(&[(x, bottom), (x, bottom + 40)]);
        } else {
            grid.line(&[(x, TOP * 10), (x, bottom)]);
        }
        let half = width_of(&tick.label) / 2;
        let middle = x.clamp(half, (drawing.width * 10 - half).max(half));
        if middle - half < free {
            continue;
        }
        free = middle + half + 40;
        let under = words(middle, below, "middle", tick.label.clone());
        drawing.words.push(under);
    }
    drawing.strokes.push(Stroke {
        class: "chart-grid".to_owned(),
        path: grid.path(),
    });
    let mut base = Pen::new();
    base.line(&[(left, bottom), (right, bottom)]);
    drawing.strokes.push(Stroke {
        class: "chart-axis".to_owned(),
        path: base.path(),
    });
    if !chart.y.label.is_empty() {
        let at = (TEXT - 1) * 10;
        drawing
            .words
            .push(words(0, at, "start", chart.y.label.clone()));
    }
    if !chart.x.label.is_empty() {
        let at = (drawing.height - 4) * 10;
        drawing
            .words
            .push(words(right, at, "end", chart.x.label.clone()));
    }
}

/// The classes of a mark.
#[must_use]
pub fn class_of(mark: &Mark) -> String {
    let shape = match mark.shape {
        Shape::Line | Shape::Steps => "mark-line",
        Shape::Band => "mark-band",
        Shape::Dots => "mark-dots",
        Shape::Rings => "mark-rings",
        Shape::Squares => "mark-squares",
        Shape::Bars | Shape::Lying => "mark-bars",
    };
    format!("{shape} {}", ink_class(mark.ink))
}

fn ink_class(ink: Ink) -> &'static str {
    match ink {
        Ink::Main => "ink-main",
        Ink::Second => "ink-second",
        Ink::Third => "ink-third",
        Ink::Quiet => "ink-quiet",
    }
}

fn draw(drawing: &mut Drawing, mark: &Mark) {
    let upper: Vec<(i64, i64)> = mark
        .spots
        .iter()
        .map(|spot| drawing.place(spot.x, spot.y))
        .collect();
    let mut pen = Pen::new();
    match mark.shape {
        Shape::Line => pen.line(&thin_line(&upper)),
        Shape::Steps => pen.steps(&thin_line(&upper)),
        Shape::Band => {
            let lower = mark
                .spots
                .iter()
                .map(|spot| drawing.place(spot.x, spot.from));
            pen.area(&thin_line(&upper), &thin_line(&lower.collect::<Vec<_>>()));
        }
        Shape::Dots | Shape::Rings | Shape::Squares => {
            for place in thin_dots(&upper) {
                pen.dot(place);
            }
        }
        Shape::Bars => {
            for spot in &mark.spots {
                let (from, to) = drawing.x.around(spot.x, mark.width);
                pen.bar((from, drawing.y.at(spot.from)), (to, drawing.y.at(spot.y)));
            }
        }
        Shape::Lying => {
            for spot in &mark.spots {
                let (from, to) = drawing.y.around(spot.y, mark.width);
                pen.bar((drawing.x.at(spot.from), from), (drawing.x.at(spot.x), to));
            }
        }
    }
    let path = pen.path();
    let class = class_of(mark);
    if mark.shape == Shape::Rings {
        // The hole is a smaller dot in the colour of the ground.
        let hole = Stroke {
            class: "mark-hole".to_owned(),
            path: path.clone(),
        };
        drawing.strokes.extend([Stroke { class, path }, hole]);
    } else {
        drawing.strokes.push(Stroke { class, path });
    }
}

#[cfg(test)]
#[path = "layout_tests.rs"]
mod tests;
