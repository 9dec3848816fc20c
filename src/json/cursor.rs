//! A place in a JSON text that moves forward value by value, and knows the way to where it stands.

use super::fault::{Fault, Misread, Syntax};
use super::plain::{is_number, plain};
use std::borrow::Cow;
use std::str::FromStr;

/// How a list or an object was entered.
#[derive(Clone, Copy)]
enum Step {
    /// By a name, which stands between these bytes.
    Name(usize, usize),
    /// By a number, from 0.
    Index(usize),
}

/// One step of the way.
#[derive(Clone, Copy)]
pub(super) struct Frame {
    step: Step,
    /// Where its value begins.
    start: usize,
}

/// Reads a JSON text from front to back. Every method stands before a value or before what follows one; spaces
/// are passed over.
///
/// The way to the value being read is kept as it goes and left as it is at the first fault: so nothing else needs to
/// carry places. Whatever stopped early in a list or an object is closed by the next step outside it.
pub struct Cursor<'t> {
    pub(super) text: &'t str,
    pub(super) at: usize,
    pub(super) way: Vec<Frame>,
}

impl<'t> Cursor<'t> {
    /// Stands at the beginning of `text`.
    #[must_use]
    pub fn new(text: &'t str) -> Cursor<'t> {
        Cursor {
            text,
            at: 0,
            way: Vec::new(),
        }
    }

    /// How many lists and objects the cursor stands in.
    #[must_use]
    pub fn depth(&self) -> usize {
        self.way.len()
    }

    /// The next byte that is no space.
    ///
    /// # Errors
    /// [`Fault`] at the end of the text.
    pub fn peek(&mut self) -> Result<u8, Fault> {
        let bytes = self.text.as_bytes();
        while let Some(&byte) = bytes.get(self.at) {
            if !matches!(byte, b' ' | b'\n' | b'\r' | b'\t') {
                return Ok(byte);
            }
            self.at += 1;
        }
        Err(Fault::syntax(Syntax::Ends))
    }

    fn take(&mut self, wanted: u8, why: Syntax) -> Result<(), Fault> {
        if self.peek()? == wanted {
            self.at += 1;
            Ok(())
        } else {
            Err(Fault::syntax(why))
        }
    }

    /// Takes `bracket` when it comes next.
    ///
    /// # Errors
    /// [`Fault`] at the end of the text.
    pub fn opens(&mut self, bracket: u8) -> Result<bool, Fault> {
        let opens = self.peek()? == bracket;
        self.at += usize::from(opens);
        Ok(opens)
    }

    /// Closes whatever is still open deeper than `depth`.
    ///
    /// # Errors
    /// [`Fault`] when something else comes than what closes it.
    pub fn close_to(&mut self, depth: usize) -> Result<(), Fault> {
        while self.way.len() > depth {
            match self.way[self.way.len() - 1].step {
                Step::Name(..) => self.take(b'}', Syntax::Brace)?,
                Step::Index(_) => self.take(b']', Syntax::Bracket)?,
            }
            self.way.pop();
        }
        Ok(())
    }

    /// Goes to the next entry of the list or object entered at `depth`; the step that led to the entry before, if
    /// there was one. None at its end, which is passed.
    #[allow(
        clippy::option_option,
        reason = "the end, the first entry, and another one are three things"
    )]
    fn next(&mut self, depth: usize, closer: u8) -> Result<Option<Option<Step>>, Fault> {
        if self.way.len() == depth {
            return Ok(if self.opens(closer)? {
                None
            } else {
                Some(None)
            });
        }
        self.close_to(depth + 1)?;
        let before = self.way[depth].step;
        if self.opens(b',')? {
            Ok(Some(Some(before)))
        } else {
            self.take(closer, Syntax::Comma)?;
            self.way.truncate(depth);
            Ok(None)
        }
    }

    /// The next name in the object entered at `depth`; none at its end. Stands before its value then.
    ///
    /// # Errors
    /// [`Fault`] when there is none.
    pub fn next_name(&mut self, depth: usize) -> Result<Option<Cow<'t, str>>, Fault> {
        if self.next(depth, b'}')?.is_none() {
            return Ok(None);
        }
        self.way.truncate(depth);
        self.peek()?;
        let from = self.at;
        let (name, to) = self.name()?;
        self.enter(Step::Name(from + 1, to))?;
        Ok(Some(name))
    }

    /// A name, where it ends, and the colon behind it.
    fn name(&mut self) -> Result<(Cow<'t, str>, usize), Fault> {
        if self.peek()? != b'"' {
            return Err(Fault::syntax(Syntax::Name));
        }
        let name = self.string()?;
        let to = self.at - 1;
        self.take(b':', Syntax::Colon)?;
        Ok((name, to))
    }

    fn enter(&mut self, step: Step) -> Result<(), Fault> {
        self.peek()?;
        let start = self.at;
        self.way.push(Frame { step, start });
        Ok(())
    }

    /// True and before the next entry of the list entered at `depth`, or false and behind its end.
    ///
    /// # Errors
    /// [`Fault`] when neither comes.
    pub fn next_entry(&mut self, depth: usize) -> Result<bool, Fault> {
        let index = match self.next(depth, b']')? {
            None => return Ok(false),
            Some(Some(Step::Index(before))) => before + 1,
            Some(_) => 0,
        };
        self.way.truncate(depth);
        self.enter(Step::Index(index))?;
        Ok(true)
    }

    /// Reads a string.
    ///
    /// # Errors
    /// [`Fault`] when it is none.
    pub fn string(&mut self) -> Result<Cow<'t, str>, Fault> {
        self.take(b'"', Syntax::Value)?;
        let text: &'t str = self.text;
        let bytes = text.as_bytes();
        let mut told = String::new();
        let mut from = self.at;
        loop {
            self.at = plain(bytes, self.at);
            match bytes.get(self.at) {
                None => return Err(Fault::syntax(Syntax::Ends)),
                Some(b'"') => {
                    let rest = &text[from..self.at];
                    self.at += 1;
                    return Ok(if told.is_empty() {
                        Cow::Borrowed(rest)
                    } else {
                        told.push_str(rest);
                        Cow::Owned(told)
                    });
                }
                Some(b'\\') => {
                    told.push_str(&text[from..self.at]);
                    self.at += 1;
                    told.push(self.escaped()?);
                    from = self.at;
                }
                Some(0..0x20) => {
                    return Err(Fault::syntax(Syntax::Control));
                }
                Some(_) => self.at += 1,
            }
        }
    }

    /// The character of an escape, behind its backslash.
    fn escaped(&mut self) -> Result<char, Fault> {
        let kind = self.text.as_bytes().get(self.at).copied();
        self.at += 1;
        Ok(match kind {
            Some(c @ (b'"' | b'\\' | b'/')) => char::from(c),
            Some(b'b') => '\u{8}',
            Some(b'f') => '\u{c}',
            Some(b'n') => '\n',
            Some(b'r') => '\r',
            Some(b't') => '\t',
            Some(b'u') => {
                let first = self.digits()?;
                let code = if (0xd800..0xdc00).contains(&first)
                    && self.text[self.at..].starts_with("\\u")
                {
                    self.at += 2;
                    let second = self.digits()?;
                    let low = second.checked_sub(0xdc00).filter(|low| *low < 0x400);
                    low.map(|low| 0x10000 + ((first - 0xd800) << 10) + low)
                } else {
                    Some(first)
                };
                let lone = || Fault::syntax(Syntax::HalfCharacter);
                code.and_then(char::from_u32).ok_or_else(lone)?
            }
            _ => {
                // It may stand inside a character, where no one may look at the text.
                self.at -= 1;
                return Err(Fault::syntax(Syntax::Escape));
            }
        })
    }

    fn digits(&mut self) -> Result<u32, Fault> {
        let digits = self.text.as_bytes().get(self.at..self.at + 4);
        let mut code = 0;
        for digit in digits.unwrap_or(b"?") {
            let value = char::from(*digit).to_digit(16);
            code = code * 16 + value.ok_or_else(|| Fault::syntax(Syntax::Digits))?;
        }
        self.at += 4;
        Ok(code)
    }

    /// Reads a number, `true`, `false` or `null`: the text of it.
    ///
    /// # Errors
    /// [`Fault`] when it is none.
    pub(super) fn bare(&mut self) -> Result<&'t str, Fault> {
        self.peek()?;
        let bytes = &self.text.as_bytes()[self.at..];
        let bare = |byte: &u8| byte.is_ascii_alphanumeric() || matches!(byte, b'-' | b'+' | b'.');
        let end = bytes.iter().position(|byte| !bare(byte));
        let to = self.at + end.unwrap_or(bytes.len());
        let bare = &self.text[self.at..to];
        if matches!(bare, "true" | "false" | "null") || is_number(bare) {
            self.at = to;
            Ok(bare)
        } else {
            Err(Fault::syntax(Syntax::Value))
        }
    }

    /// Reads a number of one type; none, and nothing is taken, when there is no such number here.
    pub(super) fn number<T: FromStr>(&mut self) -> Result<Option<T>, Fault> {
        if matches!(self.peek()?, b'"' | b'{' | b'[') {
            return Ok(None);
        }
        let at = self.at;
        let number = self.bare()?.parse().ok();
        if number.is_none() {
            self.at = at;
        }
        Ok(number)
    }

    /// Passes over one value, whatever it is; the text of it. Brackets may be nested as deep as the text is long.
    ///
    /// # Errors
    /// [`Fault`] when it is no JSON.
    pub fn skip(&mut self) -> Result<&'t str, Fault> {
        self.peek()?;
        let (text, from) = (self.text, self.at);
        let mut closers = Vec::new();
        loop {
            // Before a value.
            let byte = self.peek()?;
            if byte == b'"' {
                self.string()?;
            } else if byte == b'{' || byte == b'[' {
                self.at += 1;
                let closer = byte + 2;
                if !self.opens(closer)? {
                    closers.push(closer);
                    if closer == b'}' {
                        self.name()?;
                    }
                    continue;
                }
            } else {
                self.bare()?;
            }
            // Behind a value.
            loop {
                let Some(&closer) = closers.last() else {
                    return Ok(&text[from..self.at]);
                };
                if self.opens(b',')? {
                    if closer == b'}' {
                        self.name()?;
                    }
                    break;
                }
                self.take(closer, Syntax::Comma)?;
                closers.pop();
            }
        }
    }

    /// Checks that nothing stands behind the value that was read.
    ///
    /// # Errors
    /// [`Fault`] when something does.
    pub fn finish(&mut self) -> Result<(), Fault> {
        self.close_to(0)?;
        match self.peek() {
            Ok(_) => Err(Fault::syntax(Syntax::Behind)),
            Err(_) => Ok(()),
        }
    }

    /// Where and what is wrong, after `fault`.
    #[must_use]
    pub fn misread(&self, fault: &Fault) -> Misread {
        let mut path = String::new();
        for frame in &self.way {
            match frame.step {
                Step::Index(index) => path.push_str(&format!("[{index}]")),
                Step::Name(from, to) => {
                    if !path.is_empty() {
                        path.push('.');
                    }
                    path.push_str(&self.text[from..to]);
                }
            }
        }
        let at = match self.way.last() {
            Some(frame) if !fault.is_syntax() => frame.start,
            None if !fault.is_syntax() => 0,
            _ => self.at,
        };
        let before = self.text.get(..at).unwrap_or(self.text);
        let line = before.rsplit('\n').next().unwrap_or(before);
        Misread {
            path,
            line: before.matches('\n').count() + 1,
            column: line.chars().count() + 1,
            why: fault.to_string(),
        }
    }
}
