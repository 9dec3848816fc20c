//! Why a line could not be read: where, what was expected, and what stands there.

use std::fmt;

/// A place in the text that could not be read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unread {
    /// The line, from 1.
    pub line: usize,
    /// The column in characters, from 1.
    pub column: usize,
    /// What stands there, cut short; empty at the end of the line.
    pub found: String,
    /// What could stand there, in words.
    pub expected: &'static str,
}

impl fmt::Display for Unread {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "line {}, column {}: expected {}, found ",
            self.line, self.column, self.expected
        )?;
        if self.found.is_empty() {
            f.write_str("the end of the line")
        } else {
            write!(f, "“{}”", self.found)
        }
    }
}

impl std::error::Error for Unread {}
