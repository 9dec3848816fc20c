//! Why a line could not be read: where, what was expected, and what stands there.

use crate::say;
use crate::words::t;
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
        })?;
        match hint(found) {
            Some(hint) => write!(f, ". {hint}"),
            None => Ok(()),
        }
    }
}

/// How that is written here which the trade writes in another way.
fn hint(found: &str) -> Option<&'static str> {
    let found = found.to_lowercase();
    let of_tempo = |letter: char| letter.is_ascii_digit() || letter == 'x';
    match found.as_str() {
        "amrap" | "max" => Some(t("As many as possible: 8+, or 8+ to failure.")),
        "each" | "per" | "je" | "pro" => {
            Some(t("What the sides do stands behind the sets: ; each side"))
        }
        "emom" => Some(t("Sets on the minute are not known here: write the rest.")),
        _ if found.starts_with("rpe") => Some(t(
            "RPE is written as what was left, ten less it: RPE 8 is @ 2.",
        )),
        _ if found.ends_with("kg") || found.ends_with("lb") => {
            Some(t("Before a load there is a semicolon."))
        }
        _ if found.ends_with('%') => Some(t("A share of the maximum: 80 % e1RM")),
        _ if found.len() == 4 && found.chars().all(of_tempo) => {
            Some(t("A tempo is written 4/0/1/0."))
        }
        _ => None,
    }
}

impl std::error::Error for Unread {}
