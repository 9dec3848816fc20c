//! Widgets that several places share.
//!
//! They are plain functions on concrete types: text that may change is a [`Text`], what a tap does is a [`Callback`],
//! what is inside is an [`AnyView`]. So each widget is compiled once, not once for every place that uses it; of the
//! bytes that a phone must load the views would otherwise be the larger half.

mod controls;
mod element;
mod fields;
mod frames;
mod lines;
mod panel;
mod rows;
mod stepper;
mod stretch;
mod sure;
mod table;
mod units;
mod words;

pub use controls::{button, choices, tap, toggle, toggles_of};
pub use element::{el, svg, yes_or_no};
pub use fields::{Mode, area, checked_field, field, file_field};
pub use frames::{apart, dynamic, group, list, page, section, when};
pub use lines::{read_lines, read_name, under_each_other};
pub use panel::panel;
pub use rows::{Row, row_opener, rows, way};
pub use stepper::{stepper, stepper_of};
pub use stretch::{Turn, Ways, leads, stretch_head};
pub use sure::sure_button;
pub use table::{column_head, table_of, table_row};
pub use units::unit_choices;
pub use words::{h1, h2, line, quiet, status_line, words, wrong_text, wrong_word};

use crate::ui::seen::Seen;

/// Text that may change.
pub type Text = Seen<String>;

/// Text that follows a closure.
pub fn text(f: impl Fn() -> String + Send + Sync + 'static) -> Text {
    Seen::new(f)
}
