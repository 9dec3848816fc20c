//! Whether dist/ is still what the sources would give, so that an unchanged build is not repeated.

use std::fs;
use std::path::{Path, PathBuf};

use sha2::{Digest, Sha256};

use crate::notices;
use crate::places;
use crate::precache::{self, hex};
use crate::say::{OrNext, Outcome};

/// Everything that a build reads, from the project's root.
const INPUTS: &[&str] = &[
    "Cargo.toml",
    "Cargo.lock",
    "Trunk.toml",
    "LICENSE",
    "index.html",
    "src",
    "style",
    "assets",
    "xtask/src",
    ".cargo/config.toml",
];

/// A digest of everything that the build reads, and of the tools that build it.
pub fn of_inputs(root: &Path, tools: &str) -> Outcome<String> {
    let next = "check that the project's files can be read";
    let mut files = Vec::new();
    for input in INPUTS {
        collect(&root.join(input), &mut files).or_next(format!("reading {input}"), next)?;
    }
    files.sort();
    let mut digest = Sha256::new();
    digest.update(tools);
    for file in files {
        let bytes = fs::read(&file).or_next(format!("reading {}", file.display()), next)?;
        digest.update(file.to_string_lossy().as_bytes());
        digest.update(Sha256::digest(bytes));
    }
    Ok(hex(&digest.finalize()))
}

/// Whether `dist` came from these inputs and was not touched since.
pub fn holds(inputs: &str, dist: &Path) -> bool {
    fs::read_to_string(stamp_path()).is_ok_and(|stamp| stamp == stamp_of(inputs, dist))
}

/// Remembers that `dist` came from these inputs.
pub fn remember(inputs: &str, dist: &Path) -> Outcome<()> {
    fs::write(stamp_path(), stamp_of(inputs, dist)).or_next(
        "writing the build's stamp",
        "check that target/ can be written",
    )
}

fn stamp_of(inputs: &str, dist: &Path) -> String {
    let version = precache::list(dist).map_or_else(|_| "none".to_owned(), |list| list.version());
    let digest = |name: &str| {
        hex(&Sha256::digest(
            fs::read(dist.join(name)).unwrap_or_default(),
        ))
    };
    let (worker, licences) = (digest(precache::WORKER), digest(notices::FILE));
    format!("{inputs} {version} {worker} {licences}")
}

fn stamp_path() -> PathBuf {
    places::target("dist.stamp")
}

/// Adds the file, or all files below the folder; what is not there adds nothing.
fn collect(path: &Path, files: &mut Vec<PathBuf>) -> std::io::Result<()> {
    if path.is_dir() {
        for entry in fs::read_dir(path)? {
            collect(&entry?.path(), files)?;
        }
    } else if path.is_file() {
        files.push(path.to_owned());
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scratch::Scratch;

    #[test]
    fn a_changed_added_or_moved_source_changes_the_digest() {
        let project = Scratch::new("inputs");
        project.write("src/main.rs", b"fn main() {}");
        let first = of_inputs(project.path(), "t").unwrap();
        assert_eq!(first, of_inputs(project.path(), "t").unwrap());

        project.write("src/main.rs", b"fn main() { }");
        let changed = of_inputs(project.path(), "t").unwrap();
        assert_ne!(first, changed);

        project.write("style/main.css", b"");
        let added = of_inputs(project.path(), "t").unwrap();
        assert_ne!(changed, added);
        assert_ne!(added, of_inputs(project.path(), "other tools").unwrap());
    }

    #[test]
    fn what_the_build_does_not_read_does_not_count() {
        let project = Scratch::new("others");
        project.write("src/main.rs", b"");
        let before = of_inputs(project.path(), "t").unwrap();
        project.write("README.md", b"words");
        assert_eq!(before, of_inputs(project.path(), "t").unwrap());
    }
}
