//! A chart: what it shows, and the table that says the same.

use super::dates::{TO_THURSDAY, date_of};
use super::figure::figure;
use crate::say;
use crate::units::date;
use crate::words::many;

/// What the numbers of an axis or of a column are.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub enum Grain {
    /// Days, counted as [`super::day_of`] counts them.
    #[default]
    Days,
    /// Weeks, each by its Thursday counted likewise: there a bar has its middle. They are called by their Mondays.
    Weeks,
    /// A figure in parts of ten to the power of `decimals`; `unit` stands behind it, empty for none.
    Number {
        /// How many digits stand behind the point.
        decimals: u8,
        /// Its unit.
        unit: &'static str,
    },
    /// Names by their place from 0.
    Names(Vec<String>),
}

impl Grain {
    /// A count of something.
    #[must_use]
    pub fn count() -> Grain {
        Grain::Number {
            decimals: 0,
            unit: "",
        }
    }

    /// The value without its unit.
    #[must_use]
    pub fn bare(&self, value: i64) -> String {
        match self {
            Grain::Days => date_of(value).map(date).unwrap_or_default(),
            Grain::Weeks => Grain::Days.bare(value - TO_THURSDAY),
            Grain::Number { decimals, .. } => figure(value, *decimals),
            Grain::Names(names) => {
                let place = usize::try_from(value).unwrap_or(usize::MAX);
                names.get(place).cloned().unwrap_or_default()
            }
        }
    }

    /// Its unit, empty for none.
    #[must_use]
    pub fn unit(&self) -> &'static str {
        match self {
            Grain::Number { unit, .. } => unit,
            Grain::Days | Grain::Weeks | Grain::Names(_) => "",
        }
    }

    /// Puts the unit behind some words.
    fn with_unit(&self, words: String) -> String {
        match self.unit() {
            "" => words,
            unit => format!("{words} {unit}"),
        }
    }
}

/// One axis.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Axis {
    /// What its numbers are.
    pub grain: Grain,
    /// What is measured along it, with its unit where it has one; empty where that is plain, as with days.
    pub label: String,
    /// What it shows at least, whatever the marks are: a period, or zero.
    pub span: Option<(i64, i64)>,
}

impl Axis {
    /// An axis that shows what the marks hold.
    #[must_use]
    pub fn of(grain: Grain, label: &str) -> Axis {
        Axis {
            grain,
            label: label.to_owned(),
            span: None,
        }
    }

    /// One that begins at zero.
    #[must_use]
    pub fn from_zero(grain: Grain, label: &str) -> Axis {
        Axis::of(grain, label).spanning(0, 0)
    }

    /// One that shows these two at least.
    #[must_use]
    pub fn spanning(self, from: i64, to: i64) -> Axis {
        Axis {
            span: Some((from, to)),
            ..self
        }
    }
}

/// How a mark is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shape {
    /// A line from spot to spot.
    Line,
    /// A line that stays until the next spot.
    Steps,
    /// The area between `y` and `from` of each spot.
    Band,
    /// Round dots.
    Dots,
    /// Dots with a hole.
    Rings,
    /// Square dots.
    Squares,
    /// Upright notches, higher than a dot.
    Notches,
    /// Upright bars from `from` to `y`, `width` of the axis wide.
    Bars,
    /// Bars that lie: from `from` to `x`, `width` of the other axis high.
    Lying,
    /// Thin pegs that lie likewise, each with a notch at its end: as sleeves hold plates.
    Pegs,
}

impl Shape {
    /// Whether it lies: it is read along the horizontal axis.
    #[must_use]
    pub fn lies(self) -> bool {
        matches!(self, Shape::Lying | Shape::Pegs)
    }
}

/// In which ink a mark is drawn. Where colours are few, lines differ by their dashes and bars by their filling too.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ink {
    /// What the chart is about.
    Main,
    /// What it is compared with.
    Second,
    /// A third one.
    Third,
    /// What stands back.
    Quiet,
}

/// One place of a mark.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Spot {
    /// Value on the horizontal axis, in parts of its unit.
    pub x: i64,
    /// Value on the upright axis, in parts of its unit.
    pub y: i64,
    /// Where a band or a bar begins on the upright axis, as `y`; other marks pay no heed to it.
    pub from: i64,
}

impl Spot {
    /// A spot of a line or a dot.
    #[must_use]
    pub fn at(x: i64, y: i64) -> Spot {
        Spot { x, y, from: y }
    }
}

/// Spots that are drawn alike.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Mark {
    /// How they are drawn.
    pub shape: Shape,
    /// In which ink.
    pub ink: Ink,
    /// What they are, for the key under the chart; empty where the title says it.
    pub name: String,
    /// How wide a bar is, along its axis; 0 for what is no bar.
    pub width: i64,
    /// The spots, rising along the horizontal axis (bars that lie: in any order).
    pub spots: Vec<Spot>,
}

impl Mark {
    /// A mark that is no bar.
    #[must_use]
    pub fn new(shape: Shape, ink: Ink, name: &str, spots: Vec<Spot>) -> Mark {
        Mark {
            shape,
            ink,
            name: name.to_owned(),
            width: 0,
            spots,
        }
    }

    /// Bars so wide.
    #[must_use]
    pub fn wide(self, width: i64) -> Mark {
        Mark { width, ..self }
    }
}

/// A column of the table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Column {
    /// Its head.
    pub name: String,
    /// Whether the line that says one row names it; some say enough by themselves.
    pub said: bool,
    /// What its numbers are.
    pub grain: Grain,
    /// What they count, as [`many`] has it: for 1 and for all others.
    pub things: Option<(&'static str, &'static str)>,
}

