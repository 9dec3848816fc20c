//! The text that a value was read from.

use super::cursor::Cursor;

impl<'t> Cursor<'t> {
    /// The byte at which it stands.
    #[must_use]
    pub fn place(&self) -> usize {
        self.at
    }

    /// The text from a byte on to where it stands.
    #[must_use]
    pub fn since(&self, from: usize) -> &'t str {
        self.text.get(from..self.at).unwrap_or_default()
    }
}
