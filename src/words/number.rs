//! Numbers as the reader writes them.

use super::spoken;

/// A number as the language that is spoken writes it: `82.5` is `82,5` in German. For what is shown, never for what a
/// program reads.
#[must_use]
pub fn decimal(plain: &str) -> String {
    match spoken() {
        Some(catalogue) => plain.replace('.', catalogue.decimal_mark()),
        None => plain.to_owned(),
    }
}
