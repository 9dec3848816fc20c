//! JSON in one line, laid out for people.

/// Lays `line` out with an entry a line and one space an indent, set in by `indent` more, the first line excepted.
///
/// `line` is JSON without spaces, as [`text`](super::text) writes it.
#[must_use]
pub fn pretty(line: &str, indent: usize) -> String {
    let mut laid = String::with_capacity(line.len() * 2);
    let mut depth = indent;
    let (mut inside, mut escaped, mut before) = (false, false, ' ');
    for c in line.chars() {
        if inside {
            inside = escaped || c != '"';
            escaped = c == '\\' && !escaped;
            laid.push(c);
        } else {
            let closes = matches!(c, '}' | ']');
            let opened = matches!(before, '{' | '[');
            depth -= usize::from(closes);
            if before == ',' || opened != closes {
                laid.push('\n');
                laid.extend(std::iter::repeat_n(' ', depth));
            }
            laid.push(c);
            if c == ':' {
                laid.push(' ');
            }
            inside = c == '"';
            depth += usize::from(matches!(c, '{' | '['));
        }
        before = if inside { '"' } else { c };
    }
    laid
}
