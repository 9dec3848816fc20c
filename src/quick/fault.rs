//! Why a line could not be read: where, what was expected, and what stands there.

use crate::say;
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
        let Unread {
            line,
            column,
            found,
            expected,
        } = self;
        f.write_str(&if found.is_empty() {
            say!(
                "line {line}, column {column}: expected {expected}, found the end of the line",
                line,
                column,
                expected,
            )
        } else {
            say!(
                "line {line}, column {column}: expected {expected}, found “{found}”",
                line,
                column,
                expected,
                found,
            )
        })
    }
}

impl std::error::Error for Unread {}
