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
        Fault::value(why.to_string())
    }

    fn invalid_type(found: Unexpected<'_>, expected: &dyn Expected) -> Fault {
        let found = said(found);
        Fault::value(say!(
            "invalid type: {found}, expected {expected}",
            found,
            expected
        ))
    }

    fn invalid_value(found: Unexpected<'_>, expected: &dyn Expected) -> Fault {
        let found = said(found);
        Fault::value(format!("invalid value: {found}, expected {expected}"))
    }
}

/// What was found, as Serde says it; but null as JSON calls it, and a number with a fraction without its digits: to write
/// those takes more code than all of this reader.
fn said(found: Unexpected<'_>) -> String {
    match found {
        Unexpected::Bool(is) => format!("boolean `{is}`"),
        Unexpected::Unsigned(number) => format!("integer `{number}`"),
        Unexpected::Signed(number) => format!("integer `{number}`"),
        Unexpected::Float(_) => "floating point".to_owned(),
        Unexpected::Str(text) => format!("string {text:?}"),
        Unexpected::Unit => "null".to_owned(),
        Unexpected::Seq => "sequence".to_owned(),
        Unexpected::Map => "map".to_owned(),
        Unexpected::UnitVariant => "unit variant".to_owned(),
        Unexpected::Other(said) => said.to_owned(),
        // JSON has no others.
        _ => "another value".to_owned(),
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
