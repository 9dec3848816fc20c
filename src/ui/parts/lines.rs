//! Lines of text as they stand in a field, one under the other.

use crate::sheet::Line;

/// Lines under each other.
pub fn under_each_other(lines: &[Line]) -> String {
    let lines: Vec<&str> = lines.iter().map(Line::as_str).collect();
    lines.join("\n")
}

/// Reads lines under each other; empty ones are passed over.
pub fn read_lines(typed: &str) -> Result<Vec<Line>, String> {
    typed
        .lines()
        .filter(|line| !line.trim().is_empty())
        .map(|line| Line::new(line).map_err(|unfit| unfit.to_string()))
        .collect()
}
