//! The end-to-end tests that are not for every engine, and the table of them in `docs/engines.md`, say the same.

use super::files::File;
use std::collections::BTreeSet;

/// The heading of the table's section.
const SECTION: &str = "## Left out";

/// Tests that ask for an engine, as `file::test`.
pub fn marked(tests: &[&File]) -> BTreeSet<String> {
    let mut found = BTreeSet::new();
    for file in tests {
        let stem = file.path.rsplit('/').next().unwrap_or_default();
        let stem = stem.trim_end_matches(".rs");
        // Each piece begins with the name of a function and ends before the next one.
        for piece in file.text.split("async fn ").skip(1) {
            let name = piece.split('(').next().unwrap_or_default();
            if piece.contains("only_in(") {
                found.insert(format!("{stem}::{name}"));
            }
        }
    }
    found
}

/// Tests that the section names in its table.
pub fn told(page: &File) -> BTreeSet<String> {
    let section = page.text.split_once(SECTION).map_or("", |(_, rest)| rest);
    let section = section.split("\n## ").next().unwrap_or_default();
    section
        .lines()
        .filter(|line| line.starts_with('|'))
        .flat_map(|line| line.split('`').skip(1).step_by(2))
        .filter(|name| name.contains("::"))
        .map(str::to_owned)
        .collect()
}

/// What one of the two says and the other does not.
pub fn faults(tests: &[&File], page: &File) -> Vec<String> {
    let (marked, told) = (marked(tests), told(page));
    let untold = marked.difference(&told);
    let untold = untold.map(|name| format!("{}: {SECTION} does not name {name}", page.path));
    let unmarked = told.difference(&marked);
    let unmarked = unmarked.map(|name| {
        format!(
            "{}: {SECTION} names {name}, which asks for no engine",
            page.path
        )
    });
    untold.chain(unmarked).collect()
}

#[test]
fn a_test_that_is_marked_and_not_told_is_a_fault_and_the_other_way_round() {
    let tests = File::new(
        "tests/e2e/rack.rs",
        "async fn help() {}\nasync fn one() {\n    if !only_in(&[], \"\") {}\n}\nasync fn two() {}",
    );
    let page = |row: &str| {
        File::new(
            "docs/engines.md",
            &format!("`a::b`\n\n{SECTION}\n| {row} |\n\n## More\n| `c::d` |"),
        )
    };
    assert!(faults(&[&tests], &page("`rack::one`")).is_empty());
    assert_eq!(faults(&[&tests], &page("`rack::two`")).len(), 2);
    assert_eq!(faults(&[&tests], &page("none")).len(), 1);
}
