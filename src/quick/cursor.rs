//! One cursor over the characters of a line: words, numbers, quoted and bare texts, and the place of a fault.

use super::fault::Unread;
use crate::sheet::Line;
use crate::units::plain_decimal;
use crate::words::t;
use rust_decimal::Decimal;

/// Most characters of a fault's `found`.
const FOUND_CHARS_MAX: usize = 24;
/// Most digits of a number; more are no number that anyone writes.
const DIGITS_MAX: usize = 20;

pub(super) type Read<T> = Result<T, Unread>;

/// A line of text and a place in it. Every reading method first skips spaces, and moves only when it succeeds.
pub(super) struct Cursor {
    chars: Vec<char>,
    /// Number of the line in its text, from 1.
    line: usize,
    /// The place: characters before it in the line.
    pub at: usize,
}

impl Cursor {
    /// At the beginning of `text`, which is the line of that number.
    pub fn new(text: &str, line: usize) -> Cursor {
        Cursor {
            chars: text.chars().collect(),
            line,
            at: 0,
        }
    }

    /// The next character that is no space.
    pub fn peek(&mut self) -> Option<char> {
        while self.chars.get(self.at).is_some_and(|c| c.is_whitespace()) {
            self.at += 1;
        }
        self.chars.get(self.at).copied()
    }

    /// True at the end of a part: a semicolon, or no more text.
    pub fn part_ends(&mut self) -> bool {
        matches!(self.peek(), None | Some(';'))
    }

    /// Takes the next character that is no space if it is one of `any`; true then.
    pub fn eat(&mut self, any: &[char]) -> bool {
        let found = self.peek().is_some_and(|c| any.contains(&c));
        self.at += usize::from(found);
        found
    }

    /// Takes words written in small letters; a space in `words` stands for any spaces and hyphens, or none.
    pub fn word(&mut self, words: &str) -> bool {
        self.peek();
        let mut at = self.at;
        for wanted in words.chars() {
            if wanted == ' ' {
                while self
                    .chars
                    .get(at)
                    .is_some_and(|c| c.is_whitespace() || *c == '-')
                {
                    at += 1;
                }
            } else if self.chars.get(at).map(char::to_ascii_lowercase) == Some(wanted) {
                at += 1;
            } else {
                return false;
            }
        }
        let ends = !self.chars.get(at).is_some_and(|c| c.is_alphanumeric());
        if ends {
            self.at = at;
        }
        ends
    }

    /// True when a digit comes next.
    pub fn at_digit(&mut self) -> bool {
        self.peek().is_some_and(|c| c.is_ascii_digit())
    }

    /// The digit right here, without skipping spaces.
    pub fn bare_digit(&self) -> Option<u8> {
        let c = self.chars.get(self.at)?;
        c.to_digit(10).map(|digit| digit as u8)
    }

    /// True when a mark like `A1` ends right here.
    pub fn mark_ends(&self) -> bool {
        let next = self.chars.get(self.at);
        next.is_some_and(|c| c.is_whitespace() || matches!(c, '.' | ')'))
    }

    /// A whole number inside the range.
    pub fn whole(&mut self, least: i64, most: i64, expected: &'static str) -> Read<i64> {
        self.peek();
        let end = self.digits(self.at);
        let number = self.number(end).filter(|n| (least..=most).contains(n));
        let number = number.ok_or_else(|| self.fault(expected))?;
        self.at = end;
        Ok(number)
    }

    /// Where the digits from `at` end.
    fn digits(&self, at: usize) -> usize {
        let tail = self.chars.get(at..).unwrap_or_default();
        at + tail.iter().take_while(|c| c.is_ascii_digit()).count()
    }

    fn number(&self, end: usize) -> Option<i64> {
        let digits = &self.chars[self.at..end];
        if digits.len() > DIGITS_MAX {
            return None;
        }
        digits.iter().collect::<String>().parse().ok()
    }

    /// A decimal number; a comma right before a digit is a point.
    pub fn decimal(&mut self) -> Option<Decimal> {
        self.peek();
        let mut end = self.digits(self.at);
        let whole = end;
        let has_point = matches!(self.chars.get(end), Some('.' | ','));
        if end > self.at && has_point && self.digits(end + 1) > end + 1 {
            end = self.digits(end + 1);
        }
        let text: String = self.chars[self.at..end]
            .iter()
            .map(|c| if *c == ',' { '.' } else { *c })
            .collect();
        let number = plain_decimal(&text)?;
        if text.len() > DIGITS_MAX || whole == self.at {
            return None;
        }
        self.at = end;
        Some(number)
    }

