//! Lines of text as they stand in a field, one under the other.

use crate::sheet::Line;
use crate::words::t;

/// Lines under each other: those that the app brought along in the language that is spoken.
pub fn under_each_other(lines: &[Line]) -> String {
    let lines: Vec<&str> = lines.iter().map(Line::said).collect();
    lines.join("\n")
}

/// Reads a name.
pub fn read_name(typed: &str) -> Result<Line, String> {
    Line::new(typed).map_err(|_| t("give it a name of 1 to 200 characters").to_owned())
}

/// Reads lines under each other; empty ones are passed over. One that says what stood there `before` stays as it is kept, in
/// whatever language that is.
pub fn read_lines(typed: &str, before: &[Line]) -> Result<Vec<Line>, String> {
    let read = |line: &str| {
        let stood = before.iter().find(|stood| stood.said() == line.trim());
        let read = stood.cloned().map_or_else(|| Line::new(line), Ok);
        read.map_err(|unfit| unfit.to_string())
    };
    let lines = typed.lines().filter(|line| !line.trim().is_empty());
    lines.map(read).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::words::{Catalogue, speak};

    #[test]
    fn what_stays_in_the_field_stays_as_it_is_kept_and_what_is_typed_is_ones_own() {
        let texts = vec![("Stay tall.#line".into(), "Aufrecht bleiben.".into())];
        let german = Catalogue::new("de".into(), ",.".into(), texts);
        speak(Some(Box::leak(Box::new(german))));
        let kept = ["Stay tall.", "Ellbogen hoch"].map(|line| Line::new(line).unwrap());
        let shown = under_each_other(&kept);
        let first = shown.lines().next().unwrap().to_owned();
        assert_ne!(first, kept[0].as_str(), "it is said in German");
        assert_eq!(read_lines(&shown, &kept).unwrap(), kept);
        let typed = format!("Langsam\n\n {first}\n");
        let read = read_lines(&typed, &kept).unwrap();
        assert_eq!(read, [Line::new("Langsam").unwrap(), kept[0].clone()]);
        // Nothing stood there: it is what was typed.
        let own = Line::new(&first).unwrap();
        assert_eq!(read_lines(&first, &[]).unwrap(), [own]);
        speak(None);
    }
}
