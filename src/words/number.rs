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

/// A whole number as the language that is spoken writes it: from five digits on its thousands stand apart, `188,518` in
/// English and `188.518` in German. What is no digit stays in front, as a sign does.
#[must_use]
pub fn grouped(whole: &str) -> String {
    let digits = whole.trim_start_matches(|c: char| !c.is_ascii_digit());
    if digits.len() < 5 {
        return whole.to_owned();
    }
    let mark = spoken().map_or(",", |catalogue| catalogue.group_mark());
    let mut said = whole[..whole.len() - digits.len()].to_owned();
    for (at, digit) in digits.chars().enumerate() {
        if at > 0 && (digits.len() - at).is_multiple_of(3) {
            said.push_str(mark);
        }
        said.push(digit);
    }
    said
}
