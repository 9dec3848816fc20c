//! The same sources give the same bytes: a second build of a copy in another folder is held against the first.

use std::fs;
use std::path::Path;

use crate::build;
use crate::notices;
use crate::places;
use crate::precache;
use crate::say::{Failure, OrNext, Outcome, note, step};
use crate::setup::Tools;

/// What a copy of the project leaves out: what is built, and what the version control keeps.
const NOT_SOURCE: [&str; 3] = ["target", "dist", ".git"];

/// Fails when a copy of the project elsewhere builds to other bytes than dist/ holds.
pub fn check(tools: &Tools) -> Outcome<()> {
    step("The same build from a copy elsewhere", || {
        let copy = places::target("copy");
        let next = "check that target/ can be written, then run the command again";
        if copy.exists() {
            fs::remove_dir_all(&copy).or_next("clearing the copy", next)?;
        }
        copy_tree(places::root(), &copy).or_next("copying the project", next)?;
        build::bundle(tools, &copy, &[])?;
        // Cargo knows both folders' packages by one name: while the copy's sources are there, it holds what it built of them
        // for up to date, whatever changes here.
        leave_only(&copy, "dist").or_next("clearing the copy's sources", next)?;
        let built = |folder: &Path| precache::list(&folder.join("dist"));
        let (first, second) = (built(places::root())?, built(&copy)?);
        let mut differ = first.differences(&second);
        let notices = |folder: &Path| fs::read(folder.join("dist").join(notices::FILE)).ok();
        if notices(places::root()) != notices(&copy) {
            differ.push(notices::FILE);
        }
        if differ.is_empty() {
            note(format!("both are {}", first.version()));
            return Ok(());
        }
        Err(Failure::new(
            format!("built twice, these differ: {}", differ.join(", ")),
            "compare dist/ with target/copy/dist/: a path of this machine, or an order by chance, has come into the build",
        ))
    })
}

fn copy_tree(from: &Path, to: &Path) -> std::io::Result<()> {
    fs::create_dir_all(to)?;
    for entry in fs::read_dir(from)? {
        let entry = entry?;
        let name = entry.file_name();
        if NOT_SOURCE.iter().any(|skip| name == *skip) {
            continue;
        }
        if entry.file_type()?.is_dir() {
            copy_tree(&entry.path(), &to.join(name))?;
        } else {
            fs::copy(entry.path(), to.join(name))?;
        }
    }
    Ok(())
}

/// Takes everything out of a folder but what bears that name.
fn leave_only(folder: &Path, name: &str) -> std::io::Result<()> {
    for entry in fs::read_dir(folder)? {
        let entry = entry?;
        if entry.file_name() == name {
            continue;
        }
        if entry.file_type()?.is_dir() {
            fs::remove_dir_all(entry.path())?;
        } else {
            fs::remove_file(entry.path())?;
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scratch::Scratch;

    #[test]
    fn a_copy_holds_the_sources_and_nothing_that_was_built() {
        let project = Scratch::new("copied");
        project.write("src/main.rs", b"fn main() {}");
        project.write("target/debug/x", b"");
        project.write(".git/config", b"");
        let copy = Scratch::new("copy");
        copy_tree(project.path(), copy.path()).unwrap();
        assert!(copy.path().join("src/main.rs").is_file());
        assert!(!copy.path().join("target").exists() && !copy.path().join(".git").exists());
    }

    #[test]
    fn of_the_copy_only_what_was_built_stays() {
        let copy = Scratch::new("left");
        copy.write("src/main.rs", b"fn main() {}");
        copy.write("Cargo.toml", b"");
        copy.write("dist/index.html", b"");
        leave_only(copy.path(), "dist").unwrap();
        let left = fs::read_dir(copy.path()).unwrap();
        let left: Vec<_> = left.map(|entry| entry.unwrap().file_name()).collect();
        assert_eq!(left, ["dist"]);
        assert!(copy.path().join("dist/index.html").is_file());
    }
}
