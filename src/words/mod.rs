//! The words of the app in the language of whoever reads them.
//!
//! A text is written in English where it is used, inside [`t`], [`t_in`], [`many`] or [`say!`](crate::say): the English
//! text is its own key. What it is called in another language stands in one file for each language, `assets/words/`.
//! Where no other language was chosen, or a text is missing there, the English one is shown. `tests/words.rs` reads
//! the sources: each text must be in each file, with the same places to fill in.
//!
//! What programs read is not translated: the lines of a sheet as text, files, the table of the sets, links.

mod catalogue;
mod file_word;
mod fill;
mod number;
mod small;

pub use catalogue::Catalogue;
pub use file_word::file_word;
pub use fill::{are_places_of, fill, quoted, say};
pub use number::{decimal, grouped};
pub use small::{SOFT_HYPHEN, small};

use std::cell::Cell;

thread_local! {
    // One language for all that this thread says: a page has one thread and one reader.
    static SPOKEN: Cell<Option<&'static Catalogue>> = const { Cell::new(None) };
}

/// From now on this thread speaks the language of a catalogue; with none, English.
pub fn speak(catalogue: Option<&'static Catalogue>) {
    SPOKEN.set(catalogue);
}

/// The catalogue of the language that is spoken; none for English.
#[must_use]
pub fn spoken() -> Option<&'static Catalogue> {
    SPOKEN.get()
}

/// A text in the language that is spoken.
#[must_use]
pub fn t(english: &'static str) -> &'static str {
    spoken()
        .and_then(|catalogue| catalogue.find(english))
        .unwrap_or(english)
}

/// A text that is said later, by a [`t`] that is given it: where it stands it has to stay English.
#[must_use]
pub const fn later(english: &'static str) -> &'static str {
    english
}

/// The context of the lines that the app puts into sheets: those of the demo, and the cautions of the list.
pub const LINE: &str = "line";

/// A line or a note of a sheet: one that the app brought along in the language that is spoken; else as it was written,
/// though it be word for word a text of the app.
#[must_use]
pub fn t_known(text: &str) -> &str {
    spoken()
        .and_then(|catalogue| catalogue.find(&format!("{text}#{LINE}")))
        .unwrap_or(text)
}

/// The name of an exercise, from a sheet or a record: a name of the list is kept in English and said in the language
/// that is spoken, any other is what the lifter wrote.
#[must_use]
pub fn t_name(name: &str) -> &str {
    name_in(name).unwrap_or(name)
}

/// What the language that is spoken calls a listed exercise of that name; none in English, and for other names.
#[must_use]
pub fn name_in(name: &str) -> Option<&'static str> {
    spoken()?.find(&format!("{name}#{EXERCISE}"))
}

/// The context of the names of exercises.
pub const EXERCISE: &str = "exercise";

/// As [`t`], for a text that has several meanings. The context is a word for this meaning, and no part of what is shown;
/// in a catalogue it stands behind the text and a `#`.
#[must_use]
pub fn t_in(context: &'static str, english: &'static str) -> &'static str {
    spoken()
        .and_then(|catalogue| catalogue.find(&format!("{english}#{context}")))
        .unwrap_or(english)
}

/// So many of a thing, by the form that the number asks for: `many(2, "{n} set", "{n} sets")` is "2 sets". In a
/// catalogue both forms stand in one text with a `|` between them; one is for 1, the other for every other number.
#[must_use]
pub fn many(n: usize, one: &'static str, more: &'static str) -> String {
    many_of(n, one, more, &[])
}

/// As [`many`], with other places to fill in.
#[must_use]
pub fn many_of(
    n: usize,
    one: &'static str,
    more: &'static str,
    others: &[(&str, &dyn std::fmt::Display)],
) -> String {
    let both = spoken().and_then(|catalogue| catalogue.find(&format!("{one}|{more}")));
    let (one, more) = both
        .and_then(|both| both.split_once('|'))
        .unwrap_or((one, more));
    let said = grouped(&n.to_string());
    let mut places: Vec<(&str, &dyn std::fmt::Display)> = vec![("n", &said)];
    places.extend_from_slice(others);
    fill(if n == 1 { one } else { more }, &places)
}

/// A text with places to fill in, in the language that is spoken: `say!("{reps} at {load}", reps, load = said(load))`.
/// It is a `String`. Each place is named, in the order in which the text has them; a value without an `=` is the variable
/// of that name. The compiler holds the names against the text, and none of them is in the program twice.
#[macro_export]
macro_rules! say {
    ($text:literal $(, $name:ident $(= $value:expr)?)* $(,)?) => {{
        const {
            assert!(
                $crate::words::are_places_of($text, &[$(stringify!($name)),*]),
                "the names are not those of the places in the text, in their order",
            );
        }
        $crate::words::say(
            $text,
            &[$(&$crate::say!(@value $name $($value)?) as &dyn ::std::fmt::Display),*],
        )
    }};
    (@value $name:ident) => { $name };
    (@value $name:ident $value:expr) => { $value };
}

#[cfg(test)]
mod tests;
