//! The hooks of the screen (`data-part`) and the table of them in DEVELOPERS.md say the same.

use super::files::File;
use std::collections::{BTreeMap, BTreeSet};

/// The heading of the table's section.
const SECTION: &str = "## Parts";

/// Hooks by name, each with the place where it stands first, and faults where a hook cannot be read.
pub fn hooks(files: &[&File]) -> (BTreeMap<String, String>, Vec<String>) {
    let mut hooks = BTreeMap::new();
    let mut faults = Vec::new();
    for file in files {
        for attribute in ["data-part=", "part="] {
            for (at, _) in file.text.match_indices(attribute) {
                if !file.text[..at].ends_with(char::is_whitespace) {
                    continue;
                }
                let line = file.text[..at].matches('\n').count() + 1;
                match name(&file.text[at + attribute.len()..]) {
                    Name::Written(name) => {
                        hooks.entry(name).or_insert_with(|| file.fault(line, ""));
                    }
                    // Handed on by a part whose callers write it.
                    Name::HandedOn => {}
                    Name::Unread => faults.push(file.fault(
                        line,
                        "write the hook as a literal or `format!` of one, so that it can be checked",
                    )),
                }
            }
        }
    }
    (hooks, faults)
}

enum Name {
    Written(String),
    HandedOn,
    Unread,
}

/// The hook written there; what is filled in stands as `…`.
fn name(value: &str) -> Name {
    let word_end = value.find(|c: char| !c.is_alphanumeric() && c != '_');
    if value.starts_with("part") && word_end.is_none_or(|end| end == 4) {
        return Name::HandedOn;
    }
    let literal = value
        .strip_prefix("format!(")
        .map_or(value, str::trim_start)
        .strip_prefix('"')
        .and_then(|text| text.split_once('"'));
    match literal {
        Some((text, _)) => Name::Written(filled(text)),
        None => Name::Unread,
    }
}

fn filled(text: &str) -> String {
    let mut name = String::new();
    let mut rest = text;
    while let Some((before, after)) = rest.split_once('{') {
        name.push_str(before);
        name.push('…');
        rest = after.split_once('}').map_or("", |(_, after)| after);
    }
    name + rest
}

/// The names in the first column of the table, between backticks.
pub fn table(guide: &File) -> BTreeSet<String> {
    let section = guide
        .text
        .split_once(SECTION)
        .map_or("", |(_, after)| after);
    let section = section.split("\n## ").next().unwrap_or("");
    section
        .lines()
        .filter_map(|line| line.trim().strip_prefix('|')?.split('|').next())
        .flat_map(|cell| cell.split('`').skip(1).step_by(2))
        .map(str::to_owned)
        .collect()
}

/// Hooks that the table lacks, and rows of hooks that are gone.
pub fn faults(files: &[&File], guide: &File) -> Vec<String> {
    let (hooks, mut faults) = hooks(files);
    let table = table(guide);
    for (name, place) in &hooks {
        if !table.contains(name) {
            faults.push(format!(
                "{place}`{name}` is not in the parts table of {}",
                guide.path
            ));
        }
    }
    for name in &table {
        if !hooks.contains_key(name) {
            faults.push(format!(
                "{}: the parts table has `{name}`, src/ui does not",
                guide.path
            ));
        }
    }
    faults
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(view: &str, guide: &str) -> Vec<String> {
        faults(
            &[&File::new("src/ui/a.rs", view)],
            &File::new("DEVELOPERS.md", guide),
        )
    }

    const GUIDE: &str = "# Guide\n\n| `stray` | not here |\n\n## Parts\n\n| hook | is |\n| --- | --- |\n| `log`, `go-…` | x |\n\n## After\n| `late` | |\n";
    const VIEW: &str =
        "<p data-part=\"log\">\n<a data-part=format!(\"go-{}\", name)>\n<b data-part=part>";

    #[test]
    fn a_full_table_passes() {
        assert!(check(VIEW, GUIDE).is_empty(), "{:?}", check(VIEW, GUIDE));
    }

    #[test]
    fn a_hook_without_a_row_is_caught() {
        for more in [
            "<p data-part=\"new\">",
            "<Panel part=\"new\">",
            "<p data-part=format!(\n    \"new-{n}\"\n)>",
            "<p data-part=\"stray\">",
            "<p data-part=\"late\">",
            "<p data-part=move || which()>",
        ] {
            assert_eq!(check(&format!("{VIEW}\n{more}"), GUIDE).len(), 1, "{more}");
        }
    }

    #[test]
    fn a_row_without_a_hook_is_caught() {
        assert_eq!(
            check("<a data-part=format!(\"go-{}\", name)>", GUIDE).len(),
            1
        );
    }
}
