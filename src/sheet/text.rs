//! Texts that a person writes: one line, or a note of many lines, each of bounded length.

use crate::say;
use crate::words::{t, t_known};
use serde::{Deserialize, Serialize};
use std::fmt;

/// Longest line, in characters.
pub const LINE_CHARS_MAX: usize = 200;
/// Longest note, in characters.
pub const NOTE_CHARS_MAX: usize = 4000;

/// A text that is too long, empty where it may not be, or holds control characters.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct UnfitText {
    what: &'static str,
    most: usize,
    chars: usize,
}

impl fmt::Display for UnfitText {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let UnfitText { what, most, chars } = self;
        f.write_str(&if *chars == 0 {
            say!("{what} must not be empty", what)
        } else {
            say!(
                "{what} has {chars} characters, at most {most} are allowed",
                what,
                chars,
                most,
            )
        })
    }
}

impl std::error::Error for UnfitText {}

/// One line of text, 1 to 200 characters, trimmed, without line breaks or other control characters.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Line(String);

impl Line {
    /// Trims and checks; control characters become spaces.
    ///
    /// # Errors
    /// [`UnfitText`] when empty or longer than 200 characters.
    pub fn new(text: &str) -> Result<Line, UnfitText> {
        let spaced: String;
        let text = if text.contains(char::is_control) {
            let space = |c: char| if c.is_control() { ' ' } else { c };
            spaced = text.chars().map(space).collect();
            spaced.trim()
        } else {
            text.trim()
        };
        let chars = text.chars().count();
        if chars == 0 || chars > LINE_CHARS_MAX {
            return Err(UnfitText {
                what: t("a line"),
                most: LINE_CHARS_MAX,
                chars,
            });
        }
        Ok(Line(text.to_owned()))
    }

    /// The text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// The text as it is shown: one that the app brought along in the language that is spoken, any other as it is.
    #[must_use]
    pub fn said(&self) -> &str {
        t_known(&self.0)
    }
}

impl fmt::Display for Line {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl TryFrom<String> for Line {
    type Error = UnfitText;
    fn try_from(text: String) -> Result<Line, UnfitText> {
        Line::new(&text)
    }
}

impl From<Line> for String {
    fn from(line: Line) -> String {
        line.0
    }
}

/// A text of any number of lines, 0 to 4,000 characters.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Note(String);

impl Note {
    /// Trims and checks.
    ///
    /// # Errors
    /// [`UnfitText`] when longer than 4,000 characters.
    pub fn new(text: &str) -> Result<Note, UnfitText> {
        let text = text.trim();
        let chars = text.chars().count();
        if chars > NOTE_CHARS_MAX {
            return Err(UnfitText {
                what: t("a note"),
                most: NOTE_CHARS_MAX,
                chars,
            });
        }
        Ok(Note(text.to_owned()))
    }

    /// The text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// The text as it is shown: one that the app brought along in the language that is spoken, any other as it is.
    #[must_use]
    pub fn said(&self) -> &str {
        t_known(&self.0)
    }

    /// True when nothing is written.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }
}

impl TryFrom<String> for Note {
    type Error = UnfitText;
    fn try_from(text: String) -> Result<Note, UnfitText> {
        Note::new(&text)
    }
}

impl From<Note> for String {
    fn from(note: Note) -> String {
        note.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_is_trimmed_bounded_and_one_line() {
        assert_eq!(
            Line::new("  brace\nfirst ").unwrap().as_str(),
            "brace first"
        );
        assert!(
            Line::new("   ")
                .unwrap_err()
                .to_string()
                .contains("must not be empty")
        );
        assert!(
            Line::new(&"x".repeat(201))
                .unwrap_err()
                .to_string()
                .contains("at most 200")
        );
    }

    #[test]
    fn markup_is_text_like_any_other() {
        assert_eq!(
            Line::new("<b>موازنة 🏋</b>").unwrap().as_str(),
            "<b>موازنة 🏋</b>"
        );
    }
}
