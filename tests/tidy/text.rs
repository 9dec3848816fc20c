//! What holds for the text of every file: a header, a bound on its length, nothing left open, no path of a machine.

use super::files::File;

/// Most lines of a source file.
const LINES_MAX: usize = 400;

/// What may stand at the project's top, beside dot-names and what is built.
const TOP: [&str; 14] = [
    "CHANGELOG.md",
    "Cargo.lock",
    "Cargo.toml",
    "DEVELOPERS.md",
    "LICENSE",
    "README.md",
    "Trunk.toml",
    "assets",
    "docs",
    "index.html",
    "src",
    "style",
    "tests",
    "xtask",
];

/// Marks of work that was left open. Written in two halves, so that this file holds none.
const OPEN: [&str; 6] = [
    concat!("TO", "DO"),
    concat!("FIX", "ME"),
    concat!("XX", "X"),
    concat!("to", "do!"),
    concat!("unimpl", "emented!"),
    concat!("db", "g!("),
];

/// Beginnings of paths that exist on one machine only.
const MACHINE: [&str; 6] = [
    concat!("/ro", "ot/"),
    concat!("/ho", "me/"),
    concat!("/Us", "ers/"),
    concat!("/t", "mp/"),
    concat!("/wo", "rk/"),
    concat!(":\\", "Users"),
];

/// A source file begins with a line that says what it is.
pub fn header(file: &File) -> Vec<String> {
    let begins = match file.kind() {
        "rs" => vec!["//! "],
        "js" => vec!["// ", "/* "],
        "css" => vec!["/* "],
        _ => return Vec::new(),
    };
    if begins.iter().any(|begin| file.text.starts_with(begin)) {
        Vec::new()
    } else {
        let what = format!("the first line says what this file is: `{}…`", begins[0]);
        vec![file.fault(1, what)]
    }
}

/// A source file is short.
pub fn length(file: &File) -> Vec<String> {
    let lines = file.text.lines().count();
    let source = ["rs", "js", "css", "html"].contains(&file.kind());
    if source && lines > LINES_MAX {
        let what = format!("{lines} lines, at most {LINES_MAX} are allowed: split it by idea");
        vec![file.fault(lines, what)]
    } else {
        Vec::new()
    }
}

/// Nothing is left open, and nothing names a path of one machine.
pub fn marks(file: &File) -> Vec<String> {
    let mut faults = Vec::new();
    for (index, line) in file.text.lines().enumerate() {
        for mark in OPEN.iter().chain(&MACHINE) {
            if line.contains(mark) {
                faults.push(file.fault(index + 1, format!("`{mark}` may not stand here")));
            }
        }
    }
    faults
}

/// Only what the design names stands at the top.
pub fn top(names: &[String]) -> Vec<String> {
    names
        .iter()
        .filter(|name| !name.starts_with('.') && !["target", "dist"].contains(&name.as_str()))
        .filter(|name| !TOP.contains(&name.as_str()))
        .map(|name| format!("{name}: does not belong at the project's top"))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_without_a_header_is_caught() {
        assert_eq!(header(&File::new("src/a.rs", "fn f() {}\n")).len(), 1);
        assert_eq!(header(&File::new("src/a.rs", "// A note.\n")).len(), 1);
        assert_eq!(header(&File::new("style/a.css", "p {}\n")).len(), 1);
        assert_eq!(header(&File::new("assets/a.js", "let a;\n")).len(), 1);
        assert!(header(&File::new("src/a.rs", "//! A file.\n")).is_empty());
        assert!(header(&File::new("style/a.css", "/* A. */\n")).is_empty());
    }

    #[test]
    fn a_file_that_is_too_long_is_caught() {
        assert!(length(&File::new("src/a.rs", &"\n".repeat(LINES_MAX))).is_empty());
        assert_eq!(
            length(&File::new("src/a.rs", &"\n".repeat(LINES_MAX + 1))).len(),
            1
        );
    }

    #[test]
    fn every_mark_is_caught() {
        for mark in OPEN.iter().chain(&MACHINE) {
            let file = File::new("docs/a.md", &format!("fine\nnot {mark} fine\n"));
            assert_eq!(
                marks(&file),
                [format!("docs/a.md:2: `{mark}` may not stand here")]
            );
        }
        assert!(marks(&File::new("docs/a.md", "work sets, at home\n")).is_empty());
    }

    #[test]
    fn a_stranger_at_the_top_is_caught() {
        let names = ["src", "target", ".git", "notes.txt"].map(str::to_owned);
        assert_eq!(
            top(&names),
            ["notes.txt: does not belong at the project's top"]
        );
    }
}
