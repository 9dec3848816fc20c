//! Texts with places to fill in.

use std::fmt::{Display, Write};

/// Fills the places `{name}` of a text. A place that nothing is given for stays as it is.
///
/// Not `format!`: that reads its text when the program is compiled, and this one comes from a file.
#[must_use]
pub fn fill(text: &str, places: &[(&str, &dyn Display)]) -> String {
    let mut filled = String::with_capacity(text.len() + 16);
    let mut rest = text;
    while let Some((before, behind)) = rest.split_once('{') {
        filled.push_str(before);
        let found = behind.split_once('}').and_then(|(name, after)| {
            let place = places.iter().find(|(it, _)| *it == name)?;
            Some((place.1, after))
        });
        if let Some((value, after)) = found {
            // Writing into a string cannot fail; a value that refuses to be written leaves its place empty.
            let _ = write!(filled, "{value}");
            rest = after;
        } else {
            filled.push('{');
            rest = behind;
        }
    }
    filled.push_str(rest);
    filled
}
