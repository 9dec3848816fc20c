//! Lines of text as they stand in a field, one under the other.

use crate::sheet::Line;
use crate::words::t;

/// Lines under each other.
pub fn under_each_other(lines: &[Line]) -> String {
    let lines: Vec<&str> = lines.iter().map(Line::as_str).collect();
    lines.join("\n")
}

/// Reads a name.
pub fn read_name(typed: &str) -> Result<Line, String> {
    Line::new(typed).map_err(|_| t("give it a name of 1 to 200 characters").to_owned())
}

/// Reads lines under each other; empty ones are passed over.
pub fn read_lines(typed: &str) -> Result<Vec<Line>, String> {
    typed
        .lines()
        .filter(|line| !line.trim().is_empty())
        .map(|line| Line::new(line).map_err(|unfit| unfit.to_string()))
        .collect()
}
