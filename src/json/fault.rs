//! What is wrong with a JSON text, and where.

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
    Syntax(&'static str),
    /// JSON, but not what is allowed here.
    Value(String),
}

impl Fault {
    #[inline(never)]
    pub(super) fn syntax(why: &'static str) -> Fault {
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
            Why::Syntax(why) => f.write_str(why),
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
        // In JSON the empty value is called null.
        let found = match found {
            Unexpected::Unit => Unexpected::Other("null"),
            found => found,
        };
        Fault::value(format!("invalid type: {found}, expected {expected}"))
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
        let path = if path.is_empty() { "the whole" } else { path };
        write!(f, "{path} (line {line}, column {column}): {why}")
    }
}

impl std::error::Error for Misread {}
