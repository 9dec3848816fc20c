//! Other programs: finding them on PATH and running them with a clean environment.

use std::env;
use std::ffi::{OsStr, OsString};
use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Command, ExitStatus, Stdio};

use crate::say::{Failure, OrNext, Outcome, note};

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
    let (status, said) = watched(command, next)?;
    judged(command, status, &said, next)?;
    Ok(said)
}

/// What becomes of a test command that ended so.
fn judged(command: &Command, status: ExitStatus, said: &str, next: &str) -> Outcome<()> {
    let line = spelled(command);
    if !status.success() {
        Err(Failure::new(format!("`{line}` failed ({status})"), next))
    } else if said.lines().filter_map(passed_in).sum::<usize>() == 0 {
        Err(Failure::new(
            format!("`{line}` ran no test"),
            "check that the suite's modules are public and its tests are not filtered out",
        ))
    } else {
        Ok(())
    }
}

/// How many tests may fail by chance.
const BY_CHANCE: usize = 2;

/// As [`run_tests`], for tests that drive a whole browser: a machine that stands still for longer than they are patient fails
/// one by chance. The few that failed are tried once more, alone, and what passes then is named. `command` makes the command
/// for all tests, and with names for those alone.
pub fn run_tests_in_browser(command: impl Fn(&[&str]) -> Command, next: &str) -> Outcome<()> {
    let mut all = command(&[]);
    let (status, said) = watched(&mut all, next)?;
    let failed: Vec<&str> = said.lines().filter_map(failed_in).collect();
    if failed.is_empty() || failed.len() > BY_CHANCE {
        return judged(&all, status, &said, next);
    }
    note(format!(
        "failed, and tried once more alone: {}",
        failed.join(", ")
    ));
    run_tests(&mut command(&failed), next)?;
    note(format!(
        "passed the second time: {}. What was said the first time is above; a test that does so twice needs mending",
        failed.join(", ")
    ));
    Ok(())
}

/// Runs a command whose output the person sees; gives how it ended and what it said.
fn watched(command: &mut Command, next: &str) -> Outcome<(ExitStatus, String)> {
    let line = spelled(command);
    let unread = || format!("`{line}` could not be run");
    let mut child = command
        .stdin(Stdio::null())
        .stdout(Stdio::piped())
        .spawn()
        .or_next(unread(), next)?;
    let mut said = String::new();
    if let Some(output) = child.stdout.take() {
        for line in BufReader::new(output).lines() {
            let line = line.or_next(unread(), next)?;
            println!("{line}");
            said.push_str(&line);
            said.push('\n');
        }
    }
    let status = child.wait().or_next(unread(), next)?;
    Ok((status, said))
}

/// The name of the test that failed, in libtest's line about it.
fn failed_in(line: &str) -> Option<&str> {
    line.strip_prefix("test ")?.strip_suffix(" ... FAILED")
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
    fn the_few_that_failed_in_a_browser_are_tried_once_more_alone() {
        let suite = |failing: &[&str], again: &str| {
            let first: Vec<String> = failing
                .iter()
                .map(|it| format!("test {it} ... FAILED"))
                .collect();
            let command = |names: &[&str]| {
                let script = match names {
                    [] => format!("echo '{}'; exit {}", first.join("\n"), first.len()),
                    names => {
                        assert_eq!(names, failing);
                        again.to_owned()
                    }
                };
                let mut command = Command::new("sh");
                command.args(["-c", &script]);
                command
            };
            run_tests_in_browser(command, "")
        };
        let passes = "echo 'test result: ok. 1 passed; 0 failed'";
        assert!(suite(&["a::b"], passes).is_ok());
        assert!(suite(&["a::b"], "exit 1").is_err());
        assert!(suite(&["a::b"], "echo nothing").is_err());
        // So many are no chance.
        assert!(suite(&["a::b", "a::c", "a::d"], passes).is_err());
        // None failed, and none passed.
        assert!(suite(&[], passes).is_err());
    }

    #[test]
    #[cfg(unix)]
    fn a_failed_command_is_a_failure_with_its_next_step() {
        let failure = run(&mut Command::new("false"), "do this").unwrap_err();
        assert!(failure.what.contains("`false` failed"));
        assert_eq!(failure.next, "do this");
    }
}
