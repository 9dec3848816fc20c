//! Other programs: finding them on PATH and running them with a clean environment.

use std::env;
use std::ffi::{OsStr, OsString};
use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use crate::say::{Failure, OrNext, Outcome};

/// A command without what `cargo run` adds for its own child: those variables would send another
/// toolchain to the wrong libraries and make build scripts run again.
pub fn tool(program: impl AsRef<OsStr>) -> Command {
    let mut command = Command::new(program);
    for (name, _) in env::vars_os() {
        let text = name.to_string_lossy();
        if matches!(
            text.as_ref(),
            "LD_LIBRARY_PATH" | "DYLD_FALLBACK_LIBRARY_PATH" | "CARGO"
        ) || text.starts_with("CARGO_PKG_")
            || text.starts_with("CARGO_MANIFEST_")
        {
            command.env_remove(&name);
        }
    }
    command
}

/// Runs a command whose output the person sees; a bad exit is a failure with this next step.
pub fn run(command: &mut Command, next: &str) -> Outcome<()> {
    let line = spelled(command);
    let status = command
        .stdin(Stdio::null())
        .status()
        .or_next(format!("`{line}` could not be started"), next)?;
    if status.success() {
        Ok(())
    } else {
        Err(Failure::new(format!("`{line}` failed ({status})"), next))
    }
}

/// Runs a test command whose output the person sees, and fails also if it ran no test at all: a suite
/// that is built but empty, or hidden in a private module, ends well without having checked anything.
pub fn run_tests(command: &mut Command, next: &str) -> Outcome<()> {
    tests_output(command, next).map(drop)
}

/// As [`run_tests`]; gives the output too.
pub fn tests_output(command: &mut Command, next: &str) -> Outcome<String> {
    let line = spelled(command);
    let unread = || format!("`{line}` could not be run");
    let mut child = command
        .stdin(Stdio::null())
        .stdout(Stdio::piped())
        .spawn()
        .or_next(unread(), next)?;
    let mut passed = 0;
    let mut said = String::new();
    if let Some(output) = child.stdout.take() {
        for line in BufReader::new(output).lines() {
            let line = line.or_next(unread(), next)?;
            println!("{line}");
            passed += passed_in(&line).unwrap_or(0);
            said.push_str(&line);
            said.push('\n');
        }
    }
    let status = child.wait().or_next(unread(), next)?;
    if !status.success() {
        Err(Failure::new(format!("`{line}` failed ({status})"), next))
    } else if passed == 0 {
        Err(Failure::new(
            format!("`{line}` ran no test"),
            "check that the suite's modules are public and its tests are not filtered out",
        ))
    } else {
        Ok(said)
    }
}

/// The number of tests that passed, in libtest's closing line.
fn passed_in(line: &str) -> Option<usize> {
    let (_, counts) = line.split_once("test result: ok. ")?;
    counts.split_once(" passed")?.0.parse().ok()
}

/// The standard output of a command that succeeds, or nothing if it cannot be run or fails.
pub fn answer(command: &mut Command) -> Option<String> {
    let output = command
        .stdin(Stdio::null())
        .stderr(Stdio::null())
        .output()
        .ok()?;
    output
        .status
        .success()
        .then(|| String::from_utf8_lossy(&output.stdout).into_owned())
}

/// What a program's file name may end with.
const SUFFIXES: &[&str] = if cfg!(windows) {
    &[".exe", ".cmd"]
} else {
    &[""]
};

/// Where a program stands on PATH.
pub fn which(name: &str) -> Option<PathBuf> {
    env::split_paths(&env::var_os("PATH")?).find_map(|folder| program_in(&folder, name))
}

/// The program of this name in a folder, if it is there.
pub fn program_in(folder: &Path, name: &str) -> Option<PathBuf> {
    SUFFIXES
        .iter()
        .map(|suffix| folder.join(format!("{name}{suffix}")))
        .find(|candidate| candidate.is_file())
}

/// PATH with these folders in front, first one first.
pub fn path_with(front: &[&Path]) -> Outcome<OsString> {
    let old = env::var_os("PATH").unwrap_or_default();
    env::join_paths(
        front
            .iter()
            .map(|folder| folder.to_path_buf())
            .chain(env::split_paths(&old)),
    )
    .or_next(
        "a tool folder cannot be put on PATH",
        "move the project or the cache to a folder without the path separator in its name",
    )
}

/// The command as it would be typed, for messages.
fn spelled(command: &Command) -> String {
    let mut line = command.get_program().to_string_lossy().into_owned();
    for argument in command.get_args() {
        line.push(' ');
        line.push_str(&argument.to_string_lossy());
    }
    line
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn passed_tests_are_counted_from_libtests_own_words() {
        let line = "test result: ok. 38 passed; 0 failed; 0 ignored; 0 filtered out";
        assert_eq!(passed_in(line), Some(38));
        assert_eq!(passed_in("test passed_in ... ok"), None);
    }

    #[test]
    #[cfg(unix)]
    fn a_suite_without_a_passed_test_is_a_failure() {
        let suite = |text: &str| run_tests(Command::new("echo").arg(text), "");
        assert!(suite("test result: ok. 1 passed; 0 failed").is_ok());
        assert!(suite("test result: ok. 0 passed; 0 failed").is_err());
        assert!(suite("no tests to run!").is_err());
    }

    #[test]
    #[cfg(unix)]
    fn a_failed_command_is_a_failure_with_its_next_step() {
        let failure = run(&mut Command::new("false"), "do this").unwrap_err();
        assert!(failure.what.contains("`false` failed"));
        assert_eq!(failure.next, "do this");
    }
}
