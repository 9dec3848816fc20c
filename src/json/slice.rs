//! The text that a value was read from.

use super::cursor::Cursor;

impl<'t> Cursor<'t> {
    /// The byte at which it stands.
    #[must_use]
    pub fn place(&self) -> usize {
        self.at
    }

    /// True, and behind it, where this very text comes next.
    pub fn passes(&mut self, text: &str) -> bool {
        let rest = self.text.as_bytes().get(self.at..).unwrap_or_default();
        let comes = rest.starts_with(text.as_bytes());
        self.at += if comes { text.len() } else { 0 };
        comes
    }

    /// The text from a byte on to where it stands.
    #[must_use]
    pub fn since(&self, from: usize) -> &'t str {
        self.text.get(from..self.at).unwrap_or_default()
    }
}
