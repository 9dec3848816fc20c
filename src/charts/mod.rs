//! Pictures of figures as pure data: scales, ticks, paths, a chart laid out, a chart as the text of an SVG file.
//!
//! Values are whole numbers: a count, a day, or a figure in parts of its unit (hundredths of a kilogram). So nothing here
//! prints a float, and what a picture shows can be compared to the last digit.

mod axes;
mod chart;
mod dates;
mod figure;
mod layout;
mod marks;
mod pen;
mod picture;
mod scale;
mod thin;
mod ticks;

pub use chart::{Axis, Cell, Chart, Column, Grain, Ink, Mark, Row, Shape, Spot};
pub use dates::{TO_THURSDAY, date_of, day_of, time_ticks, week_ticks};
pub use figure::figure;
pub use layout::{Drawing, Stroke, WIDTH_LEAST, Words, lay_out};
pub use marks::class_of;
pub use pen::{Pen, tenths_text};
pub use picture::{PICTURE_WIDTH, file_stem, key_path, keyed, size_of, to_svg};
pub use scale::Scale;
pub use thin::{thin_dots, thin_line};
pub use ticks::{Tick, covering, number_ticks};

/// The largest value that a chart takes, in parts of its unit; what is beyond is drawn as this.
pub const VALUE_MAX: i64 = 1_000_000_000_000;
