//! Tools that are built from crates.io, each version in its own folder of the user's cache.

use std::fs;
use std::path::{Path, PathBuf};

use super::found;
use crate::places;
use crate::run::{answer, program_in, run, tool};
use crate::say::{Failure, OrNext, Outcome, note};

/// A tool to have.
pub struct Tool<'a> {
    /// Its package on crates.io.
    pub package: &'a str,
    /// Exactly this version.
    pub version: &'a str,
    /// The programs that it must bring, each of which answers `--version`.
    pub programs: &'a [&'a str],
    /// Whether it builds with the lock file that it was published with.
    pub locked: bool,
    /// How far it is optimised, from 0: what runs for a moment is sooner built than it could be faster.
    pub optimised: u8,
    /// About how long the build takes on two cores, in minutes.
    pub minutes: u32,
}

/// Finds or builds a tool; returns the folder that holds its programs.
pub fn prepare(wanted: &Tool) -> Outcome<PathBuf> {
    let folder = places::tool(wanted.package, wanted.version)?;
    let bin = folder.join("bin");
    if whole(&bin, wanted.programs, wanted.version, version_of) {
        found(wanted.package, wanted.version);
        return Ok(bin);
    }
    note(format!(
        "{} {} is not here yet: building it (about {} min on two cores, once)",
        wanted.package, wanted.version, wanted.minutes
    ));
    // Kept until the build succeeds, so that an interrupted build goes on where it stopped.
    let work = folder.join("build");
    let mut command = tool("cargo");
    command
        .current_dir(places::root())
        .args(["install", wanted.package, "--version", wanted.version])
        .arg("--root")
        .arg(&folder)
        .env("CARGO_TARGET_DIR", &work)
        // What its own profile asks for would take three times as long: one pass over all of it, in one piece.
        .env("CARGO_PROFILE_RELEASE_LTO", "off")
        .env("CARGO_PROFILE_RELEASE_CODEGEN_UNITS", "16")
        .env(
            "CARGO_PROFILE_RELEASE_OPT_LEVEL",
            wanted.optimised.to_string(),
        );
    // Cargo trusts its own list of what is installed; what did not answer as whole is built over.
    if folder.join(".crates2.json").exists() {
        command.arg("--force");
    }
    if wanted.locked {
        command.arg("--locked");
    }
    let next = "check the network and the free space, then run the command again: it goes on where it stopped";
    let built = run(&mut command, next);
    // Asked again even after a failure: another run may have built the same tool meanwhile.
    if !whole(&bin, wanted.programs, wanted.version, version_of) {
        built?;
        return Err(Failure::new(
            format!("{} was built, but does not run", wanted.package),
            format!("delete {} and run the command again", folder.display()),
        ));
    }
    if work.exists() {
        fs::remove_dir_all(&work).or_next(
            "removing a build folder that is no longer needed",
            "delete it by hand and run the command again",
        )?;
    }
    found(wanted.package, wanted.version);
    Ok(bin)
}

/// The folder of a tool that was built before; never builds.
pub fn here(wanted: &Tool) -> Option<PathBuf> {
    let bin = places::tool(wanted.package, wanted.version)
        .ok()?
        .join("bin");
    whole(&bin, wanted.programs, wanted.version, version_of).then_some(bin)
}

/// Whether every program is there and says that it is of this version.
fn whole(
    bin: &Path,
    programs: &[&str],
    version: &str,
    ask: impl Fn(&Path) -> Option<String>,
) -> bool {
    programs.iter().all(|name| {
        program_in(bin, name)
            .and_then(|path| ask(&path))
            .is_some_and(|said| said.split_whitespace().any(|word| word == version))
    })
}

fn version_of(program: &Path) -> Option<String> {
    answer(tool(program).arg("--version"))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scratch::Scratch;

    const BOTH: &[&str] = &["first", "second"];

    fn name(stem: &str) -> String {
        super::super::program(stem)
    }

    #[test]
    fn a_tool_with_all_its_programs_is_whole() {
        let bin = Scratch::new("whole");
        bin.write(&name("first"), b"x");
        bin.write(&name("second"), b"x");
        assert!(whole(bin.path(), BOTH, "1.2.3", |_| Some(
            "first 1.2.3\n".into()
        )));
    }

    #[test]
    fn a_missing_program_makes_it_half() {
        let bin = Scratch::new("half");
        bin.write(&name("first"), b"x");
        assert!(!whole(bin.path(), BOTH, "1.2.3", |_| Some(
            "first 1.2.3".into()
        )));
    }

    #[test]
    fn a_program_that_does_not_answer_or_is_of_another_version_makes_it_half() {
        let bin = Scratch::new("mute");
        bin.write(&name("first"), b"x");
        assert!(!whole(bin.path(), &["first"], "1.2.3", |_| None));
        assert!(!whole(bin.path(), &["first"], "1.2.3", |_| Some(
            "first 1.2.30".into()
        )));
    }

    #[test]
    fn a_file_that_is_no_program_does_not_answer() {
        let bin = Scratch::new("garbage");
        bin.write("first", b"not a program");
        assert_eq!(version_of(&bin.path().join("first")), None);
    }
}
