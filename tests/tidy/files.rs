//! The project's files, as the checks see them.

use std::fs;
use std::path::Path;

/// A text file: its path from the project's top with `/` between the parts, and its text.
pub struct File {
    pub path: String,
    pub text: String,
}

impl File {
    pub fn new(path: &str, text: &str) -> File {
        File {
            path: path.to_owned(),
            text: text.to_owned(),
        }
    }

    /// The part of the name behind the last dot.
    pub fn kind(&self) -> &str {
        self.path.rsplit_once('.').map_or("", |(_, kind)| kind)
    }

    /// A fault in a line, counted from 1.
    pub fn fault(&self, line: usize, what: impl AsRef<str>) -> String {
        format!("{}:{line}: {}", self.path, what.as_ref())
    }

    /// Numbered lines of Rust without their comments.
    pub fn code(&self) -> impl Iterator<Item = (usize, &str)> {
        self.text
            .lines()
            .enumerate()
            .map(|(index, line)| (index + 1, without_comment(line)))
    }
}

/// The line up to its `//`; one inside a string or an address does not count.
fn without_comment(line: &str) -> &str {
    for (at, _) in line.match_indices("//") {
        let before = &line[..at];
        if before.matches('"').count().is_multiple_of(2) && !before.ends_with(':') {
            return before;
        }
    }
    line
}

/// The paths named in a line of Rust (`crate::sheet::Block`), each with the text that follows it.
pub fn paths(code: &str) -> impl Iterator<Item = (Vec<&str>, &str)> {
    let part = |c: char| c.is_alphanumeric() || c == '_';
    let mut rest = code;
    std::iter::from_fn(move || {
        let start = rest.find(part)?;
        rest = &rest[start..];
        let mut names = Vec::new();
        loop {
            let end = rest.find(|c| !part(c)).unwrap_or(rest.len());
            names.push(&rest[..end]);
            rest = &rest[end..];
            match rest.strip_prefix("::") {
                Some(more) if more.starts_with(part) => rest = more,
                _ => return Some((names, rest)),
            }
        }
    })
}

/// Every text file of the project. What is built, and what version control and editors keep, is left out.
pub fn all() -> Vec<File> {
    let mut files = Vec::new();
    walk(root(), "", &mut files);
    files
}

/// The names at the project's top.
pub fn top() -> Vec<String> {
    names(root())
}

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn names(folder: &Path) -> Vec<String> {
    let entries = fs::read_dir(folder).expect("the project's folders can be read");
    let mut names: Vec<String> = entries
        .map(|entry| entry.expect("an entry can be read").file_name())
        .map(|name| name.into_string().expect("names are Unicode"))
        .collect();
    names.sort();
    names
}

fn walk(folder: &Path, path: &str, files: &mut Vec<File>) {
    for name in names(folder) {
        let at_top = path.is_empty();
        let ours = !name.starts_with('.') || [".cargo", ".ci"].contains(&name.as_str());
        if !ours || (at_top && ["target", "dist"].contains(&name.as_str())) {
            continue;
        }
        let below = folder.join(&name);
        let path = if at_top {
            name
        } else {
            format!("{path}/{name}")
        };
        if below.is_dir() {
            walk(&below, &path, files);
        } else if let Ok(text) = fs::read_to_string(&below) {
            // What is no text (icons, screenshots) has nothing to check.
            files.push(File { path, text });
        }
    }
}
