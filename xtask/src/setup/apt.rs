//! Debian's packages, installed without a question and without removing any other.

use std::process::Command;

use super::found;
use crate::run::{answer, run, tool, which};
use crate::say::{Failure, Outcome, note};

/// Whether this machine installs software with apt.
pub fn is_here() -> bool {
    which("apt-get").is_some()
}

/// Installs packages; the lists are fetched again if the first try fails.
pub fn install(packages: &[&str]) -> Outcome<()> {
    let names = packages.join(" ");
    let next = format!(
        "install them by hand (`apt-get install {names}` as root), then run the command again"
    );
    note(format!("installing Debian packages: {names}"));
    if run(&mut install_command(packages, &next)?, &next).is_err() {
        update()?;
        run(&mut install_command(packages, &next)?, &next)?;
    }
    found("installed", &names);
    Ok(())
}

/// Fetches the package lists.
pub fn update() -> Outcome<()> {
    let next = "check the network and the sources in /etc/apt, then run the command again";
    note("fetching Debian's package lists");
    run(as_root("apt-get", next)?.args(["-qq", "update"]), next)
}

/// The newest package of a family whose names end in a number, such as `lld-22`.
pub fn newest(prefix: &str) -> Option<String> {
    let list = answer(tool("apt-cache").args(["pkgnames", prefix]))?;
    highest(list.lines(), prefix).map(|number| format!("{prefix}{number}"))
}

/// The highest number that follows the prefix and ends the name.
pub fn highest<'a>(names: impl Iterator<Item = &'a str>, prefix: &str) -> Option<u32> {
    names
        .filter_map(|name| name.trim().strip_prefix(prefix)?.parse().ok())
        .max()
}

fn install_command(packages: &[&str], next: &str) -> Outcome<Command> {
    let mut command = as_root("apt-get", next)?;
    command
        .args(["-qq", "install", "-y", "--no-install-recommends"])
        // Debian's rustc and rustc-web exclude each other: nothing of the person's is removed.
        .arg("--no-remove")
        .args(packages);
    Ok(command)
}

fn as_root(program: &str, next: &str) -> Outcome<Command> {
    let root = answer(tool("id").arg("-u")).is_some_and(|id| id.trim() == "0");
    let mut command = if root {
        tool(program)
    } else if which("sudo").is_some() {
        let mut sudo = tool("sudo");
        // -n: fail instead of asking for a password.
        sudo.args(["-n", "DEBIAN_FRONTEND=noninteractive", program]);
        sudo
    } else {
        return Err(Failure::new(
            "Debian packages are missing, and only root may install them",
            next,
        ));
    };
    command.env("DEBIAN_FRONTEND", "noninteractive");
    Ok(command)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_highest_number_wins_by_value_not_by_spelling() {
        let names = ["lld-9", "lld-22", "lld-19", "lld", "lld-22-tools"];
        assert_eq!(highest(names.into_iter(), "lld-"), Some(22));
    }

    #[test]
    fn no_numbered_name_gives_none() {
        assert_eq!(highest(["lld", "llvm-19"].into_iter(), "lld-"), None);
    }
}
