//! Texts with places to fill in.

use super::t;
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

/// What was given, in the quotes of the language that is spoken.
#[must_use]
pub fn quoted(given: &str) -> String {
    crate::say!("“{given}”", given)
}

/// What [`say!`](crate::say) does: the text in the language that is spoken, with the values in the places of the English
/// one, in the order in which these come in it.
#[must_use]
pub fn say(english: &'static str, values: &[&dyn Display]) -> String {
    let places: Vec<(&str, &dyn Display)> = places_of(english)
        .into_iter()
        .zip(values.iter().copied())
        .collect();
    fill(t(english), &places)
}

/// The names of the places of a text, each once, in order.
fn places_of(text: &str) -> Vec<&str> {
    let mut names = Vec::new();
    for piece in text.split('{').skip(1) {
        let name = piece.split('}').next().unwrap_or_default();
        if !names.contains(&name) {
            names.push(name);
        }
    }
    names
}

/// True when these are the names of the places of a text, each once, in order. For the compiler: it is loops and bytes,
/// which is all that a constant may be made of.
#[must_use]
pub const fn are_places_of(text: &str, names: &[&str]) -> bool {
    let text = text.as_bytes();
    let (mut at, mut known) = (0, 0);
    while at < text.len() {
        if text[at] == b'{' {
            let from = at + 1;
            while at < text.len() && text[at] != b'}' {
                at += 1;
            }
            if !is_among(text, from, at, names, known) {
                if !is_among(text, from, at, names, known + 1) {
                    return false;
                }
                known += 1;
            }
        }
        at += 1;
    }
    known == names.len()
}

/// Whether `text[from..to]` is one of the first `count` names.
const fn is_among(text: &[u8], from: usize, to: usize, names: &[&str], count: usize) -> bool {
    let mut nth = 0;
    while nth < count && nth < names.len() {
        let name = names[nth].as_bytes();
        let mut same = name.len() == to - from;
        let mut at = 0;
        while same && at < name.len() {
            same = name[at] == text[from + at];
            at += 1;
        }
        if same {
            return true;
        }
        nth += 1;
    }
    false
}
