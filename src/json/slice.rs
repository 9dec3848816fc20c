//! The text that a value was read from, and values that are read by what they are written with.

use super::cursor::Cursor;
use super::plain::plain;

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

    /// Back at a byte at which it stood before, with as many lists and objects open as there were then.
    pub fn back_to(&mut self, place: usize, depth: usize) {
        self.at = place;
        self.way.truncate(depth);
    }

    /// The text up to the next quotation mark, which is passed; none where something in it is escaped.
    pub fn words_as_written(&mut self) -> Option<&'t str> {
        let (from, bytes) = (self.at, self.text.as_bytes());
        let to = plain(bytes, from);
        self.at = to + 1;
        (bytes.get(to) == Some(&b'"')).then(|| self.text.get(from..to))?
    }

    /// A whole number of at most 18 digits, which has no zero before it.
    pub fn whole(&mut self) -> Option<u64> {
        let (from, mut number) = (self.at, 0);
        let bytes = self.text.as_bytes();
        while let Some(digit @ b'0'..=b'9') = bytes.get(self.at) {
            if self.at - from == 18 {
                return None;
            }
            number = number * 10 + u64::from(digit - b'0');
            self.at += 1;
        }
        let digits = self.at - from;
        (digits == 1 || digits > 1 && bytes[from] != b'0').then_some(number)
    }
}