    /// True when digits and then a cross come next: the beginning of sets.
    pub fn at_sets(&mut self) -> bool {
        let start = self.at;
        self.peek();
        let end = self.digits(self.at);
        let counted = end > self.at;
        self.at = end;
        let found = counted && self.cross();
        self.at = start;
        found
    }

    /// The sign between sets and reps.
    pub fn cross(&mut self) -> bool {
        self.eat(&['×', 'x', 'X', '*'])
    }

    /// True when a comma and then a number come next: a list goes on. Takes the comma.
    pub fn list_goes_on(&mut self) -> bool {
        let start = self.at;
        let goes_on = self.eat(&[',']) && self.at_digit();
        if !goes_on {
            self.at = start;
        }
        goes_on
    }

    /// Characters up to one of `ends`, or to the end.
    pub fn until(&mut self, ends: &[char]) -> String {
        self.peek();
        let start = self.at;
        while self.chars.get(self.at).is_some_and(|c| !ends.contains(c)) {
            self.at += 1;
        }
        self.chars[start..self.at].iter().collect()
    }

    /// True when a quotation mark comes next.
    pub fn at_quote(&mut self) -> bool {
        matches!(self.peek(), Some('"' | '“'))
    }

    /// A text in quotation marks; a backslash takes the next character as it is.
    pub fn quoted(&mut self) -> Read<Line> {
        let start = self.at;
        let end = if self.eat(&['“']) { '”' } else { '"' };
        self.eat(&['"']);
        let mut text = String::new();
        loop {
            let Some(c) = self.chars.get(self.at).copied() else {
                return Err(self.fault(t("a closing quotation mark")));
            };
            self.at += 1;
            if c == end {
                break;
            }
            match self.chars.get(self.at) {
                Some(plain) if c == '\\' => {
                    text.push(*plain);
                    self.at += 1;
                }
                _ => text.push(c),
            }
        }
        self.line_of(&text, start)
    }

    /// A quoted text, or a bare one up to the end of the part.
    pub fn text(&mut self) -> Read<Line> {
        if self.at_quote() {
            return self.quoted();
        }
        let start = self.at;
        let text = self.until(&[';']);
        self.line_of(&text, start)
    }

    /// The text as a line, found at `start`.
    pub fn line_of(&self, text: &str, start: usize) -> Read<Line> {
        Line::new(text).map_err(|_| self.fault_at(start, t("a text of 1 to 200 characters")))
    }

    /// A fault here.
    pub fn fault(&mut self, expected: &'static str) -> Unread {
        self.peek();
        self.fault_at(self.at, expected)
    }

    /// A fault at a place passed before.
    pub fn fault_at(&self, at: usize, expected: &'static str) -> Unread {
        let tail = self.chars.get(at..).unwrap_or_default();
        let spaces = tail.iter().take_while(|c| c.is_whitespace()).count();
        let mut found: String = tail[spaces..]
            .iter()
            .take_while(|c| !c.is_whitespace() && **c != ';')
            .take(FOUND_CHARS_MAX)
            .collect();
        if found.is_empty() && spaces < tail.len() {
            found.push(';');
        }
        Unread {
            line: self.line,
            column: at + spaces + 1,
            found,
            expected,
        }
    }
}

/// The settings that were written already: each may be written once.
#[derive(Default)]
pub(super) struct Once(u16);

impl Once {
    /// Marks a setting that was begun at `at`.
    pub fn mark(&mut self, setting: Setting, c: &Cursor, at: usize) -> Read<()> {
        let bit = 1 << setting as u16;
        if self.0 & bit != 0 {
            return Err(c.fault_at(at, t("each setting only once")));
        }
        self.0 |= bit;
        Ok(())
    }
}

/// What may be written once in a part or a line.
#[derive(Clone, Copy)]
pub(super) enum Setting {
    Kind,
    Reserve,
    Policy,
    Tempo,
    Rest,
    Start,
    Basis,
    Sides,
    Role,
    Rule,
    Between,
    Circuit,
}
