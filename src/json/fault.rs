//! What is wrong with a JSON text, and where.

use crate::say;
use crate::words::t;
use serde::de::{Error, Expected, Unexpected};
use std::fmt;

/// What is wrong where reading stopped; the [`Cursor`](super::Cursor) knows the place.
///
/// One pointer wide: every reader of every type hands it on.
#[derive(Debug)]
pub struct Fault(pub(super) Box<Why>);

/// What is wrong.
#[derive(Debug)]
pub(super) enum Why {
    /// The text is no JSON here.
    Syntax(Syntax),
    /// JSON, but not what is allowed here.
    Value(String),
}

/// In what way a text is no JSON.
#[derive(Debug, Clone, Copy)]
pub(super) enum Syntax {
    Ends,
    Comma,
    Brace,
    Bracket,
    Name,
    Colon,
    Value,
    Control,
    HalfCharacter,
    Escape,
    Digits,
    Behind,
}

impl Syntax {
    fn said(self) -> &'static str {
        t(match self {
            Syntax::Ends => "the text ends here, and more is expected",
            Syntax::Comma => "a comma or a closing bracket is expected",
            Syntax::Brace => "nothing else is allowed here: a closing } is expected",
            Syntax::Bracket => "nothing else is allowed here: a closing ] is expected",
            Syntax::Name => "key must be a string",
            Syntax::Colon => "a colon is expected behind the name",
            Syntax::Value => "a value is expected",
            Syntax::Control => {
                "a control character must not stand in a string as it is: write it like \\n or \\u001f"
            }
            Syntax::HalfCharacter => "half a character: \\ud800 to \\udfff come in pairs",
            Syntax::Escape => "no such escape",
            Syntax::Digits => "four digits are expected behind \\u",
            Syntax::Behind => "nothing may stand behind the value",
        })
    }
}

impl Fault {
    #[inline(never)]
    pub(super) fn syntax(why: Syntax) -> Fault {
        Fault(Box::new(Why::Syntax(why)))
    }

    #[inline(never)]
    fn value(why: String) -> Fault {
        Fault(Box::new(Why::Value(why)))
    }

    /// True when the text is no JSON.
    #[must_use]
    pub fn is_syntax(&self) -> bool {
        matches!(*self.0, Why::Syntax(_))
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match &*self.0 {
            Why::Syntax(why) => f.write_str(why.said()),
            Why::Value(why) => f.write_str(why),
        }
    }
}

impl std::error::Error for Fault {}

impl Error for Fault {
    fn custom<T: fmt::Display>(why: T) -> Fault {
        let why = why.to_string();
        Fault::value(in_our_words(&why).map_or(why, |what| say!("expected {what}", what)))
    }

    fn invalid_type(found: Unexpected<'_>, expected: &dyn Expected) -> Fault {
        Fault::value(say!(
            "invalid type: {found}, expected {expected}",
            found = said(found),
            expected = wanted(expected)
        ))
    }

    fn invalid_value(found: Unexpected<'_>, expected: &dyn Expected) -> Fault {
        Fault::value(say!(
            "invalid value: {found}, expected {expected}",
            found = said(found),
            expected = wanted(expected)
        ))
    }

    fn invalid_length(length: usize, expected: &dyn Expected) -> Fault {
        Fault::value(say!(
            "invalid length {length}, expected {expected}",
            length,
            expected = wanted(expected)
        ))
    }

    fn unknown_variant(found: &str, known: &'static [&'static str]) -> Fault {
        Fault::value(say!(
            "unknown variant `{found}`, expected {known}",
            found,
            known = one_of(known)
        ))
    }

    fn unknown_field(found: &str, known: &'static [&'static str]) -> Fault {
        Fault::value(say!(
            "unknown field `{found}`, expected {known}",
            found,
            known = one_of(known)
        ))
    }

    fn missing_field(field: &'static str) -> Fault {
        Fault::value(say!("missing field `{field}`", field))
    }

    fn duplicate_field(field: &'static str) -> Fault {
        Fault::value(say!("duplicate field `{field}`", field))
    }
}

/// What was found; null as JSON calls it, and a number with a fraction without its digits: to write those takes more code
/// than all of this reader.
fn said(found: Unexpected<'_>) -> String {
    match found {
        Unexpected::Bool(is) => format!("`{is}`"),
        Unexpected::Unsigned(number) => say!("integer `{number}`", number),
        Unexpected::Signed(number) => say!("integer `{number}`", number),
        Unexpected::Float(_) => t("floating point").to_owned(),
        Unexpected::Str(text) => say!("string {text}", text = format_args!("{text:?}")),
        Unexpected::Unit => "null".to_owned(),
        Unexpected::Seq => t("sequence").to_owned(),
        Unexpected::Map => t("map").to_owned(),
        Unexpected::UnitVariant => t("a name alone").to_owned(),
        Unexpected::Other(said) => said.to_owned(),
        // JSON has no others.
        _ => t("another value").to_owned(),
    }
}

/// What is expected. The names of our types mean nothing to whoever reads this.
fn wanted(expected: &dyn Expected) -> String {
    let said = expected.to_string();
    if let Some(ours) = in_our_words(&said) {
        return ours.to_owned();
    }
    match said.split(' ').next().unwrap_or_default() {
        "struct" => t("an object"),
        "enum" | "variant" => t("a name, or an object with one name"),
        "u8" => return up_to(u8::MAX.into()),
        "u16" => return up_to(u16::MAX.into()),
        "u32" => return up_to(u32::MAX),
        "u64" | "usize" => t("a whole number from 0 on"),
        "i8" | "i16" | "i32" | "i64" => t("a whole number"),
        _ => return said,
    }
    .to_owned()
}

fn up_to(most: u32) -> String {
    say!("a whole number from 0 to {most}", most)
}

/// What those say who read texts, ids and times for us, and know no language but English.
fn in_our_words(said: &str) -> Option<&'static str> {
    Some(match said {
        "a string" => t("a text"),
        "a sequence" => t("a list"),
        "a map" => t("an object"),
        "a boolean" => t("true or false"),
        "an RFC 3339 formatted date and time string"
        | "input is out of range"
        | "input contains invalid characters"
        | "premature end of input"
        | "trailing input"
        | "no possible date and time matching input" => {
            t("a time as in RFC 3339, like 2026-03-02T18:00:00+01:00")
        }
        _ if said.starts_with("UUID parsing failed") || said.starts_with("a formatted UUID") => {
            t("an id like 019b8d2b-8c00-7001-80b0-a7b005e00001")
        }
        _ => return None,
    })
}

/// Names of which one is expected.
fn one_of(known: &[&str]) -> String {
    let names: Vec<String> = known.iter().map(|name| format!("`{name}`")).collect();
    match names.as_slice() {
        [only] => only.clone(),
        [one, other] => say!("{one} or {other}", one, other),
        all => say!("one of {names}", names = all.join(", ")),
    }
}

/// A text that could not be read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Misread {
    /// The place of the value that is wrong, like `sheets[0].groups[2]`; empty for the whole.
    pub path: String,
    /// Line where that value begins, or where the text stops being JSON; from 1.
    pub line: usize,
    /// Column there in characters, from 1.
    pub column: usize,
    /// What is wrong and what is allowed.
    pub why: String,
}

impl fmt::Display for Misread {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Misread {
            path,
            line,
            column,
            why,
        } = self;
        let path = if path.is_empty() {
            t("the whole")
        } else {
            path
        };
        f.write_str(&say!(
            "{path} (line {line}, column {column}): {why}",
            path,
            line,
            column,
            why
        ))
    }
}

impl std::error::Error for Misread {}