impl Column {
    /// A column.
    #[must_use]
    pub fn new(name: &str, grain: Grain) -> Column {
        Column {
            name: name.to_owned(),
            said: true,
            grain,
            things: None,
        }
    }

    /// One that a line does not name.
    #[must_use]
    pub fn unsaid(name: &str, grain: Grain) -> Column {
        Column {
            said: false,
            ..Column::new(name, grain)
        }
    }

    /// One of numbers of things, which a line does not name: `Column::many(t("sets"), "{n} set", "{n} sets")`.
    #[must_use]
    pub fn many(name: &str, one: &'static str, more: &'static str) -> Column {
        Column {
            things: Some((one, more)),
            ..Column::unsaid(name, Grain::count())
        }
    }

    /// A number of it with what stands behind it.
    fn words(&self, value: i64) -> String {
        match (self.things, usize::try_from(value)) {
            (Some((one, more)), Ok(count)) => many(count, one, more),
            _ => self.grain.with_unit(self.grain.bare(value)),
        }
    }
}

/// What stands in a cell of the table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Cell {
    /// Nothing.
    Empty,
    /// A number of its column.
    Of(i64),
    /// From one number of its column to another.
    Between(i64, i64),
    /// Words.
    Words(String),
}

/// A row of the table, and the place of the picture that it stands for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    /// Value on the horizontal axis, in parts of its unit.
    pub x: i64,
    /// Value on the upright axis, in parts of its unit.
    pub y: i64,
    /// Its cells, one a column.
    pub cells: Vec<Cell>,
}

/// A chart, whole. The default one shows nothing.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Chart {
    /// What it shows, in a few words.
    pub title: String,
    /// What is to be seen in it, in a sentence or two; what is said where there is nothing to draw.
    pub about: String,
    /// The horizontal axis.
    pub x: Axis,
    /// The upright axis.
    pub y: Axis,
    /// What is drawn, the first at the back.
    pub marks: Vec<Mark>,
    /// The columns of its table.
    pub columns: Vec<Column>,
    /// The rows of its table, rising along the axis that they are read by: one a place that can be stepped to.
    pub rows: Vec<Row>,
}

impl Chart {
    /// Whether there is nothing to draw.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.marks.iter().all(|mark| mark.spots.is_empty())
    }

    /// The words of a cell: the number with its unit.
    #[must_use]
    pub fn cell(&self, row: &Row, column: usize) -> String {
        let column_of = self.columns.get(column);
        match (row.cells.get(column), column_of) {
            (Some(Cell::Words(words)), _) => words.clone(),
            (Some(Cell::Of(value)), Some(column)) => column.words(*value),
            (Some(Cell::Between(low, high)), Some(Column { grain, .. })) => grain.with_unit(say!(
                "{low} to {high}",
                low = grain.bare(*low),
                high = grain.bare(*high)
            )),
            _ => String::new(),
        }
    }

    /// A row in one line: `3 Feb 2026: estimate 105 kg, interval 98 to 112 kg`.
    #[must_use]
    pub fn line(&self, row: &Row) -> String {
        let cells = self.columns.iter().enumerate().skip(1);
        let said: Vec<String> = cells
            .map(|(n, column)| (column, self.cell(row, n)))
            .filter(|(_, words)| !words.is_empty())
            .map(|(column, words)| {
                if column.said {
                    format!("{} {words}", column.name)
                } else {
                    words
                }
            })
            .collect();
        format!("{}: {}", self.cell(row, 0), said.join(", "))
    }
}

#[cfg(test)]
pub(super) mod tests {
    use super::*;
    use crate::charts::day_of;
    use chrono::NaiveDate;

    pub fn kg() -> Grain {
        Grain::Number {
            decimals: 2,
            unit: "kg",
        }
    }

    /// A chart of dots on days from 1 January 2026 on, values in hundredths.
    pub fn dots(values: &[i64]) -> Chart {
        let first = day_of(NaiveDate::from_ymd_opt(2026, 1, 1).unwrap());
        let spots: Vec<Spot> = (first..)
            .zip(values)
            .map(|(x, y)| Spot::at(x, *y))
            .collect();
        let row = |spot: &Spot| Row {
            x: spot.x,
            y: spot.y,
            cells: vec![Cell::Of(spot.x), Cell::Of(spot.y)],
        };
        Chart {
            title: "Estimate".to_owned(),
            about: "It rose.".to_owned(),
            x: Axis::of(Grain::Days, ""),
            y: Axis::of(kg(), "kg"),
            rows: spots.iter().map(row).collect(),
            marks: vec![Mark::new(Shape::Dots, Ink::Main, "", spots)],
            columns: vec![Column::new("day", Grain::Days), Column::new("load", kg())],
        }
    }

    #[test]
    fn a_row_reads_as_a_line() {
        let mut chart = dots(&[10_250]);
        assert_eq!(chart.line(&chart.rows[0]), "1 Jan 2026: load 102.5 kg");
        chart.columns.push(Column::new("interval", kg()));
        chart.rows[0].cells.push(Cell::Between(9_800, 11_200));
        let line = "1 Jan 2026: load 102.5 kg, interval 98 to 112 kg";
        assert_eq!(chart.line(&chart.rows[0]), line);
        chart.columns[2] = Column::many(crate::words::t("sets"), "{n} set", "{n} sets");
        chart.rows[0].cells[2] = Cell::Of(1);
        assert_eq!(chart.cell(&chart.rows[0], 2), "1 set");
        chart.rows[0].cells[2] = Cell::Empty;
        assert_eq!(chart.line(&chart.rows[0]), "1 Jan 2026: load 102.5 kg");
    }
}
