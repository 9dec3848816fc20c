//! A sheet as a file of its own, in the format of every export.

use crate::sheet::{Line, Sheet};
use crate::store::{Archive, SheetRecord, write};
use crate::words::file_word;
use chrono::{DateTime, FixedOffset};

/// Longest name of a sheet within a file's name.
const NAME_CHARS_MAX: usize = 40;

fn alone(sheet: Sheet) -> Archive {
    let mut archive = Archive::default();
    archive.sheets.put(SheetRecord::Written(Box::new(sheet)));
    archive
}

/// The text of a file that holds this sheet alone.
#[must_use]
pub fn sheet_file(sheet: &Sheet, written: DateTime<FixedOffset>) -> String {
    write(&alone(sheet.clone()), written)
}

/// The sheet of a file that holds one version of one sheet and nothing else.
#[must_use]
pub fn single_sheet(archive: &Archive) -> Option<&Sheet> {
    let sheet = archive.sheets.newest()?.sheet()?;
    (*archive == alone(sheet.clone())).then_some(sheet)
}

/// The name of that file: `stanchion-lower-a.json`.
#[must_use]
pub fn file_name(name: &Line) -> String {
    match file_word(name.as_str(), NAME_CHARS_MAX).as_str() {
        "" => "stanchion-sheet.json".to_owned(),
        short => format!("stanchion-{short}.json"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_is_named_after_its_sheet() {
        let named = |name: &str| file_name(&Line::new(name).unwrap());
        assert_eq!(named("Lower A"), "stanchion-lower-a.json");
        assert_eq!(named("  Übung/../B! "), "stanchion-uebung-b.json");
        assert_eq!(named("قرفصاء"), "stanchion-sheet.json");
        assert_eq!(named(&"x".repeat(200)).len(), "stanchion-.json".len() + 40);
    }
}
